// Package debris says from what came out of an engine whether there is a reason
// to stop: from solid bits and from the look and smell of the oil.
//
// The rules are common practice without a published source for motorcycles, where
// no source stands beside them. They never call something safe: the best verdict is
// that no reason to stop was found.
package debris

// Verdict is what follows from a sign, the higher the worse.
type Verdict int

// The verdicts. Partly is Normal with something left open that could have been a
// reason to stop.
const (
	Unsaid Verdict = iota // nothing was reported
	Normal                // no reason found to stop
	Partly                // none in what was told, and not all was
	Watch
	Stop // not to be started or ridden
)

// Verdicts are the last parts of the verdicts' word ids.
var Verdicts = []string{"unsaid", "normal", "partly", "watch", "stop"}

// worse is the verdict a step worse than v.
func (v Verdict) worse() Verdict {
	if v < Watch {
		return Watch
	}
	return Stop
}

// What was found, by its place in Bits, from 1; 0: not reported.
const (
	Nothing = 1 + iota
	Paste
	Fuzz
	Heap // on the magnet: more than a fur
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
var Bits = []string{"nothing", "paste", "fuzz", "heap", "glitter", "flakes", "sand", "chip", "part", "coil", "clutch", "plastic", "sealant"}

// Sizes of the largest piece, or of the depth of the fur on a magnet, from 1.
const (
	HalfMillimetre = 1 + iota
	TwoMillimetres
	FiveMillimetres
	Larger
)

// Sizes are the names of the sizes, up to which it reaches.
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

// What a magnet does with it, from 1.
const (
	Sticks   = 1 + iota // iron or steel
	Free                // anything else
	NotTried            // which is no answer, and said to be none
)

// Magnets are their names.
var Magnets = []string{"sticks", "free", "not-tried"}

// How the oil is, from 1.
const (
	Dark = 1 + iota // brown or black, and else as oil is
	Foam            // beige foam under the cap alone
	Milky
	Water
	FuelSmell // faint, the level unchanged
	FuelThin  // thin, or the level risen
	Burnt
	Fuel // the one or the other: what earlier versions asked for
)

// Oils are the names of how it may be; oilsOnce those that earlier versions had
// besides.
var (
	Oils     = []string{"dark", "foam", "milky", "water", "fuel-smell", "fuel-thin", "burnt"}
	oilsOnce = []string{"fuel"}
)

// A new knock, rattle or whine, from 1.
const (
	NoNoise = 1 + iota
	Fades   // within seconds after the start
	Stays
)

// Noises are their names. Earlier versions asked for yes or no, and yes may have been
// either: it counts as it did.
var (
	Noises     = []string{"none", "fades", "stays"}
	noisesOnce = []string{Yes, No}
)

// Sign is all that was reported; zero is not reported.
type Sign struct {
	Bit, Depth, Size, Amount, Colour, Magnet, Oil, Noise int

	Lamp         bool // the oil lamp, at hot idle or while riding
	More         bool // more of it than last time
	Again        bool // the same as last time, which was to be watched
	FirstService bool // within the first service, or after a repair
	// Unasked are the places in Asks, as bits, of what nobody was asked for: where a
	// magnet is looked at, nobody is asked for the oil.
	Unasked uint
}

// metal reports whether it is metal that can be seen piece by piece.
func (s *Sign) metal() bool { return s.Bit >= Flakes && s.Bit <= Chip }

// Word is the word id of what was found, or else of how the oil was; "" for neither.
func (s *Sign) Word() string {
	switch {
	case s.Bit > 0:
		return "bit." + Bits[s.Bit-1]
	case s.Oil > len(Oils):
		return "oil-look." + oilsOnce[s.Oil-1-len(Oils)]
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
