package calc

import (
	"math"

	"tidysump/internal/drain"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// coolFields are two readings of a thermometer in the oil, and what is waited
// for.
var coolFields = [...]field{
	{name: "first", kind: quantity.Temperature, low: -40, high: 200, needed: true},
	{name: "second", kind: quantity.Temperature, low: -40, high: 200, needed: true},
	{name: "between", kind: quantity.Duration, low: 0.05, high: 24 * 60, needed: true},
	{name: "air", kind: quantity.Temperature, low: -40, high: 60, needed: true},
	{name: "target", kind: quantity.Temperature, low: -40, high: 150},
}

// Readings closer than this many K show the rate poorly, and a target further
// than this many minutes is not worth waiting for.
const closeReadings, longWait = 3, 7 * 24 * 60

// cool says when the oil will have the target's temperature, and what touching
// it does now.
func cool(f *Form, a *Answer) {
	first, second, air := f.number("first"), f.number("second"), f.number("air")
	rise := (second - first) / f.number("between")
	edge := float64(drain.WarmHigh) // where it has cooled to what is drained at
	if rise > 0 {
		edge = drain.WarmLow
	}
	target := f.orAssume(a, "target", "target", "warm-target", edge, "°C", 3)
	rate, falls := drain.CoolingRate(first, second, air, f.number("between"))
	minutes, reached := drain.CoolingTime(second, target, air, rate)
	verdict, by := "cool.cooling", method("newton")
	if rise > 0 {
		// How warming goes on is not known: a straight line is the least.
		minutes = max((target-second)/rise, 0)
		verdict, by = "cool.warming", "straight-line"
	}
	switch {
	case rise == 0:
		f.reject("readings-equal", "second")
	case rise < 0 && !falls:
		f.reject("below-air", "second")
	case falls && !reached:
		f.reject("target-below-air", "target")
	case minutes > longWait:
		f.reject("too-slow", "second")
	}
	if f.refused() {
		return
	}
	if minutes == 0 {
		verdict = "cool.already"
	}
	a.word("verdict", verdict)
	a.number("minutes", round(minutes, 10))
	a.estimate("figures", "time-to-target", by, timeText(minutes*60))
	if math.Abs(second-first) < closeReadings {
		f.say(finding.Doubt, "readings-close", "second")
	}

	a.coolCurve(minutes, func(at float64) float64 {
		if falls {
			return drain.Cooled(second, air, rate, at)
		}
		return second + rise*at
	})
	a.axis("x", "min", 2, 0, round(minutes, 1))
	a.axis("y", "°C", 3, second, target)
	f.burns(a, second)
}

// coolCurve gives the points to draw of a temperature over the minutes, somewhat
// beyond the time that is asked for.
func (a *Answer) coolCurve(minutes float64, temperature func(minutes float64) float64) {
	const points = 13
	times, temps := make([]float64, points), make([]float64, points)
	for n := range points {
		at := max(minutes*1.25, 10) * float64(n) / (points - 1)
		times[n], temps[n] = round(at, 10), round(temperature(at), 10)
	}
	a.points("times", times)
	a.points("temps", temps)
}

// burns says what touching metal and oil of that temperature in °C does, how warm
// it should be to be drained, and what the hotter habit costs.
func (f *Form) burns(a *Answer, celsius float64) {
	for n := range drain.Bands {
		b := &drain.Bands[n]
		s := a.amount("touch", "", "burn-bands", b.Low, b.High, "°C", 3)
		s.Name = "touch." + string(b.At(celsius))
		s.Texts = append([]string{timeText(b.Seconds)}, s.Texts...)
	}
	a.scald("scald", celsius)
	a.amount("figures", "warm-target", "warm-target", drain.WarmLow, drain.WarmHigh, "°C", 2)
	a.scald("warm-scald", drain.ComparedWarm)
	a.amount("figures", "usual-warm", "practice", drain.HabitLow, drain.HabitHigh, "°C", 2)
	a.scald("habit-scald", drain.ComparedHabit)
	f.touch(a, "second", celsius)
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
