package bolt

import "tidysump/internal/quantity"

// lowestUse is the least share of its full scale at which a torque wrench may
// be used: the lowest point at which ISO 6789:2003 tests it is 20 % of the
// maximum.
const lowestUse = 0.20

// Wrench is a torque wrench, Low and High being the ends of its scale in N·m.
type Wrench struct{ Low, High float64 }

// Sets reports whether the wrench may be used for a torque in N·m: it is on
// the scale and not below a fifth of its end.
func (w Wrench) Sets(torque float64) bool { return w.FitOf(torque) == Sets }

// Needed splits torques in N·m into the fewest groups that one wrench each can
// set, lowest first: within a group the highest is at most five times the
// lowest, since a wrench serves from a fifth of its scale. Torques must be in
// rising order.
func Needed(torques []float64) []Wrench {
	var groups []Wrench
	for _, t := range torques {
		if n := len(groups); n > 0 && groups[n-1].Low >= lowestUse*t {
			groups[n-1].High = t
			continue
		}
		groups = append(groups, Wrench{t, t})
	}
	return groups
}

// LongestScale gives the end of the longest scale, in N·m, on which a torque in
// N·m may still be set.
func LongestScale(torque float64) float64 { return torque / lowestUse }

// Tool is a kind of torque wrench; 0: not known, and taken for one that clicks.
type Tool int

// The kinds.
const (
	Click Tool = 1 + iota
	Dial       // or a display
	Beam       // that bends
)

// Tools are the names of the kinds, the first being Click.
var Tools = []string{"click", "dial", "beam"}

// Deviation is the share by which a wrench may be off after ISO 6789:2003, highest
// being the end of its scale in N·m. For those that click (type II, class A) a tool
// maker's sheet was read; that a dial (type I, class B and C) may be off by as much
// and a beam (type I, class A) always by 6 % is from memory.
func (t Tool) Deviation(highest float64) float64 {
	if t == Beam {
		return deviationOfSmall
	}
	return Deviation(highest)
}

const deviationOfSmall = 0.06

// Deviation is the share by which a click wrench may be off: ISO 6789 type II
// class A, 6 % where its highest torque is 10 N·m or less and 4 % above.
func Deviation(highest float64) float64 {
	if quantity.AtMost(highest, 10) {
		return deviationOfSmall
	}
	return 0.04
}
