package manual

// mostOffCell is how far a cell may begin from its column's head, in letters.
const mostOffCell = 4

// wholeRows puts the rows of a table together whose cells have several lines: below a head of
// three columns or more, a line that begins behind the first column goes on with the cells of
// the row above it.
func wholeRows(rows []row) []row {
	var list []row
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
