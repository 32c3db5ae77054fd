package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/drain"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// What a step may have to wait for.
const (
	TimeDrain  = "drain"  // the oil to run out
	TimeIdle   = "idle"   // the first run of the engine
	TimeSettle = "settle" // the oil to come down before its level is read
	TimeLeak   = "leak"   // the second look for leaks
)

// Timers lists what a step may have to wait for.
var Timers = []string{TimeDrain, TimeIdle, TimeSettle, TimeLeak}

// Minutes that a wait takes where the card doesn't say: common practice, no
// source. Of a range the end is taken that can do no harm: the long one of an
// idle run, since the pump has to fill, and the short one of the draining, since
// what still comes then is little.
const (
	idleRun    = 20.0 / 60 // of 15 to 20 s
	settleTime = 3.0
	leakTime   = 5.0
)

// Timer is a wait that belongs to a step: how long it takes, with name, texts and
// standing as a shown figure has them.
type Timer struct {
	What    string
	Seconds int
	shown.Figure
}

// Members names the members of a timer.
func (t *Timer) Members(m *wire.Members) {
	m.String("what", &t.What, wire.Required)
	m.Int("seconds", &t.Seconds)
	t.Figure.Members(m)
}

// timer fits a wait to its subject; ok is false where nothing is to be waited
// for. Of a card's range the long end counts: read too early the level is low,
// and what is added then is too much.
func (d *day) timer(what string, on subject) (t Timer, ok bool) {
	var minutes float64
	unit := "min"
	switch what {
	default:
		return t, false
	case TimeDrain:
		minutes = drain.RunOutLow
	case TimeIdle:
		minutes, unit = idleRun, "s"
	case TimeLeak:
		minutes = leakTime
	case TimeSettle:
		if on.circuit.Level.Device == card.Hole || !hasGauge(on.circuit) {
			return t, false
		}
		wait := on.circuit.Level.Wait
		a, known := wait.Upper()
		if !known {
			a, known = wait.Amount()
		}
		if known {
			t.Figure = d.print.Card("wait", wait, "level")
			t.Texts = a.Show(d.print.System)
			t.run(what, a.Base)
			return t, true
		}
		if readStanding(on.circuit) && on.circuit.Level.State != "" {
			return t, false // cold oil has long come down
		}
		minutes = settleTime
	}
	t.Figure = d.practice("wait", minutes, minutes, unit)
	t.run(what, minutes)
	return t, true
}

// run names a timer and says how long it runs.
func (t *Timer) run(what string, minutes float64) {
	t.What, t.Name, t.Seconds = what, "timer."+what, int(minutes*60+0.5)
}
