package core_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/quantity"
)

// What "1.234" is follows from the unit and from what is believable in a field, never
// from which mark it has: with a point and with a comma it is the same. Where neither
// decides it is asked for, and either way of writing that is offered is read as offered.
func TestTwoWays(t *testing.T) {
	asked := 0
	for _, unit := range quantity.Units {
		for _, digits := range []string{"1%s234", "12%s500", "950%s000", "2%s100"} {
			for _, system := range quantity.Systems {
				point, comma := fmt.Sprintf(digits, "."), fmt.Sprintf(digits, ",")
				p, c := converted(t, point+" "+unit.ID, system), converted(t, comma+" "+unit.ID, system)
				if p.code != c.code || p.OK.Base != c.OK.Base {
					t.Errorf("%s: %s is %+v, %s is %+v", unit.ID, point, p, comma, c)
				}
				if p.code != "number-two-ways" {
					continue
				}
				asked++
				small, large := converted(t, p.values["small"]+" "+unit.ID, system), converted(t, p.values["large"]+" "+unit.ID, system)
				if small.code != "" || large.code != "" || !quantity.Near(unit.FromBase(large.OK.Base), 1000*unit.FromBase(small.OK.Base)) {
					t.Errorf("%s %s: offered are %v: read as %+v and %+v", point, unit.ID, p.values, small, large)
				}
			}
		}
	}
	if asked < 100 {
		t.Errorf("asked only %d times", asked)
	}
}

type convertAnswer struct {
	OK       struct{ Base float64 }
	Findings []struct {
		Code   string
		Values map[string]string
	}
	code   string // of the refusal; "" for none
	values map[string]string
}

func converted(t *testing.T, text string, system quantity.System) (a convertAnswer) {
	t.Helper()
	in, err := json.Marshal(map[string]string{"text": text, "system": string(system)})
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(core.Call("convert", in), &a); err != nil {
		t.Fatal(err)
	}
	if len(a.Findings) > 0 {
		a.code, a.values = a.Findings[0].Code, a.Findings[0].Values
	}
	return a
}

// In each field of each calculation and in each kind of entry of a card, "1.234" and
// "1,234" are one thing, in every unit of the field's kind and without one.
func TestTwoWays_Fields(t *testing.T) {
	var answer struct {
		OK struct {
			Forms []struct {
				Op     string
				Fields []formField
			}
		}
	}
	if err := json.Unmarshal(core.Call("forms", []byte(`{}`)), &answer); err != nil {
		t.Fatal(err)
	}
	tried := 0
	for _, form := range answer.OK.Forms {
		for _, d := range form.Fields {
			for _, unit := range unitsOf(d.Kind) {
				for _, system := range quantity.Systems {
					point := ask(t, form.Op, d.Name, "1.234"+unit, system)
					comma := ask(t, form.Op, d.Name, "1,234"+unit, system)
					if strings.ReplaceAll(point, "1.234", "1,234") != strings.ReplaceAll(comma, "1.234", "1,234") {
						t.Errorf("%s, %s of 1.234%s: %s, of 1,234: %s", form.Op, d.Name, unit, point, comma)
					}
					tried++
				}
			}
		}
	}
	if tried < 500 {
		t.Errorf("only %d were tried", tried)
	}
	for kind := range kindsOfUnits() {
		for _, unit := range unitsOf(kind) {
			point, comma := entered(t, kind, "1.234"+unit), entered(t, kind, "1,234"+unit)
			if strings.ReplaceAll(point, "1.234", "1,234") != strings.ReplaceAll(comma, "1.234", "1,234") {
				t.Errorf("entry of %s 1.234%s: %s, of 1,234: %s", kind, unit, point, comma)
			}
		}
	}
}

func kindsOfUnits() map[string]bool {
	kinds := map[string]bool{string(quantity.Plain): true}
	for _, u := range quantity.Units {
		kinds[string(u.Kind)] = true
	}
	return kinds
}

// unitsOf gives what may stand behind a number of that kind, nothing among it; none for
// what is no number.
func unitsOf(kind string) (list []string) {
	if !kindsOfUnits()[kind] {
		return nil
	}
	for _, u := range quantity.Units {
		if string(u.Kind) == kind {
			list = append(list, " "+u.ID)
		}
	}
	return append(slices.Compact(list), "")
}

func ask(t *testing.T, op, name, text string, system quantity.System) string {
	t.Helper()
	in, err := json.Marshal(map[string]string{name: text, "system": string(system)})
	if err != nil {
		t.Fatal(err)
	}
	return string(core.Call(op, in))
}

func entered(t *testing.T, kind, text string) string {
	t.Helper()
	in, err := json.Marshal(map[string]string{"kind": kind, "text": text})
	if err != nil {
		t.Fatal(err)
	}
	return string(core.Call("read-entry", in))
}
