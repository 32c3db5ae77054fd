package plan_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/shown"
)

// A word of the card has on its sheet the words of the manual that it comes from, as long
// as the card says it; and no other has any.
func TestPlan_WordsQuoted(t *testing.T) {
	members := [...][2]string{{"thread", "plan.thread"}, {"drive", "plan.tool"}, {"seal/kind", "plan.seal"}, {"oil/marks", "plan.mark"},
		{"oil/service", "plan.service"}, {"level/device", "plan.device"}, {"level/state", "plan.state"}, {"level/stance", "plan.stance"}}
	rapid.Check(t, func(t *rapid.T) {
		c := plantest.Card(t)
		c.Sources = []card.Source{{ID: "book", Title: "Handbook"}}
		c.Quotes = nil
		want := map[string][]string{}
		var parts []string
		for i := range c.Circuits {
			parts = append(parts, c.Circuits[i].ID)
		}
		for i := range c.Bolts {
			parts = append(parts, c.Bolts[i].ID)
		}
		for _, part := range parts {
			for _, member := range members {
				at, name := part+"/"+member[0], member[1]
				s, ok := c.Slot(at)
				if !ok || len(s.Says()) == 0 || !rapid.Bool().Draw(t, at) {
					continue
				}
				says := s.Says()[0]
				if rapid.Bool().Draw(t, at+" changed since") {
					says += "x"
				} else {
					want[part] = append(want[part], name)
				}
				c.Quotes = append(c.Quotes, card.Quote{Words: "@ so: " + at, Source: "book", Page: "7", Of: []card.Quoted{{At: at, Says: says}}})
			}
		}
		p, findings := plantest.Made(c, plantest.Bench(t, c))
		if p == nil {
			t.Fatalf("no plan: %v", findings)
		}
		check := func(part string, list []shown.Figure) {
			var names []string
			for _, f := range list {
				names = append(names, f.Name)
				if f.Standing != card.FromManual || f.Source != "Handbook" || f.Page != "7" || f.Quote == "" || f.Quote[0] == '@' {
					t.Errorf("%s, %s: from %q, page %q, %q", part, f.Name, f.Source, f.Page, f.Quote)
				}
				plantest.SayFigure(t, f)
			}
			slices.Sort(names)
			slices.Sort(want[part])
			if !slices.Equal(names, want[part]) {
				t.Errorf("%s has words of %v, wanted %v", part, names, want[part])
			}
		}
		for _, o := range p.Oils {
			check(o.Circuit, o.Quoted)
		}
		for _, b := range p.Bolts {
			check(b.ID, b.Quoted)
		}
	})
}
