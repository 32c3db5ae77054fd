package specs_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/fault"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
	"tidysump/specs"
)

func faultTable(t *testing.T) *fault.Table {
	t.Helper()
	table := &fault.Table{}
	if list := wire.Read(specs.Faults, table); len(list) > 0 {
		t.Fatalf("faults.json: %+v", list)
	}
	if table.Format != "tidysump-faults" || table.Version != 1 {
		t.Fatalf("faults.json is a %q of version %d", table.Format, table.Version)
	}
	return table
}

// faultWords are the families of the table of what can go wrong. Words that it
// names in full are a family without a stem.
func faultWords(t *testing.T) []family {
	table := faultTable(t)
	ids := family{"fault.", nil, []string{"", ".also"}}
	groups, hands, asks := family{"fault-group.", nil, plain}, family{"hand.", nil, plain}, family{"fault-ask.", nil, plain}
	answers, words := family{"fault-answer.", []string{fault.Other}, plain}, family{"", nil, plain}
	for q, list := range table.Questions {
		asks.members = append(asks.members, q)
		for _, a := range strings.Fields(list) {
			if a != fault.Other { // one word for all of them
				answers.members = append(answers.members, q+"."+a)
			}
		}
	}
	for _, f := range table.Faults {
		if f.Calc != "" {
			words.members = append(words.members, "calc."+f.Calc)
		}
		ids.members, groups.members, hands.members = append(ids.members, f.ID), append(groups.members, f.Group), append(hands.members, f.Hand...)
		for _, r := range f.Rows {
			named := slices.Concat([]string{r.Why, r.Source}, r.Now, r.Limits, r.Home, r.Until, r.Warns)
			if r.To != "" {
				named = append(named, r.To)
			}
			words.members = append(words.members, named...)
		}
	}
	return []family{ids, groups, hands, asks, answers, words,
		{"fault-door.", fault.Doors, plain},
		{"outcome.", fault.Outcomes, plain},
		{"outcome.", []string{"carry-on", "do-not-ride", "do-not-start"}, []string{".so"}}, // gently is said by how far
		{"", slices.Concat(arguments(goSources(t, "internal/roadside"), "say", 0), arguments(goSources(t, "internal/roadside"), "unknown", 0), fields(goSources(t, "internal/roadside"), "Word")), plain},
		{"say.fetch.", fault.Outcomes, plain},
		{"say.better.", []string{"carry-on", "ride-gently"}, plain},
		{"sure.", []string{"sure", "likely", "guess"}, plain}}
}

// Cautions have the signal word that they have in the steps of a job, and only
// words that ANSI Z535 has.
func TestFaults_SignalWords(t *testing.T) {
	var steps struct {
		OK struct {
			Steps []struct {
				Warns []struct{ Signal, Word string }
			}
		}
	}
	inSteps := map[string]string{}
	for name, card := range specs.Cards() {
		out := core.Call("plan", []byte(`{"card":`+string(card)+`}`))
		if err := json.Unmarshal(out, &steps); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, s := range steps.OK.Steps {
			for _, w := range s.Warns {
				inSteps[w.Word] = w.Signal
			}
		}
	}
	known := texts([]plan.Signal{plan.Danger, plan.Warning, plan.Caution, plan.Notice})
	shared := 0
	for word, signal := range faultTable(t).Warns {
		if !slices.Contains(known, signal) {
			t.Errorf("%s: %q is no signal word", word, signal)
		}
		if other := inSteps[word]; other != "" {
			shared++
			if other != signal {
				t.Errorf("%s: %s here, %s in a job", word, signal, other)
			}
		}
	}
	if shared == 0 {
		t.Error("no caution is shared with the steps")
	}
}

// Every source of a row is a sentence that names one, or says that there is none.
func TestFaults_Sources(t *testing.T) {
	words := catalogue(t)
	for _, f := range faultTable(t).Faults {
		for n, r := range f.Rows {
			if s := words[r.Source]; !strings.Contains(s, "no source") {
				t.Errorf("%s, row %d: the source %q does not say what has none", f.ID, n, s)
			}
		}
	}
}

// Sentences that hold in a dark garage are short.
func TestFaults_ShortSentences(t *testing.T) {
	for id, s := range specs.Words()[0].Part("faults") {
		if len([]rune(s)) > 190 {
			t.Errorf("%s has %d letters: %s", id, len([]rune(s)), s)
		}
		if strings.Contains(strings.ToLower(s), "safe") {
			t.Errorf("%s calls something safe: %s", id, s)
		}
	}
}

// A problem leads to the calculation that judges it more closely.
func TestFaults_Calculations(t *testing.T) {
	got := map[string]string{}
	for _, f := range faultTable(t).Faults {
		got[f.ID] = f.Calc
	}
	for id, want := range map[string]string{"lamp-start": "oil-pressure", "lamp-riding": "oil-pressure", "lamp-flicker": "oil-pressure",
		"fuel-smell": "fuel", "metal": "debris", "drop-plug": "leak", "oil-on-tyre": ""} {
		if got[id] != want {
			t.Errorf("%s leads to %q, want %q", id, got[id], want)
		}
	}
}
