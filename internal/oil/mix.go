package oil

import (
	"math"

	"tidysump/internal/quantity"
)

// Mix gives the viscosity of two oils mixed in mm²/s, all figures at one temperature;
// share is the second oil's share of the volume, 0 to 1. It is the blending
// method of ASTM D7152 (scope read, equation from memory): log log Z weighted
// by volume. The standard says that it may not hold for oils with additives
// and polymer, so for two finished engine oils it is an estimate. NaN for a
// share or viscosity outside.
func Mix(first, second, share float64) float64 {
	if !known(first) || !known(second) || !(share >= 0 && share <= 1) {
		return math.NaN()
	}
	w := loglog(first)
	v := ofLoglog(w + share*(loglog(second)-w))
	if first > second {
		first, second = second, first
	}
	return clamp(v, first, second)
}

// clamp keeps a figure from low to high.
func clamp(v, low, high float64) float64 {
	if v < low {
		return low
	}
	if v > high {
		return high
	}
	return v
}

// ShareFor is the inverse of Mix: the share of the second oil, 0 to 1, with which the
// mixture has a viscosity. It reports false where no share has it: it lies outside the
// two, since a mixture is never thinner than the thinner nor thicker than the thicker,
// or the two are equally thick.
func ShareFor(first, second, want float64) (float64, bool) {
	low, high := min(first, second), max(first, second)
	if !known(low) || !known(high) || quantity.Near(first, second) || !(quantity.AtLeast(want, low) && quantity.AtMost(want, high)) {
		return math.NaN(), false
	}
	w := loglog(first)
	return clamp((loglog(want)-w)/(loglog(second)-w), 0, 1), true
}

// Band is a range of viscosities in mm²/s at one temperature.
type Band struct{ Low, High float64 }

// Band is what J300, or J306, asks of the grade at 100 °C. It reports false for a
// grade that has no two limits there.
func (g Grade) Band() (Band, bool) {
	_, s, ok := g.Limits()
	return Band{s.Least, s.Below}, ok && s.Below > 0
}

// Holds reports whether the band of a grade holds any viscosity from low to high: its
// lower end belongs to it, its upper end doesn't.
func (b Band) Holds(low, high float64) bool {
	return quantity.AtLeast(high, b.Low) && !quantity.AtLeast(low, b.High)
}

// Mix is what any oil of the band makes with any of the other.
func (b Band) Mix(other Band, share float64) Band {
	return Band{Mix(b.Low, other.Low, share), Mix(b.High, other.High, share)}
}

// ShareFor gives the least and the most of any oil of the other band that brings any oil
// of this one to a viscosity. It reports false where some pair of them has no such
// share, and all where none has.
func (b Band) ShareFor(other Band, want float64) (least, most float64, ok, none bool) {
	least, ok = 1, true
	for _, first := range [...]float64{b.Low, b.High} {
		for _, second := range [...]float64{other.Low, other.High} {
			share, reached := ShareFor(first, second, want)
			ok = ok && reached
			if reached {
				least, most = min(least, share), max(most, share)
			}
		}
	}
	low, high := min(b.Low, other.Low), max(b.High, other.High)
	return least, most, ok, !(quantity.AtLeast(want, low) && quantity.AtMost(want, high))
}
