package manual

import (
	"slices"
	"strings"

	"tidysump/internal/quantity"
)

// settleTerms decides what words mean that stand both for a gearbox and for a change, as
// "cambio" does. It is the gearbox as the name of a part or an oil: as a heading, behind a
// plug, beside another oil, or where it begins a row as other oils do; and only on a page
// that tells of gears at all.
func (p *page) settleTerms() {
	p.settleFilters()
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

// settleFilters takes "change the filter" for what is done to the filter, and not for what an
// amount is with, where a distance or a long time is told for it, no amount, and no oil but the
// filter's: "oil every 5,000 km, filter change every 10,000 km".
func (p *page) settleFilters() {
	for n := range p.terms {
		if t := &p.terms[n]; t.has("amount.with-filter") && !t.has("oil.any") && p.filterAlone(t) && p.timedAlone(t) {
			t.senses = []string{"when.change", "part.filter"}
		}
	}
}

// timedAlone reports whether a distance or a long time of its sentence is told for a term, and for
// no oil: the one right behind it, else the one before it.
func (p *page) timedAlone(t *term) bool {
	from, to := p.sentenceOf(t.from)
	from, to = max(from, t.from-mostSentence), min(to, t.to+mostSentence)
	if p.senseAt(t.from-1, "with") {
		return false
	}
	own, end := false, to // a figure behind it is its own
	for i := t.to; i < end; i++ {
		switch f := p.factAt(i); {
		case f != nil && (f.kind == string(quantity.Distance) || f.kind == string(quantity.Duration)):
			own, end = p.about(t.to, i, "when.every") || p.at(t.to).text == ":", i
		case f != nil && f.kind == string(quantity.Volume):
			return false
		}
	}
	figures := 0
	for i := t.from - 1; i >= from; i-- {
		f, o := p.factAt(i), p.termAt(i)
		switch {
		case f != nil && f.kind == string(quantity.Volume):
			return false
		case f != nil && f.from == i && (f.kind == string(quantity.Distance) || f.kind == string(quantity.Duration)):
			if figures++; own || figures > 1 {
				return true
			}
		case o == nil:
		case o.has("amount.change"):
			return false
		default:
			if _, oil := o.begin("oil."); oil {
				return false
			}
		}
	}
	if !own && figures == 0 {
		return false
	}
	for i := t.to; i < end; i++ { // "every 6,000 km the filter is changed, and the oil"
		if o := p.termAt(i); o != nil && !p.onlySmall(t.to, o.from) {
			if _, oil := o.begin("oil."); oil && p.saysOil(&mention{from: o.from, to: o.to}) {
				return false
			}
		}
	}
	return true
}

// filterAlone reports whether a term is of a word for changing and a filter, and nothing between
// them but small words.
func (p *page) filterAlone(t *term) bool {
	changed, filter := t.has("change.filter"), t.has("change.filter")
	for i := t.from; i < t.to && !(changed && filter); {
		e, next := p.words.match(p.tokens[i:t.to], 0)
		if e == nil {
			next = 1
		} else if slices.Contains(e.senses, "amount.with-filter") {
			e, next = p.words.match(p.tokens[i:i+1], 0)
			next = max(next, 1)
		}
		switch {
		case e == nil || slices.Contains(e.senses, "join.and") || slices.Contains(e.senses, "with"):
			if !p.places[i].function || e != nil {
				return false
			}
		case slices.Contains(e.senses, "when.change") || slices.Contains(e.senses, "amount.change"):
			changed = true
		case slices.ContainsFunc(e.senses, func(s string) bool { return strings.HasPrefix(s, "part.filter") }):
			filter = true
		case !p.places[i].function:
			return false
		}
		i += next
	}
	return changed && filter
}

// composeTerms joins what a spelling cannot list: a word for "without" or "not", a change
// and a filter ("si no se cambia el filtro") are the amount without it; a word for "with",
// a change and a filter the amount with it.
func (p *page) composeTerms() {
	p.composeEach()
	p.composeUnscrewed()
	p.partOilFrom()
	p.composeBand()
	for n := range p.terms {
		t := &p.terms[n]
		sense := ""
		switch {
		case t.has("not"), t.has("without"):
			sense = "amount.oil-only"
		case t.has("with"):
			sense = "amount.with-filter"
		case t.has("if"):
			if last, not := p.changedIf(n); last > n {
				if sense = "amount.with-filter"; not {
					sense = "amount.oil-only"
				}
				p.composed(n, last, sense)
			}
			continue
		case (t.has("amount.change") || t.has("when.change")) && n+2 < len(p.terms) && p.filterJoined(n):
			p.composed(n, n+2, "amount.with-filter") // "change of oil and filter"
			whole := &p.terms[n+2]
			whole.senses = append(whole.senses, "oil.any")
			continue
		case (t.has("amount.change") || t.has("when.change") || t.has("warm.drain")) && p.filterSlashed(n):
			p.composed(n, n+1, "amount.with-filter") // "after draining/filter"
			continue
		default:
			continue
		}
		if last := p.filterBehind(n); last > n {
			p.composed(n, last, sense)
		}
	}
}

// composeEach joins "each", a number or none, and "oil change": with each third of them.
func (p *page) composeEach() {
	for n := range p.terms {
		t := &p.terms[n]
		if !t.has("each") && !(t.has("when.every") && p.lastSays(t, "each")) { // "at every"
			continue
		}
		count, k := "1", n+1
		if c := p.countedBy(t); c != "" {
			count = c // "toutes les deux"
		} else if k < len(p.terms) && p.onlySmall(t.to, p.terms[k].from) {
			if c := p.countedBy(&p.terms[k]); c != "" {
				count, k = c, k+1
			}
		}
		if count == "1" && t.to < len(p.places) && p.places[t.to].kind == number && (p.places[t.to].text == "2" || p.places[t.to].text == "3") && k < len(p.terms) && p.terms[k].from >= t.to+1 { // "alle 2 Ölwechsel"
			if count = p.places[t.to].text; !p.onlySmall(t.to+1, p.terms[k].from) {
				continue
			}
		} else if k >= len(p.terms) || !p.onlySmall(p.terms[k-1].to, p.terms[k].from) {
			continue
		}
		change := &p.terms[k]
		if !change.has("when.change") && !change.has("amount.change") {
			continue
		}
		if k+1 < len(p.terms) && p.terms[k+1].has("oil.any") && p.onlySmall(change.to, p.terms[k+1].from) { // "changement d'huile"
			k++
		}
		p.composed(n, k, "every."+count)
	}
}

// lastSays reports whether a term's last word has a sense by itself.
func (p *page) lastSays(t *term, sense string) bool {
	e, _ := p.words.match(p.tokens[:t.to], t.to-1)
	return e != nil && slices.Contains(e.senses, sense)
}

// countedBy gives the two or three that a term says, also as an ordinal; "" for another.
func (p *page) countedBy(t *term) string {
	for _, c := range [...]string{"2", "3"} {
		if t.has("number."+c) || t.has("ordinal."+c) {
			return c
		}
	}
	return ""
}

// onlySmall reports whether nothing but small words, and a stop behind a figure, stands
// between two tokens of a clause.
func (p *page) onlySmall(from, to int) bool {
	if from > to || to-from > 2 || from > 0 && to < len(p.places) && p.places[from-1].clause != p.places[to].clause {
		return false
	}
	for i := from; i < to; i++ {
		if q := &p.places[i]; q.gap == wide || q.kind == number || q.kind == word && !q.function && len(q.fold) > 2 || q.kind == sign && q.text != "'" && q.text != "." {
			return false
		}
	}
	return to >= len(p.places) || p.places[to].gap != wide
}

// composed makes of the terms from one to another one that says what it is given, and which
// kind of filter the last of them names.
func (p *page) composed(first, last int, sense string) {
	whole := &p.terms[last]
	senses := []string{sense}
	for _, s := range whole.senses {
		if strings.HasPrefix(s, "part.filter-") {
			senses = append(senses, s)
		}
	}
	whole.senses, whole.from = senses, p.terms[first].from
	for i := whole.from; i < whole.to; i++ {
		p.places[i].term = last
	}
}

// composeBand tells that a lower and an upper mark are named together: what is between them is
// the level's band.
func (p *page) composeBand() {
	for n := range p.terms {
		t := &p.terms[n]
		low := t.has("mark.low")
		if !low && !t.has("mark.high") {
			continue
		}
		for k := n + 1; k < len(p.terms) && p.terms[k].from-t.to <= mostBetween && p.places[p.terms[k].from].sentence == p.places[t.from].sentence && !p.figureIn(t.to, p.terms[k].from); k++ {
			if o := &p.terms[k]; low && o.has("mark.high") || !low && o.has("mark.low") {
				t.senses = append(slices.Clone(t.senses), "amount.band")
				o.senses = append(slices.Clone(o.senses), "amount.band")
				break
			}
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
		p.composed(n, k, "device.resting")
	}
}

// changedIf gives the term with which it has been said, behind "if", that a filter is changed,
// in either order: "if you have changed the filter", "wenn der Filter gewechselt wurde". 0 for
// none; not says that it is not.
func (p *page) changedIf(n int) (last int, not bool) {
	t := &p.terms[n]
	change, filter := false, false
	for k := n + 1; k < len(p.terms) && !(change && filter); k++ {
		o := &p.terms[k]
		if o.from-t.to > mostBetween || p.places[o.from].clause != p.places[t.from].clause {
			return 0, false
		}
		for i := p.terms[k-1].to; i < o.from; i++ {
			if q := &p.places[i]; q.taken || q.kind == number || q.kind == sign && q.text != "'" && q.text != "-" || q.kind == word && !q.function && len(q.fold) > 4 {
				return 0, false
			}
		}
		switch {
		case o.has("part.filter"), o.has("part.filter-element"), o.has("part.filter-spin-on"):
			filter = true
		case o.has("when.change"), o.has("amount.change"):
			change = true
		case o.has("not"):
			not = true
		case !p.small(o) && !o.has("known") && !o.has("if"):
			return 0, false
		}
		last = k
	}
	if !change || !filter {
		return 0, false
	}
	return last, not
}

// partOilFrom parts "oil and filter" again behind a filter: "the filter of the oil and the
// centrifugal filter" has no oil with a filter.
func (p *page) partOilFrom() {
	for n := 1; n < len(p.terms); n++ {
		t := &p.terms[n]
		if o := p.beside(n, -1); !t.has("amount.with-filter") || t.to-t.from < 3 || o == nil || !o.has("part.filter") {
			continue
		}
		var rest []term
		for i := t.from + 1; i < t.to; i++ {
			p.places[i].term = -1
			if e, size := p.words.match(p.tokens[:t.to], i); e != nil {
				rest = append(rest, term{i, i + size, e.senses})
				i += size - 1
			}
		}
		t.to, t.senses = t.from+1, []string{"oil.any"}
		p.terms = append(p.terms[:n+1:n+1], append(rest, p.terms[n+1:]...)...)
		for k := n + 1; k < len(p.terms); k++ {
			for i := p.terms[k].from; i < p.terms[k].to; i++ {
				p.places[i].term = k
			}
		}
	}
}

// filterJoined reports whether "and" and a filter stand behind a term.
func (p *page) filterJoined(n int) bool {
	and, filter := &p.terms[n+1], &p.terms[n+2]
	return and.has("join.and") && filter.has("part.filter") && p.onlySmall(p.terms[n].to, and.from) && p.onlySmall(and.to, filter.from)
}

// filterSlashed reports whether a stroke and a filter stand behind a term.
func (p *page) filterSlashed(n int) bool {
	t := &p.terms[n]
	if p.at(t.to).text != "/" || n+1 == len(p.terms) {
		return false
	}
	o := &p.terms[n+1]
	return o.from == t.to+1 && p.places[o.from].gap != wide && o.has("part.filter")
}

// filterBehind gives the term of a filter that stands behind a change and a small word in
// its clause; 0 for none.
func (p *page) filterBehind(n int) int {
	t := &p.terms[n]
	alone := t.has("without") || t.has("with") && !t.has("join.and") // "with the filter" says it without a change
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
		filter := o.has("part.filter") || o.has("part.filter-element") || o.has("part.filter-spin-on")
		switch {
		case filter && (change || alone), o.has("amount.with-filter") && (alone || !t.has("with")):
			return k
		case o.has("when.change"), o.has("amount.change"):
			change = true
		case !p.small(o) && !o.has("known") && !o.has("new"):
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
	if before != nil && (before.has("part.drain") || before.has("part.level") || before.has("part.filler") || before.has("warm.drain")) {
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
	if p.belowOil(t.from) {
		return false
	}
	first := &p.places[t.from]
	begins := t.from == 0 || p.places[t.from-1].clause != first.clause
	start := t.from
	for start > 0 && start > t.from-2 && p.places[start-1].function && p.places[start-1].sentence == first.sentence {
		start--
	}
	if !begins && (start == 0 || p.places[start-1].sentence != first.sentence) && p.gearedSentence(t.to) {
		return true // "the gearbox takes 0.75 litres of SAE 80W-90", "in the gearbox oil is to reach the hole"
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

// belowOil reports whether a token's line stands further in than a line above it that names
// an oil: "Engine oil" over "   change    0.9 l".
func (p *page) belowOil(at int) bool {
	here := p.places[at].piece
	from, _ := p.pieceTokens(here)
	for n := here - 1; n >= 0 && n > here-mostBackRows; n-- {
		a, b := p.pieceTokens(n)
		if a == b || p.pieces[n+1].blank || p.pieces[n+1].joined {
			return false
		}
		if p.places[a].col+1 >= p.places[from].col {
			continue
		}
		for i := a; i < b; i++ {
			if o := p.termAt(i); o != nil {
				if c, is := o.begin("oil."); is && c != "any" && !o.has("amount.change") && !o.has("when.change") {
					return true
				}
			}
		}
		return false
	}
	return false
}

// gearedSentence reports whether a grade or a category of gear oil, or a hole that tells a level,
// stands behind a token in its sentence.
func (p *page) gearedSentence(at int) bool {
	for i := at; i < len(p.places) && p.places[i].sentence == p.places[at-1].sentence; i++ {
		if f := p.factAt(i); f != nil && (f.kind == "service" && strings.HasPrefix(f.text, "GL") || f.kind == "grade" && len(f.text) > 2 && f.text[:1] >= "7" && f.text[2:3] == "W") || p.senseAt(i, "device.hole") {
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
