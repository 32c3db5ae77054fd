package calc

import (
	"math"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// oilPressureFields: what the gauge shows and how the engine runs then; what the manual
// has, its least figure or its range, and how it means the engine to run; the gauge. The
// error of a gauge is a share of its full scale (its class, EN 837-1: 0.1 to 4).
var oilPressureFields = []field{
	{name: "pressure", kind: quantity.Pressure, high: mostPressure, needed: true},
	{name: "temperature", beside: "pressure", kind: quantity.Temperature, low: -30, high: 180, front: true},
	{name: "speed", beside: "pressure", kind: Number, low: leastSpeed, high: mostSpeed, front: true},
	{name: "least", then: "most", kind: quantity.Pressure, low: 1, high: mostPressure, needed: true},
	{name: "most", kind: quantity.Pressure, low: 1, high: mostPressure, front: true},
	{name: "meantAt", beside: "least", kind: quantity.Temperature, low: -30, high: 180, front: true},
	{name: "meantSpeed", beside: "least", kind: Number, low: leastSpeed, high: mostSpeed, front: true},
	{name: "fullScale", kind: quantity.Pressure, low: 10, high: 1e4},
	{name: "class", kind: Number, high: 20},
	{name: "graduation", kind: quantity.Pressure, high: 1e3},
}

// Bounds of an oil pressure in kPa and of a speed in 1/min, against slips.
const (
	mostPressure          = 2000
	leastSpeed, mostSpeed = 200, 20000
)

// usualClass is the class of a gauge that doesn't say: common practice, no source.
const usualClass = 2.5

// oilPressure holds a reading against the manual's figure.
func oilPressure(f *Form, a *Answer) {
	reading, least, most := f.number("pressure"), f.number("least"), math.Inf(1)
	if f.has("most") {
		if most = f.number("most"); !quantity.AtLeast(most, least) {
			f.reject("most-below-least", "most")
		}
	}
	off := f.number("graduation") / 2 // one reads to half a mark
	if full := f.number("fullScale"); full > 0 {
		class := f.number("class")
		if !f.has("class") {
			class = usualClass
			a.estimate("assumed", "gauge-class", "usual-class", plain(class, class, "", 2))
		}
		off += full * class / 100
		if !quantity.AtMost(reading, full) {
			f.reject("beyond-scale", "pressure")
		}
	} else {
		f.say(finding.Doubt, "gauge-unknown", "fullScale")
	}
	bias := oil.Running{Celsius: f.orUnknown("temperature"), Speed: f.orUnknown("speed")}.
		Beside(oil.Running{Celsius: f.orUnknown("meantAt"), Speed: f.orUnknown("meantSpeed")})
	verdict := oil.JudgePressure(reading, off, least, most, bias)
	a.word("verdict", "pressure."+string(verdict))
	a.pressure("pressure-read", reading, reading).Standing = card.Measured
	if off > 0 {
		a.pressure("pressure-may-be", max(reading-off, 0), reading+off)
	}
	if f.has("most") {
		a.pressure("pressure-manual", least, most).Standing = shown.Standard
	} else {
		a.pressure("pressure-least", least, least).Standing = shown.Standard
	}
	f.pressureNotes(verdict, &bias)
}

// pressure adds a pressure in every unit that gauges and manuals have.
func (a *Answer) pressure(name string, low, high float64) *shown.Figure {
	var texts []string
	for n := range quantity.Units {
		if u := &quantity.Units[n]; u.Kind == quantity.Pressure {
			of := func(v float64) quantity.Amount {
				return quantity.Amount{Kind: u.Kind, Base: v, Unit: u.ID, Digits: 3}
			}
			texts = append(texts, quantity.Range(of(low), of(high), u))
		}
	}
	return ends(a.estimate("figures", name, method(name), texts...), low, high)
}

// pressureNotes says what speaks against the reading, and what to do before it is
// believed.
func (f *Form) pressureNotes(verdict oil.Pressed, b *oil.Bias) {
	for _, n := range [...]struct {
		holds       bool
		grade       finding.Grade
		code, where string
	}{
		{verdict == oil.PressureGone, finding.Doubt, "pressure-gone", "pressure"},
		{verdict == oil.GaugeDecides, finding.Doubt, "gauge-decides", "pressure"},
		{b.Colder, finding.Doubt, "oil-colder", "temperature"},
		{b.Hotter, finding.Doubt, "oil-hotter", "temperature"},
		{b.Faster, finding.Doubt, "engine-faster", "speed"},
		{b.Slower, finding.Doubt, "engine-slower", "speed"},
		{b.Unknown, finding.Doubt, "state-unknown", "temperature"},
		{verdict != oil.PressureGone, finding.Note, "pressure-again", "pressure"},
		{true, finding.Note, "engine-runs-hot", ""},
	} {
		if n.holds {
			f.say(n.grade, n.code, n.where)
		}
	}
}
