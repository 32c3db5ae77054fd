package plan

import (
	"slices"
	"strings"

	"tidysump/internal/card"
)

// takes lists what a step wants in the hand: what its fasteners are turned with, each in
// its size, the torque wrench, the new seals, the new filter, the oil. What is not known,
// and tools that its sentences name, are not among it.
func (d *day) takes(s *Step, on subject) []Item {
	var list []Item
	take := func(i Item) {
		if !hasItem(list, i) {
			list = append(list, i)
		}
	}
	for _, id := range slices.Concat(s.Opens, s.Closes) {
		b := d.card.Bolt(id)
		if b == nil {
			continue
		}
		closes := slices.Contains(s.Closes, id)
		canned := closes && b.Purpose == card.FilterCanned && measureOf(b) != ByTorque // by hand alone
		if i := d.driver(b); d.turnedWith(b) && !canned && i.Word != "tool.size-unknown" {
			i.Word, i.Count = "take."+strings.TrimPrefix(i.Word, "tool."), 0
			take(i)
		}
		if !closes {
			continue
		}
		if d.turnedWith(b) && b.Torque.Known() && measureOf(b) == ByTorque && s.Word != "step.peek-on" {
			take(NewItem(0, "take.torque-wrench"))
		}
		if b.Seal != nil && s.Word != "step.peek-on" && !(b.Purpose == card.FillerCap && byHand(b)) { // it is closed with its old seal
			take(takeSeal(b.Seal))
		}
	}
	if strings.HasPrefix(s.Word, "step.prepare-") && on.filter != nil {
		if on.filter.Kind != card.Centrifugal {
			take(NewItem(0, "take.filter-"+string(on.filter.Kind)))
		}
		for i := range on.filter.Seals {
			take(takeSeal(&on.filter.Seals[i]))
		}
	}
	if s.Word == "step.strainer-in" && on.strain != nil {
		for i := range on.strain.Seals {
			take(takeSeal(&on.strain.Seals[i]))
		}
	}
	if s.Pours != "" {
		if need := d.need(on.circuit); len(need.Texts) > 0 {
			i := NewItem(0, "take.oil", "need", need.Texts[0])
			for name, value := range need.Values {
				i.Values[name] = value
			}
			take(i)
		}
	}
	return list
}

func takeSeal(s *card.Seal) Item {
	if size := SealSize(s); size != "" {
		return NewItem(0, "take.seal", "kind", "@seal."+string(s.Kind), "size", size)
	}
	return NewItem(0, "take.seal-unsized", "kind", "@seal."+string(s.Kind))
}
