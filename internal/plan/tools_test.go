package plan_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// nouns are what a sentence calls the tools: one that a step names is on the list, and
// one that is on the list is named by a step.
var nouns = []struct {
	name  *regexp.Regexp
	tools []string // any of them
}{
	{regexp.MustCompile(`\bin a bag\b`), []string{"tool.filter-bag"}},
	{regexp.MustCompile(`\b[Tt]ray\b`), []string{"tool.tray", "tool.tray-unknown"}},
	{regexp.MustCompile(`\bjug\b`), []string{"tool.jug", "tool.jug-unknown"}},
	{regexp.MustCompile(`\bfunnel\b`), []string{"tool.funnel"}},
	{regexp.MustCompile(`\bsyringe\b`), []string{"tool.syringe"}},
	{regexp.MustCompile(`\b(its|closed) can\b`), []string{"tool.can"}},
	{regexp.MustCompile(`\bgloves\b`), []string{"tool.gloves"}},
	{regexp.MustCompile(`\bglasses\b`), []string{"tool.glasses"}},
	{regexp.MustCompile(`\b[Cc]over what\b|\bCount the covers\b`), []string{"tool.covers"}},
	{regexp.MustCompile(`\bfoil\b`), []string{"tool.foil"}},
	{regexp.MustCompile(`\bthermometer\b`), []string{"tool.thermometer"}},
	{regexp.MustCompile(`\b[Bb]rush\b`), []string{"tool.brush"}},
	{regexp.MustCompile(`\b[Cc]leaner\b`), []string{"tool.cleaner"}},
	{regexp.MustCompile(`\b[Cc]leaning solvent\b|\bdamp with solvent\b`), []string{"tool.solvent"}},
	{regexp.MustCompile(`\b[Ss]crape\b`), []string{"tool.scraper"}},
	{regexp.MustCompile(`\brags?\b`), []string{"tool.rags"}},
	{regexp.MustCompile(`\babsorbent\b`), []string{"tool.absorbent"}},
	{regexp.MustCompile(`\bchalk\b`), []string{"tool.chalk"}},
	{regexp.MustCompile(`\bpaint pen\b`), []string{"tool.paint-pen"}},
	{regexp.MustCompile(`\bwhite paper\b`), []string{"tool.white-paper"}},
	{regexp.MustCompile(`\ba magnet\b`), []string{"tool.magnet"}},
	{regexp.MustCompile(`\bcutter\b`), []string{"tool.filter-cutter"}},
	{regexp.MustCompile(`\bknife\b`), []string{"tool.knife"}},
	{regexp.MustCompile(`\bLamp on\b|\b[Ss]hine (a|the) (work )?light\b`), []string{"tool.lamp"}},
	{regexp.MustCompile(`\bUse the stand\b`), []string{"tool.stand"}},
	{regexp.MustCompile(`\b[Cc]hock\b`), []string{"tool.chock"}},
	{regexp.MustCompile(`\bstrap the handlebar\b`), []string{"tool.strap"}},
}

// named are sentences of a plan: what its steps say is done, and the cautions before it.
// Where a card's own words stand, the placeholder does.
func named(p *plan.Plan) []string {
	var list []string
	for _, s := range p.Steps {
		values := map[string]string{}
		for name, value := range s.Values {
			if strings.HasPrefix(value, "@") {
				values[name] = value
			}
		}
		list = append(list, plantest.Text("@"+s.Word+".do", values))
		for _, w := range s.Warns {
			list = append(list, plantest.Text("@"+w.Word, nil), plantest.Text("@"+w.Word+".more", nil))
		}
	}
	return list
}

// never are sentences that name a tool which is not to be used.
var never = []string{"caution.never-ground"}

func TestTools_AreThoseThatTheStepsName(t *testing.T) {
	check := func(t plantest.Reporter, p *plan.Plan) {
		t.Helper()
		says := named(p)
		for _, word := range never {
			says = slices.DeleteFunc(says, func(s string) bool { return s == plantest.Text("@"+word, nil) })
		}
		for _, noun := range nouns {
			at := slices.IndexFunc(says, noun.name.MatchString)
			listed := slices.ContainsFunc(p.Tools, func(i plan.Item) bool { return slices.Contains(noun.tools, i.Word) })
			if at >= 0 && !listed {
				t.Errorf("%v is not on the list of tools, and a step says %q", noun.tools, says[at])
			}
			if at < 0 && listed {
				t.Errorf("%v is on the list of tools, and no step says so", noun.tools)
			}
		}
	}
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) { check(t, p) })
	plantest.Samples(t, func(t *testing.T, _ *card.Card, _ plan.Bench, p *plan.Plan) { check(t, p) })
}

// What a fastener is turned with follows from how it is driven and how it gets tight.
func TestTools_OfTheFasteners(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		has := func(word, size string) bool {
			return slices.ContainsFunc(p.Tools, func(i plan.Item) bool { return i.Word == word && (size == "" || i.Values["size"] == size) })
		}
		turned := map[string]bool{}
		for _, s := range p.Steps {
			for _, id := range append(s.Opens, s.Closes...) {
				turned[id] = true
			}
		}
		for i := range c.Bolts {
			b := &c.Bolts[i]
			size, known := b.Size.Amount()
			if !turned[b.ID] || !known || b.Purpose == card.FilterCanned {
				continue
			}
			text := size.Print(size.Unit)
			switch {
			case b.Drive == card.HexagonKey && b.Torque.Known() && !has("tool.hexagon-bit", text):
				t.Errorf("%s has a torque and an inside hexagon: no bit of %s for the torque wrench in %v", b.ID, text, p.Tools)
			case b.Drive == card.Hexagon && !has("tool.hexagon", text):
				t.Errorf("%s has an outside hexagon: no socket of %s in %v", b.ID, text, p.Tools)
			}
		}
		sockets := slices.ContainsFunc(p.Tools, func(i plan.Item) bool {
			return slices.Contains([]string{"tool.hexagon", "tool.hexagon-bit", "tool.six-lobe", "tool.size-unknown", "tool.filter-cup"}, i.Word)
		})
		if sockets != has("tool.ratchet", "") {
			t.Errorf("sockets or bits: %v, a ratchet: %v, in %v", sockets, !sockets, p.Tools)
		}
		seen := map[string]bool{}
		for _, i := range p.Tools {
			if text := plantest.Text("@"+i.Word, i.Values); seen[text] {
				t.Errorf("%q is listed twice", text)
			} else {
				seen[text] = true
			}
		}
	})
}

// The jug is as fine as the least that is measured with it.
func TestTools_JugIsFineEnough(t *testing.T) {
	figure := func(litres float64) *card.Figure {
		return &card.Figure{Value: litres, Unit: "L", Standing: card.Measured, Method: "by hand"}
	}
	for _, tt := range []struct {
		due    float64
		device card.Device
		bench  plan.Bench
		want   string
	}{
		{2.5, card.Window, plan.Bench{}, "50 mL"},    // 0.31 L is kept back
		{4, card.Window, plan.Bench{}, "100 mL"},     // 0.5 L
		{0.9, card.Window, plan.Bench{}, "20 mL"},    // 0.11 L
		{0.9, card.Gaugeless, plan.Bench{}, "50 mL"}, // all at once
		{0.02, card.Gaugeless, plan.Bench{}, "5 mL"},
		{4, card.Window, plan.Bench{System: "us"}, "2 US fl oz"},
		{4, card.Window, plan.Bench{System: "imperial"}, "100 mL"},
	} {
		c := plantest.Sample(t, "tessaly-corda-570")
		c.Circuits[0].WithFilt, c.Circuits[0].OilOnly, c.Circuits[0].Level.Device = figure(tt.due), nil, tt.device
		p, list := plantest.Made(c, tt.bench)
		if p == nil {
			t.Fatalf("%v: %v", tt, list)
		}
		at := slices.IndexFunc(p.Tools, func(i plan.Item) bool { return i.Word == "tool.jug" })
		if at < 0 || p.Tools[at].Values["marks"] != tt.want {
			t.Errorf("%v L read by %q, %+v: tools %v, want a jug with marks of %s", tt.due, tt.device, tt.bench, p.Tools[at:], tt.want)
		}
	}
}

// An oil that goes into a hole in the side is not poured through a funnel.
func TestTools_SideFillerTakesNoFunnel(t *testing.T) {
	for name, want := range map[string][2]bool{ // funnel, syringe
		"tessaly-corda-570":      {true, false},
		"quillane-vastro-1010":   {true, true},
		"brunnveld-halvar-940":   {true, true},
		"hallowmoor-drover-1360": {true, false}, // the primary case through its cover
	} {
		c := plantest.Sample(t, name)
		var all plan.Bench
		for i := range c.Circuits {
			all.Circuits = append(all.Circuits, c.Circuits[i].ID)
		}
		p, _ := plantest.Made(c, all)
		has := func(word string) bool {
			return slices.ContainsFunc(p.Tools, func(i plan.Item) bool { return i.Word == word })
		}
		if got := [2]bool{has("tool.funnel"), has("tool.syringe")}; got != want {
			t.Errorf("%s: funnel and syringe %v, want %v", name, got, want)
		}
	}
}
