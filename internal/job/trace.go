package job

import (
	"tidysump/internal/card"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// Past is an earlier job on the same bike, as it is stored.
type Past struct {
	Card  card.Card
	Bench plan.Bench
	Steps []string // ids of the steps that it began with; empty where they aren't known
	History

	unread []finding.Finding // why it can't be used; empty where it was read
}

// Unread notes that the job couldn't be read: it keeps no other from being used.
func (p *Past) Unread(found []finding.Finding) { p.unread = found }

// Members names the members of an earlier job.
func (p *Past) Members(m *wire.Members) {
	m.Lenient()
	m.Object("card", &p.Card, wire.Required)
	m.Object("bench", &p.Bench)
	wire.Texts(m, "steps", &p.Steps)
	p.History.Members(m)
}

// Trace is what a job leaves for later ones on the same bike. Circuits are named
// by their ids.
type Trace struct {
	Plan    *plan.Plan
	Read    [due.Counters]due.Reading // km and hours; a count of zero was not read
	Changed map[string]float64        // day of the change of a circuit's oil, counted from 1970-01-01
	Drained map[string]float64        // L
	Poured  map[string]float64        // L
	// ShareFound and ShareLeft are levels as shares of the band, before anything
	// was drained and at the end.
	ShareFound, ShareLeft map[string]*float64

	looks  []Look
	looked map[string]int // places of them by their steps
}

func newTrace(p *plan.Plan) Trace {
	return Trace{Plan: p, Changed: map[string]float64{}, Drained: map[string]float64{}, Poured: map[string]float64{},
		ShareFound: map[string]*float64{}, ShareLeft: map[string]*float64{}}
}

// Recall replays an earlier job for what it left. It gives nil and the findings of
// a card or bench that can't be used; nothing else that is wrong with it is
// reported.
func (p *Past) Recall() (*Trace, []finding.Finding) {
	if len(p.unread) > 0 {
		return nil, p.unread
	}
	c, list := card.Accept(&p.Card)
	if c == nil {
		return nil, finding.Below("/card", list)
	}
	made, list := plan.Resume(c, p.Bench, p.Steps)
	if made == nil {
		return nil, list
	}
	r := run(made, &p.History)
	r.judge()
	r.trace.looks, r.trace.looked = r.state.Looks, map[string]int{}
	for n := range r.trace.looks {
		r.trace.looked[r.trace.looks[n].Step] = n
	}
	return &r.trace, nil
}

// changedAt notes that oil was poured into a circuit that is done today. Only then
// does its interval begin anew, however the job ended; what is topped up to get home
// changes nothing.
func (r *replayer) changedAt(circuit string, day int) {
	if r.plan.GetHome() {
		return
	}
	r.trace.Changed[circuit] = float64(day)
}

// pouredAt does the same for a step of pouring that is done and has no reading.
func (r *replayer) pouredAt(e *placed) {
	if circuit := e.step.Pours; circuit != "" {
		r.changedAt(circuit, e.day)
	}
}
