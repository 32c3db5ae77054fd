package plan_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// What is said of a filter that is screwed on, and of one under a cover.
var (
	ofCan   = regexp.MustCompile(`(?i)spin-on|as a can|is a can|filter can|filter or its|filter cup|cup or strap|cutter`)
	ofCover = regexp.MustCompile(`(?i)element|cartridge|filter (cover|cap)|its cover|sharp knife`)
)

// allSentences are all texts of a plan, a list of tools as one.
func allSentences(p *plan.Plan) (list []string) {
	say := func(values map[string]string, words ...string) {
		for _, w := range words {
			if text := plantest.Text("@"+w, values); text != "@"+w {
				list = append(list, strings.SplitAfter(text, ". ")...)
			}
		}
	}
	tools := ""
	for _, i := range p.Tools {
		tools += plantest.Text("@"+i.Word, i.Values) + ", "
	}
	list = append(list, tools)
	for _, i := range p.Parts {
		say(i.Values, i.Word)
	}
	for _, g := range p.Gaps {
		say(g.Values, g.Word, g.Word+".of", g.Lookup)
	}
	for _, b := range p.Bolts {
		say(nil, b.Purpose)
	}
	for _, f := range p.Plate {
		say(f.Values, f.Name)
	}
	for _, s := range p.Steps {
		say(s.Values, s.Word, s.Word+".do", s.Word+".why")
		for _, w := range s.Warns {
			say(nil, w.Word, w.Word+".more")
		}
		for _, i := range s.Takes {
			say(i.Values, i.Word)
		}
	}
	return list
}

// claims lists the sentences that are true of one kind of filter alone.
func claims(list []string) []string {
	return slices.DeleteFunc(list, func(s string) bool { return ofCan.MatchString(s) == ofCover.MatchString(s) })
}

// Where nobody looked of what kind a filter is, no sentence of a plan is about one kind
// alone, that is told as what is missing, and the oils are those of the card: of all sample
// cards, on all benches, in all units.
func TestMake_FilterOfNoKind(t *testing.T) {
	said := 0
	for name, text := range specs.Cards() {
		c, list := card.Read(text)
		if len(list) > 0 {
			t.Fatalf("%s: %v", name, list)
		}
		unlooked := plantest.Unlooked(c)
		if slices.EqualFunc(unlooked.Filters, c.Filters, func(a, b card.Filter) bool { return a.Kind == b.Kind }) {
			continue
		}
		for n, b := range plantest.Benches(c) {
			b.System = quantity.Systems[n%len(quantity.Systems)]
			p, list := plantest.Made(unlooked, b)
			was, _ := plantest.Made(c, b)
			if p == nil || was == nil {
				t.Fatalf("%s, %+v: no plan: %v", name, b, list)
			}
			p.LayPlate()
			all := allSentences(p)
			said += len(all)
			if wrong := claims(all); len(wrong) > 0 {
				t.Fatalf("%s, %+v: of one kind alone are %q", name, b, wrong)
			}
			changed := slices.ContainsFunc(p.Parts, func(i plan.Item) bool { return i.Word == "part.filter-unknown" })
			if told := slices.ContainsFunc(p.Gaps, func(g plan.Gap) bool { return g.Word == "gap.filter-kind" }); told != changed {
				t.Errorf("%s, %+v: a filter is changed: %v, its kind is missing: %v", name, b, changed, told)
			}
			for i := range was.Oils {
				if got, want := p.Oils[i].Due.First(), was.Oils[i].Due.First(); got != want {
					t.Errorf("%s, %+v: %s of the %s, and %s of a filter that is known", name, b, got, p.Oils[i].Role, want)
				}
			}
		}
	}
	if said < 10_000 {
		t.Errorf("only %d sentences", said)
	}
	if known, _ := plantest.Made(plantest.Sample(t, "tessaly-corda-570"), plan.Bench{}); len(claims(allSentences(known))) == 0 {
		t.Error("of a filter that is screwed on nothing is said")
	}
}

// How tight such a filter gets is told as the card has it; where it has nothing, that is
// told before it is tightened.
func TestMake_FilterOfNoKindIsTightened(t *testing.T) {
	c := plantest.Unlooked(plantest.Sample(t, "ondrake-meridano-1130"))
	p, list := plantest.Made(c, plan.Bench{})
	if p == nil {
		t.Fatal(list)
	}
	warned := func(s *plan.Step) bool {
		for _, w := range s.Warns {
			if w.Word == "caution.filter-box" {
				return true
			}
		}
		return false
	}
	for i := range c.Bolts {
		b := &c.Bolts[i]
		if b.Purpose != card.FilterClosed {
			continue
		}
		id := "filter-close-" + b.ID
		if s := p.Step(id); s == nil || len(s.Figures) != 1 || s.Figures[0].First() == "" || warned(s) {
			t.Fatalf("%+v", s)
		}
		b.Torque, b.Turn = nil, nil
		p, _ = plantest.Made(c, plan.Bench{})
		if s := p.Step(id); s == nil || s.Values["to"] != "@tight-to.box" || !warned(s) {
			t.Fatalf("%+v", s)
		}
		return
	}
	t.Fatal("no filter")
}
