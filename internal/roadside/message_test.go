package roadside_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/fault"
	"tidysump/internal/roadside"
	"tidysump/internal/wire"
	"tidysump/specs"
)

func theTable(t *testing.T) *fault.Table {
	t.Helper()
	table := &fault.Table{}
	if list := wire.Read(specs.Faults, table); list != nil {
		t.Fatal(list)
	}
	return table
}

// Who fetches a bike whose drain plug drips hears what it is, what was seen, what nobody
// looked at, and what to bring for it to be ridden.
func TestMessage(t *testing.T) {
	table := theTable(t)
	for _, c := range []struct {
		name, id string
		answers  map[string]string
		hand     []string
		want     string
	}{
		{"nothing answered", "drop-plug", nil, nil,
			"say.bike The grey one; say.problem @fault.drop-plug; say.fetch.do-not-ride; fault-why.drips; say.open @fault-ask.returns?; " +
				"say.bring @hand.spanner; say.bring @hand.washer; say.bring @hand.oil; say.oil 10W-40; say.better.ride-gently; say.where; say.defer"},
		{"answered", "drop-plug", map[string]string{"returns": "drips"}, []string{"spanner", "washer"},
			"say.bike The grey one; say.problem @fault.drop-plug; say.fetch.do-not-ride; fault-why.drips; say.answer @fault-answer.returns.drips @fault-ask.returns; " +
				"say.hand @hand.spanner; say.hand @hand.washer; say.bring @hand.oil; say.oil 10W-40; say.better.ride-gently; say.where; say.defer"},
		{"none of these is as open as before", "drop-plug", map[string]string{"returns": "other"}, []string{"spanner", "washer", "oil"},
			"say.bike The grey one; say.problem @fault.drop-plug; say.fetch.ride-gently; fault-to.look; fault-why.new-seal; say.open @fault-ask.returns?; " +
				"say.hand @hand.spanner; say.hand @hand.washer; say.hand @hand.oil; say.where; say.defer"},
	} {
		seen := roadside.Seen{Table: table, Fault: table.Find(c.id), Answers: c.answers, Hand: c.hand, Bike: "The grey one", Card: sample(t, "tessaly-corda-570")}
		if got := said(seen.Message()); got != c.want {
			t.Errorf("%s:\n%s, want\n%s", c.name, got, c.want)
		}
	}
}

// Over all problems, with all but the last of their answers and with none: the message
// says the outcome that the screen says; what it asks to bring lets the bike be ridden, and
// nothing less of it does; it ends in who decides.
func TestMessage_AllProblems(t *testing.T) {
	table := theTable(t)
	helped := 0
	for n := range table.Faults {
		f := &table.Faults[n]
		answers := map[string]string{}
		for at := 0; ; at++ {
			now := fault.Judge(table, f, answers, nil)
			seen := roadside.Seen{Table: table, Fault: f, Answers: answers}
			text := said(seen.Message())
			if !strings.Contains(text, "say.fetch."+now.Outcome) || !strings.HasSuffix(text, "say.defer") || strings.Contains(text, "say.bike") {
				t.Errorf("%s %v: %s", f.ID, answers, text)
			}
			if strings.Count(text, "@fault-ask.") != len(f.Asks) {
				t.Errorf("%s %v: not every question is told: %s", f.ID, answers, text)
			}
			if things, then := roadside.Better(table, f, answers, nil, now); then != nil {
				helped++
				if fault.Stops(then.Outcome) || fault.Rank(then.Outcome) >= fault.Rank(now.Outcome) {
					t.Errorf("%s %v: %v is to be brought, and %s follows", f.ID, answers, things, then.Outcome)
				}
				for i := range things {
					less := slices.Delete(slices.Clone(things), i, i+1)
					if v := fault.Judge(table, f, answers, less); fault.Rank(v.Outcome) < fault.Rank(now.Outcome) && !fault.Stops(v.Outcome) {
						t.Errorf("%s %v: %v is asked for, and %v would do", f.ID, answers, things, less)
					}
				}
			}
			if at >= len(f.Asks) {
				break
			}
			answers[f.Asks[at]] = strings.Fields(table.Questions[f.Asks[at]])[0]
		}
	}
	if helped < 20 {
		t.Errorf("something helps in %d cases only", helped)
	}
}

// A table from elsewhere with many things at hand is judged in bounded time.
func TestBetter_ForeignTable(t *testing.T) {
	f := &fault.Fault{ID: "x", Rows: []fault.Row{{Outcome: "do-not-start"}}}
	for n := range 60 {
		f.Hand = append(f.Hand, strings.Repeat("x", n+1))
	}
	table := &fault.Table{Faults: []fault.Fault{*f}}
	things, then := roadside.Better(table, f, nil, nil, fault.Judge(table, f, nil, nil))
	if things != nil || then != nil {
		t.Errorf("%v helps: %+v", things, then)
	}
}
