package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

var oilMixFields = []field{
	{name: "firstVolume", then: "secondVolume", kind: quantity.Volume, low: 0.001, high: 1000, needed: true},
	{name: "firstGrade", then: "secondGrade", beside: "firstVolume", front: true, kind: Text, says: Grade},
	{name: "firstViscosity", then: "secondViscosity", beside: "firstVolume", kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "secondVolume", front: true, kind: quantity.Volume, low: 0.001, high: 1000},
	{name: "secondGrade", beside: "secondVolume", front: true, kind: Text, says: Grade},
	{name: "secondViscosity", beside: "secondVolume", kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "temperature", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 100},
	{name: "want", front: true, kind: quantity.Viscosity, low: leastThick, high: mostThick},
}

// oilMix says how thick two oils are together, and which grades that fits; where a
// viscosity is wanted, how much of the second reaches it.
func oilMix(f *Form, a *Answer) {
	heat := f.number("temperature")
	first := f.thickness("firstViscosity", "firstGrade", heat)
	second := f.thickness("secondViscosity", "secondGrade", heat)
	if !f.has("want") {
		f.need("secondVolume")
	}
	if f.refused() {
		return
	}
	added := f.number("secondVolume")
	if f.has("want") {
		added = f.toReach(a, first, second, added)
	}
	if added > 0 {
		f.mixture(a, "mix", first, second, added/(f.number("firstVolume")+added), heat)
	}
}

// toReach adds how many litres of the second oil bring the first to the viscosity that is
// wanted, and gives what to put into the rule for proof: so much, as it is told, or all of
// the bottle where it holds less; where nothing reaches it, the bottle.
func (f *Form) toReach(a *Answer, first, second oil.Band, bottle float64) float64 {
	least, most, ok, none := first.ShareFor(second, f.number("want"))
	if first.Low == first.High && quantity.Near(first.Low, f.number("want")) {
		least, most, ok = 0, 0, true // it is there already
	}
	volume := func(share float64) float64 { return f.number("firstVolume") * share / (1 - share) }
	low, high := volume(least), volume(most)
	code := ""
	switch {
	case none:
		code = "mix-never"
	case !ok:
		code = "mix-unsure"
	case !(high <= 1000):
		code = "mix-second-alone"
	}
	if code != "" {
		a.unknown("figures", "second-volume")
		f.say(finding.Doubt, code, "want", "low", quantity.Number(min(first.Low, second.Low), 3), "high", quantity.Number(max(first.High, second.High), 3)+" mm²/s")
		return bottle
	}
	low, high = significant(low, 3), significant(high, 3)
	ends(a.amount("figures", "second-volume", "mix-for", low, high, "mL", 2), low, high)
	if bottle > 0 && !quantity.AtLeast(bottle, low) {
		f.say(finding.Doubt, "mix-too-little", "secondVolume")
		return bottle
	}
	return (low + high) / 2
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
