package job

import (
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// StepWarn is a caution that a step has from what happened in the job.
type StepWarn struct {
	Step string // id
	plan.Warn
}

// Members names the members of a caution at a step.
func (w *StepWarn) Members(m *wire.Members) {
	m.String("step", &w.Step, wire.Required)
	w.Warn.Members(m)
}

// warnAt puts a caution to these steps, in the order of the plan: whole at the nth of
// them, where it is met first, and in one sentence at the others.
func warnAt(warn plan.Warn, nth int, steps []string) []StepWarn {
	var list []StepWarn
	for i, id := range steps {
		w := StepWarn{Step: id, Warn: warn}
		w.Short = w.Signal != plan.Danger && i != nth
		list = append(list, w)
	}
	return list
}
