package manual

import "tidysump/internal/quantity"

// dropBurnt takes out what a page tells of the oil that an engine burns: an amount and how far it
// lasts are no filling and no interval. "Up to 0.4 L of oil in 1,000 km", "0,4 l auf 1.000 km".
func (p *page) dropBurnt() {
	kept := p.facts[:0]
	for i := range p.facts {
		f := p.facts[i]
		if n := len(kept) - 1; n >= 0 && f.kind == string(quantity.Distance) && kept[n].kind == string(quantity.Volume) && p.lasts(kept[n].end(), f.from) {
			kept = kept[:n]
			continue
		}
		kept = append(kept, f)
	}
	p.facts, p.byToken = kept, nil
}

// mostLasts is how many words stand at most between an amount and how far it lasts.
const mostLasts = 4

// lasts reports whether a word right before a distance says that the amount before it lasts so far;
// nothing but oil is named between.
func (p *page) lasts(from, to int) bool {
	if from >= to || to-from > mostLasts || p.places[from-1].sentence != p.places[to].sentence || !p.senseAt(to-1, "lasts") {
		return false
	}
	for i := from; i < to-1; i++ {
		if t := &p.places[i]; t.kind != word || t.gap == wide || !t.function && !p.senseAt(i, "oil.any") && !p.senseAt(i, "oil.engine") {
			return false
		}
	}
	return true
}
