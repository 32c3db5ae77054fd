package manual

// Hints are what a page tells of the bike besides what it says of its parts: how it keeps
// its oil.
type Hints struct{ Tank, Frame, Scooter, Shaft, Flat bool }

// hints looks for the words that tell.
func (p *page) hints() (h Hints) {
	for i := range p.terms {
		t := &p.terms[i]
		h.Frame = h.Frame || t.has("bike.frame")
		h.Tank = h.Tank || t.has("bike.dry-sump")
		h.Scooter = h.Scooter || t.has("bike.scooter")
		h.Shaft = h.Shaft || t.has("bike.shaft")
		h.Flat = h.Flat || t.has("bike.flat")
	}
	return h
}

// add adds what another page tells.
func (h *Hints) add(o Hints) {
	h.Tank, h.Frame, h.Scooter = h.Tank || o.Tank, h.Frame || o.Frame, h.Scooter || o.Scooter
	h.Shaft, h.Flat = h.Shaft || o.Shaft, h.Flat || o.Flat
}
