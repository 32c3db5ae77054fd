package job

import (
	"math"

	"tidysump/internal/date"
	"tidysump/internal/drain"
	"tidysump/internal/shown"
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

// usualAir is the temperature of the air in °C taken where nobody gave one, and
// usualAirTo how far it may be off in K: an assumption, no source.
const usualAir, usualAirTo = 20, 10

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
	if seconds, burns := drain.Metal.BurnsIn(celsius); burns {
		w.Burns = lasting(seconds / 60)
	}
	two := &drain.Readings{First: before.celsius, Second: celsius, Minutes: (now.at - before.at) / 60, Air: usualAir, AirTo: usualAirTo}
	if e.told(Afterwards) {
		r.warm = before // when it was read isn't known
		return
	}
	if before.at == 0 || two.Minutes < leastBetween || two.Toward(drain.WarmLow, drain.WarmHigh) != drain.Cooling {
		return
	}
	// Readings that can't tell when, or only that it may never be, say nothing.
	if least, most := two.Wait(drain.WarmHigh); !math.IsInf(most, 1) {
		w.Wait = []string{shown.Time(least*60, most*60)}
	}
}

// lasting prints minutes, and what is less than two in seconds.
func lasting(minutes float64) []string {
	return []string{shown.Time(minutes*60, minutes*60)}
}
