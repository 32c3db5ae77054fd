package plan_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// Each caution stands whole at the first step that has it, and at no other; DANGER is
// whole everywhere. So it is in a plan of today and in one that a job began with,
// whichever of its steps that has.
func TestCautions_WholeOnceAndBeforeTheAct(t *testing.T) {
	everyPlan(t, wholeOnce)
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		var kept []string
		for _, s := range p.Steps {
			if rapid.Bool().Draw(t, "keeps "+s.ID) {
				kept = append(kept, s.ID)
			}
		}
		checked, _ := card.Accept(c)
		resumed, list := plan.Resume(checked, b, kept)
		if resumed == nil {
			t.Fatalf("%s: not resumed: %v", c.ID, list)
		}
		wholeOnce(t, c, resumed)
	})
}

func wholeOnce(t plantest.Reporter, c *card.Card, p *plan.Plan) {
	t.Helper()
	said := map[string]bool{}
	for _, s := range p.Steps {
		for _, w := range s.Warns {
			if want := said[w.Word] && w.Signal != plan.Danger; w.Short != want {
				t.Errorf("%s: %s: %s is short %v, want %v", c.ID, s.ID, w.Word, w.Short, want)
			}
			said[w.Word] = true
		}
	}
}
