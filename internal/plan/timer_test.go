package plan_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// The lengths are common practice, except where the card gives a wait: of a
// range its long end.
func TestMake_TimersOfTheSteps(t *testing.T) {
	for _, tt := range []struct {
		card, step, what string
		seconds          int
		text             string
		standing         card.Standing
	}{
		{"tessaly-corda-570", "run-out", "drain", 300, "5 min", card.Estimated},
		{"tessaly-corda-570", "first-start", "idle", 20, "20 s", card.Estimated},
		{"tessaly-corda-570", "top-up-engine", "settle", 180, "3 min", card.FromManual},
		{"ondrake-meridano-1130", "top-up-engine", "settle", 300, "5 min", card.FromManual}, // 3 to 5 min
		{"hallowmoor-fellane-420", "top-up-engine", "settle", 180, "3 min", card.Estimated}, // not known
		{"tessaly-corda-570", "leak-look", "leak", 300, "5 min", card.Estimated},
	} {
		p, _ := plantest.Made(plantest.Sample(t, tt.card), plan.Bench{System: quantity.Metric})
		i := slices.IndexFunc(p.Steps, func(s plan.Step) bool { return s.ID == tt.step })
		if i < 0 || len(p.Steps[i].Timers) != 1 {
			t.Errorf("%s: the step %q has not one timer", tt.card, tt.step)
			continue
		}
		got := p.Steps[i].Timers[0]
		if got.What != tt.what || got.Seconds != tt.seconds || !slices.Equal(got.Texts, []string{tt.text}) || got.Standing != tt.standing {
			t.Errorf("%s, %s: got %+v, want %+v", tt.card, tt.step, got, tt)
		}
	}
}

// Nothing settles at a hole, nor in oil that nobody ran; what settles does so at
// the circuit's own gauge.
func TestMake_NothingToWaitFor(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		for _, s := range p.Steps {
			for _, timer := range s.Timers {
				if timer.Seconds < 10 || timer.Seconds > 3600 {
					t.Fatalf("%s runs for %d s", s.ID, timer.Seconds)
				}
				if timer.What == plan.TimeSettle && (len(s.Asks) == 0 || s.Asks[0].Choice[0] != "above") {
					t.Fatalf("%s waits for a level that nothing shows: %+v", s.ID, s)
				}
			}
		}
	})
}
