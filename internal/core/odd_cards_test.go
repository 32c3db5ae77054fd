package core_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/specs"
)

// odd are values that no place of a card, or hardly one, has: of each type, too deep,
// too long, cut within a character, a name twice.
var odd = []string{
	`null`, `true`, `0`, `-1`, `1.5`, `1e999`, strings.Repeat("9", 30000), `""`, `"x"`, `"\ud83d"`, `"\udee2x"`, `"` + strings.Repeat("x", 30000) + `"`,
	`"` + strings.Repeat(`\u0000`, 10000) + `"`, `[]`, `[null]`, `[[]]`, `[0]`, `["x"]`, `{}`, `{"id":{}}`, `{"a":1,"a":2}`, `{"id":"x","id":"y"}`,
	strings.Repeat("[", 1000) + strings.Repeat("]", 1000), strings.Repeat(`{"id":`, 1000) + "0" + strings.Repeat("}", 1000),
	`[` + strings.Repeat(`{},`, 300) + `{}]`, `{"` + strings.Repeat("y", 30000) + `":1}`,
}

// mutation puts an odd value in place of the nth of a tree, or a name twice into it.
type mutation struct {
	nth   int
	value string
	twice bool
	seen  int // values written so far
}

func (m *mutation) write(v any) string {
	m.seen++
	here := m.seen == m.nth
	var parts []string
	switch v := v.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			member := strconv.Quote(name) + ":" + m.write(v[name])
			parts = append(parts, member)
			if here && m.twice {
				parts = append(parts, strconv.Quote(name)+":"+m.value)
			}
		}
		if !here || m.twice {
			return "{" + strings.Join(parts, ",") + "}"
		}
	case []any:
		for _, e := range v {
			parts = append(parts, m.write(e))
		}
		if !here {
			return "[" + strings.Join(parts, ",") + "]"
		}
	}
	if here {
		return m.value
	}
	text, _ := json.Marshal(v)
	return string(text)
}

// mutated gives a sample card with one to three odd things in it.
func mutated(t *rapid.T) string {
	names := slices.Sorted(maps.Keys(specs.Cards()))
	text := string(specs.Cards()[rapid.SampledFrom(names).Draw(t, "card")])
	for range rapid.IntRange(1, 3).Draw(t, "times") {
		var tree any
		if json.Unmarshal([]byte(text), &tree) != nil {
			break // beyond all numbers, which the standard library does not read
		}
		count := mutation{}
		count.write(tree)
		m := mutation{nth: rapid.IntRange(1, count.seen).Draw(t, "nth"), value: rapid.SampledFrom(odd).Draw(t, "value"), twice: rapid.Bool().Draw(t, "twice")}
		text = m.write(tree)
	}
	return text
}

// Whatever is odd about a card, it spoils no card and no job but its own: it is listed,
// or refused in words at its own place.
func TestOddCard_SpoilsOnlyItself(t *testing.T) {
	good := string(rootFile(t, "testdata/card-minimal.json"))
	type told struct{ Findings []finding }
	refused := func(list []finding) bool {
		return slices.ContainsFunc(list, func(f finding) bool { return f.Grade == "refuse" })
	}
	below := func(list []finding, place string) bool {
		return !slices.ContainsFunc(list, func(f finding) bool { return f.Where != place && !strings.HasPrefix(f.Where, place+"/") })
	}
	var alone struct{ Bikes []struct{ Text string } }
	must(t, "cards", []byte(`{"canonical":true,"cards":[`+good+`]}`), &alone)
	rapid.Check(t, func(t *rapid.T) {
		card := mutated(t)
		list := `"cards":[` + good + `,` + card + `,` + good + `]`
		var cards struct {
			Bikes []struct {
				Place int
				Text  string
			}
			told
		}
		mustRapid(t, "cards", `{"canonical":true,`+list+`}`, &cards)
		texts := map[int]string{}
		for _, b := range cards.Bikes {
			texts[b.Place] = b.Text
		}
		if texts[0] != alone.Bikes[0].Text || texts[2] != texts[0] {
			t.Fatalf("beside %.500s: %.500v", card, cards)
		}
		if _, listed := texts[1]; listed == refused(cards.Findings) || !below(cards.Findings, "/cards/1") {
			t.Fatalf("%.500s: listed %v, %.500v", card, listed, cards.Findings)
		}
		var survey struct {
			Jobs []struct {
				Summary *struct{ Steps int }
				told
			}
		}
		mustRapid(t, "survey", `{`+list+`,"rows":true,"jobs":[{"card":2},{"card":1},{"card":0}]}`, &survey)
		if j := survey.Jobs; len(j) != 3 || j[0].Summary == nil || j[2].Summary == nil || (j[1].Summary == nil) != refused(j[1].Findings) || len(j[0].Findings)+len(j[2].Findings) > 0 || !below(j[1].Findings, "/cards/1") {
			t.Fatalf("beside %.500s: %.500v", card, j)
		}
		for _, op := range []string{"plan", "replay", "check-card"} {
			// A place of 60 kB is named in some twenty places of a plan; an answer is no longer
			// than what a call may have.
			if out, outcome := core.Do(op, []byte(`{"card":`+card+`}`)); outcome == core.Crashed || outcome == core.Malformed || len(out) > core.MaxInput {
				t.Fatalf("%s of %.500s: %v, %d bytes", op, card, outcome, len(out))
			}
		}
	})
}

func mustRapid(t *rapid.T, op, in string, answer any) {
	out, outcome := core.Do(op, []byte(in))
	if outcome != core.OK {
		t.Fatalf("%s(%.800s): %v %.500s", op, in, outcome, out)
	}
	var ok struct{ OK json.RawMessage }
	if err := json.Unmarshal(out, &ok); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(ok.OK, answer); err != nil {
		t.Fatal(fmt.Sprint(op, ": ", err))
	}
}

// decodeDo is an answer as it comes.
func decodeDo(t *rapid.T, op, in string) []byte {
	out, outcome := core.Do(op, []byte(in))
	if outcome == core.Crashed || outcome == core.Malformed {
		t.Fatalf("%s(%.800s): %v %.500s", op, in, outcome, out)
	}
	return out
}
