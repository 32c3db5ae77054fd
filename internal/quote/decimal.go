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
	read, after := 0, none // digits; digits after the mark
	for _, c := range []byte(quantity.Typed(text)) {
		switch {
		case c >= '0' && c <= '9':
			units = min(units*10+int(c-'0'), Most+1)
			read++
			if after != none {
				after++
			}
		case (c == '.' || c == ',') && after == none:
			after = 0
		case c == '-' && read == 0 && after == none:
			fault = "negative"
		case c != ' ' && c != '\'':
			return 0, "no-plain-number"
		}
	}
	switch {
	case read == 0:
		return 0, "no-plain-number"
	case after > places:
		fault = "too-many-decimals"
	}
	for after = max(after, 0); after < places; after++ {
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
