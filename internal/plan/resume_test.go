package plan_test

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

func resumed(t rapid.TB, c *card.Card, b plan.Bench, ids []string) *plan.Plan {
	checked, list := card.Accept(c)
	if checked == nil {
		t.Fatal(list)
	}
	p, list := plan.Resume(checked, b, ids)
	if p == nil {
		t.Fatal(list)
	}
	return p
}

func idsOf(p *plan.Plan) []string {
	ids := make([]string, len(p.Steps))
	for i, s := range p.Steps {
		ids[i] = s.ID
	}
	return ids
}

// A job keeps the steps that it began with, in their order, whatever was left out, moved
// or added since; each is what it is today, as far as there is one.
func TestResume_KeepsTheStepsOfTheJob(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, today *plan.Plan) {
		own := idsOf(today)
		if p := resumed(t, c, b, own); !reflect.DeepEqual(p.Steps, today.Steps) {
			t.Fatalf("its own steps make it\n%+v, not\n%+v", p.Steps, today.Steps)
		}
		if p := resumed(t, c, b, nil); !reflect.DeepEqual(p.Steps, today.Steps) {
			t.Fatalf("without steps it is\n%+v, not\n%+v", p.Steps, today.Steps)
		}
		ids := rapid.Permutation(own).Draw(t, "order")[:rapid.IntRange(1, len(own)).Draw(t, "count")]
		for range rapid.IntRange(0, 4).Draw(t, "others") {
			other := rapid.OneOf(rapid.String().Filter(func(id string) bool { return !strings.HasPrefix(id, "@") }), rapid.SampledFrom(own), rapid.SampledFrom([]string{
				"pour", "pour-", "pour-oil0-again", "tighten-bolt0", "tighten-oil0", "old-ring-filter0", "open-drain-plug-filter0-again-again", "look-strainer-mesh0", "look-strainer-nowhere",
				"identify-oil0", "top-up-oil1", "level-found-hot-oil0", "run-out", "run-out-oil2", "filter-on-bolt1", "-", "again"})).Draw(t, "other")
			ids = slices.Insert(ids, rapid.IntRange(0, len(ids)).Draw(t, "at"), other)
		}
		p := resumed(t, c, b, ids)
		var want []string
		for _, id := range ids {
			if id != "" && !slices.Contains(want, id) {
				want = append(want, id)
			}
		}
		if got := idsOf(p); !slices.Equal(got, want) {
			t.Fatalf("of %q come %q", ids, got)
		}
		for _, s := range p.Steps {
			planned := today.Step(s.ID)
			if planned != nil {
				s.Notes = planned.Notes // they follow the order of the job
				if len(s.Warns) == len(planned.Warns) {
					s.Warns = planned.Warns // and so does which caution is short
				}
			}
			if planned != nil && !reflect.DeepEqual(s, *planned) {
				t.Fatalf("%s is\n%+v, today\n%+v", s.ID, s, *planned)
			}
			sayStep(t, s)
			if s.Word == "step.other-version" && (s.Must || s.After || len(s.Asks) > 0 || s.Values["id"] == "") {
				t.Fatalf("of %s nothing is known, and it is %+v", s.ID, s)
			}
		}
	})
}

// A step that is not planned any more for this bike is made from its recipe: it asks for
// what it asked for, and is as needful. Every sample card goes from the whole job to the
// short form and back, in which most steps are not planned; drawn ones from any to any.
func TestResume_UnplannedStepKeepsItsRecipe(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, began *plan.Plan) {
		other := plantest.Bench(t, c)
		other.System, other.Place = b.System, b.Place
		keepsRecipes(t, c, other, began)
	})
	plantest.Samples(t, func(t *testing.T, c *card.Card, b plan.Bench, began *plan.Plan) {
		other := b
		other.GetHome = !b.GetHome
		if made := keepsRecipes(t, c, other, began); made == 0 {
			t.Errorf("every step of %v is planned for %+v too", idsOf(began), other)
		}
	})
}

// keepsRecipes checks the steps of a plan on another bench, and gives how many were made
// from their recipes.
func keepsRecipes(t rapid.TB, c *card.Card, other plan.Bench, began *plan.Plan) (made int) {
	p := resumed(t, c, other, idsOf(began))
	today, _ := plantest.Made(c, other)
	for i, s := range p.Steps {
		was := began.Steps[i]
		if today.Step(s.ID) != nil {
			continue
		}
		if s.Word == "step.other-version" && was.Word == "step."+was.ID {
			continue // about the one oil of another day
		}
		if s.Word != was.Word && !slices.Contains(ofUnknownVolume, s.Word) || s.Must != was.Must || s.After != was.After || s.Pours != was.Pours || !reflect.DeepEqual(whats(s), whats(was)) {
			t.Fatalf("%s is\n%+v, and was\n%+v", s.ID, s, was)
		}
		made++
	}
	return made
}

// ofUnknownVolume are said where a job began when a volume was known that is not known
// on this bench.
var ofUnknownVolume = []string{"step.tray-unknown", "step.pour-unknown"}

func whats(s plan.Step) []string {
	var list []string
	for _, a := range s.Asks {
		list = append(list, a.What+" "+a.About)
	}
	return list
}

// A heap of ids makes no endless plan, and no plan is so long that any of it is left out.
func TestResume_Bound(t *testing.T) {
	c := plantest.Sample(t, "quillane-vastro-1010")
	own := stepIDs(t, c, plan.Bench{})
	ids := slices.Clone(own)
	for n := range 100_000 {
		ids = append(ids, "other-"+strconv.Itoa(n))
	}
	checked, _ := card.Accept(c)
	p, _ := plan.Resume(checked, plan.Bench{}, ids)
	if len(p.Steps) > 3000 || len(p.Steps) < 10*len(own) || !slices.Equal(idsOf(p)[:len(own)], own) {
		t.Errorf("%d steps of %d ids", len(p.Steps), len(ids))
	}
}
