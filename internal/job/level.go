package job

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
)

// levelRead takes in where the oil stands: one of the words asked, or a share of
// the band.
func (r *replayer) levelRead(e *placed, step *plan.Step, ask *plan.Ask, read *Read) bool {
	for _, word := range ask.Choice {
		if word == e.Value {
			r.levelIs(e, read, word)
			return true
		}
	}
	q := quantity.Ask{Kind: quantity.Share, Unit: "%", System: r.print.System}
	if ask.Gauge != nil {
		q.Low, q.High = ask.Gauge.Low, ask.Gauge.High
	}
	share, list := q.Read(e.Value)
	switch {
	case ask.Gauge != nil && len(list) > 0 && list[0].Code == "number-two-ways": // "1"
		r.tell(e, list)
		return false
	case ask.Gauge == nil || finding.Refused(list) || share.Base < q.Low || share.Base > q.High:
		r.fault(e, "unknown-word", "/value", finding.Refuse, "text", finding.Clip(e.Value))
		return false
	}
	r.tell(e, list)
	share.Base = fill.AsTold(share.Base)
	read.Texts = share.Show(r.print.System)
	read.Share, _, _ = strings.Cut(read.Texts[0], " ")
	r.levelIs(e, read, string(fill.LevelAt(share.Base)))
	if step.Interim {
		return true // it says neither what to add nor where the oil is left
	}
	r.share[e.About] = &share.Base
	if step.Finds {
		r.trace.ShareFound[e.About] = &share.Base
	} else {
		r.trace.ShareLeft[e.About] = &share.Base
	}
	return true
}

func (r *replayer) levelIs(e *placed, read *Read, word string) {
	r.level[e.About] = word
	r.share[e.About] = nil
	read.Choice = word
	read.Texts = append(read.Texts, "@level."+word)
	if word == string(fill.Above) {
		r.fault(e, "level-above", "/value", finding.Doubt, "of", read.Name)
	}
}

// leakRead takes in whether it is dry.
func (r *replayer) leakRead(e *placed, step *plan.Step, ask *plan.Ask, read *Read) bool {
	for _, word := range ask.Choice {
		if word == e.Value {
			read.Choice, read.Texts = word, []string{"@leak." + word}
			if step.After {
				r.leak = word
			}
			if word == plan.Leaking {
				r.fault(e, "leak-seen", "/value", finding.Doubt)
			}
			return true
		}
	}
	r.fault(e, "unknown-word", "/value", finding.Refuse, "text", finding.Clip(e.Value))
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
	advice, ml := fill.Amend(*share, *share, band.Base*1000, 0)
	b.Amend = "amend." + string(advice)
	if ml > 0 {
		b.Change = r.print.Texts(ml/1000, "mL", 2)
	}
}
