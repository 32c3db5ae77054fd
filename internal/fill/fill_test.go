package fill_test

import (
	"math"
	"testing"

	"tidysump/internal/fill"
)

// Common practice, no source: 85 to 90 % goes in before the first start.
// Worked: of 3.0 L it is 2.625 L, and 0.375 L is kept.
func TestFirst(t *testing.T) {
	for _, f := range []struct{ due, want float64 }{{3, 2.625}, {0, 0}, {0.8, 0.7}} {
		if got := fill.First(f.due); math.Abs(got-f.want) > 1e-12 {
			t.Errorf("First(%g) = %g, want %g", f.due, got, f.want)
		}
	}
	if share := fill.First(1); share < 0.85 || share > 0.90 {
		t.Errorf("the first share is %g, want 0.85 to 0.90", share)
	}
}

// Common practice, no source: within a tenth is right, a quarter too much must
// come out before the start. Exactly on a limit is still on the better side.
func TestCompare(t *testing.T) {
	for _, f := range []struct {
		poured, due float64
		want        fill.Verdict
	}{
		{3, 3, fill.Right},
		{2.71, 3, fill.Right},
		{2.69, 3, fill.Short},
		{0, 3, fill.Short},
		{3.29, 3, fill.Right},
		{3.31, 3, fill.Over},
		{3.74, 3, fill.Over},
		{3.76, 3, fill.FarOver},
		{3.7, 3.1, fill.Over}, // the figure of the dry engine poured at a change
		{1.25, 1, fill.Over},
		{1, 0, fill.NoFigure},
	} {
		if got := fill.Compare(f.poured, f.due); got != f.want {
			t.Errorf("Compare(%g, %g) = %q, want %q", f.poured, f.due, got, f.want)
		}
	}
}

// Common practice, no source: half as much again.
func TestTrayFor(t *testing.T) {
	if got := fill.TrayFor(3.4); math.Abs(got-5.1) > 1e-12 {
		t.Errorf("TrayFor(3.4) = %g, want 5.1", got)
	}
}
