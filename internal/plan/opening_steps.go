package plan

import (
	"tidysump/internal/card"
)

// drain empties one circuit after the other. Where there are several, each oil
// is looked at and measured before the next one joins it.
func (p *planner) drain() {
	for _, c := range p.circuits {
		p.drainOne(c)
		if len(p.circuits) > 1 {
			p.onCircuit("look-oil", c)
			p.onCircuit("measure", c)
		}
	}
}

func (p *planner) drainOne(c *card.Circuit) {
	word := "tray"
	if _, known := p.tray(c); !known {
		word = "tray-unknown"
	}
	p.onCircuit(word, c)
	for _, b := range p.openings() {
		if b.Circuit == c.ID {
			p.open(b)
		}
	}
	p.onCircuit("run-out", c)
	for _, s := range p.strainers {
		if s.Circuit == c.ID {
			for _, b := range p.holding(s.ID) {
				if !b.Drains || !p.doing(b.Circuit) { // else open already
					p.open(b)
				}
			}
			p.onStrainer("strainer-out", s)
		}
	}
	for _, f := range p.filters {
		if f.Circuit == c.ID {
			word := "filter-off-" + string(f.Kind)
			if f.Kind == card.Cartridge && p.coverScrews(f) < 2 {
				word = "filter-off-cap" // a cap or bowl that one thing holds
			}
			p.onFilter(word, f)
			p.onFilter("old-ring", f)
		}
	}
}

func (d *day) coverScrews(f *card.Filter) int {
	n := 0
	for _, b := range d.holding(f.ID) {
		if b.Purpose == card.FilterCover {
			n += b.Number()
		}
	}
	return n
}

func (p *planner) open(b *card.Bolt) {
	word := "open-drain-plug"
	switch {
	case b.Purpose == card.StrainerCap && b.Number() > 1:
		word = "open-strainer-cover"
	case b.Purpose == card.StrainerCap:
		word = "open-strainer-cap"
	}
	p.onBolt(word, b)
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
		p.each("measure", always)
	}
	p.plain("decide")
}

func (p *planner) close() {
	p.plain("clean-seats")
	for _, s := range p.strainers {
		p.onStrainer("strainer-in", s)
		p.tighten(p.holding(s.ID))
	}
	for _, b := range p.openings() {
		if !p.holds(b) {
			p.tighten([]*card.Bolt{b})
		}
	}
	for _, f := range p.filters {
		p.onFilter("prepare-"+string(f.Kind), f)
		p.tighten(p.holding(f.ID))
	}
	p.plain("dry-base", "count")
}

func (p *planner) tighten(list []*card.Bolt) {
	for _, b := range list {
		switch {
		case b.Purpose == card.FilterCanned:
			p.onBolt("filter-on", b)
		case b.Number() > 1 && b.Order != "":
			p.onBolt("tighten-in-order", b)
		case b.Number() > 1:
			p.onBolt("tighten-several", b)
		default:
			p.onBolt("tighten", b)
		}
	}
}
