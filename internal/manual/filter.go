package manual

// filters reads what kind of filter there is and how often filter and strainer are changed.
func (r *readings) filters() {
	r.filterKind()
	for n := range r.terms {
		t := &r.terms[n]
		every, ok := t.begin("every.")
		if !ok || len(every) != 1 {
			continue
		}
		from, to := r.sentenceOf(t.from)
		isIt := func(m *mention) bool { return m.part == "filter" || m.part == "strainer" || m.foreign }
		before, after := r.near(t.from, from, to, isIt)
		m := before
		if m == nil {
			m = after
		}
		switch {
		case m != nil && !m.foreign:
			r.say(m.part+".every", every, min(m.from, t.from), max(m.to, t.to))
		case m == nil && r.about(from, to, "amount.with-filter"):
			r.say("filter.every", every, t.from, t.to)
		}
	}
}

// filterKind reads the kind of filter: what is screwed on by its own thread is a spin-on,
// whatever the page calls it.
func (r *readings) filterKind() {
	find := func(sense string) *term {
		for n := range r.terms {
			if t := &r.terms[n]; t.has(sense) && !r.foreignAt(t.from) {
				return t
			}
		}
		return nil
	}
	if t := find("part.filter-spin-on"); t != nil {
		r.say("filter.kind", "spin-on", t.from, t.to)
		return
	}
	for i := range r.list {
		if r.list[i].What == "bolt.filter.turn" {
			q := r.list[i].Quote
			for k := range r.places {
				if r.places[k].from >= q.From {
					from, _ := r.sentenceOf(k)
					r.say("filter.kind", "spin-on", from, r.tokenEnd(q.To))
					return
				}
			}
		}
	}
	if t := find("part.filter-centrifugal"); t != nil {
		r.say("filter.kind", "centrifugal", t.from, t.to)
		return
	}
	if t := find("part.filter-element"); t != nil {
		r.say("filter.kind", "cartridge", t.from, t.to)
	}
}

// tokenEnd gives the token behind the last that ends at a byte or before.
func (r *readings) tokenEnd(at int) int {
	n := 0
	for i := range r.places {
		if r.places[i].to <= at {
			n = i + 1
		}
	}
	return n
}

// foreignAt reports whether a token is of a mention of another job.
func (r *readings) foreignAt(at int) bool {
	n := r.mentionFrom(at+1) - 1
	return n >= 0 && r.mentions[n].to > at && r.mentions[n].foreign
}
