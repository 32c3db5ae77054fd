package calc

import (
	"math"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

var wrenchCheckFields = [...]field{
	{name: "mass", kind: quantity.Mass, low: 0.1, high: 200, needed: true},
	{name: "lever", kind: quantity.Length, low: 50, high: 3000, needed: true},
	{name: "own", kind: quantity.Mass, low: 0.02, high: 30, needed: true},
	{name: "centre", kind: quantity.Length, low: 5, high: 2000, needed: true},
	{name: "high", kind: quantity.Torque, low: 0.5, high: 3000, needed: true},
	{name: "readings", kind: List, front: true, rows: []field{{name: "reading", kind: quantity.Torque, low: 0.1, high: 3000, needed: true}}},
	toolField,
	{name: "graduation", kind: quantity.Torque, low: 0.001, high: 500},
	{name: "massOff", kind: quantity.Mass, low: 0.0001, high: 20},
	{name: "leverOff", kind: quantity.Length, low: 0.1, high: 200},
}

// wrenchCheck says at what a wrench must answer under a known mass, and whether what
// it answered at is within its standard.
func wrenchCheck(f *Form, a *Answer) {
	d := bolt.DeadWeight{Mass: f.number("mass"), Lever: f.number("lever"), MassOff: f.number("massOff"), LeverOff: f.number("leverOff"),
		Own: f.number("own"), Centre: f.number("centre")}
	f.beyond("massOff", d.Mass)
	f.beyond("leverOff", d.Lever)
	if f.refused() {
		return
	}
	if d.MassOff == 0 {
		d.MassOff = bolt.WeighOff * d.Mass
		a.estimate("assumed", "mass-off", "practice", plain(bolt.WeighOff*100, bolt.WeighOff*100, " %", 2))
	}
	if d.LeverOff == 0 {
		d.LeverOff = bolt.RuleOff
		a.amount("assumed", "lever-off", "practice", d.LeverOff, d.LeverOff, "mm", 2)
	}
	f.say(finding.Doubt, "mass-falls", "mass")
	tool, w, mark := bolt.Tool(f.choice("tool")), bolt.Wrench{High: f.number("high")}, f.number("graduation")
	load, unit := d.Torque(), f.of("high").unit
	a.ranged(a.estimate("figures", "wrench-load", "dead-weight", torques(&load, unit, outward)...), &load)
	trust := w.Checkable(load)
	if trust != bolt.Within {
		a.word("verdict", "wrench-check."+string(trust))
		return
	}
	limit := tool.Deviation(w.High)
	a.estimate("figures", "wrench-limit", "iso-6789", "±"+plain(limit*100, limit*100, " %", 1)).Standing = shown.Standard
	if sure := tool.Surely(load, w.High, mark); sure.Low <= sure.High {
		a.ranged(a.estimate("figures", "wrench-surely", "dead-weight", torques(&sure, unit, inward)...), &sure)
	} else {
		f.say(finding.Note, "check-too-rough", "massOff")
	}
	readings := f.of("readings").rows
	for n := range readings {
		r := &readings[n]
		off := bolt.Off(r.number("reading"), mark, load)
		unit = r.of("reading").unit
		text := quantity.Number(r.number("reading")/unit.Scale, 6) + " " + unit.ID
		a.ranged(a.estimate("figures", "wrench-off", "wrench-off", text+": "+percents(&off)), &off)
		// The worst counts.
		if t := tool.Judge(off, w.High); trust == bolt.Within || t == bolt.Outside {
			trust = t
		}
	}
	if len(readings) > 0 {
		a.word("verdict", "wrench-check."+string(trust))
	}
}

// beyond refuses an error that is as large as what it is of.
func (f *Form) beyond(name string, of float64) {
	if f.number(name) >= of {
		f.reject("error-too-large", name, "value", f.of(name).text)
	}
}

// percents prints a range of shares with their signs, rounded away from each other to
// a tenth of a percent.
func percents(r *bolt.Range) string {
	return signed(outward(r.Low*100, 0.1, true)) + "…" + signed(outward(r.High*100, 0.1, false)) + " %"
}

func signed(v float64) string {
	text := quantity.Number(v, 4)
	if v > 0 {
		text = "+" + text
	}
	return text
}

// outward brings an end of a range to a step, so that the range gets no narrower.
func outward(v, step float64, low bool) float64 {
	n := math.Round(v / step)
	switch {
	case quantity.Near(n, v/step):
	case low:
		n = math.Floor(v / step)
	default:
		n = math.Ceil(v / step)
	}
	return n * step
}

// inward brings an end of a range to a step, so that the range gets no wider.
func inward(v, step float64, low bool) float64 { return outward(v, step, !low) }

// torques prints a range of torques as a wrench is set, to three digits, in its unit
// and in the other that is usual.
func torques(r *bolt.Range, unit *quantity.Unit, by func(v, step float64, low bool) float64) []string {
	other, _ := quantity.Find("N·m")
	if unit == other {
		other, _ = quantity.Find("lbf·ft")
	}
	var texts []string
	for _, u := range []*quantity.Unit{unit, other} {
		low, high := r.Low/u.Scale, r.High/u.Scale
		step := math.Pow(10, math.Floor(math.Log10(high))-2)
		for by(low, step, true) > by(high, step, false) {
			step /= 10 // a range narrower than a step
		}
		texts = append(texts, plain(by(low, step, true), by(high, step, false), " "+u.ID, 6))
	}
	return texts
}
