package job

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/plan"
)

// The manners in which an event is told, words of Event.Manner.
const (
	// Afterwards: it was told when the work, or a stage of it, was over. It says nothing
	// of the order of things, and nothing is judged by its place among the events.
	Afterwards = "afterwards"
	// AsCard: the value was taken over from the card in one tap.
	AsCard = "as-card"
	// Unlooked: at a gate somebody went on, and said so, without looking.
	Unlooked = "unlooked"
)

// Manners lists the manners.
var Manners = []string{Afterwards, AsCard, Unlooked}

// told reports whether an event was told in that manner.
func (e *Event) told(manner string) bool {
	return e.Manner != nil && slices.Contains(strings.Fields(*e.Manner), manner)
}

// In is a manner as an event has it; nil for none.
func In(manner string) *string {
	if manner == "" {
		return nil
	}
	words := manner // what is pointed at is made only where there is one
	return &words
}

func (e *Event) inManner() string {
	if e.Manner == nil {
		return ""
	}
	return *e.Manner
}

// manner reports words of a manner that this version doesn't know: the event counts.
func (r *replayer) manner(e *placed) {
	for _, word := range strings.Fields(e.inManner()) {
		if !slices.Contains(Manners, word) {
			r.fault(e, "unknown-manner", "/manner", finding.Note, "text", finding.Clip(word))
		}
	}
}

// mannersOf gives word ids of the manners that are shown beside a reading.
func mannersOf(e *placed) []string {
	var list []string
	for _, word := range []string{AsCard, Afterwards} {
		if e.told(word) {
			list = append(list, "manner."+word)
		}
	}
	return list
}

// earlier reports whether a reading that was told afterwards is of an earlier step of
// the plan than the one that stands: then that one stands on, whichever was told first.
func (r *replayer) earlier(e *placed, thing string) bool {
	n, again := r.stands[thing]
	if !again || !e.told(Afterwards) || e.step == nil {
		return false
	}
	standing := r.state.Readings[n].Step
	at := func(id string) int {
		return slices.IndexFunc(r.plan.Steps, func(s plan.Step) bool { return s.ID == id })
	}
	return at(e.step.ID) < at(standing)
}

// passed lists the gates at which somebody went on without looking, as long as nothing
// was told there later.
func (r *replayer) passed() {
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		if e := r.done[s.ID]; e != nil && e.told(Unlooked) && r.untold(s) {
			r.state.Passed = append(r.state.Passed, s.ID)
		}
	}
}

// untold reports whether nothing was looked at, read, noted or shown at a step.
func (r *replayer) untold(s *plan.Step) bool {
	if _, looked := r.looked[s.ID]; looked {
		return false
	}
	return !slices.ContainsFunc(r.state.Readings, func(read Read) bool { return read.Step == s.ID }) &&
		!slices.ContainsFunc(r.state.Notes, func(n Remark) bool { return n.Step == s.ID }) &&
		!slices.ContainsFunc(r.state.Photos, func(p Picture) bool { return p.Step == s.ID })
}

// gates lists the steps not done at which something is to be looked at, touched or read
// before one goes on, and was not.
func (r *replayer) gates() {
	for i := range r.plan.Steps {
		if s := &r.plan.Steps[i]; s.Gate() && r.done[s.ID] == nil && r.untold(s) {
			r.state.Gates = append(r.state.Gates, s.ID)
		}
	}
	for _, e := range r.done {
		if e.step != nil && e.told(Afterwards) {
			r.state.Afterwards++
		}
	}
}
