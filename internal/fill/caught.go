package fill

// Caught is what the oil that came out says beside what should have come.
type Caught string

// What it may say.
const (
	AsMuch    Caught = "as-much"
	Less      Caught = "less"       // burnt, leaked, or too little before
	FarLess   Caught = "far-less"   // by more than a third: ask what ran dry
	More      Caught = "more"       // too much before, or fuel or water in it
	NoCompare Caught = "no-compare" // how much should come is not known
)

// CompareCaught judges what came out, in litres, by what is due. Within a tenth,
// or 0.1 L if that is more, it says nothing: so much stays in the engine, in the
// filter and on the tray (common practice, no source; nor has the third).
func CompareCaught(out, due float64) Caught {
	slack := max(due/10, 0.1)
	switch {
	case due <= 0:
		return NoCompare
	case out > due+slack:
		return More
	case out < due*2/3 && out < due-slack:
		return FarLess
	case out < due-slack:
		return Less
	}
	return AsMuch
}
