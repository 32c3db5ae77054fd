package job

import (
	"math"

	"tidysump/internal/date"
	"tidysump/internal/drain"
	"tidysump/internal/wire"
)

// Warmth is what the temperature of the oil means before it is drained.
type Warmth struct {
	Word  string   // word id of the verdict
	Burns []string // how long bare metal of that temperature may be touched; empty where it may for hours
	// Wait is how long it takes to be cool enough to drain, from two readings;
	// empty when it is, or is not known.
	Wait []string
}

// Members names the members.
func (w *Warmth) Members(m *wire.Members) {
	m.String("word", &w.Word, wire.Required)
	wire.Texts(m, "burns", &w.Burns)
	wire.Texts(m, "wait", &w.Wait)
}

// usualAir is the temperature of the air in °C taken where nobody gave one: an
// assumption, no source. In warmer air it takes longer.
const usualAir = 20

// leastBetween is how many minutes two readings must be apart to show how fast
// the oil cools: common practice, no source.
const leastBetween = 1

// warmth is a temperature that was read, in °C, with its time in seconds.
type warmth struct{ celsius, at float64 }

// warmIs judges a temperature. With one before it, it says when oil that is too
// hot will have cooled, by Newton's law.
func (r *replayer) warmIs(e *placed, celsius float64, read *Read) {
	now := warmth{celsius, date.Seconds(e.counted)}
	before := r.warm
	r.warm = now
	w := &Warmth{Word: "warmth." + string(drain.Judge(celsius))}
	r.state.Warmth, read.Verdict = w, w.Word
	if seconds, burns := drain.BurnsIn(celsius); burns {
		w.Burns = r.lasting(seconds / 60)
	}
	minutes := (now.at - before.at) / 60
	rate, falls := drain.CoolingRate(before.celsius, celsius, usualAir, minutes)
	if drain.Judge(celsius) != drain.TooHot || !falls || minutes < leastBetween || before.at == 0 {
		return
	}
	if wait, reached := drain.CoolingTime(celsius, drain.WarmHigh, usualAir, rate); reached {
		w.Wait = r.lasting(math.Ceil(wait))
	}
}

// lasting prints minutes, and what is less than one in seconds.
func (r *replayer) lasting(minutes float64) []string {
	if minutes < 1 {
		return r.print.Texts(minutes, "s", 2)
	}
	return r.print.Texts(minutes, "min", 3)
}
