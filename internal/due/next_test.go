package due_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/date"
	"tidysump/internal/due"
)

func day(y, m, d int) float64 { return float64(date.Day(y, m, d)) }

// Changed at 12 400 km on 31 August, with intervals of 6 000 km and 6 months.
func TestSpan_After(t *testing.T) {
	for _, c := range []struct {
		name   string
		span   due.Span
		change due.Mark
		times  float64
		want   due.Mark
	}{
		{"both", due.Span{6000, 15, 6}, due.Mark{12400, 0, day(2026, 8, 31)}, 1, due.Mark{18400, 0, day(2027, 2, 28)}},
		{"not read", due.Span{6000, 0, 0}, due.Mark{0, 0, 20000}, 1, due.Mark{}},
		{"each second time", due.Span{6000, 0, 12}, due.Mark{12400, 0, day(2026, 8, 31)}, 2, due.Mark{24400, 0, day(2028, 8, 31)}},
		{"half a month too", due.Span{0, 15, 4.5}, due.Mark{100, 40, day(2026, 1, 1)}, 1, due.Mark{0, 55, day(2026, 1, 1) + 137}},
	} {
		if got := c.span.After(&c.change, c.times); got != c.want {
			t.Errorf("%s: due at %v, want %v", c.name, got, c.want)
		}
	}
}

func TestSpan_FirstAt(t *testing.T) {
	first := due.Span{1000, 0, 1}
	entry := due.Mark{20, 0, day(2026, 5, 1)}
	for _, c := range []struct {
		last float64
		open bool
	}{{20, true}, {500, true}, {501, false}, {960, false}, {12000, false}, {0, false}} {
		p, open := first.FirstAt(&entry, &due.Mark{c.last, 0, 0})
		if open != c.open || open && p != (due.Mark{1000, 0, day(2026, 6, 1)}) {
			t.Errorf("changed at %v km: first service %v, open %v; want open %v", c.last, p, open, c.open)
		}
	}
	hours := due.Span{0, 3, 0}
	if p, open := hours.FirstAt(&entry, &due.Mark{9000, 1, 0}); !open || p != (due.Mark{0, 3, 0}) {
		t.Errorf("by hours: %v, %v", p, open)
	}
}

func TestMark_First(t *testing.T) {
	p := due.Mark{18400, 0, 20500}
	p.First(&due.Mark{1000, 3, 20600})
	if want := (due.Mark{1000, 3, 20500}); p != want {
		t.Errorf("first of both is %v, want %v", p, want)
	}
}

// A later change is never due earlier, nor is a longer interval; and what was
// ridden later never makes less of it used.
func TestSpan_Monotonic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, most float64) float64 { return rapid.Float64Range(0.5, most).Draw(t, name) }
		s := due.Span{draw("km", 20000), draw("h", 100), draw("months", 30)}
		longer := due.Span{s[0] + draw("more km", 20000), s[1] + draw("more h", 100), s[2] + draw("more months", 30)}
		c := due.Mark{draw("odometer", 2e5), draw("hours", 5000), float64(rapid.IntRange(1, 40000).Draw(t, "day"))}
		later := due.Mark{c[0] + draw("ridden", 5e4), c[1] + draw("run", 500), c[2] + float64(rapid.IntRange(0, 900).Draw(t, "days"))}
		at, after, more := s.After(&c, 1), s.After(&later, 1), longer.After(&c, 1)
		for n := range at {
			if after[n] < at[n] || more[n] < at[n] {
				t.Fatalf("%v: %v is due at %v; the later %v at %v, with %v at %v", s, c, at, later, after, longer, more)
			}
		}
		_, a := due.Used(&c, &at, &c)
		_, b := due.Used(&c, &at, &later)
		if a != 0 || b < a {
			t.Fatalf("at %v %v is used, at %v %v", c, a, later, b)
		}
	})
}

func TestUsed(t *testing.T) {
	change, at := due.Mark{12400, 0, 20000}, due.Mark{18400, 0, 20365}
	for _, c := range []struct {
		now   due.Mark
		most  int
		share float64
	}{
		{due.Mark{15400, 0, 20073}, due.Km, 0.5},
		{due.Mark{12400, 0, 20292}, due.Time, 0.8},
		{due.Mark{0, 0, 20365}, due.Time, 1},
		{due.Mark{24400, 0, 20100}, due.Km, 2},
	} {
		if most, share := due.Used(&change, &at, &c.now); most != c.most || share != c.share {
			t.Errorf("now %v: %v of %d, want %v of %d", c.now, share, most, c.share, c.most)
		}
	}
}

// Common practice, no source.
func TestGradeOf(t *testing.T) {
	for _, c := range []struct {
		share float64
		want  due.Grade
	}{
		{-0.1, due.NotYet}, {0, due.NotYet}, {0.89, due.NotYet}, {0.9, due.Soon}, {0.999, due.Soon}, {1, due.Now}, {1.1, due.Now},
		{1.11, due.Over}, {1.5, due.Over}, {1.51, due.FarOver}, {2, due.FarOver}, {2.01, due.TwiceOver}, {30, due.TwiceOver},
	} {
		if got := due.GradeOf(c.share); got != c.want {
			t.Errorf("GradeOf(%v) = %d, want %d", c.share, got, c.want)
		}
	}
}
