package manual

import "slices"

// namedNotes gives footnotes that are called so ("Engine oil (note 3)", and below "3. Replace
// …" or "Note 3: …") the marks that other footnotes have: "3)".
func (d *dictionary) namedNotes(list []piece) {
	called := map[string]bool{} // by rows
	for i := range list {
		p := &list[i]
		for k := 1; k+1 < len(p.tokens); k++ {
			if !d.noteNumber(p.tokens, k) || p.joined {
				continue
			}
			from, to := k, k+2
			if p.tokens[k-1].text == "(" && k > 1 && to < len(p.tokens) && p.tokens[to].text == ")" {
				from, to = k-1, to+1
			}
			if to < len(p.tokens) && p.tokens[to].gap != wide || !p.cells && p.tokens[from].gap != wide && to < len(p.tokens) {
				continue // "see note 3 before you begin"
			}
			n := p.tokens[k+1]
			n.gap = p.tokens[from].gap
			called[n.text] = true
			p.tokens = slices.Concat(p.tokens[:from], marked(n), p.tokens[to:])
		}
	}
	if len(called) == 0 {
		return
	}
	for i := range list {
		p := &list[i]
		k := 0
		for k < len(p.tokens) && k < 2 && (d.isNote(p.tokens, k) || k > 0 && p.tokens[k].text == ":") {
			k++ // "Notes: 1. …"
		}
		if k+2 < len(p.tokens) && p.tokens[k].kind == number && called[p.tokens[k].text] && closesMark(&p.tokens[k+1]) {
			n := p.tokens[k]
			n.step = false
			p.tokens = slices.Concat(marked(n), p.tokens[k+2:])
			p.joined = false
		}
	}
}

// marked gives a footnote's mark: its number and a bracket.
func marked(n token) []token {
	end := n
	end.lexeme, end.gap, end.from = newLexeme(n.lexeme, sign, ")", ")"), glued, n.to
	return []token{n, end}
}

// closesMark reports whether a sign stands between a footnote's number and its words.
func closesMark(t *token) bool {
	return t.text == "." || t.text == ":" || t.text == ")" || t.text == "-"
}

// isNote reports whether a word for a footnote stands at a token.
func (d *dictionary) isNote(tokens []token, at int) bool {
	e, _ := d.match(tokens, at)
	return e != nil && slices.Contains(e.senses, "label.note")
}

// noteNumber reports whether a footnote is named at a token: "note 3".
func (d *dictionary) noteNumber(tokens []token, at int) bool {
	n := &tokens[at+1]
	return n.kind == number && len(n.text) == 1 && n.gap != wide && tokens[at].kind == word && d.isNote(tokens, at)
}
