package quantity

import "strings"

// Between prints a range of amounts in the units of a system, as Show does:
// "18–22 N·m", or one figure where both ends print the same. Below half a litre
// both ends are in mL, above it in L.
func Between(low, high Amount, system System) []string {
	if high.Unit == "mL" && high.Base >= 0.5 {
		high.Unit = "L"
	}
	low.Unit = high.Unit
	return Join(low.Show(system), high.Show(system))
}

// Join makes a range of each two texts: "90 mL" and "120 mL" give "90–120 mL".
func Join(low, high []string) []string {
	var out []string
	for i := 0; i < len(low) && i < len(high); i++ {
		number, unit, _ := strings.Cut(low[i], " ")
		_, upperUnit, _ := strings.Cut(high[i], " ")
		switch {
		case low[i] == high[i]:
			out = append(out, high[i])
		case unit == upperUnit:
			out = append(out, number+"–"+high[i])
		default:
			out = append(out, low[i]+"–"+high[i])
		}
	}
	return out
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
