package manual

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/quantity"
)

// What a phone recognises in a photo has letters that look like others: 0 and O, 1 and l
// and I, 5 and S, rn and m. Where a page shows such, its words and numbers are read as
// what they look like, and what is read so is asked for, never sure. The confusions of
// letters are those of the tables of a free recogniser for English; those of figures are
// from memory.

// digits are the figures that letters are taken for.
var digits = [256]byte{'O': '0', 'o': '0', 'Q': '0', 'l': '1', 'I': '1', '|': '1', '!': '1', 'S': '5', 'B': '8', 'Z': '2'}

// blur gives a word in which all letters that are taken for each other are one.
func blur(word string) string {
	out := make([]byte, 0, len(word))
	for i := 0; i < len(word); i++ {
		c, next := word[i], byte(0)
		if i+1 < len(word) {
			next = word[i+1]
		}
		switch {
		case c == 'r' && next == 'n', c == 'v' && next == 'v', c == 's' && next == 's', c == 'c' && strings.IndexByte("l1i|!", next) >= 0 && next != 0:
			switch c {
			case 'r':
				c = 'n'
			case 'v':
				c = 'w'
			case 's':
				c = 'b' // "ß" is taken for "B"
			default:
				c = 'd'
			}
			i++
		case c == 'm':
			c = 'n'
		case c == 'q', c == '9':
			c = 'g'
		case c == 'i', c == '1', c == '|', c == '!':
			c = 'l'
		case c == '0':
			c = 'o'
		case c == '5':
			c = 's'
		case c == '8':
			c = 'b'
		case c == 'e':
			c = 'c'
		}
		out = append(out, c)
	}
	return string(out)
}

// blurred gives the words of the dictionary's spellings, each as blur makes it, with the
// word itself as its sense.
func (d *dictionary) blurred() *dictionary {
	d.once.blur.Do(func() {
		d.blur = newDictionary(d.language, len(d.words))
		texts := make([]string, 0, len(d.words))
		for i := range d.words {
			if v := &d.words[i]; v.function || v.spelled && len(v.text) > 1 {
				texts = append(texts, v.text)
				d.blur.add(blur(v.text), texts[len(texts)-1:len(texts):len(texts)])
			}
		}
	})
	return d.blur
}

// repair puts right what the photo of a page has spoilt, and reports whether it had.
func repair(rows []row, d *dictionary) bool {
	spoilt := 0
	for i := range rows {
		d.closeSpellings(rows[i].tokens)
		rows[i].tokens = repairFigures(rows[i].tokens, d, false)
		rows[i].tokens = repairMiles(repairMixed(rows[i].tokens, d))
		if n := len(rows[i].tokens) - 1; n > 1 && rows[i].tokens[n-1].gap == wide { // "Gearbox oil ..... 0.5 1"
			rows[i].tokens = append(rows[i].tokens[:n-1:n-1], repairLitres(rows[i].tokens[n-1:])...)
		}
		if i > 0 && rowLike(rows[i-1].tokens) || i+1 < len(rows) && len(rows[i+1].tokens) > 0 && rowLike(rows[i+1].tokens) {
			rows[i].tokens = repairCell(rows[i].tokens)
		}
		for _, t := range rows[i].tokens {
			if t.repaired {
				spoilt++
			}
		}
	}
	if gluedWords(rows, d) >= leastGlued {
		for i := range rows {
			rows[i].tokens = repairGlued(rows[i].tokens, d)
		}
		spoilt++
	}
	for i := range rows {
		var parts int
		rows[i].tokens, parts = partWords(rows[i].tokens, d)
		spoilt += parts
	}
	if spoilt == 0 {
		for i := range rows {
			spoilt += repairWords(rows[i].tokens, d, leastAlone)
		}
		return spoilt > 0
	}
	for i := range rows {
		closeGaps(rows[i].tokens)
		rows[i].tokens = repairLitres(repairNames(repairFigures(repairParted(rows[i].tokens, d, i == 0), d, true), d))
		repairWords(rows[i].tokens, d, 2)
	}
	return true
}

// closeGaps takes two blanks behind a sign for one: a photo has them within sentences.
func closeGaps(tokens []token) {
	for i := 1; i < len(tokens); i++ {
		if t, sign := &tokens[i], &tokens[i-1]; t.gap == wide && t.col-sign.end <= 2 && len(sign.text) == 1 && strings.Contains(".,;:)", sign.text) {
			t.gap = blank
		}
	}
}

// repairMiles puts the miles right behind kilometres: "5,000 km (3,000 ml)".
func repairMiles(tokens []token) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		if at > 3 && (tokens[at].fold == "ml" || tokens[at].fold == "m") && tokens[at-1].kind == number && tokens[at-2].text == "(" && tokens[at-3].fold == "km" && at+1 < len(tokens) {
			end := at + 1
			if tokens[at].fold == "m" { // "m1"
				if tokens[end].text != "1" || tokens[end].gap != glued {
					return nil, end
				}
				end++
			}
			return []token{joinedToken(tokens[at:end], word, "mi")}, end
		}
		return nil, at + 1
	})
}

// repairCell puts the last cell of a row right that stands between numbers: "1l" is eleven,
// "l2" twelve.
func repairCell(tokens []token) []token {
	n := len(tokens) - 1
	for n > 0 && tokens[n].gap == glued {
		n--
	}
	text, changed, kept := figures(textOf(tokens[n:]))
	if n == 0 || tokens[n].gap != wide || changed == 0 || kept == 0 || strings.ContainsAny(text, ".,") {
		return tokens
	}
	return append(tokens[:n:n], joinedToken(tokens[n:], number, text))
}

// leastGlued is how often a page must lack the blank between a word and a number before
// its words are parted: some languages join words by themselves.
const leastGlued = 3

// gluedWords counts the numbers that stand right behind a word of the trade.
func gluedWords(rows []row, d *dictionary) (count int) {
	for _, r := range rows {
		for i := range r.tokens {
			if behindWord(r.tokens, i, d) {
				count++
			}
		}
	}
	return count
}

// behindWord reports whether a number stands right behind a word of the trade that takes
// a blank: not in MA2 or GL-5.
func behindWord(tokens []token, i int, d *dictionary) bool {
	if i == 0 || tokens[i].kind != number || tokens[i].gap != glued || tokens[i-1].kind != word {
		return false
	}
	x := tokens[i-1].lexeme
	w := x.fold
	return (len(w) > 2 && w != "sae" && (x.known || d.partedWord(x) != nil) || len(w) > 1 && x.function) && x.unitOf() == ""
}

// repairGlued parts words that stand together without a blank, and words from the
// numbers behind them.
func repairGlued(tokens []token, d *dictionary) []token {
	for i := range tokens {
		if behindWord(tokens, i, d) {
			tokens[i].gap, tokens[i].repaired = blank, true
		}
	}
	return rewritten(tokens, func(at int) (list []token, next int) {
		t := &tokens[at]
		if t.kind != word || len(t.text) != len(t.fold) {
			return nil, at + 1
		}
		from := 0
		for _, end := range d.partedWord(t.lexeme) {
			w := part(tokens[at:at+1], from, end, word, t.text[from:end])
			if from > 0 {
				w.gap = blank
			}
			list = append(list, w)
			from = end
		}
		return list, at + 1
	})
}

// partedWord gives where the words end that stand together in one, nil if it is not made
// of words of the dictionary alone, each of two letters at least, the first of three.
func (d *dictionary) partedWord(x *lexeme) []int {
	if !x.parted {
		x.parted, x.ends = true, d.endsOf(x)
	}
	return x.ends
}

func (d *dictionary) endsOf(x *lexeme) []int {
	w := x.fold
	if len(w) < 6 || len(w) >= mostWord || x.known || x.function || x.single != nil {
		return nil
	}
	// best[i] is how many words the letters before i make at least, 0 for none.
	best := make([]int, len(w)+1)
	from := make([]int, len(w)+1)
	for end := 2; end <= len(w); end++ {
		for at := 0; at <= end-2; at++ {
			if at > 0 && best[at] == 0 || at == 0 && end < 3 {
				continue
			}
			if v := d.find(w[at:end]); v == nil || !v.known() && !(at > 0 && v.function) {
				continue
			}
			if n := best[at] + 1; best[end] == 0 || n < best[end] {
				best[end], from[end] = n, at
			}
		}
	}
	if best[len(w)] < 2 || best[len(w)] > 4 {
		return nil
	}
	ends := make([]int, best[len(w)])
	for at, n := len(w), len(ends)-1; n >= 0; n-- {
		ends[n] = at
		at = from[at]
	}
	return ends
}

// digital reports whether a word begins as a figure whose digits are letters may, or as a
// thread does.
func (x *lexeme) digital() bool { return x.text[0] == 'M' || digits[x.text[0]] != 0 }

// glueOf gives where a run of tokens ends that stand together without blanks: letters,
// digits, and the signs that either may have been.
func glueOf(tokens []token, at int) int {
	end := at + 1
	for end < len(tokens) && tokens[end].gap == glued {
		t := &tokens[end]
		inside := end+1 < len(tokens) && tokens[end+1].gap == glued && tokens[end+1].kind != sign
		if t.kind == sign && !(t.text == "!" || t.text == "|" || inside && (t.text == "." || t.text == ",")) {
			break
		}
		end++
	}
	return end
}

// figures gives a text as a number whose letters are the digits that they look like, ""
// if it is none. changed says how many letters were put right, true digits how many were
// digits.
func figures(text string) (number string, changed, kept int) {
	for i := 0; i < len(text); i++ {
		if c := text[i]; (c < '0' || c > '9') && c != '.' && c != ',' && digits[c] == 0 {
			return "", 0, 0
		}
	}
	out := make([]byte, 0, len(text))
	for i := 0; i < len(text); i++ {
		c := text[i]
		switch {
		case c >= '0' && c <= '9':
			kept++
		case c == '.' || c == ',':
			if i == 0 || i+1 == len(text) {
				return "", 0, 0
			}
		default:
			c = digits[c]
			changed++
		}
		out = append(out, c)
	}
	return string(out), changed, kept
}

// repairFigures puts together numbers whose digits were taken for letters or were parted
// by blanks; on a page that is known to be spoilt also those that may be something else.
func repairFigures(tokens []token, d *dictionary, spoilt bool) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		if tokens[at].kind == sign {
			return nil, at + 1
		}
		end := glueOf(tokens, at)
		if tokens[at].kind == word && !tokens[at].digital() && end == at+1 {
			return nil, end
		}
		if n := parted(tokens, at, d); n > 0 {
			return []token{joinedToken(tokens[at:at+n], number, "")}, at + n
		}
		if at+2 < len(tokens) && end == at+1 && (tokens[at].text == "l" || tokens[at].text == "I") && tokens[at+1].text == "/" && tokens[at+1].gap == glued && tokens[at+2].gap == glued && strings.Contains("2 3 4 8", tokens[at+2].text) {
			return []token{joinedToken(tokens[at:end], number, "1")}, end // a half
		}
		if n := groupBehind(tokens, at, d); n > 0 {
			return []token{joinedToken(tokens[at:n], number, "")}, n // "l 000 km"
		}
		if n := parted(tokens, end-1, d); end > at+1 && n > 0 {
			return append(slices.Clone(tokens[at:end-1]), joinedToken(tokens[end-1:end-1+n], number, "")), end - 1 + n
		}
		if list := gluedGrade(tokens[at:end], d, spoilt); list != nil {
			return list, end
		}
		return spoiltFigure(tokens, at, end, d, spoilt), end
	})
}

// groupBehind gives where a number ends whose first digit is a letter that stands before a
// group of three, and a distance's unit: "l 000 km". 0 for none.
func groupBehind(tokens []token, at int, d *dictionary) int {
	next := at + 1
	if len(tokens[at].text) != 1 || digits[tokens[at].text[0]] == 0 || next+1 >= len(tokens) || tokens[next].gap != blank {
		return 0
	}
	end := glueOf(tokens, next)
	if n, _, _ := figures(textOf(tokens[next:end])); len(n) != 3 || strings.ContainsAny(n, ".,") || end == len(tokens) || !d.unitAt(tokens, end) {
		return 0
	}
	return end
}

// rewritten gives a line with other tokens where made gives some; it says where what it
// looked at ends.
func rewritten(tokens []token, made func(at int) ([]token, int)) []token {
	var list []token
	for at := 0; at < len(tokens); {
		others, next := made(at)
		switch {
		case others != nil:
			if list == nil {
				list = append(make([]token, 0, len(tokens)), tokens[:at]...)
			}
			list = append(list, others...)
		case list != nil:
			list = append(list, tokens[at:next]...)
		}
		at = next
	}
	if list == nil {
		return tokens
	}
	return list
}

// parted gives how many tokens a number takes that has a blank before or behind its
// point: "2 .4", "1. 5 L", "M14x1 .5". Before it is enough: no text has a point there.
func parted(tokens []token, at int, d *dictionary) int {
	if tokens[at].kind == sign || at+2 >= len(tokens) {
		return 0
	}
	point, behind := &tokens[at+1], &tokens[at+2]
	if point.kind != sign || point.text != "." && point.text != "," || behind.kind == sign || point.gap == wide && point.col-tokens[at].end > 2 || behind.gap == wide && behind.col-point.end > 2 || point.gap == glued && behind.gap == glued {
		return 0
	}
	pitch := at > 1 && tokens[at].gap == glued && tokens[at-1].fold == "x" && tokens[at-2].kind == number
	if tokens[at].gap == glued && at > 0 && tokens[at-1].kind != sign && !pitch {
		return 0
	}
	whole, _, _ := figures(tokens[at].text)
	end := glueOf(tokens, at+2)
	tail, _, kept := figures(textOf(tokens[at+2 : end]))
	if whole == "" || tail == "" || strings.ContainsAny(whole+tail, ".,") {
		return 0
	}
	before := behind.gap == glued && (point.text == "." || kept > 0)
	if point.gap != glued && behind.gap != glued && point.text != "." {
		return 0
	}
	if point.gap == glued && point.text == "," && len(tail) == 3 && tail[0] == '0' && whole[0] != '0' && len(whole) <= 3 && end < len(tokens) && d.unitAt(tokens, end) { // "4, 000 km": nothing counts from nought
		return end - at
	}
	if before && (kept > 0 || pitch) || end < len(tokens) && (at > 0 || before) && (point.text == "." || before) && (d.unitAt(tokens, end) || litreLike(tokens, end)) {
		return end - at
	}
	return 0
}

// litreLike reports whether a token stands where the litre of a figure stands, and looks
// like it: "2.6 1  (2.7 US qt)".
func litreLike(tokens []token, at int) bool {
	t := &tokens[at]
	return t.gap == blank && len(t.text) == 1 && strings.Contains("1Il|", t.text) && (at+1 == len(tokens) || tokens[at+1].gap == wide || tokens[at+1].text == "(" || tokens[at+1].kind == sign)
}

// spoiltFigure gives the tokens of a run that is a number, a grade or a number with its
// unit once its letters are digits; nil if it reads as it stands, or is none.
func spoiltFigure(tokens []token, at, end int, d *dictionary, spoilt bool) []token {
	if c := tokens[at].text[0]; c != 'M' && digits[c] == 0 && !isDigit(rune(c)) || at+1 == end && tokens[at].kind == number {
		return nil
	}
	text := textOf(tokens[at:end])
	if len(text) > 14 {
		return nil
	}
	if len(text) == 1 && at > 0 && tokens[at-1].kind == number && strings.ContainsAny(tokens[at-1].text, ".,") {
		return nil // a litre: "2,1 l in the engine"
	}
	first := text[0] >= '0' && text[0] <= '9'
	beside := end < len(tokens) && tokens[end].gap != wide && (d.unitAt(tokens, end) || spoilt && litreLike(tokens, end))
	if n, changed, kept := figures(text); n != "" {
		hot := at > 2 && strings.Contains("-/", tokens[at-1].text) && tokens[at-2].fold == "w" && tokens[at-3].kind == number && len(n) == 2 // "20W-S0"
		if hot && changed > 0 {
			return []token{joinedToken(tokens[at:end], number, n)}
		}
		cell := tokens[at].gap == wide && numbered(tokens, at, end)
		litre := strings.HasSuffix(text, "l") && changed == 1 && first && !beside && !(cell && strings.IndexByte(text, '.') < 0)
		odd := strings.ContainsAny(text, "SBZQ")
		switch {
		case changed == 0, litre, odd && !beside && !cell, kept == 0 && !beside && !(spoilt && len(n) == 3):
			return nil
		case spoilt && kept == 0 && len(n) == 3 && strings.Trim(text, "lIO") == "" && at > 0 && tokens[at-1].kind == word: // "GRILLO llO"
			return []token{joinedToken(tokens[at:end], number, n)}
		case beside, cell, first && len(n) > 1, spoilt && kept > 0 && len(n) > 1, strings.ContainsAny(n, ".,") && kept > 0:
			return []token{joinedToken(tokens[at:end], number, n)}
		}
		return nil
	}
	// A thread.
	if text[0] == 'M' {
		across, pitch, fine := strings.Cut(text[1:], "x")
		n, changed, kept := figures(across)
		if changed == 0 || kept == 0 || len(n) != 2 {
			return nil
		}
		made := []token{part(tokens[at:end], 0, 1, word, "M"), part(tokens[at:end], 1, 3, number, n)}
		if fine {
			made = append(made, part(tokens[at:end], 3, 4, word, "x"))
		}
		if by, _, _ := figures(pitch); by != "" {
			made = append(made, part(tokens[at:end], 4, len(text), number, by))
		}
		return made
	}
	// A grade, or a number with its unit behind it.
	for i := 1; i < len(text); i++ {
		n, changed, kept := figures(text[:i])
		if n == "" || kept+changed == 0 {
			continue
		}
		rest := text[i:]
		if rest[0] == 'W' || rest[0] == 'w' {
			hot, more, _ := figures(rest[1:])
			follows := end < len(tokens) && (tokens[end].text == "-" || tokens[end].text == "/")
			if (hot == "" && rest[1:] != "") || changed+more == 0 || len(n) > 2 || len(hot) > 3 || kept == 0 && !follows && hot == "" {
				continue
			}
			parts := []token{part(tokens[at:end], 0, i, number, n), part(tokens[at:end], i, i+1, word, "W")}
			if hot != "" {
				parts = append(parts, part(tokens[at:end], i+1, len(text), number, hot))
			}
			return parts
		}
		if changed > 0 && kept > 0 && (unitOf(strings.ToLower(rest)) != "" || rest == "kgf" || rest == "kg" || rest == "lbf" || rest == "N") && !(rest[0] == 'l' || rest[0] == 'I') {
			return []token{part(tokens[at:end], 0, i, number, n), part(tokens[at:end], i, len(text), word, rest)}
		}
	}
	return nil
}

// unitAt reports whether a unit stands at a token, in symbols or in the language's words.
func (d *dictionary) unitAt(tokens []token, at int) bool {
	if _, n := unitAt(tokens, at); n > 0 {
		return true
	}
	if at+2 < len(tokens) && tokens[at].fold == "n" && tokens[at+1].kind == sign && tokens[at+2].fold == "rn" {
		return true // a newton metre
	}
	if e, _ := d.match(tokens, at); e != nil {
		for _, s := range e.senses {
			if strings.HasPrefix(s, "unit.") {
				return true
			}
		}
	}
	return unitLike(tokens, at) != ""
}

// numbered reports whether a line has another number than the tokens from at to end.
func numbered(tokens []token, at, end int) bool {
	for i := range tokens {
		if (i < at || i >= end) && tokens[i].kind == number {
			return true
		}
	}
	return false
}

func textOf(tokens []token) string {
	if len(tokens) == 1 {
		return tokens[0].text
	}
	var b strings.Builder
	for i := range tokens {
		b.WriteString(tokens[i].text)
	}
	return b.String()
}

// joinedToken makes one token of several; without a text it has theirs as figures.
func joinedToken(tokens []token, k kind, text string) token {
	t := tokens[0]
	last := &tokens[len(tokens)-1]
	t.to, t.end = last.to, last.end
	if text == "" {
		text, _, _ = figures(textOf(tokens))
	}
	t.lexeme, t.repaired = newLexeme(t.lexeme, k, text, fold(text)), true
	return t
}

// part makes a token of some letters of a run; all of them are one byte.
func part(tokens []token, from, to int, k kind, text string) token {
	t := token{lexeme: newLexeme(tokens[0].lexeme, k, text, fold(text)), repaired: true, gap: glued}
	if from == 0 {
		t.gap = tokens[0].gap
	}
	at := 0
	for i := range tokens {
		o := &tokens[i]
		if from >= at && from < at+len(o.text) {
			t.from, t.col = o.from+min(from-at, o.to-o.from-1), o.col+from-at
		}
		if to > at && to <= at+len(o.text) {
			t.to, t.end = o.from+min(to-at, o.to-o.from), o.col+to-at
		}
		at += len(o.text)
	}
	return t
}

// repairMixed puts words right that have digits in them: "fi1ter", "JAS0".
func repairMixed(tokens []token, d *dictionary) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		if tokens[at].kind == sign {
			return nil, at + 1
		}
		end := glueOf(tokens, at)
		if tokens[at].text == "0" && end == at+1 && at+2 < len(tokens) && tokens[end].text == "-" && strings.HasPrefix(tokens[at+2].fold, "ring") {
			return []token{joinedToken(tokens[at:end], word, "O")}, end // an O-ring
		}
		if end == at+1 {
			return nil, end
		}
		text := textOf(tokens[at:end])
		if rest, is := strings.CutPrefix(text, "1b"); is && (rest == "" || rest == "f" || rest == "s") && poundAt(tokens, at, end) {
			return []token{joinedToken(tokens[at:end], word, "lb"+rest)}, end
		}
		letters, figs := 0, 0
		for i := 0; i < len(text); i++ {
			switch c := text[i]; {
			case c >= '0' && c <= '9', c == '!', c == '|':
				figs++
			case c == '.' || c == ',':
				return nil, end
			default:
				letters++
			}
		}
		if figs == 0 || letters < figs && text[0] != '0' || letters == 0 || len(text) >= mostWord {
			return nil, end
		}
		w := d.likeWord(fold(text), 3)
		if w == "" || w == fold(text) {
			return nil, end
		}
		t := joinedToken(tokens[at:end], word, text)
		t.lexeme = newLexeme(t.lexeme, word, text, w)
		return []token{t}, end
	})
}

// repairParted joins words and numbers that have a blank inside: "dr ain", "1 959-1964",
// "13/ 16", and in a page's head a name whose first letter stands apart.
func repairParted(tokens []token, d *dictionary, head bool) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		next := at + 1
		if next >= len(tokens) || tokens[next].gap != blank {
			return nil, next
		}
		a, b := &tokens[at], &tokens[next]
		ends := next+1 == len(tokens) || tokens[next+1].gap == wide || tokens[next+1].kind == sign
		switch {
		case a.kind == word && b.kind == word && a.gap != glued && b.text != "M" && !b.familiar() && (len(b.text) > 1 || len(a.text) > 2 && !a.familiar()):
			whole := a.fold + b.fold
			name := head && len(a.text) == 1 && len(b.text) > 3 && inCapitalsOnly(a.text+b.text)
			if !name && (len(whole) < 4 || a.familiar() || !d.knows(whole) && d.likeWord(whole, 4) == "") {
				return nil, next
			}
			return []token{joinedToken(tokens[at:next+1], word, a.text+b.text)}, next + 1
		case a.kind == number && b.kind == number && len(a.text) == 1 && len(b.text) == 3 && isYear(a.text+b.text) && ends:
			return []token{joinedToken(tokens[at:next+1], number, a.text+b.text)}, next + 1
		case a.text == "/" && at > 0 && tokens[at-1].kind == number && a.gap == glued && strings.Contains("|2|4|8|16|32|l6|", "|"+b.text+"|"):
			t := *b
			t.gap, t.repaired = glued, true
			if t.text == "l6" {
				t.lexeme = newLexeme(t.lexeme, number, "16", "16")
			}
			return []token{*a, t}, next + 1
		}
		return nil, next
	})
}

// knows reports whether a word is one of the language's, small or of the trade.
func (d *dictionary) knows(w string) bool {
	v := d.find(w)
	return v != nil && (v.known() || v.function) || d.single(w) != nil
}

// familiar is knows for a word of the page.
func (x *lexeme) familiar() bool { return x.known || x.function || x.single != nil }

func inCapitalsOnly(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < 'A' || text[i] > 'Z' {
			return false
		}
	}
	return true
}

// repairLitres puts the litre right behind a number with a point.
func repairLitres(tokens []token) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		if at > 0 && tokens[at].text != "l" && tokens[at-1].kind == number && strings.ContainsAny(tokens[at-1].text, ".,") && (litreLike(tokens, at) || tokens[at].text == "I" && tokens[at].gap == blank && tokens[at+1].kind == word && tokens[at+1].gap != glued) {
			return []token{joinedToken(tokens[at:at+1], word, "l")}, at + 1
		}
		return nil, at + 1
	})
}

// repairNames puts words in capitals right that have small letters or digits in them:
// "lBARUNE", "KESTR0W", "OSSOLAR!"; and names with a digit in them: "Mistra1".
func repairNames(tokens []token, d *dictionary) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		if tokens[at].kind == sign {
			return nil, at + 1
		}
		end := glueOf(tokens, at)
		if t := &tokens[at]; t.fold == "sae" || end == at+1 && t.repaired && t.text != strings.ToUpper(t.text) && t.fold != fold(t.text) && d.knows(t.fold) { // "SAE5W-30", "Eng1ne"
			return nil, end
		}
		text := textOf(tokens[at:end])
		name := inCapitals(text)
		if name == "" {
			name = inSmall(text, d)
		}
		if name != "" {
			return []token{joinedToken(tokens[at:end], word, name)}, end
		}
		return nil, end
	})
}

// inSmall gives a word with a capital that has one digit for a letter, "" for another.
func inSmall(text string, d *dictionary) string {
	at := strings.IndexAny(text, "015")
	if at < 3 || len(text) < leastAlone || at != strings.LastIndexAny(text, "0123456789") || !capital(text) || d.knows(fold(text[:at])) {
		return ""
	}
	name := text[:at] + map[byte]string{'0': "o", '1': "l", '5': "s"}[text[at]] + text[at+1:]
	for i := 1; i < len(name); i++ {
		if c := name[i]; c < 'a' || c > 'z' {
			return ""
		}
	}
	return name
}

// inCapitals gives a word in capitals without the digits and the small letters that stand
// singly in it; "" for one that has none, or more, or is none.
func inCapitals(text string) string {
	for i := 0; i < len(text); i++ {
		if c := text[i]; (c < 'A' || c > 'Z') && strings.IndexByte("l1!|058", c) < 0 {
			return ""
		}
	}
	out := []byte(text)
	large, odd := 0, 0
	for i := 0; i < len(out); i++ {
		switch c := out[i]; {
		case c >= 'A' && c <= 'Z':
			large++
			continue
		case c == 'l' || c == '1' || c == '!' || c == '|':
			out[i] = 'I'
		case c == '0':
			out[i] = 'O'
		case (c == '5' || c == '8') && (i > 0 || len(out) > 6) && i+1 < len(out): // "5TAMBAUGH"
			out[i] = map[byte]byte{'5': 'S', '8': 'B'}[c]
		default:
			return ""
		}
		odd++
		if i > 0 && !(out[i-1] >= 'A' && out[i-1] <= 'Z') || i > 0 && text[i-1] >= '0' && text[i-1] <= '9' {
			return ""
		}
	}
	if large < 3 || odd == 0 || odd*3 > large+odd {
		return ""
	}
	return string(out)
}

// poundAt reports whether a run that looks like a pound stands in a unit: "ft-1b", "1b . ft".
func poundAt(tokens []token, at, end int) bool {
	if at > 0 && tokens[at].gap == glued && tokens[at-1].kind == sign {
		return true
	}
	return end+1 < len(tokens) && tokens[end].kind == sign && strings.Contains(".-·*", tokens[end].text) && (tokens[end+1].fold == "ft" || tokens[end+1].fold == "in")
}

// likeWord gives the word of the dictionary that looks as a word does, of so many letters
// at least.
func (d *dictionary) likeWord(w string, least int) string {
	b := blur(w)
	if len(b) < least {
		return ""
	}
	e := d.blurred().single(b)
	if e == nil || like(e.senses[0], w) { // it is that word itself
		return ""
	}
	return strings.Trim(e.senses[0], "*")
}

// looksLike is likeWord for a word of the page, of two letters at least.
func (d *dictionary) looksLike(x *lexeme) string {
	if !x.likened {
		x.likened, x.looks = true, d.likeWord(x.fold, 2)
	}
	return x.looks
}

// leastAlone is of how many letters a word must be that is put right on a page that shows
// no other sign of a photo.
const leastAlone = 5

// repairWords puts words right that nobody here knows, of so many letters at least, and
// units. It gives how many.
func repairWords(tokens []token, d *dictionary, least int) (count int) {
	for i := range tokens {
		t := &tokens[i]
		if t.kind != word || t.repaired || len(t.fold) >= mostWord || len(t.text) <= 3 && t.upper { // SL, MA, API
			continue
		}
		if u := unitLike(tokens, i); u != "" {
			t.lexeme, t.repaired = newLexeme(t.lexeme, word, u, u), true
			count++
			continue
		}
		if t.text == "APl" || t.text == "APi" {
			t.lexeme, t.repaired = newLexeme(t.lexeme, word, "API", "api"), true
			count++
			continue
		}
		if t.familiar() || len(t.fold) < least || t.unitOf() != "" {
			continue
		}
		if e, _ := d.match(tokens, i); e != nil {
			continue
		}
		if least == leastAlone && nameLike(tokens, i) {
			continue
		}
		if w := d.looksLike(t.lexeme); w != "" && w != t.fold {
			text := t.text
			if mostlyCapitals(text) {
				text = strings.ToUpper(w)
			}
			t.lexeme, t.repaired = newLexeme(t.lexeme, word, text, w), true
			count++
		} else if least < leastAlone { // on a page that is known to be spoilt
			if w := d.nearWord(t.lexeme); w != "" {
				t.lexeme, t.repaired = newLexeme(t.lexeme, word, t.text, w), true
			}
		}
	}
	return count
}

// nameLike reports whether a capital word stands before a bare number at the beginning of a cell or
// behind another capital word, as the name of a bike does: it is no sign of a photo.
func nameLike(tokens []token, i int) bool {
	t, next := &tokens[i], i+1
	if !capital(t.text) || next == len(tokens) || tokens[next].kind != number || tokens[next].gap != blank {
		return false
	}
	begins := i == 0 || t.gap == wide || tokens[i-1].kind == word && capital(tokens[i-1].text)
	return begins && (next+1 == len(tokens) || tokens[next+1].gap == wide)
}

func mostlyCapitals(text string) bool {
	large := 0
	for i := 0; i < len(text); i++ {
		if text[i] >= 'A' && text[i] <= 'Z' {
			large++
		}
	}
	return large*2 > len(text)
}

// unitLike gives the unit that a word looks like, "" where it is one itself or is none.
func unitLike(tokens []token, i int) string {
	if i == 0 {
		return ""
	}
	x := tokens[i].lexeme
	if !x.likenedUnit {
		x.likenedUnit, x.unitLooks = true, x.likeUnit()
	}
	return x.unitLooks
}

// likeUnit is unitLike for a word alone.
func (x *lexeme) likeUnit() string {
	if len(x.fold) > 12 || x.unitOf() != "" {
		return ""
	}
	u := strings.ReplaceAll(x.fold, "rn", "m")
	switch u {
	case "lmp", "1mp":
		u = "imp"
	case "ibf", "ib", "ibs":
		u = "l" + u[1:]
	case "n":
		return ""
	}
	if len(u) >= 3 && u[0] == 'i' && unitOf("l"+u[1:]) != "" { // "Itr"
		u = "l" + u[1:]
	}
	if len(u) >= 3 && blur(u) == blur("min") {
		u = "min"
	}
	if u == x.fold || u != "imp" && unitOf(u) == "" && u != "lbf" && u != "lb" && u != "lbs" {
		return ""
	}
	return u
}

// repairedIn reports whether letters were put right between two tokens.
func (p *page) repairedIn(from, to int) bool {
	for i := max(from, 0); i < to && i < len(p.places); i++ {
		if p.places[i].repaired {
			return true
		}
	}
	return false
}

// findLostPoints puts a figure right that is ten times what its twins say, where the page
// is a photo's or no engine holds so much; and a degree sign that was read as a nought.
func (p *page) findLostPoints() {
	for i := range p.facts {
		f := &p.facts[i]
		number, unit, _ := strings.Cut(f.text, " ")
		whole := len(number) > 1 && strings.Trim(number, "0123456789") == ""
		switch {
		case f.kind == string(quantity.Temperature) && f.low > hottest && whole && strings.HasSuffix(number, "0") && p.places[f.to-1].gap == glued && p.places[f.to-1].kind == word:
			u, _ := quantity.Find(f.unit)
			shown := f.text
			f.text = number[:len(number)-1] + " " + unit
			v, _ := strconv.ParseFloat(number[:len(number)-1], 64)
			f.low, f.high = u.ToBase(v), u.ToBase(v)
			f.doubts = append(f.doubts, doubt("manual-sign-lost", "text", f.text, "other", shown))
		case whole && len(f.differing()) == len(f.twins) && (p.spoilt && len(f.twins) > 0 || f.kind == string(quantity.Volume) && f.low > mostOil("engine") && (p.spoilt || len(f.twins) > 0)):
			g := *f
			g.low, g.high, g.half = f.low/10, f.high/10, f.half/10
			if len(g.differing()) > 0 {
				continue
			}
			g.text = number[:len(number)-1] + "." + number[len(number)-1:] + " " + unit
			g.doubts = append(g.doubts, doubt("manual-point-lost", "text", g.text, "other", f.text))
			*f = g
		}
	}
}

// hottest is above what oil in an engine may have, in °C. Common practice.
const hottest = 200
