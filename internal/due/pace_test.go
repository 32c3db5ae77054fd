package due_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/due"
)

func readings(days, counts []float64) []due.Reading {
	list := make([]due.Reading, len(days))
	for n := range days {
		list[n] = due.Reading{Day: days[n], Count: counts[n]}
	}
	return list
}

// The worked example of Sen (1968), as SciPy's tests of theilslopes give it: the
// slope is 4, and in 93 of 100 cases between 26/7 and 35/8 (SciPy has 3.71 and
// 4.38).
func TestSlope_Sen(t *testing.T) {
	list := readings([]float64{1, 2, 3, 4, 10, 12, 18}, []float64{9, 15, 19, 20, 45, 55, 78})
	const z = 1.8119 // of 93 %
	got, ok := due.Slope(list, z)
	if !ok || got.Middle != 4 || math.Abs(got.Low-26.0/7) > 1e-9 || math.Abs(got.High-35.0/8) > 1e-9 {
		t.Errorf("got %+v, %v; want 26/7, 4, 35/8", got, ok)
	}
}

// One reading typed with a digit too many moves the middle little.
func TestPaceOf_OneSlip(t *testing.T) {
	var list []due.Reading
	for n := range 9 {
		list = append(list, due.Reading{Day: float64(60 * n), Count: 12000 + 1200*float64(n)})
	}
	list[4].Count *= 10
	if got, ok := due.PaceOf(list); !ok || math.Abs(got.Middle-20) > 1 {
		t.Errorf("pace %+v, %v; want about 20 km a day", got, ok)
	}
}

func TestPaceOf_Unknown(t *testing.T) {
	for name, list := range map[string][]due.Reading{
		"none":           nil,
		"one":            {{Day: 0, Count: 12400}},
		"same day":       {{Day: 0, Count: 12400}, {Day: 0, Count: 12500}},
		"four weeks":     {{Day: 0, Count: 12400}, {Day: 28, Count: 13000}},
		"gone backwards": {{Day: 0, Count: 12400}, {Day: 200, Count: 1000}},
		"stood still":    {{Day: 0, Count: 12400}, {Day: 200, Count: 12400}},
	} {
		if got, ok := due.PaceOf(list); ok {
			t.Errorf("%s: pace %+v", name, got)
		}
	}
}

// Two readings half a year apart say 20 km a day, and no better than by half.
func TestPaceOf_Two(t *testing.T) {
	got, ok := due.PaceOf([]due.Reading{{Day: 0, Count: 12400}, {Day: 180, Count: 16000}})
	if want := (due.Pace{Low: 10, Middle: 20, High: 30}); !ok || got != want {
		t.Errorf("pace %+v, %v; want %+v", got, ok, want)
	}
	early, middle, late := got.When(due.Reading{Day: 180, Count: 16000}, 22000)
	if early != 380 || middle != 480 || late != 780 {
		t.Errorf("6000 km take from %v by %v to %v, want 380, 480, 780", early, middle, late)
	}
}

// The spread always holds the middle, and a mark further on is never reached
// earlier.
func TestPaceOf_Spread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []due.Reading
		day, count := 0.0, 0.0
		for range rapid.IntRange(2, 60).Draw(t, "readings") {
			day += float64(rapid.IntRange(0, 300).Draw(t, "days"))
			count += float64(rapid.IntRange(0, 9000).Draw(t, "km"))
			list = append(list, due.Reading{Day: day, Count: count})
		}
		p, ok := due.PaceOf(list)
		if !ok {
			return
		}
		last := list[len(list)-1]
		a := rapid.Float64Range(0, 50000).Draw(t, "near")
		b := a + rapid.Float64Range(0, 50000).Draw(t, "further")
		e1, m1, l1 := p.When(last, last.Count+a)
		e2, m2, l2 := p.When(last, last.Count+b)
		if p.Low > p.Middle || p.Middle > p.High || e1 > m1 || m1 > l1 || e2 < e1 || m2 < m1 || l2 < l1 {
			t.Fatalf("%+v: %v km in %v %v %v, %v km in %v %v %v", p, a, e1, m1, l1, b, e2, m2, l2)
		}
	})
}
