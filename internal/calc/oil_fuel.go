package calc

import (
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

// fuelFields: that something came in shows in what the level rose by, in what came out,
// in two readings of the level, or in a measured viscosity.
var fuelFields = []field{
	{name: "volume", kind: quantity.Volume, low: 0.05, high: 25, needed: true},
	{name: "rise", front: true, kind: quantity.Volume, low: 0.001, high: 25},
	{name: "out", front: true, kind: quantity.Volume, low: 0.01, high: 50},
	{name: "before", then: "now", front: true, kind: quantity.Share, low: -1, high: 2},
	{name: "now", front: true, kind: quantity.Share, low: -1, high: 5},
	{name: "band", front: true, kind: quantity.Volume, low: 0.01, high: 5},
	{name: "beforeAt", beside: "before", kind: quantity.Temperature, low: -30, high: 150},
	{name: "nowAt", beside: "now", kind: quantity.Temperature, low: -30, high: 150},
	{name: "grade", front: true, kind: Text, says: Grade},
	{name: "fresh", kind: quantity.Viscosity, low: leastThick, high: 1000},
	{name: "measured", front: true, kind: quantity.Viscosity, low: leastThick, high: 1000},
}

// How wrong a rise may be, common practice, no source. Of two temperatures of oil
// each may be 5 K off; where they aren't known, the oil may have been cold once and hot
// the other time.
const (
	jugOff     = 0.05 // L, of a volume that was read
	heatOff    = 10   // K
	heatUnsaid = 75   // K, from 15 to 90 °C
)

// fuelIn is the least and the most share of fuel that there may be.
type fuelIn struct{ least, most float64 }

// howMuchFuel says how much fuel may be in the oil, from what it rose by or from its
// viscosity, and what that makes of it. It never says that there is none. Where both are
// known, the worse counts.
func howMuchFuel(f *Form, a *Answer) {
	grade := f.grade("grade")
	fresh := f.freshOil(grade)
	used := f.number("measured")
	fuel, byRise := f.risen(a)
	switch {
	case used > 0 && fresh.High == 0:
		f.reject("oil-no-viscosity", "fresh")
	case used == 0 && !byRise:
		f.reject("fuel-nothing-read", "rise")
	}
	if f.refused() {
		return
	}
	if used > 0 {
		least, most := oil.FuelOf(fresh, used)
		a.fuelShare("fuel-by-viscosity", least, most)
		if byRise && fuel.least > most {
			f.say(finding.Doubt, "rise-is-not-fuel", "measured")
		}
		fuel = fuelIn{max(fuel.least, least), max(fuel.most, most)}
		f.say(finding.Note, "fuel-or-worn", "measured")
	}
	a.word("verdict", f.fuelVerdict(fuel, f.thinned(a, grade, fresh, fuel)))
	if byRise {
		f.say(finding.Note, "fuel-hidden", "volume")
	}
	f.say(finding.Note, "fuel-or-water", "")
}

// fuelShare adds a share of fuel, in percent, and how it was told.
func (a *Answer) fuelShare(by method, least, most float64) {
	ends(a.amount("figures", string(by), by, least, most, "%", 2), least, most)
}

// freshOil gives the viscosity of the new oil at 100 °C, in mm²/s: its own, or the band of
// its grade; zeros where neither is known.
func (f *Form) freshOil(grade oil.Grade) oil.Band {
	if v := f.number("fresh"); v > 0 {
		f.checkGrade(grade, v, v)
		return oil.Band{Low: v, High: v}
	}
	band, ok := grade.Band()
	if !ok {
		return oil.Band{}
	}
	return band
}

// risen gives the share of what came in, from the one rise that was read; false where none
// was. What heat may have made of it is taken off.
func (f *Form) risen(a *Answer) (in fuelIn, ok bool) {
	volume := f.number("volume")
	grows := fill.RiseInCase
	var rise, off float64
	switch {
	case f.has("rise"):
		rise, off = f.number("rise"), jugOff
		f.notUsed("out", "rise")
		f.notUsed("now", "rise")
	case f.has("out"):
		rise, off = f.number("out")-volume, fill.Slack(volume)
		grows = fill.Rise
		f.notUsed("now", "out")
	case f.has("before") || f.has("now"):
		f.need("before")
		f.need("now")
		f.need("band")
		rise, off = (f.number("now")-f.number("before"))*f.number("band"), fill.Reliable*f.number("band")
	default:
		return fuelIn{}, false
	}
	if f.has("beforeAt") || f.has("nowAt") {
		f.need("beforeAt")
		f.need("nowAt")
		rise -= grows(volume, f.number("beforeAt"), f.number("nowAt"))
		off += grows(volume, 15, 15+heatOff)
	} else {
		heat := grows(volume, 15, 15+heatUnsaid)
		off += heat
		f.say(finding.Doubt, "heat-or-fuel", "nowAt", "by", a.between(heat, heat, "mL", 2)[0])
	}
	if f.refused() {
		return fuelIn{}, true
	}
	low, high := max(rise-off, 0), max(rise+off, 0)
	ends(a.amount("figures", "fuel-risen", "fuel-by-rise", low, high, "mL", 2), low, high)
	in = fuelIn{oil.RisenShare(volume, low), oil.RisenShare(volume, high)}
	a.fuelShare("fuel-by-rise", in.least, in.most)
	return in, true
}

func (f *Form) notUsed(name, better string) {
	if f.has(name) {
		f.unused(name, "@ask.fuel."+name, "@ask.fuel."+better)
	}
}

// sunk is how far fuel may have taken an oil below its grade.
type sunk int

const (
	inGrade sunk = iota
	maybeBelow
	surelyBelow
)

// thinned adds how thick the oil is with the fuel, and says what it has sunk below. A
// measured viscosity is held against what shearing alone leaves of the grade.
func (f *Form) thinned(a *Answer, grade oil.Grade, fresh oil.Band, fuel fuelIn) sunk {
	if fresh.High == 0 {
		a.unknown("figures", "viscosity-fuelled")
		return inGrade
	}
	after := oil.Band{Low: f.number("measured"), High: f.number("measured")}
	if after.Low == 0 {
		after = oil.Band{Low: oil.Mix(fresh.Low, oil.Petrol.Low, fuel.most), High: oil.Mix(fresh.High, oil.Petrol.High, fuel.least)}
		a.figureAt("viscosity-fuelled", "mix-with-fuel", after.Low, after.High, " mm²/s", 100, 2)
	}
	a.figure("assumed", "fuel-viscosity", "memory", oil.Petrol.Low, oil.Petrol.High, " mm²/s ("+a.between(100, 100, "°C", 3)[0]+")")
	fits := oil.GradesAt(after.Low, after.High, grade.Gear())
	a.list("grades", fits)
	if _, ok := grade.Band(); !ok {
		names := oil.GradesAt(fresh.Low, fresh.High, false)
		if len(names) > 0 {
			grade, _ = oil.ReadGrade(names[0])
		}
	}
	band, ok := grade.Band()
	limit := band.Low
	if f.has("measured") {
		limit = oil.Sheared(limit)
	}
	switch {
	case !ok || quantity.AtLeast(after.Low, band.Low):
		return inGrade
	case !quantity.AtLeast(after.High, limit):
		f.say(finding.Doubt, "fuel-below", "grade", "grade", grade.Designation(), "least", quantity.Number(band.Low, 3)+" mm²/s")
		return surelyBelow
	}
	f.say(finding.Doubt, "fuel-may-be-below", "grade", "grade", grade.Designation(), "least", quantity.Number(band.Low, 3)+" mm²/s")
	if fresh.Low == fresh.High {
		return maybeBelow
	}
	return inGrade // any oil at the lower end of its grade may be
}

// fuelVerdict is never milder than the most that there may be.
func (f *Form) fuelVerdict(fuel fuelIn, below sunk) string {
	switch {
	case below == surelyBelow || quantity.AtLeast(fuel.least, oil.MuchFuel):
		return "fuel.stop"
	case below == maybeBelow || quantity.AtLeast(fuel.most, oil.MuchFuel):
		return "fuel.may-be-much"
	case fuel.least > 0:
		return "fuel.some"
	}
	return "fuel.not-told"
}
