package manual

import (
	"slices"
	"strconv"

	"tidysump/internal/bolt"
	"tidysump/internal/quantity"
)

// head is a line, or the beginning of one, that says in which units the bare numbers
// behind it are.
type head struct {
	from, to int // tokens
	kind     string
	units    []string
	cols     []int    // where each stands in its line
	before   []string // the columns of counts and threads in front of them: "count", "thread"
}

// findHeads finds units that stand without a number, and gives the bare numbers in their
// reach their units: to the end of what stands below one heading, or to the next head.
func (p *page) findHeads() {
	p.beforeHeads = p.factsByToken(func(f *fact) int { return f.to })
	for n := 0; n < len(p.pieces); n++ {
		h := p.headIn(p.pieceTokens(n))
		if len(h.units) == 0 {
			continue
		}
		p.heads = append(p.heads, h)
	}
	for n := range p.heads {
		h := &p.heads[n]
		end := len(p.places)
		if n+1 < len(p.heads) {
			end = p.heads[n+1].from
		}
		section := p.places[h.to-1].section
		for i := h.to; i < end; {
			if p.places[i].section != section && !p.inTable(h, i) {
				if h.kind != string(quantity.Torque) {
					break
				}
				i++
				continue
			}
			i = p.bareAt(h, i)
		}
	}
}

// inTable reports whether a bare number below a further heading stands in a column of a
// head: tables of torques are parted by headings.
func (p *page) inTable(h *head, i int) bool {
	t := &p.places[i]
	if !p.pieces[t.piece].cells || t.kind != number || t.gap != wide || t.taken {
		return false
	}
	for _, c := range h.cols {
		if abs((t.col+t.end)/2-c) <= mostAside {
			return true
		}
	}
	return len(h.before) > 0 && p.besideTorque(h, i) > 0
}

// mostAside is how far a number may stand from the middle of its column's head.
const mostAside = 7

// pieceTokens gives the tokens of a piece; pieces stand in the order of the tokens.
func (p *page) pieceTokens(n int) (from, to int) {
	if p.starts == nil {
		p.starts = make([]int, len(p.pieces)+1)
		at := 0
		for i := range p.pieces {
			for at < len(p.places) && p.places[at].piece < i {
				at++
			}
			p.starts[i] = at
		}
		p.starts[len(p.pieces)] = len(p.places)
	}
	return p.starts[n], p.starts[n+1]
}

// headIn looks for a head in a line.
func (p *page) headIn(from, to int) (h head) {
	for i := from; i < to; i++ {
		t := &p.places[i]
		if t.taken || t.kind != word || i > from && p.places[i-1].kind == number && t.gap != wide {
			continue
		}
		id, next := p.headUnit(i, to)
		if id == "" {
			continue
		}
		unit, _ := quantity.Find(id)
		bracketed := i > from && p.places[i-1].text == "(" || i > from && p.places[i-1].text == "[" || len(h.units) > 0
		cell := i == from || t.gap == wide || p.places[i-1].text == "," || i > from+1 && p.places[i-1].function // "capacities in litres"
		switch unit.Kind {
		case quantity.Torque:
		case quantity.Volume, quantity.Distance:
			if !bracketed && !(cell && (next == to || p.places[next].gap == wide)) {
				continue
			}
		default:
			continue
		}
		if h.kind == "" {
			h.kind, h.from = string(unit.Kind), i
		}
		if h.kind != string(unit.Kind) {
			continue
		}
		h.units = append(h.units, id)
		h.cols = append(h.cols, (t.col+p.places[next-1].end)/2)
		h.to = next
		i = next - 1
	}
	if len(h.units) > 0 && p.anyAmount(from, h.from) {
		return head{}
	}
	if len(h.units) > 0 && h.kind == string(quantity.Torque) {
		h.before = p.columnsBefore(from, h.from)
	}
	return h
}

// columnsBefore gives which columns of counts and threads a head names in front of its
// units, in its own line and in the one above it.
func (p *page) columnsBefore(from, to int) (list []string) {
	if n := p.places[from].piece - 1; n >= 0 && p.places[p.starts[n]].section == p.places[from].section && p.pieces[n].cells {
		from = p.starts[n]
	}
	var cols []int
	for i := from; i < to; i++ {
		t := p.termAt(i)
		if t == nil || t.from != i || p.places[i].gap != wide && p.at(i-1).text != "." {
			continue
		}
		for _, label := range [...]string{"count", "thread"} {
			if t.has("label."+label) && !slices.Contains(list, label) {
				k := 0 // a head of several lines is read column by column
				for k < len(cols) && cols[k] <= p.places[i].col {
					k++
				}
				list, cols = slices.Insert(list, k, label), slices.Insert(cols, k, p.places[i].col)
				break
			}
		}
	}
	return list
}

// besideTorque gives how many numbers of a row, from one on, stand in front of its torque:
// a table may count the screws and give their thread by its diameter. Those are more
// numbers than the head has units, or the last of them has its other units in brackets.
func (p *page) besideTorque(h *head, i int) (count int) {
	if h.kind != string(quantity.Torque) || i == 0 || p.places[i].gap != wide {
		return 0
	}
	if f := p.factOf(i + 1); f != nil && f.kind == "thread" && f.from == i+1 && len(p.places[i].text) < 3 && p.places[i+1].gap == wide {
		return 1 // what stands before a thread counts the screws
	}
	if len(h.units) == 1 && len(h.before) == 0 {
		return 0
	}
	var at []int
	end := i
	for end < len(p.places) && p.places[end].piece == p.places[i].piece && p.places[end].gap == wide {
		_, next, ok := p.valueAt(end)
		if !ok {
			break
		}
		at = append(at, end)
		if _, to := p.pitchAt(h, next); to > next {
			next = to
		} else if m, to := p.between(next); m != "" {
			if _, last, is := p.valueAt(to); is {
				next = last
			}
		}
		if next < len(p.places) && p.places[next].fold == "mm" && p.places[next].gap != wide {
			next++
		}
		end = next
	}
	bracketed := len(h.units) > 1 && end < len(p.places) && p.places[end].text == "(" && p.places[end].piece == p.places[i].piece && p.at(end+1).kind == number
	named := len(p.columnsOpen(h, i))
	switch {
	case bracketed:
		return len(at) - 1
	case len(at) <= len(h.units):
		return 0
	case named > 0:
		return min(len(at)-len(h.units), named)
	case len(h.units) > 1 && !p.twinned(h, at, 0):
		for n := 1; n <= len(at)-len(h.units); n++ {
			if p.twinned(h, at, n) {
				return n
			}
		}
	}
	return 0
}

// columnsOpen gives the columns of counts and threads that a row's bare numbers may be of: a
// thread that is written as such is none of them.
func (p *page) columnsOpen(h *head, i int) []string {
	for k := p.starts[p.places[i].piece]; k < i; k++ {
		if f := p.factOf(k); f != nil && f.kind == "thread" {
			return slices.DeleteFunc(slices.Clone(h.before), func(s string) bool { return s == "thread" })
		}
	}
	return h.before
}

// twinned reports whether the nth number of a row and the one behind it are one torque in
// a head's first two units.
func (p *page) twinned(h *head, at []int, n int) bool {
	a, end, _ := p.valueAt(at[n])
	b, to, _ := p.valueAt(at[n+1])
	f, g := p.amount(at[n], end, h.units[0], a, a, ""), p.amount(at[n+1], to, h.units[1], b, b, "")
	return f.agrees(&g)
}

// factOf gives the fact that a token is of, while heads give further ones.
func (p *page) factOf(i int) *fact {
	if i < len(p.beforeHeads) && p.beforeHeads[i] >= 0 {
		return &p.facts[p.beforeHeads[i]]
	}
	for n := len(p.facts) - 1; n >= 0 && n >= len(p.facts)-mostRow; n-- {
		if f := &p.facts[n]; f.from <= i && i < f.to {
			return f
		}
	}
	return nil
}

// takeBeside takes the numbers in front of a row's torque for what their columns say.
func (p *page) takeBeside(h *head, i, count int) (next int) {
	columns := p.columnsOpen(h, i)
	for k := range count {
		v, to, _ := p.valueAt(i)
		label := ""
		if len(columns) == count {
			label = columns[k]
		}
		if f := p.factOf(to); f != nil && f.kind == "thread" {
			label = "count"
		}
		pitch, end := p.pitchAt(h, to)
		if to = end; to < len(p.places) && p.places[to].fold == "mm" && p.places[to].gap != wide {
			to++
		}
		switch label {
		case "count":
			p.facts = append(p.facts, fact{kind: "count", text: v.text, from: i, to: to})
		case "thread":
			if _, ok := bolt.ParseThread("M" + v.text + pitch); ok {
				p.facts = append(p.facts, fact{kind: "thread", text: "M" + v.text + pitch, from: i, to: to})
			}
		}
		p.take(i, to)
		i = to
	}
	return i
}

// pitchAt reads the pitch behind a thread's diameter, where a column is of threads: "x1.5" of "12 x 1,5".
func (p *page) pitchAt(h *head, i int) (pitch string, end int) {
	if x := p.at(i); x.fold != "x" && x.text != "×" || x.gap == wide || !slices.Contains(h.before, "thread") || p.at(i+1).kind != number || p.at(i+1).gap == wide {
		return "", i
	}
	v, end, ok := p.valueAt(i + 1)
	if !ok || v.fraction {
		return "", i
	}
	return "x" + v.text, end
}

// headUnit reads a unit that begins a cell or stands behind one.
func (p *page) headUnit(i, end int) (id string, next int) {
	id, n := unitAt(p.tokens[:end], i)
	if t := p.termAt(i); t != nil && t.from == i && t.to <= end && t.to-i > n {
		if u, is := t.begin("unit."); is {
			return u, t.to
		}
	}
	if n == 0 {
		return "", i
	}
	return id, i + n
}

func (p *page) anyAmount(from, to int) bool {
	for i := from; i < to; i++ {
		if p.places[i].taken && p.places[i].kind == number {
			return true
		}
	}
	return false
}

// bareAt reads bare numbers at a token as figures of a head's units: one, then what
// stands in brackets or in the next cells in its other units.
func (p *page) bareAt(h *head, i int) (next int) {
	t := &p.places[i]
	if t.taken || t.kind != number || i == 0 || t.gap == glued {
		return i + 1
	}
	before := &p.places[i-1]
	if before.fold == "x" || before.text == "×" { // how many there are
		return i + 1
	}
	if before.piece != t.piece || before.kind == sign && before.text != ":" && before.text != ")" && before.text != "-" && t.gap != wide {
		return i + 1
	}
	v, at, ok := p.valueAt(i)
	if !ok {
		return i + 1
	}
	for k := at; k < len(p.places) && p.places[k].piece == t.piece; k++ {
		if p.senseAt(k, "drive.hand") { // its torque is a hand's: the number counts something
			return i + 1
		}
	}
	if n := p.besideTorque(h, i); n > 0 {
		return p.takeBeside(h, i, n)
	}
	if len(h.units) > 1 && p.at(i+1).text == "/" && p.at(i+2).kind == number { // "8/11" below "lbf·ft / N·m"
		if n, err := strconv.Atoi(t.text); err == nil {
			v, at = value{v: float64(n), text: t.text, step: 1}, i+1
		}
	}
	second, mark, at := p.rangeFrom(v, at)
	if at < len(p.places) && p.places[at].piece == t.piece && p.places[at].kind == word && p.places[at].gap != wide && p.termAt(at) == nil {
		return at // "10 times"
	}
	if at < len(p.places) && p.places[at].piece == t.piece && p.places[at].gap != wide && p.senseAt(at, "label.count") { // "2 pcs"
		p.facts = append(p.facts, fact{kind: "count", text: v.text, from: i, to: at})
		p.take(i, at)
		return at
	}
	if o := p.termAt(at); o != nil && t.gap != wide && p.places[at].piece == t.piece && p.places[at].gap != wide && (o.has("part.fastener") || o.has("part.plug")) {
		return at // "held by 5 screws"
	}
	aligned := t.gap == wide && p.numberCells(i) != len(h.units) // else they are told by their order
	f := p.amount(i, at, h.units[h.column(t.col, 0, aligned)], v, second, mark)
	f.headed = true
	end, inside := at, false
	for k := 1; k < len(h.units) && p.at(end).piece == t.piece; {
		from := end
		switch s := p.at(from); {
		case !inside && s.text == "(":
			inside = true
			from++
		case inside && s.text == ")":
			inside = false
			end++
			continue
		case s.text == "/" || s.text == "=" || inside && (s.text == "," || s.text == ";"):
			from++
		case inside || s.gap != wide:
			from = len(p.places)
		}
		if p.at(from).kind != number || p.at(from).piece != t.piece {
			break
		}
		w, to, is := p.valueAt(from)
		if !is {
			break
		}
		last, m, to := p.rangeFrom(w, to)
		g := p.amount(from, to, h.units[h.column(p.at(from).col, k, aligned && p.at(from).gap == wide)], w, last, m)
		if p.hasUnit(&f, g.unit) {
			break
		}
		f.twins = append(f.twins, g)
		end = to
		k++
	}
	if inside && p.at(end).text == ")" {
		end++
	}
	p.take(i, end)
	if g := p.factOf(i - 1); g != nil && g.kind == f.kind && t.gap == wide && !p.hasUnit(g, f.unit) {
		g.twins = append(append(g.twins, f), f.twins...) // a cell with a unit of its own stands before it
		return end
	}
	p.facts = append(p.facts, f)
	return end
}

// numberCells counts the cells of numbers that stand one behind the other from a token on.
func (p *page) numberCells(i int) (count int) {
	for i < len(p.places) && p.places[i].gap == wide {
		v, next, ok := p.valueAt(i)
		if !ok {
			break
		}
		if _, _, next = p.rangeFrom(v, next); p.at(next).gap != wide && p.at(next).piece == p.places[i].piece {
			break
		}
		count++
		if p.at(next).piece != p.places[i].piece {
			break
		}
		i = next
	}
	return count
}

// rangeFrom reads what makes a range or a tolerance of a number that ends before a token.
func (p *page) rangeFrom(v value, at int) (second value, mark string, next int) {
	if m, to := p.between(at); m != "" {
		if w, end, is := p.valueAt(to); is {
			return w, m, end
		}
	}
	return v, "", at
}

// column gives which of a head's units a number is in: the one that stands over it, where
// both are cells of a table, else the nth.
func (h *head) column(col, nth int, cell bool) int {
	if cell && len(h.cols) > 1 && h.cols[len(h.cols)-1]-h.cols[0] > 10 {
		best := 0
		for i, c := range h.cols {
			if abs(c-col) < abs(h.cols[best]-col) {
				best = i
			}
		}
		return best
	}
	return min(nth, len(h.units)-1)
}

func abs(n int) int { return max(n, -n) }
