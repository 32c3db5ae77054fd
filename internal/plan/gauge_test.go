package plan_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// A level read before anything is drained says nothing about what to pour, nor does one
// that is read too early; every later one does.
func TestMake_LevelsThatAreMended(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		drained := p.GetHome() // nothing is drained, and what is read is mended
		for _, s := range p.Steps {
			drained = drained || s.Stage == plan.Drain
			for _, a := range s.Asks {
				if a.Amends != (a.What == plan.AskLevel && drained && s.Word != "step.level-interim") {
					t.Fatalf("%s asks for %s, drained %v: amends %v", s.ID, a.What, drained, a.Amends)
				}
			}
		}
	})
}

// The level is slid over the whole gauge, and begins between its marks.
func TestMake_SlideOfAGauge(t *testing.T) {
	for _, device := range []card.Device{card.Window, card.StickResting} {
		c := plantest.Sample(t, "tessaly-corda-570")
		c.Circuits[0].Level.Device = device
		p, _ := plantest.Made(c, plan.Bench{})
		g := p.Step("top-up-engine").Asks[0].Gauge
		if g == nil {
			t.Fatalf("%s: no gauge", device)
		}
		if g.SlideLow != 100*g.Low || g.SlideHigh != 100*g.High || g.SlideFrom <= 0 || g.SlideFrom >= 100 {
			t.Errorf("%s: slides from %v at %v to %v, the gauge goes from %v to %v", device, g.SlideLow, g.SlideFrom, g.SlideHigh, g.Low, g.High)
		}
	}
}
