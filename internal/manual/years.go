package manual

import (
	"strings"
)

// years reads the years that the page is of: behind a word for them, before "models", or
// with a word that says from when on.
func (r *readings) years() {
	var later [][2]int
	until := false
	defer func() {
		if len(later) == 1 && !r.says("years") {
			from, end := later[0][0], later[0][1]
			r.say("years", r.places[from].text, from, end, doubt("manual-by-context", "text", r.places[from].text))
		}
	}()
	for i := 0; i < len(r.places); {
		text, end, open := r.yearsFrom(i)
		if text == "" {
			i++
			continue
		}
		if end == i+1 || strings.HasSuffix(text, "-") {
			if at := i - 1; at >= 0 && r.isYear(i) && r.senseAt(at, "bound.most") && len(r.places[at].text) > 2 { // "until 2012": of other years too
				i, until = end, true
				continue
			}
		}
		from := i
		said := open
		for k := i - 1; k >= 0 && k >= i-4 && !said; k-- {
			if r.senseAt(k, "label.year") || r.senseAt(k, "label.model") {
				from, said = r.termAt(k).from, true
			} else if r.places[k].kind == word && !r.places[k].function {
				break
			}
		}
		if r.senseAt(end, "label.model") && r.at(end).gap != wide {
			said, end = true, r.termAt(end).to
		}
		// In brackets in the page's head: "GULLET 550 (1983-1987)".
		if !said && len(text) > 5 && r.at(i-1).text == "(" && r.at(end).text == ")" && r.places[i].piece < headPieces {
			r.say("years", text, i, end) // of each model that the head names
			i = end
			continue
		}
		switch {
		case said:
			r.sayOnce("years", text, from, end)
		case len(text) == 4 && r.at(i-1).text == "(" && r.at(end).text == ")" && r.places[i].piece < headPieces && r.at(i-2).kind != sign && r.bracketsName(i-2): // "the Curlew 350 (1958)"
			later = append(later, [2]int{i, end})
		case r.inHead(i, end):
			if len(text) == 4 { // it may be when the book was printed
				later = append(later, [2]int{i, end})
			} else {
				r.sayOnce("years", text, i, end)
			}
		}
		i = end
	}
	for n := range r.list {
		if a := &r.list[n]; until && a.What == "years" && a.Sure {
			a.Sure, a.Doubts = false, append(a.Doubts, doubt("manual-by-context", "text", a.Text))
		}
	}
}

// bracketsName reports whether the name of a model ends at a token: a strange word, or a number
// right behind one.
func (r *readings) bracketsName(at int) bool {
	if at > 0 && r.at(at).kind == number {
		at--
	}
	return at >= 0 && r.strangeAt(at) && capital(r.places[at].text)
}

// inHead reports whether years stand in the page's first line as a cell of their own, behind a
// word for a manual, or before a word for a season.
func (r *readings) inHead(from, end int) bool {
	if n := r.places[from].piece; n == 1 && r.starts[1] == from && r.capitalIn(from) { // below the name, at the line's beginning
		return end-from > 1 && (end == len(r.places) || r.places[end].piece != n || r.places[end].gap == wide)
	}
	if r.places[from].piece > 0 || from == 0 {
		return false
	}
	before := r.places[from].gap == wide || r.senseAt(from-1, "page.word") || r.at(from-1).text == ","
	after := end == len(r.places) || r.places[end].piece != r.places[from].piece || r.places[end].gap == wide || r.senseAt(end, "label.year")
	return before && after
}

// yearsFrom reads years at a token: "2016-2022", "2014-", "1957 and 1958", "from 2015",
// "2015 and later". open reports a word that makes them years by itself.
func (r *readings) yearsFrom(i int) (text string, end int, open bool) {
	since := r.senseAt(i, "year.from")
	if since {
		i = r.termAt(i).to
		for i < len(r.places) && r.senseAt(i, "label.year") {
			i = r.termAt(i).to
		}
	}
	text, end = r.yearAt(i)
	if text == "" {
		return "", i, false
	}
	mark, next := r.between(end)
	if mark == "" && r.senseAt(end, "join.and") {
		if second, _ := r.yearAt(r.termAt(end).to); second != "" {
			mark, next = "-", r.termAt(end).to
		}
	}
	second, behind := r.yearAt(next)
	switch {
	case mark == "-" && second != "":
		return text + "-" + second, behind, false
	case r.senseAt(end, "year.on"):
		return text + "-", r.termAt(end).to, true
	case end > i+1 && mark == "" && !since: // "'11" alone
		return "", i, false
	case mark == "-":
		return text + "-", next, false
	case since:
		return text + "-", end, true
	}
	return text, end, false
}

// yearAt reads a year at a token, also one without its century: "'11". text is "" for none.
func (r *readings) yearAt(i int) (text string, end int) {
	if r.isYear(i) {
		return r.places[i].text, i + 1
	}
	if n := r.at(i + 1); r.at(i).text == "'" && (r.places[i].gap != glued || r.at(i-1).kind == sign) && n.kind == number && n.gap == glued && len(n.text) == 2 {
		if n.text < firstShort {
			return "20" + n.text, i + 2
		}
		return "19" + n.text, i + 2
	}
	return "", i
}

// firstShort is the first year that is of the last century where none is written: "'45".
const firstShort = "40"

func (r *readings) isYear(i int) bool {
	return i < len(r.places) && !(r.places[i].gap == glued && i > 0 && strings.Contains("/.", r.places[i-1].text)) && // "03/02/2006"
		r.places[i].kind == number && isYear(r.places[i].text)
}

func isYear(text string) bool {
	return len(text) == 4 && text >= "1920" && text <= "2099" && !strings.ContainsAny(text, ".,")
}

// yearsLike gives a text that begins with a year, "" for another.
func yearsLike(text string) string {
	if bare := strings.TrimPrefix(text, "-"); len(bare) >= 4 && isYear(bare[:4]) {
		return text
	}
	return ""
}

// yearsOf reads a cell as years, "" where it is none.
func (p *page) yearsOf(cell []token) string {
	text, i := "", 0
	since, until := false, false
	for i < len(cell) && text == "" {
		switch {
		case cell[i].kind == number && isYear(cell[i].text):
			text = cell[i].text
		case p.hasSense(cell, i, "year.from"):
			since = true
		case p.hasSense(cell, i, "range.to"):
			until = true
		case !p.hasSense(cell, i, "label.year") && !p.hasSense(cell, i, "label.model"):
			return ""
		}
		i++
	}
	if text == "" {
		return ""
	}
	switch {
	case i == len(cell) && since:
		return text + "-"
	case i == len(cell) && until:
		return "-" + text
	case i == len(cell):
		return text
	case p.hasSense(cell, i, "year.on"):
		return text + "-"
	case cell[i].text == "-" && i+1 == len(cell):
		return text + "-"
	case (cell[i].text == "-" || cell[i].text == "/") && i+2 == len(cell) && isYear(cell[i+1].text):
		return text + "-" + cell[i+1].text
	}
	return ""
}

// hasSense reports whether a term of that sense begins at a token of a line.
func (p *page) hasSense(tokens []token, i int, sense string) bool {
	e, _ := p.words.match(tokens, i)
	if e == nil {
		return false
	}
	for _, s := range e.senses {
		if s == sense {
			return true
		}
	}
	return false
}
