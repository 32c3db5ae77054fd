package plan

import (
	"tidysump/internal/card"
)

// drain empties one circuit after the other. Where there are several, each oil
// is looked at, measured and put away before the next one joins it.
func (p *planner) drain() {
	p.secure()
	for _, c := range p.circuits {
		p.drainOne(c)
		if len(p.circuits) > 1 {
			p.onCircuit("look-oil", c)
			p.measured(c)
		}
	}
}

// measured puts the measuring of an old oil, and puts it away at once.
func (p *planner) measured(c *card.Circuit) {
	p.onCircuit("measure", c)
	p.onCircuit("close-can", c)
}

func (p *planner) drainOne(c *card.Circuit) {
	word := "tray"
	if _, known := p.tray(c); !known {
		word = "tray-unknown"
	}
	p.onCircuit(word, c)
	for _, b := range p.openings() {
		if p.home(b) == c.ID {
			p.takeOff(b)
		}
	}
	p.onCircuit("run-out", c)
	if p.bench.Helper && !p.atRoadside() {
		p.onCircuit("lean", c)
	}
	for _, s := range p.strainers {
		if s.Circuit == c.ID {
			p.strainerOut(s)
		}
	}
	for _, f := range p.filters {
		if f.Circuit == c.ID {
			p.filterOff(f)
		}
	}
}

// first reports whether that is the first time that a thing is asked of by its id,
// and notes it.
func first(seen map[string]bool, id string) bool {
	was := seen[id]
	seen[id] = true
	return !was
}

// takeOff opens a fastener, after whatever is in front of it.
func (p *planner) takeOff(b *card.Bolt) {
	if !first(p.off, "bolt "+b.ID) {
		return
	}
	for _, id := range p.inFrontOf(b.ID) {
		p.front(id)
	}
	word := "cover-off"
	switch {
	case b.Purpose == card.StrainerCap && b.Number() > 1:
		word = "open-strainer-cover"
	case b.Purpose == card.StrainerCap:
		word = "open-strainer-cap"
	case b.Drains:
		word = "open-drain-plug"
	}
	p.onBolt(word, b)
}

// front takes off what is in front of something that comes off today: a fastener, a
// filter or a strainer. A filter comes off with what is right in front of it.
func (p *planner) front(id string) {
	b := p.card.Bolt(id)
	of := id
	if b != nil && p.opened(b) && !p.apart(b) && p.changing(b.Holds) {
		of = b.Holds
	}
	for _, s := range p.strainers {
		if s.ID == of {
			p.strainerOut(s)
			return
		}
	}
	for _, f := range p.filters {
		if f.ID == of {
			p.filterOff(f)
			return
		}
	}
	if b != nil && p.opened(b) {
		p.takeOff(b)
	}
}

func (p *planner) strainerOut(s *card.Strainer) {
	if !first(p.off, s.ID) {
		return
	}
	p.front(s.Behind)
	for _, b := range p.holding(s.ID) {
		p.takeOff(b)
	}
	p.onStrainer("strainer-out", s)
}

func (p *planner) filterOff(f *card.Filter) {
	if !first(p.off, f.ID) {
		return
	}
	p.front(f.Behind)
	for _, b := range p.holding(f.ID) {
		if p.apart(b) {
			p.takeOff(b)
		} else {
			p.front(b.Behind)
		}
	}
	word := "filter-off-" + string(f.Kind)
	if f.Kind == card.Cartridge && p.coverScrews(f) < 2 {
		word = "filter-off-cap" // a cap or bowl that one thing holds
	}
	p.onFilter(word, f)
	p.oldSeals(f)
}

// oldSeals puts a look for what sealed a filter: rings, a gasket or both. Where the card
// knows of neither, a rotor's covers seal with gaskets, and any other filter with rings.
func (p *planner) oldSeals(f *card.Filter) {
	seals := append([]card.Seal(nil), f.Seals...)
	for _, b := range p.holding(f.ID) {
		if b.Seal != nil {
			seals = append(seals, *b.Seal)
		}
	}
	rings, gaskets := f.Kind == card.SpinOn || f.Kind == card.KindUnknown, false
	for i := range seals {
		kind := seals[i].Kind
		rings = rings || kind == card.ORing || kind == card.SquareRing
		gaskets = gaskets || kind == card.Paper
	}
	gaskets = gaskets || f.Kind == card.Centrifugal && !rings
	if rings || !gaskets {
		p.onFilter("old-ring", f)
	}
	if gaskets {
		p.onFilter("old-gasket", f)
	}
}

// coverScrews is how many screws hold the cover right in front of a filter.
func (d *day) coverScrews(f *card.Filter) int {
	n := 0
	for _, b := range d.holding(f.ID) {
		if b.Purpose == card.FilterCover && !d.apart(b) {
			n += b.Number()
		}
	}
	return n
}

func (p *planner) look() {
	if len(p.circuits) == 1 {
		p.each("look-oil", always)
	}
	for _, b := range p.openings() {
		if b.Magnet {
			p.onBolt("look-magnet", b)
		}
	}
	for _, s := range p.strainers {
		p.onStrainer("look-strainer", s)
	}
	for _, f := range p.filters {
		word := "look-filter"
		if f.Kind == card.Centrifugal {
			word = "look-rotor"
		}
		p.onFilter(word, f)
	}
	if len(p.circuits) == 1 {
		p.measured(p.circuits[0])
	}
	p.plain("decide")
}

func (p *planner) close() {
	p.plain("clean-seats")
	for _, s := range p.strainers {
		p.strainerIn(s)
	}
	for _, b := range p.boltsWhere(p.opened) {
		if !p.changing(b.Holds) {
			p.putOn(b)
		}
	}
	for _, f := range p.filters {
		p.filterOn(f)
	}
	for _, b := range p.boltsWhere(p.opened) {
		p.putOn(b)
	}
	p.plain("dry-base", "count")
}

// behind puts back what is right behind a thing before that goes on.
func (p *planner) behind(id string) {
	for _, s := range p.strainers {
		if s.Behind == id {
			p.strainerIn(s)
		}
	}
	for _, f := range p.filters {
		if f.Behind == id {
			p.filterOn(f)
		}
	}
	for _, b := range p.boltsWhere(p.opened) {
		for _, front := range p.inFrontOf(b.ID) {
			if front == id {
				p.putOn(b)
			}
		}
	}
}

// putOn closes a fastener, after what it holds and whatever is behind it.
func (p *planner) putOn(b *card.Bolt) {
	for _, s := range p.strainers {
		if s.ID == b.Holds {
			p.strainerIn(s)
		}
	}
	for _, f := range p.filters {
		if f.ID == b.Holds {
			p.filterOn(f)
		}
	}
	if first(p.on, "bolt "+b.ID) {
		p.behind(b.ID)
		p.tighten(b)
	}
}

func (p *planner) strainerIn(s *card.Strainer) {
	if first(p.on, s.ID) {
		p.behind(s.ID)
		p.onStrainer("strainer-in", s)
		p.holdersOn(s.ID)
	}
}

func (p *planner) filterOn(f *card.Filter) {
	if first(p.on, f.ID) {
		p.behind(f.ID)
		p.onFilter("prepare-"+string(f.Kind), f)
		p.holdersOn(f.ID)
	}
}

// holdersOn closes what holds a thing, but for an outer cover: something may be between.
func (p *planner) holdersOn(id string) {
	for _, b := range p.holding(id) {
		if !p.outer(b) {
			p.putOn(b)
		}
	}
}

func (p *planner) tighten(b *card.Bolt) {
	switch {
	case b.Purpose == card.FilterCanned:
		p.onBolt("filter-on-"+string(measureOf(b)), b)
	case b.Purpose == card.FilterClosed:
		p.onBolt("filter-close", b)
	case b.Number() > 1 && b.Order != "":
		p.onBolt("tighten-in-order", b)
	case b.Number() > 1:
		p.onBolt("tighten-several", b)
	default:
		p.onBolt("tighten", b)
	}
}
