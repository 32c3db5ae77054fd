package manual

// findOrders reads "the first … the second", "the former … the latter" in a sentence that
// names no part as the two parts that were named last before it: "Undo the plug of the frame,
// then that of the crankcase. Tighten the first to 18 N·m, the second to 30 N·m."
func (p *page) findOrders() {
	var found []mention
	for n := range p.terms {
		one := &p.terms[n]
		if !one.has("ordinal.1") && !one.has("when.first") || one.to-one.from != 1 {
			continue
		}
		from, to := p.sentenceOf(one.from)
		var other *term
		for k := n + 1; k < len(p.terms) && p.terms[k].from < to; k++ {
			if t := &p.terms[k]; t.has("when.change") || t.has("amount.change") {
				other = nil
				break
			} else if t.has("ordinal.2") {
				other = t
			}
		}
		if other == nil || p.namesPart(from, to) {
			continue
		}
		if a, b := p.lastTwo(from); a != nil {
			found = append(found, mention{from: one.from, to: one.to, part: a.part, circuit: a.circuit, gear: a.gear},
				mention{from: other.from, to: other.to, part: b.part, circuit: b.circuit, gear: b.gear})
		}
	}
	if len(found) > 0 {
		p.mentions = append(p.mentions, found...)
		p.mentions = inOrder(p.mentions, func(m *mention) int { return m.from })
	}
}

// namesPart reports whether a part, an oil or another job's thing is named between two tokens.
func (p *page) namesPart(from, to int) bool {
	n := p.mentionFrom(from)
	return n < len(p.mentions) && p.mentions[n].from < to
}

// lastTwo gives the two parts that were named last before a token below its heading, in their
// order; nil where there are no two, or a third.
func (p *page) lastTwo(at int) (a, b *mention) {
	s := p.sections[p.places[at].section]
	for n := p.mentionFrom(at) - 1; n >= 0 && p.mentions[n].from >= s.from && p.mentions[n].from > at-mostNext; n-- {
		m := &p.mentions[n]
		switch same := func(o *mention) bool { return o.part == m.part && o.circuit == m.circuit }; {
		case m.part == "" || m.foreign || b != nil && same(b):
		case b == nil:
			b = m
		case a == nil:
			a = m
		case !same(a) && p.places[m.from].sentence == p.places[a.from].sentence:
			return nil, nil
		}
	}
	if a == nil {
		return nil, nil
	}
	return a, b
}
