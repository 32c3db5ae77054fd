package job

import (
	"tidysump/internal/fault"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Trouble is a problem that was met in the job, with what follows from it.
type Trouble struct {
	ID      string // of the event
	Time    string
	Step    string // where it was met; may be empty
	What    string // id of the problem in the table
	Outcome string // one of fault.Outcomes
	Stops   bool   // the bike is not to be ridden or started
	Signs   map[string]string

	replaced bool // by a later judgement of the same problem
}

// Members names the members of a problem.
func (t *Trouble) Members(m *wire.Members) {
	m.String("id", &t.ID, wire.Required)
	m.String("time", &t.Time, wire.Required)
	m.String("step", &t.Step)
	m.String("what", &t.What, wire.Required)
	m.String("outcome", &t.Outcome, wire.Required)
	m.Bool("stops", &t.Stops)
	m.TextMap("signs", &t.Signs)
}

// problem takes a problem in, and reports whether it counts. The table isn't here:
// what is checked is that the problem has the form of an id. A later judgement of
// the same problem replaces the earlier one.
func (r *replayer) problem(e *placed) bool {
	if !isID(e.What) {
		r.fault(e, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(e.What))
		return false
	}
	if fault.Rank(e.Value) == 0 {
		r.fault(e, "unknown-word", "/value", finding.Refuse, "text", finding.Clip(e.Value))
		return false
	}
	if n, again := r.met[e.What]; again {
		before := &r.state.Problems[n]
		before.replaced = true
		if before.Stops {
			r.stopping--
		}
	}
	t := Trouble{ID: e.ID, Time: e.Time, Step: e.Step, What: e.What, Outcome: e.Value, Stops: fault.Stops(e.Value), Signs: e.Signs}
	if t.Stops {
		r.stopping++
	}
	r.met[e.What] = len(r.state.Problems)
	r.state.Problems = append(r.state.Problems, t)
	return true
}

// isID reports whether a text has the form of a problem's id.
func isID(s string) bool {
	for i := range len(s) {
		if c := s[i]; c != '-' && (c < 'a' || c > 'z') {
			return false
		}
	}
	return s != "" && len(s) <= 40
}

// stopped reports the problems with which the bike should not have been given back.
func (r *replayer) stopped(e *placed) {
	if r.stopping == 0 {
		return
	}
	for i := range r.state.Problems {
		if p := &r.state.Problems[i]; p.Stops && !p.replaced && !r.more {
			r.fault(e, "finished-with-problem", "", finding.Doubt, "problem", "@fault."+p.What)
		}
	}
}
