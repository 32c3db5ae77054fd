// Package job plans an oil change from a card and a bench, and replays its
// events into its state.
//
//	plan(card, bench) -> plan        pure
//	replay(plan, events) -> state    pure
//
// It holds no sentence: steps, cautions and findings name entries of the word
// catalogue.
package job

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Plan is all that a person needs to know before the first bolt turns, and the
// steps of the job.
type Plan struct {
	CardID   string
	Name     string // make and model
	Invented bool
	Oils     []Oil
	Bolts    []BoltSheet
	Parts    []Item
	Tools    []Item
	Steps    []Step
	Gaps     []Gap
	Also     []Item // cleaned at some changes only; Count is 1 for those of today
	Findings []finding.Finding
}

// Members names the plan's members.
func (p *Plan) Members(m *wire.Members) {
	m.String("card", &p.CardID)
	m.String("name", &p.Name)
	m.Bool("invented", &p.Invented)
	wire.List(m, "oils", &p.Oils)
	wire.List(m, "bolts", &p.Bolts)
	wire.List(m, "parts", &p.Parts)
	wire.List(m, "tools", &p.Tools)
	wire.List(m, "steps", &p.Steps)
	wire.List(m, "gaps", &p.Gaps)
	wire.List(m, "also", &p.Also)
	wire.Findings(m, "findings", &p.Findings)
}

// planner holds what the parts of a plan are made from.
type planner struct {
	card     *card.Card
	bench    *Bench
	circuits []*card.Circuit // done today
	filters  []*card.Filter  // changed today
	strain   []*card.Strainer
	plan     *Plan
	stage    Stage
}

// Make makes the plan of a checked card on a bench. The findings are those of
// the bench; when one of them refuses there is no plan.
func Make(c *card.Card, b Bench) (*Plan, []finding.Finding) {
	p, list := prepare(c, b)
	if p == nil {
		return nil, list
	}
	return p.plan, nil
}

// prepare makes the plan and keeps what it was made from, for a replay.
func prepare(c *card.Card, b Bench) (*planner, []finding.Finding) {
	if list := b.check(c, "/bench"); finding.Refused(list) {
		return nil, list
	}
	p := &planner{card: withHolders(c), bench: &b, plan: &Plan{
		CardID: c.ID, Name: c.Make + " " + c.Model, Invented: c.Invented, Findings: card.Check(c)}}
	p.choose()
	p.oils()
	p.bolts()
	p.parts()
	p.tools()
	p.sequence()
	return p, nil
}

// choose settles which circuits, filters and strainers are done today.
func (p *planner) choose() {
	for i := range p.card.Circuits {
		c := &p.card.Circuits[i]
		if p.chosen(c) {
			p.circuits = append(p.circuits, c)
		}
	}
	for i := range p.card.Filters {
		f := &p.card.Filters[i]
		due := p.doing(f.Circuit) && !p.bench.KeepFilter
		if f.Kind == card.Centrifugal {
			due = p.also(f.EveryNth, f.Circuit, f.ID, "also.centrifugal", f.Place)
		}
		if due {
			p.filters = append(p.filters, f)
		}
	}
	for i := range p.card.Strain {
		s := &p.card.Strain[i]
		nth := s.EveryNth
		for n := range p.card.Bolts {
			if b := &p.card.Bolts[n]; b.Of == s.ID && b.Drains {
				nth = 1 // it comes out with the drain, whatever the card says
			}
		}
		if p.also(nth, s.Circuit, s.ID, "also.strainer", s.Place) {
			p.strain = append(p.strain, s)
		}
	}
}

func (p *planner) chosen(c *card.Circuit) bool {
	if len(p.bench.Circuits) == 0 {
		return c.EveryNth <= 1
	}
	for _, id := range p.bench.Circuits {
		if id == c.ID {
			return true
		}
	}
	return false
}

// doing reports whether the circuit of that id is done today.
func (p *planner) doing(circuit string) bool {
	for _, c := range p.circuits {
		if c.ID == circuit {
			return true
		}
	}
	return false
}

// volume gives the figure of the volume due today: with the filter if it is
// changed, and the other one only when the filter stays.
func (p *planner) volume(c *card.Circuit) *card.Figure {
	if p.filterChanged(c.ID) {
		return c.WithFilt
	}
	return c.OilOnly
}

func (p *planner) filterChanged(circuit string) bool {
	for _, f := range p.filters {
		if f.Circuit == circuit && f.Kind != card.Centrifugal {
			return true
		}
	}
	return false
}
