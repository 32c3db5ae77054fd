package card

import (
	"math"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// airLimit is the air in which anybody rides or works: what was measured on inhabited
// ground lies between -68 and 57 °C.
var airLimit = limit{quantity.Temperature, -70, 60}

// ReadAir reads the temperature of the air that is expected, or a range of it, in °C: "20",
// "-5 to 30 °C", "from -10 °C", "to 50 °F". An end that is left open is -Inf or +Inf. A bare
// number is in the unit usual for the person. What can't be read comes back as NaN, with
// one finding that has no place.
func ReadAir(text string, system quantity.System) (low, high float64, list []finding.Finding) {
	text = quantity.PlainDigits(text)
	q := quantity.Ask{Kind: quantity.Temperature, Unit: quantity.Usual(quantity.Temperature, system), System: system}
	from, to, number := openEnd(text)
	a, b, ranged, found := q.ReadRange(number)
	if !ranged {
		b = a
	}
	if finding.Refused(found) || a.Base < airLimit.low || b.Base > airLimit.high || a.Base > b.Base || ranged && (from || to) {
		return math.NaN(), math.NaN(), finding.Refusal("air-unread", "", "text", finding.Clip(strings.TrimSpace(text)))
	}
	low, high = a.Base, b.Base
	if to {
		low = math.Inf(-1)
	}
	if from {
		high = math.Inf(1)
	}
	return low, high, nil
}

// openEnd finds what leaves one end of a range open, and gives the rest of the text.
func openEnd(text string) (from, to bool, rest string) {
	text = strings.ToLower(quantity.Typed(text))
	for _, word := range [...]string{"up to ", "to ", "below ", "under "} {
		if rest, ok := strings.CutPrefix(text, word); ok {
			return false, true, rest
		}
	}
	for _, word := range [...]string{"from ", "above ", "over "} {
		if rest, ok := strings.CutPrefix(text, word); ok {
			return !strings.Contains(rest, " to "), false, rest
		}
	}
	return false, false, text
}
