package manual

import (
	"strings"

	"tidysump/internal/quantity"
)

// findScopes finds the passages of another job and takes out of play what stands in them: their
// figures are none, and their parts and oils are that job's. Such a passage begins with a heading
// that names another job and no oil of ours, and reaches to the next heading that says something
// else, or to a sentence or a row that begins a job of ours by naming its oil.
func (p *page) findScopes() {
	foreign, any := false, false
	n := 0
	for k := range p.pieces {
		from, to := p.pieceTokens(k)
		if from == to {
			continue
		}
		if p.pieces[k].heading {
			switch own, other := p.titled(from, to); {
			case own:
				foreign = false
			case other:
				foreign = true
			case p.about(from, to, "label.displacement"), capitals(p.tokens[from:to]) || chaptered(p.tokens[from:to]):
				foreign = false
			}
		}
		if foreign && (p.pageHead(k) || p.pieces[k].blank && p.lettered(from, to)) {
			foreign = false
		}
		for i := from; i < to; i++ {
			for n < len(p.mentions) && p.mentions[n].from < i {
				n++
			}
			if begin, _ := p.sentenceOf(i); foreign && i == begin && !p.pieces[k].heading {
				foreign = i == from && p.runsOn(k) || !p.backToOurs(i)
			}
			p.places[i].foreign = foreign
			any = any || foreign
		}
	}
	if !any {
		return
	}
	for n := range p.mentions {
		if m := &p.mentions[n]; p.places[m.from].foreign && !m.foreign {
			m.foreign, m.measure = true, false
		}
	}
	for n := range p.terms {
		t := &p.terms[n]
		if _, cooled := t.begin("cooling."); p.places[t.from].foreign && !cooled { // "Cooling system:" over "air-cooled"
			t.senses = nil // a shared one is no term's own
		}
	}
	kept := p.facts[:0]
	for i := range p.facts {
		if !p.places[p.facts[i].from].foreign {
			kept = append(kept, p.facts[i])
		}
	}
	p.facts, p.byToken, p.withFigures = kept, nil, nil
}

// runsOn reports whether a line goes on from the one above it, which ends no sentence.
func (p *page) runsOn(k int) bool {
	if k == 0 || p.pieces[k].blank || p.pieces[k].cells || p.pieces[k-1].cells || p.pieces[k-1].heading {
		return false
	}
	line := p.pieces[k].tokens
	return !closed(p.pieces[k-1].tokens) && line[len(line)-1].text != ":"
}

// titled reports whether a heading names an oil of ours, or another job.
func (p *page) titled(from, to int) (own, foreign bool) {
	for n := p.mentionFrom(from); n < len(p.mentions) && p.mentions[n].from < to; n++ {
		m := &p.mentions[n]
		own = own || !m.foreign && (m.circuit != "" || m.gear || m.oil)
		foreign = foreign || m.foreign && !m.measure
	}
	if !own && !foreign { // "Oil and filter change"
		own = p.about(from, to, "amount.with-filter") || p.about(from, to, "amount.oil-only") || p.about(from, to, "when.change") && p.saysOil(&mention{from: from, to: to})
	}
	return own, foreign
}

// pageHead reports whether a line is the head of a further page: it stands apart, is no sentence
// and names no other job; it has cells, the name of a book, or one that nobody here knows.
func (p *page) pageHead(n int) bool {
	from, to := p.pieceTokens(n)
	line := p.tokens[from:to]
	if _, other := p.titled(from, to); other || !p.pieces[n].blank || p.pieces[n].joined || to-from > mostHead || closed(line) || hasUnit(line) || line[0].kind == number && !p.pieces[n].cells {
		return false
	}
	name, plain := false, false
	for i := from; i < to; i++ {
		t := &p.places[i]
		if i > from && t.gap == wide || p.senseAt(i, "label.page") || p.senseAt(i, "page.word") && p.termAt(i).to-p.termAt(i).from > 1 {
			return true
		}
		plain = plain || t.kind == word && !capital(t.text) && len(t.text) > 3 && !t.function
		name = name || p.unknown(i)
	}
	return name && !plain
}

// lettered reports whether a line begins a part of the book that has a letter, and names no other
// job: "C. WHEN".
func (p *page) lettered(from, to int) bool {
	line := p.tokens[from:to]
	_, other := p.titled(from, to)
	return !other && bullet(line) == 2 && line[0].kind == word && capital(line[0].text)
}

// mostHead is how many tokens the head of a page has at most.
const mostHead = 24

// backToOurs reports whether a sentence begins with the name of an oil of ours or of its part,
// or with what is done to it: "Engine oil: …", "Change the engine oil". What another job is done
// with, as "soak it with engine oil", is none.
func (p *page) backToOurs(at int) bool {
	_, to := p.sentenceOf(at)
	if t := p.termAt(at); t != nil && t.has("label.displacement") && p.at(t.to).text == ":" {
		return true // of the bike
	}
	n := p.mentionFrom(at)
	if n == len(p.mentions) || p.mentions[n].from >= to {
		return false
	}
	m := &p.mentions[n]
	if p.begins(n) && m.part == "" && !m.foreign && (m.gear || m.circuit != "" && m.circuit != "engine") && p.measured(m.to, to) {
		return true
	}
	if m.foreign || !p.saysOil(m) || !p.named(m) || m.circuit == "" && !m.gear && !m.ofFilter() {
		return false
	}
	for i := at; i < m.from; i++ {
		t := &p.places[i]
		switch {
		case t.kind == sign, t.kind == number && !t.taken, t.function && !p.senseAt(i, "with"), p.senseAt(i, "when.change"), p.senseAt(i, "warm.drain"), p.senseAt(i, "level.check"), p.senseAt(i, "known"):
		default:
			return false
		}
	}
	return true
}

// measured reports whether an amount stands between two tokens and a grade or a category of oil with
// it: "The gearbox and the clutch share 0.5 litre of SAE 80".
func (p *page) measured(from, to int) bool {
	amount, grade := false, false
	for i := from; i < to; i++ {
		if f := p.factAt(i); f != nil && f.from == i {
			amount = amount || f.kind == string(quantity.Volume)
			grade = grade || f.kind == "grade" || f.kind == "service"
		}
	}
	return amount && grade
}

// ofBike reports whether a thing is told of the bike, and not of an oil or a part.
func ofBike(what string) bool { return !strings.Contains(what, ".") }
