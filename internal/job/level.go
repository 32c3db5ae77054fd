package job

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// gaugeOf gives the gauge to draw for a circuit, nil where it has no marks. A
// window is drawn as a usual one: cards don't say how wide it is.
func gaugeOf(c *card.Circuit) *Gauge {
	kind, drawn := "stick", fill.Stick
	switch {
	case c.Level.Device == "window":
		kind, drawn = "window", fill.Window(fill.UsualGlass, fill.UsualMarks)
	case !strings.HasPrefix(c.Level.Device, "stick"):
		return nil
	}
	return &Gauge{kind, drawn.Low, drawn.High, drawn.Height(0), drawn.Height(1),
		drawn.Height(fill.AimLow), drawn.Height(fill.AimHigh)}
}

// levelRead takes in where the oil stands: one of the words asked, or a share of
// the band.
func (r *replayer) levelRead(e placed, ask *Ask, read *Read) bool {
	for _, word := range ask.Choice {
		if word == e.Value {
			r.levelIs(e, read, word)
			return true
		}
	}
	share, list := quantity.Parse(quantity.Share, e.Value, "%", r.bench.System)
	if ask.Gauge == nil || finding.Refused(list) || share.Base < ask.Gauge.Low || share.Base > ask.Gauge.High {
		r.fault(e, "unknown-word", "/value", finding.Refuse, "text", shorten(e.Value))
		return false
	}
	read.Texts = share.Show(r.bench.System)
	r.levelIs(e, read, string(fill.LevelAt(share.Base)))
	r.share[e.Of] = &share.Base
	if strings.HasPrefix(r.stepOf(e.Step).Word, "step.level-found") {
		r.shareFound[e.Of] = &share.Base
	} else {
		r.shareLeft[e.Of] = &share.Base
	}
	return true
}

func (r *replayer) levelIs(e placed, read *Read, word string) {
	r.level[e.Of] = word
	r.share[e.Of] = nil
	read.Texts = append(read.Texts, "@level."+word)
	if word == string(fill.Above) {
		r.fault(e, "level-above", "/value", finding.Doubt, "of", read.Name)
	}
}

// leakRead takes in whether it is dry.
func (r *replayer) leakRead(e placed, ask *Ask, read *Read) bool {
	for _, word := range ask.Choice {
		if word == e.Value {
			read.Texts = []string{"@leak." + word}
			if r.stepOf(e.Step).After {
				r.leak = word
			}
			if word == leaking {
				r.fault(e, "leak-seen", "/value", finding.Doubt)
			}
			return true
		}
	}
	r.fault(e, "unknown-word", "/value", finding.Refuse, "text", shorten(e.Value))
	return false
}

// amend says what to do about a level read as a share of a band that the card
// knows.
func (r *replayer) amend(c *card.Circuit, b *Balance) {
	share := r.share[c.ID]
	band, known := c.Level.Band.Amount()
	if share == nil || !known {
		return
	}
	advice, ml := fill.Amend(*share, band.Base*1000, 0)
	b.Amend = "amend." + string(advice)
	if ml > 0 {
		b.Change = texts(quantity.Volume, ml/1000, "mL", 4, r.bench.System)
	}
}
