package manual

import (
	"slices"
	"strings"
)

// mostNote is the most tokens of a footnote that is read in its row.
const mostNote = 14

// mostNoted is the most rows that one footnote may be of, which is read with each of them.
const mostNoted = 4

// footnotes puts what a footnote says where its mark stands in a row: "capacity 2) … 1.4 L"
// and below "2) with filter" are one row. What has figures of its own, or is long, is read as a
// line below the row's label: "Final drive … 170 ml 5)", "5) After dismantling: 200 ml".
// Without its mark in a row a line stays.
func footnotes(list []piece) []piece {
	kept := make([]piece, 0, len(list))
	rows := map[string][]int{} // of each mark, the rows that end a cell with it
	for i := range list {
		p := &list[i]
		goesOn := i+1 < len(list) && list[i+1].joined
		if p.joined {
			kept = append(kept, *p)
			continue
		}
		notes := notesOf(p.tokens)
		if goesOn && len(notes) > 1 {
			kept = append(kept, *p)
			continue
		}
		var rest []token
		var lines []piece
		for _, note := range notes {
			mark, n := noteMark(note, 0)
			at := rows[mark]
			var first, more []token
			if len(at) > 0 {
				first, more = noteParts(note[n:], goesOn)
			}
			var own [][]token
			for k := 0; k < len(at) && len(at) <= mostNoted && len(more) > 0; k++ {
				if label := labelOf(kept[at[k]].tokens); len(label) > 0 {
					own = append(own, append(label, more...))
				}
			}
			if n == 0 || len(at) == 0 || n == len(note) || len(more) > 0 && len(own) < len(at) || goesOn && len(own) > 1 {
				if rest == nil {
					rest = note[:len(note):len(note)]
				} else {
					rest = append(rest, note...)
				}
				continue
			}
			for _, row := range at {
				if len(first) > 0 {
					kept[row].tokens = noted(kept[row].tokens, mark, first)
				}
			}
			for _, tokens := range own {
				q := *p
				q.tokens = tokens
				lines = append(lines, q)
			}
			delete(rows, mark) // a mark that comes again is of what stands between
		}
		if len(rest) > 0 {
			for k := 1; k < len(rest) && !goesOn; k++ {
				mark, n := noteMark(rest, k)
				if n == 0 {
					continue
				}
				if k+n == len(rest) || rest[k+n].gap == wide {
					rows[mark] = append(rows[mark], len(kept))
				}
				k += n - 1
			}
			q := *p
			q.tokens = rest
			kept = append(kept, q)
		}
		kept = append(kept, lines...)
	}
	return kept
}

// noteParts parts what a footnote says: what is read in its row, and what has figures of its
// own or is long.
func noteParts(note []token, goesOn bool) (first, more []token) {
	end := len(note)
	for k := 1; k+1 < len(note); k++ {
		if note[k].text == "." && note[k].gap == glued && note[k+1].gap != glued && note[k+1].kind == word && !small(note[k+1:k+2]) {
			end = k + 1
			break
		}
	}
	if goesOn || end > mostNote || hasUnit(note[:end]) {
		return nil, note
	}
	if len(note) <= mostNote && !hasUnit(note) {
		return note, nil
	}
	return note[:end], note[end:]
}

// labelOf gives a row's first cell without a footnote's mark, for another line; nil for a cell
// that is no label.
func labelOf(row []token) (label []token) {
	for k := range row {
		if k > 0 && row[k].gap == wide {
			break
		}
		if _, n := noteMark(row, k); k > 0 && n > 0 {
			break
		}
		t := row[k]
		t.moved = true
		label = append(label, t)
	}
	if len(label) > mostNote || len(label) == 0 || label[0].kind != word || hasUnit(label) {
		return nil
	}
	return label
}

// notesOf parts a line of several footnotes: "1) with filter   2) API SE".
func notesOf(tokens []token) (list [][]token) {
	mark, n := noteMark(tokens, 0)
	if n == 0 {
		return [][]token{tokens}
	}
	from := 0
	for k := n; k < len(tokens); k++ {
		m, size := noteMark(tokens, k)
		if size == 0 || m == mark || tokens[k].gap == glued || k+size == len(tokens) || tokens[k+size].gap == wide {
			continue
		}
		list = append(list, tokens[from:k])
		from, mark = k, m
		k += size - 1
	}
	return append(list, slices.Clip(tokens[from:]))
}

// noteMark reads a footnote's mark at a token: stars, a dagger, "2)", "(a)", a raised figure
// that is none of a unit's, and "(1)" in a
// cell or a line of its own: behind a word it counts screws.
func noteMark(tokens []token, at int) (mark string, length int) {
	switch t := &tokens[at]; {
	case t.text == "*" || t.text == "†" || t.text == "‡":
		for at+length < len(tokens) && tokens[at+length].text == t.text && (length == 0 || tokens[at+length].gap == glued) {
			mark += t.text
			length++
		}
		return mark, length
	case t.kind == sign && strings.Contains("¹²³⁴⁵⁶⁷⁸⁹", t.text) && !(at > 0 && t.gap == glued && tokens[at-1].kind == word && (t.text == "²" || t.text == "³") && len(tokens[at-1].text) < 3):
		if at+1 < len(tokens) && tokens[at+1].text == ")" && tokens[at+1].gap == glued {
			return t.text, 2
		}
		return t.text, 1
	case (t.kind == number || t.kind == word && t.text == t.fold) && len(t.text) == 1 && at+1 < len(tokens) && tokens[at+1].text == ")" && tokens[at+1].gap == glued && (at == 0 || tokens[at-1].text != "(" && t.gap != glued):
		return t.text + ")", 2
	case t.text == "(" && at+2 < len(tokens) && tokens[at+2].text == ")" && len(tokens[at+1].text) == 1 && tokens[at+1].gap == glued && tokens[at+2].gap == glued &&
		(tokens[at+1].kind == word && t.gap != glued || tokens[at+1].kind == number && (at == 0 || t.gap == wide || at > 2 && tokens[0].text == "(" && t.gap == blank)):
		return "(" + tokens[at+1].text + ")", 3
	}
	return "", 0
}

// noted gives a row with a footnote's words in the place of its mark.
func noted(row []token, mark string, note []token) []token {
	var list []token
	for k := 0; k < len(row); {
		m, n := noteMark(row, k)
		if k == 0 || n == 0 || m != mark || k+n < len(row) && row[k+n].gap != wide {
			list = append(list, row[k])
			k++
			continue
		}
		for i, t := range note {
			t.moved = true
			if i == 0 {
				t.gap = blank
			}
			list = append(list, t)
		}
		k += n
	}
	return list
}
