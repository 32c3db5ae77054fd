package quantity_test

import (
	"math"
	"testing"

	"tidysump/internal/quantity"
)

// Facts that others publish. "printed" are figures of NIST SP 811 (2008),
// appendix B.8 and B.9, with its number of digits; "exact" follow from the
// definitions: yard and pound agreement of 1959 (ft = 0.3048 m, lb = 0.45359237
// kg), standard gravity 9.80665 m/s², US gallon 231 in³, Imperial gallon
// 4.54609 L (UK Weights and Measures Act 1985).
var unitFacts = []struct {
	one, in string
	want    float64
	within  float64 // relative; half a unit of the last digit printed
	source  string
}{
	{"lbf·ft", "N·m", 1.355818, 5e-7 / 1.355818, "NIST SP 811 B.8, printed 1.355 818"},
	{"lbf·ft", "N·m", 1.3558179483314004, 1e-15, "exact, 0.3048 × 4.4482216152605"},
	{"lbf·in", "N·m", 0.1129848, 5e-8 / 0.1129848, "NIST SP 811 B.8, printed 1.129 848 E−01"},
	{"lbf·in", "N·m", 0.1129848290276167, 1e-15, "exact"},
	{"kgf·m", "N·m", 9.80665, 0, "NIST SP 811 B.8, exact"},
	{"psi", "kPa", 6.894757, 5e-7 / 6.894757, "NIST SP 811 B.8, printed 6.894 757"},
	{"psi", "kPa", 6.894757293168361, 1e-14, "exact"},
	{"bar", "kPa", 100, 0, "NIST SP 811 B.8, exact"},
	{"in", "mm", 25.4, 0, "NIST SP 811 B.8, exact"},
	{"mi", "km", 1.609344, 0, "NIST SP 811 B.8, exact"},
	{"US gal", "L", 3.785412, 5e-7 / 3.785412, "NIST SP 811 B.8, printed 3.785 412"},
	{"US gal", "L", 3.785411784, 0, "exact, 231 in³"},
	{"US qt", "L", 0.9463529, 5e-8 / 0.9463529, "NIST SP 811 B.8, printed 9.463 529 E−04 m³"},
	{"US qt", "L", 0.946352946, 1e-15, "exact"},
	{"US pt", "L", 0.4731765, 5e-8 / 0.4731765, "NIST SP 811 B.8, printed 4.731 765 E−04 m³"},
	{"US pt", "L", 0.473176473, 1e-15, "exact"},
	{"US fl oz", "mL", 29.57353, 5e-6 / 29.57353, "NIST SP 811 B.8, printed 2.957 353 E−05 m³"},
	{"US fl oz", "mL", 29.5735295625, 1e-14, "exact"},
	{"imp gal", "L", 4.54609, 0, "NIST SP 811 B.8, exact"},
	{"imp qt", "L", 1.1365225, 1e-15, "exact, a quarter of the gallon; not in SP 811"},
	{"imp pt", "L", 0.56826125, 1e-15, "exact, an eighth of the gallon; not in SP 811"},
	{"imp fl oz", "mL", 28.41306, 5e-6 / 28.41306, "NIST SP 811 B.8, printed 2.841 306 E−05 m³"},
	{"imp fl oz", "mL", 28.4130625, 1e-14, "exact, gallon / 160"},
	{"cu in", "mL", 16.387064, 1e-15, "exact, 2.54³ cm³"},
	{"cu in", "mL", 16.38706, 5e-6 / 16.38706, "NIST SP 811 B.8, printed 1.638 706 E−05 m³"},
	{"US gal", "cu in", 231, 1e-15, "definition"},
	{"lb", "kg", 0.4535924, 5e-8 / 0.4535924, "NIST SP 811 B.8, printed 4.535 924 E−01"},
	{"lb", "kg", 0.45359237, 0, "exact"},
	{"US gal", "US qt", 4, 1e-15, "definition"},
	{"US gal", "US pt", 8, 1e-15, "definition"},
	{"US gal", "US fl oz", 128, 1e-15, "definition"},
	{"imp gal", "imp qt", 4, 1e-15, "definition"},
	{"imp gal", "US gal", 1.200949925504855, 1e-15, "printed beside a copy of NIST SP 811"},
	{"imp gal", "imp fl oz", 160, 1e-15, "definition"},
	{"imp gal", "imp pt", 8, 1e-15, "definition"},
	{"turn", "°", 360, 0, "definition"},
	{"h", "s", 3600, 1e-15, "definition"},
	{"min", "s", 60, 1e-15, "definition"},
	{"months", "h", 365.25 * 24 / 12, 1e-15, "a twelfth of the Julian year, IAU"},
	{"L", "mL", 1000, 1e-15, "definition"},
	{"kg", "g", 1000, 1e-15, "definition"},
	{"L", "cL", 100, 1e-15, "definition"},
	{"L", "dL", 10, 1e-15, "definition"},
	{"daN·m", "N·m", 10, 0, "definition"},
	{"kgf·cm", "N·m", 0.0980665, 1e-15, "NIST SP 811 B.8, exact; GNU units 2.22"},
	{"cm", "mm", 10, 0, "definition"},
	{"m", "mm", 1000, 0, "definition"},
	{"ft", "m", 0.3048, 1e-15, "NIST SP 811 B.8, exact"},
	{"kgf/cm²", "kPa", 98.0665, 1e-15, "NIST SP 811 B.8, exact"},
	{"oz", "g", 28.34952, 5e-6 / 28.34952, "NIST SP 811 B.8, avoirdupois, printed 2.834 952 E−02 kg"},
	{"lb", "oz", 16, 1e-15, "definition"},
	{"days", "h", 24, 1e-15, "NIST SP 811 B.8, exact"},
	{"weeks", "days", 7, 1e-15, "definition"},
	{"years", "days", 365.25, 1e-15, "the Julian year, IAU"},
	{"kg/L", "kg/m³", 1000, 1e-15, "a litre is 0.001 m³, SI Brochure (9th ed.), table 8"},
}

func TestUnits_Published(t *testing.T) {
	for _, f := range unitFacts {
		got := convert(t, 1, f.one, f.in)
		if off := math.Abs(got-f.want) / f.want; off > f.within {
			t.Errorf("1 %s = %.17g %s, want %.17g within %g (%s)", f.one, got, f.in, f.want, f.within, f.source)
		}
	}
}

// Every unit is held against a fact: one in which nobody else's figure stands could
// have any factor. A kind with one unit has nothing to convert.
func TestUnits_EachHasAFact(t *testing.T) {
	of, facts := map[quantity.Kind]int{}, map[string]bool{}
	for _, u := range quantity.Units {
		of[u.Kind]++
	}
	for _, f := range unitFacts {
		facts[f.one], facts[f.in] = true, true
	}
	for _, p := range amountFacts {
		facts[p.from], facts[p.to] = true, true
	}
	for _, u := range quantity.Units {
		if of[u.Kind] > 1 && !facts[u.ID] {
			t.Errorf("no published fact about %s: add one with its source to unitFacts", u.ID)
		}
	}
}

// pair is a figure in two units, as a document has them side by side.
type pair struct {
	value    float64
	from, to string
	want     float64
	within   float64
	source   string
}

func checkPairs(t *testing.T, list []pair) {
	t.Helper()
	for _, f := range list {
		if got := convert(t, f.value, f.from, f.to); !(math.Abs(got-f.want) <= f.within) {
			t.Errorf("%g %s = %.15g %s, want %.15g (%s)", f.value, f.from, got, f.to, f.want, f.source)
		}
	}
}

// amountFacts are single conversions as documents print them.
var amountFacts = []pair{
	{19, "lbf·ft", "N·m", 25.8, 0.05, "TM 5-3805-274-13&P"},
	{27, "lbf·in", "N·m", 3.1, 0.05, "TM 9-6115-604-34 table 1-3"},
	{43, "lbf·in", "N·m", 4.9, 0.05, "TM 9-6115-604-34 table 1-3"},
	{12, "lbf·in", "N·m", 1.4, 0.05, "TM 9-6115-604-34 table 1-3"},
	{212, "°F", "°C", 100, 1e-12, "t/°C = (t/°F − 32)/1.8, NIST SP 811 B.8"},
	{70, "°F", "°C", 21.1111111111111, 1e-12, "GNU units 2.22, tempF(70)"},
	{90, "°C", "°F", 194, 1e-12, "GNU units 2.22, tempC(90)"},
	{-10, "°C", "°F", 14, 1e-12, "GNU units 2.22, tempC(-10)"},
	{-40, "°C", "°F", -40, 1e-12, "both scales meet at −40"},
	{6000, "km", "mi", 3728.22715342, 1e-8, "GNU units 2.22"},
	{3.5, "US qt", "L", 3.312235311, 1e-12, "GNU units 2.22"},
	{1, "US qt", "imp qt", 0.832674184628989, 1e-14, "GNU units 2.22"},
	{30, "psi", "bar", 2.06842718795, 1e-10, "GNU units 2.22"},
}

func TestUnits_PublishedAmounts(t *testing.T) { checkPairs(t, amountFacts) }

// The slip of a wrench set in lbf·ft to a figure in N·m: 30 becomes 40.7 N·m,
// more than a third too much (worked from the exact factor).
func TestUnits_WrenchSlip(t *testing.T) {
	if got := convert(t, 30, "lbf·ft", "N·m"); math.Abs(got-40.7) > 0.05 || math.Abs(got/30-1.356) > 5e-4 {
		t.Errorf("30 on the lbf·ft scale is %.3f N·m, want 40.7, +35.6 %%", got)
	}
}

func convert(t testing.TB, value float64, from, to string) float64 {
	t.Helper()
	f, okFrom := quantity.Find(from)
	g, okTo := quantity.Find(to)
	if !okFrom || !okTo || f.Kind != g.Kind {
		t.Fatalf("no conversion from %q to %q", from, to)
	}
	return g.FromBase(f.ToBase(value))
}
