package job

import (
	"maps"
	"math"

	"tidysump/internal/debris"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// Look is what was seen at a step, judged.
type Look struct {
	ID    string // of the event
	Time  string
	Step  string
	Signs map[string]string // as they were given
	Told  []string          // word ids of the same
	// Verdict is a word id; Reasons are findings, the worst first; Next are word
	// ids of what to do, in the order of doing.
	Verdict string
	Reasons []finding.Finding
	Next    []string
	// Compared is what the last job on this bike saw at the same step, and how
	// this differs: one finding, or none where it didn't look.
	Compared []finding.Finding
	// MayDeny: it comes out as more than the last time, or as the same that was to be
	// watched (Recurs), which the person may deny.
	MayDeny, Recurs bool

	sign    debris.Sign
	verdict debris.Verdict
	reasons []debris.Reason
	order   int  // place in the replay
	after   bool // told afterwards: its place says nothing

	replaced bool // by a later one at the same step
}

// Members names the members of a look.
func (l *Look) Members(m *wire.Members) {
	m.String("id", &l.ID, wire.Required)
	m.String("time", &l.Time, wire.Required)
	m.String("step", &l.Step, wire.Required)
	m.TextMap("signs", &l.Signs)
	wire.Texts(m, "told", &l.Told)
	m.String("verdict", &l.Verdict, wire.Required)
	wire.Findings(m, "reasons", &l.Reasons)
	wire.Texts(m, "next", &l.Next)
	wire.Findings(m, "compared", &l.Compared)
	m.Bool("mayDeny", &l.MayDeny)
	m.Bool("recurs", &l.Recurs)
}

// saw takes in what was seen, in place of what was seen at the same step
// before, and reports whether it counts.
func (r *replayer) saw(e *placed) bool {
	if s := e.step; s != nil && len(s.Signs) == 0 && r.unasked(e, "not-asked", "/kind", string(e.Kind)) {
		return false
	}
	sign, wrong := debris.Read(e.Signs)
	for _, name := range wrong {
		r.fault(e, "unknown-sign", "/signs", finding.Refuse, "name", finding.Clip(name), "text", finding.Clip(e.Signs[name]))
	}
	if len(wrong) > 0 && r.isNew(e) {
		return false
	}
	signs := maps.Clone(e.Signs)
	for _, name := range wrong {
		delete(signs, name) // another version knew it: the rest of what was seen counts
	}
	if n, again := r.looked[e.Step]; again {
		r.state.Looks[n].replaced = true
	}
	r.looked[e.Step] = len(r.state.Looks)
	r.state.Looks = append(r.state.Looks, Look{ID: e.ID, Time: e.Time, Step: e.Step, Signs: signs, sign: sign, order: e.order, after: e.told(Afterwards)})
	return true
}

// judge judges all that was seen. A noise or the lamp belongs to the engine and not
// to the place where somebody mentioned it: it counts for each look.
func (r *replayer) judge() {
	noise, lamp := 0, false
	for i := range r.state.Looks {
		noise = max(noise, r.state.Looks[i].sign.Noise)
		lamp = lamp || r.state.Looks[i].sign.Lamp
	}
	worst, all, stop, stopped := debris.Unsaid, !r.unlooked(), false, math.MaxInt
	var reasons []debris.Reason
	for i := range r.state.Looks {
		l := &r.state.Looks[i]
		sign := l.sign
		sign.Noise, sign.Lamp, sign.Unasked = noise, lamp, r.unaskedAt(l)
		c := r.compare(l)
		l.MayDeny = c == debris.More || l.Recurs
		if denied := l.Signs["more"] == debris.No; !denied {
			sign.More = sign.More || c == debris.More
			sign.Again = sign.Again || l.Recurs
		}
		l.judge(&sign)
		worst = max(worst, l.verdict)
		reasons = append(reasons, l.reasons...)
		all = all && l.verdict > debris.Unsaid
		if stop = stop || l.verdict == debris.Stop; l.verdict == debris.Stop && !l.after {
			stopped = min(stopped, l.order)
		}
	}
	if !all {
		if r.state.Finished == "" { // later there is nothing left to look at
			reasons = append(reasons, debris.NotLooked)
		}
		if worst == debris.Normal {
			worst = debris.Partly // somebody looked and didn't say, or hasn't looked: that is not nothing
		}
	}
	act := worst
	if r.stopping > 0 {
		act = debris.Stop // a problem that was met says so
	}
	for i := range r.state.Looks {
		l := &r.state.Looks[i]
		l.Next = nextOf(l.verdict, l.reasons, act == debris.Stop)
	}
	if len(r.state.Looks) > 0 {
		r.state.Verdict = "debris." + debris.Verdicts[worst]
	} else {
		reasons = nil
	}
	r.state.Actions = nextOf(act, reasons, false)
	if stop {
		r.stop(stopped)
	}
}

// unlooked reports whether the plan has a step that looks at which nobody has said
// what was seen.
func (r *replayer) unlooked() bool {
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		if _, looked := r.looked[s.ID]; len(s.Signs) > 0 && !looked {
			return true
		}
	}
	return false
}

// unaskedAt gives what nobody was asked for at the step of a look. At a step of another
// version's plan that is what isn't answered.
func (r *replayer) unaskedAt(l *Look) uint {
	if s := r.plan.Step(l.Step); s != nil {
		return debris.Unasked(s.Signs)
	}
	var names []string
	for name := range l.Signs {
		names = append(names, name)
	}
	return debris.Unasked(names)
}

func nextOf(verdict debris.Verdict, reasons []debris.Reason, stopped bool) []string {
	list := debris.Next(verdict, reasons, stopped)
	for i, action := range list {
		list[i] = "next." + action
	}
	return list
}

func (l *Look) judge(sign *debris.Sign) {
	for n := range debris.Asks {
		if w := debris.Asks[n].Word(l.Signs); w != "" {
			l.Told = append(l.Told, w)
		}
	}
	l.verdict, l.reasons = debris.Judge(sign)
	l.Verdict = "debris." + debris.Verdicts[l.verdict]
	for _, reason := range l.reasons {
		grade := finding.Doubt
		if reason.Verdict <= debris.Normal {
			grade = finding.Note
		}
		l.Reasons = append(l.Reasons, finding.Finding{Code: reason.Code, Grade: grade})
	}
}

// compare holds a look against that of the last job at the same step.
func (r *replayer) compare(l *Look) debris.Comparison {
	if r.last == nil {
		return debris.Apart
	}
	n, looked := r.last.looked[l.Step]
	if !looked {
		return debris.Apart
	}
	before := &r.last.looks[n]
	c := debris.Compare(&l.sign, &before.sign)
	l.Recurs = debris.Recurs(&l.sign, &before.sign)
	if l.Recurs && c < debris.Same {
		c = debris.Same // as far as one can tell
	}
	at := "@look.distance-unknown"
	if km := r.last.Read[due.Km].Count; km > 0 {
		at = r.print.Kilometres(km, 7)[0]
	}
	l.Compared = []finding.Finding{{Code: debris.Comparisons[c], Grade: finding.Note,
		Values: finding.Values("at", at, "found", before.found(), "verdict", "@"+before.Verdict)}}
	return c
}

// found is what was seen, as a value of a sentence.
func (l *Look) found() string {
	if w := l.sign.Word(); w != "" {
		return "@" + w
	}
	return "@not-known"
}

// stop warns at the steps that fill, start and ride, and at those that come after a
// ride, and reports which of the first were done after that all the same: the person
// decides, the record says so.
func (r *replayer) stop(since int) {
	var at []string
	for _, s := range r.plan.Steps {
		if s.Stage == plan.Warm || s.Stage != plan.Fill && !s.Runs && !s.After {
			continue
		}
		at = append(at, s.ID)
		if e := r.done[s.ID]; e != nil && s.Runs && e.order > since && !e.told(Afterwards) {
			r.fault(e, "run-despite-stop", "", finding.Doubt, "step", "@"+s.Word)
		}
	}
	r.state.Warns = warnAt(plan.CautionOf("found-stop"), 0, at)
}
