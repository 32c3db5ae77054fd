// Package quantity parses, converts and prints the quantities of the job:
// volume, torque, length, temperature, distance, pressure, mass, duration,
// angle, viscosity, density, area and share.
//
// Amounts are held in one base unit for each kind: litre, newton metre,
// millimetre, degree Celsius, kilometre, kilopascal, kilogram, minute, degree of
// angle, mm²/s, kg/m³, m², the whole of a share. Conversion
// factors are exact by definition: the international yard and pound agreement
// (1959), the US gallon of 231 in³, the Imperial gallon of 4.54609 L (UK
// Weights and Measures Act 1985), standard gravity 9.80665 m/s².
package quantity

// Kind is a kind of quantity.
type Kind string

// The kinds of quantity.
const (
	Volume      Kind = "volume"      // base: litre
	Torque      Kind = "torque"      // base: newton metre
	Length      Kind = "length"      // base: millimetre
	Temperature Kind = "temperature" // base: degree Celsius
	Distance    Kind = "distance"    // base: kilometre
	Pressure    Kind = "pressure"    // base: kilopascal
	Mass        Kind = "mass"        // base: kilogram
	Duration    Kind = "duration"    // base: minute
	Angle       Kind = "angle"       // base: degree
	Viscosity   Kind = "viscosity"   // kinematic; base: mm²/s
	Density     Kind = "density"     // base: kg/m³
	Area        Kind = "area"        // base: m²
	Share       Kind = "share"       // base: the whole
)

// Plain is the kind of a number that is no quantity: it has no unit.
const Plain Kind = "number"

// Unit is a unit of measurement: base = (value + Offset) · Scale.
type Unit struct {
	ID     string // as written in cards and shown to people
	Kind   Kind
	Scale  float64
	Offset float64
	// Spellings are what people type for it, in lower case without blanks
	// and dots.
	Spellings []string
}

const (
	poundForce = 4.4482216152605 // N, exact: 0.45359237 kg · 9.80665 m/s²
	foot       = 0.3048          // m, exact
	usGallon   = 3.785411784     // L, exact: 231 in³
	impGallon  = 4.54609         // L, exact
)

// Units lists every unit the program offers, by kind, the base unit first.
var Units = []Unit{
	{"L", Volume, 1, 0, []string{"l", "litre", "litres", "liter", "liters", "ltr"}},
	{"mL", Volume, 1e-3, 0, []string{"ml", "cc", "cm3", "cm³", "millilitre", "millilitres", "milliliter", "milliliters"}},
	{"US fl oz", Volume, usGallon / 128, 0, []string{"usfloz", "usoz", "flozus", "ozus"}},
	{"US pt", Volume, usGallon / 8, 0, []string{"uspt", "uspint", "uspints"}},
	{"US qt", Volume, usGallon / 4, 0, []string{"usqt", "usquart", "usquarts", "qtus"}},
	{"US gal", Volume, usGallon, 0, []string{"usgal", "usgallon", "usgallons"}},
	{"imp fl oz", Volume, impGallon / 160, 0, []string{"impfloz", "impoz", "ukfloz", "ukoz"}},
	{"imp pt", Volume, impGallon / 8, 0, []string{"imppt", "imppint", "imppints", "ukpt", "ukpint", "ukpints"}},
	{"imp qt", Volume, impGallon / 4, 0, []string{"impqt", "impquart", "impquarts", "ukqt", "ukquart", "ukquarts"}},
	{"imp gal", Volume, impGallon, 0, []string{"impgal", "impgallon", "impgallons", "ukgal", "ukgallon", "ukgallons"}},

	{"N·m", Torque, 1, 0, []string{"nm", "n·m", "n-m", "n*m", "newtonmetre", "newtonmetres", "newtonmeter", "newtonmeters"}},
	{"lbf·ft", Torque, poundForce * foot, 0, []string{"lbfft", "lbf·ft", "lbf-ft", "ftlb", "ftlbs", "ft-lb", "ft-lbs", "ftlbf", "ft-lbf", "ft·lbf", "lbft", "lb-ft", "lbs-ft", "footpound", "footpounds"}},
	{"lbf·in", Torque, poundForce * foot / 12, 0, []string{"lbfin", "lbf·in", "lbf-in", "inlb", "inlbs", "in-lb", "in-lbs", "inlbf", "in-lbf", "in·lbf", "lbin", "lb-in", "inchpound", "inchpounds"}},
	{"kgf·m", Torque, 9.80665, 0, []string{"kgfm", "kgf·m", "kgf-m", "kgm", "kg-m", "kg·m", "mkg", "m-kg", "m·kg", "kpm"}},

	{"mm", Length, 1, 0, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}},
	{"in", Length, 25.4, 0, []string{"in", "inch", "inches", "\""}},

	{"°C", Temperature, 1, 0, []string{"°c", "c", "celsius", "degc"}},
	{"°F", Temperature, 5.0 / 9, -32, []string{"°f", "f", "fahrenheit", "degf"}},

	{"km", Distance, 1, 0, []string{"km", "kilometre", "kilometres", "kilometer", "kilometers"}},
	{"mi", Distance, 1.609344, 0, []string{"mi", "mile", "miles"}},

	{"kPa", Pressure, 1, 0, []string{"kpa"}},
	{"bar", Pressure, 100, 0, []string{"bar"}},
	{"psi", Pressure, poundForce / (0.0254 * 0.0254) / 1000, 0, []string{"psi"}},

	{"kg", Mass, 1, 0, []string{"kg", "kilogram", "kilograms"}},
	{"g", Mass, 1e-3, 0, []string{"g", "gram", "grams"}},
	{"lb", Mass, 0.45359237, 0, []string{"lb", "lbs", "pound", "pounds"}},

	{"min", Duration, 1, 0, []string{"min", "mins", "minute", "minutes"}},
	{"s", Duration, 1.0 / 60, 0, []string{"s", "sec", "second", "seconds"}},
	{"h", Duration, 60, 0, []string{"h", "hour", "hours"}},
	{"months", Duration, 365.25 / 12 * 24 * 60, 0, []string{"month", "months"}},

	{"°", Angle, 1, 0, []string{"°", "deg", "degree", "degrees"}},
	{"turn", Angle, 360, 0, []string{"turn", "turns"}},

	{"mm²/s", Viscosity, 1, 0, []string{"mm²/s", "mm2/s", "cst"}},

	{"kg/m³", Density, 1, 0, []string{"kg/m³", "kg/m3"}},
	{"kg/L", Density, 1000, 0, []string{"kg/l", "g/cm³", "g/cm3", "g/ml"}},

	{"m²", Area, 1, 0, []string{"m²", "m2"}},
	{"%", Share, 0.01, 0, []string{"%", "percent"}},
}

// noUnit stands for one that the program does not know.
var noUnit = Unit{Scale: 1}

// Find gives the unit of that id. It reports false for an id the program does
// not know.
func Find(id string) (*Unit, bool) {
	for i := range Units {
		if Units[i].ID == id {
			return &Units[i], true
		}
	}
	return &noUnit, false
}

// Base is the id of a kind's base unit, "" for what is no quantity.
func Base(kind Kind) string {
	for i := range Units {
		if Units[i].Kind == kind {
			return Units[i].ID // the base unit comes first
		}
	}
	return ""
}

// ToBase gives the amount in the base unit of the unit's kind.
func (u *Unit) ToBase(value float64) float64 { return (value + u.Offset) * u.Scale }

// FromBase gives the amount in this unit.
func (u *Unit) FromBase(base float64) float64 { return base/u.Scale - u.Offset }
