package wire

import (
	"math"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// writer lays out JSON text and knows where commas and colons stand; strings
// are quoted by jsontext, whose encoder would cost the core 10 kB more.
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
	text, err := jsontext.AppendQuote(w.text, s)
	if err != nil {
		panic("wire: " + err.Error())
	}
	w.text = text
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
