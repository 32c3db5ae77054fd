package plan

import "slices"

// shorten leaves each caution whole at the first step of the job that needs it, and
// DANGER wherever it stands; what was read whole before stands in one sentence.
func (p *planner) shorten() {
	var said []string
	for i := range p.plan.Steps {
		s := &p.plan.Steps[i]
		s.Warns = slices.Clone(s.Warns) // steps of one subject may have been made once
		for n := range s.Warns {
			w := &s.Warns[n]
			w.Short = w.Signal != Danger && slices.Contains(said, w.Word)
			if !w.Short {
				said = append(said, w.Word)
			}
		}
	}
}
