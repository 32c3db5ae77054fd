package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

var oilMixFields = []field{
	{name: "firstVolume", kind: quantity.Volume, low: 0.001, high: 1000, needed: true},
	{name: "firstGrade", front: true, kind: aText},
	{name: "firstViscosity", kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "secondVolume", kind: quantity.Volume, low: 0.001, high: 1000, needed: true},
	{name: "secondGrade", front: true, kind: aText},
	{name: "secondViscosity", kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "temperature", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 100},
}

// oilMix says how thick two oils are together, and which grades that fits.
func oilMix(f *Form, a *Answer) {
	heat := f.number("temperature")
	first := f.thickness("firstViscosity", "firstGrade", heat)
	second := f.thickness("secondViscosity", "secondGrade", heat)
	if f.refused() {
		return
	}
	added := f.number("secondVolume")
	f.mixture(a, "mix", first, second, added/(f.number("firstVolume")+added), heat)
}

// thickness gives what is known of an oil at a temperature: its viscosity, or
// the band of its grade, which holds at 100 °C only.
func (f *Form) thickness(viscosity, name string, heat float64) oil.Band {
	grade := f.grade(name)
	if v := f.number(viscosity); v > 0 {
		if heat == 100 {
			f.checkGrade(grade, v, v)
		} else if f.has(name) {
			f.unused(name, "@ask.oil-mix."+name, "@ask.oil-mix."+viscosity)
		}
		return oil.Band{Low: v, High: v}
	}
	b, ok := grade.Band()
	if !ok || heat != 100 {
		f.reject("oil-no-viscosity", viscosity)
	}
	return b
}

// mixture adds what two oils make at a temperature; share is the second one's
// part of the volume.
func (f *Form) mixture(a *Answer, by method, first, second oil.Band, share, heat float64) {
	a.computed("second-share", by, share, share, "%")
	mix := first.Mix(second, share)
	a.figureAt("viscosity-mix", by, mix.Low, mix.High, " mm²/s", heat, 3)
	f.say(finding.Note, "mix-estimate", "")
	if heat == 100 {
		a.list("grades", oil.GradesAt(mix.Low, mix.High, false))
		f.say(finding.Note, "winter-not-known", "")
	}
}
