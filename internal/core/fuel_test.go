package core_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

// fuelVerdicts are those of the calculation, the mildest first: none says that all is
// well.
var fuelVerdicts = []string{"fuel.not-told", "fuel.some", "fuel.may-be-much", "fuel.stop"}

func TestFuel(t *testing.T) {
	for _, c := range []struct {
		in, verdict string
		least, most float64 // share of fuel
		notes       []string
	}{
		// 5 % of fuel make a 20 of a 30 (published): 2.5 L and 132 mL.
		{`{"volume":"2.5 L","rise":"132 mL","beforeAt":"20","nowAt":"20","grade":"10W-30","fresh":"10.9"}`, "fuel.may-be-much", 0.026, 0.075, []string{"fuel-may-be-below", "fuel-hidden", "fuel-or-water"}},
		{`{"volume":"2.5 L","rise":"300 mL","beforeAt":"20","nowAt":"20","grade":"10W-30"}`, "fuel.stop", 0.08, 0.13, []string{"fuel-below", "fuel-hidden", "fuel-or-water"}},
		// Nothing is known of the temperatures: it may all be heat, and is said to be.
		{`{"volume":"3 L","rise":"120 mL","grade":"10W-40","fresh":"14.5"}`, "fuel.may-be-much", 0, 0.1, []string{"heat-or-fuel", "fuel-may-be-below", "fuel-hidden", "fuel-or-water"}},
		// It was cold before, and is hot: heat makes 160 mL of 3 L in 75 K.
		{`{"volume":"3 L","rise":"140 mL","beforeAt":"15","nowAt":"90"}`, "fuel.not-told", 0, 0.017, []string{"fuel-hidden", "fuel-or-water"}},
		// It was hot before, and is cold: so much more came in.
		{`{"volume":"3 L","rise":"140 mL","beforeAt":"90","nowAt":"15"}`, "fuel.stop", 0.068, 0.107, []string{"fuel-hidden", "fuel-or-water"}},
		// What came out.
		{`{"volume":"3 L","out":"3.6 L","beforeAt":"20","nowAt":"20"}`, "fuel.stop", 0.085, 0.235, []string{"fuel-hidden", "fuel-or-water"}},
		{`{"volume":"3 L","out":"3.1 L","beforeAt":"20","nowAt":"20"}`, "fuel.may-be-much", 0, 0.123, []string{"fuel-hidden", "fuel-or-water"}},
		// A level that has not risen rules nothing out.
		{`{"volume":"3 L","before":"70 %","now":"60 %","band":"500 mL","beforeAt":"20","nowAt":"20"}`, "fuel.not-told", 0, 0.011, []string{"fuel-hidden", "fuel-or-water"}},
		// Measured: 12.2 of a 40 may be shearing alone, 11.2 may not.
		{`{"volume":"3 L","measured":"12.2","grade":"10W-40","fresh":"14.5"}`, "fuel.may-be-much", 0, 0.035, []string{"fuel-may-be-below", "fuel-or-worn", "fuel-or-water"}},
		{`{"volume":"3 L","measured":"11.2","grade":"10W-40","fresh":"14.5"}`, "fuel.stop", 0.007, 0.051, []string{"fuel-below", "fuel-or-worn", "fuel-or-water"}},
		// The level has risen by a tenth, and the oil is as thick as new: that is no fuel.
		{`{"volume":"3 L","rise":"300 mL","beforeAt":"20","nowAt":"20","measured":"14.5","grade":"10W-40","fresh":"14.5"}`, "fuel.stop", 0, 0.004, []string{"rise-is-not-fuel", "fuel-or-worn", "fuel-hidden", "fuel-or-water"}},
	} {
		a := calculated(t, "fuel", c.in)
		share := a.last("fuel-by-rise")
		if by := a.last("fuel-by-viscosity"); by.Name != "" {
			share = by
		}
		if a.Verdict != c.verdict || math.Abs(share.Low-c.least) > 0.006 || math.Abs(share.High-c.most) > 0.006 {
			t.Errorf("%s: %s, %v to %v, want %s, %v to %v", c.in, a.Verdict, share.Low, share.High, c.verdict, c.least, c.most)
		}
		for _, code := range c.notes {
			if !slices.Contains(a.found(), code) {
				t.Errorf("%s: %s is not said: %v", c.in, code, a.found())
			}
		}
	}
	for _, c := range []struct{ in, code, where string }{
		{`{}`, "missing", "/volume"},
		{`{"volume":"3 L"}`, "fuel-nothing-read", "/rise"},
		{`{"volume":"3 L","now":"120 %","before":"50 %"}`, "missing", "/band"},
		{`{"volume":"3 L","rise":"200 mL","nowAt":"20"}`, "missing", "/beforeAt"},
		{`{"volume":"3 L","measured":"11"}`, "oil-no-viscosity", "/fresh"},
		{`{"volume":"3 L","measured":"11","grade":"10W"}`, "oil-no-viscosity", "/fresh"},
	} {
		a, outcome := do(t, "fuel", []byte(c.in))
		if outcome != core.Refused || a.Findings[0].Code != c.code || a.Findings[0].Where != c.where {
			t.Errorf("%s: %v %v, want %s at %s", c.in, outcome, a.Findings, c.code, c.where)
		}
	}
}

// The verdict is never milder than what is shown allows, whatever was read and in
// whatever units: from a most of 4 % on the engine stays off, and so it does where the
// oil is below its grade. More rise is never milder, and none is ever fine. Water is
// named each time.
func TestFuel_NeverMilderThanItsFigures(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		volume := rapid.Float64Range(0.3, 6).Draw(r, "volume")
		number := func(name string, low, high float64) string {
			return strconv.FormatFloat(rapid.Float64Range(low, high).Draw(r, name), 'f', 3, 64)
		}
		unit := rapid.SampledFrom([]string{"L", "US qt", "imp pt"}).Draw(r, "unit")
		in := `{"volume":"` + strconv.FormatFloat(volume, 'f', 3, 64) + " " + unit + `"`
		rise := rapid.Float64Range(0.01, 0.5).Draw(r, "rise")
		risen := func(more float64) string {
			return `,"rise":"` + strconv.FormatFloat(rise+more, 'f', 3, 64) + " " + unit + `"`
		}
		rest := ""
		if rapid.Bool().Draw(r, "temperatures") {
			rest += `,"beforeAt":"` + number("before", 0, 100) + `","nowAt":"` + number("now", 0, 100) + `"`
		}
		grade := rapid.SampledFrom([]string{"", "10W-40", "5W-30", "20W-50", "30", "10W"}).Draw(r, "grade")
		if grade != "" {
			rest += `,"grade":"` + grade + `"`
		}
		if grade != "" && grade != "10W" && rapid.Bool().Draw(r, "measured too") {
			rest += `,"measured":"` + number("measured", 4, 20) + `"`
		}
		a := calculated(t, "fuel", in+risen(0)+rest+"}")
		rank := slices.Index(fuelVerdicts, a.Verdict)
		for _, share := range append(a.named("fuel-by-rise"), a.named("fuel-by-viscosity")...) {
			if share.Low > share.High || share.Low < 0 || share.High >= 1 {
				r.Fatalf("%s%s%s: %v to %v", in, risen(0), rest, share.Low, share.High)
			}
			if share.High >= 0.04 && rank < 2 || share.Low >= 0.04 && rank < 3 || share.Low > 0 && rank < 1 {
				r.Fatalf("%s%s%s: %s of %v to %v", in, risen(0), rest, a.Verdict, share.Low, share.High)
			}
		}
		if slices.Contains(a.found(), "fuel-below") && rank < 3 || rank < 0 {
			r.Fatalf("%s%s%s: %s, %v", in, risen(0), rest, a.Verdict, a.found())
		}
		if more := slices.Index(fuelVerdicts, calculated(t, "fuel", in+risen(0.05)+rest+"}").Verdict); more < rank {
			r.Fatalf("%s%s%s: with more rise it is milder", in, risen(0), rest)
		}
		if !slices.Contains(a.found(), "fuel-or-water") {
			r.Fatalf("%s: water is not named: %v", in, a.found())
		}
	})
}

// How much of a bottle reaches what is wanted is put into the calculation again, and gives
// it; what lies outside the two oils is reached by nothing, and no share reaches it.
func TestOilMix_HowMuch(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		figure := func(name string, low, high float64) float64 {
			return math.Round(rapid.Float64Range(low, high).Draw(r, name)*100) / 100
		}
		first, second, want := figure("first", 4, 26), figure("second", 4, 26), figure("want", 4, 26)
		unit := rapid.SampledFrom([]string{"L", "US qt", "imp pt"}).Draw(r, "unit")
		given := `{"firstVolume":"2.5 ` + unit + `","firstViscosity":"` + typedNumber(first) + `","secondViscosity":"` + typedNumber(second) + `"`
		in := given + `,"want":"` + typedNumber(want) + `"}`
		a := calculated(t, "oil-mix", in)
		never := want < min(first, second) || want > max(first, second)
		if never != slices.Contains(a.found(), "mix-never") {
			r.Fatalf("%s: %v", in, a.found())
		}
		needed := a.last("second-volume")
		// Beyond these no amount is taken for one that somebody mixes.
		if needed.Standing == "unknown" || needed.Low < 0.001 || needed.Low > 1000 {
			return
		}
		again := given + `,"secondVolume":"` + typedNumber(needed.Low) + ` L"}`
		if made := calculated(t, "oil-mix", again).last("viscosity-mix").Low; math.Abs(made/want-1) > 0.005 {
			r.Fatalf("%s: %v L, which makes %v", in, needed.Low, made)
		}
	})
	for in, want := range map[string]string{
		`{"firstVolume":"3 L","firstViscosity":"14.5","secondViscosity":"10.9","want":"16"}`:                                        "mix-never",
		`{"firstVolume":"3 L","firstViscosity":"14.5","secondViscosity":"10.9","want":"10.9"}`:                                      "mix-second-alone",
		`{"firstVolume":"3 L","firstGrade":"10W-40","secondGrade":"5W-30","want":"13"}`:                                             "mix-unsure",
		`{"firstVolume":"3 L","firstGrade":"20W-50","secondGrade":"5W-30","want":"14"}`:                                             "mix-estimate",
		`{"firstVolume":"3 L","firstGrade":"20W-50","secondGrade":"5W-30","want":"30"}`:                                             "mix-never",
		`{"firstVolume":"3 L","firstViscosity":"14.5","secondViscosity":"10.9","want":"13","secondVolume":"1 L"}`:                   "mix-too-little",
		`{"firstVolume":"3 L","firstViscosity":"97","secondViscosity":"66","want":"80","secondVolume":"9 L","temperature":"40 °C"}`: "mix-estimate",
	} {
		if a := calculated(t, "oil-mix", in); !slices.Contains(a.found(), want) {
			t.Errorf("%s: %s is not said: %v", in, want, a.found())
		}
	}
}
