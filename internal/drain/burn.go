package drain

import "tidysump/internal/quantity"

// Touch is what touching a hot surface for so long does.
type Touch string

// The verdicts on a touch.
const (
	NoBurn  Touch = "no-burn"
	MayBurn Touch = "may-burn"
	Burns   Touch = "burns"
)

// Surface is what is touched.
type Surface string

// The surfaces. A coat of paint or lacquer on metal burns as the metal does: it adds
// some K for a touch of seconds, by its thickness, which nobody knows, and nothing
// from a minute on (ISO 13732-1, from memory).
const (
	Metal   Surface = "metal"
	Coated  Surface = "coated"  // metal under paint, lacquer or powder
	Plastic Surface = "plastic" // or rubber: grips, caps, covers
)

// Surfaces lists them.
var Surfaces = []Surface{Metal, Coated, Plastic}

// Band is the burn threshold of a surface for a contact: below Low no burn, up
// to High perhaps, above it a burn.
type Band struct{ Seconds, Low, High float64 }

// The bands are the thresholds of ISO 13732-1 in °C as quoted by others (the standard
// itself was not seen), for each contact the lowest figure found: sheet metal and a
// dense coat like plastic for 1, 2 and 5 s; for 10 s from the limit of ECMA-287 up to
// that of IEC 62368-1, TS1; all materials above that.
var (
	metalBands   = []Band{{1, 62, 65}, {2, 60, 64}, {5, 56, 61}, {10, 55, 60}, {60, 51, 51}, {600, 48, 48}, {8 * 3600, 43, 43}}
	plasticBands = []Band{{1, 85, 87}, {2, 80, 87}, {5, 74, 82}, {10, 65, 77}, {60, 60, 60}, {600, 48, 48}, {8 * 3600, 43, 43}}
)

// Bands gives the burn thresholds of a surface, the shortest contact first.
func (s Surface) Bands() []Band {
	if s == Plastic {
		return plasticBands
	}
	return metalBands
}

// At judges touching the surface at a temperature in °C for the band's contact.
func (b Band) At(celsius float64) Touch {
	switch {
	case !quantity.AtLeast(celsius, b.Low):
		return NoBurn
	case quantity.AtMost(celsius, b.High):
		return MayBurn
	}
	return Burns
}

// BurnsIn gives the shortest contact in seconds of the bands at which the surface may
// burn at that temperature in °C, and false when none does.
func (s Surface) BurnsIn(celsius float64) (seconds float64, ok bool) {
	for _, b := range s.Bands() {
		if b.At(celsius) != NoBurn {
			return b.Seconds, true
		}
	}
	return 0, false
}

// scalds are the shortest times in seconds that are published for hot water to burn
// an adult's skin, from reddening on, by temperature in °C; none is longer than one
// of less heat, and of equal times the hottest stands. 43, 48, 51.7, 57.2, 65.6 and
// 68.3 °C have the times that a quoted annex of ISO 13732-1 prints for 43, 48, 51,
// 54, 64 and 67 °C ("at least first degree"); 44 °C is Moritz and Henriques'; 45, 47
// and 60 °C are second-degree burns; 48.9 °C is CPSC's; 72.2 °C is NIST's, as quoted.
// None was found for oil.
var scalds = [...]struct{ celsius, seconds float64 }{
	{43, 8 * 3600}, {44, 6 * 3600}, {45, 7200}, {47, 1200}, {48, 600}, {48.9, 300}, {51.7, 60},
	{57.2, 10}, {60, 3}, {65.6, 1}, {68.3, 0.5}, {72.2, 0},
}

// Scald gives the time in seconds in which hot water of that temperature in °C
// burns an adult: the row at or above it, since times are never read between
// rows. 0 means on contact (above 68.3 °C). It reports false below 43 °C, where no
// time was found.
func Scald(celsius float64) (seconds float64, ok bool) {
	if !quantity.AtLeast(celsius, scalds[0].celsius) {
		return 0, false
	}
	for _, s := range scalds {
		if quantity.AtMost(celsius, s.celsius) {
			return s.seconds, true
		}
	}
	return 0, true
}
