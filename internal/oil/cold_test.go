package oil

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The temperatures are those at which J300 has a grade pumped and at which J306 has one
// measured; a pour point that is warmer counts before them.
func TestColdOf(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		grade    string
		pour     float64
		at, most float64
		why      Stop
	}{
		{"0W-20", none, -40, 60000, Pumping},
		{"10W-40", none, -30, 60000, Pumping},
		{"25W-60", none, -15, 60000, Pumping},
		{"20W", none, -20, 60000, Pumping},
		{"75W-90", none, -40, 150000, Pumping},
		{"85W-140", none, -12, 150000, Pumping},
		{"10W-40", -33, -30, 60000, Pumping},
		{"10W-40", -27, -27, 60000, Pour},
		{"50", none, -15, 60000, Unstated},
		{"50", -9, -9, 60000, Pour},
		{"50", -24, -24, 60000, Pour},
		{"140", none, -15, 60000, Unstated},
		{"", none, -15, 60000, Unstated},
		{"", -36, -36, 60000, Pour},
	} {
		g, _ := ReadGrade(c.grade)
		if got := ColdOf(g, c.pour); got != (Cold{c.at, c.most, c.why}) {
			t.Errorf("%q with a pour point of %v °C: %v, want %v", c.grade, c.pour, got, c)
		}
	}
}

// Nothing is told below where it stops, nor of what is thicker than may be pumped.
func TestColdTells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Grade{rapid.IntRange(0, len(winterNames)-1).Draw(t, "winter"), rapid.IntRange(0, len(summerNames)-1).Draw(t, "summer")}
		c := ColdOf(g, rapid.SampledFrom([]float64{math.NaN(), -50, -30, -12, 0}).Draw(t, "pour"))
		at := rapid.Float64Range(LeastHeat, MostHeat).Draw(t, "at")
		v := math.Pow(10, rapid.Float64Range(0, 6).Draw(t, "log10 v"))
		thick := v * Density(UsualDensity, at) / 1000
		if got, want := c.Tells(at, v), at >= c.At && thick <= c.Most; got != want {
			t.Fatalf("%s at %v °C with %v mPa·s: told %v; it stops at %v", g.String(), at, thick, got, c)
		}
		if c.Tells(at, math.NaN()) || c.Tells(c.At-1, 1) {
			t.Fatal("what isn't known is told, or what is colder")
		}
	})
}
