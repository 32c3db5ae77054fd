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

// Slack is by how much what came out may differ from what is due, both in litres, and say
// nothing: a tenth, or 0.1 L if that is more. So much stays in the engine, in the filter
// and on the tray (common practice, no source).
func Slack(due float64) float64 { return max(due/10, 0.1) }

// CompareCaught judges what came out, in litres, by what is due. Within the slack it says
// nothing; that less than two thirds is far less is common practice, no source.
func CompareCaught(out, due float64) Caught {
	slack := Slack(due)
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
