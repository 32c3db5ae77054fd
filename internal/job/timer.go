package job

import (
	"tidysump/internal/date"
	"tidysump/internal/drain"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// What a step may have to wait for.
const (
	TimeDrain  = "drain"  // the oil to run out
	TimeIdle   = "idle"   // the first run of the engine
	TimeSettle = "settle" // the oil to come down before its level is read
	TimeLeak   = "leak"   // the second look for leaks
)

// Minutes that a wait takes where the card doesn't say: common practice, no
// source. Of a range the end is taken that can do no harm: the long one of an
// idle run, since the pump has to fill, and the short one of the draining, since
// what still comes then is little.
const (
	idleRun    = 20.0 / 60 // of 15 to 20 s
	settleTime = 3.0
	leakTime   = 5.0
)

// Timer is a wait that belongs to a step: in a plan with its length, its name (a
// word id), texts and standing as a shown figure has them. In a state it was
// started: it counts, or has rung and nobody has answered. Whether it is over
// only the phone's clock can say: Until is a text that sorts as the times of
// events do. One type for both, since each list costs the core.
type Timer struct {
	What    string
	Seconds int
	Shown
	ID    string // of the event that started it
	Step  string
	Until string
}

// Members names the members of a timer.
func (t *Timer) Members(m *wire.Members) {
	m.String("id", &t.ID)
	m.String("step", &t.Step)
	m.String("what", &t.What)
	m.String("until", &t.Until)
	m.Int("seconds", &t.Seconds)
	t.Shown.Members(m)
}

// timer fits a wait to its subject; ok is false where nothing is to be waited
// for. Of a card's range the long end counts: read too early the level is low,
// and what is added then is too much.
func (p *planner) timer(what string, on subject) (t Timer, ok bool) {
	minutes, unit := float64(drain.RunOutLow), "min"
	switch what {
	case TimeIdle:
		minutes, unit = idleRun, "s"
	case TimeLeak:
		minutes = leakTime
	case TimeSettle:
		if device := on.circuit.Level.Device; device == "hole" || device == "measured" {
			return t, false
		}
		wait := on.circuit.Level.Wait
		a, known := wait.Upper()
		if !known {
			a, known = wait.Amount()
		}
		if known {
			t.Shown = p.show("wait", wait, "level")
			t.Texts = a.Show(p.bench.System)
			t.run(what, a.Base)
			return t, true
		}
		if readStanding(on.circuit) && on.circuit.Level.State != "" {
			return t, false // cold oil has long come down
		}
		minutes = settleTime
	}
	t.Shown = p.practice("wait", quantity.Duration, minutes, minutes, unit)
	t.run(what, minutes)
	return t, true
}

// run names a timer and says how long it runs.
func (t *Timer) run(what string, minutes float64) {
	t.What, t.Name, t.Seconds = what, "timer."+what, int(minutes*60+0.5)
}

// start takes a timer in; it replaces one of the same name. That its end lies
// behind the time of its event is not asked for: a phone's clock can be set back
// in between.
func (r *replayer) start(e placed) bool {
	asked := false
	for _, t := range r.stepOf(e.Step).Timers {
		asked = asked || t.What == e.What
	}
	switch {
	case !asked:
		r.fault(e, "not-asked", "/what", finding.Refuse, "text", shorten(e.What))
		return false
	case !date.Valid(e.Until):
		r.fault(e, "bad-time", "/until", finding.Refuse, "text", shorten(e.Until))
		return false
	}
	r.endTimers(e.Step, e.What)
	r.state.Timers = append(r.state.Timers, Timer{ID: e.ID, Step: e.Step, What: e.What, Until: e.Until})
	return true
}

// endTimers ends the timers of a step of that name, or all of them.
func (r *replayer) endTimers(step, what string) {
	kept := r.state.Timers[:0]
	for _, t := range r.state.Timers {
		if t.Step != step || what != "" && t.What != what {
			kept = append(kept, t)
		}
	}
	r.state.Timers = kept
}
