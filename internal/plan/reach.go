package plan

import "tidysump/internal/card"

// reach adds to the day what is in front of what comes off today, since nothing else
// lets anybody at it: a cover or a panel, a strainer, and a filter, which is changed
// then though the bench would keep it. What would let out an oil that is not done today
// stays; nor is a filler or a level screw in anybody's way.
func (p *planner) reach() {
	for more := !p.bench.GetHome; more; {
		more = false
		for i := range p.card.Bolts {
			b := &p.card.Bolts[i]
			if front := p.card.Bolt(b.Behind); p.opened(b) || p.turned(b) && front != nil && front.Purpose == card.Panel {
				more = p.reachOne(b.Behind) || more
			}
		}
		for _, f := range p.filters {
			more = p.reachOne(f.Behind) || more
		}
		for _, s := range p.strainers {
			more = p.reachOne(s.Behind) || more
		}
	}
}

// reachOne adds one thing by its id, and reports whether it was not of the day yet.
func (p *planner) reachOne(id string) bool {
	if id == "" {
		return false
	}
	of := id
	if b := p.card.Bolt(id); b != nil {
		of = b.Holds
		if b.Purpose == card.Panel && !p.turned(b) || p.isCover(b) && !p.opened(b) {
			p.inFront[b.ID] = true
			return true
		}
	}
	for i := range p.card.Filters {
		if f := &p.card.Filters[i]; f.ID == of && p.doing(f.Circuit) && !p.changing(of) {
			p.filters = append(p.filters, f)
			p.offered(of)
			return true
		}
	}
	for i := range p.card.Strain {
		if s := &p.card.Strain[i]; s.ID == of && p.doing(s.Circuit) && !p.cleaning(of) {
			p.strainers = append(p.strainers, s)
			p.offered(of)
			return true
		}
	}
	return false
}

// isCover reports whether a fastener may come off for what is behind it alone.
func (d *day) isCover(b *card.Bolt) bool {
	return !b.Drains && b.Holds == "" && (b.Purpose == card.FilterCover || b.Purpose == card.StrainerCap || b.Purpose == card.FilterCanned || b.Purpose == card.FilterClosed)
}

// offered marks what the bench may leave as done today.
func (p *planner) offered(id string) {
	for i := range p.plan.Also {
		if a := &p.plan.Also[i]; a.Values["id"] == id {
			a.Count = 1
		}
	}
}
