package drain

// Touch is what touching hot bare metal for so long does.
type Touch string

// The verdicts on a touch.
const (
	NoBurn  Touch = "no-burn"
	MayBurn Touch = "may-burn"
	Burns   Touch = "burns"
)

// Band is the burn threshold of bare metal for a contact: below Low no burn, up
// to High perhaps, above it a burn.
type Band struct{ Seconds, Low, High float64 }

// Bands are the thresholds of ISO 13732-1 in °C as quoted by others (the
// standard itself was not seen), for each contact the lowest figure found:
// sheet metal for 1 and 5 s, all metals above that.
var Bands = [...]Band{
	{1, 62, 65},
	{5, 56, 61},
	{60, 51, 51},
	{600, 48, 48},
	{8 * 3600, 43, 43},
}

// At judges touching metal at a temperature in °C for the band's contact.
func (b Band) At(celsius float64) Touch {
	switch {
	case celsius < b.Low:
		return NoBurn
	case celsius <= b.High:
		return MayBurn
	}
	return Burns
}

// BurnsIn gives the shortest contact in seconds of the bands at which metal of
// that temperature in °C may burn, and false when none does.
func BurnsIn(celsius float64) (seconds float64, ok bool) {
	for _, b := range Bands {
		if b.At(celsius) != NoBurn {
			return b.Seconds, true
		}
	}
	return 0, false
}

// scalds are the shortest times in seconds found for hot water on an adult's
// skin, by temperature in °C: 45 to 51, 55 and 60 second-degree burns, the rest
// third-degree or "serious", as agencies and hospitals print them. None was
// found for oil.
var scalds = [...]struct{ celsius, seconds float64 }{
	{45, 7200}, {47, 1200}, {48, 900}, {48.9, 300}, {51, 120}, {51.7, 90}, {54.4, 30},
	{55, 17}, {57.2, 10}, {60, 3}, {65.6, 1.5}, {68.3, 1}, {72.2, 0},
}

// Scald gives the time in seconds in which hot water of that temperature in °C
// scalds an adult: the row at or above it, since times are never read between
// rows. 0 means on contact (72.2 °C and more). It reports false below 43.9 °C,
// where pain starts and no time was found.
func Scald(celsius float64) (seconds float64, ok bool) {
	if !(celsius >= 43.9) {
		return 0, false
	}
	for _, s := range scalds {
		if celsius <= s.celsius {
			return s.seconds, true
		}
	}
	return 0, true
}
