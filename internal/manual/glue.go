package manual

import "strings"

// spells reports whether words are a spelling of the dictionary, or begin with one of two words.
func (d *dictionary) spells(words []token) bool {
	_, n := d.match(words, 0)
	return n > 1
}

// leastJoined is how many letters a word has at least that may be several.
const leastJoined = 8

// partWords parts words that nobody here knows and that are made of such as stand together
// without a blank: "afterdisassembly". It gives how many.
func partWords(tokens []token, d *dictionary) (list []token, count int) {
	list = rewritten(tokens, func(at int) ([]token, int) {
		t := &tokens[at]
		if t.kind != word || t.repaired || len(t.text) != len(t.fold) {
			return nil, at + 1
		}
		ends := standardEnds(t.text)
		if ends == nil && !d.inner && len(t.text) >= leastJoined && (at+1 == len(tokens) || tokens[at+1].gap != glued || tokens[at+1].kind == sign) {
			ends = d.partedWord(t.lexeme) // where words are not joined by the language itself
		}
		var parts []token
		from := 0
		for _, end := range ends {
			w := part(tokens[at:at+1], from, end, word, t.text[from:end])
			if from > 0 {
				w.gap = blank
			}
			parts = append(parts, w)
			from = end
		}
		if len(parts) < 2 || parts[0].text != "API" && parts[0].text != "JASO" && !d.spells(parts) {
			return nil, at + 1
		}
		count++
		return parts, at + 1
	})
	return list, count
}

// standardEnds gives where the name of a standard and the category behind it end that stand
// together: "APISG", "JASOMA"; nil for another word.
func standardEnds(text string) []int {
	for _, name := range [...]string{"API", "JASO"} {
		if len(text) > len(name) && len(text) <= len(name)+2 && strings.HasPrefix(text, name) && inCapitalsOnly(text) {
			return []int{len(name), len(text)}
		}
	}
	return nil
}

// gluedGrade gives the tokens of a grade that stands right behind the name of its standard and
// has letters in it: "SAEl0W".
func gluedGrade(tokens []token, d *dictionary, spoilt bool) []token {
	text := textOf(tokens)
	if len(text) < 5 || text[:3] != "SAE" || tokens[0].text == "SAE" {
		return nil
	}
	rest := part(tokens, 3, len(text), word, text[3:])
	rest.gap = blank
	if list := spoiltFigure([]token{rest}, 0, 1, d, spoilt); list != nil {
		return append([]token{part(tokens, 0, 3, word, "SAE")}, list...)
	}
	return nil
}

// closeSpellings takes two blanks for one between words that are one spelling, and between a
// number and its unit: "Spark  plug", "300  km".
func (d *dictionary) closeSpellings(tokens []token) {
	for i := 1; i < len(tokens); i++ {
		t, before := &tokens[i], &tokens[i-1]
		if t.gap != wide || t.led || t.kind != word || t.col-before.end != 2 {
			continue
		}
		t.gap = blank
		_, unit := unitAt(tokens, i)
		if !(before.kind == number && unit > 0 && (len(t.text) > 1 || t.fold == "l")) && !(before.kind == word && d.spells([]token{*before, *t})) {
			t.gap = wide
		}
	}
}
