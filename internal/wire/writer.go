package wire

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// writer lays out JSON text and knows where commas and colons stand.
type writer struct{ text []byte }

// item starts a name or a value: a comma stands before it unless it is the
// first of its object or array, or the value of a name.
func (w *writer) item() {
	if n := len(w.text); n > 0 {
		switch w.text[n-1] {
		case '{', '[', ':':
		default:
			w.text = append(w.text, ',')
		}
	}
}

func (w *writer) open(bracket byte) {
	w.item()
	w.text = append(w.text, bracket)
}

func (w *writer) close(bracket byte) { w.text = append(w.text, bracket) }

func (w *writer) name(s string) {
	w.string(s)
	w.text = append(w.text, ':')
}

// string panics on a text that is not UTF-8: the reader lets none in, so it
// would be this program's fault and must not pass as an answer.
func (w *writer) string(s string) {
	w.item()
	if !utf8.ValidString(s) {
		panic("wire: text")
	}
	w.text = append(w.text, '"')
	from := 0
	for i := range len(s) {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' {
			w.text = append(w.text, s[from:i]...)
			w.escape(c)
			from = i + 1
		}
	}
	w.text = append(w.text, s[from:]...)
	w.text = append(w.text, '"')
}

// escape writes a byte of a string for which JSON asks that it is escaped, and only
// such a one is (the canonical form of RFC 8785, section 3.2.2.2).
func (w *writer) escape(c byte) {
	const meant, letters, hex = "\"\\\b\f\n\r\t", `"\bfnrt`, "0123456789abcdef"
	for i := range len(meant) {
		if meant[i] == c {
			w.text = append(w.text, '\\', letters[i])
			return
		}
	}
	w.text = append(w.text, `\u00`...)
	w.text = append(w.text, hex[c>>4], hex[c&15])
}

// float panics on what JSON has no number for, for the same reason.
func (w *writer) float(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		panic("wire: number")
	}
	w.item()
	w.text = strconv.AppendFloat(w.text, v, 'f', -1, 64)
}

func (w *writer) int(v int) {
	w.item()
	w.text = strconv.AppendInt(w.text, int64(v), 10)
}

func (w *writer) bool(v bool) {
	w.item()
	w.text = strconv.AppendBool(w.text, v)
}
