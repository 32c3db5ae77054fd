package due_test

import (
	"math"
	"testing"

	"tidysump/internal/due"
)

// 1 US quart in 1,000 miles is 0.588 L per 1,000 km, by NIST SP 811's factors
// (0.946353 L, 1.609344 km); 1 quart in 2,000 miles half of it.
func TestConsumption(t *testing.T) {
	for _, c := range []struct{ lost, km, want float64 }{
		{0.946353, 1609.344, 0.588},
		{0.946353, 2 * 1609.344, 0.294},
		{0.6, 6000, 0.1},
		{-0.2, 4000, -0.05},
	} {
		got, ok := due.Consumption(c.lost, c.km)
		if !ok || math.Abs(got-c.want) > 5e-4 {
			t.Errorf("Consumption(%v, %v) = %v, %v; want %v", c.lost, c.km, got, ok, c.want)
		}
	}
	for _, km := range []float64{0, -100, 499} {
		if got, ok := due.Consumption(0.1, km); ok {
			t.Errorf("over %v km the use is said to be %v", km, got)
		}
	}
}

// From the top mark to a quarter of a band of 0.8 L.
func TestLost(t *testing.T) {
	if got := due.Lost(1, 0.25, 0.8); math.Abs(got-0.6) > 1e-9 {
		t.Errorf("Lost(1, 0.25, 0.8) = %v, want 0.6", got)
	}
}

// Common practice, no source.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		use  float64
		want due.Use
	}{{0, due.Little}, {0.1, due.Little}, {0.2, due.Usual}, {0.3, due.Usual}, {0.31, due.High}, {0.5, due.High}, {0.51, due.Undue}} {
		if got := due.Judge(c.use); got != c.want {
			t.Errorf("Judge(%v) = %s, want %s", c.use, got, c.want)
		}
	}
}

// What came in is never little use, however little it is.
func TestRise(t *testing.T) {
	for _, c := range []struct {
		litres, shown float64
		want          due.Use
		ok            bool
	}{{0.2, 0.05, due.Gained, true}, {0.05, 0.05, due.Gained, true}, {0.04, 0.05, due.Risen, true}, {0.001, 0.05, due.Risen, true}, {0, 0.05, due.Risen, false}, {-0.2, 0.05, due.Risen, false}} {
		if got, ok := due.Rise(c.litres, c.shown); got != c.want || ok != c.ok {
			t.Errorf("Rise(%v, %v) = %s, %v; want %s, %v", c.litres, c.shown, got, ok, c.want, c.ok)
		}
	}
}

// Common practice, no source.
func TestCompare(t *testing.T) {
	for _, c := range []struct {
		before, now float64
		want        due.Trend
	}{
		{0.1, 0.2, due.Doubled}, {0.02, 0.04, due.Steady}, {0, 0.06, due.Doubled}, {0.2, 0.3, due.More},
		{0.3, 0.2, due.Less}, {0.2, 0.22, due.Steady}, {0.6, 1.2, due.Doubled},
	} {
		if got := due.Compare(c.before, c.now); got != c.want {
			t.Errorf("Compare(%v, %v) = %s, want %s", c.before, c.now, got, c.want)
		}
	}
}
