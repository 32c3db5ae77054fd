package manual

import "strings"

// settleTerms decides what words mean that stand both for a gearbox and for a change, as
// "cambio" does. It is the gearbox as the name of a part or an oil: as a heading, behind a
// plug, beside another oil, or where it begins a row as other oils do; and only on a page
// that tells of gears at all.
func (p *page) settleTerms() {
	geared := -1 // not looked for yet
	for n := range p.terms {
		t := &p.terms[n]
		if !t.has("oil.gearbox") || !t.has("amount.change") && !t.has("when.change") {
			continue
		}
		if geared < 0 {
			geared = p.gears()
		}
		gearbox := p.namesGearbox(n, geared > 0)
		senses := make([]string, 0, len(t.senses))
		for _, s := range t.senses {
			if strings.HasPrefix(s, "oil.") == gearbox {
				senses = append(senses, s)
			}
		}
		t.senses = senses
	}
}

// composeTerms joins what a spelling cannot list: a word for "without" or "not", a change
// and a filter ("si no se cambia el filtro") are the amount without it; a word for "with",
// a change and a filter the amount with it.
func (p *page) composeTerms() {
	p.composeEach()
	p.composeUnscrewed()
	for n := range p.terms {
		t := &p.terms[n]
		sense := ""
		switch {
		case t.has("not"), t.has("without"):
			sense = "amount.oil-only"
		case t.has("with"):
			sense = "amount.with-filter"
		default:
			continue
		}
		if last := p.filterBehind(n); last > n {
			whole := &p.terms[last]
			senses := []string{sense}
			for _, s := range whole.senses {
				if strings.HasPrefix(s, "part.") {
					senses = append(senses, s)
				}
			}
			whole.senses, whole.from = senses, t.from
			for i := whole.from; i < whole.to; i++ {
				p.places[i].term = last
			}
		}
	}
}

// composeEach joins "every", "third" and "oil change": with each third of them.
func (p *page) composeEach() {
	for n := 0; n+2 < len(p.terms); n++ {
		every, nth, change := &p.terms[n], &p.terms[n+1], &p.terms[n+2]
		count, ok := nth.begin("ordinal.")
		if !ok || !every.has("when.every") || !change.has("when.change") && !change.has("amount.change") || nth.from != every.to || change.from != nth.to {
			continue
		}
		change.from, change.senses = every.from, []string{"every." + count}
		for i := change.from; i < change.to; i++ {
			p.places[i].term = n + 2
		}
	}
}

// composeUnscrewed joins "without" or "not" and a word for screwing: so a stick is put in
// that only rests on its thread.
func (p *page) composeUnscrewed() {
	for n := 0; n+1 < len(p.terms); n++ {
		t := &p.terms[n]
		if !t.has("without") && !t.has("not") {
			continue
		}
		k := n + 1
		if p.small(&p.terms[k]) && k+1 < len(p.terms) {
			k++
		}
		o := &p.terms[k]
		if !o.has("action.screw") && !o.has("device.screwed") || o.from-t.to > 2 || p.places[o.from].clause != p.places[t.from].clause {
			continue
		}
		o.from, o.senses = t.from, []string{"device.resting"}
		for i := o.from; i < o.to; i++ {
			p.places[i].term = k
		}
	}
}

// filterBehind gives the term of a filter that stands behind a change and a small word in
// its clause; 0 for none.
func (p *page) filterBehind(n int) int {
	t := &p.terms[n]
	change := false
	for k := n + 1; k < len(p.terms); k++ {
		o := &p.terms[k]
		if o.from-t.to > mostBetween || p.places[o.from].clause != p.places[t.from].clause {
			return 0
		}
		for i := p.terms[k-1].to; i < o.from; i++ {
			if q := &p.places[i]; q.taken || q.kind == number || q.kind == sign && q.text != "'" {
				return 0
			}
		}
		switch {
		case change && (o.has("part.filter") || o.has("part.filter-element")), !t.has("with") && o.has("amount.with-filter"):
			return k
		case o.has("when.change"), o.has("amount.change"):
			change = true
		case !p.small(o) && !o.has("known"):
			return 0
		}
	}
	return 0
}

// gears counts what a page says of gears without a second meaning.
func (p *page) gears() (count int) {
	for n := range p.terms {
		t := &p.terms[n]
		if c, ok := t.begin("oil."); ok && c != "any" && c != "engine" && !t.has("amount.change") {
			count++
		}
	}
	for i := range p.facts {
		if f := &p.facts[i]; f.kind == "service" && strings.HasPrefix(f.text, "GL") {
			count++
		}
	}
	return count
}

func (p *page) namesGearbox(n int, geared bool) bool {
	t := &p.terms[n]
	before, after := p.beside(n, -1), p.beside(n, +1)
	if before != nil && (before.has("part.drain") || before.has("part.level") || before.has("part.filler")) {
		return true
	}
	if t.from > 0 && p.places[t.from].gap == blank { // "changing the gearbox oil", whose "oil" another term has
		if e, size := p.words.match(p.tokens, t.from-1); e != nil && size == t.to-t.from+1 && (&term{senses: e.senses}).has("oil.gearbox") {
			return true
		}
	}
	if !geared {
		return false
	}
	for _, o := range [...]*term{before, after} {
		if o != nil && (o.has("oil.final") || o.has("oil.primary")) {
			return true
		}
	}
	first := &p.places[t.from]
	begins := t.from == 0 || p.places[t.from-1].clause != first.clause
	if start := t.from - 1; start >= 0 && !begins && p.places[start].function && (start == 0 || p.places[start-1].sentence != first.sentence) && p.gearedSentence(t.to) {
		return true // "the gearbox takes 0.75 litres of SAE 80W-90"
	}
	if !begins || after != nil && (after.has("amount.with-filter") || after.has("amount.oil-only")) {
		return false
	}
	if p.pieces[first.piece].heading {
		from, to := p.pieceTokens(first.piece)
		return t.from == from && t.to == to
	}
	s := p.sections[first.section]
	for i := s.from; i < s.from+s.heading; i++ {
		if o := p.termAt(i); o != nil && o.from != t.from {
			if _, names := o.begin("oil."); names {
				return false
			}
		}
	}
	f := p.factAt(t.to)
	return p.labelled(first.section, t.from) || f != nil && f.kind == "torque"
}

// gearedSentence reports whether a grade or a category of gear oil stands behind a token in
// its sentence.
func (p *page) gearedSentence(at int) bool {
	for i := at; i < len(p.places) && p.places[i].sentence == p.places[at-1].sentence; i++ {
		if f := p.factAt(i); f != nil && (f.kind == "service" && strings.HasPrefix(f.text, "GL") || f.kind == "grade" && len(f.text) > 2 && f.text[:1] >= "7" && f.text[2:3] == "W") {
			return true
		}
	}
	return false
}

// beside gives the term next to one with only small words between them, nil for none.
func (p *page) beside(n, step int) *term {
	k := n + step
	for k >= 0 && k < len(p.terms) && p.small(&p.terms[k]) {
		k += step
	}
	if k < 0 || k >= len(p.terms) {
		return nil
	}
	from, to := p.terms[min(n, k)].to, p.terms[max(n, k)].from
	if to-from > 4 || p.places[from-1].item != p.places[to].item {
		return nil
	}
	for i := from; i < to; i++ {
		if q := &p.places[i]; q.taken || q.kind == number || q.kind == word && !q.function && len(q.fold) > 2 || q.kind == sign && q.text != "'" {
			return nil
		}
	}
	return &p.terms[k]
}

// small reports whether a term is a small word.
func (p *page) small(t *term) bool {
	return t.to-t.from == 1 && (p.places[t.from].function || len(p.places[t.from].fold) <= 2)
}

// labelled reports whether another row of a section begins with the name of an oil, or of
// what holds it.
func (p *page) labelled(section, but int) bool {
	for n := range p.terms {
		t := &p.terms[n]
		c, ok := t.begin("oil.")
		if !ok || c == "any" || t.from == but || t.has("amount.change") || p.places[t.from].section != section {
			continue
		}
		if t.from == 0 || p.places[t.from-1].sentence != p.places[t.from].sentence {
			return true
		}
	}
	return false
}
