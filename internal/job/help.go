package job

import (
	"maps"

	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// StepHelp is a calculation of a step with what the job knows of its input, in place
// of what the plan gives.
type StepHelp struct {
	Step string
	plan.Help
}

// Members names the members of a step's help.
func (h *StepHelp) Members(m *wire.Members) {
	m.String("step", &h.Step, wire.Required)
	h.Help.Members(m)
}

// helps asks the bottles for what is left to pour, once some of it is poured.
func (r *replayer) helps() {
	for i := range r.plan.Steps {
		s := &r.plan.Steps[i]
		for _, h := range s.Helps {
			if left := r.leftAt(s); h.Op == "bottles" && left != "" {
				given := maps.Clone(h.Given)
				given["need"] = left
				r.state.Helps = append(r.state.Helps, StepHelp{s.ID, plan.Help{Op: h.Op, Given: given}})
			}
		}
	}
}

// leftAt is what is left to pour of the oil that a step asks about; empty before
// any of it is poured, and when nothing is left or it is not known.
func (r *replayer) leftAt(s *plan.Step) string {
	for i := range r.state.Oils {
		b := &r.state.Oils[i]
		for _, a := range s.Asks {
			if a.About == b.Circuit && len(b.Poured) > 0 {
				return first(b.Left)
			}
		}
	}
	return ""
}
