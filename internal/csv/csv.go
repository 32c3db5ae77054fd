// Package csv writes tables for spreadsheets (RFC 4180).
package csv

import "strings"

// Table is a table being written, cell by cell.
type Table struct {
	Separator, Decimal byte // between cells; between the whole and the rest of a number
	Columns            int
	text               []byte
	cells              int
}

// Text adds a text. It is quoted, unless it is empty.
func (t *Table) Text(text string) {
	if text != "" {
		text = `"` + strings.ReplaceAll(safe(text), `"`, `""`) + `"`
	}
	t.add(text)
}

// Number adds a number printed with a point, which stays one for the spreadsheet.
func (t *Table) Number(printed string) {
	t.add(strings.ReplaceAll(printed, ".", string(rune(t.Decimal))))
}

func (t *Table) add(cell string) {
	t.text = append(t.text, cell...)
	if t.cells++; t.cells%t.Columns == 0 {
		t.text = append(t.text, "\r\n"...)
	} else {
		t.text = append(t.text, t.Separator)
	}
}

// String gives the rows so far, each ended by CRLF.
func (t *Table) String() string { return string(t.text) }

// risky begin what a spreadsheet takes for a formula: OWASP, CSV Injection, names
// = + - @, tab, carriage return, line feed and the full-width forms of the signs.
var risky = [...]string{"=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"}

// safe puts an apostrophe before a text that would be a formula, as that page
// advises. Blanks before the sign are looked past, since some programs drop them;
// NUL is dropped, since some end a cell there.
func safe(text string) string {
	text = strings.ReplaceAll(text, "\x00", "")
	for _, sign := range risky {
		if strings.HasPrefix(strings.TrimLeft(text, " "), sign) {
			return "'" + text
		}
	}
	return text
}
