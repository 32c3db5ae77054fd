package quantity

import (
	"strconv"
	"strings"
)

// fractionDigits are the significant digits that a fraction is taken to have.
const fractionDigits = 4

// cutFraction takes a fraction off the front of a text, "5/8 in", "1 1/16 in" or
// "1-1/16 in", and gives its value and the unit word after it.
func cutFraction(text string) (value float64, word string, ok bool) {
	top, rest, found := strings.Cut(strings.TrimSpace(text), "/")
	whole, top := "0", strings.TrimSpace(top)
	if at := strings.IndexAny(top, " -"); at >= 0 {
		whole, top = top[:at], top[at+1:]
	}
	n := 0
	for n < len(rest) && digit(rest[n]) {
		n++
	}
	w, errW := strconv.ParseUint(whole, 10, 16)
	t, errT := strconv.ParseUint(top, 10, 16)
	b, errB := strconv.ParseUint(rest[:n], 10, 16)
	number, word := split(rest[n:])
	if !found || errW != nil || errT != nil || errB != nil || b == 0 || number != "" {
		return 0, "", false
	}
	return float64(w) + float64(t)/float64(b), word, true
}
