package plan

import "slices"

// Gate reports whether something is to be looked at, touched or read at a step before
// one goes on: what came out; and where the step must be done, what is counted there, and
// a level, a leak or a temperature that is asked there. A torque or a volume is written
// down for the record, and nobody waits for it.
func (s *Step) Gate() bool {
	return len(s.Signs) > 0 || s.Must && (len(s.Tally) > 0 || slices.ContainsFunc(s.Asks, func(a Ask) bool {
		return a.What == AskLevel || a.What == AskLeak || a.What == AskTemperature
	}))
}
