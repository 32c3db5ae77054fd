package calc

import (
	"math"

	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

var oilVolumeFields = []field{
	{name: "volume", front: true, kind: quantity.Volume, low: 0.001, high: 1000},
	{name: "from", then: "to", beside: "volume", front: true, kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat},
	{name: "mass", kind: quantity.Mass, low: 0.001, high: 1000},
	{name: "to", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, needed: true},
	{name: "density", kind: quantity.Density, low: oil.LeastDensity, high: oil.MostDensity},
	{name: "densityAt", beside: "density", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 15},
}

// oilVolume says what a volume or a mass of oil measures at another
// temperature.
func oilVolume(f *Form, a *Answer) {
	if f.has("mass") {
		if f.has("volume") {
			f.unused("volume", "@ask.oil-volume.volume", "@ask.oil-volume.mass")
		}
	} else {
		f.need("volume")
		f.need("from")
	}
	at15 := f.densityAt15(a)
	there := oil.Density(at15, f.number("to"))
	mass := f.number("mass")
	if mass == 0 {
		mass = f.number("volume") * oil.Density(at15, f.number("from")) / 1000
	}
	if math.IsNaN(mass / there) {
		f.reject("oil-density", "density")
	}
	if f.refused() {
		return
	}
	litres := mass / there * 1000
	const by = "expansion-of-oil"
	a.computed("volume-at", by, litres, litres, "L")
	a.computed("oil-mass", by, mass, mass, "kg")
	a.figureAt("density", by, there, there, " kg/m³", f.number("to"), 3)
}

// densityAt15 gives the density at 15 °C: from the one on the data sheet, or a
// usual one.
func (f *Form) densityAt15(a *Answer) float64 {
	if f.has("density") {
		return oil.DensityAt15(f.number("density"), f.number("densityAt"))
	}
	a.figure("assumed", "density", "usual-density", oil.UsualDensity, oil.UsualDensity, " kg/m³ (15 °C)")
	return oil.UsualDensity
}
