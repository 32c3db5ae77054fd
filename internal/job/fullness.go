package job

import "tidysump/internal/card"

// fullness is how full the space of an oil is, as its sign shows it: full until it is let
// out, empty after that, and as full as was poured of what is due, from 0 to 1. Poured
// into a space of which the volume is not known, or without a reading, it is full.
func (r *replayer) fullness(c *card.Circuit) float64 {
	sum, filled := r.trace.Poured[c.ID]
	_, drained := r.trace.Drained[c.ID]
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		if r.done[s.ID] == nil {
			continue
		}
		filled = filled || s.Pours == c.ID
		for _, id := range s.Opens {
			b := r.plan.Card().Bolt(id)
			drained = drained || b != nil && b.Drains && b.Circuit == c.ID && b.Purpose != card.Panel
		}
	}
	due, known := r.plan.Volume(c).Amount()
	switch {
	case filled && sum > 0 && known:
		return min(1, sum/due.Base)
	case drained && !filled:
		return 0
	}
	return 1
}
