package manual

// A bike's name may have no number, or a single figure that is as often a page's or a step's. Such
// a name is told by where it stands: between quotation marks in a title, or in a title of which
// another cell says that a page begins there. Where that is not certain, nothing in the text is.

// plainTitle reads the line of a page's title that names a bike without a number, or with one
// figure. certain reports whether another page begins there for sure.
func (p *page) plainTitle(rows []row, n int) (b bike, text string, certain bool) {
	tokens := rows[n].tokens
	begins := n == 0 || rows[n].blank
	apart := n+1 == len(rows) || rows[n+1].blank
	if n > 0 && (rows[n-1].number == rows[n].number || !begins && !apart || namesGrade(tokens)) {
		return bike{}, "", false
	}
	marked := p.pageMark(tokens)
	for i := 0; i < len(tokens); {
		from, to := i, i
		if len(b.words) == 0 {
			to = p.plainName(tokens, i)
		}
		if to > from {
			quoted := from > 0 && quotes(tokens[from-1].text) && to < len(tokens) && quotes(tokens[to].text)
			end := to
			if quoted {
				end++
			}
			number, behind := nameNumber(tokens, end, quoted)
			cell := behind == len(tokens) || tokens[behind].gap == wide
			switch {
			case quoted, len(number) == 1 && cell && (marked || n == 0) && apart, to-from > 1 && cell && marked && number == "":
			default:
				return bike{}, "", false
			}
			for k := from; k < to; k++ {
				if tokens[k].kind == word {
					b.words = append(b.words, plainWord(tokens[k].text))
				}
			}
			b.number = number
			if len(number) == 1 {
				to = behind
			}
			text = casedName(tokens[from:to])
			certain = begins && (number != "" || quoted && marked)
			i = behind
			continue
		}
		c := chunkAt(tokens, i)
		k := p.inHeads(tokens, i)
		if c.to > i && k == 0 && tokens[i].kind == word && !tokens[i].function && !p.strangeChunk(tokens, &c) && c.letters > 2 && !capital(c.text) {
			return bike{}, "", false // a sentence
		}
		if tokens[i].kind == number {
			if _, size := unitAt(tokens, i+1); size > 0 && tokens[i+1].gap != wide {
				return bike{}, "", false // a row of figures
			}
		}
		i = max(i+1, c.to, i+k)
	}
	return b, text, certain && len(b.words) > 0
}

// plainName gives where a run of capital words ends that begins a cell, or stands behind a quotation
// mark, and that nobody here knows: up to three, also with a few blanks between make and model.
func (p *page) plainName(tokens []token, i int) int {
	if i > 0 && tokens[i].gap != wide && !quotes(tokens[i-1].text) {
		return i
	}
	n := i
	for n < len(tokens) && n < i+3 && (n == i || tokens[n].gap == blank || tokens[n].col-tokens[n-1].end <= mostApart && tokens[n].gap == wide) {
		c := chunkAt(tokens, n)
		if c.to != n+1 || !p.strangeChunk(tokens, &c) {
			break
		}
		n = c.to
	}
	return n
}

// nameNumber reads what stands behind a name at a token: a single figure, or the displacement of one
// in quotation marks.
func nameNumber(tokens []token, at int, quoted bool) (figures string, end int) {
	i := at
	if quoted && i < len(tokens) && tokens[i].text == "," {
		i++
	}
	if i >= len(tokens) || tokens[i].kind != number {
		return "", at
	}
	unit, size := unitAt(tokens, i+1)
	switch {
	case quoted && unit == "mL":
		return tokens[i].text, i + 1 + size
	case !quoted && size == 0 && len(tokens[i].text) == 1 && tokens[i].gap == blank:
		return tokens[i].text, i + 1
	}
	return "", at
}

// pageMark reports whether a cell of a line says that it is a page's first or last: a number that
// stands alone at its beginning or its end, or words for a book or a page.
func (p *page) pageMark(tokens []token) bool {
	last := len(tokens) - 1
	if last < 1 {
		return false
	}
	if tokens[last].kind == number && tokens[last].gap == wide || tokens[0].kind == number && tokens[1].gap == wide {
		return true
	}
	for i := range tokens {
		if (i == 0 || tokens[i].gap == wide) && (p.hasSense(tokens, i, "page.word") || p.hasSense(tokens, i, "label.page")) {
			return true
		}
	}
	return false
}

// companyIn reports whether a line begins with the name of a company, as the first of a page does:
// "X MOTOR CYCLES LTD."
func (p *page) companyIn(tokens []token) bool {
	for i := range tokens {
		t := &tokens[i]
		if i > 0 && (t.gap == wide || t.kind != word || !capital(t.text)) {
			return false
		}
		if c := chunkAt(tokens, i); i > 0 && c.to == i+1 && p.hasSense(tokens, i, "label.company") {
			return true
		} else if i == 0 && !p.strangeChunk(tokens, &c) {
			return false
		}
	}
	return false
}
