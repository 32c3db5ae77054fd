package bolt

import (
	"math"

	"tidysump/internal/quantity"
)

// DeadWeight is a known mass that hangs on a wrench which lies level, its square held
// fast. Lengths are in mm from the middle of the square, masses in kg.
type DeadWeight struct {
	Mass, Lever float64 // what hangs there, and where
	// By how much those may be off.
	MassOff, LeverOff float64
	Own, Centre       float64 // the wrench, and where it balances on an edge
}

// What is not asked for. Gravity at sea level is 9.780 m/s² at the equator and 9.832
// at the poles (normal gravity, WGS 84): 0.3 % about the standard's 9.80665. The
// others are common practice, no source.
const (
	gravity    = 9.80665 // m/s²
	GravityOff = 0.003   // share
	LevelOff   = 3.0     // degrees that the wrench may hang or rise
	CentreOff  = 5.0     // mm
	WeighOff   = 0.01    // share by which a mass is off where nothing is said
	RuleOff    = 2.0     // mm by which a lever is off where nothing is said
)

// Torque is the torque in N·m about the square, m·g·L and the wrench's own weight at
// its centre of mass, with all that may be off: the mass, the levers, gravity here
// and now, and the wrench not being level, which only takes away.
func (d *DeadWeight) Torque() Range {
	low := max(0, d.Mass-d.MassOff)*max(0, d.Lever-d.LeverOff) + d.Own*(1-WeighOff)*max(0, d.Centre-CentreOff)
	high := (d.Mass+d.MassOff)*(d.Lever+d.LeverOff) + d.Own*(1+WeighOff)*(d.Centre+CentreOff)
	level := math.Cos(LevelOff * math.Pi / 180)
	return Range{low * gravity * (1 - GravityOff) * level / 1000, high * gravity * (1 + GravityOff) / 1000}
}

// Trust is what comes of checking a wrench: a word id's last part.
type Trust string

// The verdicts on a wrench, the worst last.
const (
	Within    Trust = "within"
	NotTold   Trust = "not-told" // the check is too rough for it
	Outside   Trust = "outside"
	NotStated Trust = "below-fifth" // ISO 6789 states nothing there
	Overload  Trust = "above-scale"
)

// Checkable says whether a torque in N·m is one that the standard states something
// of: Within, NotStated or Overload.
func (w Wrench) Checkable(load Range) Trust {
	switch {
	case !quantity.AtMost(load.High, w.High):
		return Overload
	case !quantity.AtLeast(load.Low, w.Fifth()):
		return NotStated
	}
	return Within
}

// Off is by what share a wrench that answered at a reading in N·m, give or take half
// a mark, deviates at a load: (reading − load)/load, as ISO 6789 has it.
func Off(reading, mark float64, load Range) Range {
	return Range{(reading-mark/2)/load.High - 1, (reading+mark/2)/load.Low - 1}
}

// Judge holds what a wrench may deviate by against what its standard allows.
func (t Tool) Judge(off Range, highest float64) Trust {
	limit := t.Deviation(highest)
	switch {
	case quantity.AtLeast(off.Low, -limit) && quantity.AtMost(off.High, limit):
		return Within
	case !quantity.AtLeast(off.High, -limit), !quantity.AtMost(off.Low, limit):
		return Outside
	}
	return NotTold
}

// Surely gives the readings in N·m of which it is certain that they are within what
// the standard allows; its ends are reversed where there are none.
func (t Tool) Surely(load Range, highest, mark float64) Range {
	limit := t.Deviation(highest)
	return Range{load.High*(1-limit) + mark/2, load.Low*(1+limit) - mark/2}
}
