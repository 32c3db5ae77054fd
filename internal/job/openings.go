package job

import "tidysump/internal/card"

// turned reports whether a fastener is opened and closed today.
func (p *planner) turned(b *card.Bolt) bool {
	switch b.Purpose {
	case card.LeaveAlone:
		return false
	case card.FilterCover, card.FilterCanned:
		return p.changing(b.Of)
	case card.Panel:
		return b.Circuit == "" || p.doing(b.Circuit)
	case card.StrainerCap:
		if b.Of != "" && !b.Drains {
			return p.holds(b)
		}
	}
	return p.doing(b.Circuit) || p.holds(b)
}

// left reports whether a fastener must be left alone today: it never belongs
// to an oil change, or it lets out an oil that is not done today.
func (p *planner) left(b *card.Bolt) bool {
	return b.Purpose == card.LeaveAlone || b.Purpose != card.Panel && b.Drains && !p.turned(b)
}

// opens reports whether a fastener lets out an oil that is done today.
func (p *planner) opens(b *card.Bolt) bool {
	return b.Drains && b.Purpose != card.Panel && p.turned(b)
}

// opened reports whether a fastener was opened in the drain stage.
func (p *planner) opened(b *card.Bolt) bool {
	return p.turned(b) && b.Purpose != card.Panel && (b.Drains || p.holds(b))
}

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
	return p.boltsWhere(func(b *card.Bolt) bool { return b.Of == id && p.opened(b) })
}

// fills reports whether an oil of the day is poured in here: through its filler
// cap, or else through the level screw.
func (p *planner) fills(b *card.Bolt) bool {
	if !p.doing(b.Circuit) {
		return false
	}
	return b.Purpose == card.FillerCap || b.Purpose == card.LevelScrew && !p.hasFillerCap(b.Circuit)
}

func (p *planner) hasFillerCap(circuit string) bool {
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Purpose == card.FillerCap && b.Circuit == circuit {
			return true
		}
	}
	return false
}

// byHand reports whether a filler cap is closed without a tool: those of which
// the card doesn't tell are taken so too.
func byHand(b *card.Bolt) bool { return b.Drive == "" || b.Drive == "hand" || b.Drive == "strap" }

func (p *planner) boltsWhere(want func(*card.Bolt) bool) []*card.Bolt {
	var list []*card.Bolt
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; want(b) {
			list = append(list, b)
		}
	}
	return list
}

// named reports whether a fastener has to be told from others before the job:
// what lets oil out, what holds a strainer, and what the level is read through.
func (p *planner) named(b *card.Bolt) bool {
	return p.opens(b) || p.turned(b) && (b.Purpose == card.StrainerCap || b.Purpose == card.LevelScrew)
}
