package manual

// findUnread marks the figures of rows that nobody could read, as where a photo has lost the
// unit: "Final drive oil: 0.1 1". A row with one has its figure: what it says is said of that,
// and of no figure in another row.
func (p *page) findUnread() {
	for n := range p.pieces {
		from, to := p.pieceTokens(n)
		if p.pieces[n].heading {
			continue
		}
		first := to
		for first > from && p.places[first-1].kind == number && !p.places[first-1].taken {
			first--
		}
		if first == to || first == from || p.places[first-1].taken {
			continue
		}
		if t := &p.places[first]; t.gap == wide || t.gap == blank && (p.places[first-1].text == ":" || p.places[first-1].text == "-") {
			for i := first; i < to; i++ {
				p.places[i].unread = true
			}
		}
	}
}

// unreadIn gives where the last figure ends that stands between two tokens and could not be
// read, the first token where there is none.
func (p *page) unreadIn(from, to int) int {
	for i := to - 1; i >= from; i-- {
		if p.places[i].unread {
			return i + 1
		}
	}
	return from
}
