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

import (
	"strings"
	"sync"
)

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
	// Spellings are what people type for it, parted by strokes, in the form that
	// bare gives a word; each stands for its plural in -s too.
	Spellings string
}

const (
	pound         = 0.45359237      // kg, exact
	kilogramForce = 9.80665         // N, exact: 1 kg in standard gravity
	poundForce    = 4.4482216152605 // N, exact: pound · kilogramForce
	foot          = 0.3048          // m, exact
	usGallon      = 3.785411784     // L, exact: 231 in³
	impGallon     = 4.54609         // L, exact
	cubicInch     = 0.016387064     // L, exact: 25.4³ mm³ (NIST SP 811, appendix B.8)
	day           = 24 * 60         // min

	pounds    = "lbf|lb|pound"
	kilograms = "kgf|kg|kp|kilogram"
)

// Units lists every unit the program offers, by kind, the base unit first. Of a
// torque the spellings are the force's; its length is spelled as the length is.
var Units = []Unit{
	{"L", Volume, 1, 0, "l|litre|liter|ltr|dm3"},
	{"mL", Volume, 1e-3, 0, "ml|cc|ccm|cm3|millilitre|milliliter"},
	{"cL", Volume, 1e-2, 0, "cl|centilitre|centiliter"},
	{"dL", Volume, 1e-1, 0, "dl|decilitre|deciliter"},
	{"US fl oz", Volume, usGallon / 128, 0, "usfloz|usoz|usfluidounce|flozus|ozus"},
	{"US pt", Volume, usGallon / 8, 0, "uspt|uspint|ptus|pintus"},
	{"US qt", Volume, usGallon / 4, 0, "usqt|usquart|qtus|quartus"},
	{"US gal", Volume, usGallon, 0, "usgal|usgallon|galus|gallonus"},
	{"imp fl oz", Volume, impGallon / 160, 0, "impfloz|impoz|impfluidounce|ukfloz|ukoz|imperialfluidounce"},
	{"imp pt", Volume, impGallon / 8, 0, "imppt|imppint|ukpt|ukpint|imperialpint"},
	{"imp qt", Volume, impGallon / 4, 0, "impqt|impquart|ukqt|ukquart|imperialquart"},
	{"imp gal", Volume, impGallon, 0, "impgal|impgallon|ukgal|ukgallon|imperialgallon"},
	{"cu in", Volume, cubicInch, 0, "cuin|in3|cubicinch|cubicinches|cid"},

	{"N·m", Torque, 1, 0, "n|newton"},
	{"lbf·ft", Torque, poundForce * foot, 0, pounds},
	{"lbf·in", Torque, poundForce * foot / 12, 0, pounds},
	{"kgf·m", Torque, kilogramForce, 0, kilograms},
	{"daN·m", Torque, 10, 0, "dan|decanewton"},
	{"kgf·cm", Torque, kilogramForce / 100, 0, kilograms},

	{"mm", Length, 1, 0, "mm|millimetre|millimeter"},
	{"cm", Length, 10, 0, "cm|centimetre|centimeter"},
	{"m", Length, 1000, 0, "m|metre|meter"},
	{"in", Length, 25.4, 0, "in|inch|inches|\""},
	{"ft", Length, 304.8, 0, "ft|foot|feet"},

	{"°C", Temperature, 1, 0, "°c|c|celsius|centigrade|degc|degreec|degreesc|degreescelsius"},
	{"°F", Temperature, 5.0 / 9, -32, "°f|f|fahrenheit|degf|degreef|degreesf|degreesfahrenheit"},

	{"km", Distance, 1, 0, "km|kilometre|kilometer"},
	{"mi", Distance, 1.609344, 0, "mi|mile"},

	{"kPa", Pressure, 1, 0, "kpa|kilopascal"},
	{"bar", Pressure, 100, 0, "bar"},
	{"psi", Pressure, poundForce / (0.0254 * 0.0254) / 1000, 0, "psi|lbf/in2|lb/in2"},
	{"kgf/cm²", Pressure, kilogramForce * 10, 0, "kgf/cm2|kg/cm2|kp/cm2"},

	{"kg", Mass, 1, 0, "kg|kilogram|kilo"},
	{"g", Mass, 1e-3, 0, "g|gram|gramme"},
	{"lb", Mass, pound, 0, "lb|pound"},
	{"oz", Mass, pound / 16, 0, "oz|ounce"},

	{"min", Duration, 1, 0, "min|minute"},
	{"s", Duration, 1.0 / 60, 0, "s|sec|second"},
	{"h", Duration, 60, 0, "h|hr|hour"},
	{"days", Duration, day, 0, "d|day"},
	{"weeks", Duration, 7 * day, 0, "wk|week"},
	{"months", Duration, 365.25 / 12 * day, 0, "mo|mth|month"},
	{"years", Duration, 365.25 * day, 0, "yr|year"},

	{"°", Angle, 1, 0, "°|deg|degree"},
	{"turn", Angle, 360, 0, "turn|rev|revolution"},

	{"mm²/s", Viscosity, 1, 0, "mm2/s|cst|centistoke"},

	{"kg/m³", Density, 1, 0, "kg/m3"},
	{"kg/L", Density, 1000, 0, "kg/l|kg/dm3|g/cm3|g/cc|g/ml"},

	{"m²", Area, 1, 0, "m2"},
	{"%", Share, 0.01, 0, "%|percent"},
}

// spelled reports whether a word, as bare gives it, is a usual spelling of the
// unit, which may stand in the plural.
func (u *Unit) spelled(word string) bool {
	if u.Kind != Torque {
		return oneOf(u.Spellings, word)
	}
	// A torque is a force and a length, which people say in either order.
	force, length, _ := strings.Cut(u.ID, "·")
	if force == "lbf" {
		word = strings.Replace(word, "/", "", 1) // "ft/lbs" is said of a product too
	}
	for n := 1; n < len(word); n++ {
		a, b := word[:n], word[n:]
		if oneOf(u.Spellings, a) && isLength(b, length) || force != "N" && isLength(a, length) && oneOf(u.Spellings, b) {
			return true
		}
	}
	return false
}

func isLength(word, id string) bool {
	u, _ := Find(id)
	return oneOf(u.Spellings, word)
}

// oneOf reports whether a word, or what it is the plural of, is one of a list
// that strokes part.
func oneOf(list, word string) bool {
	for one := range strings.SplitSeq(list, "|") {
		if one == word || len(one) > 1 && one+"s" == word {
			return true
		}
	}
	return false
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

// UnitOf gives the id of the unit that a text spells, "" for none. A word that means one
// thing in the US and another in Britain is the American one.
func UnitOf(text string) string {
	text = bare(text)
	if id := everySpelling()[text]; id != "" {
		return id
	}
	return everySpelling()[strings.Replace(text, "/", "", 1)]
}

// UnitBegins reports whether the spelling of some unit begins with a word in small
// letters: most words of a text are told by it to be of none.
func UnitBegins(word string) bool {
	return everyBeginning()[word]
}

var everyBeginning = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for spelling := range everySpelling() {
		for n := range spelling {
			all[spelling[:n]] = true
		}
		all[spelling] = true
	}
	return all
})

// everySpelling gives the id of each spelling of every unit, for whoever asks about many.
var everySpelling = sync.OnceValue(func() map[string]string {
	all := map[string]string{}
	add := func(spelling, id string) {
		for _, s := range [...]string{spelling, spelling + "s"} {
			if all[s] == "" && (s == spelling || len(spelling) > 1) {
				all[s] = id
			}
		}
	}
	for i := range Units {
		u := &Units[i]
		for s := range strings.SplitSeq(u.Spellings, "|") {
			if u.Kind != Torque {
				add(s, u.ID)
				continue
			}
			force, length, _ := strings.Cut(u.ID, "·")
			arm, _ := Find(length)
			for l := range strings.SplitSeq(arm.Spellings, "|") {
				add(s+l, u.ID)
				add(s+"s"+l, u.ID)
				if force != "N" {
					add(l+s, u.ID)
					add(l+"s"+s, u.ID)
				}
			}
		}
	}
	for i := range loose {
		for s := range strings.SplitSeq(loose[i][1], "|") {
			all[s], all[s+"s"] = "", ""
			add(s, "US "+loose[i][0])
		}
	}
	return all
})
