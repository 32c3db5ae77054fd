package job

import (
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/shown"
)

// replayer holds what a replay collects.
type replayer struct {
	plan     *plan.Plan
	print    *shown.Printer
	state    *State
	list     []*placed
	taken    *takings
	chose    map[string]bool    // choices that hold, by their ids
	more     bool               // there is more to report than is
	newest   int                // place of the first event that is about to be written; -1 where none is
	done     map[string]*placed // steps done, each by the event that counts
	level    map[string]string
	looked   map[string]int      // places of the looks that count, by their steps
	met      map[string]int      // places of the problems that stand, by what they are
	stopping int                 // how many of them forbid to ride
	stands   map[string]int      // places of the readings that stand, by what they are of
	asks     map[string][]asking // questions of the steps, by what they are of; nil until asked for
	last     *Trace              // of the last job on the same bike; nil where there is none
	share    map[string]*float64 // levels read as a share of the band
	leak     string              // what was last said about leaks, at the second look
	closed   string              // time of the second look
	finished int                 // day of the finish
	warm     warmth              // the last temperature of the oil
	trace    Trace

	// Places of the last steps that the plan doesn't have and that opened and closed a
	// fastener, by its id.
	openedElsewhere, closedElsewhere map[string]int
}

// Replay runs what happened over the plan of the job. An event that can't be used is
// reported and has no effect; it stays in the record. last is what the last job on
// the same bike left, with which this one is compared; nil where there is none.
func Replay(p *plan.Plan, h *History, last *Trace) *State { return replayed(p, h, last).state }

// replayed is Replay that gives all that it collected.
func replayed(p *plan.Plan, h *History, last *Trace) *replayer {
	r := run(p, h)
	r.last = last
	r.progress()
	r.judge()
	r.balance()
	r.wentBack()
	r.dueAgain()
	r.open()
	r.passed()
	r.gates()
	r.helps()
	r.face()
	r.summarize()
	return r
}

// run takes the events in.
func run(p *plan.Plan, h *History) *replayer {
	r := &replayer{plan: p, print: p.Printer(), state: &State{Steps: len(p.Steps), parts: p.Parts}, newest: -1,
		chose: map[string]bool{}, done: map[string]*placed{}, level: map[string]string{},
		looked: map[string]int{}, met: map[string]int{}, stands: map[string]int{},
		share: map[string]*float64{}, openedElsewhere: map[string]int{}, closedElsewhere: map[string]int{}, trace: newTrace(p)}
	if h.Adding {
		r.newest = len(h.Events) - max(h.fresh, 1)
	}
	r.unread(h)
	r.full(h)
	r.state.Summary.Events = number(h.Events)
	list, disputed := contents(h, r.state.Summary.Events)
	r.settle(list, disputed)
	r.believe(h.Started, list)
	r.undo(list)
	steps := make(map[string]*plan.Step, len(p.Steps))
	for i := range p.Steps {
		steps[p.Steps[i].ID] = &p.Steps[i]
	}
	for _, e := range list {
		if e.step = steps[e.Step]; e.step == nil && e.Step != "" {
			r.inherit(e)
		}
		if (e.ID == "" || !r.taken.gone[e.ID]) && r.checked(e) {
			r.manner(e)
			r.apply(e)
		}
	}
	r.redo(list)
	r.list = list
	r.latest()
	return r
}

// latest leaves out the looks and problems that later ones replaced.
func (r *replayer) latest() {
	looks, problems := r.state.Looks[:0], r.state.Problems[:0]
	for i := range r.state.Looks {
		if l := &r.state.Looks[i]; !l.replaced {
			looks = append(looks, *l)
		}
	}
	for i := range r.state.Problems {
		if p := &r.state.Problems[i]; !p.replaced {
			problems = append(problems, *p)
		}
	}
	r.state.Looks, r.state.Problems = looks, problems
}

// mostFound is how much is told of the events of a job: who reads more than that?
const mostFound = 200

// fault reports something about an event, of others than the new one not without end.
func (r *replayer) fault(e *placed, code, member string, grade finding.Grade, values ...string) {
	if len(r.state.Findings) >= mostFound && !r.isNew(e) {
		if !r.more {
			r.more = true
			r.state.Findings = append(r.state.Findings, finding.Finding{Code: "more-findings", Grade: finding.Note,
				Where: "/events", Values: finding.Values("most", strconv.Itoa(mostFound))})
		}
		return
	}
	r.state.Findings = append(r.state.Findings, finding.Finding{Code: code, Grade: grade,
		Where: e.where() + member, Values: finding.Values(values...)})
}

// unasked refuses a new event that the plan doesn't ask for, with that code, and
// reports whether it did. What a record holds already is taken as it is: the plan of
// another version asked for it.
func (r *replayer) unasked(e *placed, code, member, text string) bool {
	if r.isNew(e) {
		r.fault(e, code, member, finding.Refuse, "text", finding.Clip(text))
		return true
	}
	r.fault(e, "not-in-plan", member, finding.Note, "text", finding.Clip(text))
	return false
}

// unclosed refuses to close a job that isn't dry or safe, with the reason, and reports
// whether it did. One that was closed stays closed, by whatever rules, and that is told.
func (r *replayer) unclosed(e *placed) bool {
	fresh := r.isNew(e)
	switch {
	case r.leak == "" && fresh:
		r.fault(e, "leak-not-said", "/step", finding.Refuse)
	case r.leak == plan.Leaking && fresh:
		r.fault(e, "leak-stays", "/step", finding.Refuse)
	case r.leak == "" || r.leak == plan.Leaking:
		r.fault(e, "closed-despite-leak", "/step", finding.Doubt)
	case r.stopping == 0:
		return false
	case fresh:
		r.fault(e, "problem-stays", "/step", finding.Refuse)
	default:
		r.fault(e, "closed-despite-problem", "/step", finding.Doubt)
	}
	return fresh
}

func (r *replayer) isNew(e *placed) bool {
	return e.list == "/events" && r.newest >= 0 && e.at >= r.newest
}

// checked reports whether an event can be used at all.
func (r *replayer) checked(e *placed) bool {
	known, ofStep := e.Kind.known()
	s := e.step
	after := e.Kind == Done && s != nil && s.After && r.done[e.Step] == nil
	switch {
	case e.ID == "":
		r.fault(e, "missing", "/id", finding.Refuse, "name", "id")
	case e.timeless:
		r.fault(e, "bad-time", "/time", finding.Refuse, "text", finding.Clip(e.Time))
	case e.Kind == Undo:
		return false
	case !known:
		r.fault(e, "unknown-event", "/kind", finding.Refuse, "text", finding.Clip(string(e.Kind)))
	case s == nil && (e.Step == "" && ofStep || e.Kind == Timed):
		r.fault(e, "unknown-step", "/step", finding.Refuse, "text", finding.Clip(e.Step))
	case s == nil && e.Step != "" && r.unasked(e, "unknown-step", "/step", e.Step):
	case after && r.unclosed(e):
	case e.Kind == Billed && e.What != Estimate && e.What != Bill:
		r.fault(e, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(e.What))
	case e.Kind == Note && strings.TrimSpace(e.Text) == "":
		r.fault(e, "empty-note", "/text", finding.Refuse)
	default:
		return true
	}
	return false
}

// apply takes an event in that can be used. What counts is what an undo at the bench
// would take back next: work, and not paper.
func (r *replayer) apply(e *placed) {
	counts := true
	switch e.Kind {
	case Done:
		counts = r.stepDone(e)
	case Note:
		r.state.Notes = append(r.state.Notes, Remark{e.ID, e.Time, e.Step, e.Text})
	case Photo:
		counts = r.photo(e)
	case Reading:
		counts = r.reading(e)
	case Timed:
		counts = r.start(e)
	case Saw:
		counts = r.saw(e)
	case Finish:
		r.finish(e)
	case Problem:
		counts = r.problem(e)
	case Billed:
		r.billed(e)
		counts = false
	case Choose:
		counts = r.chose[e.ID]
	}
	if counts {
		r.state.LastID, e.counts = e.ID, true
	}
}

// stepDone notes that a step was done, and what follows from it. Done once more, by
// another window or on another phone, it was done once: the first counts.
func (r *replayer) stepDone(e *placed) (counts bool) {
	if r.done[e.Step] != nil {
		return false
	}
	r.done[e.Step] = e
	r.endTimers(e.Step, "")
	s := e.step
	if s == nil {
		r.doneElsewhere(e)
		return true
	}
	r.pouredAt(e)
	if s.After {
		r.closed = e.counted
	}
	return true
}

// finish ends the work. A step that must be done and is not is reported, and the
// work stays finished all the same: the person decides, the record says so.
func (r *replayer) finish(e *placed) {
	r.state.Finished, r.finished, r.state.Timers = e.counted, e.day, nil
	r.stopped(e)
	open := r.opened()
	r.leftOpen(e, open)
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		if s.Must && r.done[s.ID] == nil && !r.more && !closesOf(s, open) {
			// The step's own values fill its title.
			values := []string{"step", "@" + s.Word}
			for name, value := range s.Values {
				values = append(values, name, value)
			}
			r.fault(e, "finished-without", "", finding.Doubt, values...)
		}
	}
}

// progress counts the steps done, finds those that have their turn, and says how far
// the job has come.
func (r *replayer) progress() {
	counts := map[plan.Stage]*StageCount{}
	for _, s := range plan.Stages {
		counts[s] = &StageCount{Stage: s}
	}
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		counts[s.Stage].Steps++
		done := r.done[s.ID] != nil
		switch {
		case done:
			counts[s.Stage].Done++
			r.state.Done = append(r.state.Done, s.ID)
		case !s.After || r.state.Finished != "":
			r.state.ToDo = append(r.state.ToDo, s.ID)
		}
		if s.Must && !done {
			r.state.Missing = append(r.state.Missing, s.ID)
		}
	}
	for _, s := range plan.Stages {
		r.state.Stages = append(r.state.Stages, *counts[s])
	}
	r.state.Next = first(r.state.ToDo)
	switch {
	case r.state.Finished == "":
		r.state.Phase = PhaseOpen
	case r.closed == "":
		r.state.Phase = PhaseWaiting
	default:
		r.state.Phase, r.state.Closed = PhaseClosed, r.closed
	}
}
