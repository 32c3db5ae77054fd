package calc

import (
	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// levelFields: a level is read in one of three ways: as a share of the band
// between the marks, as a length above the lower mark, or, in a round window,
// as the share of the glass that oil covers. Lean and offset go together, and
// so do temperature, meantAt and volume.
var levelFields = [...]field{
	{name: "gauge", kind: Choice, words: texts(card.Devices...), family: "device.", needed: true},
	{name: "band", kind: quantity.Volume, low: 0.01, high: 5, needed: true},
	{name: "share", kind: quantity.Share, low: -1, high: 2, front: true},
	{name: "above", kind: quantity.Length, low: -300, high: 900, front: true},
	{name: "covered", kind: quantity.Share, high: 1, front: true},
	{name: "marks", kind: quantity.Length, low: 1, high: 300},
	{name: "glass", kind: quantity.Length, low: 3, high: 300},
	{name: "slant", kind: quantity.Angle, high: 80},
	{name: "lean", kind: quantity.Angle, high: 45},
	{name: "offset", kind: quantity.Length, high: 500},
	{name: "temperature", kind: quantity.Temperature, low: -30, high: 150},
	{name: "meantAt", kind: quantity.Temperature, low: -30, high: 150},
	{name: "volume", kind: quantity.Volume, low: 0.02, high: 25},
}

// gauge is a gauge and what was read on it. Lengths are in mm, the band in mL;
// share, off and heat are shares of the band.
type gauge struct {
	window             bool
	band, marks, glass float64
	way                string  // the field in which the level was given
	share              float64 // as read
	off                float64 // how wrong the reading may be
	heat               float64 // what the temperature will add
}

// level turns a reading into what to pour or to take out.
func level(f *Form, a *Answer) {
	g := &gauge{window: f.device() == card.Window, band: f.number("band") * 1000, marks: f.number("marks")}
	f.gauge(a, g)
	f.reading(g)
	f.lean(a, g)
	f.heat(a, g)
	if f.refused() {
		return
	}
	f.advise(a, g)
	a.picture(g)
}

// device is what the level was read on.
func (f *Form) device() card.Device { return card.Device(f.of("gauge").text) }

// gauge takes in what the gauge is. A window whose size isn't given is assumed;
// the marks of a stick can't be.
func (f *Form) gauge(a *Answer, g *gauge) {
	switch f.device() {
	case card.Hole, card.Gaugeless:
		f.reject("gauge-without-marks", "gauge")
	case card.Window:
		g.marks = f.orAssume(a, "marks", "marks-apart", "usual-glass", fill.UsualMarks, "mm", 2)
		g.glass = f.orAssume(a, "glass", "glass-across", "usual-glass", max(fill.UsualGlass, g.marks), "mm", 2)
		if g.glass < g.marks {
			f.reject("marks-beyond-glass", "marks")
		}
	default:
		if f.has("above") || f.has("lean") {
			f.need("marks")
		}
	}
}

// reading takes in what was read, as a share of the band, and refuses what
// can't be on the gauge. A window that shows no line says little: empty and
// brim-full look alike.
func (f *Form) reading(g *gauge) {
	ways := 0
	for _, way := range [...]string{"share", "above", "covered"} {
		if f.has(way) {
			g.way = way
			ways++
		}
	}
	if ways == 0 {
		f.need("share")
	} else if ways > 1 {
		f.reject("one-reading", g.way)
	} else if g.way == "covered" && !g.window {
		f.reject("no-glass", "covered")
	}
	if f.refused() {
		return
	}
	low, high := -1.0, 3.0
	if g.window {
		drawn := fill.Window(g.glass, g.marks)
		low, high = drawn.Low, drawn.High
	}
	switch g.way {
	case "above":
		g.share = f.number("above") / g.marks
	case "covered":
		g.share = fill.ShareAt(fill.LineAt(f.number("covered"))*g.glass, g.glass, g.marks)
	default:
		g.share = f.number("share")
	}
	const edge = 1e-6
	if g.share < low-edge || g.share > high+edge {
		f.reject("off-gauge", g.way)
	} else if g.window && (g.share < low+edge || g.share > high-edge) {
		f.say(finding.Doubt, "no-line", g.way)
	}
	g.share = fill.AsTold(g.share)
}

// lean works out how wrong a leaning bike makes the reading.
func (f *Form) lean(a *Answer, g *gauge) {
	if !f.has("lean") {
		return
	}
	f.need("offset")
	if f.refused() {
		return
	}
	off := fill.Tilt(f.number("offset"), f.number("lean"))
	g.off = fill.AsTold(off / fill.Upright(g.marks, f.number("slant")))
	a.amount("figures", "tilt-error", "tilt", off, off, "mm", 2)
	a.amount("figures", "tilt-share", "tilt", g.off, g.off, "%", 2)
}

// heat works out the level at the temperature that the marks are meant for.
func (f *Form) heat(a *Answer, g *gauge) {
	if !f.has("temperature") && !f.has("meantAt") {
		return
	}
	f.need("temperature")
	f.need("meantAt")
	f.need("volume")
	if f.refused() {
		return
	}
	rise := fill.RiseInCase(f.number("volume"), f.number("temperature"), f.number("meantAt"))
	g.heat = rise * 1000 / g.band
	if rise < 0 {
		a.millilitres("shrink", "expansion", -rise, 2)
	} else {
		a.millilitres("rise", "expansion", rise, 2)
	}
	f.say(finding.Note, "state-first", "temperature")
}

// advise says what to do about the level: the change in L is less than nothing
// where oil is to be taken out.
func (f *Form) advise(a *Answer, g *gauge) {
	now := fill.AsTold(g.share + g.heat)
	advice, ml := fill.Amend(g.share, now, g.band, g.off)
	litres := ml / 1000
	a.word("verdict", "amend."+string(advice))
	a.number("share", g.share)
	a.number("corrected", now)
	switch advice {
	case fill.AddOil:
		a.millilitres("pour-now", "level-step", litres, 2)
		a.millilitres("missing-to-middle", "level-aim", fill.Missing(now, g.band)/1000, 2)
		if now < 0 {
			f.say(finding.Note, "below-marks", g.way)
		}
	case fill.TakeOut:
		a.millilitres("take-out", "level-aim", litres, 2)
		litres = -litres
	case fill.Unsure:
		f.whyUnsure(g)
	}
	a.number("change", litres)
}

// whyUnsure says what keeps the reading from deciding: how the bike leans, or the growth
// by heat, which would alone decide it.
func (f *Form) whyUnsure(g *gauge) {
	switch {
	case !quantity.AtMost(g.off, fill.Reliable):
		f.say(finding.Doubt, "leans-too-much", "lean")
	case quantity.AtMost(g.share, 1) && !quantity.AtMost(g.share+g.off, 1):
		f.say(finding.Doubt, "leans-at-mark", "lean")
	default:
		f.say(finding.Doubt, "heat-decides", "temperature")
	}
}

// picture gives the gauge as it was read: heights as shares of it.
func (a *Answer) picture(g *gauge) {
	a.word("gauge", "stick")
	drawn := fill.Stick
	if g.window {
		a.word("gauge", string(card.Window))
		drawn = fill.Window(g.glass, g.marks)
	}
	for _, height := range [...]struct {
		name  string
		share float64
	}{{"line", g.share}, {"lowMark", 0}, {"highMark", 1}, {"aimLow", fill.AimLow}, {"aimHigh", fill.AimHigh}} {
		a.number(height.name, round(drawn.Height(height.share), 1e4))
	}
	if g.window {
		a.number("covered", round(fill.Covered(drawn.Height(g.share)), 1e4))
	}
}
