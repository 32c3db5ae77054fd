package drain

// A typical 10W-40: kinematic viscosity in mm²/s at 40 and at 100 °C. From
// memory, a round middle figure, give or take a tenth; it is not published.
const (
	TypicalAt40  = 97
	TypicalAt100 = 14.5
)
