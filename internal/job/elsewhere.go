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
