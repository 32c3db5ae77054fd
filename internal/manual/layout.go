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
	below   bool // it is the figure of the label in the line before it
	over    bool // a heading of the lines that stand further in, and of no more
	model   int  // of which of several models its figures are, from 1; 0 of all
}

// layoutOf brings a page's lines into the order in which they are read: columns apart,
// torn sentences together.
func layoutOf(rows []row, d *dictionary) []piece {
	var list []piece
	for _, run := range columnsOf(wholeRows(answeredRows(stackedRows(rows)))) {
		list = append(list, d.mended(run)...)
	}
	list = joinWords(list)
	d.namedNotes(list)
	list = footnotes(list)
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
	return t.kind == word && !t.upper && t.text[0] == t.fold[0] && t.text[0] >= 'a' && t.text[0] <= 'z' ||
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
		for _, side := range [...][]row{left, right} {
			side[0].blank = side[0].blank || !small(side[0].tokens) // nothing stands above a column
		}
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
			left = append(left, row{tokens: r.tokens[:n], blank: r.blank, number: r.number, side: true})
		}
		if n < len(r.tokens) {
			right = append(right, row{tokens: r.tokens[n:], blank: r.blank, number: r.number, side: true})
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
		if both < 3 || 2*ledTo(rows[:n], c) > both { // leaders lead to the figures of a table
			continue
		}
		if left, right := apart(rows[:n], c); twoTexts(left, right) {
			return c, n
		}
	}
	return 0, 0
}

// ledTo counts the rows in which a leader leads to a column.
func ledTo(rows []row, col int) (count int) {
	for _, r := range rows {
		for i := range r.tokens {
			if t := &r.tokens[i]; t.led && t.col >= col-1 && t.col <= col+1 {
				count++
			}
		}
	}
	return count
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
		if tokens[i].gap == wide && tokens[i].col >= col-1 && tokens[i].col <= col+mostIndent && tokens[i-1].end < col {
			return besides
		}
	}
	return across
}

// mostIndent is how far a line of a column may be indented.
const mostIndent = 6

// twoTexts reports whether what stands side by side are two texts, and not the columns
// of a table: lines go on within their side, or both sides name their figures.
func twoTexts(left, right []row) bool {
	if figured(left) == 0 && 3*figured(right) >= 2*len(right) || mostlyFigures(right) { // labels, and their figures
		return false
	}
	if mostlyMeasures(left) { // "every 5,000 km", and what is done then
		return false
	}
	l, r := continued(left), continued(right)
	gaps := 0
	for i := range left {
		if hasGap(left[i].tokens) {
			gaps++
		}
	}
	if l >= 1 && r >= 1 && l+r >= 3 && gaps*3 <= len(left) { // and no table whose cells are wrapped
		return true
	}
	if gaps*3 <= len(left) && (l >= leastProse && selfLabelled(right) >= leastProse || r >= leastProse && selfLabelled(left) >= leastProse) {
		return true // a text beside a list
	}
	labelled, at := 0, 0
	for _, a := range left {
		for at < len(right) && right[at].number < a.number {
			at++
		}
		if at < len(right) && right[at].number == a.number && labels(a.tokens) && labels(right[at].tokens) && !namesGrade(cellsOf(right[at].tokens)[0]) { // a table's oil, and how often it is changed
			labelled++
		}
	}
	return labelled >= 2
}

// leastProse is how many lines of a side go on at least that is a text, or name their figures
// that is a list beside one.
const leastProse = 3

// selfLabelled counts the lines that name their figure with a colon.
func selfLabelled(rows []row) (n int) {
	for _, r := range rows {
		if labels(r.tokens) && !hasGap(r.tokens) {
			n++
		}
	}
	return n
}

// figured counts the lines that have a number.
func figured(rows []row) (n int) {
	for _, r := range rows {
		if slices.ContainsFunc(r.tokens, func(t token) bool { return t.kind == number }) {
			n++
		}
	}
	return n
}

// mostlyFigures reports whether more than half of a side's lines are a figure and nothing
// else: then it is the column of a table's values, whose labels stand on the other side.
func mostlyFigures(side []row) bool {
	figures := 0
	for _, r := range side {
		if r.tokens[0].kind == number && (endsInFigure(r.tokens) || !slices.ContainsFunc(r.tokens, func(t token) bool { return t.kind == word })) {
			figures++
		}
	}
	return figures*2 > len(side)
}

// mostlyMeasures reports whether more than half of a side's lines are a figure with its unit and
// a word or two: they are the labels of what stands beside them.
func mostlyMeasures(side []row) bool {
	measures := 0
	for _, r := range side {
		if len(r.tokens) <= mostLabel+2 && measure(r.tokens) && !slices.ContainsFunc(r.tokens, func(t token) bool { return t.text == ":" }) {
			measures++
		}
	}
	return measures*2 > len(side)
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
	if tokens[0].kind != word || tokens[0].fold == "sae" || tokens[0].fold == "api" || tokens[0].fold == "jaso" || len(tokens) > 1 && tokens[1].kind == number && tokens[1].gap == glued { // "M12 × 1.5" names nothing
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
func (d *dictionary) mended(rows []row) []piece {
	var list []piece
	width, left := 0, 0
	for i := range rows {
		first, last := &rows[i].tokens[0], &rows[i].tokens[len(rows[i].tokens)-1]
		if !hasGap(rows[i].tokens) {
			width = max(width, last.end)
		}
		if rows[i].side && (i == 0 || first.col < left) {
			left = first.col
		}
	}
	for at := 0; at < len(rows); {
		end := at + 1
		for end < len(rows) && !rows[end].blank {
			end++
		}
		block := rows[at:end]
		var dealt []piece
		if !block[0].side && d.torn(block) {
			dealt = d.inTurn(block)
		}
		if list = append(list, dealt...); dealt == nil {
			for i, r := range block {
				p := piece{tokens: r.tokens, blank: r.blank, cells: hasGap(r.tokens)}
				if i > 0 {
					p.joined = d.follows(block[i-1].tokens, r.tokens, left, width)
					if !p.joined && (answers(block[i-1].tokens, r.tokens) || d.dueBelow(block[i-1].tokens, r.tokens)) {
						p.joined, p.below = true, true
					}
				}
				list = append(list, p)
			}
		}
		at = end
	}
	return list
}

// follows reports whether a line goes on with the sentence of the line before it, in a
// column that reaches from left to width.
func (d *dictionary) follows(a, b []token, left, width int) bool {
	switch {
	case hyphened(a), unitBelow(a, b) && !hasGap(b):
		return true
	case twinsBelow(a, b):
		return true
	case (d.dueEntry(a) || a[0].kind == number && entryColon(a)) && d.dueEntry(b):
		return false // "1,000 km: engine oil" over "every 4,000 km: engine oil, filter"
	case bullet(b) > 0:
		return false
	case b[0].text == "(" && len(b) > 2 && labelLine(a) && !hasGap(b) && !figureLine(b[1:]): // "Engine oil capacity" over "(after overhaul)"
		return true
	case hasGap(a) || hasGap(b):
		return !hasGap(b) && small(b) && (d.open(a) > 1 || b[0].function && !closed(a) && len(a) >= 4 && a[len(a)-1].end-a[0].col >= 20)
	case small(b) && (endsInLabel(a) || d.endsInSize(a)):
		return true
	case closed(a), capitals(a) && b[0].col > a[0].col:
		return false
	case capitals(b) && !capitals(a) && len(b) <= 3:
		return d.open(a) > 2
	case small(b):
		return d.open(a) > 1 || (!endsInFigure(a) || b[0].function && len(a) > mostHeading) && (a[len(a)-1].end-left)*10 >= (width-left)*wideEnough
	case begins(b):
		return d.open(a) > 2
	}
	return d.open(a) > 1 || (a[len(a)-1].end-left)*10 >= (width-left)*8 && !endsInFigure(a) && !capitals(a) && len(a) > 5
}

// endsInLabel reports whether a line ends in a label behind a sentence: what that is of comes
// in the next line.
func endsInLabel(tokens []token) bool {
	n := len(tokens) - 1
	if tokens[n].text != ":" {
		return false
	}
	for i := n - 1; i > 1 && i > n-6; i-- {
		if tokens[i].text == "." && tokens[i].gap == glued && tokens[i-1].kind == word && (len(tokens[i-1].text) > 3 || tokens[i-1].unitOf() != "") {
			return true
		}
	}
	return false
}

// endsInSize reports whether a line ends with a figure that an article begins, which waits for what
// it is the size of: "… A 24 mm" over "socket fits the plug".
func (d *dictionary) endsInSize(tokens []token) bool {
	n := len(tokens) - 3
	if n < 1 || !measure(tokens) || tokens[n+1].gap != blank || tokens[n].kind != word {
		return false
	}
	e, _ := d.match(tokens[:n+1], n)
	return e != nil && slices.Contains(e.senses, "number.1")
}

// wideEnough is how full a line of prose is at least that goes on in the next, in tenths of
// the longest of its text.
const wideEnough = 6

// begins reports whether a line begins with a label and a colon, or a dash before a figure,
// as an entry of a list does.
func begins(tokens []token) bool {
	for i := 1; i < len(tokens) && i < 7; i++ {
		if tokens[i].text == ":" {
			return i+1 < len(tokens)
		}
		if tokens[i].text == "-" && tokens[i].gap == blank && i+1 < len(tokens) && tokens[i+1].gap == blank && tokens[i+1].kind == number {
			return true
		}
		if tokens[i].kind != word {
			return rowOf(tokens)
		}
	}
	return false
}

// rowOf reports whether a line is a label of several parts, a colon and a figure.
func rowOf(tokens []token) bool {
	for i := 1; i+1 < len(tokens) && i < 16; i++ {
		t := &tokens[i]
		switch {
		case t.text == ":":
			return tokens[i+1].kind == number
		case t.kind == number, t.kind == sign && !strings.Contains(",()-/'", t.text):
			return false
		}
	}
	return false
}

// bracketed reports whether a line ends within brackets.
func bracketed(tokens []token) bool {
	deep := 0
	for i := range tokens {
		switch tokens[i].text {
		case "(":
			deep++
		case ")":
			deep = max(deep-1, 0)
		}
	}
	return deep > 0
}

// endsInFigure reports whether a line ends as a row of a list does: with a figure.
func endsInFigure(tokens []token) bool {
	last := len(tokens) - 1
	if tokens[last].text == ")" { // its twins
		for last > 0 && tokens[last].text != "(" {
			last--
		}
		last--
	}
	for i := last; i >= 0 && i > last-5; i-- {
		if tokens[i].kind == number {
			_, n := unitAt(tokens, i+1)
			return n > 0 && i+n >= last
		}
	}
	return false
}

// open says how much a line that ends no sentence waits for what goes on: 0 not at all,
// 3 by a word that cannot be its last.
func (d *dictionary) open(tokens []token) int {
	last := &tokens[len(tokens)-1]
	switch {
	case closed(tokens):
		return 0
	case bracketed(tokens) && endsInFigure(tokens):
		return 2
	case hyphened(tokens), bracketed(tokens), last.text == ",", last.text == "(", last.text == "/", last.text == "&":
		return 3
	case last.kind == word && last.function && last.gap != glued && !measure(tokens) && (len(tokens) > 1 || !capitals(tokens)):
		return 3
	case last.kind == number && len(tokens) > 2 && !hasGap(tokens):
		return 2
	case tokens[0].kind == number, capitals(tokens), endsInFigure(tokens), hasGap(tokens):
		return 0
	}
	return 1
}

// measure reports whether a line ends with a number and its unit, which may be a small word
// too: "1.2 l".
func measure(tokens []token) bool {
	n := len(tokens)
	return n > 1 && tokens[n-2].kind == number && tokens[n-1].unitOf() != ""
}

// capitals reports whether a line is written in capitals, as headings are.
func capitals(tokens []token) bool {
	letters := 0
	for i := range tokens {
		if t := &tokens[i]; t.kind == word {
			if !t.upper {
				return false
			}
			letters += len(t.text)
		}
	}
	return letters > 2
}

// torn reports whether the lines of a block are those of two columns in turn: one begins
// within a sentence though the one before it has ended, and another waits.
func (d *dictionary) torn(block []row) bool {
	for i := 2; i < len(block); i++ {
		if !small(block[i].tokens) || d.open(block[i-1].tokens) > 0 || unitBelow(block[i-1].tokens, block[i].tokens) || !ended(block[i-1].tokens) || bullet(block[i].tokens) > 0 || !prose(block[i].tokens) {
			continue
		}
		for k := i - 2; k >= 0 && k >= i-mostBack; k-- {
			waits := d.open(block[k].tokens)
			if waits > 0 && (!small(block[k+1].tokens) || waits == 3 && d.turns(block[max(k-1, 0):i+1])) && prose(block[k].tokens) && flush(block[k:k+2]) && flush(block[i-1:i+1]) {
				return true
			}
		}
	}
	return false
}

// ended reports whether a line that waits for nothing has come to its end: a figure ends a row
// with a label, and may stand amid a sentence; behind a sentence's end another has begun.
func ended(tokens []token) bool {
	if capitals(tokens) || hasGap(tokens) {
		return true
	}
	if tokens[0].kind == number && len(tokens) > mostBegun && !endsInFigure(tokens) && stopped(tokens) {
		return closed(tokens)
	}
	for i := len(tokens) - 2; i > 1 && i > len(tokens)-mostBegun && tokens[i+1].kind == word; i-- {
		if t := &tokens[i]; t.text == "." && t.gap == glued && tokens[i+1].gap != glued && len(tokens[i-1].text) > 1 && !closed(tokens) {
			return false
		}
	}
	return !endsInFigure(tokens) || slices.ContainsFunc(tokens, func(t token) bool { return t.text == ":" })
}

// stopped reports whether a comma or a full stop stands amid a line, and not in brackets.
func stopped(tokens []token) bool {
	deep := 0
	for i := 1; i < len(tokens)-1; i++ {
		switch t := &tokens[i]; {
		case t.text == "(":
			deep++
		case t.text == ")":
			deep--
		case deep <= 0 && (t.text == "," || t.text == ".") && t.gap == glued && tokens[i+1].gap != glued:
			return true
		}
	}
	return false
}

// mostBegun is how many tokens of a sentence are looked at that begins at a line's end.
const mostBegun = 6

// unitBelow reports whether a line begins with the unit, or the rest of it, of the number that ends
// the one above it: "20" over "N·m", "0.6 Imp." over "pint".
func unitBelow(a, b []token) bool {
	for i := len(a) - 1; i >= 0 && i > len(a)-mostUnit; i-- {
		if a[i].kind == number {
			both := append(slices.Clone(a[i+1:]), b[:min(len(b), mostUnit)]...)
			_, n := unitAt(both, 0)
			return n > len(a)-1-i
		}
	}
	return false
}

// twinsBelow reports whether a line begins with the twins of the figure that ends the one above it.
func twinsBelow(a, b []token) bool {
	if len(b) < 3 || b[0].text != "(" || b[1].kind != number || bullet(b) > 0 || hasGap(b) {
		return false
	}
	if n := len(a) - 1; n > 0 && a[n].text == "." && a[n].gap == glued && a[n-1].unitOf() != "" { // "104 cu. in."
		a = a[:n]
	}
	return endsInFigure(a)
}

// turns reports whether each of some lines but the last waits for what goes on, up to one that
// ends, and all of them go on: two sentences in turn.
func (d *dictionary) turns(block []row) bool {
	for i, r := range block {
		if last := len(block) - 2; i < last && d.open(r.tokens) < 3 || i > 1 && !small(r.tokens) {
			return false
		}
	}
	return len(block) > 3
}

// mostColumn is how many letters a line has at most that is of one of two columns. Common
// practice: a column of print has 35 to 50.
const mostColumn = 62

// flush reports whether lines begin at one place; what is below a heading may be indented.
func flush(rows []row) bool {
	return rows[0].tokens[0].col == rows[len(rows)-1].tokens[0].col
}

// prose reports whether a line is long enough to be of a text in a column.
func prose(tokens []token) bool {
	width := tokens[len(tokens)-1].end - tokens[0].col
	return len(tokens) >= 4 && width >= 20 && width <= mostColumn
}

// mostBack is how many lines may stand between two of one sentence.
const mostBack = 4

// How much it speaks against a line's going on behind another of its column.
const (
	fits      = 0  // a sentence goes on, or ended and another begins
	unusual   = 2  // a sentence that may have ended goes on with a large letter or a figure
	odd       = 4  // one that waits goes on with a large letter
	wrongly   = 12 // a small letter behind an end
	sameAgain = 3  // two lines of one column, one right behind the other
)

// against says how much speaks against a line's going on behind another.
func (d *dictionary) against(a, b []token) int {
	waits := d.open(a)
	switch {
	case hyphened(a) && small(b), unitBelow(a, b), twinsBelow(a, b):
		return fits
	case small(b) && a[len(a)-1].text == ":", small(a) && small(b) && endsInFigure(a) && endsInFigure(b): // what is listed below it
		return fits
	case small(b) && waits == 0 && !ended(a):
		return unusual
	case small(b) && waits == 0:
		return wrongly
	case small(b):
		return fits
	case waits == 3 && (b[0].kind == number || namesGrade(b[:1])):
		return fits
	case waits == 3:
		return odd
	case waits > 0:
		return unusual
	}
	return fits
}

// turn is a way to deal lines out to two columns, up to one of them.
type turn struct {
	cost  int
	other int  // the last line of the other column, -1 for none
	back  int  // which turn of the line before it comes from
	same  bool // this line is of the column of the one before it
}

// inTurn deals the lines of two columns that stand in turn out to their columns: in the
// way against which the least speaks.
func (d *dictionary) inTurn(block []row) []piece {
	turns := make([][]turn, len(block))
	turns[0] = []turn{{other: -1}}
	for i := 1; i < len(block); i++ {
		b := block[i].tokens
		behind := d.against(block[i-1].tokens, b) + sameAgain
		best := turn{cost: 1 << 30}
		for n, t := range turns[i-1] {
			if t.other < 0 || i-t.other <= mostBack {
				turns[i] = append(turns[i], turn{t.cost + behind, t.other, n, true})
			}
			cost := t.cost
			switch {
			case t.other >= 0:
				cost += d.against(block[t.other].tokens, b)
			case small(b):
				cost += wrongly
			}
			if cost < best.cost {
				best = turn{cost, i - 1, n, false}
			}
		}
		turns[i] = append(turns[i], best)
	}
	last := len(block) - 1
	at := 0
	for n := range turns[last] {
		if turns[last][n].cost < turns[last][at].cost {
			at = n
		}
	}
	one, certain := 0, false // what speaks against one column
	for i := 1; i < len(block); i++ {
		a, b := block[i-1].tokens, block[i].tokens
		one += d.against(a, b)
		n := len(a)
		certain = certain || n > 1 && small(b) && bullet(b) == 0 && closed(a) && len(a[n-2].fold) > 3 && a[n-2].unitOf() == "" // "its washer." over "new element"
	}
	if !certain && 2*(one-turns[last][at].cost) < len(block) {
		return nil
	}
	column := make([]int, len(block)) // 1 where it is not that of the last line
	for i := last; i > 0; i-- {
		t := turns[i][at]
		if column[i-1] = column[i]; !t.same {
			column[i-1] = 1 - column[i]
		}
		at = t.back
	}
	var list []piece
	for _, c := range [...]int{column[0], 1 - column[0]} {
		var before []token
		width := 0
		for i := range block {
			if column[i] == c {
				width = max(width, block[i].tokens[len(block[i].tokens)-1].end)
			}
		}
		for i := range block {
			if column[i] != c {
				continue
			}
			p := piece{tokens: block[i].tokens, blank: before == nil, cells: hasGap(block[i].tokens)}
			p.joined = before != nil && (d.follows(before, p.tokens, 0, width) || small(p.tokens) && d.open(before) > 0)
			list = append(list, p)
			before = p.tokens
		}
	}
	return list
}

// answers reports whether a line is a figure for the label that the line before it is, as
// where a table's cells stand below each other.
func answers(label, figure []token) bool {
	step := bullet(label)
	label = label[step:]
	if len(label) == 0 {
		return false
	}
	if n := len(label) - 1; label[n].text == ")" { // "Drain bolt (M14 × 1.5)", and a bracket alone
		for n > 0 && label[n].text != "(" {
			n--
		}
		if hasUnit(label[n:]) {
			return false
		}
		if label = label[:n]; n == 0 {
			_, n = unitAt(figure, 1)
			return figure[0].kind == number && n > 0 && len(figure) <= 24 && !hasGap(figure)
		}
	}
	colon := label[len(label)-1].text == ":"
	if len(label) > 8 || len(figure) > 24 || closed(label) && !colon || hasGap(label) || hasGap(figure) || label[0].kind != word {
		return false
	}
	for i := range label {
		if label[i].kind == number {
			return false
		}
	}
	if figure[0].kind != number {
		return false
	}
	_, n := unitAt(figure, 1)
	last := figure[len(figure)-1].text
	return n > 0 && (len(figure) == 1+n || figure[1+n].kind == sign && (!colon || step > 0 || last == ")" || last == "."))
}

// dueBelow reports whether a line begins with "every", or another small word and a number, below
// a short label: "Gearbox oil" over "every 10,000 km".
func (d *dictionary) dueBelow(label, due []token) bool {
	if len(label) > 6 || len(due) < 3 || len(due) > 16 || closed(label) || capitals(label) || hasGap(label) || hasGap(due) || label[0].kind != word || small(label) || !endsInFigure(due) {
		return false
	}
	for i := range label {
		if label[i].kind != word {
			return false
		}
	}
	e, n := d.match(due, 0)
	if e == nil || !slices.Contains(e.senses, "when.every") {
		if n = 1; !due[0].function {
			return false
		}
	}
	return n < len(due) && due[n].kind == number
}

// dueEntry reports whether a line begins with "every", a number and a colon behind its unit, as an
// entry of a list of what is due.
func (d *dictionary) dueEntry(tokens []token) bool {
	e, n := d.match(tokens, 0)
	return e != nil && slices.Contains(e.senses, "when.every") && n < len(tokens) && tokens[n].kind == number && entryColon(tokens)
}

// entryColon reports whether a colon stands among the first tokens of a line, with words behind it.
func entryColon(tokens []token) bool {
	for i := 1; i+1 < len(tokens) && i < mostEntry; i++ {
		if tokens[i].text == ":" {
			return true
		}
	}
	return false
}

// mostEntry is behind how many tokens a colon stands at most that parts an entry's interval from
// its works: "every 12 000 km or 12 months:".
const mostEntry = 10

// bullet gives how many tokens the mark of a list's item takes that begins a line.
func bullet(tokens []token) int {
	t := &tokens[0]
	switch {
	case t.step:
		return 1
	case t.kind == sign && strings.Contains("•·-*▪◦●■□►‣⁃", t.text) && len(tokens) > 1:
		return 1
	case t.kind == sign && t.text == "(" && len(tokens) > 3 && tokens[2].text == ")" && len(tokens[1].text) <= 2:
		return 3
	case len(tokens) > 1 && t.kind == number && len(t.text) <= 4 && strings.Contains(t.text, ".") && (tokens[1].gap == blank || tokens[1].gap == wide && tokens[1].col-t.end <= mostApart && !hasGap(tokens[1:])) && chapter(tokens):
		return 1
	case len(tokens) > 2 && (t.kind == number && len(t.text) <= 2 || len(t.text) == 1 && t.kind == word) && tokens[1].gap == glued && (tokens[1].text == "." || tokens[1].text == ")") && tokens[2].gap != glued:
		return 2
	}
	return 0
}

// chapter reports whether the number that begins a line counts a page's chapters: "7.2
// Filter", "8.1 230 cc".
func chapter(tokens []token) bool {
	t := &tokens[1]
	if t.kind == number {
		return true
	}
	_, n := unitAt(tokens, 1)
	return t.kind == word && n == 0 && len(t.text) > 1 && capital(t.text)
}

// chaptered reports whether a line begins with the number of a chapter within another, which no
// step has: "7.3 Wheels".
func chaptered(tokens []token) bool {
	t := &tokens[0]
	return t.kind == number && strings.Contains(t.text, ".") && bullet(tokens) == 1
}

// joinWords puts words together that are parted at a line's end.
func joinWords(list []piece) []piece {
	for i := 1; i < len(list); i++ {
		a, b := list[i-1].tokens, list[i].tokens
		if !hyphened(a) || b[0].kind != word || !(list[i].joined && small(b)) && !(capitals(a[len(a)-2:]) && capitals(b[:1]) && !list[i].blank) {
			continue
		}
		list[i].joined = true
		t := b[0]
		t.lexeme = newLexeme(t.lexeme, word, a[len(a)-2].text+t.text, a[len(a)-2].fold+t.fold)
		list[i].tokens = append([]token{t}, b[1:]...)
		list[i-1].tokens = a[:len(a)-2]
		if len(a) == 2 {
			list[i].joined, list[i].blank = list[i-1].joined, list[i-1].blank
		}
	}
	return slices.DeleteFunc(list, func(p piece) bool { return len(p.tokens) == 0 })
}

// mostHeading is how many words a heading has at most that stands in a paragraph of its
// own.
const mostHeading = 5

// mostWords is how many words a heading has at most, mostCapitals how many where it stands in
// capitals above what does not.
const mostWords, mostCapitals = 7, 12

// markHeadings marks the lines that say what stands below them.
func markHeadings(list []piece) {
	chapters := slices.ContainsFunc(list, func(p piece) bool { return chaptered(p.tokens) })
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
		if words == 0 || words > mostWords && !(p.blank && words <= mostCapitals && capitals(p.tokens) && !capitals(list[i+1].tokens)) || last == "." || last == "," {
			continue
		}
		if hasUnit(p.tokens) || namesGrade(p.tokens) || bareRow(p.tokens) || i > 0 && !p.blank && rowLike(p.tokens) && cellEnds(list[i-1].tokens) {
			continue
		}
		deeper := list[i+1].tokens[0].col >= p.tokens[0].col+2 && !list[i+1].blank && !p.cells
		p.over = deeper
		chapter := chaptered(p.tokens) || chapters && p.blank && p.tokens[0].kind == number && bullet(p.tokens) > 0 && bullet(list[i+1].tokens) == 0 // "8. Air filter" behind "7.2 Gearbox"
		numbered := words <= mostHeading && !closed(p.tokens) && (!p.cells || !hasGap(p.tokens[1:])) && chapter && !chaptered(list[i+1].tokens)
		p.heading = deeper || numbered || i > 0 && words <= mostHeading && inset(list[i-1].tokens, p, &list[i+1]) || p.tokens[0].text == "[" && last == "]" || capitals(p.tokens) || last == ":" || bullet(p.tokens) == 0 && (p.blank || i == 0) && (!list[i+1].blank || !p.cells && words <= mostHeading && !closed(p.tokens))
	}
}

// inset reports whether a line is a title that stands further in than the text above and below it:
// a sentence ends in the one, and another begins the other.
func inset(above []token, p, below *piece) bool {
	first := below.tokens[0]
	return !p.cells && !below.cells && closed(above) && bullet(p.tokens) == 0 && bullet(below.tokens) == 0 && !closed(p.tokens) && p.tokens[0].kind == word && capital(p.tokens[0].text) &&
		p.tokens[0].col >= first.col+2 && above[0].col <= first.col+1 && first.kind == word && !small(below.tokens) && len(below.tokens) >= mostHeading
}

// rowLike reports whether a line's last cell is a number alone.
func rowLike(tokens []token) bool {
	last := &tokens[len(tokens)-1]
	return last.kind == number && last.gap == wide && len(tokens) > 1
}

// cellEnds reports whether a line ends in a cell that is a unit, or has one that is a number,
// as the head and the rows of a table do.
func cellEnds(tokens []token) bool {
	if figureCells(tokens) > 0 {
		return true
	}
	for i := len(tokens) - 1; i > 0; i-- {
		if tokens[i].gap == wide {
			_, n := unitAt(tokens, i)
			return n > 0 && i+n == len(tokens)
		}
	}
	return false
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
	}
	return figureCells(tokens) > 1
}

// bareRow reports whether a line is a label and its figure without a unit, as where a photo
// has lost that: what leads to the figure, or its point, says that it counts no page.
func bareRow(tokens []token) bool {
	n := len(tokens)
	for n > 0 && tokens[n-1].kind == number {
		n--
	}
	if n == 0 || n == len(tokens) {
		return false
	}
	t := &tokens[n]
	return t.led || t.gap != glued && (tokens[n-1].text == ":" || tokens[n-1].text == "-" || strings.ContainsAny(t.text, ".,"))
}

// figureCells counts the cells of a line that begin with a number.
func figureCells(tokens []token) (count int) {
	for i := 1; i < len(tokens); i++ {
		if tokens[i].gap == wide && tokens[i].kind == number {
			count++
		}
	}
	return count
}

// namesGrade reports whether a line names a grade, a mark or a category.
func namesGrade(tokens []token) bool {
	for i := range tokens {
		switch tokens[i].fold {
		case "sae", "api", "jaso":
			return true
		}
	}
	return false
}
