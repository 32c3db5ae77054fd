package manual

import "strings"

// names reads make, model and years in the page's head, and how the engine is cooled.
func (r *readings) names() {
	for n := 0; n < len(r.pieces) && n < 3; n++ {
		if r.nameIn(n) {
			break
		}
	}
	for i := range r.places {
		t := r.termAt(i)
		if t == nil || t.from != i {
			continue
		}
		if c, ok := t.begin("cooling."); ok {
			r.sayOnce("cooling", c, t.from, t.to)
		}
		if t.has("label.year") {
			r.years(t)
		}
	}
}

// nameIn looks for a make and a model in a line: a cell, or what a stroke or a dot parts,
// of words that nobody here knows and a number.
func (r *readings) nameIn(n int) bool {
	from, to := r.pieceTokens(n)
	for i := from; i < to; {
		end := i + 1
		for end < to && r.places[end].gap != wide && !strings.Contains("·|,:;–(", r.places[end].text) {
			end++
		}
		if r.named(i, end) {
			return true
		}
		for end < to && strings.Contains("·|,:;–(", r.places[end].text) {
			end++
		}
		i = end
	}
	return false
}

// named reads the tokens from to to as make and model.
func (r *readings) named(from, to int) bool {
	for to > from && r.pageWord(to-1) {
		to--
	}
	for from < to && r.pageWord(from) {
		from++
	}
	if to-from < 2 || to-from > 7 {
		return false
	}
	first := &r.places[from]
	if first.kind != word || r.places[from].term >= 0 || len(first.text) < 3 || small([]token{first.token}) {
		return false
	}
	numbered, unknown := false, 0
	for i := from; i < to; i++ {
		t := &r.places[i]
		switch {
		case t.kind == number:
			numbered = true
		case t.kind == word && (r.termAt(i) != nil && !r.pageWord(i) || r.words.function[t.fold] || small([]token{t.token}) && len(t.text) > 2):
			return false
		case t.kind == word:
			unknown++
		case t.text != "-" && t.text != "/" && t.text != "." && t.text != "+":
			return false
		}
	}
	if !numbered && unknown < 2 {
		return false
	}
	r.say("make", r.cased(from, from+1), from, from+1)
	r.say("model", r.cased(from+1, to), from+1, to)
	return true
}

// pageWord reports whether a token is of a head's usual words, or a number of a page.
func (r *readings) pageWord(i int) bool {
	t := r.termAt(i)
	return t != nil && (t.has("page.word") || t.has("label.page")) || r.places[i].kind == sign
}

// cased gives a name as it is written, one in capitals with its first letters large.
func (r *readings) cased(from, to int) string {
	var b strings.Builder
	for i := from; i < to; i++ {
		t := &r.places[i]
		if i > from && t.gap != glued {
			b.WriteByte(' ')
		}
		if t.kind == word && len(t.text) > 3 && t.text == strings.ToUpper(t.text) {
			b.WriteString(t.text[:1] + strings.ToLower(t.text[1:]))
		} else {
			b.WriteString(t.text)
		}
	}
	return b.String()
}

// years reads the years behind a word for them: "2016-2022", "2014-", "2014".
func (r *readings) years(t *term) {
	i := t.to
	for i < len(r.places) && (r.places[i].text == ":" || r.words.function[r.places[i].fold]) && i < t.to+3 {
		i++
	}
	if !r.isYear(i) {
		return
	}
	text, end := r.places[i].text, i+1
	if mark, next := r.between(end); mark == "-" {
		text, end = text+"-", next
		if r.isYear(next) {
			text, end = text+r.places[next].text, next+1
		}
	}
	r.sayOnce("years", text, t.from, end)
}

func (r *readings) isYear(i int) bool {
	return i < len(r.places) && r.places[i].kind == number && len(r.places[i].text) == 4 && r.places[i].text >= "1920" && r.places[i].text <= "2099"
}
