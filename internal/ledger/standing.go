package ledger

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/wire"
)

// Standing gives the facts that stand, in order: each once, without those that were
// taken back and those that take back. It is the same for the same set, in whatever
// order and however often each comes. What can't be read, has no id or no valid time
// has no effect. Of two contents under one id the one whose canonical text sorts first
// stands.
func Standing(facts []Fact) []*Fact {
	list := once(facts)
	gone, _ := takenBack(list)
	return slices.DeleteFunc(list, func(f *Fact) bool { return f.Kind == Undo || gone[f.key()] })
}

// usable reports whether a fact can have an effect.
func (f *Fact) usable() bool { return f.unread == "" && f.ID != "" && date.Valid(f.Time) }

// once gives each fact that can have an effect once, in order.
func once(facts []Fact) []*Fact {
	var list []*Fact
	place := make(map[string]int, len(facts))
	for i := range facts {
		f := &facts[i]
		if !f.usable() {
			continue
		}
		key := f.key()
		at, again := place[key]
		switch {
		case !again:
			place[key] = len(list)
			list = append(list, f)
		case bytes.Compare(wire.Write(f), wire.Write(list[at])) < 0:
			list[at] = f
		}
	}
	slices.SortFunc(list, inOrder)
	return list
}

// inOrder says which of two facts comes first. Facts of one subject have the order in
// which their phones got them; what two phones told at once goes by the clock.
func inOrder(x, y *Fact) int {
	return cmp.Or(cmp.Compare(x.place(), y.place()), strings.Compare(x.Time, y.Time), strings.Compare(x.ID, y.ID),
		strings.Compare(string(x.Book), string(y.Book)), strings.Compare(x.Of, y.Of))
}

// takenBack says what the undos take back, by key, and which undos take each other back
// in a circle: none of those holds. It hangs on no order.
func takenBack(list []*Fact) (gone, circles map[string]bool) {
	about := map[string]string{}
	for _, f := range list {
		if f.Kind == Undo {
			about[f.key()] = f.of(f.What)
		}
	}
	gone, circles = map[string]bool{}, make(map[string]bool, len(about))
	against := map[string]int{} // how many undos that may hold yet take an undo back
	for _, of := range about {
		against[of]++
	}
	var settled []string // undos that hold, and whose effect is to be followed
	for key := range about {
		circles[key] = true // until it is settled
		if against[key] == 0 {
			settled = append(settled, key)
		}
	}
	for len(settled) > 0 {
		key := settled[len(settled)-1]
		settled = settled[:len(settled)-1]
		of := about[key]
		delete(circles, key)
		gone[of] = true
		if !circles[of] {
			continue // no undo, or one that is settled
		}
		delete(circles, of)
		further := about[of]
		if against[further]--; against[further] == 0 && circles[further] {
			settled = append(settled, further)
		}
	}
	return gone, circles
}
