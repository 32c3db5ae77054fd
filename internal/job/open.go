package job

import (
	"slices"
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// OpenPlace is a fastener that was opened and not closed.
type OpenPlace struct {
	About   string // id of the fastener
	Purpose string // word id
	Place   string // as on the card; may be empty
	Count   int    // pieces
	Step    string // id of the step that closes it; empty where the plan has none

	bolt   *card.Bolt
	order  int // of the event that opened it first
	opened int // place in the plan of the last of its openings; -1 for one of another plan
	closes int // place of the step that closes it; beyond the end where there is none
}

// Members names the members of an open place.
func (o *OpenPlace) Members(m *wire.Members) {
	m.String("of", &o.About, wire.Required)
	m.String("purpose", &o.Purpose, wire.Required)
	m.String("place", &o.Place)
	m.Int("count", &o.Count)
	m.String("step", &o.Step)
}

// opened lists what is open now, in the order of opening.
//
// A step that opens something has the steps that close it after it in the plan: done in
// whatever order, once one of these is done the thing is closed. So a step that somebody
// passed over and ticks later opens nothing anew, and what is told as open can always be
// ticked as closed. A step of another version's plan has no place in this one: what it
// opened is open until a step that closes it comes later in time, or until none is left
// to be done here; it closes what was opened before it in time.
func (r *replayer) opened() []OpenPlace {
	closers := map[string]*closing{}
	for i := range r.plan.Steps {
		for _, id := range r.plan.Steps[i].Closes {
			c := closers[id]
			if c == nil {
				c = &closing{last: -1}
				closers[id] = c
			}
			c.end = i
			if e := r.done[r.plan.Steps[i].ID]; e != nil {
				c.last, c.order = i, max(c.order, e.order)
			} else {
				c.left = true
			}
		}
	}
	var list []OpenPlace
	for i := range r.plan.Steps {
		e := r.done[r.plan.Steps[i].ID]
		if e == nil {
			continue
		}
		for _, id := range r.plan.Steps[i].Opens {
			if c := closers[id]; !c.since(i) && r.closedElsewhere[id] <= e.order {
				list = r.stillOpen(list, id, e.order, i)
			}
		}
	}
	for id, order := range r.openedElsewhere {
		if c := closers[id]; (c == nil || c.left && c.order <= order) && r.closedElsewhere[id] <= order {
			list = r.stillOpen(list, id, order, -1)
		}
	}
	for i := range list {
		r.closedBy(&list[i])
	}
	for i := range list {
		for j := i; j > 0 && before(&list[j], &list[j-1]); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// before reports whether a thing was opened before another: one at the same step stands
// in the order of the alphabet.
func before(x, y *OpenPlace) bool {
	return x.order < y.order || x.order == y.order && x.About < y.About
}

// closing is what is known of the steps that close a fastener.
type closing struct {
	end   int  // place of the last of them in the plan
	last  int  // place of the last of them that is done; -1 for none
	order int  // place of its event in the replay, and no lower than those of the others
	left  bool // one is not done
}

// since reports whether what was opened at that place of the plan was closed: by a step
// after it, or by any where none comes after it.
func (c *closing) since(opened int) bool {
	return c != nil && (c.last > opened || c.end < opened && c.last >= 0)
}

// stillOpen adds a fastener to those that are open, each once.
func (r *replayer) stillOpen(list []OpenPlace, id string, order, place int) []OpenPlace {
	for i := range list {
		if was := &list[i]; was.About == id {
			was.order, was.opened = min(was.order, order), max(was.opened, place)
			return list
		}
	}
	if b := r.plan.Card().Bolt(id); b != nil {
		list = append(list, OpenPlace{About: id, Purpose: "purpose." + string(b.Purpose), Place: b.Place, Count: b.Number(),
			bolt: b, order: order, opened: place})
	}
	return list
}

// closedBy finds the step that closes what is open: the first one not done after the
// last opening, or else any.
func (r *replayer) closedBy(o *OpenPlace) {
	o.closes = len(r.plan.Steps)
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		if (o.Step == "" || i > o.opened) && r.done[s.ID] == nil && slices.Contains(s.Closes, o.About) {
			o.closes, o.Step = i, s.ID
			if i > o.opened {
				return
			}
		}
	}
}

// open says what is open, and at which steps it must not be.
func (r *replayer) open() {
	r.state.Open = r.opened()
	// It is met first after the opening: the steps before that lie behind.
	var at []string
	first := 0
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		n := slices.IndexFunc(r.state.Open, func(o OpenPlace) bool { return r.bars(&o, s, i) })
		if n < 0 {
			continue
		}
		if i < r.state.Open[n].opened {
			first = len(at) + 1
		}
		at = append(at, s.ID)
	}
	if first == len(at) {
		first = 0
	}
	r.state.OpenAt = warnAt(plan.CautionOf("still-open"), first, at)
}

// bars reports whether something open is in the way of a step. The engine runs with
// nothing open but a panel, and that only until its turn to go back on; what is poured
// runs out of anything open but the places where one fills and reads. Common practice,
// no source.
func (r *replayer) bars(o *OpenPlace, s *plan.Step, at int) bool {
	if o.bolt.Purpose == card.Panel && !o.bolt.Drains {
		return s.Runs && at > o.closes
	}
	fills := (o.bolt.Purpose == card.FillerCap || o.bolt.Purpose == card.LevelScrew) && !o.bolt.Drains
	return s.Runs || !fills && slices.ContainsFunc(s.Asks, func(a plan.Ask) bool {
		return a.What == plan.AskPoured && (a.About == o.bolt.Circuit || o.bolt.Circuit == "")
	})
}

// leftOpen reports what is open when the work is finished.
func (r *replayer) leftOpen(e *placed, list []OpenPlace) {
	for i := range list {
		if o := &list[i]; !r.more {
			r.fault(e, "finished-open", "", finding.Doubt,
				"count", strconv.Itoa(o.Count), "purpose", "@"+o.Purpose, "place", o.where())
		}
	}
}

// where is its place, as a value of a sentence.
func (o *OpenPlace) where() string {
	if o.Place == "" {
		return "@not-known"
	}
	return o.Place
}

// closesOf reports whether a step closes something of these.
func closesOf(s *plan.Step, list []OpenPlace) bool {
	return slices.ContainsFunc(list, func(o OpenPlace) bool { return slices.Contains(s.Closes, o.About) })
}
