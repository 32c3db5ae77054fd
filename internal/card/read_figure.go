package card

import (
	"math"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// ReadFigure reads value and unit of a figure as it stands in a manual: "25 N·m",
// "18-22 lbf·ft". A bare number is in that unit, or where that is "" in the one
// usual for the person; a torque needs its unit.
func ReadFigure(kind quantity.Kind, text, unit string, system quantity.System) (Figure, []finding.Finding) {
	if unit == "" {
		unit = quantity.Usual(kind, system)
	}
	low, high := cutRange(text)
	a, list := quantity.Parse(kind, high, unit, system)
	if finding.Refused(list) {
		return Figure{}, list
	}
	f := Figure{Value: inUnit(a.Base, a.Unit), Unit: a.Unit}
	if low == "" {
		return f, list
	}
	b, more := quantity.Parse(kind, low, a.Unit, system)
	if finding.Refused(more) {
		return Figure{}, more
	}
	f.To, f.Value = f.Value, inUnit(b.Base, a.Unit)
	return f, append(list, more...)
}

// cutRange parts "18-22 N·m" into its ends; low is "" for a single figure.
func cutRange(text string) (low, high string) {
	text = strings.ReplaceAll(text, "–", "-")
	for i := 1; i < len(text); i++ {
		before := strings.TrimRight(text[:i], " ")
		if text[i] == '-' && before != "" && before[len(before)-1] >= '0' && before[len(before)-1] <= '9' {
			if rest := strings.TrimLeft(text[i+1:], " "); rest != "" && rest[0] >= '0' && rest[0] <= '9' {
				return before, rest
			}
		}
	}
	return "", text
}

// inUnit gives the number as it was typed: the way through the base unit must
// leave no trace in it.
func inUnit(base float64, unit string) float64 {
	u, _ := quantity.Find(unit)
	v, err := strconv.ParseFloat(quantity.Number(u.FromBase(base), 12), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}
