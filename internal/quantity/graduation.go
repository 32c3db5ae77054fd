package quantity

import "math"

// graduations are the graduations that people meet on wrenches, jugs and bottles,
// and how finely other things are given, as places after the point, -1 for tens:
// common practice, no source. From a size on it may be another.
var graduations = [...]struct {
	units []string
	below int
	size  float64 // in the unit; 0 where there is one for all
	from  int
}{
	{[]string{"L", "US qt", "imp qt", "imp pt", "US pt", "US gal", "imp gal", "kgf·m", "daN·m", "mm", "m", "kg", "lb", "bar", "kgf/cm²"}, 2, 0, 0},
	{[]string{"mL"}, -1, 0, 0},
	{[]string{"US fl oz", "imp fl oz", "cu in"}, 1, 1, 0},
	{[]string{"N·m", "lbf·ft", "cL", "dL", "cm", "ft", "oz", "days", "weeks", "years"}, 1, 10, 0},
	{[]string{"in"}, 3, 0, 0},
	{[]string{"km", "mi"}, 0, 1000, -1},
	{[]string{"lbf·in", "kgf·cm", "°C", "°F", "kPa", "psi", "g", "min", "s", "h", "months", "°", "turn",
		"mm²/s", "kg/m³", "kg/L", "m²", "%"}, 0, 0, 0},
}

// settable says how finely a unit can be set or poured, in places after the point.
// A unit that the table doesn't have is taken whole.
func settable(unit string, value float64) int {
	for n := range graduations {
		g := &graduations[n]
		for _, u := range g.units {
			switch {
			case u != unit:
			case g.size > 0 && math.Abs(value) >= g.size:
				return g.from
			default:
				return g.below
			}
		}
	}
	return 0
}
