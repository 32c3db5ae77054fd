package job

import "tidysump/internal/card"

// turned reports whether a fastener is opened and closed today.
func (p *planner) turned(b *card.Bolt) bool {
	switch b.Purpose {
	case card.LeaveAlone:
		return false
	case card.FilterCover, card.FilterCanned:
		return p.changing(b.Of)
	}
	return p.doing(b.Circuit) || p.holds(b)
}

// left reports whether a fastener must be left alone today: it never belongs
// to an oil change, or it lets out an oil that is not done today.
func (p *planner) left(b *card.Bolt) bool {
	return b.Purpose == card.LeaveAlone || b.Drains && !p.turned(b)
}

// opens reports whether a fastener lets out an oil that is done today.
func (p *planner) opens(b *card.Bolt) bool { return b.Drains && p.turned(b) }

// opened reports whether a fastener was opened in the drain stage.
func (p *planner) opened(b *card.Bolt) bool { return p.turned(b) && (b.Drains || p.holds(b)) }

// holds reports whether a fastener holds a filter or strainer that comes out
// today; it is then closed together with it.
func (p *planner) holds(b *card.Bolt) bool {
	for _, s := range p.strain {
		if s.ID == b.Of {
			return true
		}
	}
	return p.changing(b.Of)
}

// wrenched reports whether a fastener is tightened with a tool at all.
func wrenched(b *card.Bolt) bool { return b.Drive != "hand" && b.Purpose != card.LeaveAlone }

// changing reports whether the filter of that id is changed today.
func (p *planner) changing(filter string) bool {
	for _, f := range p.filters {
		if f.ID == filter {
			return true
		}
	}
	return false
}

// openings lists the fasteners that let out the oils of the day.
func (p *planner) openings() []*card.Bolt { return p.boltsWhere(p.opens) }

// holding lists the fasteners of the day that hold a filter or strainer.
func (p *planner) holding(id string) []*card.Bolt {
	return p.boltsWhere(func(b *card.Bolt) bool { return b.Of == id && p.turned(b) })
}

func (p *planner) boltsWhere(want func(*card.Bolt) bool) []*card.Bolt {
	var list []*card.Bolt
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; want(b) {
			list = append(list, b)
		}
	}
	return list
}
