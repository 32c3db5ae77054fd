package plan_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What a step wants in the hand was laid out before: each tool is on the list of tools in
// that size, each seal on that of parts; and what is tightened to a torque that the card
// knows wants the torque wrench.
func TestTakes_AreWhatWasLaidOut(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range p.Steps {
			s := &p.Steps[i]
			for _, take := range s.Takes {
				word, is := strings.CutPrefix(take.Word, "take.")
				laid := func(list []plan.Item, like string, values ...string) bool {
					return slices.ContainsFunc(list, func(i plan.Item) bool {
						return strings.HasPrefix(i.Word, like) && !slices.ContainsFunc(values, func(v string) bool { return i.Values[v] != take.Values[v] })
					})
				}
				there := false
				switch {
				case strings.HasPrefix(word, "seal"):
					there = laid(p.Parts, "part.", "kind")
				case word == "oil" || strings.HasPrefix(word, "filter-spin") || strings.HasPrefix(word, "filter-cart") || word == "filter-unknown":
					there = laid(p.Parts, "part."+word)
				default:
					there = laid(p.Tools, "tool."+word, "size")
				}
				if !is || !there {
					t.Errorf("%s: %s wants %+v, which nobody laid out", c.ID, s.ID, take)
				}
			}
			wrench := slices.ContainsFunc(s.Takes, func(i plan.Item) bool { return i.Word == "take.torque-wrench" })
			torque := slices.ContainsFunc(s.Asks, func(a plan.Ask) bool { return a.What == plan.AskTorque && a.Card != "" })
			wrenched := []card.Drive{card.Hexagon, card.HexagonKey, card.SixLobe}
			if torque && !wrench && slices.Contains(wrenched, p.Card().Bolt(s.Closes[0]).Drive) {
				t.Errorf("%s: %s has a torque, and wants %+v: %+v", c.ID, s.ID, s.Takes, p.Card().Bolt(s.Closes[0]))
			}
		}
	})
}
