//go:build !wasm

package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/core"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// sentences are those of the catalogue.
var sentences = specs.Sentences()

// worded are the members of an answer that name the sentence which the values beside
// them fill, with the stem of its id.
var worded = map[string]string{"word": "", "code": "finding.", "name": "", "gauge": ""}

// endings are the sentences that stand under one id.
var endings = []string{"", ".do", ".why"}

// checkSentences goes through an answer of the core and says every sentence that has
// values: each placeholder is filled, by something that can be read there. It counts
// them.
func checkSentences(t plantest.Reporter, v any) (said int) {
	t.Helper()
	switch v := v.(type) {
	case []any:
		for _, e := range v {
			said += checkSentences(t, e)
		}
	case map[string]any:
		values := map[string]string{}
		if given, ok := v["values"].(map[string]any); ok {
			for name, value := range given {
				values[name], _ = value.(string)
			}
		}
		for name, stem := range worded {
			id, _ := v[name].(string)
			for _, ending := range endings {
				if _, known := sentences[stem+id+ending]; known && id != "" {
					plantest.Say(t, stem+id+ending, values)
					said++
				}
			}
		}
		for name, e := range v {
			if name == "values" {
				continue
			}
			for _, text := range textsOf(e) {
				if id, isWord := strings.CutPrefix(text, "@"); isWord {
					plantest.Say(t, id, values)
					said++
				}
			}
			said += checkSentences(t, e)
		}
	}
	return said
}

// textsOf are a text, or those of a list.
func textsOf(v any) []string {
	switch v := v.(type) {
	case string:
		return []string{v}
	case []any:
		var list []string
		for _, e := range v {
			if text, ok := e.(string); ok {
				list = append(list, text)
			}
		}
		return list
	}
	return nil
}

// asked asks the core, with a text or what is written as one, and says all that it
// answers.
func asked(t rapid.TB, op string, in any) (said int) {
	t.Helper()
	text, isText := in.(string)
	if !isText {
		marshalled, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		text = string(marshalled)
	}
	out, outcome := core.Do(op, []byte(text))
	if outcome != core.OK && outcome != core.Refused && !isText {
		t.Fatalf("%s %.300s: %s", op, text, out)
	}
	var answer any
	if err := json.Unmarshal(out, &answer); err != nil {
		t.Fatal(err)
	}
	return checkSentences(t, answer)
}

// written is a record as the page hands it over.
func written(r wire.Record) json.RawMessage { return wire.Write(r) }

type anyMap = map[string]any

// askAll asks for all that the core says of a card on a bench before anything was done,
// and after every step was, each in the order of the plan.
func askAll(t rapid.TB, c *card.Card, b plan.Bench) (said int) {
	t.Helper()
	in := anyMap{"card": written(c), "bench": written(&b)}
	said = asked(t, "plan", in) + asked(t, "replay", in)
	p, list := plantest.Made(c, b)
	if p == nil {
		t.Fatalf("no plan: %v", list)
	}
	var events []anyMap
	for n, s := range p.Steps {
		at := "2026-11-02T1" + string(rune('0'+n*10/(len(p.Steps)+1))) + ":00:00+01:00"
		events = append(events, anyMap{"id": "d" + s.ID, "seq": n + 1, "time": at, "kind": "done", "step": s.ID})
		if n == len(p.Steps)/2 {
			said += asked(t, "replay", anyMap{"card": in["card"], "bench": in["bench"], "events": events})
		}
	}
	events = append(events, anyMap{"id": "end", "seq": len(events) + 1, "time": "2026-11-02T19:30:00+01:00", "kind": "finished"})
	return said + asked(t, "replay", anyMap{"card": in["card"], "bench": in["bench"], "events": events})
}

// No sentence of the core misses a value or reads as nonsense for want of one: of all
// sample cards, on all benches in all units.
func TestSentences_Samples(t *testing.T) {
	said := 0
	for name, text := range specs.Cards() {
		c, list := card.Read(text)
		if len(list) > 0 {
			t.Fatalf("%s: %v", name, list)
		}
		for n, b := range plantest.Benches(c) {
			if n%5 == 0 { // and where nobody looked what filter there is
				askAll(t, plantest.Unlooked(c), b)
			}
			for _, b.System = range quantity.Systems {
				said += asked(t, "plan", anyMap{"card": written(c), "bench": written(&b)})
			}
			if n%7 == 0 { // a replay says the same on most
				b.System = quantity.Systems[n%len(quantity.Systems)]
				said += askAll(t, c, b)
			}
		}
	}
	if said < 10_000 {
		t.Errorf("only %d sentences", said)
	}
}

// And of cards that know little, or foolish things.
func TestSentences_AnyCard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := plantest.Card(t)
		askAll(t, c, plantest.Bench(t, c))
		asked(t, "roadside", anyMap{"card": written(c), "door": "amount"})
	})
}

// And of all that is asked in ops.md.
func TestSentences_Examples(t *testing.T) {
	said := 0
	for _, e := range specs.Examples() {
		said += asked(t, e.Op, e.In)
	}
	if said < 1000 {
		t.Errorf("only %d sentences", said)
	}
}

// What reads as nonsense is found.
func TestSentences_AreChecked(t *testing.T) {
	for _, c := range []struct {
		answer any
		want   bool
	}{
		{anyMap{"word": "gap.torque", "values": anyMap{"of": "@purpose.drain-plug", "place": "below"}}, true},
		{anyMap{"word": "gap.torque", "values": anyMap{"of": "@purpose.drain-plug", "place": "@not-known"}}, false},
		{anyMap{"word": "gap.torque", "values": anyMap{"of": "@purpose.drain-plug", "place": " "}}, false},
		{anyMap{"word": "gap.torque", "values": anyMap{"of": "@purpose.drain-plug"}}, false},
		{[]any{anyMap{"steps": []any{anyMap{"word": "gap.torque", "values": anyMap{"place": "below"}}}}}, false},
		{anyMap{"word": "step.strainer-out", "values": anyMap{"place": "@not-known"}}, true},
	} {
		var heard listener
		checkSentences(&heard, c.answer)
		if got := len(heard) == 0; got != c.want {
			t.Errorf("%v: passes %t, complaints %v", c.answer, got, heard)
		}
	}
}

// listener notes the complaints of a check.
type listener []string

func (*listener) Helper() {}

func (l *listener) Errorf(format string, _ ...any) { *l = append(*l, format) }
