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
	return b.Purpose == card.FillerCap && d.doing(b.Circuit) && d.turned(b) && !d.opened(b)
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
		if inner.Holds == b.Holds && inner != b && b.Holds != "" && d.isBehind(inner.ID, b.ID, map[string]bool{inner.ID: true}) {
			return true
		}
	}
	return false
}

// isBehind reports whether a thing is behind another, right or with others between,
// that were not looked at yet.
func (d *day) isBehind(id, front string, seen map[string]bool) bool {
	for _, f := range d.inFrontOf(id) {
		if f == front || first(seen, f) && d.isBehind(f, front, seen) {
			return true
		}
	}
	return false
}

// inFrontOf gives the ids of what is right in front of a thing: of a fastener also what
// is in front of what it holds, and of a filter or strainer all that holds it.
func (d *day) inFrontOf(id string) []string {
	var list []string
	of := id
	if b := d.card.Bolt(id); b != nil {
		list, of = append(list, b.Behind), b.Holds
	} else {
		for i := range d.card.Bolts {
			if b := &d.card.Bolts[i]; b.Holds == id {
				list = append(list, b.ID)
			}
		}
	}
	for i := range d.card.Filters {
		if f := &d.card.Filters[i]; f.ID == of {
			list = append(list, f.Behind)
		}
	}
	for i := range d.card.Strain {
		if s := &d.card.Strain[i]; s.ID == of {
			list = append(list, s.Behind)
		}
	}
	return list
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
		list = append(list, NewItem(b.Number(), "tally.place", "place", orWord(b.Place, "unknown.place"), "purpose", "@purpose."+string(b.Purpose)))
	}
	return list
}
