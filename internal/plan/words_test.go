package plan_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// Every word that a plan uses is in the catalogue, with all that belongs to it.
func TestMake_EveryWordIsInTheCatalogue(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		for _, s := range p.Steps {
			sayStep(t, s)
		}
		for _, i := range append(p.Parts, p.Tools...) {
			plantest.Say(t, i.Word, i.Values)
		}
		for _, g := range p.Gaps {
			plantest.Say(t, g.Word, g.Values)
			plantest.Say(t, g.Lookup, nil)
		}
		for _, o := range p.Oils {
			plantest.Say(t, o.Role, nil)
			for _, f := range append(o.Figures, o.Due, o.Need) {
				plantest.SayFigure(t, f)
			}
		}
		for _, b := range p.Bolts {
			plantest.Say(t, b.Purpose, nil)
			for _, id := range []string{b.Drive, b.Seal} {
				if id != "" {
					plantest.Say(t, id, nil)
				}
			}
			plantest.SayFigure(t, b.Size)
			plantest.SayFigure(t, b.Torque)
		}
	})
}

func sayStep(t plantest.Reporter, s plan.Step) {
	t.Helper()
	for _, part := range []string{"", ".do", ".why"} {
		plantest.Say(t, s.Word+part, s.Values)
	}
	plantest.Say(t, "stage."+string(s.Stage), nil)
	for _, w := range s.Warns {
		plantest.Say(t, "signal."+string(w.Signal), nil)
		plantest.Say(t, w.Word, nil)
		plantest.Say(t, w.Word+".more", nil)
	}
	for _, i := range s.Takes {
		plantest.Say(t, i.Word, i.Values)
	}
	for _, f := range s.Figures {
		plantest.SayFigure(t, f)
	}
	for _, timer := range s.Timers {
		plantest.SayFigure(t, timer.Figure)
	}
	for _, a := range s.Asks {
		plantest.Say(t, "ask."+a.What, nil)
		for _, c := range a.Choice {
			plantest.Say(t, a.What+"."+c, nil)
		}
	}
}
