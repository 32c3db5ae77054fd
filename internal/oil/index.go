package oil

import "math"

// indexLimits gives, after ASTM D2270, L and H: the viscosities at 40 °C of oils
// of index 0 and 100 that have the oil's viscosity at 100 °C. Below 2 mm²/s the
// index is not defined.
func indexLimits(at100 float64) (l, h float64, ok bool) {
	switch {
	case !(at100 >= 2):
		return 0, 0, false
	case at100 > 70:
		return (0.8353*at100+14.67)*at100 - 216, (0.1684*at100+11.85)*at100 - 97, !math.IsInf(at100, 1)
	}
	return tabled(&indexL, at100), tabled(&indexH, at100), true
}

// Index gives the viscosity index of ASTM D2270 (ISO 2909) from the kinematic
// viscosities at 40 and 100 °C: procedure A up to 100, B above, which meet at
// 100. It reports false where the index is not defined: less than 2 mm²/s at
// 100 °C, or an oil that is not thinner there. Report it rounded to a whole
// number, halves to even.
func Index(at40, at100 float64) (float64, bool) {
	l, h, ok := indexLimits(at100)
	if !ok || !(at40 > at100) {
		return math.NaN(), false
	}
	if at40 >= h {
		return 100 * (l - at40) / (l - h), true
	}
	n := math.Log10(h/at40) / math.Log10(at100)
	return (math.Pow(10, n)-1)/0.00715 + 100, true
}

// FromIndex is the inverse: the line of the oil that has that viscosity at
// 100 °C and that index. It reports false where there is none.
func FromIndex(at100, index float64) (Line, bool) {
	l, h, ok := indexLimits(at100)
	if !ok {
		return Line{}, false
	}
	at40 := l - index*(l-h)/100
	if index > 100 {
		at40 = h / math.Pow(at100, math.Log10((index-100)*0.00715+1))
	}
	return LineThrough(40, at40, 100, at100)
}
