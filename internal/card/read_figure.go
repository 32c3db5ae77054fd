package card

import (
	"math"
	"strconv"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// ReadFigure reads value and unit of a figure as it stands in a manual: "25 N·m",
// "18-22 lbf·ft", "24 ± 2 N·m". A bare number is in that unit, or where that is "" in the one
// usual for the person; a torque needs its unit.
func ReadFigure(kind quantity.Kind, text, unit string, system quantity.System) (Figure, []finding.Finding) {
	if unit == "" {
		unit = quantity.Usual(kind, system)
	}
	return readFigure(&quantity.Ask{Kind: kind, Unit: unit, System: system}, text)
}

func readFigure(q *quantity.Ask, text string) (Figure, []finding.Finding) {
	low, high, ranged, list := q.ReadRange(text)
	if finding.Refused(list) {
		return Figure{}, list
	}
	f := Figure{Value: inUnit(low.Base, low.Unit), Unit: low.Unit}
	if ranged {
		f.To = inUnit(high.Base, low.Unit)
	}
	return f, list
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
