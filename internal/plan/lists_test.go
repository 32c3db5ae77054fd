package plan_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/specs"
)

// Every place that is opened and whose seal the card doesn't know is a gap, and a gap is
// nothing else: by the fasteners that the steps open, and not by how the list is made.
func TestGaps_EverySealThatIsNotKnown(t *testing.T) {
	check := func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		t.Helper()
		opened := map[string]bool{}
		for _, s := range p.Steps {
			for _, id := range s.Opens {
				opened[id] = true
			}
		}
		for i := range c.Bolts {
			b := &c.Bolts[i]
			byHand := b.Drive == card.Hand || b.Drive == card.Strap || b.Drive == "" && !b.Torque.Known() && !b.Size.Known()
			if !opened[b.ID] || b.Purpose == card.Panel || b.Purpose == card.FilterCanned || b.Purpose == card.FillerCap && byHand {
				continue
			}
			place := p.Card().Bolt(b.ID).Place
			if place == "" {
				place = "@unknown.place"
			}
			gap := hasGap(p, "gap.seal", "@purpose."+string(b.Purpose), place)
			if b.Seal == nil && b.Holds == "" && !gap {
				t.Errorf("%+v is opened, its seal is not known and no gap: %v", b, p.Gaps)
			}
			if b.Seal != nil && b.Holds == "" && gap && !anotherUnknown(c, b) {
				t.Errorf("the seal of %s is known and a gap", b.ID)
			}
		}
		for _, f := range c.Filters {
			if f.Kind != card.Cartridge || len(f.Seals) > 0 || slices.ContainsFunc(c.Bolts, func(b card.Bolt) bool {
				return b.Holds == f.ID && (b.Seal != nil || b.Purpose == card.Panel || b.Purpose == card.FilterCanned || b.Purpose == card.LeaveAlone || b.Purpose == card.FillerCap)
			}) {
				continue
			}
			changed := slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return strings.HasSuffix(s.ID, "-"+f.ID) && s.Word == "step.old-ring" })
			if changed && !slices.ContainsFunc(p.Gaps, func(g plan.Gap) bool { return g.Word == "gap.seal" }) {
				t.Errorf("nobody knows a ring of the element %s, and no gap: %v", f.ID, p.Gaps)
			}
		}
	}
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) { check(t, c, p) })
	plantest.Samples(t, func(t *testing.T, c *card.Card, _ plan.Bench, p *plan.Plan) { check(t, c, p) })
}

func hasGap(p *plan.Plan, word, of, place string) bool {
	return slices.ContainsFunc(p.Gaps, func(g plan.Gap) bool {
		return g.Word == word && g.Values["of"] == of && g.Values["place"] == place
	})
}

// anotherUnknown reports whether another fastener is called the same, so that the gap may
// be its.
func anotherUnknown(c *card.Card, b *card.Bolt) bool {
	return slices.ContainsFunc(c.Bolts, func(o card.Bolt) bool {
		return o.ID != b.ID && o.Purpose == b.Purpose && o.Place == b.Place && o.Seal == nil
	}) || b.Place == "" && (b.Purpose == card.FilterCover || b.Purpose == card.StrainerCap)
}

// No gap is told twice, and what is a gap is nowhere shown as known.
func TestGaps_AreReal(t *testing.T) {
	check := func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		t.Helper()
		for _, g := range p.Gaps {
			known := func(f *card.Figure, b *card.Bolt) bool {
				return g.Values["of"] == "@purpose."+string(b.Purpose) && g.Values["place"] == b.Place && f.Known()
			}
			same := 0
			for i := range c.Bolts {
				b := &c.Bolts[i]
				if g.Values["of"] == "@purpose."+string(b.Purpose) && g.Values["place"] == b.Place {
					same++
				}
			}
			for i := range c.Bolts {
				b := &c.Bolts[i]
				if same == 1 && (g.Word == "gap.torque" && known(b.Torque, b) || g.Word == "gap.turn" && (known(b.Turn, b) || known(b.Torque, b)) ||
					g.Word == "gap.size" && known(b.Size, b) && b.Drive != "") {
					t.Errorf("%s is a gap (%v) and is known", g.Word, g.Values)
				}
			}
		}
	}
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) { check(t, c, p) })
	plantest.Samples(t, func(t *testing.T, c *card.Card, _ plan.Bench, p *plan.Plan) { check(t, c, p) })
}

// The lines of what is not known are told apart as well as its sentences are, and none is
// of a thing that could be another of the day.
func TestGaps_LinesAreToldApart(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, _ *card.Card, p *plan.Plan) {
		lines := map[string]string{}
		for _, g := range p.Gaps {
			plantest.Say(t, g.Word+".of", g.Values)
			line, whole := plantest.Text("@"+g.Word+".of", g.Values), plantest.Text("@"+g.Word, g.Values)
			if other, twice := lines[line]; twice && other != whole {
				t.Errorf("%q is said of %q and of %q", line, other, whole)
			}
			lines[line] = whole
			same := 0
			for _, b := range p.Bolts {
				if b.Today && b.Place != "" && g.Values["which"] == "@"+b.Purpose {
					same++
				}
			}
			if place := g.Values["place"]; same > 1 && place != "@unknown.place" {
				t.Errorf("%q may be of %d things", line, same)
			}
		}
	})
}

// Each part says of which oil it is and where it goes; no two lines of seals say the same.
func TestParts_SayCircuitAndPlace(t *testing.T) {
	check := func(t plantest.Reporter, p *plan.Plan) {
		t.Helper()
		seen := map[string]bool{}
		for _, i := range p.Parts {
			text := plantest.Text("@"+i.Word, i.Values)
			if seen[text] && strings.HasPrefix(i.Word, "part.seal") {
				t.Errorf("%q is listed twice", text)
			}
			seen[text] = true
			if i.Oil == "" && (i.Values["circuit"] == "" || i.Values["place"] == "" || !strings.Contains(text, plantest.Text(i.Values["circuit"], nil)) || !strings.Contains(text, plantest.Text(i.Values["place"], nil))) {
				t.Errorf("%q says nothing of %q or %q", text, i.Values["circuit"], i.Values["place"])
			}
			if i.Word == "part.filter-centrifugal" {
				t.Errorf("%q is cleaned and put back", text)
			}
			for _, fact := range i.Against {
				if word, isWord := strings.CutPrefix(fact, "@"); isWord {
					plantest.Say(t, word, i.Values)
				}
			}
		}
	}
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) { check(t, p) })
	plantest.Samples(t, func(t *testing.T, _ *card.Card, _ plan.Bench, p *plan.Plan) { check(t, p) })
}

// A filter's line has what the card knows to hold its box against, and the owner's own
// number; where it knows nothing, that is a gap.
func TestParts_FilterIsHeldAgainst(t *testing.T) {
	mm := func(v float64) *card.Figure {
		return &card.Figure{Value: v, Unit: "mm", Standing: card.Measured, Method: "by hand"}
	}
	for _, tt := range []struct {
		filter card.Filter
		bolt   string // thread of the fastener that stands for it
		want   string
	}{
		{card.Filter{Thread: "M20x1.5", Ring: mm(62.5), Height: mm(65), OwnNumber: "shelf 3"}, "", "thread M20x1.5 · sealing ring 62.5 mm across · 65 mm tall · your number shelf 3"},
		{card.Filter{}, "M20x1.5", "thread M20x1.5"},
		{card.Filter{Ring: mm(62.5)}, "", "sealing ring 62.5 mm across"},
		{card.Filter{}, "", ""},
	} {
		c := plantest.Sample(t, "tessaly-corda-570")
		f := &c.Filters[0]
		f.Thread, f.Ring, f.Height, f.OwnNumber = tt.filter.Thread, tt.filter.Ring, tt.filter.Height, tt.filter.OwnNumber
		for i := range c.Bolts {
			if c.Bolts[i].Holds == f.ID {
				c.Bolts[i].Thread = tt.bolt
			}
		}
		p, list := plantest.Made(c, plan.Bench{})
		if p == nil {
			t.Fatalf("%+v: %v", tt.filter, list)
		}
		at := slices.IndexFunc(p.Parts, func(i plan.Item) bool { return i.Word == "part.filter-spin-on" })
		var facts []string
		for _, fact := range p.Parts[at].Against {
			facts = append(facts, plantest.Text(fact, p.Parts[at].Values))
		}
		if got := strings.Join(facts, " · "); got != tt.want {
			t.Errorf("%+v, bolt %q: held against %q, want %q", tt.filter, tt.bolt, got, tt.want)
		}
		if gap := slices.ContainsFunc(p.Gaps, func(g plan.Gap) bool { return g.Word == "gap.filter" }); gap != (tt.want == "") {
			t.Errorf("%+v: a gap: %v", tt.filter, gap)
		}
	}
}

// Of how a level is read, what the card doesn't know is named, and nothing that it knows:
// every sample, with each of device, state and stance taken from it in turn.
func TestGaps_LevelNamesWhatIsNotKnown(t *testing.T) {
	looked := 0
	for name := range specs.Cards() {
		for lacks := range 8 {
			c := plantest.Sample(t, strings.TrimSuffix(name, ".json"))
			l := &c.Circuits[0].Level
			if l.Device == card.Gaugeless || l.Device == "" || l.State == "" || l.Stance == "" {
				continue
			}
			device, state, stance := lacks&1 != 0, lacks&2 != 0, lacks&4 != 0
			if device {
				l.Device = ""
			}
			if state {
				l.State = ""
			}
			if stance {
				l.Stance = ""
			}
			p, list := plantest.Made(c, plan.Bench{})
			if p == nil {
				t.Fatalf("%s without %03b: %v", name, lacks, list)
			}
			looked++
			role := "@role." + string(c.Circuits[0].Role)
			want := map[string]bool{
				"gap.level":       device || state && stance,
				"gap.level-state": !device && state && !stance,
				"gap.stance":      !device && !state && stance,
			}
			for gap, due := range want {
				if got := hasGap(p, gap, role, ""); got != due {
					t.Errorf("%s without %03b: %s %v, want %v: %v", name, lacks, gap, got, due, p.Gaps)
				}
			}
		}
	}
	if looked < 80 {
		t.Errorf("only %d cards looked at", looked)
	}
}
