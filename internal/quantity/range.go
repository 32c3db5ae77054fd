package quantity

import "math"

// Between gives a range of amounts in the units of a system, as Show does: "18–22
// N·m", or one figure where both ends print the same. Both ends stand in one unit,
// which the upper end chooses; from below zero it has dots: "-15…30 °C".
func Between(low, high Amount, system System) []string {
	if math.IsNaN(low.Base) || math.IsNaN(high.Base) {
		return nil
	}
	var out []string
	for _, id := range shown(high, system) {
		if u, known := Find(id); known {
			out = append(out, Range(low, high, u))
		}
	}
	return out
}

// Range prints a range of amounts in that unit, with as fine an end as the other, or
// one figure where both print the same.
func Range(low, high Amount, u *Unit) string {
	if high.Rough {
		high.Digits = max(low.deserved(), high.deserved())
		low.Digits = high.Digits
	}
	lows, lowMost := low.places(u)
	highs, highMost := high.places(u)
	text := high.number(u, max(highs, min(lows, highMost)))
	return Span(low.number(u, max(lows, min(highs, lowMost))), text) + " " + u.ID
}

// Span puts the printed ends of a range together, or prints one where they are the same.
// One that begins below zero has dots between its ends: a dash would read as a second
// minus.
func Span(low, high string) string {
	switch {
	case low == high:
		return low
	case low[0] == '-':
		return low + "…" + high
	}
	return low + "–" + high
}

// Usual is the unit in which a bare number of that kind is read: the one that
// stands first for a person of that system. A torque has none, since mixing its
// units up breaks bolts; nor has what is no quantity.
func Usual(kind Kind, system System) string {
	switch {
	case kind == Torque:
		return ""
	case kind == Volume && system == US:
		return "US qt"
	case kind == Temperature && system == US:
		return "°F"
	case kind == Distance && (system == US || system == Imperial):
		return "mi"
	case kind == Mass && system == US:
		return "lb"
	}
	return Base(kind)
}
