package oil

import (
	"math"
	"slices"

	"tidysump/internal/quantity"
)

// ChartRow is a row of a manual's chart of grades over the temperature of the air: the
// grade is for air from From to To, in °C; -Inf and +Inf where the chart sets no end.
type ChartRow struct {
	Grade    Grade
	From, To float64
}

// holds reports whether a row reaches from low to high; one that is NaN is not known.
func (r *ChartRow) holds(low, high float64) bool {
	if math.IsNaN(low) {
		low = high
	}
	return quantity.AtLeast(low, r.From) && quantity.AtMost(low, r.To) && !(high > low && !quantity.AtMost(high, r.To))
}

// Charted lists the grades that a chart gives for air from low to high °C, in its order.
// An end that is NaN is not known; none is given where neither is.
func Charted(chart []ChartRow, low, high float64) []Grade {
	var list []Grade
	for n := range chart {
		if r := &chart[n]; r.holds(low, high) && !slices.Contains(list, r.Grade) {
			list = append(list, r.Grade)
		}
	}
	return list
}

// charts reports whether a chart has a row of that grade.
func charts(chart []ChartRow, g Grade) bool {
	return slices.ContainsFunc(chart, func(r ChartRow) bool { return r.Grade == g })
}
