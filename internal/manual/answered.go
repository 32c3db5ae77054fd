package manual

import (
	"slices"

	"tidysump/internal/quantity"
)

// A table that was copied column by column has all its labels first and all its figures
// behind them: each figure is the label's that stands as far down. Common practice of
// programs that show pages; no source.

// mostAnswered is how many lines a column has at most that is put beside its labels.
const mostAnswered = 40

// mostLabelWords is how many tokens a label has at most, mostFigureWords a figure's line with
// its twins in other units.
const mostLabelWords, mostFigureWords = 10, 28

// answeredRows puts a column of labels and the column of their figures, which stands below
// it, together again. What stands above the labels and is no label is a heading in capitals;
// where the two do not have the same number of lines, nothing is put together.
func answeredRows(rows []row) []row {
	list := make([]row, 0, len(rows))
	for at := 0; at < len(rows); at++ {
		list = append(list, rows[at])
		if !columnLine(rows[at].tokens) || !figureLine(rows[at].tokens) {
			continue
		}
		to := at + 1
		for to < len(rows) && to-at < mostAnswered && !rows[to].blank && columnLine(rows[to].tokens) && (figureLine(rows[to].tokens) || gradeLine(rows[to].tokens)) {
			to++
		}
		count, above := to-at, len(list)-1
		if count < 2 || twinLines(rows[at:to]) {
			continue
		}
		var labels []int // from the last
		for above > 0 && len(labels) < count && labelLine(list[above-1].tokens) && (above == len(list)-1 || !list[above].blank) {
			if above--; !small(list[above].tokens) {
				labels = append(labels, above)
			}
		}
		if len(labels) < count || above > 0 && !list[above].blank && labelLine(list[above-1].tokens) && !(capitals(list[above-1].tokens) && !capitals(list[above].tokens)) {
			continue
		}
		slices.Reverse(labels)
		whole := make([]row, count)
		for n, from := range labels {
			end := len(list) - 1
			if n+1 < count {
				end = labels[n+1]
			}
			r := row{blank: list[from].blank, number: list[from].number, side: list[from].side}
			for _, line := range list[from:end] {
				r.tokens = append(r.tokens, line.tokens...)
			}
			for i, t := range rows[at+n].tokens {
				if i == 0 {
					t.gap, t.broken = wide, true
				}
				t.col, t.end = t.col+stackWidth, t.end+stackWidth
				r.tokens = append(r.tokens, t)
			}
			whole[n] = r
		}
		list = append(list[:above], whole...)
		at = to - 1
	}
	return list
}

// columnLine reports whether a line may be a cell and nothing else.
func columnLine(tokens []token) bool {
	return len(tokens) > 0 && len(tokens) <= mostFigureWords && !hasGap(tokens) && tokens[len(tokens)-1].text != "."
}

// labelLine reports whether a line names a thing and gives no figure of it.
func labelLine(tokens []token) bool {
	if !columnLine(tokens) || len(tokens) > mostLabelWords || tokens[0].kind != word || closed(tokens) && tokens[len(tokens)-1].text != ":" {
		return false
	}
	return !hasUnit(tokens)
}

// figureLine reports whether a line begins with a figure that has a unit.
func figureLine(tokens []token) bool {
	i := 0
	for i < len(tokens) && i < mostRange && (tokens[i].kind == number || i > 0 && tokens[i].kind == sign) {
		if _, n := unitAt(tokens, i+1); n > 0 && tokens[i].kind == number {
			return true
		}
		i++
	}
	return false
}

// mostRange is how many tokens a range has at most before its unit: "1/2 - 3/4".
const mostRange = 8

// gradeLine reports whether a line begins with an oil's grade or standard, or leaves its cell
// empty.
func gradeLine(tokens []token) bool {
	return namesGrade(tokens[:min(2, len(tokens))]) || len(tokens) == 1 && tokens[0].text == "-"
}

// twinLines reports whether one of some lines is the figure of the one before it in units of
// another country: then they are all of one label.
func twinLines(rows []row) bool {
	last := ""
	for _, r := range rows {
		unit := ""
		for i := range r.tokens {
			if id, n := unitAt(r.tokens, i+1); n > 0 && r.tokens[i].kind == number {
				unit = id
				break
			}
		}
		a, _ := quantity.Find(last)
		b, _ := quantity.Find(unit)
		if unit != last && last != "" && a.Kind == b.Kind && !(metric(last) && metric(unit)) {
			return true
		}
		last = unit
	}
	return false
}

// metric reports whether a unit of volume is one of litres.
func metric(id string) bool { return id == "L" || id == "mL" || id == "cm³" }
