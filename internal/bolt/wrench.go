package bolt

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

// Deviation is the share by which a click wrench may be off: ISO 6789 type II
// class A, 6 % where its highest torque is 10 N·m or less and 4 % above.
func Deviation(highest float64) float64 {
	if highest <= 10 {
		return 0.06
	}
	return 0.04
}
