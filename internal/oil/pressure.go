package oil

import (
	"math"

	"tidysump/internal/quantity"
)

// Running is how an engine ran when its oil pressure was read, or is meant to run: the
// oil in °C, the speed in 1/min; NaN where it isn't known.
type Running struct{ Celsius, Speed float64 }

// How far a reading's state may be from the manual's to count as the same: 5 K, a
// twentieth of the speed. Common practice, no source.
const (
	sameHeat  = 5
	sameSpeed = 0.05
)

// Bias is how a reading stands to what it would be in the manual's state.
type Bias struct {
	Colder, Hotter, Faster, Slower bool
	Unknown                        bool // temperature or speed of one of them
}

// High reports whether it may read higher than it would in that state: cold oil resists
// more, and the pump brings more with each turn, until its relief valve opens.
func (b *Bias) High() bool { return b.Unknown || b.Colder || b.Faster }

// Low reports whether it may read lower.
func (b *Bias) Low() bool { return b.Unknown || b.Hotter || b.Slower }

// Beside holds how an engine ran against how the manual means it to run.
func (r Running) Beside(manual Running) Bias {
	by, times := r.Celsius-manual.Celsius, r.Speed/manual.Speed
	return Bias{
		Colder:  !quantity.AtLeast(by, -sameHeat) && !math.IsNaN(by),
		Hotter:  !quantity.AtMost(by, sameHeat) && !math.IsNaN(by),
		Faster:  !quantity.AtMost(times, 1+sameSpeed) && !math.IsNaN(times),
		Slower:  !quantity.AtLeast(times, 1-sameSpeed) && !math.IsNaN(times),
		Unknown: math.IsNaN(by) || math.IsNaN(times),
	}
}

// Pressed is what an oil pressure means beside the manual's.
type Pressed string

// The verdicts on an oil pressure, the worst first.
const (
	PressureGone  Pressed = "stop"           // none that the gauge can show, or far below
	PressureBelow Pressed = "below"          // less than the manual's
	PressureAbove Pressed = "above"          // more
	GaugeDecides  Pressed = "unsure"         // the error of the gauge decides
	NotComparable Pressed = "not-comparable" // read in another state
	PressureRight Pressed = "within"
)

// farBelow is the share of the least pressure below which the engine is stopped: common
// practice, no source. That it is stopped at once where the gauge shows none stands in
// manuals.
const farBelow = 0.5

// JudgePressure judges a reading that may be off by so much to either side by what the
// manual has, least to most, of which most may be infinite; all in one unit.
//
// What it would read in the manual's state is at most the reading where it may read too
// high, at least the reading where it may read too low, and not known where both.
// The verdict holds for all that it may be.
func JudgePressure(reading, off, least, most float64, b Bias) Pressed {
	low, high := reading-off, reading+off
	switch {
	case quantity.AtMost(low, 0) && !quantity.AtLeast(reading, least),
		!b.Low() && !quantity.AtLeast(reading, least*farBelow):
		return PressureGone
	case !b.Low() && !quantity.AtLeast(high, least):
		return PressureBelow
	case !b.High() && !quantity.AtMost(low, most):
		return PressureAbove
	case b.High() || b.Low():
		if !b.High() && quantity.AtLeast(low, least) && math.IsInf(most, 1) {
			return PressureRight
		}
		return NotComparable
	case quantity.AtLeast(low, least) && quantity.AtMost(high, most):
		return PressureRight
	}
	return GaugeDecides
}
