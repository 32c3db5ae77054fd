package manual

import (
	"strings"
	"unicode/utf8"
)

// What a token is.
type kind uint8

const (
	word   kind = iota // letters
	number             // digits, with the marks that stand between them
	sign               // anything else, one at a time
)

// How far a token stands from the one before it.
const (
	glued = iota
	blank // one blank
	wide  // more blanks, a tab, a leader of dots: another cell of a table
)

// token is a piece of a text.
type token struct {
	*lexeme
	from, to int // bytes of the text as given
	col, end int // where it stands in its line, in letters
	gap      uint8
	repaired bool // letters were put right
	moved    bool // it is a footnote's
	broken   bool // it begins a further line of its cell
	step     bool // it counts a step: "3   Remove the plug"
	led      bool // a leader of dots stands before it
}

// row is a line of a text.
type row struct {
	tokens []token
	blank  bool // a blank line stands before it
	number int
	side   bool // another column stood beside it, and is parted from it
}

// leastDoubled is how many words two blanks apart a page has at least that has two blanks
// between all its words, as phones see them in wide print.
const leastDoubled = 16

// blanksDoubled reports whether two blanks stand between the words of a text where others
// have one: then they begin no cell.
func blanksDoubled(text string) bool {
	single, double, run := 0, 0, -1 // no word has begun in its line
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '\n':
			run = -1
		case c != ' ':
			if run == 1 {
				single++
			} else if run == 2 {
				double++
			}
			run = 0
		case run >= 0:
			run++
		}
	}
	return double >= leastDoubled && double > 3*single
}

// rowsOf takes a text apart, line by line; empty lines go. Words that are known already are
// those of others.
func rowsOf(text string, words *lexemes) []row {
	rows := make([]row, 0, strings.Count(text, "\n")+1)
	var line []letter
	doubled := blanksDoubled(text)
	room := make([]token, 0, len(text)/4+16)
	empty := false
	for at, n := 0, 0; at < len(text); n++ {
		line, at = lineOf(line[:0], text, at)
		pointed(line)
		from := len(room)
		room = tokensOf(room, line, words, doubled)
		tokens := closeSpaced(room[from:len(room):len(room)], words)
		markStep(tokens)
		empty = empty || len(tokens) == 0
		for len(tokens) > 0 {
			cut := cutOf(tokens)
			rows = append(rows, row{tokens: tokens[:cut:cut], blank: empty, number: n})
			tokens, empty = tokens[cut:], false
		}
	}
	return rows
}

// pointed takes a dot at half height between two digits for a point: "2·3 litres".
func pointed(line []letter) {
	for i := 1; i+1 < len(line); i++ {
		if line[i].r == '·' && isDigit(line[i-1].r) && isDigit(line[i+1].r) {
			line[i].r = '.'
		}
	}
}

// mostRow is the most tokens of a line that are read together: what is longer is a text
// without line ends. Everything that looks around within a line or a sentence takes no
// more time for it.
const mostRow = 120

// cutOf gives how many tokens of a line are read as one: to the last full stop, where it
// is long.
func cutOf(tokens []token) int {
	if len(tokens) <= mostRow {
		return len(tokens)
	}
	for i := mostRow - 1; i > mostRow/3; i-- {
		if tokens[i].text == "." && tokens[i].kind == sign && tokens[i+1].gap != glued {
			return i + 1
		}
	}
	return mostRow
}

// tokensOf adds the tokens of a line to others.
func tokensOf(list []token, line []letter, words *lexemes, doubled bool) []token {
	begin := len(list)
	spelled := words.spelled
	gap, col, led := uint8(blank), 0, false
	for at := 0; at < len(line); {
		r := line[at].r
		n := 1
		switch {
		case r == ' ' || r == '\t':
			for at+n < len(line) && (line[at+n].r == ' ' || line[at+n].r == '\t') {
				n++
			}
			if gap == glued {
				gap = blank
			}
			if n > 3 || n > 2 && !doubled || r == '\t' || n == 2 && !doubled && !typed(list[begin:], line[at+n:]) {
				gap = wide
			}
			at, col = at+n, col+n
			continue
		case leader(line[at:]) > 0:
			n = leader(line[at:])
			at, col, gap, led = at+n, col+n, wide, true
			continue
		case gap != glued && r == '.' && at+2 < len(line) && line[at+1].r == '.' && line[at+2].r == ' ':
			at, col, gap, led = at+2, col+2, wide, true // a leader for which there was little room
			continue
		}
		if gap == blank && !doubled && r == '.' && len(list) > 0 && loneLeader(list[len(list)-1], line[at+1:], list) {
			at, col, gap, led = at+1, col+1, wide, true
			continue
		}
		k := sign
		if doubled && gap == blank && strings.ContainsRune(".;:,)", r) && (at+1 == len(line) || line[at+1].r == ' ') {
			gap = glued // such a print parts the stops from their words too
		}
		switch {
		case isDigit(r):
			k = number
			n = numberLength(line[at:])
		case isLetter(r):
			k = word
			for at+n < len(line) && isLetter(line[at+n].r) {
				n++
			}
		}
		spelled = spelled[:0]
		for i := at; i < at+n; i++ {
			if r := line[i].r; r < utf8.RuneSelf {
				spelled = append(spelled, byte(r))
			} else {
				spelled = utf8.AppendRune(spelled, r)
			}
		}
		list = append(list, token{lexeme: words.of(k, spelled), from: int(line[at].from), to: int(line[at+n-1].to), col: col, end: col + n, gap: gap, led: led})
		at, col, gap, led = at+n, col+n, glued, false
	}
	words.spelled = spelled
	return list
}

// markStep marks a number that counts a step though a gap stands behind it.
func markStep(tokens []token) {
	if len(tokens) < 4 || tokens[0].kind != number || len(tokens[0].text) > 2 || tokens[1].gap != wide {
		return
	}
	if t := &tokens[1]; t.kind == word && len(t.text) > 1 && capital(t.text) && !t.upper && t.unitOf() == "" && tokens[2].gap == blank {
		tokens[0].step, tokens[1].gap = true, blank
	}
}

// typed reports whether two blanks stand as on a typewriter, between two sentences.
func typed(before []token, behind []letter) bool {
	n := len(before)
	return n > 0 && len(behind) > 0 && isLetter(behind[0].r) && strings.Contains(".!?", before[n-1].text) && before[n-1].gap == glued
}

// loneLeader reports whether a dot between blanks leads to a figure, as behind a label for which
// there was hardly room: "3 screws M6 . 10". A number before it may go on behind it, "2 . 5".
func loneLeader(before token, behind []letter, list []token) bool {
	if before.kind == number && (before.gap != glued || len(list) < 2 || list[len(list)-2].kind != word) || before.kind == sign || len(before.text) < 2 && before.kind == word {
		return false
	}
	n := 1
	for n < len(behind) && (isDigit(behind[n].r) || behind[n].r == '.' || behind[n].r == ',') {
		n++
	}
	return n > 1 && behind[0].r == ' ' && isDigit(behind[1].r) && (n == len(behind) || n+2 < len(behind) && behind[n].r == ' ' && behind[n+1].r == ' ')
}

// leader gives how many signs a leader has that begins here: three dots or more, with
// blanks between them or without; dashes and low lines likewise.
func leader(line []letter) int {
	r := line[0].r
	if !strings.ContainsRune(".·_-", r) {
		return 0
	}
	count, n := 0, 0
	for n < len(line) && (line[n].r == r || line[n].r == ' ') {
		if line[n].r == r {
			count++
		} else if n > 2 && line[n-1].r == ' ' && line[n-2].r == ' ' && line[n-3].r == ' ' {
			break
		}
		n++
	}
	if count == 2 && n == 3 && line[0].r == '.' && line[1].r == '.' && n < len(line) { // ".. " behind a long label
		return n
	}
	if count < 3 || count == 3 && n < len(line) && isDigit(line[n].r) && line[n-1].r == r { // "10...12" is a range
		return 0
	}
	return n
}

// numberLength gives how many letters a number has that begins here: digits, and marks
// between two of them.
func numberLength(line []letter) int {
	n := 1
	for n < len(line) {
		r := line[n].r
		next := n+1 < len(line) && isDigit(line[n+1].r)
		if !isDigit(r) && !(next && (r == '.' || r == ',' || r == '\'' && digitsFrom(line[n+1:]) == 3)) {
			break
		}
		n++
	}
	return n
}

func digitsFrom(line []letter) int {
	n := 0
	for n < len(line) && isDigit(line[n].r) {
		n++
	}
	return n
}
