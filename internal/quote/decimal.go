package quote

import (
	"strings"

	"tidysump/internal/quantity"
)

// Most is the most minor units that a price may have: far above any oil change
// in any currency, and low enough for sums to stay exact wherever they go.
const Most = 10_000_000_000

// Decimal reads a number of at most that many decimals, with point or comma, as
// a whole number of its last decimal's units: "14,5" with two is 1450. Money
// never goes through a float. A fault is the code of a finding, "" for none:
// number-two-ways where "1,500" may be one and a half as well as fifteen hundred. With
// a further zero, "1,5000", it is one and a half.
func Decimal(text string, places, most int) (units int, fault string) {
	text = strings.ReplaceAll(strings.ReplaceAll(quantity.Typed(text), " ", ""), "'", "")
	text, negative := strings.CutPrefix(text, "-")
	whole, part := text, ""
	if at := strings.IndexAny(text, ".,"); at >= 0 {
		whole, part = text[:at], text[at+1:]
	}
	size := len(part)
	grouped := size == 3 && len(whole) > 0 && len(whole) < 4 && whole[0] != '0'
	switch {
	case grouped && places == 0: // the only mark that there can be
		whole, part, grouped = whole+part, "", false
	case size > 2: // noughts behind a price say nothing
		part = strings.TrimRight(part, "0")
	}
	switch {
	case strings.Trim(whole+part, "0123456789") != "" || len(whole)+size == 0:
		return 0, "no-plain-number"
	case negative:
		return 0, "negative"
	case len(part) > places:
		return 0, "too-many-decimals"
	}
	units = number(whole + part + strings.Repeat("0", places-len(part)))
	switch {
	case grouped && units <= most/1000:
		return 0, "number-two-ways"
	case units > most:
		return 0, "more-than-can-be"
	}
	return units, ""
}

// number reads digits; Most+1 is whatever is more.
func number(digits string) (n int) {
	for _, c := range []byte(digits) {
		n = min(n*10+int(c-'0'), Most+1)
	}
	return n
}
