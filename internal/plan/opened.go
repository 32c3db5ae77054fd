package plan

import "tidysump/internal/card"

// openedAt gives the ids of what a step opens: the fastener that it is about; of a
// filter those that hold it, as far as nothing opened them before; of a circuit its
// filler, which lets in air while the oil runs out.
func (d *day) openedAt(on subject) []string {
	switch {
	case on.bolt != nil:
		return []string{on.bolt.ID}
	case on.filter != nil:
		return idsOf(d.boltsWhere(func(b *card.Bolt) bool { return b.Holds == on.filter.ID && !d.apart(b) }))
	case on.circuit != nil:
		return idsOf(d.boltsWhere(func(b *card.Bolt) bool { return d.isFiller(b) && b.Circuit == on.circuit.ID }))
	}
	return nil
}

// closedAt gives the ids of what a step closes: the fastener that it is about, or the
// fillers that are closed by hand.
func (d *day) closedAt(on subject) []string {
	if on.bolt != nil {
		return []string{on.bolt.ID}
	}
	return idsOf(d.boltsWhere(func(b *card.Bolt) bool { return d.isFiller(b) && byHand(b) }))
}

// isFiller reports whether an oil of the day is poured in through that cap.
func (d *day) isFiller(b *card.Bolt) bool {
	return b.Purpose == card.FillerCap && d.doing(b.Circuit) && !d.opened(b)
}

// apart reports whether a fastener that holds a filter is opened by a step of its own
// and not with the filter: oil runs out there, or it is the outer one of two covers.
func (d *day) apart(b *card.Bolt) bool {
	if b.Drains || b.Purpose == card.Panel || b.Purpose == card.LeaveAlone {
		return true
	}
	for i := range d.card.Bolts {
		if inner := &d.card.Bolts[i]; inner.Behind == b.ID && inner.Holds == b.Holds {
			return true
		}
	}
	return false
}

func idsOf(bolts []*card.Bolt) []string {
	var ids []string
	for _, b := range bolts {
		ids = append(ids, b.ID)
	}
	return ids
}

// tally lists what is touched and counted at a step: each place with its pieces.
func (d *day) tally(word string) []Item {
	var list []Item
	touched := d.opened
	switch word {
	case "guard", "covers-off":
		list = append(list, NewItem(1, "tally.tyre"), NewItem(1, "tally.brake"))
		for _, f := range d.filters {
			if f.Mount == card.OpenSideways {
				list = append(list, NewItem(1, "tally.exhaust"))
				break
			}
		}
		return list
	case "name-plugs":
		touched = d.named
	}
	for _, b := range d.boltsWhere(touched) {
		list = append(list, NewItem(b.Number(), "tally.place", "place", orWord(b.Place, "not-known"), "purpose", "@purpose."+string(b.Purpose)))
	}
	return list
}
