package fill_test

import (
	"testing"

	"tidysump/internal/fill"
)

// Common practice, no source: a tenth or 0.1 L says nothing.
func TestCompareCaught(t *testing.T) {
	for _, c := range []struct {
		out, due float64
		want     fill.Caught
	}{
		{3, 3, fill.AsMuch}, {2.71, 3, fill.AsMuch}, {3.29, 3, fill.AsMuch},
		{2.69, 3, fill.Less}, {2.01, 3, fill.Less}, {1.99, 3, fill.FarLess}, {0, 3, fill.FarLess},
		{3.31, 3, fill.More}, {5, 3, fill.More},
		{0.1, 0.2, fill.AsMuch}, {0.09, 0.2, fill.FarLess}, // a tenth of a litre is what a jug can't show
		{2, 0, fill.NoCompare}, {0, 0, fill.NoCompare},
	} {
		if got := fill.CompareCaught(c.out, c.due); got != c.want {
			t.Errorf("CompareCaught(%v, %v) = %s, want %s", c.out, c.due, got, c.want)
		}
	}
}

// The words at the edges of the band.
func TestLevelAt(t *testing.T) {
	for _, c := range []struct {
		share float64
		want  fill.Level
	}{{-0.01, fill.Below}, {0, fill.Low}, {0.24, fill.Low}, {0.25, fill.Middle}, {0.75, fill.Middle}, {0.76, fill.High}, {1, fill.High}, {1.01, fill.Above}} {
		if got := fill.LevelAt(c.share); got != c.want {
			t.Errorf("LevelAt(%v) = %s, want %s", c.share, got, c.want)
		}
	}
}
