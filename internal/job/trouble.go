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
	others := r.state.Problems[:0]
	for _, p := range r.state.Problems {
		if p.What != e.What {
			others = append(others, p)
		}
	}
	r.state.Problems = append(others, Trouble{e.ID, e.Time, e.Step, e.What, e.Value, fault.Stops(e.Value), e.Signs})
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

// stops reports whether a problem that stands forbids to ride or start the bike.
func (r *replayer) stops() bool {
	for _, p := range r.state.Problems {
		if p.Stops {
			return true
		}
	}
	return false
}

// stopped reports the problems with which the bike should not have been given back.
func (r *replayer) stopped(e *placed) {
	for _, p := range r.state.Problems {
		if p.Stops {
			r.fault(e, "finished-with-problem", "", finding.Doubt, "problem", "@fault."+p.What)
		}
	}
}
