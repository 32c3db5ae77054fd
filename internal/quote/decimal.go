package quote

import "tidysump/internal/quantity"

// Most is the most minor units that a price may have: far above any oil change
// in any currency, and low enough for sums to stay exact wherever they go.
const Most = 10_000_000_000

// Decimal reads a number of at most that many decimals, with point or comma, as
// a whole number of its last decimal's units: "14,5" with two is 1450. Money
// never goes through a float. A fault is the code of a finding, "" for none.
func Decimal(text string, places, most int) (units int, fault string) {
	const none = -1
	read, behind := 0, none // digits; digits behind the mark
	for _, c := range []byte(quantity.Typed(text)) {
		switch {
		case c >= '0' && c <= '9':
			units = min(units*10+int(c-'0'), Most+1)
			read++
			if behind != none {
				behind++
			}
		case (c == '.' || c == ',') && behind == none:
			behind = 0
		case c == '-' && read == 0 && behind == none:
			fault = "negative"
		case c != ' ' && c != '\'':
			return 0, "no-plain-number"
		}
	}
	switch {
	case read == 0:
		return 0, "no-plain-number"
	case behind > places:
		fault = "too-many-decimals"
	}
	for behind = max(behind, 0); behind < places; behind++ {
		units *= 10
	}
	if units > most && fault == "" {
		fault = "more-than-can-be"
	}
	if fault != "" {
		units = 0
	}
	return units, fault
}
