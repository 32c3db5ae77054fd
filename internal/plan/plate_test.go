package plan_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// What a step says of a volume or of how tight something gets stands on the plate, of the
// same thing, in the same texts and with the same standing; and the plate has no other
// figure of a thing than its steps.
func TestPlate_SaysWhatTheStepsSay(t *testing.T) {
	compared := map[string]int{}
	everySystem(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		told := map[string]bool{} // things of the plate that a step speaks of
		for _, s := range p.Steps {
			for _, f := range s.Figures {
				switch f.Name {
				case "figure.due", "figure.first-pour", "figure.torque", "figure.turn", "figure.grade":
				default:
					continue
				}
				if f.Name == "figure.grade" && p.GetHome() || f.Name == "figure.due" && strings.HasPrefix(s.Word, "step.pour-unknown") && s.Subject == "" {
					continue
				}
				compared[f.Name]++
				told[s.Subject+f.Name] = true
				if !slices.ContainsFunc(p.Plate, func(on plan.PlateFigure) bool {
					return on.About == s.Subject && slices.Equal(on.Texts, f.Texts) && on.Standing == f.Standing && on.Source == f.Source && on.Page == f.Page && on.Lookup == f.Lookup
				}) {
					t.Errorf("%s of %s: the step %s says %q (%s) of %s, the plate %+v", f.Name, c.ID, s.ID, f.Texts, f.Standing, s.Subject, p.Plate)
				}
			}
		}
		for _, on := range p.Plate {
			if !slices.ContainsFunc(p.Steps, func(s plan.Step) bool {
				return s.Subject == on.About && slices.ContainsFunc(s.Figures, func(f shown.Figure) bool {
					return slices.Equal(f.Texts, on.Texts) && f.Standing == on.Standing
				})
			}) {
				t.Errorf("%s: no step says %q of %s, %s", c.ID, on.Texts, on.About, on.Name)
			}
		}
	})
	for _, name := range []string{"figure.due", "figure.first-pour", "figure.torque", "figure.turn", "figure.grade"} {
		if compared[name] < 50 {
			t.Errorf("%s was compared %d times", name, compared[name])
		}
	}
}

// A figure that is drawn large begins with a number, unless it is not known. All that the
// plate says is in the catalogue, and no two things are called the same.
func TestPlate_IsReadable(t *testing.T) {
	everySystem(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		names := map[string]string{}
		for _, on := range p.Plate {
			plantest.Say(t, on.Name, on.Values)
			for _, text := range on.Beside {
				if word, isWord := strings.CutPrefix(text, "@"); isWord {
					plantest.Say(t, word, on.Values)
				}
			}
			if number := on.First()[0] >= '0' && on.First()[0] <= '9'; !on.Words && number != (on.Standing != card.Unknown) {
				t.Errorf("%s: %q of standing %s is drawn large", on.Name, on.Texts, on.Standing)
			}
			name := plantest.Text("@"+on.Name, on.Values)
			if other, twice := names[name]; twice && other != on.About && on.Values["place"] == "" && placeOf(c, on.About) != "" {
				t.Errorf("%s and %s are both called %q", other, on.About, name)
			}
			names[name] = on.About
		}
	})
}

func placeOf(c *card.Card, id string) string {
	if b := c.Bolt(id); b != nil {
		return b.Place
	}
	return ""
}

// everySystem runs a check over the plans of all sample cards on every bench and in each
// system of units, and over those of drawn cards.
func everySystem(t *testing.T, check func(t plantest.Reporter, c *card.Card, p *plan.Plan)) {
	laid := func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		t.Helper()
		p.LayPlate()
		check(t, c, p)
	}
	everyPlan(t, laid)
	for _, s := range samplePlans() {
		for _, system := range quantity.Systems[1:] {
			b := s.bench
			b.System = system
			p, list := plantest.Made(s.card, b)
			if p == nil {
				t.Fatalf("no plan: %v", list)
			}
			laid(t, s.card, p)
		}
	}
}
