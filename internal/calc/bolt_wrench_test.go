package calc

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
	"tidysump/internal/quantity"
)

// A range of torques is printed no narrower than it is where it warns, and no wider
// where it promises, in every unit, and by no more than a digit of three.
func TestTorques_Properties(t *testing.T) {
	var units []*quantity.Unit
	for n := range quantity.Units {
		if u := &quantity.Units[n]; u.Kind == quantity.Torque {
			units = append(units, u)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		r := bolt.Range{Low: rapid.Float64Range(0.1, 1000).Draw(t, "low")}
		r.High = r.Low * rapid.Float64Range(1.0001, 2).Draw(t, "high")
		unit := rapid.SampledFrom(units).Draw(t, "unit")
		for _, by := range []struct {
			name   string
			round  func(v, step float64, low bool) float64
			widens float64
		}{{"outward", outward, 1}, {"inward", inward, -1}} {
			for _, text := range torques(&r, unit, by.round) {
				number, id, _ := strings.Cut(text, " ")
				u, _ := quantity.Find(id)
				low, high, two := strings.Cut(number, "–")
				if !two {
					high = low
				}
				l, errLow := strconv.ParseFloat(low, 64)
				h, errHigh := strconv.ParseFloat(high, 64)
				wider := []float64{(r.Low - l*u.Scale) * by.widens, (h*u.Scale - r.High) * by.widens}
				for _, v := range wider {
					if errLow != nil || errHigh != nil || v < -1e-8*r.High || v > 0.0101*r.High {
						t.Fatalf("%+v N·m %s is %q, by %v", r, by.name, text, wider)
					}
				}
			}
		}
	})
}

func TestPercents(t *testing.T) {
	for _, f := range []struct {
		low, high float64
		want      string
	}{
		{-0.0123, 0.0201, "-1.3…+2.1 %"},
		{-0.04, 0.04, "-4…+4 %"},
		{0.0123, 0.0201, "+1.2…+2.1 %"},
		{-0.0201, -0.0123, "-2.1…-1.2 %"},
		{-0.00001, 0.00001, "-0.1…+0.1 %"},
		{0, 0.4, "0…+40 %"},
	} {
		if got := percents(&bolt.Range{Low: f.low, High: f.high}); got != f.want {
			t.Errorf("%v to %v is %q, want %q", f.low, f.high, got, f.want)
		}
	}
	if got := outward(24.000000000000004, 0.1, true); math.Abs(got-24) > 1e-12 {
		t.Errorf("what conversion adds moves 24 to %v", got)
	}
}
