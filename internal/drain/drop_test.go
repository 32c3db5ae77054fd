package drain

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The table of Harkins and Brown, by radius over the cube root of the volume, as text
// books print it (from memory): the share of Tate's ideal drop that falls.
func TestDripFactor_HarkinsBrown(t *testing.T) {
	for _, row := range [][2]float64{
		{0.30, 0.7256}, {0.40, 0.6828}, {0.50, 0.6515}, {0.60, 0.6250}, {0.70, 0.6093}, {0.80, 0.6000},
		{0.90, 0.5998}, {1.00, 0.6098}, {1.10, 0.6280}, {1.20, 0.6535},
	} {
		if got := 1 / (2 * math.Pi * dripFactor(row[0])); math.Abs(got/row[1]-1) > 0.015 {
			t.Errorf("at %v: %v of Tate's drop, printed %v", row[0], got, row[1])
		}
	}
}

// Water of 72.8 mN/m and 998 kg/m³ from a tip of 3 mm: 0.0475 mL a drop, some twenty
// to the mL, as pharmacists count (worked out apart by trying). An oil's is 0.02 to
// 0.07 mL; one of 0.04 mL is the trade's round figure, from memory.
func TestDropVolume(t *testing.T) {
	v, ok := dropVolume(1.5e-3, 0.0728, 998)
	if !ok {
		t.Fatal("no drop of water")
	}
	near(t, "mL a drop of water", v*1e6, 0.0475, 0.0002)
	low, high := Drop(UsualEdge, WideEdge)
	near(t, "least drop of oil", low*1e6, 0.0169, 0.0002)
	near(t, "largest drop of oil", high*1e6, 0.0739, 0.0005)
	if low > 0.04e-6 || high < 0.04e-6 {
		t.Errorf("0.04 mL is not within %v to %v", low, high)
	}
	for _, radius := range []float64{0, -1, 0.2e-3, 6e-3, math.NaN()} {
		if v, ok := dropVolume(radius, 0.03, 850); ok || !math.IsNaN(v) {
			t.Errorf("a radius of %v m has drops of %v m³", radius, v)
		}
	}
}

// A drop obeys the law it was solved from, whatever the edge, and a wider edge never
// has a smaller one; every edge that may be typed has one.
func TestDrop_ObeysTheLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.Float64Range(NarrowEdge, WideEdge).Draw(t, "edge")
		wider := rapid.Float64Range(edge, WideEdge).Draw(t, "wider")
		tension := rapid.Float64Range(leastTension, mostTension).Draw(t, "tension")
		density := rapid.Float64Range(leastDensity, mostDensity).Draw(t, "density")
		low, high := Drop(edge, wider)
		v, ok := dropVolume(edge/2, tension, density)
		if !(ok && low > 0 && low <= v*(1+1e-9) && v <= high*(1+1e-9)) {
			t.Fatalf("%v to %v m: %v to %v m³, and %v at %v N/m, %v kg/m³", edge, wider, low, high, v, tension, density)
		}
		if weight, holds := v*density*gravity, edge/2*tension/dripFactor(edge/2/math.Cbrt(v)); math.Abs(weight/holds-1) > 1e-6 {
			t.Fatalf("a drop of %v N hangs by %v N", weight, holds)
		}
	})
}

// Drops that fall evenly are found by taps with a late hand; what was tapped is in the
// range, and taps that don't follow one another are none.
func TestTapped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		every := rapid.Float64Range(0.5, 30).Draw(t, "every")
		times := make([]float64, rapid.IntRange(FewestTaps, 40).Draw(t, "taps"))
		for n := range times {
			times[n] = every*float64(n) + rapid.Float64Range(0, tapTo).Draw(t, "late")
		}
		d, ok := Tapped(times)
		if !ok || d.Low > 1/every*(1+1e-9) || d.High < 1/every*(1-1e-9) || d.Uneven {
			t.Fatalf("a drop every %v s: %+v, %v of %v", every, d, ok, times)
		}
	})
	for _, bad := range [][]float64{nil, {1, 2, 3}, {1, 2, 2, 3}, {4, 3, 2, 1}, {0, 1, math.NaN(), 3}} {
		if d, ok := Tapped(bad); ok {
			t.Errorf("%v: %+v", bad, d)
		}
	}
	if d, ok := Tapped([]float64{0, 1, 2, 3, 8, 9, 10, 11}); !ok || !d.Uneven {
		t.Errorf("a long gap is even: %+v", d)
	}
	if d := Counted(12, 60); d.Low != 11.0/60 || d.High != 13.0/60 {
		t.Errorf("12 in a minute: %+v", d)
	}
}

// What was timed lies within what is told, and a coarser reading tells less.
func TestTimed_HoldsWhatWasTimed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		least := rapid.Float64Range(0.2, 3600).Draw(t, "least")
		most := least + rapid.Float64Range(0, 100).Draw(t, "wider")
		half := rapid.Float64Range(0, 10).Draw(t, "half")
		d, coarse := Timed(least, most, half), Timed(least, most, half+1)
		if !(d.Low > 0 && d.Low <= 1/most && d.High >= 1/least && coarse.Low <= d.Low && coarse.High >= d.High) {
			t.Fatalf("every %v to %v s, half %v: %+v, coarser %+v", least, most, half, d, coarse)
		}
	})
}
