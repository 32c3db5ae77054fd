package calc

import (
	"encoding/json"
	"math/rand"
	"testing"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// typed are what a person may type for a field of each kind, some of it wrong.
var typed = map[quantity.Kind][]string{
	quantity.Volume:      {"2.5 L", "0.3 L", "900 mL", "1 US qt", "0.4"},
	quantity.Torque:      {"25 N·m", "18 lbf·ft", "5 N·m", "90 N·m", "300 N·m"},
	quantity.Length:      {"12 mm", "40 mm", "300 mm", "18.5 mm"},
	quantity.Temperature: {"20 °C", "90 °C", "104 °F", "-10 °C", "60 °C"},
	quantity.Duration:    {"5 min", "30 s", "1 h"},
	quantity.Angle:       {"3/4 turn", "45°", "10°"},
	quantity.Viscosity:   {"97", "14.5", "9", "66"},
	quantity.Density:     {"880", "0.87 kg/L"},
	quantity.Area:        {"0.3 m²"},
	quantity.Pressure:    {"0", "1 bar", "340 kPa", "50 psi", "3.5 kgf/cm2"},
	quantity.Mass:        {"2.6 kg"},
	quantity.Share:       {"45 %", "-20 %", "120 %"},
	quantity.Distance:    {"50 km", "30 mi"},
	Taps:                 {"0 2.1 4 6.2 8", "0 1 2 3 9", "1 2", "x"},
	Number:               {"1", "12.5", "150", "340"},
	Text:                 {"10W-40", "M12x1.5", "MA2", "SG", "5W-30", "1", "EUR", "10"},
}

// filled draws a form, each field filled in with that chance in a hundred.
func filled(r *rand.Rand, fields []field, chance int) map[string]any {
	form := map[string]any{}
	for _, f := range fields {
		switch {
		case r.Intn(100) >= chance:
		case f.kind == List:
			var rows []any
			for range 1 + r.Intn(3) {
				rows = append(rows, filled(r, f.rows, 90))
			}
			form[f.name] = rows
		case f.kind == Yes:
			form[f.name] = r.Intn(2) == 0
		case len(f.words) > 0:
			form[f.name] = f.words[r.Intn(len(f.words))]
		default:
			form[f.name] = typed[f.kind][r.Intn(len(typed[f.kind]))]
		}
	}
	return form
}

// holds notes which members an answer has, and fails where one isn't declared.
func holds(t *testing.T, op, at string, shapes []shape, a *Answer, came map[string]bool) {
	t.Helper()
	declared := map[string]shape{}
	for _, p := range shapes {
		declared[p.name] = p
	}
	for n := range a.members {
		m := &a.members[n]
		p, ok := declared[m.name]
		if !ok || p.content != m.content {
			t.Fatalf("%s answers with %q, content %d; declared is %+v", op, m.name, m.content, p)
		}
		came[at+m.name] = true
		for row := range m.rows {
			holds(t, op, at+m.name+"/", p.rows, &m.rows[row], came)
		}
	}
}

// asked are inputs beside the examples in ops.md, for members of answers that none of
// those brings about.
var asked = map[string][]string{
	"wrench-check": {`{"mass":"10 kg","lever":"400 mm","own":"1.2 kg","centre":"180 mm","high":"100 N·m"}`},
	"oil-pressure": {`{"pressure":"4 bar","temperature":"90 °C","least":"3.5 bar","meantAt":"90 °C","fullScale":"10 bar"}`},
}

// Every answer has only members that its calculation declares, of the declared kind,
// whatever is asked; and each of those comes about in what the examples ask.
func TestAnswers_AreDeclared(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for _, c := range All() {
		given := asked[c.Op]
		for _, e := range specs.Examples() {
			if e.Op == c.Op {
				given = append(given, e.In)
			}
		}
		came := map[string]bool{}
		for _, in := range given {
			declares(t, c, []byte(in), came)
		}
		var missed func(at string, shapes []shape)
		missed = func(at string, shapes []shape) {
			for _, p := range shapes {
				if !came[at+p.name] {
					t.Errorf("%s answers with %s%s in no example of ops.md; ask for it there, or in asked", c.Op, at, p.name)
				}
				missed(at+p.name+"/", p.rows)
			}
		}
		missed("", c.shape)
		for n := range 3000 {
			form := filled(r, c.fields, 30+n%70)
			form["system"] = []string{"metric", "us", "imperial"}[n%3]
			text, err := json.Marshal(form)
			if err != nil {
				t.Fatal(err)
			}
			declares(t, c, text, map[string]bool{})
		}
	}
}

// declares asks a calculation, and notes which members its answer has.
func declares(t *testing.T, c Calculation, in []byte, came map[string]bool) {
	t.Helper()
	f := c.Input()
	if a, list := c.Calculate(f, wire.Read(in, f)); a != nil {
		holds(t, c.Op, "", c.shape, a, came)
	} else if !finding.Refused(list) {
		t.Fatalf("%s %s: neither an answer nor a refusal", c.Op, in)
	}
}

// An empty answer lists all that may be in it.
func TestAnswer_ListsItsMembers(t *testing.T) {
	for _, c := range All() {
		if got := len(c.Answer().members); got != len(c.shape) || got == 0 {
			t.Errorf("%s lists %d members of %d", c.Op, got, len(c.shape))
		}
	}
}
