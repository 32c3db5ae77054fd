package oil

import "math"

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

// Band is a range of viscosities in mm²/s at one temperature.
type Band struct{ Low, High float64 }

// Band is what J300 asks of the grade at 100 °C. It reports false for a grade
// that has no two limits there.
func (g Grade) Band() (Band, bool) {
	_, s, ok := g.Limits()
	return Band{s.Least, s.Below}, ok && s.Below > 0
}

// Holds reports whether a viscosity is within the band.
func (b Band) Holds(viscosity float64) bool { return viscosity >= b.Low && viscosity < b.High }

// Mix is what any oil of the band makes with any of the other.
func (b Band) Mix(other Band, share float64) Band {
	return Band{Mix(b.Low, other.Low, share), Mix(b.High, other.High, share)}
}
