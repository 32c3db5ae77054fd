package job

import "tidysump/internal/wire"

// StepElsewhere is a step that was done and that the plan doesn't have: a plan of
// another version did.
type StepElsewhere struct {
	ID   string // of the event
	Time string
	Step string // id of the step
}

// Members names the members of a step of another version.
func (e *StepElsewhere) Members(m *wire.Members) {
	m.String("id", &e.ID, wire.Required)
	m.String("time", &e.Time, wire.Required)
	m.String("step", &e.Step, wire.Required)
}

// doneElsewhere notes that a step was done that the plan doesn't have, and what that
// opened and closed, where this version understands its id.
func (r *replayer) doneElsewhere(e *placed) {
	r.state.Elsewhere = append(r.state.Elsewhere, StepElsewhere{e.ID, e.Time, e.Step})
	if s := r.plan.Known(e.Step); s != nil {
		for _, id := range s.Opens {
			r.openedElsewhere[id] = e.order
		}
		for _, id := range s.Closes {
			r.closedElsewhere[id] = e.order
		}
	}
}

// inherit lets an event of a retired step count at the step that the plan has in its
// place.
func (r *replayer) inherit(e *placed) {
	if s := r.plan.Heir(e.Step); s != nil {
		at := *e.Event
		at.Step = s.ID
		e.Event, e.step = &at, s
	}
}
