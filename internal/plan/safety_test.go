package plan_test

import (
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/drain"
	"tidysump/internal/fill"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/specs"
)

// What holds in every plan, whatever the bike and the day. Common practice, no
// source.

// everyPlan runs a check over the plans of drawn cards, and of each sample card
// on every bench: each choice of its oils, the filter changed or kept, all
// cleaned or only what is due, at both places.
func everyPlan(t *testing.T, check func(t plantest.Reporter, c *card.Card, p *plan.Plan)) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) { check(t, c, p) })
	for _, s := range samplePlans() {
		if s.plan == nil {
			t.Fatalf("%s: no plan", s.card.ID)
		}
		check(t, s.card, s.plan)
	}
}

// sampled is a sample card with one bench and its plan.
type sampled struct {
	card  *card.Card
	bench plan.Bench
	plan  *plan.Plan
}

// samplePlans makes the plans of the sample cards on every bench, once for all checks.
var samplePlans = sync.OnceValue(func() []sampled {
	var list []sampled
	for _, text := range specs.Cards() {
		c, _ := card.Read(text)
		for _, b := range plantest.Benches(c) {
			p, _ := plantest.Made(c, b)
			list = append(list, sampled{c, b, p})
		}
	}
	return list
})

// engineRuns are the steps in which the engine runs.
var engineRuns = []string{"step.warm-up", "step.first-start", "step.second-start", "step.ride"}

// Every fastener that a step opens is closed by a later one, and none is opened twice
// or closed unopened. The engine never runs while one is open, but for a panel; and no
// oil is poured into a circuit while anything of it is open but its filler and what its
// level is read through.
func TestMake_WhatIsOpenedIsClosed(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		open := map[string]string{}
		for i := range p.Steps {
			s := &p.Steps[i]
			for _, id := range s.Closes {
				if open[id] == "" {
					t.Errorf("%s: %s closes %s, which is not open", c.ID, s.ID, id)
				}
				delete(open, id)
			}
			for id := range open {
				b := p.Card().Bolt(id)
				panel := b.Purpose == card.Panel
				fill := b.Purpose == card.FillerCap || strings.HasPrefix(open[id], "step.level-")
				if s.Runs && !panel || s.Pours != "" && b.Circuit == s.Pours && !panel && !fill {
					t.Errorf("%s: %s is open at %s", c.ID, id, s.ID)
				}
			}
			for _, id := range s.Opens {
				if open[id] != "" || p.Card().Bolt(id) == nil {
					t.Errorf("%s: %s opens %s, which is open already or is none", c.ID, s.ID, id)
				}
				open[id] = s.Word
			}
		}
		for id := range open {
			t.Errorf("%s: %s stays open", c.ID, id)
		}
	})
}

// What a tool closes shows a torque or a turn, or says that it is not known and
// where to look it up; and says so before the turn of the wrench.
func TestMake_ClosedWithATorqueOrAStatedUnknown(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range p.Steps {
			s := &p.Steps[i]
			if len(s.Closes) != 1 || s.Word == "step.peek-on" || s.Word == "step.caps-on" || s.Word == "step.panel-on" {
				continue
			}
			id := s.Closes[0]
			given := slices.ContainsFunc(s.Figures, func(f shown.Figure) bool {
				return (f.Name == "figure.torque" || f.Name == "figure.turn") && (len(f.Texts) > 0 || f.Lookup != "")
			})
			unknown := !slices.ContainsFunc(s.Figures, func(f shown.Figure) bool { return len(f.Texts) > 0 })
			if !given || !s.Must || unknown && !warns(s, "torque-unknown") && !warns(s, "filter-box") {
				t.Errorf("%s: %s is closed with %+v, warned of %+v", c.ID, id, s.Figures, s.Warns)
			}
		}
	})
}

func warns(s *plan.Step, word string) bool {
	return slices.ContainsFunc(s.Warns, func(w plan.Warn) bool { return w.Word == "caution."+word })
}

// Each act has its caution in the step itself, above what is to be done, and the
// bike stands and hands are covered before the first plug turns.
func TestMake_CautionsPrecedeTheAct(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		stood, guarded := false, false
		for i := range p.Steps {
			s := &p.Steps[i]
			stood, guarded = stood || s.Word == "step.stand" || s.Word == "step.traffic", guarded || s.Word == "step.guard"
			draining := strings.HasPrefix(s.Word, "step.open-")
			if draining && (!stood || !guarded || !warns(s, "hot-oil") || !warns(s, "eyes")) {
				t.Errorf("%s: %s comes unguarded: %+v", c.ID, s.ID, s.Warns)
			}
			if strings.HasPrefix(s.Word, "step.filter-off-") && !warns(s, "hot-oil") {
				t.Errorf("%s: %s has no word on hot oil", c.ID, s.ID)
			}
			if slices.Contains(engineRuns[:3], s.Word) && !warns(s, "carbon-monoxide") {
				t.Errorf("%s: %s has no word on carbon monoxide", c.ID, s.ID)
			}
			if b := boltOf(c, boltID(c, s.ID)); draining && circuitRole(c, b) == card.FinalDrive && !warns(s, "gear-oil-on-tyre") {
				t.Errorf("%s: %s has no word on the tyre", c.ID, s.ID)
			}
			if strings.HasPrefix(s.Word, "step.filter-on-") && !warns(s, "ring-twice") || s.Word == "step.top-up" && !warns(s, "never-above") {
				t.Errorf("%s: %s is not warned of: %+v", c.ID, s.ID, s.Warns)
			}
		}
	})
}

func circuitRole(c *card.Card, b *card.Bolt) card.Role {
	for i := range c.Circuits {
		if b != nil && c.Circuits[i].ID == b.Circuit {
			return c.Circuits[i].Role
		}
	}
	return ""
}

// Never more goes in before the first start than is due.
func TestMake_FirstPourIsLessThanDue(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for _, s := range p.Steps {
			if s.Word != "step.pour" {
				continue
			}
			first, due := amountOf(s, "figure.first-pour"), amountOf(s, "figure.due")
			if first <= 0 || first >= due {
				t.Errorf("%s: %v L of %v L go in before the first start", c.ID, first, due)
			}
		}
	})
}

// What is poured first and what is kept back are, as they are printed, the volume for
// today as it is printed: no estimate is rounded up past it. Only a volume of more
// digits than the two an estimate has leaves less than a half of the last.
func TestMake_FirstPourAndTheRestAreTheVolume(t *testing.T) {
	compared := 0
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for _, r := range p.Circuits() {
			pour, keep := p.Step("pour-"+r.ID), p.Step("level-interim-"+r.ID)
			if pour == nil || keep == nil {
				continue
			}
			first, rest, due := amountOf(*pour, "figure.first-pour"), amountOf(*keep, "figure.keep-back"), amountOf(*pour, "figure.due")
			if first == 0 {
				continue
			}
			compared++
			if off := math.Abs(first + rest - due); first > fill.First(due)*(1+1e-9) || off > 0.05*rest+1e-9 {
				t.Errorf("%s: %v L first and %v L kept back of %v L", c.ID, first, rest, due)
			}
		}
	})
	if compared < 10 {
		t.Errorf("%d pours compared", compared)
	}
}

func amountOf(s plan.Step, figure string) float64 {
	for _, f := range s.Figures {
		if f.Name == figure && len(f.Texts) > 0 {
			low, _, _, _ := (&quantity.Ask{Kind: quantity.Volume, System: quantity.Metric}).ReadRange(f.Texts[0])
			return low.Base
		}
	}
	return 0
}

// Oil to be drained is a WARNING on every card: it scalds within seconds at the best
// of temperatures. The figure to drain at is one that Judge calls good, the habit is
// one that it calls too hot for bare skin, and what that gains is said beside what it
// costs.
func TestMake_HotOilIsAWarning(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		warmed := 0
		for i := range p.Steps {
			s := &p.Steps[i]
			for _, w := range s.Warns {
				if w.Word == "caution.hot-oil" && w.Signal != plan.Warning {
					t.Errorf("%s: %s calls hot oil a %s", c.ID, s.ID, w.Signal)
				}
			}
			for _, f := range s.Figures {
				if want, known := warmths[f.Name]; known {
					warmed++
					low, high := ends(f)
					if drain.Judge(low) != want || drain.Judge(high) != want || !warns(s, "hot-oil") {
						t.Errorf("%s: %s shows %s of %v, warns of %v", c.ID, s.ID, f.Name, f.Texts, s.Warns)
					}
				}
			}
			if s.Word == "step.warm-up" {
				for _, name := range []string{"habit", "warm", "hot", "gain", "sooner", "after"} {
					if s.Values[name] == "" || strings.HasPrefix(s.Values[name], "-") || strings.HasPrefix(s.Values[name], "0 ") {
						t.Errorf("%s: the habit's %s is %q", c.ID, name, s.Values[name])
					}
				}
			}
		}
		if stepOf(p, "warm-up") != nil && warmed < 2 {
			t.Errorf("%s: %d temperatures are shown", c.ID, warmed)
		}
	})
}

// warmths is what the figures of temperature must come to.
var warmths = map[string]drain.Warmth{"figure.warm-target": drain.Good, "figure.usual-warm": drain.TooHot}

// ends gives a figure's ends in °C.
func ends(f shown.Figure) (low, high float64) {
	first, last, _ := strings.Cut(f.Texts[0], "–")
	b, _ := quantity.Parse("", last, "°C", quantity.Metric)
	a, _ := quantity.Parse("", first, b.Unit, quantity.Metric)
	return a.Base, b.Base
}

func stepOf(p *plan.Plan, word string) *plan.Step {
	for i := range p.Steps {
		if p.Steps[i].Word == "step."+word {
			return &p.Steps[i]
		}
	}
	return nil
}
