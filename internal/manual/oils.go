package manual

import (
	"strings"

	"tidysump/internal/finding"
)

// oils gives grades, marks and categories the oils that they are of.
func (r *readings) oils() {
	last := []string{}
	lastEnd := -1
	for i := range r.facts {
		f := &r.facts[i]
		if !ofOil(f) || r.notMeant(f) {
			continue
		}
		if f.kind == "mark" && strings.HasPrefix(f.text, "F") {
			continue // an oil that a two-stroke engine burns
		}
		circuits := r.circuitsOf(f, lastEnd, last)
		last, lastEnd = circuits, f.to
		for _, c := range circuits {
			gear := f.kind == "service" && (strings.HasPrefix(f.text, "GL") || strings.HasPrefix(f.text, "MT"))
			if gear && c == "engine" {
				continue
			}
			kind := f.kind
			if kind != "service" {
				kind += "s"
			}
			from := f.from
			if from > 0 && r.places[from-1].fold == "sae" {
				from--
			}
			var doubts []finding.Finding
			if c == "engine" && gearGrade(f) {
				doubts = append(doubts, doubt("manual-by-context", "text", f.text))
			}
			r.sayAt("oil."+c+"."+kind, f.text, from, f.to, f.to-1, doubts...)
		}
	}
	r.alike()
}

// alike gives an oil the grades and categories of the one that is said to serve there too.
func (r *readings) alike() {
	for n := range r.mentions {
		m := &r.mentions[n]
		from, to := r.sentenceOf(m.from)
		if m.alike == "" || n == 0 || !r.volumeIn(from, to) && !r.pieces[r.places[m.from].piece].cells {
			continue
		}
		for _, o := range r.list {
			of, is := strings.CutPrefix(o.What, "oil."+m.alike)
			if is && many(o.What) && o.Sure && o.Model == "" {
				r.sayAt("oil."+m.circuit+of, o.Text, r.mentions[n-1].from, m.to, m.from)
			}
		}
	}
}

// gearGrade reports whether a grade is one of gears: SAE J306 counts them from 70 on, engines'
// end at 60.
func gearGrade(f *fact) bool {
	return f.kind == "grade" && f.text[0] >= '7' && len(f.text) > 1 && f.text[1] >= '0' && f.text[1] <= '9' || f.kind == "grade" && len(f.text) >= 3 && f.text[2] >= '0' && f.text[2] <= '9'
}

// ofOil reports whether a fact is a grade, a mark or a category.
func ofOil(f *fact) bool { return f.kind == "grade" || f.kind == "mark" || f.kind == "service" }

// notMeant reports whether a page warns of a grade: "not" stands in the clause that its
// list begins in, or in the one behind it.
func (r *readings) notMeant(f *fact) bool {
	from, to := r.sentenceOf(f.from)
	at := f.from
	for at > from && (r.places[at-1].taken || r.places[at-1].kind == sign || r.places[at-1].function && !r.senseAt(at-1, "not")) {
		at--
	}
	begin, _ := r.clauseOf(max(at-1, from))
	if r.about(begin, at, "not") {
		return true
	}
	for i := f.to; i < to; i++ {
		if t := &r.places[i]; t.kind == word && !t.taken && r.factAt(i) == nil {
			_, end := r.clauseOf(i)
			return r.about(i, end, "not") && !r.deviceIn(i, end) && !r.tellsOther(i, end)
		}
	}
	return false
}

// tellsOther reports whether a clause tells of something else before it says "not", and so warns of
// no grade: "(2 L if the filter is not changed)", "run the engine and see that nothing leaks".
func (r *readings) tellsOther(from, to int) bool {
	for i := from; i < to && !r.senseAt(i, "not"); i++ {
		t := r.termAt(i)
		switch {
		case r.figureIn(i, i+1), r.senseAt(i, "join.and"):
			return true
		case t == nil:
		case t.has("amount.oil-only"), t.has("amount.with-filter"), t.has("time.run"), t.has("oil.engine") && t.to-t.from == 1:
			return true
		default:
			if _, is := t.begin("part."); is {
				return true
			}
		}
	}
	return false
}

// circuitsOf gives the oils that are named for a grade: those before it in its sentence or
// its row, up to another grade; else as the one before; else by what is spoken of.
func (r *readings) circuitsOf(f *fact, lastEnd int, last []string) (list []string) {
	from, to := r.sentenceOf(f.from)
	if n := r.places[f.from].piece; r.pieces[n].cells {
		from, _ = r.pieceTokens(n)
	}
	if head := r.columnOil(f); head != nil {
		switch {
		case head.foreign:
			return nil
		case head.gear:
			return []string{r.gearOil()}
		}
		return []string{head.circuit}
	}
	begin := max(from, lastEnd)
	_, otherJob := r.headCircuit(f.from)
	add := func(m *mention) (foreign bool) {
		c := m.circuit
		if m.gear && !otherJob { // gear oil for a chain is no gearbox's
			c = r.gearOil()
		}
		if c != "" && !contains(list, c) {
			list = append(list, c)
		}
		return m.foreign && !m.measure || otherJob && !r.named(m)
	}
	for n := r.mentionFrom(begin); n < len(r.mentions) && r.mentions[n].from < f.from; n++ {
		if add(&r.mentions[n]) {
			list = nil
			if n+1 < len(r.mentions) && r.mentions[n+1].from < f.from && !r.mentions[n+1].foreign {
				continue
			}
			return nil
		}
	}
	if len(list) > 0 {
		return list
	}
	if n := r.mentionFrom(begin); n < len(r.mentions) && r.mentions[n].from < f.from && r.mentions[n].foreign && !r.mentions[n].measure && r.begins(n) {
		return nil // "Air filter: wash it and soak it in oil SAE 30"
	}
	if lastEnd > from { // it goes on
		return last
	}
	clauseEnd := f.to
	for clauseEnd < to && r.places[clauseEnd].clause == r.places[f.to-1].clause {
		clauseEnd++
	}
	for n := r.mentionFrom(f.to); n < len(r.mentions) && r.mentions[n].from < clauseEnd; n++ {
		if add(&r.mentions[n]) {
			return nil
		}
	}
	if len(list) > 0 {
		return list
	}
	c, other, _ := r.circuitAt(f.from) // the heading too, where nothing nearer governs
	if other {
		return nil
	}
	return []string{c}
}

func contains(list []string, one string) bool {
	for _, s := range list {
		if s == one {
			return true
		}
	}
	return false
}
