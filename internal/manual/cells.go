package manual

import "tidysump/internal/quantity"

// mostOffCell is how far a cell may begin from its column's head, in letters.
const mostOffCell = 4

// wholeRows puts the rows of a table together whose cells have several lines: below a head of
// three columns or more, a line that begins behind the first column goes on with the cells of
// the row above it.
func wholeRows(rows []row) []row {
	list := make([]row, 0, len(rows))
	for at := 0; at < len(rows); at++ {
		list = append(list, rows[at])
		cols := headColumns(rows[at].tokens)
		if len(cols) < 3 {
			continue
		}
		for at+1 < len(rows) && !rows[at+1].blank {
			at++
			if last := len(list) - 1; rows[at].tokens[0].col >= cols[1]-mostOffCell && list[last].number > rows[at].number-mostRun {
				if whole, ok := withCells(list[last].tokens, rows[at].tokens, cols); ok {
					list[last].tokens = whole
					continue
				}
			}
			list = append(list, rows[at])
		}
	}
	return list
}

// longLabels parts a number from a label that is as long as its column: one blank is all that stands
// between them then. The rows beside it have cells of numbers where that number and the next stand.
func longLabels(rows []row) {
	for n := range rows {
		line := rows[n].tokens
		for i := 1; i+1 < len(line); i++ {
			if t := &line[i]; t.kind == number && t.gap == blank && line[i-1].kind == word && line[i+1].gap == wide && inColumn(rows, n, t, &line[i+1]) {
				t.gap = wide
				break
			}
		}
	}
}

// inColumn reports whether the row above or below has a cell of a number, and one behind it, where
// two tokens stand.
func inColumn(rows []row, n int, a, b *token) bool {
	for _, k := range [...]int{n - 1, n + 1} {
		if k < 0 || k >= len(rows) {
			continue
		}
		line := rows[k].tokens
		for i := 1; i+1 < len(line); i++ {
			if c, d := &line[i], &line[i+1]; c.kind == number && c.gap == wide && d.gap == wide && abs(c.col-a.col) <= 1 && abs(d.col-b.col) <= 1 {
				return true
			}
		}
	}
	return false
}

// mostStacked is how many columns a table has at most whose cells stand below each other.
const mostStacked = 7

// stackWidth is how far the columns of such a table are laid apart, in letters.
const stackWidth = 60

// stackedRows puts the rows of a table together whose cells stand below each other, one a
// line: "Part", "Thread", "N·m", then "Drain plug", "M14 x 1.5", "30" and so on. It is known
// by a line that is a unit of torque and nothing else, and by figures in each of its places.
func stackedRows(rows []row) []row {
	list := make([]row, 0, len(rows))
	for at := 0; at < len(rows); {
		columns, count := stackAt(rows[at:])
		for next := 1; next < mostStacked && at+next < len(rows) && count > 0; next++ { // a title stands above the head
			if n, k := stackAt(rows[at+next:]); n*k > columns*count {
				columns, count = 0, 0
			}
		}
		if count == 0 {
			list = append(list, rows[at])
			at++
			continue
		}
		for range count + 1 {
			r := row{blank: rows[at].blank, number: rows[at].number}
			for j, cell := range rows[at : at+columns] {
				for i, t := range cell.tokens {
					if i == 0 {
						t.gap = wide
					}
					t.col, t.end = t.col+j*stackWidth, t.end+j*stackWidth
					r.tokens = append(r.tokens, t)
				}
			}
			list = append(list, r)
			at += columns
		}
	}
	return list
}

// stackAt gives how many columns and rows a table has whose head begins with the first of
// some lines; 0 for none.
func stackAt(rows []row) (columns, count int) {
	for unit := 1; unit < len(rows) && unit < mostStacked && !rows[unit].blank && !hasGap(rows[unit].tokens); unit++ {
		if !unitAlone(rows[unit].tokens) {
			continue
		}
		for n := unit + 1; n <= mostStacked; n++ {
			if k := stackedCount(rows, unit, n); k > 1 && k*n > columns*count {
				columns, count = n, k
			}
		}
		break
	}
	return columns, count
}

// unitAlone reports whether a line is a unit of torque.
func unitAlone(tokens []token) bool {
	id, n := unitAt(tokens, 0)
	unit, _ := quantity.Find(id)
	return n == len(tokens) && unit.Kind == quantity.Torque
}

// stackedCount counts the rows of n cells below a head of as many lines, in each of which
// the cell below the unit is a figure or a dash, and the first begins with a word.
func stackedCount(rows []row, unit, n int) (count int) {
	for i := 1; i < min(n, len(rows)); i++ {
		if rows[i].blank || hasGap(rows[i].tokens) {
			return 0
		}
	}
	for at := n; at+n <= len(rows); at += n {
		for i := at; i < at+n; i++ {
			if rows[i].blank || hasGap(rows[i].tokens) {
				return count
			}
		}
		label, figure := rows[at].tokens, rows[at+unit].tokens
		if label[0].kind != word || len(label[0].text) < 2 || unitAlone(label) || figure[0].kind != number && figure[0].text != "-" {
			break
		}
		count++
	}
	return count
}

// headColumns gives where the columns of a table begin whose head a line is: cells of words
// alone. nil for another line.
func headColumns(tokens []token) (cols []int) {
	for i := range tokens {
		if tokens[i].kind == number || tokens[i].text == ":" {
			return nil
		}
		if i == 0 || tokens[i].gap == wide {
			cols = append(cols, tokens[i].col)
		}
	}
	return cols
}

// withCells adds the cells of a further line to those of a row.
func withCells(row, more []token, cols []int) (whole []token, ok bool) {
	parts := make([][]token, len(cols))
	for n, line := range [...][]token{row, more} {
		for i, c := range cellsOf(line) {
			k := nearestColumn(cols, c[0].col)
			if n == 0 && i == 0 {
				k = 0
			}
			if n > 0 && (abs(cols[k]-c[0].col) > mostOffCell || len(parts[k]) == 0) {
				return nil, false
			}
			for j, t := range c {
				if j == 0 && n > 0 {
					t.gap, t.broken = blank, true
				}
				parts[k] = append(parts[k], t)
			}
		}
	}
	for _, p := range parts {
		whole = append(whole, p...)
	}
	return whole, true
}

func nearestColumn(cols []int, col int) (best int) {
	for k, c := range cols {
		if abs(c-col) < abs(cols[best]-col) {
			best = k
		}
	}
	return best
}
