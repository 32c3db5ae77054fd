package job

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/finding"
)

// replayer holds what a replay collects.
type replayer struct {
	*planner
	state    *State
	canceled map[string]bool
	done     map[string]bool
	drained  map[string]float64 // litres by circuit
	poured   map[string]float64
	level    map[string]string
	run      map[string]placed   // the first start and the ride, as far as they were done
	last     *replayer           // of the last job on the same bike; nil where there is none
	share    map[string]*float64 // levels read as a share of the band
	leak     string              // what was last said about leaks, at the second look
	looked   string              // time of the second look
	warm     warmth              // the last temperature of the oil
	trace
}

// Replay makes the plan again and runs the events over it. An event that can't
// be used is reported and has no effect; it stays in the record. The list of
// findings refuses only when there is no plan.
func Replay(c *card.Card, b Bench, events []Event) (*State, []finding.Finding) {
	return ReplayAfter(nil, c, b, events)
}

// ReplayAfter is Replay that also compares with the last job on the same bike; nil
// where there is none. What is wrong with that one is not told.
func ReplayAfter(last *Past, c *card.Card, b Bench, events []Event) (*State, []finding.Finding) {
	r, list := run(c, b, events)
	if r == nil {
		return nil, list
	}
	if last != nil {
		if r.last, _ = run(&last.Card, last.Bench, last.Events); r.last != nil {
			r.last.judge()
		}
	}
	r.progress()
	r.judge()
	r.balance()
	r.dueAgain()
	return r.state, nil
}

// run makes the plan again and takes the events in.
func run(c *card.Card, b Bench, events []Event) (*replayer, []finding.Finding) {
	p, list := prepare(c, b)
	if p == nil {
		return nil, list
	}
	r := &replayer{planner: p, state: &State{Steps: len(p.plan.Steps), parts: p.plan.Parts},
		canceled: map[string]bool{}, done: map[string]bool{}, drained: map[string]float64{},
		poured: map[string]float64{}, level: map[string]string{}, share: map[string]*float64{}, run: map[string]placed{},
		trace: trace{changed: map[string]float64{}, shareFound: map[string]*float64{}, shareLeft: map[string]*float64{}}}
	sorted := ordered(events)
	r.cancel(sorted)
	for _, e := range sorted {
		if !r.canceled[e.ID] && r.checked(e) {
			r.apply(e)
		}
	}
	return r, nil
}

// cancel collects the undone events first: an undo holds wherever it stands.
func (r *replayer) cancel(sorted []placed) {
	known := map[string]EventKind{}
	for _, e := range sorted {
		known[e.ID] = e.Kind
	}
	for _, e := range sorted {
		if e.Kind != Undo {
			continue
		}
		kind, ok := known[e.Of]
		switch {
		case !ok:
			r.fault(e, "undo-unknown", "/of", finding.Refuse, "text", e.Of)
		case kind == Undo:
			r.fault(e, "undo-of-undo", "/of", finding.Refuse)
		default:
			r.canceled[e.Of] = true
		}
	}
}

func (r *replayer) fault(e placed, code, member string, grade finding.Grade, values ...string) {
	r.state.Findings = append(r.state.Findings, finding.Finding{Code: code, Grade: grade,
		Where: "/events/" + strconv.Itoa(e.at) + member, Values: finding.Values(values...)})
}

// checked reports whether an event can be used at all.
func (r *replayer) checked(e placed) bool {
	known, ofStep := e.Kind.known()
	switch {
	case e.ID == "":
		r.fault(e, "missing", "/id", finding.Refuse, "name", "id")
	case !date.Valid(e.Time):
		r.fault(e, "bad-time", "/time", finding.Refuse, "text", shorten(e.Time))
	case e.Kind == Undo:
		return false
	case !known:
		r.fault(e, "unknown-event", "/kind", finding.Refuse, "text", shorten(string(e.Kind)))
	case e.Step != "" && r.stepOf(e.Step) == nil || e.Step == "" && ofStep:
		r.fault(e, "unknown-step", "/step", finding.Refuse, "text", shorten(e.Step))
	case e.Kind == Done && r.stepOf(e.Step).After && r.leak == "":
		r.fault(e, "leak-not-said", "/step", finding.Refuse)
	case e.Kind == Done && r.stepOf(e.Step).After && r.leak == leaking:
		r.fault(e, "leak-stays", "/step", finding.Refuse)
	case e.Kind == Done && r.stepOf(e.Step).After && r.stops():
		r.fault(e, "problem-stays", "/step", finding.Refuse)
	case e.Kind == Billed && e.What != Estimate && e.What != Bill:
		r.fault(e, "unknown-word", "/what", finding.Refuse, "text", shorten(e.What))
	case e.Kind == Note && strings.TrimSpace(e.Text) == "":
		r.fault(e, "empty-note", "/text", finding.Refuse)
	case e.Kind == Photo && !isPictured(e.What):
		r.fault(e, "unknown-picture", "/what", finding.Refuse, "text", shorten(e.What))
	default:
		return true
	}
	return false
}

func shorten(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

func (p *planner) stepOf(id string) *Step {
	for i := range p.plan.Steps {
		if p.plan.Steps[i].ID == id {
			return &p.plan.Steps[i]
		}
	}
	return nil
}

func (r *replayer) apply(e placed) {
	switch e.Kind {
	case Done:
		r.done[e.Step] = true
		r.pouredAt(e.Step, e.Time)
		r.endTimers(e.Step, "")
		if e.Step == "first-start" || e.Step == "ride" {
			r.run[e.Step] = e
		}
		if r.stepOf(e.Step).After {
			r.looked = e.Time
		}
	case Note:
		r.state.Notes = append(r.state.Notes, Remark{e.ID, e.Time, e.Step, e.Text})
	case Photo:
		r.state.Photos = append(r.state.Photos, Read{ID: e.ID, Time: e.Time, Step: e.Step, What: e.What})
	case Reading:
		if !r.reading(e) {
			return
		}
	case Timed:
		if !r.start(e) {
			return
		}
	case Saw:
		if !r.saw(e) {
			return
		}
	case Finish:
		r.finish(e)
	case Problem:
		if !r.problem(e) {
			return
		}
	case Billed:
		r.state.Papers = append(r.state.Papers, e.Event)
		return // an undo at the bench takes back work, not paper
	}
	r.state.LastID = e.ID
}

// finish ends the work. A step that must be done and is not is told, and the
// work stays finished all the same: the person decides, the record says so.
func (r *replayer) finish(e placed) {
	r.state.Finished, r.state.Timers = e.Time, nil
	r.stopped(e)
	for _, s := range r.plan.Steps {
		if s.Must && !r.done[s.ID] {
			// The step's own values fill its title.
			values := []string{"step", "@" + s.Word}
			for name, value := range s.Values {
				values = append(values, name, value)
			}
			r.fault(e, "finished-without", "", finding.Doubt, values...)
		}
	}
}

// progress counts the steps done and finds the next one.
func (r *replayer) progress() {
	counts := map[Stage]*StageCount{}
	for _, s := range Stages {
		counts[s] = &StageCount{Stage: s}
	}
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		counts[s.Stage].Steps++
		switch {
		case r.done[s.ID]:
			counts[s.Stage].Done++
			r.state.Done = append(r.state.Done, s.ID)
		case r.state.Next == "" && (!s.After || r.state.Finished != ""):
			r.state.Next = s.ID
		}
		if s.Must && !r.done[s.ID] {
			r.state.Missing = append(r.state.Missing, s.ID)
		}
	}
	for _, s := range Stages {
		r.state.Stages = append(r.state.Stages, *counts[s])
	}
	if r.state.Finished != "" {
		r.state.Waiting, r.state.Closed = r.looked == "", r.looked
	}
}
