package calc

import (
	"math"
	"strings"

	"tidysump/internal/drain"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

// runOutFields: less is what is to come within a minute at most; walls are what oil
// has wetted; at40 and at100 are the oil's viscosities at those temperatures.
var runOutFields = [...]field{
	{name: "volume", kind: quantity.Volume, low: 0.02, high: 25, needed: true},
	{name: "hole", kind: quantity.Length, low: 3, high: 60, needed: true},
	{name: "temperature", kind: quantity.Temperature, low: -30, high: 150, needed: true},
	{name: "less", kind: quantity.Volume, low: 1e-4, high: 0.1, front: true},
	{name: "minutes", kind: quantity.Duration, high: 24 * 60},
	{name: "head", kind: quantity.Length, low: 5, high: 1000},
	{name: "height", kind: quantity.Length, low: 5, high: 2000},
	{name: "walls", kind: quantity.Area, low: 0.01, high: 50},
	{name: "at40", kind: quantity.Viscosity, low: 2, high: 1e5},
	{name: "at100", kind: quantity.Viscosity, low: 2, high: 1e5},
}

// What more waiting and more warmth is compared with: seconds and K. lessComes is
// what is to come within a minute at most, in L, where nobody says: common practice,
// no source.
const moreTime, moreWarmth, lessComes = 5 * 60, 30, 5e-3

// runOutTimes are the minutes at which the curve is drawn.
var runOutTimes = []float64{0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 30}

// runOut follows the oil out of the engine.
func runOut(f *Form, a *Answer) {
	celsius := f.number("temperature")
	line := f.viscosities(a, celsius)
	if f.refused() {
		return
	}
	thin, thinner := line.At(celsius)*1e-6, line.At(celsius+moreWarmth)*1e-6
	e := f.engine(a)
	seconds := f.orAssume(a, "minutes", "run-out", "practice", drain.RunOutHigh, "min", 2) * 60
	a.number("viscosity", round(thin*1e6, 10))
	a.points("times", runOutTimes)
	a.points("left", curve(e, thin))
	a.points("warmer", curve(e, thinner))
	a.axis("x", "min", 2, 0, 5, 10, 20, 30)
	a.decades(f.number("volume") * 1000)

	left, film := e.Left(thin, seconds), e.Film(thin, seconds)
	a.estimate("figures", "stream-ends", "run-out", timeText(e.RunsFor(thin)))
	f.until(a, e, thin)
	if standing := left - film; standing > film/100 {
		a.millilitres("in-sump", "run-out", standing*1000, 2)
	}
	a.millilitres("on-walls", "run-out", film*1000, 2)
	a.millilitres("five-minutes-more", "run-out", (left-e.Left(thin, seconds+moreTime))*1000, 2)
	a.millilitres("thirty-degrees-more", "run-out", (left-e.Left(thinner, seconds))*1000, 2)

	at := func(celsius float64) float64 { return line.At(celsius) * 1e-6 }
	less, sooner := e.Gain(at(drain.ComparedWarm), at(drain.ComparedHabit), seconds)
	a.amount("figures", "warm-target", "warm-target", drain.WarmLow, drain.WarmHigh, "°C", 2)
	a.amount("figures", "usual-warm", "practice", drain.HabitLow, drain.HabitHigh, "°C", 2)
	a.millilitres("habit-less", "run-out", less*1000, 2)
	a.estimate("figures", "habit-sooner", "run-out", timeText(sooner))

	f.touch(a, drain.Metal, "temperature", celsius)
	if celsius < 0 {
		f.say(finding.Note, "cold-viscosity", "temperature")
	}
}

// until adds the time after which less than so much comes within a minute.
func (f *Form) until(a *Answer, e *drain.Engine, viscosity float64) {
	less := f.orAssume(a, "less", "less-comes", "practice", lessComes, "mL", 2)
	low, high := e.Until(viscosity, less/1000)
	if high == 0 {
		f.reject("never-comes", "less")
	}
	s := a.estimate("figures", "until-less", "rough-walls", timeRange(low, high))
	s.Low, s.High = significant(low/60, 2), significant(high/60, 2)
}

// viscosities gives the oil's, by temperature, refused where that of the
// temperature in °C can't be worked out. It takes the typical oil unless both of
// its own are given.
func (f *Form) viscosities(a *Answer, celsius float64) oil.Line {
	if f.has("at40") || f.has("at100") {
		f.need("at40")
		f.need("at100")
	}
	at40 := f.orAssume(a, "at40", "typical-at-40", "typical-oil", drain.TypicalAt40, "mm²/s", 3)
	at100 := f.orAssume(a, "at100", "typical-at-100", "typical-oil", drain.TypicalAt100, "mm²/s", 3)
	line, ok := oil.LineThrough(40, at40, 100, at100)
	if !ok || math.IsNaN(line.At(celsius)+line.At(celsius+moreWarmth)) {
		f.reject("viscosity-out-of-range", "at40")
	}
	return line
}

// engine takes the engine's shape as far as it is given.
func (f *Form) engine(a *Answer) *drain.Engine {
	e := drain.Guess(f.number("volume")/1000, f.number("hole")/1000)
	e.Head = f.orAssume(a, "head", "head", "engine-shape", e.Head*1000, "mm", 2) / 1000
	e.Height = f.orAssume(a, "height", "wall-height", "engine-shape", e.Height*1000, "mm", 2) / 1000
	e.Walls = f.orAssume(a, "walls", "wet-walls", "engine-shape", e.Walls, "m²", 2)
	return e
}

// curve gives what is left in mL at each of runOutTimes.
func curve(e *drain.Engine, viscosity float64) []float64 {
	points := make([]float64, len(runOutTimes))
	for n, minutes := range runOutTimes {
		points[n] = round(e.Left(viscosity, minutes*60)*1e6, 10)
	}
	return points
}

// decades puts an upright axis of powers of ten, from 1 mL to the volume in mL.
func (a *Answer) decades(volume float64) {
	var places []float64
	var texts []string
	for v := 1.0; v < volume; v *= 10 {
		text := a.between(v/1000, v/1000, "mL", 2)[0]
		if strings.HasPrefix(text, "0 ") {
			continue // too little to say in fluid ounces
		}
		places = append(places, v)
		texts = append(texts, text)
	}
	a.points("yTicks", places)
	a.list("yTexts", texts)
}

// orAssume gives a field's number. Where nothing was given it takes the guess,
// in the unit's base, and notes so.
func (f *Form) orAssume(a *Answer, field, figure string, by method, guess float64, unit string, digits int) float64 {
	if f.has(field) {
		return f.number(field)
	}
	a.amount("assumed", figure, by, guess, guess, unit, digits)
	return guess
}

// millilitres adds a volume in L to the figures, rounded to whole mL; nobody tells less
// than one from nothing.
func (a *Answer) millilitres(name string, by method, litres float64, digits int) {
	if litres > 0 && litres < 1e-3 {
		a.estimate("figures", name, by, "<1 mL")
		return
	}
	v := round(litres, 1000)
	a.amount("figures", name, by, v, v, "mL", digits)
}

// touch says what the temperature in °C means before the oil is drained, and notes
// how soon a surface of it burns.
func (f *Form) touch(a *Answer, surface drain.Surface, field string, celsius float64) {
	a.word("warmth", "warmth."+string(drain.Judge(celsius)))
	if seconds, ok := surface.BurnsIn(celsius); ok {
		f.say(finding.Note, "touch-burns", field, "surface", "@surface."+string(surface),
			"value", a.between(celsius, celsius, "°C", 3)[0], "time", timeText(seconds))
	}
}
