package job

import "tidysump/internal/finding"

// takings are what was taken back, by the ids of events. Most jobs have few undos, so
// that nothing is noted of events that none of them names.
type takings struct {
	gone    map[string]bool    // taken back, and not brought back since
	holds   map[string]bool    // undos that hold
	circles map[string]bool    // undos that take each other back in a circle: none of them holds
	named   map[string]*placed // events that undos name; nil where there is none of that id
}

// takenBack says what the undos among the events take back. An undo holds unless one
// that holds takes it back, wherever the two stand: what was taken back comes back so.
// Two events that say a step is done are one: an undo of one of them takes back those
// before it too.
func takenBack(list []*placed) *takings {
	t := &takings{gone: map[string]bool{}, holds: map[string]bool{}, circles: map[string]bool{}, named: map[string]*placed{}}
	about := map[string]string{} // of the undos that can hold
	for _, e := range list {
		if e.Kind == Undo && e.ID != "" && !e.timeless {
			about[e.ID] = e.About
			t.named[e.About] = nil
		}
	}
	if len(about) == 0 {
		return t
	}
	for _, e := range list {
		if _, named := t.named[e.ID]; named && e.ID != "" {
			t.named[e.ID] = e
		}
	}
	against := map[string]int{} // how many undos that may hold yet take an undo back
	for _, of := range about {
		against[of]++
	}
	var settled []string // undos that hold, and whose effect is to be followed
	for id := range about {
		t.circles[id] = true // until it is settled
		if against[id] == 0 {
			settled = append(settled, id)
		}
	}
	for len(settled) > 0 {
		id := settled[len(settled)-1]
		settled = settled[:len(settled)-1]
		of := about[id]
		delete(t.circles, id)
		t.holds[id], t.gone[of] = true, true
		if !t.circles[of] {
			continue // no undo, or one that is settled
		}
		delete(t.circles, of)
		further := about[of]
		if against[further]--; against[further] == 0 && t.circles[further] {
			settled = append(settled, further)
		}
	}
	t.takeSteps(list)
	return t
}

// takeSteps takes back the other events that say that a step was done, as far as they
// stand before the undo of one of them.
func (t *takings) takeSteps(list []*placed) {
	until := map[string]int{} // places of the last undo of a step
	for i, e := range list {
		if of := t.named[e.About]; of != nil && of.Kind == Done && t.holds[e.ID] {
			until[of.Step] = i
		}
	}
	if len(until) == 0 {
		return
	}
	for i, e := range list {
		if e.Kind == Done && i < until[e.Step] {
			t.gone[e.ID] = true
		}
	}
}

// undo takes in what the undos take back, and reports those that take back nothing.
func (r *replayer) undo(list []*placed) {
	r.taken = takenBack(list)
	for _, e := range list {
		if e.Kind != Undo || e.ID == "" || e.timeless {
			continue
		}
		if r.taken.named[e.About] == nil {
			r.fault(e, "undo-unknown", "/of", finding.Refuse, "text", finding.Clip(e.About))
		}
		if r.taken.circles[e.ID] {
			r.fault(e, "undo-of-undo", "/of", finding.Refuse)
		}
	}
}

// redo finds the undo that was the last thing to happen at the bench. What was brought
// back is as if it had never been taken back, so the one before comes next.
func (r *replayer) redo(list []*placed) {
	for i := len(list) - 1; i >= 0; i-- {
		e := list[i]
		if e.counts {
			return
		}
		if e.Kind != Undo || e.beyond || !r.taken.holds[e.ID] {
			continue
		}
		if of := r.taken.named[e.About]; of != nil && of.Kind != Undo && isKnown(of) {
			r.state.Redo = e.ID
			return
		}
	}
}

func isKnown(e *placed) bool {
	known, _ := e.Kind.known()
	return known
}
