package manual

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tidysump/internal/finding"
)

// names reads make, model and years, and how the engine is cooled.
func (r *readings) names() {
	r.makeAndModel()
	for i := range r.places {
		t := r.termAt(i)
		if t == nil || t.from != i {
			continue
		}
		if c, ok := t.begin("cooling."); ok {
			if from, _ := r.sentenceOf(i); t.to-i == 1 && r.about(from, i, "other.action") {
				continue // "clean it with air"
			}
			r.say("cooling", c, t.from, t.to)
		}
	}
	for i := range r.places {
		if e, to := r.rowMatch(i); e != nil {
			t := term{i, to, e.senses}
			if c, ok := t.begin("cooling."); ok {
				r.say("cooling", c, i, to)
			}
		}
	}
	r.years()
}

// rowMatch gives the spelling that a label's last word and the cell behind it make together:
// "Cooling ..... air", "Refroidissement ..... par liquide".
func (r *readings) rowMatch(at int) (e *entry, to int) {
	i := at + 1
	if r.at(i).text == ":" {
		i++
	}
	if label, value := r.at(at), r.at(i); label.kind != word || value.kind != word || i == at+1 && value.gap != wide || value.piece != label.piece {
		return nil, 0
	}
	both := []token{*r.places[at].token, *r.places[i].token}
	both[1].gap = blank
	for i++; i < len(r.places) && r.places[i].kind == word && r.places[i].piece == r.places[at].piece && r.places[i].gap != wide; i++ {
		if both = append(both, *r.places[i].token); len(both) > mostCooling {
			return nil, 0
		}
	}
	if e, n := r.words.match(both, 0); n == len(both) {
		return e, i
	}
	return nil, 0
}

// mostCooling is the most words that a label's last word and its cell say together.
const mostCooling = 5

// headPieces is in how many lines from the top make and model are looked for.
const headPieces = 4

// makeAndModel looks for names in the page's head and in its last line: capital words
// that nobody here knows, with a number behind them. A make may stand alone elsewhere in
// the head.
func (r *readings) makeAndModel() {
	var lone, named [2]int
	numbered := false
	for n := range r.pieces {
		if n >= headPieces && n < len(r.pieces)-1 {
			continue
		}
		from, to := r.pieceTokens(n)
		if r.tableHead(from, to) || r.clockIn(from, to) {
			continue
		}
		for i := from; i < to; {
			end := r.nameFrom(i, to)
			switch {
			case end == i:
				end = i + 1
			case r.ofTrade(end) && r.places[end].gap == blank && end < to && r.factIn(end, to): // a row's label
			case r.isNamed(i, end) && !numbered:
				named, numbered = [2]int{i, end}, true
			case lone[1] == 0 && n < 2 && r.companyAt(end) && r.wordsOnly(i, end):
				lone = [2]int{i, end}
			case named[1] == 0 && (n == 0 && len(r.list) > 0 && r.wordsOnly(i, end) || r.betweenQuotes(i, end)):
				named = [2]int{i, end}
				if quotes(r.places[end-1].text) {
					named[1]--
				}
			case lone[1] == 0 && n < 2 && end == i+1 && r.alone(i, from, to):
				lone = [2]int{i, end}
			}
			i = end
		}
	}
	for k := range r.models {
		r.modelIn(k)
	}
	from, to := named[0], named[1]
	if len(r.models) > 0 && yearsLike(r.models[0]) == "" { // the table's head has named them
		if to > 0 && lone[1] == 0 && !strings.HasPrefix(fold(r.models[0]), r.places[from].fold) {
			lone = [2]int{from, from + 1}
		}
		to = 0
	}
	company := lone[1] > 0 && r.companyAt(lone[1])
	switch {
	case to > 0 && (r.at(from+1).kind == number || to == from+1 || company || lone[0] < from && r.headCell(from)) && lone[1] > 0:
		beside := r.besideName(lone, from, to)
		r.name("make", lone[0], lone[1], beside || company || r.twice(lone[0], from) || r.labelled(lone[0]))
		r.name("model", from, to, beside || company && quotes(r.at(from-1).text) || r.twice(from, lone[0]) || r.labelled(from))
	case to == from+2 && r.labelled(from), to > 0 && quotes(r.at(from-1).text): // "Model Rebeco 74"
		r.name("model", from, to, r.labelled(from))
	case to > from+1 && r.places[from+1].text != "-": // else nobody says whose "ABC-40" is
		quoted := r.quotedIn(from+1, to) // The Sandling "Lark"
		sure := (r.places[from].piece == 0 || r.titled(from, to)) && (r.strangeAt(from+1) && numbered && r.strangeAt(from) || quoted) && !r.spoilt
		r.name("make", from, from+1, sure || r.twice(from, from+1))
		r.name("model", from+1, to, sure)
	case lone[1] > 0 && len(r.models) > 0:
		r.name("make", lone[0], lone[1], lone[0] == 0 && r.modelCells[0].From == r.at(lone[1]).from || r.twice(lone[0], lone[0]))
	case company:
		r.name("make", lone[0], lone[1], true)
	}
	if to > 0 && r.says("model") {
		r.otherModels(to)
	}
}

// otherModels reads the names that a title joins to its model's, which ends at a token: "Lark 480
// (1994 to 1999) and Lark 560", "Lark 480 – Lark 480 Travel", "Lark 480 and 560".
func (r *readings) otherModels(at int) {
	n := slices.IndexFunc(r.list, func(o Reading) bool { return o.What == "model" })
	first := &r.list[n]
	word := at - 1
	for word > 0 && r.places[word-1].from >= first.Quote.From {
		word--
	}
	line := r.places[at-1].piece
	_, end := r.pieceTokens(line)
	several := func(text string) finding.Finding { return doubt("manual-several-models", "text", text) }
	for at < end {
		if r.places[at].text == "(" {
			for at < end && r.places[at].text != ")" {
				at++
			}
			at++
		}
		if at+1 >= end || r.places[at].gap == wide || !r.senseAt(at, "join.and") && !strings.Contains("/-,", r.places[at].text) || r.places[at].gap == glued && r.places[at].text == "-" {
			return
		}
		at++
		to := r.nameFrom(at, end)
		text := ""
		switch t := &r.places[at]; {
		case t.fold == r.places[word].fold && to > at+1 && r.isNamed(at, to):
			text = r.cased(at, to)
		case t.kind == number && !t.taken && r.places[at-2].kind == number && len(t.text) == len(r.places[at-2].text) && len(t.text) == 3:
			to = at + 1
			text = r.cased(word, word+1) + " " + t.text
		default:
			return
		}
		r.say("model", text, at, to, several(text))
		first = &r.list[n]
		if first.Sure {
			first.Sure, first.Doubts = false, append(first.Doubts, several(first.Text))
		}
		at = to
	}
}

// companyAt reports whether words for a company stand at a token, maybe behind what it makes:
// "Ltd.", "Motor Cycles Ltd.", "Fahrzeugwerke AG".
func (r *readings) companyAt(at int) bool {
	if r.at(at).gap == wide {
		return false
	}
	if t := r.termAt(at); t != nil && t.has("label.model") && r.at(t.to).gap != wide {
		at = t.to
	}
	return r.senseAt(at, "label.company")
}

// betweenQuotes reports whether a run of words stands in quotation marks of its own: the name of
// a model, as in a title "LUBRICATION OF THE »LARK«".
func (r *readings) betweenQuotes(from, to int) bool {
	if from == 0 || !quotes(r.places[from-1].text) || to-from > mostQuoted {
		return false
	}
	return quotes(r.places[to-1].text) || quotes(r.at(to).text)
}

// mostQuoted is how many tokens the name of a model has at most between quotation marks.
const mostQuoted = 4

// quotedIn reports whether a quotation mark stands between two tokens.
func (r *readings) quotedIn(from, to int) bool {
	for i := from; i < to; i++ {
		if quotes(r.places[i].text) {
			return true
		}
	}
	return false
}

// quotes reports whether a sign is a quotation mark.
func quotes(text string) bool {
	switch text {
	case "\"", "«", "»", "“", "”", "„", "‹", "›":
		return true
	}
	return false
}

// name reads a make or a model. It is asked for unless it is clear that it is one.
func (r *readings) name(what string, from, to int, clear bool) {
	var doubts []finding.Finding
	text := r.cased(from, to)
	if !clear {
		doubts = append(doubts, doubt("manual-by-context", "text", text))
	}
	r.say(what, text, from, to, doubts...)
}

// labelled reports whether a word such as "model" stands right before a name.
func (r *readings) labelled(at int) bool {
	k := at - 1
	for k > 0 && r.places[k].kind == sign {
		k--
	}
	return k >= 0 && r.places[k].piece == r.places[at].piece && r.senseAt(k, "label.model")
}

// twice reports whether a word of a name also stands elsewhere on the page, where another word
// than that of the token beside follows.
func (r *readings) twice(at, beside int) bool {
	for i := range r.places {
		if i != at && r.places[i].fold == r.places[at].fold && r.at(i+1).fold != r.at(beside).fold && r.at(i+1).kind == word && r.places[i].piece < headPieces {
			return true
		}
	}
	return false
}

// tableHead reports whether a line is the head of a table: it has units without a number,
// or says what its columns are.
func (r *readings) tableHead(from, to int) bool {
	for i := range r.heads {
		if h := &r.heads[i]; h.from >= from && h.from < to {
			return true
		}
	}
	return r.about(from, to, "label.count") || r.about(from, to, "label.thread")
}

// besideName reports whether a word in capitals begins the page, and the name of a model with its
// number stands a few blanks behind it, as a title sets make and model apart: "GREVENSEE  Dohle 175".
func (r *readings) besideName(lone [2]int, from, to int) bool {
	first, next := &r.places[lone[0]], r.at(lone[1])
	if to < len(r.places) && r.places[to].piece == first.piece && r.places[to].gap != wide {
		return false // "Lark 250 i.e."
	}
	return lone[0] == 0 && lone[1] == from && next.piece == first.piece && first.upper && next.col-r.places[lone[1]-1].end <= mostApart && r.isNamed(from, to) && !r.spoilt
}

// mostApart is how many blanks stand at most between make and model of a title.
const mostApart = 3

// titled reports whether a name begins its line below a title that names nothing, and years stand
// in a cell behind it: "QUICK REFERENCE CARD" over "Pelluca Lagoon 150i      2015-2019".
func (r *readings) titled(from, to int) bool {
	n := r.places[from].piece
	if n > 1 || r.starts[n] != from || to >= len(r.places) || r.places[to].piece != n || r.places[to].gap != wide || r.capitalIn(r.starts[n]) && !r.pageWords(0) {
		return false
	}
	_, end := r.pieceTokens(n)
	for i := to; i < end; i++ {
		if r.isYear(i) {
			return true
		}
	}
	return false
}

// pageWords reports whether a line begins with words for a page or a book: a title.
func (r *readings) pageWords(n int) bool {
	from, _ := r.pieceTokens(n)
	return r.senseAt(from, "page.word")
}

// clockIn reports whether a time of day stands between two tokens, as in the head of a letter or
// of a post, whose names are those of days and people: "Sun 14 Feb, 21:07".
func (r *readings) clockIn(from, to int) bool {
	for i := from; i+2 < to; i++ {
		if h, m := &r.places[i], &r.places[i+2]; h.kind == number && m.kind == number && r.places[i+1].text == ":" && r.places[i+1].gap == glued && m.gap == glued && len(h.text) <= 2 && len(m.text) == 2 && m.text < "60" {
			return true
		}
	}
	return false
}

// modelIn reads the name of a table's model where the head has it.
func (r *readings) modelIn(k int) {
	cell := r.modelCells[k]
	from, to := -1, 0
	for i := range r.places {
		if r.places[i].from >= cell.From && r.places[i].to <= cell.To {
			if from < 0 {
				from = i
			}
			to = i + 1
		}
	}
	if from < 0 {
		return
	}
	what := "model"
	if yearsLike(r.models[k]) != "" {
		what = "years"
	}
	r.say(what, r.models[k], from, to, doubt("manual-several-models", "text", r.models[k]))
}

// nameFrom gives where a run of names ends that begins at a token: its first word is
// capital and strange; numbers, short codes and capital words go on with it.
func (r *readings) nameFrom(i, end int) int {
	first := &r.places[i]
	build := r.headCell(i) && r.coded(i, end) && (r.senseAt(i, "label.displacement") || r.bikeAt(i)) // "Twin 500"
	if !build && !(i == 0 && r.nearlyPart(r.tokens)) && (!r.strangeAt(i) || len(first.text) < 3 && !r.coded(i, end)) || !capital(first.text) {
		return i
	}
	n := i + 1
	for n < end && (r.places[n].gap != wide || r.spoilt && r.places[n].col-r.places[n-1].end <= 2) {
		t := &r.places[n]
		if r.bikeAt(n) && capital(t.text) && r.places[n-1].kind == number && (n+1 == end || r.places[n+1].gap == wide) { // "K 85 Kardan"
			return n + 1
		}
		if code := n + 2; t.text == "," && code < end && r.senseAt(n+1, "label.model") && r.places[code].kind == word && len(r.places[code].text) < 3 && capital(r.places[code].text) { // "500, type M 6"
			if n = code + 1; n < end && r.places[n].kind == number && r.places[n].gap != wide {
				n++
			}
			return n
		}
		switch {
		case t.taken && !r.suffixed(n), r.senseAt(n, "page.word") && !r.strangeAt(n), r.senseAt(n, "label.page"), r.senseAt(n, "label.model"), r.senseAt(n, "label.company"), r.ofTrade(n):
			return n
		case t.kind == number:
			if len(t.text) > 4 || t.text[0] == '0' || strings.ContainsAny(t.text, ".,") || r.at(n+1).text == ":" && r.at(n+2).kind == number { // "1 : 50"
				return n
			}
		case t.kind == word:
			code := n > i+1 && len(t.text) == 1 && (capital(t.text) || unitOf(t.fold) == "") && r.places[n-1].kind == number && (n+1 == end || r.places[n+1].gap == wide) // "700 A"
			if t.function && !code || !capital(t.text) && t.gap != glued && !code {
				return n
			}
		case t.text == "/" && r.places[n-1].kind == number && isYear(r.at(n+1).text): // "Bulletin 3/2008"
			return i
		case quotes(t.text) || t.text == "'":
		case t.gap == glued && strings.Contains("-/+.", t.text) && n+1 < end && r.places[n+1].gap == glued:
		default:
			return n
		}
		n++
	}
	return n
}

// nearlyPart reports whether a line begins with a word in capitals that is nearly one of another job,
// and a strange one and a number behind it: "TAMBORÁ SABIÁ 165" names no drum.
func (p *page) nearlyPart(tokens []token) bool {
	if len(tokens) < 3 || !tokens[0].upper || !tokens[1].upper || tokens[1].gap == wide || tokens[2].gap == wide || tokens[2].kind != number || !p.strange(tokens, 1) {
		return false
	}
	e, n := p.words.match(tokens, 0)
	return n == 1 && slices.Contains(e.senses, "other.part")
}

// ofTrade reports whether a token is of a word for an oil or a part of ours.
func (r *readings) ofTrade(i int) bool {
	t := r.termAt(i)
	if t == nil {
		return false
	}
	_, oil := t.begin("oil.")
	_, part := t.begin("part.")
	return oil || part
}

// suffixed reports whether a token is of a number with a single capital behind it, which
// reads as a unit: "125 C", "900 S".
func (r *readings) suffixed(i int) bool {
	f := r.factAt(i)
	if f == nil || f.to-f.from != 2 || len(f.twins) > 0 {
		return false
	}
	unit := &r.places[f.to-1]
	return oneCapital(unit.token) && unit.gap == blank
}

// oneCapital reports whether a token is one capital letter, and not the litre's.
func oneCapital(t *token) bool {
	return t.kind == word && len(t.text) == 1 && t.text[0] >= 'A' && t.text[0] <= 'Z' && t.text != "L"
}

// coded reports whether letters go on with a number: "RX 449", "P650"; in a cell of the page's
// first line a single one too: "K 85", "X-450".
func (r *readings) coded(i, end int) bool {
	n := i + 1
	if len(r.places[i].text) == 1 {
		if !r.headCell(i) {
			return false
		}
		if n < end && r.places[n].text == "-" && r.places[n].gap == glued {
			n++
		}
	}
	return n < end && r.places[n].kind == number && r.places[n].gap != wide
}

// headCell reports whether a token begins a cell of the page's first line, behind another.
func (r *readings) headCell(i int) bool {
	return r.places[i].piece == 0 && i > 0 && r.places[i].gap == wide
}

// bikeAt reports whether a token is a word for a kind of bike, or for its drive.
func (r *readings) bikeAt(i int) bool {
	t := r.termAt(i)
	if t == nil || t.to-t.from > 1 {
		return false
	}
	_, bike := t.begin("bike.")
	return bike || t.has("oil.final")
}

func capital(text string) bool { return text[0] < 'a' || text[0] > 'z' }

// strangeAt reports whether a token is a word that is none of the trade.
func (r *readings) strangeAt(i int) bool {
	t := &r.places[i]
	return t.kind == word && t.term < 0 && !t.taken && !t.function && t.unitOf() == ""
}

// isNamed reports whether a run names make and model, or a model: with a number behind a
// word.
func (r *readings) isNamed(from, to int) bool {
	for i := from + 1; i < to && to-from <= 7; i++ {
		if r.places[i].kind == number {
			return true
		}
	}
	return false
}

// wordsOnly reports whether a run is of two to four strange words.
func (r *readings) wordsOnly(from, to int) bool {
	words := 0
	for i := from; i < to; i++ {
		switch {
		case r.strangeAt(i):
			words++
		case r.places[i].kind != sign:
			return false
		}
	}
	return words >= 2 && words <= 4
}

// alone reports whether a token is a cell of its own, or one that a sign parts.
func (r *readings) alone(i, from, to int) bool {
	before := i == from || r.places[i].gap == wide || r.places[i-1].kind == sign
	after := i+1 == to || r.senseAt(i+1, "label.model") || r.senseAt(i+1, "label.company") || r.places[i+1].gap == wide || r.places[i+1].kind == sign && !strings.Contains("-.:", r.places[i+1].text)
	return before && after && len(r.places[i].text) > 3
}

// cased gives a name as it is written, one in capitals with its first letters large.
func (r *readings) cased(from, to int) string {
	var tokens []token
	for i := from; i < to; i++ {
		t := *r.places[i].token
		if shown := r.text[t.from:t.to]; t.repaired && t.kind == word && cleanWord(shown) {
			t.lexeme = newLexeme(nil, word, shown, t.fold)
		}
		tokens = append(tokens, t)
	}
	return casedName(tokens)
}

// cleanWord reports whether a text is of letters alone, all capitals or none behind its first: such a
// name is as the page has it, whatever word of the trade it looks like.
func cleanWord(text string) bool {
	_, first := utf8.DecodeRuneInString(text)
	rest := text[first:]
	return !strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsLetter(c) }) && (strings.ToLower(rest) == rest || strings.ToUpper(text) == text)
}

func casedName(tokens []token) string {
	var b strings.Builder
	for i := range tokens {
		t := &tokens[i]
		if t.kind == sign && !strings.Contains("-/+.", t.text) {
			continue
		}
		if b.Len() > 0 && (t.gap != glued || quotes(tokens[i-1].text)) {
			b.WriteByte(' ')
		}
		if t.kind == word && len(t.text) > 3 && t.text == strings.ToUpper(t.text) {
			_, first := utf8.DecodeRuneInString(t.text)
			b.WriteString(t.text[:first] + strings.ToLower(t.text[first:]))
		} else {
			b.WriteString(t.text)
		}
	}
	return b.String()
}
