package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/wire"
)

// Gauge is a level gauge to be drawn: the shares of the band at its lowest and
// its highest point, and as shares of the way between these where the marks and
// the aim lie. Slide is the same in percent, for a hand that slides the level, with
// where it begins: between the marks.
type Gauge struct {
	Kind                               string // "window" or "stick"
	Low, High                          float64
	LowMark, HighMark, AimLow, AimHigh float64
	SlideLow, SlideHigh, SlideFrom     float64
}

// Members names the members of a gauge.
func (g *Gauge) Members(m *wire.Members) {
	m.String("kind", &g.Kind, wire.Required)
	m.Float("low", &g.Low)
	m.Float("high", &g.High)
	m.Float("lowMark", &g.LowMark)
	m.Float("highMark", &g.HighMark)
	m.Float("aimLow", &g.AimLow)
	m.Float("aimHigh", &g.AimHigh)
	m.Float("slideLow", &g.SlideLow)
	m.Float("slideHigh", &g.SlideHigh)
	m.Float("slideFrom", &g.SlideFrom)
}

// gaugeOf gives the gauge to draw for a circuit, nil where it has no marks. A
// window is drawn as a usual one: cards don't say how wide it is.
func gaugeOf(c *card.Circuit) *Gauge {
	kind, drawn := "stick", fill.Stick
	switch {
	case c.Level.Device == card.Window:
		kind, drawn = string(card.Window), fill.Window(fill.UsualGlass, fill.UsualMarks)
	case !c.Level.Device.Stick():
		return nil
	}
	return &Gauge{kind, drawn.Low, drawn.High, drawn.Height(0), drawn.Height(1),
		drawn.Height(fill.AimLow), drawn.Height(fill.AimHigh), 100 * drawn.Low, 100 * drawn.High, 50}
}
