package plan

import (
	"tidysump/internal/card"
)

// withHolders gives the card with a fastener more for each filter and strainer
// that none on it holds: what comes off goes back on, though the card doesn't say
// how. Nothing is known of such a fastener, and the plan says so.
func withHolders(c *card.Card) *card.Card {
	full := *c
	full.Bolts = append([]card.Bolt(nil), c.Bolts...)
	for i := range c.Filters {
		f := &c.Filters[i]
		hold(&full, card.Bolt{ID: f.ID, Holds: f.ID, Circuit: f.Circuit, Place: f.Place, Purpose: f.Kind.HeldBy()})
	}
	for i := range c.Strain {
		s := &c.Strain[i]
		hold(&full, card.Bolt{ID: s.ID, Holds: s.ID, Circuit: s.Circuit, Place: s.Place, Purpose: card.StrainerCap})
	}
	placeDrains(&full)
	return &full
}

// placeDrains says of drain plugs whose places the card doesn't have which is the tank's
// and which the crankcase's, where one is the tank's: they are two of a kind.
func placeDrains(c *card.Card) {
	for i := range c.Bolts {
		tank := &c.Bolts[i]
		if !tank.Tank {
			continue
		}
		for n := range c.Bolts {
			if b := &c.Bolts[n]; b.Purpose == card.DrainPlug && b.Circuit == tank.Circuit && !b.Tank && b.Place == "" {
				b.Place = "@place.crankcase"
			}
		}
		if tank.Place == "" {
			tank.Place = "@place.tank"
		}
	}
}

// hold adds a fastener unless another holds the same.
func hold(c *card.Card, b card.Bolt) {
	for i := range c.Bolts {
		if other := &c.Bolts[i]; other.Holds == b.Holds && other.Purpose != card.LeaveAlone && other.Purpose != card.Panel {
			return
		}
	}
	c.Bolts = append(c.Bolts, b)
}
