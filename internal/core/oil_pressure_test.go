package core_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

type pressed struct {
	Verdict          string
	Figures, Assumed []shownFigure
	Notes            []finding
}

func TestOilPressure(t *testing.T) {
	const manual = `"least":"340 kPa","meantAt":"80 °C","meantSpeed":"3000"`
	for _, c := range []struct{ in, verdict, note string }{
		{`{"pressure":"4 bar","temperature":"80 °C","speed":"3000","fullScale":"10 bar","class":"1.6",` + manual + `}`, "pressure.within", "pressure-again"},
		{`{"pressure":"3.4 bar","temperature":"80 °C","speed":"3000",` + manual + `}`, "pressure.within", "gauge-unknown"},
		{`{"pressure":"3.4 bar","temperature":"80 °C","speed":"3000","fullScale":"10 bar",` + manual + `}`, "pressure.unsure", "gauge-decides"},
		{`{"pressure":"3.4 bar","temperature":"80 °C","speed":"3000","graduation":"0.2 bar",` + manual + `}`, "pressure.unsure", "gauge-decides"},
		{`{"pressure":"1.6 bar","temperature":"80 °C","speed":"3000",` + manual + `}`, "pressure.stop", "pressure-gone"},
		{`{"pressure":"0","temperature":"176 °F","speed":"900",` + manual + `}`, "pressure.stop", "engine-slower"},
		{`{"pressure":"5 bar","temperature":"20 °C","speed":"3000",` + manual + `}`, "pressure.not-comparable", "oil-colder"},
		{`{"pressure":"4 bar","temperature":"110 °C","speed":"3000",` + manual + `}`, "pressure.within", "oil-hotter"},
		{`{"pressure":"2 bar","temperature":"80 °C","speed":"4000",` + manual + `}`, "pressure.below", "engine-faster"},
		{`{"pressure":"5 bar","least":"340 kPa"}`, "pressure.not-comparable", "state-unknown"},
	} {
		var a pressed
		must(t, "oil-pressure", []byte(c.in), &a)
		if a.Verdict != c.verdict || remarkOf(a.Notes, c.note) == nil || remarkOf(a.Notes, "engine-runs-hot") == nil {
			t.Errorf("%s: %s %+v, want %s, %s", c.in, a.Verdict, a.Notes, c.verdict, c.note)
		}
	}
	for _, row := range [][2]string{
		{`{"pressure":"4 bar"}`, "missing /least"},
		{`{"least":"4 bar"}`, "missing /pressure"},
		{`{"pressure":"4 bar","least":"4 bar","most":"3 bar"}`, "most-below-least /most"},
		{`{"pressure":"12 bar","least":"4 bar","fullScale":"10 bar"}`, "beyond-scale /pressure"},
		{`{"pressure":"4 N·m","least":"4 bar"}`, "unit-of-other-kind /pressure"},
		{`{"pressure":"30 bar","least":"4 bar"}`, "not-believable /pressure"},
		{`{"pressure":"4 bar","least":"4 bar","speed":"90"}`, "not-believable /speed"},
	} {
		if got := refusalOf(t, "oil-pressure", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

// What manuals print in three units side by side is one figure, to their rounding; a
// pressure is the same in whatever unit it is typed (kgf/cm² 98.0665 kPa, psi
// 6.894757293 kPa, exact), and so is the verdict.
func TestOilPressure_Units(t *testing.T) {
	for _, printed := range [][]string{
		{"110 kPa", "1.1 kgf/cm²", "16 psi"}, {"410 kPa", "4.2 kgf/cm²", "59 psi"}, {"70 kPa", "0.7 kgf/cm²", "10 psi"}, {"340 kPa", "3.5 kgf/cm²", "50 psi"},
	} {
		var a pressed
		must(t, "oil-pressure", []byte(`{"pressure":"`+printed[0]+`","least":"1 bar"}`), &a)
		for _, text := range printed {
			given, _ := quantity.Parse(quantity.Pressure, text, "", quantity.Metric)
			shown := ""
			for _, s := range a.Figures[0].Texts {
				if is, _ := quantity.Parse(quantity.Pressure, s, "", quantity.Metric); is.Unit == given.Unit {
					shown = given.Print(given.Unit)
					if d := is.Base/given.Base - 1; d > 0.035 || d < -0.035 {
						t.Errorf("%s is shown as %s, printed is %s", printed[0], s, text)
					}
				}
			}
			if shown == "" {
				t.Errorf("%s: not in the unit of %s: %v", printed[0], text, a.Figures[0].Texts)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		kPa, least := rapid.Float64Range(1, 1900).Draw(t, "kPa"), rapid.Float64Range(2, 900).Draw(t, "least")
		if rapid.Bool().Draw(t, "on the limit") {
			least = max(kPa, 2)
			kPa = least
		}
		var first string
		for n := range quantity.Units {
			u := &quantity.Units[n]
			if u.Kind != quantity.Pressure {
				continue
			}
			var a pressed
			in := fmt.Sprintf(`{"pressure":"%.11f %s","temperature":"80 °C","speed":"3000","least":"%.11f kPa","meantAt":"80 °C","meantSpeed":"3000"}`, u.FromBase(kPa), u.ID, least)
			answered(t, "oil-pressure", []byte(in), &a)
			if first == "" {
				first = a.Verdict
			}
			if low := a.Figures[0].Low; a.Verdict != first || low < kPa*0.99999 || low > kPa*1.00001 {
				t.Fatalf("%s: %s, %v kPa; in kPa %s", in, a.Verdict, low, first)
			}
			for _, s := range a.Figures[0].Texts {
				is, found := quantity.Parse(quantity.Pressure, s, "", quantity.Metric)
				if len(found) > 0 || is.Base < kPa*0.994 || is.Base > kPa*1.006 || strings.HasPrefix(s, "0 ") {
					t.Fatalf("%v kPa is shown as %s", kPa, s)
				}
			}
		}
	})
}
