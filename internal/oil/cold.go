package oil

import "tidysump/internal/quantity"

// Cold is where one stops telling how thick an oil is: its line goes on, and the oil
// doesn't. ASTM D341 holds above the cloud point only.
type Cold struct {
	At   float64 // °C, nothing is told below it
	Most float64 // mPa·s, nothing is told beyond it
	Why  Stop
}

// Stop is why nothing is told of an oil that is colder.
type Stop string

// Why nothing is told.
const (
	Pumping  Stop = "below-pumping" // colder than its W grade's own test
	Pour     Stop = "below-pour"    // below its pour point it doesn't flow
	Unstated Stop = "below-known"   // neither is known
)

// ColdOf gives where telling stops for an oil of a grade, which may be none, and of a
// pour point in °C, which is NaN where it isn't known: the warmer of the pour point and
// the temperature at which the standard has a new oil of its W grade pumped (J300) or
// measured (J306). Where neither is known it is the warmest at which J300 has any oil
// pumped, that of 25W: nobody promises of such an oil that it flows when it is colder.
func ColdOf(g Grade, pour float64) Cold {
	w, _, _ := g.Limits()
	c := Cold{w.PumpingAt, w.Pumping, Pumping}
	if w.Pumping == 0 {
		last := &Winters[len(Winters)-1]
		c = Cold{last.PumpingAt, last.Pumping, Unstated}
	}
	if pour > c.At || c.Why == Unstated && pour == pour {
		c.At, c.Why = pour, Pour
	}
	return c
}

// Tells reports whether a viscosity in mm²/s at a temperature in °C may be told: not
// below the temperature, nor of what is thicker than the standard lets a pump have. The
// density is the usual one.
func (c Cold) Tells(celsius, viscosity float64) bool {
	return quantity.AtLeast(celsius, c.At) && quantity.AtMost(viscosity*Density(UsualDensity, celsius)/1000, c.Most)
}
