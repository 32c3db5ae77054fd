package manual

// mostNote is the most tokens of a footnote that is read in its row.
const mostNote = 14

// footnotes puts what a footnote says where its mark stands in a row: "capacity 2) … 1.4 L"
// and below "2) with filter" are one row. Without its mark in a row a line stays.
func footnotes(list []piece) []piece {
	var kept []piece
	rows := map[string][]int{} // of each mark, the rows that end a cell with it
	for i := range list {
		p := &list[i]
		mark, n := noteMark(p.tokens, 0)
		at := rows[mark]
		if n > 0 && len(at) > 0 && n < len(p.tokens) && len(p.tokens)-n <= mostNote && !p.joined && !(i+1 < len(list) && list[i+1].joined) {
			for _, row := range at {
				kept[row].tokens = noted(kept[row].tokens, mark, p.tokens[n:])
			}
			delete(rows, mark) // a mark that comes again is of what stands between
			continue
		}
		for k := 1; k < len(p.tokens); k++ {
			mark, n := noteMark(p.tokens, k)
			if n == 0 {
				continue
			}
			if k+n == len(p.tokens) || p.tokens[k+n].gap == wide {
				rows[mark] = append(rows[mark], len(kept))
			}
			k += n - 1
		}
		kept = append(kept, *p)
	}
	return kept
}

// noteMark reads a footnote's mark at a token: stars, a dagger, "2)".
func noteMark(tokens []token, at int) (mark string, length int) {
	switch t := &tokens[at]; {
	case t.text == "*" || t.text == "†" || t.text == "‡":
		for at+length < len(tokens) && tokens[at+length].text == t.text && (length == 0 || tokens[at+length].gap == glued) {
			mark += t.text
			length++
		}
		return mark, length
	case t.kind == number && len(t.text) == 1 && at+1 < len(tokens) && tokens[at+1].text == ")" && tokens[at+1].gap == glued && (at == 0 || tokens[at-1].text != "(" && t.gap != glued):
		return t.text + ")", 2
	}
	return "", 0
}

// noted gives a row with a footnote's words in the place of its mark.
func noted(row []token, mark string, note []token) []token {
	var list []token
	for k := 0; k < len(row); {
		m, n := noteMark(row, k)
		if k == 0 || n == 0 || m != mark || k+n < len(row) && row[k+n].gap != wide {
			list = append(list, row[k])
			k++
			continue
		}
		for i, t := range note {
			t.moved = true
			if i == 0 {
				t.gap = blank
			}
			list = append(list, t)
		}
		k += n
	}
	return list
}
