package oil

import "math"

// Limits of what the relation of ASTM D341 is taken for here.
const (
	kelvin     = 273.15
	leastKnown = 0.21 // mm²/s, the lower end of the relation (from memory)
	mostKnown  = 2e7  // mm²/s, the upper end (from memory)
)

// Line is how an oil's kinematic viscosity follows its temperature by ASTM
// D341: log log Z = A − B·log T, with T in kelvin and Z by thickness. It holds
// for a Newtonian liquid; a multigrade below 0 °C is thicker than its line
// says (one measured 66/10 oil: by 4 % at 15 °C, by 14 % at 0 °C).
type Line struct{ A, B float64 }

// thickness is Z of ASTM D341 in its form for viscosities down to 0.21 mm²/s;
// from 2 mm²/s on it is ν + 0.7.
func thickness(viscosity float64) float64 {
	return viscosity + 0.7 + thin(viscosity)
}

func thin(v float64) float64 { return math.Exp(-1.47 - 1.84*v - 0.51*v*v) }

// viscosityOf is the inverse of thickness: the standard's own inverse, which is
// good to 2e-4, made exact by Newton's method.
func viscosityOf(z float64) float64 {
	y := z - 0.7
	v := y - math.Exp(-0.7487-3.295*y+0.6119*y*y-0.3193*y*y*y)
	for range 4 {
		t := thin(v)
		v -= (v + 0.7 + t - z) / (1 - t*(1.84+1.02*v))
	}
	return v
}

// loglog is log log Z, in which oils are straight lines and mix by volume.
func loglog(viscosity float64) float64 { return math.Log10(math.Log10(thickness(viscosity))) }

// ofLoglog is the inverse of loglog; NaN outside the relation.
func ofLoglog(w float64) float64 {
	z := math.Pow(10, math.Pow(10, w))
	if !(z >= thickness(leastKnown) && z <= mostKnown) {
		return math.NaN()
	}
	return viscosityOf(z)
}

func known(viscosity float64) bool { return viscosity >= leastKnown && viscosity <= mostKnown }

// LineThrough gives the line through two points, in °C and mm²/s. It reports false when the
// points can't be one oil's: same temperature, a warmer oil that is not
// thinner, or a figure outside the relation.
func LineThrough(at1, viscosity1, at2, viscosity2 float64) (Line, bool) {
	if !known(viscosity1) || !known(viscosity2) || !(at1 > -kelvin) || !(at2 > -kelvin) || at1 == at2 {
		return Line{}, false
	}
	t1, t2 := math.Log10(at1+kelvin), math.Log10(at2+kelvin)
	w1, w2 := loglog(viscosity1), loglog(viscosity2)
	b := (w1 - w2) / (t2 - t1)
	return Line{w1 + b*t1, b}, b > 0
}

// At gives the viscosity in mm²/s at a temperature in °C; NaN outside the relation.
func (l Line) At(celsius float64) float64 {
	return ofLoglog(l.A - l.B*math.Log10(celsius+kelvin))
}

// Temperature is the inverse of At: the °C at which the oil has that viscosity.
func (l Line) Temperature(viscosity float64) float64 {
	if !known(viscosity) || !(l.B > 0) {
		return math.NaN()
	}
	return math.Pow(10, (l.A-loglog(viscosity))/l.B) - kelvin
}
