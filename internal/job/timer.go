package job

import (
	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Timer is a timer of a step that was started: it counts, or has rung and nobody
// has answered. Whether it is over only the phone's clock can say: Until is a text
// that sorts as the times of events do.
type Timer struct {
	ID    string // of the event that started it
	Step  string
	What  string
	Until string
}

// Members names the members of a timer.
func (t *Timer) Members(m *wire.Members) {
	m.String("id", &t.ID, wire.Required)
	m.String("step", &t.Step)
	m.String("what", &t.What, wire.Required)
	m.String("until", &t.Until, wire.Required)
}

// start takes a timer in; it replaces one of the same name. That its end lies
// after the time of its event is not asked for: a phone's clock can be set back
// in between.
func (r *replayer) start(e *placed) bool {
	asked := false
	for _, t := range e.step.Timers {
		asked = asked || t.What == e.What
	}
	switch {
	case !asked:
		r.fault(e, "not-asked", "/what", finding.Refuse, "text", finding.Clip(e.What))
		return false
	case !date.Valid(e.Until):
		r.fault(e, "bad-time", "/until", finding.Refuse, "text", finding.Clip(e.Until))
		return false
	}
	r.endTimers(e.Step, e.What)
	r.state.Timers = append(r.state.Timers, Timer{ID: e.ID, Step: e.Step, What: e.What, Until: e.Until})
	return true
}

// endTimers ends the timers of a step of that name, or all of them.
func (r *replayer) endTimers(step, what string) {
	others := r.state.Timers[:0]
	for _, t := range r.state.Timers {
		if t.Step != step || what != "" && t.What != what {
			others = append(others, t)
		}
	}
	r.state.Timers = others
}
