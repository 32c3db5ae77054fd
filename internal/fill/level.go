package fill

import (
	"math"

	"tidysump/internal/quantity"
)

// Where the oil should stand, as shares of the band between the marks: the
// middle to three quarters, common practice, no source.
const (
	AimLow  = 0.5
	AimHigh = 0.75
)

// Reliable is the most that two readings may differ, as a share of the band,
// to count as one: common practice, no source. What is less is no reason to pour.
const Reliable = 1.0 / 8

// AsTold rounds a share of the band to the ten-thousandth in which it is told, far less than
// a gauge shows. What is decided is decided by the share that is told, never by digits that
// nobody sees.
func AsTold(share float64) float64 { return math.Round(share*1e4)/1e4 + 0 } // no "-0"

// leastStep is the least in mL that is poured at once, where so much is missing and a
// reading doesn't show less: common practice, no source.
const leastStep = 50

// Advice is what to do about a level.
type Advice string

// The advices.
const (
	AddOil  Advice = "pour"
	Leave   Advice = "right"
	Full    Advice = "full"     // between the aim and the upper mark: nothing to do
	TakeOut Advice = "take-out" // above the upper mark
	Unsure  Advice = "unsure"   // the reading doesn't decide it
)

// Amend says what to do about a level, given as a share of the band (0 the
// lower mark, 1 the upper) as it was read and as it will stand at the temperature that
// the marks are meant for, and how many millilitres that is; band is the
// volume between the marks in mL, off how wrong the reading may be as a share. All shares
// are as they are told.
//
// How the oil grows decides nothing alone: oil that still hangs up in the engine works
// against it, and how much that is isn't known. Nor is a level within the marks that
// may be above them.
func Amend(share, grown, band, off float64) (Advice, float64) {
	now, ml := amend(share, band, off)
	then, later := amend(grown, band, off)
	switch {
	case !quantity.AtMost(off, Reliable), now.act() != then.act(),
		quantity.AtMost(share, 1) && !quantity.AtMost(share+off, 1):
		return Unsure, 0
	}
	return then, min(ml, later)
}

// act is what an advice makes one do: Leave where that is nothing.
func (a Advice) act() Advice {
	if a == Full {
		return Leave
	}
	return a
}

// amend says it for one share. Oil is added in steps: what is missing to the middle less
// 50 mL, or 50 mL or what a reading shows, when that is less (common practice, no
// source); never past the upper mark even if the reading is wrong by off. Below the
// lower mark the step ends there, for the engine has another shape below. What is too
// much is taken out down to three quarters.
func amend(share, band, off float64) (Advice, float64) {
	missing, shown := Missing(share, band), Reliable*band
	switch {
	case !quantity.AtMost(share, 1):
		much := (share - AimHigh) * band
		return TakeOut, math.Round(much/mark(much)) * mark(much)
	case !quantity.AtMost(share, AimHigh):
		return Full, 0
	case !quantity.AtLeast(missing, shown):
		return Leave, 0
	}
	least := min(missing, max(leastStep, shown))
	step := max(missing-leastStep, least)
	if share < 0 {
		step = min(step, max(-share*band, least))
	}
	step = min(step, (1-off-share)*band)
	const hair = 1e-9 // keeps a figure that is whole but for the last bit
	return AddOil, math.Floor(step/mark(step)+hair) * mark(step)
}

// Missing gives the millilitres that are missing to the middle of a band that holds
// so many.
func Missing(share, band float64) float64 { return max(AimLow-share, 0) * band }

// mark gives the step in mL in which so much is told: two digits, the 10 mL that a jug
// shows from 50 mL on, 1 mL of what is less.
func mark(ml float64) float64 {
	switch {
	case quantity.AtLeast(ml, 1000):
		return 100
	case quantity.AtLeast(ml, 50):
		return 10
	}
	return 1
}
