package oil

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSpreadOf(t *testing.T) {
	for _, text := range []string{"10W-40", "5W-30", "20W-50", "30", "0W-8", "10W-60"} {
		g, _ := ReadGrade(text)
		low, high := AssumedIndex(g)
		s, ok := SpreadOf(g, low, high)
		_, limits, _ := g.Limits()
		if l, h := s.At(100); !ok || !near(l, limits.Least, 1e-9) || !near(h, limits.Below, 1e-9) {
			t.Errorf("%s at 100 °C: %v to %v", text, l, h)
		}
	}
	w, _ := ReadGrade("10W")
	s, ok := SpreadOf(w, 90, 110)
	if l, h := s.At(40); !ok || l != h {
		t.Errorf("a bare 10W is bounded above at 40 °C: %v to %v", l, h)
	}
	gear, _ := ReadGrade("75W-90")
	for _, g := range []Grade{gear, {}} {
		if _, ok := SpreadOf(g, 90, 110); ok {
			t.Errorf("%q has a spread", g.String())
		}
	}
	if _, ok := SpreadOf(w, math.NaN(), math.NaN()); ok {
		t.Error("an index that is none has a spread")
	}
}

// Measured oils of public data sheets and data bases lie within the assumed
// range of their grade.
func TestAssumedIndexHoldsMeasuredOils(t *testing.T) {
	for _, c := range []struct {
		grade     string
		v40, v100 float64
	}{
		{"5W-30", 73, 12.3}, {"10W-40", 100, 14.4}, {"15W-40", 115, 15.4}, {"5W-40", 80.53, 13.44}, {"0W-20", 47, 8.9},
		{"10W-60", 160, 24}, {"20W-40", 123, 14}, {"40", 145, 15}, {"15W-40", 112, 15},
	} {
		g, _ := ReadGrade(c.grade)
		low, high := AssumedIndex(g)
		if index, ok := Index(c.v40, c.v100); !ok || index < low || index > high {
			t.Errorf("%s with %v and %v: index %v is not within %v to %v", c.grade, c.v40, c.v100, index, low, high)
		}
		s, _ := SpreadOf(g, low, high)
		if l, h := s.At(40); c.v40 < l || c.v40 > h {
			t.Errorf("%s: %v at 40 °C is not within %v to %v", c.grade, c.v40, l, h)
		}
	}
}

func TestSpreadProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Grade{rapid.IntRange(0, gearWinter-1).Draw(t, "winter"), rapid.IntRange(1, gearSummer-1).Draw(t, "summer")}
		low, high := AssumedIndex(g)
		s, ok := SpreadOf(g, low, high)
		_, limits, possible := g.Limits()
		if ok != possible {
			t.Fatalf("%s: spread %v, limits %v", g.String(), ok, possible)
		}
		if !ok {
			return
		}
		at := rapid.Float64Range(-10, 119).Draw(t, "at")
		l, h := s.At(at)
		l2, h2 := s.At(at + 1)
		if !(l > 0 && l < h && l2 < l && h2 < h) {
			t.Fatalf("%s at %v °C: %v to %v, a degree warmer %v to %v", g.String(), at, l, h, l2, h2)
		}
		if back, back2 := s.Temperature(l); !near(back, at, 1e-6) || !(back2 >= back) {
			t.Fatalf("%s: %v mm²/s at %v to %v °C, not %v", g.String(), l, back, back2, at)
		}
		// Any oil of the grade with an index of the range lies within.
		v := rapid.Float64Range(limits.Least, limits.Below).Draw(t, "v")
		line, ok := FromIndex(v, rapid.Float64Range(low, high).Draw(t, "index"))
		if got := line.At(at); !ok || got < l*(1-1e-9) || got > h*(1+1e-9) {
			t.Fatalf("%s at %v °C: %v is not within %v to %v", g.String(), at, got, l, h)
		}
	})
}
