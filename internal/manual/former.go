package manual

import "slices"

// dropFormer takes the figures out that a page names as no longer right: "formerly 45 N·m", "the
// old figure of 45 N·m", "45 N·m no longer holds". They stay figures of the page, and of nothing.
func (p *page) dropFormer() {
	gone := map[int]bool{} // by their first token
	for n := range p.terms {
		t := &p.terms[n]
		switch {
		case t.has("former.before"): // the first figure behind it in its clause
			for i := range p.facts {
				if f := &p.facts[i]; f.from >= t.to {
					if p.places[f.from].clause == p.places[t.from].clause && f.from-t.to <= mostPhrase && !ofOil(f) {
						gone[f.from] = true
					}
					break
				}
			}
		case t.has("former.behind"): // the last figure before it in its sentence
			for i := len(p.facts) - 1; i >= 0; i-- {
				if f := &p.facts[i]; f.from < t.from {
					if p.places[f.from].sentence == p.places[t.from].sentence && t.from-f.end() <= mostPhrase && !ofOil(f) {
						gone[f.from] = true
					}
					break
				}
			}
		}
	}
	if len(gone) > 0 {
		p.facts = slices.DeleteFunc(p.facts, func(f fact) bool { return gone[f.from] })
		p.byToken = nil
	}
}
