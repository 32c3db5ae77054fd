package line

import (
	"slices"
	"strings"

	"tidysump/internal/calc"
	"tidysump/internal/manual"
	"tidysump/internal/place"
	"tidysump/internal/quantity"
)

// fitted is a line read for one calculation.
type fitted struct {
	*speech
	calculation *calc.Calculation
	slots       []slot
	mentions    []mention
	called      [][]int // by figure: the fields that a name beside it calls; nil for none
	name        []int   // by figure: the mention that calls it, -1 for none
	free        []bool  // by figure: it went nowhere yet
	pieces      []Piece
	filled      []bool // by slot
	by          []int  // by slot: the figure that fills it, -1 for none
	bound       []bool // by mention: it calls a figure, or chooses
	calls       []bool // by token: it says what the calculation is about
	score       int
}

// fit reads a line for a calculation.
func (s *speech) fit(ask *Ask, c *calc.Calculation) *fitted {
	f := &fitted{speech: s, calculation: c, slots: slotsOf(c)}
	f.mentions = s.mentions(c.Op, f.slots)
	f.called, f.name = make([][]int, len(s.figures)), make([]int, len(s.figures))
	f.free = make([]bool, len(s.figures))
	for i := range f.free {
		f.free[i], f.name[i] = true, -1
		for k := range f.mentions {
			f.free[i] = f.free[i] && !f.figures[i].within(f.mentions[k].first, f.mentions[k].last)
		}
	}
	f.filled, f.by = make([]bool, len(f.slots)), make([]int, len(f.slots))
	for i := range f.by {
		f.by[i] = -1
	}
	f.bound, f.calls = make([]bool, len(f.mentions)), make([]bool, len(s.tokens))
	f.put(ask.Put)
	f.freeTexts()
	f.choose(false)
	f.cross()
	f.bind()
	f.settle()
	f.imply()
	f.choose(true)
	f.offer()
	f.rate(ask)
	return f
}

// put fills in what the person said of figures that were asked for.
func (f *fitted) put(list []Put) {
	for i := range list {
		p := &list[i]
		n := slices.IndexFunc(f.slots, func(s slot) bool { return s.list == p.List && s.Name == p.Field })
		at := slices.IndexFunc(f.figures, func(g figure) bool {
			return f.tokens[g.first].From == p.Quote.From && f.tokens[g.last-1].To == p.Quote.To
		})
		if n >= 0 && at >= 0 && f.free[at] {
			text := p.Text
			if text == "" {
				text = f.written(&f.figures[at], f.slots[n].Asked)
			}
			f.fill(n, at, text)
		}
	}
}

// cross fills in two figures with a times sign between them where the line calls for a calculation
// that takes such: "O-ring 24.4 x 3.1". The first has the unit of the second, if none of its own.
func (f *fitted) cross() {
	for n := range f.slots {
		by := f.slotOf(f.slots[n].list, f.slots[n].By)
		if by < 0 || f.calling(f.calculation.Op, f.calls) == 0 {
			continue
		}
		for g := 1; g < len(f.figures); g++ {
			a, b := f.figures[g-1], &f.figures[g]
			if !f.free[g-1] || !f.free[g] || b.first != a.last+1 || !f.times(a.last) {
				continue
			}
			unit := strings.TrimLeft(b.text, "0123456789.,")
			if a.bare && !b.bare {
				a.text, a.bare = a.text+unit, false
				a.says = b.says
			}
			if f.fits(&a, f.slots[n].Asked, true) && f.fits(b, f.slots[by].Asked, true) {
				f.fill(n, g-1, f.written(&a, f.slots[n].Asked))
				f.pieces[len(f.pieces)-1].To = f.tokens[a.last].To
				f.fill(by, g, f.written(b, f.slots[by].Asked))
				return
			}
		}
	}
}

// freeTexts fills fields that take any words: what stands behind their names, to the end
// of the clause.
func (f *fitted) freeTexts() {
	for i := range f.mentions {
		m := &f.mentions[i]
		for _, n := range m.names {
			d := &f.slots[n]
			if d.Kind == calc.Taps {
				f.taps(i, n)
			}
			if d.Kind != calc.Text || d.Says != "" && d.Says != calc.Lines || f.bound[i] {
				continue
			}
			end := m.last
			for end < len(f.tokens) && (d.Says == calc.Lines || f.clause[end] == f.clause[m.last-1]) {
				end++
			}
			first := m.last
			if first < end && f.tokens[first].Text == ":" {
				first++
			}
			if first < end {
				f.bound[i] = true
				f.fillWords(n, i, first, end)
			}
		}
	}
}

// taps fills a field of times with all bare numbers behind its name.
func (f *fitted) taps(i, n int) {
	last := f.mentions[i].last
	text := ""
	for k := range f.figures {
		if g := &f.figures[k]; f.free[k] && g.bare && g.first == last {
			text, last, f.free[k] = text+" "+g.text, g.last, false
		}
	}
	if text != "" {
		f.bound[i], f.filled[n] = true, true
		f.pieces = append(f.pieces, Piece{Span: f.quote(f.mentions[i].first, last), Goal: f.place(n, text[1:], "")})
	}
}

// fillWords fills a field with tokens as they stand.
func (f *fitted) fillWords(n, mention, first, last int) {
	f.filled[n] = true
	for k := range f.figures {
		if f.figures[k].first >= first && f.figures[k].last <= last {
			f.free[k] = false
		}
	}
	for k := range f.mentions {
		if f.mentions[k].first >= first && f.mentions[k].last <= last {
			f.bound[k] = true
		}
	}
	f.pieces = append(f.pieces, Piece{Span: f.quote(f.mentions[mention].first, last),
		Goal: f.place(n, strings.TrimRight(f.words(first, last), " .,;"), "")})
}

// choose fills fields of choice, and of yes or no. What names a field too, and what belongs
// to a row, is seen to last: then it is known what the figures say, and which rows there are.
func (f *fitted) choose(last bool) {
	for i := range f.mentions {
		m := &f.mentions[i]
		if m.denied {
			continue
		}
		var open []chosen
		for _, c := range m.words {
			if late := len(m.names) > 0 || f.slots[c.slot].list != ""; late == last && !f.filled[c.slot] && f.asked(c.slot) {
				open = append(open, c)
			}
		}
		switch {
		case len(open) == 1:
			c := open[0]
			d := &f.slots[c.slot]
			f.bound[i], f.filled[c.slot] = true, d.list == ""
			word := d.Family + c.word
			if d.Kind == calc.Yes {
				word = ""
			}
			p := Piece{Span: f.quote(m.first, m.last), Goal: f.place(c.slot, c.word, word)}
			if row := f.rowBefore(p.List, p.From, p.Row); !f.told(p.List, p.Field, row) {
				p.Row = row
			}
			f.pieces = append(f.pieces, p)
		case len(open) > 1:
			f.bound[i] = true
			p := Piece{Span: f.quote(m.first, m.last)}
			for _, c := range open {
				p.Options = append(p.Options, f.place(c.slot, c.word, f.slots[c.slot].Family+c.word))
			}
			f.pieces = append(f.pieces, p)
		}
	}
}

// rowBefore gives the row of a list that the line tells of last before a place in it; else
// the one given.
func (f *fitted) rowBefore(list string, at, row int) int {
	last := -1
	for i := range f.pieces {
		if p := &f.pieces[i]; p.List == list && list != "" && p.Field != "" && p.From <= at && p.From > last {
			row, last = p.Row, p.From
		}
	}
	return row
}

// told reports whether a row of a list has a field already.
func (f *fitted) told(list, field string, row int) bool {
	return slices.ContainsFunc(f.pieces, func(p Piece) bool { return p.List == list && p.Row == row && p.Field == field })
}

// asked reports whether a field makes sense with what is chosen so far.
func (f *fitted) asked(n int) bool {
	d := &f.slots[n]
	if d.On == "" {
		return true
	}
	for i := range f.pieces {
		if p := &f.pieces[i]; p.Field == d.On && p.List == f.slots[n].list {
			return slices.Contains(d.When, p.Text)
		}
	}
	return true
}

// quote gives tokens as a piece of the line.
func (f *fitted) quote(first, last int) place.Span {
	return place.Span{From: f.tokens[first].From, To: f.tokens[last-1].To}
}

// place gives where a text goes. A field of a list that its last row has already begins a
// new row.
func (f *fitted) place(n int, text, word string) Goal {
	p := Goal{List: f.slots[n].list, Field: f.slots[n].Name, Text: text, Word: word, ticked: f.slots[n].Kind == calc.Yes}
	if p.List == "" {
		return p
	}
	for i := range f.pieces {
		if q := &f.pieces[i]; q.List == p.List && q.Field != "" {
			if p.Row = max(p.Row, q.Row); q.Field == p.Field {
				p.Row = max(p.Row, q.Row+1)
			}
		}
	}
	return p
}

// fill fills a field with a figure.
func (f *fitted) fill(n, at int, text string) {
	g := &f.figures[at]
	first, last := g.first, g.last
	if m := f.name[at]; m >= 0 {
		first, last = min(first, f.mentions[m].first), max(last, f.mentions[m].last)
	}
	f.free[at], f.filled[n], f.by[n] = false, f.slots[n].list == "", at
	f.pieces = append(f.pieces, Piece{Span: f.quote(first, last), Goal: f.place(n, text, "")})
}

// bind finds for each name of a field the figure that stands beside it. In a clause names
// stand before their figures, or behind them: the way that binds more of them counts.
func (f *fitted) bind() {
	for clause := 0; len(f.tokens) > 0 && clause <= f.clause[len(f.tokens)-1]; clause++ {
		items := f.items(clause)
		before, after := f.pairs(items, false), f.pairs(items, true)
		if len(after) > len(before) {
			before, after = after, before
		}
		for _, list := range [...][][2]int{before, after} {
			calls := slices.Clone(f.name) // those of the other way
			for _, p := range list {
				if m, g := p[0], p[1]; f.name[g] < 0 && !slices.Contains(calls, m) {
					f.name[g], f.called[g], f.bound[m] = m, f.fitting(m, g), true
				}
			}
		}
	}
}

// item is a figure or a mention of a clause.
type item struct{ first, figure, mention int }

func (f *fitted) items(clause int) []item {
	var list []item
	for i := range f.figures {
		if f.free[i] && f.clause[f.figures[i].first] == clause {
			list = append(list, item{f.figures[i].first, i, -1})
		}
	}
	for i := range f.mentions {
		if m := &f.mentions[i]; f.clause[m.first] == clause && len(m.names)+len(m.spans) > 0 {
			list = append(list, item{m.first, -1, i})
		}
	}
	slices.SortFunc(list, func(a, b item) int { return a.first - b.first })
	return list
}

// pairs gives each name in a clause with the next figure that fits it, as {mention,
// figure}: with that behind it, or with that before it.
func (f *fitted) pairs(items []item, behind bool) (list [][2]int) {
	step := 1
	start := 0
	if behind {
		step, start = -1, len(items)-1
	}
	taken := map[int]bool{}
	for i := start; i >= 0 && i < len(items); i += step {
		m := items[i].mention
		if m < 0 {
			continue
		}
		var used []int
		for k := i + step; k >= 0 && k < len(items); k += step {
			g := items[k].figure
			if g < 0 {
				if f.stops(items, k, step) {
					break
				}
				continue
			}
			fields := f.fitting(m, g)
			if len(used) > 0 { // it may name several fields, each of another kind
				fields = slices.DeleteFunc(fields, func(n int) bool { return slices.Contains(used, n) })
			}
			if len(fields) == 0 && len(used) > 0 {
				break
			}
			if len(fields) > 0 && !taken[g] {
				taken[g], used = true, append(used, fields...)
				list = append(list, [2]int{m, g})
			}
		}
	}
	return list
}

// stops reports whether a name stands nearer to the next figure than those before it: one
// that calls it.
func (f *fitted) stops(items []item, at, step int) bool {
	for k := at + step; k >= 0 && k < len(items); k += step {
		if g := items[k].figure; g >= 0 {
			return len(f.fitting(items[at].mention, g)) > 0
		}
	}
	return true
}

// fitting lists the fields that a mention names and a figure fits.
func (f *fitted) fitting(m, g int) (list []int) {
	for _, n := range f.mentions[m].names {
		if f.asked(n) && (f.fits(&f.figures[g], f.slots[n].Asked, true) || f.lacks(g, n)) {
			list = append(list, n)
		}
	}
	for _, n := range f.mentions[m].spans {
		if f.figures[g].ranged && f.fits(&f.figures[g], f.slots[n].Asked, false) {
			list = append(list, n)
		}
	}
	return list
}

// lacks reports whether a figure lacks only its unit to stand in a field.
func (f *fitted) lacks(g, n int) bool {
	return f.figures[g].bare && f.slots[n].Kind != calc.Text && quantity.Base(f.slots[n].Kind) != "" && quantity.Usual(f.slots[n].Kind, f.system) == ""
}

// settle fills in figures, one after another, as long as there is one that can go only
// into one field.
func (f *fitted) settle() {
	for f.one() || f.neighbours() || f.inOrder() || f.goesOn() || f.byItself() {
	}
}

// byItself fills in a figure that could only go to fields beside figures that are not
// there, but for one.
func (f *fitted) byItself() bool {
	for g := range f.figures {
		if !f.free[g] {
			continue
		}
		list := slices.DeleteFunc(f.candidates(g), func(n int) bool {
			of := f.slotOf(f.slots[n].list, f.slots[n].Beside)
			return of >= 0 && f.by[of] < 0
		})
		if len(list) == 1 && !f.lacks(g, list[0]) {
			f.goes(list[0], g)
			return true
		}
	}
	return false
}

// one fills in a figure that has one field to go to.
func (f *fitted) one() bool {
	for _, called := range [...]bool{true, false} {
		for g := range f.figures {
			if !f.free[g] || called != (f.called[g] != nil) {
				continue
			}
			if list := f.candidates(g); len(list) == 1 && !f.lacks(g, list[0]) {
				f.goes(list[0], g)
				return true
			}
		}
	}
	return false
}

// goes fills in a figure, or a range as the two ends where two fields take them.
func (f *fitted) goes(n, g int) {
	d := &f.slots[n]
	if then := f.slotOf(d.list, d.Then); f.figures[g].ranged && !d.Ranged && then >= 0 && (d.list != "" || !f.filled[then]) {
		low, high := f.endsOf(&f.figures[g], d.Kind)
		f.fill(n, g, low)
		f.fill(then, g, high)
		return
	}
	f.fill(n, g, f.written(&f.figures[g], d.Asked))
}

func (f *fitted) slotOf(list, name string) int {
	return slices.IndexFunc(f.slots, func(s slot) bool { return s.list == list && s.Name == name && name != "" })
}

// candidates lists the fields that a figure may go to: those that it is called by; else
// those of its kind that are asked for at once, within whose bounds it lies. What else may
// be known is only asked for.
func (f *fitted) candidates(g int) []int {
	figure := &f.figures[g]
	var pool []int
	for n := range f.slots {
		d := &f.slots[n]
		called := slices.Contains(f.called[g], n)
		if f.filled[n] || f.called[g] != nil && !called || !called && (d.list != "" || !f.asked(n)) {
			continue
		}
		switch {
		case !f.fits(figure, d.Asked, called) && !(called && f.lacks(g, n)):
		case called || (d.Needed || d.Front && !f.goesOnUnknown(figure)) && f.believable(figure, d.Asked):
			pool = append(pool, n)
		}
	}
	if len(pool) > 1 && f.called[g] != nil {
		pool = f.rowOrNot(pool)
	}
	if figure.ranged { // of two fields that take its ends the first says it
		for _, n := range slices.Clone(pool) {
			if then := f.slotOf(f.slots[n].list, f.slots[n].Then); then >= 0 && !f.slots[n].Ranged {
				pool = slices.DeleteFunc(pool, func(k int) bool { return k == then })
			}
		}
	}
	if len(pool) > 1 && f.called[g] != nil {
		if sure := slices.DeleteFunc(slices.Clone(pool), func(n int) bool { return !f.believable(figure, f.slots[n].Asked) }); len(sure) > 0 {
			pool = sure
		}
	}
	return pool
}

// goesOnUnknown reports whether words that nobody here knows stand right behind a figure:
// "5 mm below max" is not the 5 mm that a calculation takes where nothing else is said.
func (f *fitted) goesOnUnknown(figure *figure) bool {
	n := figure.last
	return n < len(f.tokens) && f.tokens[n].Word &&
		!slices.ContainsFunc(f.terms, func(t manual.Heard) bool { return t.First <= n && n < t.Last })
}

// rowOrNot takes, of a field that a calculation has by itself and in the rows of a list,
// that of the rows where the line has a row of the list, else the other.
func (f *fitted) rowOrNot(pool []int) []int {
	return slices.DeleteFunc(slices.Clone(pool), func(n int) bool {
		twin := slices.ContainsFunc(pool, func(k int) bool {
			return k != n && f.slots[k].Name == f.slots[n].Name
		})
		list := f.slots[n].list
		for k := range f.slots {
			if list == "" && f.slots[k].Name == f.slots[n].Name {
				list = f.slots[k].list
			}
		}
		row := slices.ContainsFunc(f.pieces, func(p Piece) bool { return p.List == list && p.Field != "" })
		return twin && row == (f.slots[n].list == "")
	})
}

// neighbours fills in a figure that stands beside the one it belongs to: "97 mm²/s at 40
// °C".
func (f *fitted) neighbours() bool {
	for g := range f.figures {
		if !f.free[g] {
			continue
		}
		best, near := -1, -1
		for _, n := range f.candidates(g) {
			if of := f.slotOf(f.slots[n].list, f.slots[n].Beside); of >= 0 && f.by[of] >= 0 && f.by[of] < g && f.by[of] > near {
				best, near = n, f.by[of]
			}
		}
		if best >= 0 && !f.lacks(g, best) {
			f.goes(best, g)
			return true
		}
	}
	return false
}

// inOrder fills in two figures of a kind where the calculation asks for a first and a
// second, and nothing else could take them.
func (f *fitted) inOrder() bool {
	for n := range f.slots {
		then := f.slotOf(f.slots[n].list, f.slots[n].Then)
		if then < 0 || f.filled[n] || f.filled[then] {
			continue
		}
		var of []int
		others := false
		for g := range f.figures {
			if !f.free[g] {
				continue
			}
			if list := f.candidates(g); slices.Contains(list, n) && slices.Contains(list, then) {
				of = append(of, g)
				others = others || len(list) > 2
			}
		}
		if len(of) == 2 && !others {
			f.goes(n, of[0])
			f.goes(then, of[1])
			return true
		}
	}
	return false
}

// goesOn fills in a figure as the next row of the list that the one before it went to,
// "bottles 1 L, 4 L", or beside it where a field takes several.
func (f *fitted) goesOn() bool {
	for g := 1; g < len(f.figures); g++ {
		if !f.free[g] || f.called[g] != nil || len(f.candidates(g)) > 0 {
			continue
		}
		for n := range f.slots {
			if f.by[n] != g-1 || !f.fits(&f.figures[g], f.slots[n].Asked, false) {
				continue
			}
			if f.slots[n].Many {
				f.add(n, g)
				return true
			}
			if f.slots[n].list != "" {
				f.goes(n, g)
				return true
			}
		}
	}
	return false
}

// add writes a figure behind what its field holds already.
func (f *fitted) add(n, g int) {
	for i := range f.pieces {
		if p := &f.pieces[i]; p.Field == f.slots[n].Name && p.List == f.slots[n].list {
			p.Text += ", " + f.written(&f.figures[g], f.slots[n].Asked)
			p.To = max(p.To, f.tokens[f.figures[g].last-1].To)
			f.free[g], f.by[n] = false, g
		}
	}
}

// offer lists for each figure that is left where it may go. A number without a unit, where
// no unit may be taken, is offered with each.
func (f *fitted) offer() {
	for g := range f.figures {
		if !f.free[g] {
			continue
		}
		figure := &f.figures[g]
		p := Piece{Span: f.quote(figure.first, figure.last)}
		list := f.open(g)
		if len(list) == 0 {
			list = f.near(g)
		}
		for _, n := range list {
			for _, text := range f.texts(g, n) {
				p.Options = append(p.Options, f.place(n, text, ""))
			}
		}
		if len(p.Options) > 0 {
			f.free[g] = false
			f.pieces = append(f.pieces, p)
		}
	}
}

// open lists all fields that a figure may go to, those that are asked for at once first.
func (f *fitted) open(g int) []int {
	list := f.candidates(g)
	for n := range f.slots {
		d := &f.slots[n]
		if d.list == "" && !f.filled[n] && f.asked(n) && f.called[g] == nil && !slices.Contains(list, n) &&
			f.fits(&f.figures[g], d.Asked, false) && f.believable(&f.figures[g], d.Asked) {
			list = append(list, n)
		}
	}
	return list
}

// near lists the fields that a figure would fit with another unit: a bare number any that
// is asked for at once, a mass a torque, since "18 lb" is said for one.
func (f *fitted) near(g int) (list []int) {
	for n := range f.slots {
		d := &f.slots[n]
		bare := f.figures[g].bare && f.fits(&f.figures[g], d.Asked, true) && f.believable(&f.figures[g], d.Asked)
		if d.list == "" && !f.filled[n] && d.Needed && (f.lacks(g, n) || bare || len(f.forces(g, n)) > 0) {
			list = append(list, n)
		}
	}
	return list
}

// texts gives what a figure may be in a field: as it stands, or with the units that it
// lacks.
func (f *fitted) texts(g, n int) []string {
	switch figure := &f.figures[g]; {
	case f.lacks(g, n):
		var list []string
		for i := range quantity.Units {
			if u := &quantity.Units[i]; u.Kind == f.slots[n].Kind {
				list = append(list, figure.text+" "+u.ID)
			}
		}
		return list
	case len(f.forces(g, n)) > 0:
		return f.forces(g, n)
	default:
		return []string{f.written(figure, f.slots[n].Asked)}
	}
}

// forces gives the torques that a mass may be said for: of its unit's force on each
// length.
func (f *fitted) forces(g, n int) (list []string) {
	if f.slots[n].Kind != quantity.Torque || f.figures[g].says != calc.Amount {
		return nil
	}
	q := quantity.Ask{Kind: quantity.Mass, System: f.system}
	a, notes := q.Read(f.figures[g].text)
	if !clean(notes) || a.Unit == "" {
		return nil
	}
	for i := range quantity.Units {
		u := &quantity.Units[i]
		if u.Kind == quantity.Torque && strings.HasPrefix(u.ID, a.Unit+"f·") {
			mass, _ := quantity.Find(a.Unit)
			list = append(list, quantity.Number(mass.FromBase(a.Base), 6)+" "+u.ID)
		}
	}
	return list
}

// imply chooses what a filled field makes sense with alone: what was caught was caught in
// a cap.
func (f *fitted) imply() {
	for n := range f.slots {
		d := &f.slots[n]
		on := f.slotOf(d.list, d.On)
		if on < 0 || f.filled[on] || !f.filled[n] || len(d.When) != 1 {
			continue
		}
		for i := range f.pieces {
			if p := f.pieces[i]; p.Field == d.Name && p.List == d.list {
				f.filled[on] = true
				f.pieces = append(f.pieces, Piece{Span: p.Span, Goal: f.place(on, d.When[0], f.slots[on].Family+d.When[0])})
				break
			}
		}
	}
}
