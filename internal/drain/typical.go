package drain

// A typical 10W-40: kinematic viscosity in mm²/s at 40 and at 100 °C. From
// memory, a round middle figure, give or take a tenth; it is not published.
const (
	TypicalAt40  = 97
	TypicalAt100 = 14.5
)

// A typical engine, where a card doesn't know its own: its oil in m³ and the
// bore of an M12 drain hole in m. A round middle figure, no source.
const (
	TypicalVolume = 3e-3
	TypicalHole   = 10.5e-3
)
