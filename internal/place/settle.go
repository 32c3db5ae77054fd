package place

import (
	"tidysump/internal/card"
)

// settle fills in what follows from what was read.
func (t *taking) settle() {
	c := t.card
	if engine := c.Circuit(t.circuit(card.EngineOil)); t.entered[engine.ID+"/withFilter"] {
		t.filter(card.KindUnknown) // there is one
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

// nth takes out of a part of which the card says nothing else how often it is due, once it
// has an interval of its own: from that it follows.
func (t *taking) nth(id string, nth *int, own *card.Interval) {
	if own != nil && t.bare[id] && !t.entered[id+"/everyNth"] {
		*nth = 0
	}
}
