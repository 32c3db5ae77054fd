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
	return b.Drains || b.Purpose == card.Panel || b.Purpose == card.LeaveAlone || d.outer(b)
}

// outer reports whether another fastener that holds the same is behind that one, right
// or with others between.
func (d *day) outer(b *card.Bolt) bool {
	for i := range d.card.Bolts {
		inner := &d.card.Bolts[i]
		if inner.Holds != b.Holds || b.Holds == "" {
			continue
		}
		id := inner.Behind
		for n := 0; n <= len(d.card.Bolts) && id != ""; n++ {
			if id == b.ID {
				return true
			}
			id = d.behindWhat(id)
		}
	}
	return false
}

// behindWhat gives the id of what is in front of a thing of that id.
func (d *day) behindWhat(id string) string {
	if b := d.card.Bolt(id); b != nil {
		return b.Behind
	}
	for i := range d.card.Filters {
		if f := &d.card.Filters[i]; f.ID == id {
			return f.Behind
		}
	}
	for i := range d.card.Strain {
		if s := &d.card.Strain[i]; s.ID == id {
			return s.Behind
		}
	}
	return ""
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
