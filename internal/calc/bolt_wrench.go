package calc

import (
	"math"
	"strconv"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var wrenchFields = [...]field{
	{name: "torque", kind: quantity.Torque, low: 0.1, high: 1000, needed: true, ranged: true},
	{name: "wrenches", kind: List, needed: true, rows: []field{
		{name: "id", kind: Text, kept: true},
		{name: "low", then: "high", kind: quantity.Torque, high: 3000},
		{name: "high", kind: quantity.Torque, low: 0.5, high: 3000, needed: true},
		{name: "graduation", kind: quantity.Torque, low: 0.001, high: 500},
		{name: "grip", kind: quantity.Length, low: 50, high: 2000},
		toolField,
	}},
	{name: "adapter", kind: quantity.Length, low: -1000, high: 1000},
	{name: "angle", kind: quantity.Angle, low: -360, high: 360},
	{name: "grip", kind: quantity.Length, low: 50, high: 2000},
}

var toolField = field{name: "tool", kind: Choice, words: bolt.Tools, family: "torque-tool."}

// wrench says of each wrench at hand whether and how it is set to a torque.
func wrench(f *Form, a *Answer) {
	torque := f.of("torque")
	if torque.upper > 0 && torque.upper < torque.number {
		f.reject("range-reversed", "torque", "value", finding.Clip(torque.text))
	}
	must := bolt.MustBe(torque.number, torque.upper)
	adapter := bolt.Adapter{Offset: f.number("adapter"), Angle: f.number("angle"), Grip: f.number("grip")}
	take, best, guessed := "", math.Inf(1), false
	rows := f.of("wrenches").rows
	set := make([]Answer, len(rows))
	for n := range rows {
		w := &rows[n]
		if w.number("low") > w.number("high") {
			w.reject("range-reversed", "low", "value", w.of("low").text)
		}
		if w.number("graduation") > w.number("high")/10 {
			w.reject("too-coarse", "graduation", "value", w.of("graduation").text)
		}
		if f.refused() {
			continue
		}
		id := w.of("id").text
		if id == "" {
			id = strconv.Itoa(n + 1)
		}
		set[n].system = f.system
		set[n].word("id", id)
		fit := set[n].wrench(w, &must, adapter)
		if !fit.OK() {
			continue
		}
		guessed = guessed || !w.has("graduation")
		// The shortest scale first, and before it any that is exact enough.
		rank := w.number("high")
		if fit != bolt.Sets {
			rank += longestScale
		}
		if rank < best {
			take, best = id, rank
		}
	}
	a.rows("wrenches", set)
	a.word("take", take)
	if torque.upper == 0 {
		a.ranged(a.estimate("figures", "wrench-must", "one-figure", must.Torques(f.system)...), &must.Range)
	}
	if guessed {
		f.say(finding.Note, "graduation-unknown", "wrenches")
	}
}

// longestScale is beyond the end of any scale that may be typed, in N·m.
const longestScale = 1e4

// scale gives the wrench's scale as a picture, in shares of it: from where on it may
// be used, and where the mark to set stands, unless that is off the scale.
func (a *Answer) scale(w *bolt.Wrench, setting float64, unit *quantity.Unit) {
	usable := max(w.Low, w.Fifth())
	a.number("usable", significant(usable/unit.Scale, 6))
	a.number("usableAt", round(usable/w.High, 1e4))
	if setting <= w.High {
		a.number("markAt", round(setting/w.High, 1e4))
	}
}

// wrench fits one wrench to what a torque must be.
func (a *Answer) wrench(f *Form, must *bolt.Must, adapter bolt.Adapter) bolt.Fit {
	if grip := f.number("grip"); grip > 0 {
		adapter.Grip = grip
	}
	w, graduation := bolt.Wrench{Low: f.number("low"), High: f.number("high")}, f.number("graduation")
	unit, step := f.of("high").unit, graduation
	if step == 0 {
		// Nobody sets more than three digits.
		exact, _ := adapter.Setting(must.Aim())
		step = math.Pow(10, math.Floor(math.Log10(exact/unit.Scale))-2) * unit.Scale
	}
	s := w.Set(&adapter, bolt.Tool(f.choice("tool")), must, step)
	a.word("verdict", "wrench."+string(s.Fit))
	a.word("unit", unit.ID)
	a.number("low", significant(w.Low/unit.Scale, 6))
	a.number("high", significant(w.High/unit.Scale, 6))
	a.number("step", significant(graduation/unit.Scale, 6))
	a.number("mark", significant(s.At/unit.Scale, 6))
	a.scale(&w, s.At, unit)
	if s.Fit.OK() {
		a.mark(&s.Mark, unit, &adapter)
	}
	beside := make([]Answer, len(s.Beside))
	for n := range beside {
		beside[n].system = a.system
		beside[n].mark(&s.Beside[n], unit, &adapter)
	}
	a.rows("beside", beside)
	return s.Fit
}

// mark gives a setting, and what the fastener gets then with all that may be off.
func (a *Answer) mark(m *bolt.Mark, unit *quantity.Unit, adapter *bolt.Adapter) {
	a.word("setting", quantity.Number(m.At/unit.Scale, 6)+" "+unit.ID)
	by := method("wrench-deviation")
	if adapter.Offset != 0 {
		by = "wrench-adapter"
	}
	a.ranged(a.estimate("gets", "wrench-gets", by, torques(&m.Gets, unit, outward)...), &m.Gets)
}
