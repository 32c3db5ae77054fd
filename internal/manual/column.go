package manual

// columnPart gives the part that the head over a figure's cell names, where rows are of the
// oils and columns of their parts: "Drain plug torque" over "Gearbox ... 14 ft-lb". The
// row's oil goes with it. nil for none.
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
		if m.part != "" || m.foreign {
			return nil // the row names its part by itself
		}
		if row == nil && (m.circuit != "" || m.gear) {
			row = m
		}
	}
	if row == nil {
		return nil
	}
	for n := t.piece - 1; n >= 0 && n > t.piece-mostBackRows; n-- {
		a, b := r.pieceTokens(n)
		if a == b || r.places[a].section != t.section && !(r.pieces[n].heading && r.places[a].section == t.section-1) {
			return nil
		}
		if r.figureIn(a, b) {
			continue
		}
		head := r.over(n, t.col)
		if head == nil {
			return nil
		}
		if head.foreign || head.part == "" {
			return nil
		}
		m := *head
		m.circuit, m.gear = row.circuit, row.gear
		m.from, m.to = row.from, row.to
		return &m
	}
	return nil
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
