package oil

import "math"

// The range of the lubricating-oil relation: densities as in API MPMS 11.1
// (2004), temperatures from memory of the same.
const (
	LeastDensity = 800.9  // kg/m³
	MostDensity  = 1163.5 // kg/m³
	LeastHeat    = -50    // °C
	MostHeat     = 150    // °C
)

// UsualDensity is the density in kg/m³ at 15 °C to calculate with when the bottle
// doesn't say: the middle of the 840 to 910 that motor oils have.
const UsualDensity = 875

// swell is 1/VCF: how much longer a volume is at a temperature than at 15 °C.
// expansion is that of the oil at 15 °C in 1/K; the form is that of API MPMS
// 11.1 / ASTM D1250.
func swell(expansion, celsius float64) float64 {
	x := expansion * (celsius - 15)
	return math.Exp(x * (1 + 0.8*x))
}

// Density gives the density in kg/m³ at a temperature in °C from the one at 15 °C,
// by the relation for lubricating oils (API MPMS 11.1 / ASTM D1250, table 54D:
// expansion 0.6278/ρ15 per K). The temperature scales of 1968 and 1990 are
// taken as one, which moves the sixth digit. NaN outside the relation's range.
func Density(at15, celsius float64) float64 {
	if !(at15 >= LeastDensity && at15 <= MostDensity) || !(celsius >= LeastHeat && celsius <= MostHeat) {
		return math.NaN()
	}
	return at15 / swell(0.6278/at15, celsius)
}

// Growth gives by which share of it a volume of oil of UsualDensity grows from one
// temperature in °C to another, less than nothing where it shrinks; NaN outside the
// relation's range.
func Growth(from, to float64) float64 {
	return Density(UsualDensity, from)/Density(UsualDensity, to) - 1
}

// DensityAt15 is the inverse: the density at 15 °C of an oil that was weighed
// at another temperature.
func DensityAt15(density, celsius float64) float64 {
	at15 := clamp(density, LeastDensity, MostDensity)
	for range 20 {
		at15 = clamp(at15*density/Density(at15, celsius), LeastDensity, MostDensity)
	}
	if !(math.Abs(Density(at15, celsius)-density) < 1e-6) {
		return math.NaN()
	}
	return at15
}
