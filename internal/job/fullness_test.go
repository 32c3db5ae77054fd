package job_test

import (
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/specs"
)

// On every sample bike each oil is in until it is let out, out until it is poured, and in
// again at the end; what was read counts, and never more than all of it.
func TestReplay_OilGoesOutAndComesIn(t *testing.T) {
	out := 0
	for name, text := range specs.Cards() {
		c, _ := card.Read(text)
		p, _ := plantest.Made(c, plan.Bench{})
		var events []job.Event
		was := map[string]float64{}
		for _, s := range p.Steps {
			events = append(events, event(s.ID, len(events)%50, job.Done, s.ID, ""))
			for _, o := range job.Replay(p, &job.History{Events: events}, nil).Oils {
				before, told := was[o.Circuit]
				if o.Full < before && told {
					out++
				}
				if o.Full < 0 || o.Full > 1 || o.Full > before && told && s.Pours != o.Circuit {
					t.Errorf("%s: %s is %v full after %s, before it %v", name, o.Circuit, o.Full, s.ID, before)
				}
				was[o.Circuit] = o.Full
			}
		}
		for id, full := range was {
			if full != 1 {
				t.Errorf("%s: %s ends %v full", name, id, full)
			}
		}
	}
	if out < 15 {
		t.Errorf("only %d oils went out", out)
	}
}
