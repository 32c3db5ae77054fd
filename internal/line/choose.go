package line

import (
	"slices"
	"strings"

	"tidysump/internal/calc"
	"tidysump/internal/finding"
	"tidysump/internal/place"
)

// What a line's pieces count, when it is told which calculation is meant: a figure that
// went somewhere, one that is asked for, one that has no place; a word that names or
// chooses something, what the calculation is called; and a field that is left to be
// filled. By trial on the lines of the tests, no source.
const (
	placed  = 6
	offered = 3
	lost    = -6
	naming  = 4
	calling = 9
	lacking = -1
	alone   = 2
	unknown = -4
)

// rate tells how much of the line a calculation takes up.
func (f *fitted) rate(ask *Ask) {
	for g := range f.figures {
		if f.free[g] {
			f.score += lost
		}
	}
	taken := false
	for i := range f.pieces {
		p := &f.pieces[i]
		taken = true
		if len(p.Options) > 0 {
			f.score += offered
		} else {
			f.score += placed
		}
	}
	for i := range f.mentions {
		if m := &f.mentions[i]; f.bound[i] {
			f.score += naming * (m.last - m.first)
		}
	}
	if n := f.calling(f.calculation.Op, f.calls); n > 0 {
		f.score, taken = f.score+calling*n, true
	} else if f.alone() {
		f.score += alone
	} else if f.converts() {
		taken = false // what else the line says is not for nothing: "lost a litre in 1000 km"
	}
	for _, q := range f.unread() {
		f.score += unknown * len(strings.Fields(f.text[q.From:q.To]))
	}
	for n := range f.slots {
		if d := &f.slots[n]; d.Needed && d.list == "" && !f.filled[n] {
			f.score += lacking
		}
	}
	for _, d := range f.calculation.Asks() {
		if d.Kind == calc.List && d.Needed && !f.listed(ask, d.Name) {
			f.score += lacking
		}
	}
	if !taken {
		f.score = 0
	}
}

// alone reports whether the line is one figure alone, or with the unit that it is to have,
// and the calculation takes whatever figure there is.
func (f *fitted) alone() bool {
	if len(f.figures) != 1 || !f.converts() {
		return false
	}
	for n := range f.tokens {
		if g := &f.figures[0]; (n < g.first || n >= g.last) && !f.filler[n] && !f.unitAt(n) {
			return false
		}
	}
	return true
}

// converts reports whether the calculation takes whatever figure there is.
func (f *fitted) converts() bool {
	return slices.ContainsFunc(f.slots, func(s slot) bool { return s.Says == calc.Amount })
}

// listed reports whether a list has a row, from the line or from what is kept.
func (f *fitted) listed(ask *Ask, name string) bool {
	return slices.ContainsFunc(f.pieces, func(p Piece) bool { return p.List == name && p.Field != "" }) ||
		ask.Kept != nil && ask.Kept.Has(name)
}

// sortFitted sorts what a line was read as, the likeliest first; the order of the bench
// breaks ties.
func sortFitted(list []*fitted) {
	slices.SortStableFunc(list, func(a, b *fitted) int { return b.score - a.score })
}

// reading makes the answer of what a line was read as.
func reading(ask *Ask, list []*fitted) *Reading {
	best := list[0]
	r := &Reading{Language: best.language}
	const most = 4
	for _, f := range list[:min(most, len(list))] {
		r.Ops = append(r.Ops, f.calculation.Op)
	}
	if len(list) > 1 && list[1].score == best.score {
		r.Unread = nil
		return r
	}
	r.Op, r.Pieces, r.Unread = best.calculation.Op, best.pieces, best.unread()
	slices.SortStableFunc(r.Pieces, func(a, b Piece) int { return a.From - b.From })
	r.Given = best.given()
	best.answer(ask, r)
	return r
}

// unread lists what was not understood: words that say something, and figures that went
// nowhere.
func (f *fitted) unread() (list []place.Span) {
	known := slices.Clone(f.filler)
	mark := func(first, last int) {
		for n := first; n < last; n++ {
			known[n] = true
		}
	}
	for i := range f.mentions {
		if m := &f.mentions[i]; f.bound[i] || len(m.names)+len(m.spans) > 0 {
			mark(m.first, m.last)
		}
	}
	for n := range f.tokens {
		t := &f.tokens[n]
		for i := range f.pieces {
			known[n] = known[n] || t.From >= f.pieces[i].From && t.To <= f.pieces[i].To
		}
		if !t.Word && !t.Number || f.calls[n] || f.converts() && f.unitAt(n) {
			known[n] = true
		}
	}
	for g := range f.figures {
		if f.free[g] {
			for n := f.figures[g].first; n < f.figures[g].last; n++ {
				known[n] = false
			}
		}
	}
	for n := 0; n < len(known); n++ {
		if known[n] {
			continue
		}
		first := n
		for n < len(known) && !known[n] {
			n++
		}
		list = append(list, f.quote(first, n))
	}
	return list
}

// given gathers what the pieces fill.
func (f *fitted) given() *Given {
	g := &Given{}
	for i := range f.pieces {
		p := f.pieces[i].Goal
		if p.Field == "" {
			continue
		}
		if p.List == "" {
			g.fields = append(g.fields, p)
			continue
		}
		n := slices.IndexFunc(g.lists, func(l list) bool { return l.name == p.List })
		if n < 0 {
			n = len(g.lists)
			g.lists = append(g.lists, list{name: p.List})
		}
		l := &g.lists[n]
		for len(l.rows) <= p.Row {
			l.rows = append(l.rows, Given{})
		}
		l.rows[p.Row].fields = append(l.rows[p.Row].fields, p)
	}
	return g
}

// answer works the calculation out, with the lists that are kept where the line has none,
// or says what keeps it from that.
func (f *fitted) answer(ask *Ask, r *Reading) {
	form := f.calculation.Blank(ask.System)
	for i := range f.pieces {
		if p := f.pieces[i].Goal; p.Field != "" {
			form.Fill(p.List, p.Row, p.Field, p.Text)
		}
	}
	for _, d := range f.calculation.Asks() {
		if ask.Kept != nil && d.Kind == calc.List && !form.Has(d.Name) && ask.Kept.Has(d.Name) {
			form.Take(ask.Kept, d.Name)
		}
	}
	var list []finding.Finding
	if r.Answer, list = f.calculation.Calculate(form, nil); r.Answer == nil {
		r.Lacks = list
	}
}
