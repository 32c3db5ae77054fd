package plan_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What a photo shows is said by the step and not by a part of its id: a panel named
// "fairing" is no ring, and the bottles looked at beforehand are no oil in a pan.
func TestMake_MotifOfAStep(t *testing.T) {
	for _, tt := range []struct {
		card, step string
		want       plan.Motif
	}{
		{"tessaly-corda-570", "identify", plan.PhotoOdometer},
		{"tessaly-corda-570", "check-oil-engine", plan.PhotoOther},
		{"tessaly-corda-570", "tray", plan.PhotoPan},
		{"tessaly-corda-570", "open-drain-plug-drain", plan.PhotoPlug},
		{"tessaly-corda-570", "filter-off-spin-on-filter", plan.PhotoFilter},
		{"tessaly-corda-570", "old-ring-filter", plan.PhotoSeal},
		{"tessaly-corda-570", "look-oil", plan.PhotoPan},
		{"tessaly-corda-570", "tighten-drain", plan.PhotoPlug},
		{"tessaly-corda-570", "ride", plan.PhotoOther},
		{"tessaly-brisanda-870", "panel-off-fairing", plan.PhotoOther},
	} {
		p, _ := plantest.Made(plantest.Sample(t, tt.card), plan.Bench{})
		s := p.Step(tt.step)
		if s == nil {
			t.Errorf("%s has no step %s", tt.card, tt.step)
		} else if s.Photo != tt.want {
			t.Errorf("%s, %s: a photo shows %q, want %q", tt.card, tt.step, s.Photo, tt.want)
		}
	}
}

// Every step has a motif, and a plug is only seen where oil runs out.
func TestMake_EveryStepHasAMotif(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		for _, s := range p.Steps {
			if !slices.Contains(plan.Motifs, s.Photo) {
				t.Fatalf("%s: a photo shows %q", s.ID, s.Photo)
			}
			if b := boltOf(c, boltID(c, s.ID)); s.Photo == plan.PhotoPlug && b != nil && !b.Drains {
				t.Fatalf("%s: a photo shows a plug, and no oil runs out there", s.ID)
			}
		}
	})
}
