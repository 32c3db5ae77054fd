package manual

import "tidysump/internal/quantity"

// dropOld takes out the figures that a page names only to say that they hold no longer: "use
// 30 N·m instead of 42 N·m", "42 N·m is a misprint", a column headed "old".
func (p *page) dropOld() {
	told := false
	for i := range p.terms {
		t := &p.terms[i]
		told = told || t.has("old") || t.has("old.behind") || t.has("old.right") || t.has("not")
	}
	if !told {
		return
	}
	kept := p.facts[:0]
	for i := range p.facts {
		f := &p.facts[i]
		if f.unit == "" || !p.oldBefore(i) && !p.oldBehind(i) && !p.oldColumn(f) {
			kept = append(kept, *f)
		}
	}
	p.facts, p.byToken = kept, nil
}

// oldBefore reports whether words before a figure say that it is no longer so: in its clause,
// behind the figure before it.
func (p *page) oldBefore(n int) bool {
	f := &p.facts[n]
	for i := f.from - 1; i >= 0 && p.places[i].clause == p.places[f.from].clause && !(p.places[i].taken && p.places[i].kind == number); i-- {
		t := p.termAt(i)
		switch {
		case t == nil:
		case t.has("old"):
			return true
		case t.has("old.right"), t.has("old.behind"), t.has("not") && !t.has("without") && f.kind != string(quantity.Volume): // "with the filter 2.4 l, if not 2.2 l"
			if f.from-t.to <= 1 && (f.from == t.to || p.places[t.to].function) {
				return true
			}
		}
	}
	return false
}

// mostToOld is at how many tokens from its beginning a sentence calls what the one before it gave
// withdrawn: "This is a printing error".
const mostToOld = 6

// oldBehind reports whether words behind a figure say that it is no longer so: in its
// sentence, or at the beginning of the next, before the next figure.
func (p *page) oldBehind(n int) bool {
	f := &p.facts[n]
	until := -1
	for i := f.end(); i < len(p.places) && i != until; i++ {
		q := &p.places[i]
		if q.sentence != p.places[f.from].sentence && until < 0 {
			until = i + mostToOld
		}
		if until >= 0 && (q.paragraph != p.places[f.from].paragraph || q.sentence > p.places[f.from].sentence+1) {
			return false
		}
		if t := p.termAt(i); until >= 0 && t != nil {
			if _, part := t.begin("part."); part {
				return false
			}
		}
		if q.taken && q.kind == number || q.text == ";" && !p.ofBefore(i+1) {
			return false
		}
		if p.senseAt(i, "old.behind") {
			next := p.at(p.termAt(i).to)
			return !(next.taken && next.kind == number) // "30 N·m (wrongly 45 N·m in the handbook)"
		}
	}
	return false
}

// ofBefore reports whether what follows at a token says of what stands before it that it is no longer
// so, in a few words of its own: "an interval of 3,000 km; this no longer applies".
func (p *page) ofBefore(at int) bool {
	for i := at; i < len(p.places) && i < at+mostLabel && p.places[i].sentence == p.places[at-1].sentence; i++ {
		if p.senseAt(i, "old.behind") {
			return true
		}
		if q := &p.places[i]; q.kind != word || len(q.fold) > 6 {
			return false
		}
	}
	return false
}

// oldColumn reports whether a figure's cell stands below a head that says so, beside one that
// does not.
func (p *page) oldColumn(f *fact) bool {
	t := &p.places[f.from]
	if t.gap != wide || !p.pieces[t.piece].cells {
		return false
	}
	for n := t.piece - 1; n >= 0 && n > t.piece-mostBackRows; n-- {
		from, to := p.pieceTokens(n)
		if from == to || p.places[from].section != t.section && !p.pieces[n].heading {
			return false
		}
		cells, old, apart := 0, false, 1<<20
		for i := from; i < to; i++ {
			q := &p.places[i]
			if q.kind == number {
				cells = 0
				break
			}
			if i > from && q.gap != wide {
				continue
			}
			cells++
			if d := abs(q.col - t.col); d < apart {
				apart, old = d, p.senseAt(i, "old") || p.senseAt(i, "old.right")
			}
		}
		if cells > 1 {
			return old
		}
	}
	return false
}
