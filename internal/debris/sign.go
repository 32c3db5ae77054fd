// Package debris says from what came out of an engine whether there is a reason
// to stop: from solid bits and from the look and smell of the oil.
//
// The rules are common practice without a published source for motorcycles, where
// no source stands beside them. They never call something safe: the best verdict is
// that no reason to stop was found.
package debris

// Verdict is what follows from a sign, the higher the worse.
type Verdict int

// The verdicts.
const (
	Unsaid Verdict = iota // nothing was reported
	Normal                // no reason found to stop
	Watch
	Stop // not to be started or ridden
)

// Verdicts are the last parts of the verdicts' word ids.
var Verdicts = []string{"unsaid", "normal", "watch", "stop"}

// What was found, by its place in Bits, from 1; 0: not reported.
const (
	Nothing = 1 + iota
	Paste
	Fuzz
	Glitter
	Flakes
	Sand
	Chip
	Part
	Coil
	Clutch
	Plastic
	Sealant
)

// Bits are the names of what may be found.
var Bits = []string{"nothing", "paste", "fuzz", "glitter", "flakes", "sand", "chip", "part", "coil", "clutch", "plastic", "sealant"}

// Sizes of the largest piece, from 1.
const (
	HalfMillimetre = 1 + iota
	TwoMillimetres
	FiveMillimetres
	Larger
)

// Sizes are the names of the sizes, up to which the largest piece reaches.
var Sizes = []string{"half", "two", "five", "larger"}

// Amounts, from 1.
const (
	Few = 1 + iota // up to ten pieces
	Many
)

// Amounts are their names.
var Amounts = []string{"few", "many"}

// Colours of the metal, from 1.
const (
	Bright  = 1 + iota // steel, aluminium
	Dull               // grey and soft: a nail scratches it
	Reddish            // red to yellow: bronze, brass, copper
)

// Colours are their names.
var Colours = []string{"bright", "dull", "reddish"}

// How the oil is, from 1.
const (
	Dark = 1 + iota // brown or black, and else as oil is
	Foam            // beige foam under the cap alone
	Milky
	Water
	Fuel
	Burnt
)

// Oils are the names of how it may be.
var Oils = []string{"dark", "foam", "milky", "water", "fuel", "burnt"}

// Sign is all that was reported; zero is not reported.
type Sign struct {
	Bit, Size, Amount, Colour, Oil int
	FirstService                   bool // within the first service, or after a repair
	Noise                          bool // a new knock, rattle or whine
	Lamp                           bool // the oil lamp, at hot idle or while riding
	More                           bool // more of it than last time
}

// sized reports whether the bits are of metal that one can measure.
func (s *Sign) sized() bool { return s.Bit >= Flakes && s.Bit <= Chip }

// small reports whether the bits are known to be below a couple of millimetres.
func (s *Sign) small() bool { return s.Bit == Glitter || s.Size > 0 && s.Size <= TwoMillimetres }

// Word is the word id of what was found, or else of how the oil was; "" for neither.
func (s *Sign) Word() string {
	switch {
	case s.Bit > 0:
		return "bit." + Bits[s.Bit-1]
	case s.Oil > 0:
		return "oil-look." + Oils[s.Oil-1]
	}
	return ""
}

// SizeUpTo gives the size of a piece that is mm millimetres across at most.
func SizeUpTo(mm float64) int {
	switch {
	case mm <= 0.5:
		return HalfMillimetre
	case mm <= 2:
		return TwoMillimetres
	case mm <= 5:
		return FiveMillimetres
	}
	return Larger
}
