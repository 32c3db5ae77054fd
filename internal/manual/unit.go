package manual

import (
	"strings"

	"tidysump/internal/quantity"
)

// mostUnit is how many tokens a unit may take: "lbf - ft", "U.S. fl. oz.".
const mostUnit = 8

// unitAt reads a unit in symbols that stands at a token: its id as the program has it,
// and how many tokens it takes; 0 for none. The longest counts.
func unitAt(tokens []token, at int) (id string, length int) {
	if at >= len(tokens) {
		return "", 0
	}
	if tokens[at].kind == word && !tokens[at].beginsUnit() {
		return "", 0
	}
	if q := at + 1; tokens[at].text == "\"" && tokens[at].gap != glued && q < len(tokens) && tokens[q].kind == word && tokens[q].gap == glued {
		return "", 0 // 600 "Lark"
	}
	if tokens[at].text == "\"" && closesQuotation(tokens, at) {
		return "", 0 // "LARK-600"
	}
	text := ""
	for n := 0; n < mostUnit && at+n < len(tokens); n++ {
		t := &tokens[at+n]
		if n == 0 && t.kind == sign && !strings.Contains("°\"%'", t.text) || n > 0 && t.gap == wide || t.kind == number && n == 0 {
			break
		}
		if t.kind == sign && !strings.Contains("°\".-·*×/²³", t.text) {
			break
		}
		if t.kind == number && (t.gap != glued || len(t.text) > 1) {
			break
		}
		if n > 0 {
			text += strings.ToLower(t.text)
		} else if text = t.text; !t.upper || t.fold != text {
			text = strings.ToLower(text)
		}
		if t.kind == sign && strings.Contains(".-·*×/", t.text) {
			continue
		}
		if at+n+1 < len(tokens) && tokens[at+n+1].gap == glued && tokens[at+n+1].kind != sign && tokens[at+n].kind == word {
			if !(tokens[at+n+1].kind == number && (tokens[at+n+1].text == "2" || tokens[at+n+1].text == "3")) {
				continue
			}
		}
		unit := ""
		if n == 0 && text == t.fold {
			unit = t.unitOf()
		} else {
			unit = unitOf(text)
		}
		if unit != "" && !(n == 0 && len(t.text) == 1 && strings.Contains("SHDM", t.text)) {
			id, length = unit, n+1
		}
	}
	if end := at + length; length > 0 && end+1 < len(tokens) && tokens[end].text == "'" && tokens[end].gap == glued && tokens[end+1].kind == word && tokens[end+1].gap == glued {
		return "", 0 // the d of "d'huile"
	}
	return id, length
}

// closesQuotation reports whether a quotation mark ends what another begins right before a word.
func closesQuotation(tokens []token, at int) bool {
	for i := at - 1; i >= 0 && i >= at-mostUnit && tokens[i+1].gap != wide; i-- {
		if tokens[i].text == "\"" {
			return tokens[i].gap != glued && tokens[i+1].kind == word && tokens[i+1].gap == glued
		}
	}
	return false
}

// unitOf gives the unit that a short text spells.
func unitOf(text string) string {
	if len(text) > 20 {
		return ""
	}
	return quantity.UnitOf(text)
}

// measure looks a word up as a unit.
func (x *lexeme) measure() {
	if !x.measured {
		x.measured, x.begins, x.unit = true, quantity.UnitBegins(x.fold), unitOf(x.fold)
	}
}
