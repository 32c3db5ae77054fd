package calc

import (
	"math"

	"tidysump/internal/drain"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// coolFields are two readings of a thermometer in the oil, what is waited for, and
// what is touched.
var coolFields = [...]field{
	{name: "first", then: "second", kind: quantity.Temperature, low: -40, high: 200, needed: true},
	{name: "second", kind: quantity.Temperature, low: -40, high: 200, needed: true},
	{name: "between", kind: quantity.Duration, low: 0.05, high: 24 * 60, needed: true},
	{name: "air", kind: quantity.Temperature, low: -40, high: 60, needed: true},
	{name: "target", kind: quantity.Temperature, low: -40, high: 150},
	{name: "surface", kind: Choice, words: texts(drain.Surfaces...), family: "surface."},
}

// Readings closer than this many K show the rate poorly, and a temperature further
// than this many minutes is not worth waiting for.
const closeReadings, longWait = 3, 7 * 24 * 60

// cool says how long the oil takes to the target's temperature, if it goes there at
// all, and what touching it does now.
func cool(f *Form, a *Answer) {
	r := &drain.Readings{
		First: f.number("first"), Second: f.number("second"), Minutes: f.number("between"),
		Air: f.number("air"), AirTo: drain.ReadTo,
	}
	low, high := float64(drain.WarmLow), float64(drain.WarmHigh)
	if f.has("target") {
		low = f.number("target")
		high = low
	} else {
		a.amount("assumed", "target", "warm-target", low, high, "°C", 2)
	}
	course, by, edge := r.Toward(low, high), method("newton"), high
	switch {
	case course == drain.Unmoved:
		f.reject("readings-equal", "second")
	case r.Second < r.First && r.Second < r.Air-r.AirTo-drain.ReadTo:
		f.reject("below-air", "second")
	case course == drain.Warming:
		by, edge = "straight-line", low
	}
	least, most := r.Wait(edge)
	waits := course == drain.Cooling || course == drain.Warming
	if waits && least > longWait {
		f.reject("too-slow", "second")
	}
	if f.refused() {
		return
	}
	a.word("verdict", "cool."+string(course))
	if waits {
		a.wait(by, least, most)
	} else {
		least, most = 0, 0
	}
	if math.Abs(r.Second-r.First) < closeReadings {
		f.say(finding.Doubt, "readings-close", "second")
	}
	a.coolCurve(r, edge, least, most)
	f.burns(a, r.Second)
}

// wait adds from least to most minutes; the most is left out where it is infinite, or
// not worth waiting for.
func (a *Answer) wait(by method, least, most float64) {
	text := timeRange(least*60, most*60)
	if most > longWait {
		text, most = "@wait.or-never", 0
		if least == 0 {
			text = "@wait.not-known"
		}
	}
	s := a.estimate("figures", "time-to-target", by, text)
	s.Low, s.High = significant(least, 2), significant(most, 2)
	if most == 0 && least > 0 {
		s.Values = finding.Values("least", timeText(least*60))
	}
}

// coolCurve gives the points to draw of the lowest and highest temperatures over the
// minutes, somewhat beyond the wait.
func (a *Answer) coolCurve(r *drain.Readings, edge, least, most float64) {
	const points = 13
	times, low, high := make([]float64, points), make([]float64, points), make([]float64, points)
	if most > longWait {
		most = 2 * least
	}
	for n := range points {
		times[n] = round(max(most*1.25, 10)*float64(n)/(points-1), 10)
		from, to := r.At(times[n])
		low[n], high[n] = round(from, 10), round(to, 10)
	}
	a.points("times", times)
	a.points("low", low)
	a.points("high", high)
	ticks := []float64{0, round(times[points-1], 1)}
	if most > 0 {
		ticks[1] = round(most, 1)
	}
	a.axis("x", "min", 2, ticks...)
	a.axis("y", "°C", 3, r.Second, edge)
}

// burns says what touching the surface and the oil does at that temperature in °C,
// how warm the oil should be to be drained, and what the hotter habit costs.
func (f *Form) burns(a *Answer, celsius float64) {
	surface, by := drain.Surface(f.of("surface").text), method("burn-bands")
	switch surface {
	case drain.Coated:
		by = "burn-coated"
	case drain.Plastic:
		by = "burn-plastic"
	default:
		surface = drain.Metal
	}
	for _, b := range surface.Bands() {
		s := a.amount("touch", "", by, b.Low, b.High, "°C", 3)
		s.Name = "touch." + string(b.At(celsius))
		s.Texts = append([]string{timeText(b.Seconds)}, s.Texts...)
	}
	a.scald("scald", celsius)
	a.amount("figures", "warm-target", "warm-target", drain.WarmLow, drain.WarmHigh, "°C", 2)
	a.scald("warm-scald", drain.ComparedWarm)
	a.amount("figures", "usual-warm", "practice", drain.HabitLow, drain.HabitHigh, "°C", 2)
	a.scald("habit-scald", drain.ComparedHabit)
	f.touch(a, surface, "second", celsius)
}

// scald adds in what time water of that temperature in °C scalds, where one was found.
func (a *Answer) scald(name string, celsius float64) {
	seconds, ok := drain.Scald(celsius)
	if !ok {
		return
	}
	text := "@scald.at-once"
	if seconds > 0 {
		text = timeText(seconds)
	}
	a.estimate("figures", name, "water-scald", text)
}
