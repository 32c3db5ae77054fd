package oil

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestMix(t *testing.T) {
	for _, c := range []struct {
		first, second, share, want, tolerance float64
		source                                string
	}{
		// A library prints these by another published rule (ln ln (ν + 1.8)):
		// the answers agree within 0.2 %.
		{16, 20, 0.45, 17.67, 0.002 * 17.67, "test of an open-source library"},
		{16.4, 21.5, 0.5, 18.74, 0.002 * 18.74, "test of an open-source library"},
		{158, 200, 0.35, 171.39, 0.002 * 171.39, "test of an open-source library, at −5 °C"},
		{16, 20, 0.45, 17.6584, 5e-5, "computed"},
		{10, 100, 0.5, 26.585, 5e-4, "computed; a straight line would say 55"},
		{32, 220, 0.5, 75.876, 5e-4, "computed; not the 126 of a straight line, which a page warns of"},
		{14.5, 18.3, 0.5, 16.257, 5e-4, "computed"},
		{97, 66, 0.1, 93.199, 5e-4, "computed, a top-up"},
		{14.5, 10.9, 0.25, 13.4689, 5e-5, "computed"},
		{10.9, 18.3, 0.25, 12.3138, 5e-5, "computed"},
	} {
		if got := Mix(c.first, c.second, c.share); !near(got, c.want, c.tolerance) {
			t.Errorf("%v of %v in %v: %v, want %v (%s)", c.share, c.second, c.first, got, c.want, c.source)
		}
	}
	for _, c := range [][3]float64{{10, 100, -0.1}, {10, 100, 1.1}, {0, 100, 0.5}, {10, math.NaN(), 0.5}, {10, 100, math.NaN()}, {math.Inf(1), 10, 0.5}} {
		if got := Mix(c[0], c[1], c[2]); !math.IsNaN(got) {
			t.Errorf("%v: %v", c, got)
		}
	}
}

func TestMixProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.5, 1e4).Draw(t, "a")
		b := rapid.Float64Range(0.5, 1e4).Draw(t, "b")
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		got := Mix(a, b, share)
		if !(got >= min(a, b) && got <= max(a, b)) {
			t.Fatalf("%v lies outside", got)
		}
		if geometric := math.Pow(thickness(a), 1-share) * math.Pow(thickness(b), share); thickness(got) > geometric*(1+1e-9) {
			t.Fatalf("%v is thicker than the geometric mean %v", thickness(got), geometric)
		}
		if !near(Mix(a, b, 0)/a, 1, 1e-9) || !near(Mix(a, b, 1)/b, 1, 1e-9) || Mix(a, a, share) != a {
			t.Fatal("nothing of one oil doesn't give the other")
		}
		if !near(Mix(b, a, 1-share)/got, 1, 1e-9) {
			t.Fatal("the order of the oils counts")
		}
	})
}

// ShareFor is the inverse of Mix. Published: shares that a library prints by another
// rule (ln ln (ν + K)), and how it answers where none is; and the chart of a maker of
// viscosimeters, by a rule it doesn't name: an oil of 160 mm²/s at 40 °C that has fallen to
// 137 holds 3 % of a fuel of 3.0 mm²/s.
func TestShareFor(t *testing.T) {
	for _, c := range []struct {
		first, second, want, share, tolerance float64
		source                                string
	}{
		{220, 680, 460, 0.6732, 0.002, "test of an open-source library"},
		{220, 680, 460, 0.67443, 5e-6, "computed"},
		{18.1, 13.9, 17.4, 0.1459, 0.002, "test of an open-source library"},
		{18.1, 13.9, 17.4, 0.14445, 5e-6, "computed"},
		{10, 100, 30, 0.5526, 5e-5, "computed"},
		{160, 3, 137, 0.03, 0.008, "chart of fuel in used oil, in whole percent"},
		{10, 100, 10, 0, 0, "the first oil itself"},
		{10, 100, 100, 1, 0, "the second oil itself"},
	} {
		got, ok := ShareFor(c.first, c.second, c.want)
		if !ok || !near(got, c.share, c.tolerance) {
			t.Errorf("%v of %v and %v: %v, want %v (%s)", c.want, c.first, c.second, got, c.share, c.source)
		}
	}
	for _, c := range [][3]float64{{320, 220, 460}, {320, 460, 220}, {220, 320, 150}, {10, 10, 10}, {10, 100, math.NaN()}, {0, 10, 5}} {
		if got, ok := ShareFor(c[0], c[1], c[2]); ok {
			t.Errorf("%v of %v and %v is had with %v", c[2], c[0], c[1], got)
		}
	}
}

// What the inverse gives is put into the rule, and gives what was wanted; no share gives
// what the inverse says that none does.
func TestShareFor_BySubstitution(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(0.5, 1e4)
		first, second, want := thick.Draw(t, "first"), thick.Draw(t, "second"), thick.Draw(t, "want")
		share, ok := ShareFor(first, second, want)
		if inside := want >= min(first, second) && want <= max(first, second); ok != inside {
			t.Fatalf("%v of %v and %v: %v", want, first, second, ok)
		}
		if ok && !near(Mix(first, second, share)/want, 1, 1e-8) {
			t.Fatalf("%v of the second makes %v, not %v", share, Mix(first, second, share), want)
		}
		if made := Mix(first, second, rapid.Float64Range(0, 1).Draw(t, "share")); !ok && near(made/want, 1, 1e-6) {
			t.Fatalf("%v is not to be had, and some share makes %v", want, made)
		}
	})
}

// Between two grades: what is told holds for any two oils of them.
func TestBandShareFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(3, 30)
		draw := func(name string) Band {
			low := thick.Draw(t, name)
			return Band{low, low * rapid.Float64Range(1, 1.5).Draw(t, name+" wide")}
		}
		first, second, want := draw("first"), draw("second"), thick.Draw(t, "want")
		least, most, ok, none := first.ShareFor(second, want)
		within := func(b Band) float64 { return rapid.Float64Range(b.Low, b.High).Draw(t, "one of them") }
		a, b := within(first), within(second)
		share, reached := ShareFor(a, b, want)
		switch {
		case ok && none:
			t.Fatal("it is had by all and by none")
		case none && reached:
			t.Fatalf("%v of %v and %v is had with %v, and told to be had by none", want, a, b, share)
		case ok && (!reached || share < least-1e-9 || share > most+1e-9):
			t.Fatalf("%v of %v and %v takes %v (%v), told from %v to %v", want, a, b, share, reached, least, most)
		}
	})
}

// A band's mixture holds what any two oils of the bands make.
func TestBandMix(t *testing.T) {
	for grade, want := range map[string]Band{"10W-40": {12.5, 16.3}, "30": {9.3, 12.5}, "25W-30": {9.3, 12.5}, "75W-90": {13.5, 18.5}} {
		g, _ := ReadGrade(grade)
		if b, ok := g.Band(); !ok || b != want {
			t.Errorf("%s: %v, %v, want %v", grade, b, ok, want)
		}
	}
	for _, grade := range []string{"", "10W", "75W", "250", "25W-20"} {
		g, _ := ReadGrade(grade)
		if b, ok := g.Band(); ok {
			t.Errorf("%q has the band %v", grade, b)
		}
	}
	first, second := Band{12.5, 16.3}, Band{9.3, 12.5}
	mix := first.Mix(second, 0.2)
	for _, v := range [][2]float64{{12.5, 9.3}, {14, 11}, {16.2, 12.4}} {
		if got := Mix(v[0], v[1], 0.2); !mix.Holds(got, got) {
			t.Errorf("%v and %v make %v, not within %v", v[0], v[1], got, mix)
		}
	}
	if mix.Holds(mix.High, mix.High) || mix.Holds(math.NaN(), math.NaN()) {
		t.Error("a band holds its upper end or no number")
	}
}
