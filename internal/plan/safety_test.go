package plan_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
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
	for file := range specs.Cards() {
		c := plantest.Sample(t, strings.TrimSuffix(file, ".json"))
		for _, b := range everyBench(c) {
			p, list := plantest.Made(c, b)
			if p == nil {
				t.Fatalf("%s: no plan: %v", file, list)
			}
			check(t, c, p)
		}
	}
}

func everyBench(c *card.Card) []plan.Bench {
	var also []string
	for _, s := range c.Strain {
		also = append(also, s.ID)
	}
	for _, f := range c.Filters {
		also = append(also, f.ID)
	}
	var list []plan.Bench
	for chosen := range 1 << len(c.Circuits) {
		var circuits []string
		for i := range c.Circuits {
			if chosen>>i&1 > 0 {
				circuits = append(circuits, c.Circuits[i].ID)
			}
		}
		for _, keep := range []bool{false, true} {
			for _, clean := range [][]string{nil, also} {
				for _, place := range []plan.Place{plan.Garage, plan.Roadside} {
					list = append(list, plan.Bench{System: quantity.Metric, Place: place, KeepFilter: keep, Circuits: circuits, Also: clean})
				}
			}
		}
	}
	return list
}

// What an opening step opens and a closing step closes, by its id: "" for none.
func opens(c *card.Card, s *plan.Step) string {
	for _, word := range []string{"open-drain-plug", "open-strainer-cap", "open-strainer-cover", "filter-off-spin-on", "filter-off-cartridge",
		"filter-off-cap", "filter-off-centrifugal", "level-cover-off", "level-plug-off", "peek-off"} {
		if s.Word == "step."+word {
			return strings.TrimSuffix(strings.TrimPrefix(s.ID, word+"-"), "-again")
		}
	}
	return ""
}

func closes(c *card.Card, s *plan.Step) string {
	for _, word := range []string{"tighten-several", "tighten-in-order", "tighten", "filter-on", "level-cover-on", "level-plug-on", "peek-on"} {
		if s.Word == "step."+word {
			return strings.TrimSuffix(strings.TrimPrefix(s.ID, word+"-"), "-again")
		}
	}
	return ""
}

// engineRuns are the steps in which the engine runs.
var engineRuns = []string{"step.warm-up", "step.first-start", "step.second-start", "step.ride"}

// The engine never runs, and no oil is poured, while a plug, cap or filter of the
// day is off; nor does it run before the filler is closed again.
func TestMake_NothingIsOpenWhenItRunsOrIsFilled(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		open := map[string]bool{}
		filler := false
		for i := range p.Steps {
			s := &p.Steps[i]
			if id := opens(c, s); id != "" {
				open[id] = true
			}
			if id := closes(c, s); id != "" {
				delete(open, id)
				if b := boltOf(c, id); b != nil && b.Holds != "" {
					delete(open, b.Holds) // the filter that it holds
				}
			}
			switch {
			case s.Word == "step.caps-on" || s.Word == "step.filler-on":
				filler = false
			case strings.HasPrefix(s.Word, "step.pour"):
				for id := range open {
					if b := boltOf(c, id); b == nil || b.Purpose != card.LevelScrew {
						t.Errorf("%s %s: %s is open when %s begins", c.ID, p.Steps[0].ID, id, s.ID)
					}
				}
				filler = filler || s.Asks[0].About == "engine" && hasFiller(c, s.Asks[0].About)
			case slices.Contains(engineRuns, s.Word) && (len(open) > 0 || filler):
				t.Errorf("%s: open %v, filler open %v when %s begins", c.ID, open, filler, s.ID)
			}
		}
		if len(open) > 0 {
			t.Errorf("%s: %v stays open", c.ID, open)
		}
	})
}

func hasFiller(c *card.Card, circuit string) bool {
	return slices.ContainsFunc(c.Bolts, func(b card.Bolt) bool { return b.Purpose == card.FillerCap && b.Circuit == circuit })
}

// What a tool closes shows a torque or a turn, or says that it is not known and
// where to look it up; and says so before the turn of the wrench.
func TestMake_ClosedWithATorqueOrAStatedUnknown(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range p.Steps {
			s := &p.Steps[i]
			id := closes(c, s)
			if id == "" || s.Word == "step.peek-on" {
				continue
			}
			given := slices.ContainsFunc(s.Figures, func(f shown.Figure) bool {
				return (f.Name == "figure.torque" || f.Name == "figure.turn") && (len(f.Texts) > 0 || f.Lookup != "")
			})
			unknown := !slices.ContainsFunc(s.Figures, func(f shown.Figure) bool { return len(f.Texts) > 0 })
			if !given || !s.Must || unknown && !warns(s, "torque-unknown") {
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
			stood, guarded = stood || s.Word == "step.stand", guarded || s.Word == "step.guard"
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
			if b := boltOf(c, opens(c, s)); draining && circuitRole(c, b) == card.FinalDrive && !warns(s, "gear-oil-on-tyre") {
				t.Errorf("%s: %s has no word on the tyre", c.ID, s.ID)
			}
			if s.Word == "step.filter-on" && !warns(s, "ring-twice") || s.Word == "step.top-up" && !warns(s, "never-above") {
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

func amountOf(s plan.Step, figure string) float64 {
	for _, f := range s.Figures {
		if f.Name == figure && len(f.Texts) > 0 {
			text, _, _ := strings.Cut(f.Texts[0], "–")
			a, _ := quantity.Parse("", text, "L", quantity.Metric)
			return a.Base
		}
	}
	return 0
}
