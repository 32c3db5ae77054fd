package manual

import (
	"slices"
	"strings"
)

// piece is a line of one column, in the order in which a page is read.
type piece struct {
	tokens  []token
	blank   bool // a blank line stands before it
	joined  bool // it goes on with the sentence of the piece before it
	heading bool
	cells   bool // it has gaps: a row of a table
	model   int  // of which of several models its figures are, from 1; 0 of all
}

// layoutOf brings a page's lines into the order in which they are read: columns apart,
// torn sentences together.
func layoutOf(rows []row) []piece {
	var list []piece
	for _, run := range columnsOf(rows) {
		list = append(list, mended(run)...)
	}
	list = joinWords(list)
	markHeadings(list)
	return list
}

// closed reports whether a line ends a sentence.
func closed(tokens []token) bool {
	switch tokens[len(tokens)-1].text {
	case ".", "!", "?", ";", ":":
		return true
	}
	return false
}

// small reports whether a line begins within a sentence.
func small(tokens []token) bool {
	t := &tokens[0]
	return t.kind == word && t.text != strings.ToUpper(t.text) && t.text[0] == t.fold[0] && t.text[0] >= 'a' && t.text[0] <= 'z' ||
		t.kind == word && t.text[0] >= 0x80 && t.text == strings.ToLower(t.text)
}

// hyphened reports whether a line ends within a word.
func hyphened(tokens []token) bool {
	n := len(tokens)
	return n > 1 && tokens[n-1].text == "-" && tokens[n-1].gap == glued && tokens[n-2].kind == word
}

func hasGap(tokens []token) bool {
	for i := 1; i < len(tokens); i++ {
		if tokens[i].gap == wide {
			return true
		}
	}
	return false
}

// goesOn reports whether the second of two lines goes on where the first ends.
func goesOn(a, b []token) bool {
	return len(a) > 0 && len(b) > 0 && (hyphened(a) || !closed(a) && small(b))
}

// columnsOf gives the lines of each column, one column after the other where two stand
// side by side.
func columnsOf(rows []row) [][]row {
	var runs [][]row
	for at := 0; at < len(rows); {
		col, n := columnRun(rows[at:])
		if n == 0 {
			if len(runs) == 0 || len(runs[len(runs)-1]) == 0 || at > 0 && runs[len(runs)-1][0].number < 0 {
				runs = append(runs, nil)
			}
			runs[len(runs)-1] = append(runs[len(runs)-1], rows[at])
			at++
			continue
		}
		left, right := apart(rows[at:at+n], col)
		runs = append(runs, left, right, nil)
		at += n
	}
	return runs
}

// apart parts rows where a column begins.
func apart(rows []row, col int) (left, right []row) {
	for _, r := range rows {
		n := 0
		for n < len(r.tokens) && r.tokens[n].col < col-1 {
			n++
		}
		if n > 0 {
			left = append(left, row{r.tokens[:n], r.blank, r.number})
		}
		if n < len(r.tokens) {
			right = append(right, row{r.tokens[n:], r.blank, r.number})
		}
	}
	return left, right
}

// mostRun is how many lines of two columns are looked at together.
const mostRun = 120

// columnRun looks for two columns of text from the first row on: it gives where the
// second begins, and how many rows there are; 0 for none.
func columnRun(rows []row) (col, count int) {
	first := rows[0].tokens
	for i := 1; i < len(first); i++ {
		if first[i].gap != wide || first[i].kind == number {
			continue
		}
		c := first[i].col
		n, both := 0, 0
		for n < len(rows) && n < mostRun {
			side := sideOf(rows[n].tokens, c)
			if side == across || n > 0 && rows[n].blank && side != besides && !(n+1 < len(rows) && sideOf(rows[n+1].tokens, c) == besides) {
				break
			}
			if side == besides {
				both++
			}
			n++
		}
		if both < 3 {
			continue
		}
		if left, right := apart(rows[:n], c); twoTexts(left, right) {
			return c, n
		}
	}
	return 0, 0
}

// How a row lies to a column's beginning.
const (
	across = iota
	oneSide
	besides
)

func sideOf(tokens []token, col int) int {
	last := &tokens[len(tokens)-1]
	if last.end < col || tokens[0].col >= col-1 {
		return oneSide
	}
	for i := 1; i < len(tokens); i++ {
		if tokens[i].gap == wide && tokens[i].col >= col-1 && tokens[i].col <= col+1 {
			return besides
		}
	}
	return across
}

// twoTexts reports whether what stands side by side are two texts, and not the columns
// of a table: lines go on within their side, or both sides name their figures.
func twoTexts(left, right []row) bool {
	l, r := continued(left), continued(right)
	if l >= 1 && r >= 1 && l+r >= 3 {
		return true
	}
	labelled, at := 0, 0
	for _, a := range left {
		for at < len(right) && right[at].number < a.number {
			at++
		}
		if at < len(right) && right[at].number == a.number && labels(a.tokens) && labels(right[at].tokens) {
			labelled++
		}
	}
	return labelled >= 2
}

func continued(rows []row) (n int) {
	for i := 1; i < len(rows); i++ {
		if goesOn(rows[i-1].tokens, rows[i].tokens) {
			n++
		}
	}
	return n
}

// labels reports whether a line names a figure by itself: words, then a colon or a gap,
// then a number.
func labels(tokens []token) bool {
	if tokens[0].kind != word {
		return false
	}
	named := false
	for i := 1; i < len(tokens); i++ {
		named = named || tokens[i].text == ":" || tokens[i].gap == wide
		if named && tokens[i].kind == number {
			return true
		}
	}
	return false
}

// mended joins the lines of sentences that go on, also where the lines of two columns
// stand in turn.
func mended(rows []row) []piece {
	var list []piece
	width := 0
	for i := range rows {
		if w := rows[i].tokens[len(rows[i].tokens)-1].end; w > width && !hasGap(rows[i].tokens) {
			width = w
		}
	}
	for at := 0; at < len(rows); {
		end := at + 1
		for end < len(rows) && !rows[end].blank {
			end++
		}
		block := rows[at:end]
		if torn(block) {
			list = append(list, inTurn(block)...)
		} else {
			for i, r := range block {
				p := piece{tokens: r.tokens, blank: r.blank, cells: hasGap(r.tokens)}
				if i > 0 {
					p.joined = follows(block[i-1].tokens, r.tokens, width)
				}
				list = append(list, p)
			}
		}
		at = end
	}
	return list
}

// follows reports whether a line goes on with the sentence of the line before it.
func follows(a, b []token, width int) bool {
	switch {
	case hyphened(a):
		return true
	case bullet(b) > 0:
		return false
	case hasGap(a) || hasGap(b):
		return !hasGap(b) && small(b) && open(a) > 1
	case closed(a):
		return false
	case small(b):
		return open(a) > 1 || !endsInFigure(a)
	}
	return open(a) > 1 || a[len(a)-1].end*10 >= width*8 && !endsInFigure(a) && !capitals(a) && len(a) > 5
}

// endsInFigure reports whether a line ends as a row of a list does: with a figure.
func endsInFigure(tokens []token) bool {
	seen := false
	for i := len(tokens) - 1; i >= 0 && i > len(tokens)-5; i-- {
		if tokens[i].kind == number {
			seen = i < len(tokens)-1
			break
		}
	}
	return seen
}

// open says how much a line that ends no sentence waits for what goes on: 0 not at all,
// 3 by a word that cannot be its last.
func open(tokens []token) int {
	last := &tokens[len(tokens)-1]
	switch {
	case closed(tokens):
		return 0
	case hyphened(tokens), last.text == ",", last.text == "(", last.text == "/", last.text == "&":
		return 3
	case last.kind == word && isFunction(last.fold):
		return 3
	case last.kind == number && len(tokens) > 2 && !hasGap(tokens):
		return 2
	case tokens[0].kind == number, capitals(tokens), endsInFigure(tokens), hasGap(tokens):
		return 0
	}
	return 1
}

// capitals reports whether a line is written in capitals, as headings are.
func capitals(tokens []token) bool {
	letters := 0
	for i := range tokens {
		if t := &tokens[i]; t.kind == word {
			if t.text != strings.ToUpper(t.text) {
				return false
			}
			letters += len(t.text)
		}
	}
	return letters > 2
}

// torn reports whether the lines of a block are those of two columns in turn: one begins
// within a sentence though the one before it has ended, and another waits.
func torn(block []row) bool {
	for i := 2; i < len(block); i++ {
		if !small(block[i].tokens) || open(block[i-1].tokens) > 0 || bullet(block[i].tokens) > 0 {
			continue
		}
		for k := i - 2; k >= 0 && k >= i-mostBack; k-- {
			if open(block[k].tokens) > 0 && !small(block[k+1].tokens) {
				return true
			}
		}
	}
	return false
}

// mostBack is how many lines may stand between two of one sentence.
const mostBack = 4

// inTurn brings the lines of two columns that stand in turn into two orders: a line that
// begins within a sentence goes on with the one that waits most, of equals with the
// older.
func inTurn(block []row) []piece {
	next := make([]int, len(block)) // the line that goes on, 0 for none
	headed := make([]bool, len(block))
	for i := 1; i < len(block); i++ {
		if !small(block[i].tokens) {
			continue
		}
		best, at := 0, -1
		for k := max(0, i-mostBack); k < i; k++ {
			if n := open(block[k].tokens); next[k] == 0 && n > best {
				best, at = n, k
			}
		}
		if at >= 0 {
			next[at], headed[i] = i, true
		}
	}
	var list []piece
	for i := range block {
		if headed[i] {
			continue
		}
		for n := i; ; n = next[n] {
			list = append(list, piece{tokens: block[n].tokens, blank: block[n].blank, joined: n != i, cells: hasGap(block[n].tokens)})
			if next[n] == 0 {
				break
			}
		}
	}
	return list
}

// bullet gives how many tokens the mark of a list's item takes that begins a line.
func bullet(tokens []token) int {
	t := &tokens[0]
	switch {
	case t.kind == sign && strings.Contains("•·-*▪◦●■□►‣⁃", t.text) && len(tokens) > 1:
		return 1
	case t.kind == sign && t.text == "(" && len(tokens) > 3 && tokens[2].text == ")" && len(tokens[1].text) <= 2:
		return 3
	case len(tokens) > 2 && len(t.text) <= 2 && t.kind != sign && tokens[1].gap == glued && (tokens[1].text == "." || tokens[1].text == ")") && tokens[2].gap != glued:
		return 2
	}
	return 0
}

// joinWords puts words together that are parted at a line's end.
func joinWords(list []piece) []piece {
	for i := 1; i < len(list); i++ {
		a, b := list[i-1].tokens, list[i].tokens
		if !list[i].joined || !hyphened(a) || b[0].kind != word || !small(b) {
			continue
		}
		t := b[0]
		t.text, t.fold = a[len(a)-2].text+t.text, a[len(a)-2].fold+t.fold
		list[i].tokens = append([]token{t}, b[1:]...)
		list[i-1].tokens = a[:len(a)-2]
		if len(a) == 2 {
			list[i].joined, list[i].blank = list[i-1].joined, list[i-1].blank
		}
	}
	return slices.DeleteFunc(list, func(p piece) bool { return len(p.tokens) == 0 })
}

// markHeadings marks the lines that say what stands below them.
func markHeadings(list []piece) {
	for i := range list {
		p := &list[i]
		if p.joined || i+1 < len(list) && list[i+1].joined || i+1 == len(list) {
			continue
		}
		n := len(p.tokens)
		words := 0
		for _, t := range p.tokens {
			if t.kind == word {
				words++
			}
		}
		last := p.tokens[n-1].text
		if words == 0 || words > 7 || last == "." || last == "," {
			continue
		}
		if hasUnit(p.tokens) {
			continue
		}
		p.heading = capitals(p.tokens) || last == ":" || (p.blank || i == 0) && bullet(p.tokens) == 0 && !list[i+1].blank
	}
}

// hasUnit reports whether a line has a figure with its unit, figures in cells, or an oil's
// grade or standard.
func hasUnit(tokens []token) bool {
	for i := range tokens {
		switch tokens[i].fold {
		case "sae", "api", "jaso":
			return true
		}
		if tokens[i].kind != number {
			continue
		}
		if _, n := unitAt(tokens, i+1); n > 0 {
			return true
		}
		if tokens[i].gap == wide && i > 0 && i+1 == len(tokens) && tokens[i].text != "" && !pageLike(tokens[i:]) {
			return true
		}
	}
	return false
}

func pageLike(tokens []token) bool { return len(tokens) <= 3 }

// isFunction reports whether a word is one of those that hold sentences together, in any
// language.
func isFunction(w string) bool {
	for _, l := range allLanguages() {
		for _, f := range l.function {
			if f == w {
				return true
			}
		}
	}
	return false
}
