package due_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/date"
	"tidysump/internal/due"
)

// Changed at 12 000 km, due at 22 000 km or a year later; after half a year 16 000 km. At
// 20 km a day it will be at 19 700 km when the year is over: the date comes first.
func TestPlotOf(t *testing.T) {
	start := float64(date.Day(2026, 2, 1))
	list := []due.Reading{{Day: start, Count: 12000}, {Day: start + 180, Count: 15600}}
	pace, known := due.PaceOf(list)
	p, ok := due.PlotOf(list, pace, known, due.Km, &due.Mark{12000, 0, start}, &due.Mark{22000, 0, start + 365}, start+200, 1)
	if !ok || len(p.Read) != 2 || p.Read[0] != (due.PlotPoint{}) || len(p.Middle) != 2 {
		t.Fatalf("%v %+v", ok, p)
	}
	if p.Middle[0] != p.Read[1] || p.Middle[1].X != p.Limit.X || p.Middle[1].Y >= p.Limit.Y {
		t.Errorf("the date comes first: %v to %v, limit %v", p.Middle[0], p.Middle[1], p.Limit)
	}
	if len(p.Spread) != 3 || p.Spread[1].X != p.Limit.X {
		// At 30 km a day it is at 21 150 km when the year is over.
		t.Errorf("spread %v", p.Spread)
	}
	var days []string
	for _, d := range p.Days {
		days = append(days, d.Day)
	}
	if want := []string{"2026-04-01", "2026-07-01", "2026-10-01", "2027-01-01"}; !slices.Equal(days, want) {
		t.Errorf("days %v, want %v", days, want)
	}
	var counts []float64
	for _, c := range p.Counts {
		counts = append(counts, c.Count)
	}
	if want := []float64{15000, 20000}; !slices.Equal(counts, want) {
		t.Errorf("counts %v, want %v", counts, want)
	}
}

func TestPlotOf_Unknown(t *testing.T) {
	for name, c := range map[string]struct{ change, limit due.Mark }{
		"no odometer at the change": {due.Mark{0, 0, 20000}, due.Mark{0, 0, 20365}},
		"no distance":               {due.Mark{12000, 0, 20000}, due.Mark{0, 0, 20365}},
		"no time":                   {due.Mark{12000, 0, 20000}, due.Mark{22000, 0, 0}},
		"changed tomorrow":          {due.Mark{12000, 0, 20101}, due.Mark{22000, 0, 20400}},
	} {
		if p, ok := due.PlotOf(nil, due.Pace{}, false, due.Km, &c.change, &c.limit, 20100, 1); ok {
			t.Errorf("%s: %+v", name, p)
		}
	}
}

// Whatever was read: both limits, today and all that is marked stand in the picture, what
// was read follows in the order of time, and what is only estimated begins at what was
// read, ends on a limit, and stands within its spread.
func TestPlotOf_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(due.Km, due.Hours).Draw(t, "counter")
		change, limit := due.Mark{}, due.Mark{}
		change[due.Time] = float64(rapid.IntRange(0, 30000).Draw(t, "changed"))
		change[n] = rapid.Float64Range(0.1, 1e6).Draw(t, "at")
		limit[due.Time] = change[due.Time] + float64(rapid.IntRange(1, 3000).Draw(t, "days"))
		limit[n] = change[n] + rapid.Float64Range(0.5, 50000).Draw(t, "interval")
		today := change[due.Time] + float64(rapid.IntRange(0, 6000).Draw(t, "since"))
		list := []due.Reading{{Day: change[due.Time], Count: change[n]}}
		for range rapid.IntRange(0, 6).Draw(t, "readings") {
			list = append(list, due.Reading{
				Day:   change[due.Time] + float64(rapid.IntRange(-400, 6400).Draw(t, "day")),
				Count: max(0, change[n]+rapid.Float64Range(-60000, 60000).Draw(t, "count")),
			})
		}
		slices.SortStableFunc(list, func(a, b due.Reading) int { return int(a.Day - b.Day) })
		pace, known := due.PaceOf(list)
		per := rapid.SampledFrom([]float64{1, 1.609344}).Draw(t, "unit")
		p, ok := due.PlotOf(list, pace, known, n, &change, &limit, today, per)
		if !ok {
			t.Fatal("both limits are known, and there is no picture")
		}
		in := func(what string, list ...due.PlotPoint) {
			for _, at := range list {
				if at.X < 0 || at.X > due.Whole || at.Y < 0 || at.Y > due.Whole {
					t.Fatalf("%s at %v", what, at)
				}
			}
		}
		in("a reading", p.Read...)
		in("the limit", p.Limit)
		in("the estimate", p.Middle...)
		in("the spread", p.Spread...)
		if p.Limit.X >= due.Whole || p.Limit.Y >= due.Whole {
			t.Fatalf("the limits stand on the edge: %v", p.Limit)
		}
		if p.Today < 0 || p.Today >= due.Whole || (today < limit[due.Time] && p.Today > p.Limit.X) {
			t.Fatalf("today at %d, the limit at %d", p.Today, p.Limit.X)
		}
		for i := 1; i < len(p.Read); i++ {
			if p.Read[i].X < p.Read[i-1].X || p.Read[i].X > p.Today {
				t.Fatalf("read at %v", p.Read)
			}
		}
		estimated := len(p.Middle) > 0
		if estimated != (len(p.Spread) > 0) || estimated && !known || today >= limit[due.Time] && estimated {
			t.Fatalf("known %v: %v in %v", known, p.Middle, p.Spread)
		}
		if estimated {
			end := p.Middle[1]
			if !slices.Contains(p.Read, p.Middle[0]) || end.X != p.Limit.X && end.Y != p.Limit.Y || end.X > p.Limit.X || end.Y > p.Limit.Y {
				t.Fatalf("the estimate goes from %v to %v, read %v, limit %v", p.Middle[0], end, p.Read, p.Limit)
			}
			early, late := p.Spread[1], p.Spread[len(p.Spread)-1]
			if early.X > end.X || end.X > late.X || early.Y < end.Y || end.Y < late.Y {
				t.Fatalf("the estimate ends at %v, its spread at %v and %v", end, early, late)
			}
		}
		if len(p.Days) > 5 || len(p.Counts) > 6 || len(p.Counts) == 0 {
			t.Fatalf("%d days and %d counts are marked", len(p.Days), len(p.Counts))
		}
		for i, d := range p.Days {
			in("a day", due.PlotPoint{X: d.X})
			if d.Day[8:] != "01" || i > 0 && (d.Day <= p.Days[i-1].Day || d.X < p.Days[i-1].X) {
				t.Fatalf("days %v", p.Days)
			}
		}
		for i, c := range p.Counts {
			in("a count", due.PlotPoint{Y: c.Y})
			if i > 0 && (c.Count <= p.Counts[i-1].Count || c.Y < p.Counts[i-1].Y) || math.IsNaN(c.Count) {
				t.Fatalf("counts %v", p.Counts)
			}
		}
	})
}
