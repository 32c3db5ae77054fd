package job

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/shown"
)

// replayer holds what a replay collects.
type replayer struct {
	plan     *plan.Plan
	print    *shown.Printer
	state    *State
	canceled map[string]bool
	done     map[string]bool
	level    map[string]string
	ran      map[string]placed   // steps that ran the engine or rode, as far as they were done
	last     *Trace              // of the last job on the same bike; nil where there is none
	share    map[string]*float64 // levels read as a share of the band
	leak     string              // what was last said about leaks, at the second look
	looked   string              // time of the second look
	warm     warmth              // the last temperature of the oil
	trace    Trace
}

// Replay runs what happened over the plan of the job. An event that can't be used is
// reported and has no effect; it stays in the record. last is what the last job on
// the same bike left, with which this one is compared; nil where there is none.
func Replay(p *plan.Plan, h *History, last *Trace) *State {
	r := run(p, h)
	r.last = last
	r.progress()
	r.judge()
	r.balance()
	r.dueAgain()
	r.helps()
	r.summarize()
	return r.state
}

// run takes the events in.
func run(p *plan.Plan, h *History) *replayer {
	r := &replayer{plan: p, print: p.Printer(), state: &State{Steps: len(p.Steps), parts: p.Parts},
		canceled: map[string]bool{}, done: map[string]bool{}, level: map[string]string{},
		share: map[string]*float64{}, ran: map[string]placed{}, trace: newTrace(p)}
	sorted := ordered(h.Events)
	r.unread(h.Events)
	r.cancel(sorted)
	for _, e := range sorted {
		if !r.canceled[e.ID] && r.checked(e) {
			r.apply(e)
		}
	}
	return r
}

// unread reports the events that couldn't be read. They have no effect, and keep no
// other from having its own.
func (r *replayer) unread(events []Event) {
	for at := range events {
		e := &events[at]
		if len(e.unread) == 0 {
			continue
		}
		member, _, _ := strings.Cut(strings.TrimPrefix(e.unread[0].Where, "/"), "/")
		r.state.Unread++
		r.fault(placed{Event: *e, at: at}, "event-unread", "", finding.Doubt, "id", finding.Clip(e.ID), "time", finding.Clip(e.Time),
			"kind", finding.Clip(string(e.Kind)), "member", finding.Clip(member))
	}
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
		kind, ok := known[e.About]
		switch {
		case !ok:
			r.fault(e, "undo-unknown", "/of", finding.Refuse, "text", e.About)
		case kind == Undo:
			r.fault(e, "undo-of-undo", "/of", finding.Refuse)
		default:
			r.canceled[e.About] = true
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
		r.fault(e, "bad-time", "/time", finding.Refuse, "text", finding.Clip(e.Time))
	case e.Kind == Undo:
		return false
	case !known:
		r.fault(e, "unknown-event", "/kind", finding.Refuse, "text", finding.Clip(string(e.Kind)))
	case e.Step != "" && r.plan.Step(e.Step) == nil || e.Step == "" && ofStep:
		r.fault(e, "unknown-step", "/step", finding.Refuse, "text", finding.Clip(e.Step))
	case e.Kind == Done && r.plan.Step(e.Step).After && r.leak == "":
		r.fault(e, "leak-not-said", "/step", finding.Refuse)
	case e.Kind == Done && r.plan.Step(e.Step).After && r.leak == plan.Leaking:
		r.fault(e, "leak-stays", "/step", finding.Refuse)
	case e.Kind == Done && r.plan.Step(e.Step).After && r.stops():
		r.fault(e, "problem-stays", "/step", finding.Refuse)
	case e.Kind == Billed && e.What != Estimate && e.What != Bill:
		r.fault(e, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(e.What))
	case e.Kind == Note && strings.TrimSpace(e.Text) == "":
		r.fault(e, "empty-note", "/text", finding.Refuse)
	case e.Kind == Photo && !slices.Contains(plan.Motifs, plan.Motif(e.What)):
		r.fault(e, "unknown-picture", "/what", finding.Refuse, "text", finding.Clip(e.What))
	default:
		return true
	}
	return false
}

// apply takes an event in that can be used. What counts is what an undo at the bench
// would take back next: work, and not paper.
func (r *replayer) apply(e placed) {
	counts := true
	switch e.Kind {
	case Done:
		r.stepDone(e)
	case Note:
		r.state.Notes = append(r.state.Notes, Remark{e.ID, e.Time, e.Step, e.Text})
	case Photo:
		r.state.Photos = append(r.state.Photos, Picture{e.ID, e.Time, e.Step, e.What})
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
	}
	if counts {
		r.state.LastID = e.ID
	}
}

// stepDone notes that a step was done, and what follows from it.
func (r *replayer) stepDone(e placed) {
	s := r.plan.Step(e.Step)
	r.done[e.Step] = true
	r.pouredAt(e)
	r.endTimers(e.Step, "")
	if s.Runs {
		r.ran[e.Step] = e
	}
	if s.After {
		r.looked = e.Time
	}
}

// finish ends the work. A step that must be done and is not is reported, and the
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
		switch {
		case r.done[s.ID]:
			counts[s.Stage].Done++
			r.state.Done = append(r.state.Done, s.ID)
		case !s.After || r.state.Finished != "":
			r.state.Open = append(r.state.Open, s.ID)
		}
		if s.Must && !r.done[s.ID] {
			r.state.Missing = append(r.state.Missing, s.ID)
		}
	}
	for _, s := range plan.Stages {
		r.state.Stages = append(r.state.Stages, *counts[s])
	}
	r.state.Next = first(r.state.Open)
	switch {
	case r.state.Finished == "":
		r.state.Phase = PhaseOpen
	case r.looked == "":
		r.state.Phase = PhaseWaiting
	default:
		r.state.Phase, r.state.Closed = PhaseClosed, r.looked
	}
}
