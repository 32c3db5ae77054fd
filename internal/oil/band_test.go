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
	if s, ok := SpreadOf(gear, 90, 185); !ok {
		t.Error("75W-90 has no spread")
	} else if l, h := s.At(100); l != 13.5 || h != 18.5 {
		t.Errorf("75W-90 at 100 °C: %v to %v", l, h)
	}
	if _, ok := SpreadOf(Grade{}, 90, 110); ok {
		t.Error("no grade has a spread")
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

// Two readings: what was typed is told where it was typed, to the last bit; between them
// the line; beyond them what readings that are each 1 % wrong leave open, more the
// farther it goes. The inverse gives the temperature back.
func TestMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cold := rapid.Float64Range(-20, 100).Draw(t, "cold")
		hot := cold + rapid.Float64Range(LeastApart, 100).Draw(t, "apart")
		at100 := rapid.Float64Range(3, 30).Draw(t, "at100")
		true1, ok := FromIndex(at100, rapid.Float64Range(LeastIndex, MostIndex).Draw(t, "index"))
		v1, v2 := true1.At(cold), true1.At(hot)
		if !ok || math.IsNaN(v1+v2) {
			t.Skip("no oil")
		}
		at1, first, at2, second := cold, v1, hot, v2
		if rapid.Bool().Draw(t, "the warmer first") {
			at1, first, at2, second = hot, v2, cold, v1
		}
		s, ok := Measured(at1, first, at2, second)
		if !ok {
			t.Fatalf("%v at %v °C and %v at %v °C are no oil", v1, cold, v2, hot)
		}
		for at, v := range map[float64]float64{cold: v1, hot: v2} {
			if l, h := s.At(at); l != v || h != v {
				t.Fatalf("%v was typed at %v °C, told %v to %v", v, at, l, h)
			}
		}
		at := rapid.Float64Range(-20, 150).Draw(t, "at")
		l, h := s.At(at)
		if math.IsNaN(l + h) {
			t.Skip("outside the relation")
		}
		off := func(name string) float64 { return 1 + rapid.Float64Range(-misread, misread).Draw(t, name) }
		wrong, ok := LineThrough(cold, v1*off("first off"), hot, v2*off("second off"))
		got := wrong.At(at)
		switch beyond := s.Beyond(at); {
		case beyond == 0 && (l != h || !near(l/true1.At(at), 1, 1e-9)):
			t.Fatalf("between the readings, at %v °C: %v to %v, want %v", at, l, h, true1.At(at))
		case beyond > 1e-3 && !(l < h):
			t.Fatalf("%v K beyond the readings, at %v °C: %v to %v", beyond, at, l, h)
		case ok && beyond > 0 && (got < l*(1-misread)*(1-1e-3) || got > h*(1+misread)*(1+1e-3)):
			t.Fatalf("%v K beyond: a reading 1 %% wrong gives %v, told %v to %v", beyond, got, l, h)
		}
		if back, back2 := s.Temperature(l); !near(back, at, 1e-6) || back2 < back-1e-9 {
			t.Fatalf("%v mm²/s at %v to %v °C, not %v", l, back, back2, at)
		}
	})
}

// With LeastApart between them, readings that are 1 % wrong move what is told at 100 °C by
// less than a tenth of a grade each way; with half of that, by a fifth.
func TestLeastApart(t *testing.T) {
	off := func(apart float64) float64 {
		line, _ := FromIndex(14.4, 140)
		low, high := measured(t, 40, line.At(40), 40+apart, line.At(40+apart)).At(100)
		return (high - low) / 2 / (16.3 - 12.5)
	}
	if off(LeastApart) > 0.1 || off(LeastApart/2) < 0.2 {
		t.Errorf("off by %v of a grade with 20 K between the readings, by %v with 10", off(LeastApart), off(LeastApart/2))
	}
}

// Readings beside 40 or 100 °C leave a range of index open, which holds the true one.
func TestIndexes(t *testing.T) {
	if low, high, ok := measured(t, 40, 97, 100, 14.5).Indexes(); !ok || low != high || math.RoundToEven(low) != 155 {
		t.Errorf("97 at 40 °C and 14.5 at 100 °C: %v to %v", low, high)
	}
	for _, at := range [][2]float64{{20, 60}, {40, 80}, {50, 100}, {70, 120}, {50, 90}} {
		line, _ := FromIndex(14.5, 155)
		low, high, ok := measured(t, at[0], line.At(at[0]), at[1], line.At(at[1])).Indexes()
		if !ok || !(low < 155 && high > 155) {
			t.Errorf("readings at %v °C of an oil of 155: %v to %v", at, low, high)
		}
	}
}

func measured(t *testing.T, at1, v1, at2, v2 float64) *Spread {
	t.Helper()
	s, ok := Measured(at1, v1, at2, v2)
	if !ok {
		t.Fatalf("no oil through %v at %v °C and %v at %v °C", v1, at1, v2, at2)
	}
	return s
}
