package calc

import (
	"strconv"

	"tidysump/internal/bolt"
	"tidysump/internal/quantity"
)

var wrenchFields = [...]field{
	{name: "torque", kind: quantity.Torque, low: 0.1, high: 1000, needed: true},
	{name: "wrenches", kind: aList, needed: true, rows: []field{
		{name: "id", kind: aText},
		{name: "low", kind: quantity.Torque, high: 3000},
		{name: "high", kind: quantity.Torque, low: 0.5, high: 3000, needed: true},
		{name: "graduation", kind: quantity.Torque, low: 0.001, high: 500},
		{name: "grip", kind: quantity.Length, low: 50, high: 2000},
	}},
	{name: "adapter", kind: quantity.Length, high: 1000},
	{name: "angle", kind: quantity.Angle, low: -360, high: 360},
	{name: "grip", kind: quantity.Length, low: 50, high: 2000},
}

// wrench says of each wrench at hand whether and how it is set to a torque.
func wrench(f *Form, a *Answer) {
	torque := f.number("torque")
	adapter := bolt.Adapter{Offset: f.number("adapter"), Angle: f.number("angle"), Grip: f.number("grip")}
	take, least := "", bolt.LongestScale(torque)
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
		if end := set[n].wrench(w, torque, adapter); end > 0 && end <= least {
			take, least = id, end
		}
	}
	a.rows("wrenches", set)
	a.word("take", take)
}

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

// wrench fits one wrench to the torque in N·m. It gives the end of its scale in
// N·m, and 0 where it can't be set.
func (a *Answer) wrench(f *Form, torque float64, adapter bolt.Adapter) float64 {
	if grip := f.number("grip"); grip > 0 {
		adapter.Grip = grip
	}
	w, step := bolt.Wrench{Low: f.number("low"), High: f.number("high")}, f.number("graduation")
	unit := f.of("high").unit
	setting, fit := w.Set(&adapter, torque, step)
	a.word("verdict", "wrench."+string(fit))
	a.word("unit", unit.ID)
	a.number("low", significant(w.Low/unit.Scale, 6))
	a.number("high", significant(w.High/unit.Scale, 6))
	a.number("step", significant(step/unit.Scale, 6))
	a.number("mark", significant(setting/unit.Scale, 6))
	a.scale(&w, setting, unit)
	if fit != bolt.Sets {
		return 0
	}
	a.word("setting", quantity.Number(setting/unit.Scale, 4)+" "+unit.ID)
	got := w.Within(adapter.Applied(setting))
	a.ranged(a.estimate("gets", "wrench-gets", "wrench-deviation", got.Torques(a.system)...), &got)
	return w.High
}
