package place

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// mostNth is the most changes that may lie between two of a part, as a card's check has it.
const mostNth = 20

// settle fills in what follows from what was read.
func (t *taking) settle() {
	c := t.card
	if engine := c.Circuit(t.circuit(card.EngineOil)); t.entered[engine.ID+"/withFilter"] {
		t.filter(card.SpinOn) // there is one
	}
	if t.guessed != "" {
		t.notes = append(t.notes, finding.Finding{Code: "filter-kind-open", Where: "/card", Grade: finding.Doubt,
			Values: finding.Values("kind", "@purpose.filter-can")})
	}
	for i := range c.Bolts {
		// A cap that gets a torque or a size isn't one that is turned by hand.
		if b := &c.Bolts[i]; b.Purpose == card.FillerCap && t.bare[b.ID] && b.Drive == card.Hand &&
			!t.entered[b.ID+"/drive"] && (b.Torque.Known() || b.Size.Known()) {
			b.Drive = ""
		}
	}
	for i := range c.Circuits {
		if r := &c.Circuits[i]; r.Role != card.EngineOil {
			t.nth(r.ID, &r.EveryNth, r.Interval)
		}
	}
	for i := range c.Filters {
		t.nth(c.Filters[i].ID, &c.Filters[i].EveryNth, c.Filters[i].Interval)
	}
	for i := range c.Strain {
		t.nth(c.Strain[i].ID, &c.Strain[i].EveryNth, c.Strain[i].Interval)
	}
}

// nth says at which of the engine's changes a part is due that has an interval of its own,
// where the card leaves that open: at the last one before that is over.
func (t *taking) nth(id string, nth *int, own *card.Interval) {
	if own == nil || t.entered[id+"/everyNth"] || *nth != 0 && !t.bare[id] {
		return
	}
	usual := &t.card.Interval
	for _, f := range [...]struct{ own, usual *card.Figure }{
		{own.Distance, usual.Distance}, {own.Time, usual.Time}, {own.Hours, usual.Hours}} {
		a, known := f.own.Amount()
		b, ok := f.usual.Amount()
		if known && ok && b.Base > 0 {
			// 4,000 mi for 6,000 km and the like are rounded: a tenth over is no change more.
			*nth = min(max(int(a.Base/b.Base+0.1), 1), mostNth)
			return
		}
	}
}
