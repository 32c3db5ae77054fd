// Package plan says from a card and a bench what is needed for an oil change and
// what is to be done, step by step:
//
//	plan(card, bench) -> plan    pure
//
// It holds no sentence: steps, cautions and gaps name entries of the word
// catalogue.
package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Plan is all that a person needs to know before the first bolt turns, and the
// steps of the job.
type Plan struct {
	CardID   string
	Name     string // make and model
	Years    string // "2014–2021"; "" where the card doesn't say
	Invented bool
	Plate    []PlateFigure // until LayPlate there is nothing on it
	Oils     []Oil
	Bolts    []BoltSheet
	Parts    []Item
	Tools    []Item
	Steps    []Step
	Gaps     []Gap
	Also     []Item // cleaned at some changes only; Count is 1 for those of today
	// MayKeepFilter: there is a filter that is changed unless the bench keeps it.
	MayKeepFilter bool
	// FilterNth: of so many oil changes the card asks for a new filter at one; 0 where
	// it is each, or nobody knows.
	FilterNth int
	Findings  []finding.Finding

	day *day
}

// Members names the plan's members.
func (p *Plan) Members(m *wire.Members) {
	m.String("card", &p.CardID, wire.Required)
	m.String("name", &p.Name, wire.Required)
	m.String("years", &p.Years)
	m.Bool("invented", &p.Invented)
	wire.List(m, "plate", &p.Plate)
	wire.List(m, "oils", &p.Oils)
	wire.List(m, "bolts", &p.Bolts)
	wire.List(m, "parts", &p.Parts)
	wire.List(m, "tools", &p.Tools)
	wire.List(m, "steps", &p.Steps)
	wire.List(m, "gaps", &p.Gaps)
	wire.List(m, "also", &p.Also)
	m.Bool("mayKeepFilter", &p.MayKeepFilter)
	m.Int("filterNth", &p.FilterNth)
	wire.Findings(m, "findings", &p.Findings)
}

// day is what is done today, as it follows from the card and the bench.
type day struct {
	card      *card.Card // with a fastener for whatever comes off: see withHolders
	bench     *Bench
	print     shown.Printer
	circuits  []*card.Circuit  // done today
	filters   []*card.Filter   // changed today
	strainers []*card.Strainer // cleaned today
	inFront   map[string]bool  // ids of the fasteners that come off only because they are in front of others
	// The air expected in °C; NaN when not known.
	coldest, hottest float64
}

// planner makes the parts of a plan, one after the other.
type planner struct {
	*day
	plan  *Plan
	stage Stage // of the steps being made
	// What was put so far: off and on again, filters and strainers by their ids.
	off, on map[string]bool
	panels  []*card.Bolt // that are off, in their order
}

// Make makes the plan of a card on a bench. The findings are those of the bench,
// with places below "/bench"; when one of them refuses there is no plan.
func Make(checked *card.Checked, b Bench) (*Plan, []finding.Finding) {
	p, list := begin(checked, b)
	if p == nil {
		return nil, list
	}
	return p.plan, nil
}

// begin makes a plan, and gives who made it.
func begin(checked *card.Checked, b Bench) (*planner, []finding.Finding) {
	c := checked.Card()
	if list := b.check(c); finding.Refused(list) {
		return nil, finding.Below("/bench", list)
	}
	p := &planner{
		off: map[string]bool{}, on: map[string]bool{},
		day:  &day{card: withHolders(c), bench: &b, inFront: map[string]bool{}, print: shown.Printer{System: b.System, Sources: c.Sources}},
		plan: &Plan{CardID: c.ID, Name: c.Make + " " + c.Model, Years: years(c), Invented: c.Invented, Findings: checked.Doubts()},
	}
	p.plan.day = p.day
	p.air()
	p.choose()
	p.reach()
	p.oils()
	p.bolts()
	p.parts()
	p.sealGaps()
	p.tellGapsApart()
	p.sequence()
	p.shorten()
	p.notes()
	p.tools()
	return p, nil
}

// choose settles which circuits, filters and strainers are done today.
func (p *planner) choose() {
	for i := range p.card.Circuits {
		c := &p.card.Circuits[i]
		if p.chosen(c) && (hasGauge(c) || !p.bench.GetHome) { // else nobody can tell what is missing
			p.circuits = append(p.circuits, c)
		}
	}
	if p.bench.GetHome {
		return
	}
	for i := range p.card.Filters {
		f := &p.card.Filters[i]
		p.plan.MayKeepFilter = p.plan.MayKeepFilter || f.Kind != card.Centrifugal
		due := p.doing(f.Circuit) && !p.bench.KeepFilter
		nth := p.card.Nth(f.EveryNth, f.Interval)
		if f.Kind != card.Centrifugal && nth > 1 && (p.plan.FilterNth == 0 || nth < p.plan.FilterNth) {
			p.plan.FilterNth = nth
		}
		if f.Kind == card.Centrifugal {
			due = p.also(nth, f.Circuit, f.ID, "also.centrifugal", f.Place)
		}
		if due {
			p.filters = append(p.filters, f)
		}
	}
	for i := range p.card.Strain {
		s := &p.card.Strain[i]
		nth := p.card.Nth(s.EveryNth, s.Interval)
		for n := range p.card.Bolts {
			if b := &p.card.Bolts[n]; b.Holds == s.ID && b.Drains {
				nth = 1 // it comes out with the drain, whatever the card says
			}
		}
		if p.also(nth, s.Circuit, s.ID, "also.strainer", s.Place) {
			p.strainers = append(p.strainers, s)
		}
	}
}

func (d *day) chosen(c *card.Circuit) bool {
	if len(d.bench.Circuits) == 0 {
		return d.card.Nth(c.EveryNth, c.Interval) <= 1
	}
	for _, id := range d.bench.Circuits {
		if id == c.ID {
			return true
		}
	}
	return false
}

// doing reports whether the circuit of that id is done today.
func (d *day) doing(circuit string) bool {
	for _, c := range d.circuits {
		if c.ID == circuit {
			return true
		}
	}
	return false
}

// volume gives the figure of the volume due today: with the filter if it is
// changed, and the other one only when the filter stays.
func (d *day) volume(c *card.Circuit) *card.Figure {
	if d.filterChanged(c.ID) {
		return c.WithFilt
	}
	return c.OilOnly
}

func (d *day) filterChanged(circuit string) bool {
	for _, f := range d.filters {
		if f.Circuit == circuit && f.Kind != card.Centrifugal {
			return true
		}
	}
	return false
}

// also reports whether a strainer or centrifugal filter of a circuit is cleaned
// today. What is not due at each change is offered, and done if the bench says so.
func (p *planner) also(nth int, circuit, id, word, place string) bool {
	if !p.doing(circuit) || nth <= 1 {
		return p.doing(circuit)
	}
	i := NewItem(0, word, "id", id, "place", orWord(place, "unknown.place"))
	for _, a := range p.bench.Also {
		if a == id {
			i.Count = 1
		}
	}
	p.plan.Also = append(p.plan.Also, i)
	return i.Count > 0
}

// What a job asks of its plan, besides what is written of it.

// Card is the card of the plan, with a fastener for each filter and strainer that
// none on it holds.
func (p *Plan) Card() *card.Card { return p.day.card }

// Circuits are those whose oil is changed today.
func (p *Plan) Circuits() []*card.Circuit { return p.day.circuits }

// Volume is the card's figure of a circuit's volume due today: with the filter if
// that is changed.
func (p *Plan) Volume(c *card.Circuit) *card.Figure { return p.day.volume(c) }

// Taken is a circuit's volume due today, as somebody would type it who takes it over from
// the card; empty where the card doesn't know it, gives a range or only estimates it, and
// where no oil is changed.
func (p *Plan) Taken(c *card.Circuit) string {
	if p.GetHome() {
		return ""
	}
	return p.day.taken("due", p.day.volume(c))
}

// Printer prints figures in the units of the plan's bench.
func (p *Plan) Printer() *shown.Printer { return &p.day.print }

// Step gives the step of that id, nil when there is none.
func (p *Plan) Step(id string) *Step {
	for i := range p.Steps {
		if p.Steps[i].ID == id {
			return &p.Steps[i]
		}
	}
	return nil
}
