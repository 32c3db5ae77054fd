package manual

import "strings"

// mostPage is how many digits of a page's number there may be.
const mostPage = 3

// numberOf gives the number that is printed on a page, as "58", "2-3", "3/5": at the end of
// its first line or alone in its last, "" for none.
func numberOf(rows []row, d *dictionary) string {
	if len(rows) == 0 {
		return ""
	}
	if n, at := lastNumber(rows[0].tokens); n != "" && parts(rows[0].tokens, at, d, strings.ContainsAny(n, "-/.")) {
		return n
	}
	last := rows[len(rows)-1].tokens
	if n, at := lastNumber(last); n != "" && (onlySigns(last[:at]) || pageWord(last, at, d) == 0) {
		return n
	}
	return ""
}

// lastNumber gives the number at a line's end, which may have two parts, and its first token.
func lastNumber(tokens []token) (text string, at int) {
	end := len(tokens)
	for end > 0 && tokens[end-1].text == "-" {
		end--
	}
	at = end
	for numbers := 0; at > 0 && numbers < 2; at-- {
		t := &tokens[at-1]
		part := t.kind == sign && (t.text == "-" || t.text == "/" || t.text == ".")
		if t.kind == number && len(t.text) <= 2*mostPage && (at == end || tokens[at].kind == sign) {
			numbers++
		} else if !part || at == end || tokens[at].kind == sign {
			break
		}
		text = t.text + text
	}
	for strings.HasPrefix(text, "-") || strings.HasPrefix(text, "/") || strings.HasPrefix(text, ".") {
		text = text[1:]
		at++
	}
	for one := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune("-/.,", r) }) {
		if len(one) > mostPage {
			return "", 0
		}
	}
	return text, at
}

// parts reports whether something parts a number at a line's end from what it might be
// otherwise: the word for a page; a gap or a sign, where the line names nothing that has a
// figure; for one of two parts no more than that it names no fastener.
func parts(tokens []token, at int, d *dictionary, two bool) bool {
	if at == 0 || pageWord(tokens, at, d) >= 0 {
		return at > 0
	}
	before := &tokens[at-1]
	if !two && tokens[at].gap != wide && (before.kind != sign || before.gap == glued) {
		return false
	}
	for i := 0; i < at; {
		e, n := d.match(tokens[:at], i)
		if e == nil {
			if !two && tokens[i].kind == number && tokens[i].gap == wide {
				return false // a row of figures
			}
			i++
			continue
		}
		for _, sense := range e.senses {
			if strings.HasPrefix(sense, "part.") || !two && (strings.HasPrefix(sense, "amount.") || strings.HasPrefix(sense, "other.")) {
				return false
			}
		}
		i += n
	}
	return true
}

// pageWord gives where the word for a page begins that stands right before a number, -1
// where there is none.
func pageWord(tokens []token, at int, d *dictionary) int {
	for i := max(0, at-2); i < at; i++ {
		e, n := d.match(tokens[:at], i)
		if e != nil && (i+n == at || i+n == at-1 && tokens[at-1].kind == sign) {
			for _, sense := range e.senses {
				if sense == "label.page" {
					return i
				}
			}
		}
	}
	return -1
}

// onlySigns reports whether no word and no number is among tokens.
func onlySigns(tokens []token) bool {
	for _, t := range tokens {
		if t.kind != sign {
			return false
		}
	}
	return true
}
