package manual

import "tidysump/internal/quantity"

// head is a line, or the beginning of one, that says in which units the bare numbers
// behind it are.
type head struct {
	from, to int // tokens
	kind     string
	units    []string
	cols     []int // where each stands in its line
}

// findHeads finds units that stand without a number, and gives the bare numbers in their
// reach their units: to the end of what stands below one heading, or to the next head.
func (p *page) findHeads() {
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
			if p.places[i].section != section {
				break
			}
			i = p.bareAt(h, i)
		}
	}
}

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
		cell := i == from || t.gap == wide || p.places[i-1].text == ","
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
	return h
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
	second, mark := v, ""
	if m, to := p.between(at); m != "" {
		if w, end, is := p.valueAt(to); is {
			second, at, mark = w, end, m
		}
	}
	if at < len(p.places) && p.places[at].piece == t.piece && p.places[at].kind == word && p.places[at].gap != wide && p.termAt(at) == nil {
		return at // "10 times"
	}
	f := p.amount(i, at, h.units[h.column(t.col, 0, t.gap == wide)], v, second, mark)
	f.headed = true
	end := at
	for k := 1; k < len(h.units); k++ {
		inside := p.at(end).text == "(" && p.at(end).piece == t.piece
		from := end
		if inside {
			from++
		}
		if p.at(from).kind != number || p.at(from).piece != t.piece || !inside && p.at(from).gap != wide {
			break
		}
		w, to, is := p.valueAt(from)
		if !is || inside && p.at(to).text != ")" {
			break
		}
		g := p.amount(from, to, h.units[h.column(p.at(from).col, k, p.at(from).gap == wide)], w, w, "")
		if p.hasUnit(&f, g.unit) {
			break
		}
		f.twins = append(f.twins, g)
		if end = to; inside {
			end++
		}
	}
	p.take(i, end)
	p.facts = append(p.facts, f)
	return end
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
