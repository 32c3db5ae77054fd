package quantity

import "math"

// fineness is how finely a converted figure is printed: digits after the point,
// or with coarse > 0 tens, hundreds, ….
type fineness struct{ after, coarse int }

// graduations are the graduations that people meet on wrenches, jugs and bottles,
// and how finely other things are given: common practice, no source. From a size on
// it may be another.
var graduations = [...]struct {
	units []string
	below fineness
	size  float64 // in the unit; 0 where there is one fineness for all
	from  fineness
}{
	{[]string{"L", "US qt", "imp qt", "imp pt", "US pt", "US gal", "imp gal", "kgf·m", "daN·m", "mm", "m", "kg", "lb", "bar", "kgf/cm²"}, fineness{after: 2}, 0, fineness{}},
	{[]string{"mL"}, fineness{coarse: 1}, 0, fineness{}},
	{[]string{"US fl oz", "imp fl oz"}, fineness{after: 1}, 1, fineness{}},
	{[]string{"N·m", "lbf·ft", "cL", "dL", "cm", "ft", "oz", "days", "weeks", "years"}, fineness{after: 1}, 10, fineness{}},
	{[]string{"in"}, fineness{after: 3}, 0, fineness{}},
	{[]string{"km", "mi"}, fineness{}, 1000, fineness{coarse: 1}},
	{[]string{"lbf·in", "kgf·cm", "°C", "°F", "kPa", "psi", "g", "min", "s", "h", "months", "°", "turn",
		"mm²/s", "kg/m³", "kg/L", "m²", "%"}, fineness{}, 0, fineness{}},
}

// settable says how finely a converted figure of a unit is printed; ok is false
// for a unit that the table doesn't have, which is printed whole.
func settable(unit string, value float64) (f fineness, ok bool) {
	for n := range graduations {
		g := &graduations[n]
		for _, u := range g.units {
			switch {
			case u != unit:
			case g.size > 0 && math.Abs(value) >= g.size:
				return g.from, true
			default:
				return g.below, true
			}
		}
	}
	return f, false
}
