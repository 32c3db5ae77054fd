package manual

// columnPart gives the part of a figure in a table whose head names what its row does not:
// rows are of oils and columns of their parts ("Drain plug torque" over "Gearbox ... 14
// ft-lb"), or rows of parts and columns of oils ("Engine  Gearbox" over "Drain plug  27  28").
// nil for none.
func (r *readings) columnPart(f *fact) *mention {
	t := &r.places[f.from]
	if t.gap != wide || !r.pieces[t.piece].cells {
		return nil
	}
	from, _ := r.pieceTokens(t.piece)
	if from == f.from {
		return nil
	}
	var row *mention
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < f.from; n++ {
		m := &r.mentions[n]
		switch {
		case m.foreign, m.part != "" && (row != nil || m.circuit != "" || m.gear):
			return nil // the row names its part by itself
		case row == nil && (m.part != "" || m.circuit != "" || m.gear):
			row = m
		}
	}
	if row == nil {
		return nil
	}
	head := r.headOver(t)
	if head == nil || head.foreign || (head.part == "") != (row.part != "") {
		return nil
	}
	part, oil := head, row
	if row.part != "" {
		part, oil = row, head
		if !r.oilsBeside(head) || row.ofFilter() {
			return nil
		}
	}
	m := *part
	m.circuit, m.gear = oil.circuit, oil.gear
	m.from, m.to = row.from, row.to
	return &m
}

// columnOil gives the oil of an amount or a grade in a table whose columns are of oils and whose rows
// say what of them: "Engine  Gearbox  Fork" over "Quantity  3 L  0.5 L  0.2 L". nil for none.
func (r *readings) columnOil(f *fact) *mention {
	at := f.from
	if r.places[at].gap != wide && at > 0 && r.places[at-1].fold == "sae" {
		at--
	}
	t := &r.places[at]
	from, _ := r.pieceTokens(t.piece)
	if t.gap != wide || at == from || !r.pieces[t.piece].cells {
		return nil
	}
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < at; n++ {
		if m := &r.mentions[n]; m.foreign || m.circuit != "" || m.gear || m.part != "" || m.loose != whole { // "Oil   SAE 40   SAE 90"
			return nil
		}
	}
	head := r.headOver(t)
	if head == nil || head.part != "" || head.loose != whole || head.measure {
		return nil
	}
	a, b := r.pieceTokens(r.places[head.from].piece)
	oils := 0
	for n := r.mentionFrom(a); n < len(r.mentions) && r.mentions[n].from < b; n++ {
		if o := &r.mentions[n]; o.part == "" && !o.foreign && (o.circuit != "" || o.gear) && (o.from == a || r.places[o.from].gap == wide) {
			oils++
		}
	}
	if oils < 2 {
		return nil
	}
	return head
}

// headOver gives what the head of a table names over a cell, nil for nothing: the nearest line
// above it that has no figures.
func (r *readings) headOver(t *place) *mention {
	for n := t.piece - 1; n >= 0 && n > t.piece-mostBackRows; n-- {
		a, b := r.pieceTokens(n)
		if a == b || r.places[a].section != t.section && !((r.pieces[n].heading || r.pieces[n].cells && !r.pieces[n+1].blank) && r.places[a].section == t.section-1) {
			return nil
		}
		if !r.figureIn(a, b) {
			return r.over(n, t.col)
		}
	}
	return nil
}

// oilsBeside reports whether a line names another oil beside a mention's, each in a cell: then
// its cells are the heads of their columns.
func (r *readings) oilsBeside(m *mention) bool {
	from, to := r.pieceTokens(r.places[m.from].piece)
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		if o := &r.mentions[n]; o.part == "" && !o.foreign && (o.gear != m.gear || o.circuit != m.circuit) && r.places[o.from].gap == wide {
			return m.circuit != "" || m.gear
		}
	}
	return false
}

// over gives the mention in a line whose cell stands nearest over a place.
func (r *readings) over(piece, col int) *mention {
	from, to := r.pieceTokens(piece)
	var best *mention
	apart := 1 << 20
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		m := &r.mentions[n]
		begin := m.from
		for begin > from && r.places[begin].gap != wide {
			begin--
		}
		if d := abs(r.places[begin].col - col); d < apart {
			best, apart = m, d
		}
	}
	if apart > 10 {
		return nil
	}
	return best
}

// cellsIn gives where the cells of a line begin.
func (p *page) cellsIn(piece int) (list []int) {
	from, to := p.pieceTokens(piece)
	for i := from; i < to; i++ {
		if i == from || p.places[i].gap == wide {
			list = append(list, i)
		}
	}
	return list
}

// cellOf gives which cell of a line stands at a place, the last that begins not behind it.
func (p *page) cellOf(piece, col int) (nth int) {
	for n, i := range p.cellsIn(piece) {
		if p.places[i].col <= col {
			nth = n
		}
	}
	return nth
}

// nthOver gives which cell of a table's head is that of a token, where a row has as many
// cells as the head: a copied table may have lost its columns' places. -1 where they tell
// nothing. labelled says that the head's first cell is that of the rows' labels.
func (p *page) nthOver(at, head int, labelled bool) int {
	cells, over := p.cellsIn(p.places[at].piece), p.cellsIn(head)
	nth := -1
	for n, i := range cells {
		if i <= at {
			nth = n
		}
	}
	first := len(p.places) // where the second cell begins
	if len(cells) > 1 {
		first = cells[1]
	}
	label := true
	for i := cells[0]; i < first && label; i++ {
		label = p.factAt(i) == nil || p.places[i].moved // a footnote's
	}
	switch {
	case len(over) < 2:
		return -1
	case len(cells) == len(over) && label == labelled:
		return nth
	case len(cells) == len(over)+1 && label && !labelled && nth > 0:
		return nth - 1
	}
	return -1
}
