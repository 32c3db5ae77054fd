// Package fill says how much oil goes in, and when.
//
// Volumes are in litres; those of bottles are in µL, and what is added by the level in
// mL. A share is a fraction: 1 is the whole.
package fill

// firstShare is the share of the full volume that goes in before the first
// start: 85 to 90 %, common practice, no source. The rest is added after the
// filter has filled and the level was read.
const firstShare = 0.875

// First gives the volume in litres to pour before the first start, from the
// volume due; the rest is kept for topping up by the level.
func First(due float64) float64 { return firstShare * due }

// Bounds for comparing what went in with what the card asks, as shares of the
// volume due: common practice, no source.
const (
	askAbove  = 0.10 // more than this over or under: a question
	stopAbove = 0.25 // more than this over: take it out before starting
)

// Verdict is what the poured volume means.
type Verdict string

// The verdicts on a poured volume.
const (
	Short    Verdict = "short"     // less than the card asks, by over a tenth
	Right    Verdict = "right"     // within a tenth
	Over     Verdict = "over"      // more than the card asks, by over a tenth
	FarOver  Verdict = "far-over"  // by over a quarter
	NoFigure Verdict = "no-figure" // the card doesn't know the volume
)

// Compare judges a poured volume against the one due, both in litres.
func Compare(poured, due float64) Verdict {
	switch {
	case due <= 0:
		return NoFigure
	case poured > due*(1+stopAbove):
		return FarOver
	case poured > due*(1+askAbove):
		return Over
	case poured < due*(1-askAbove):
		return Short
	}
	return Right
}

// TrayFor gives the least size in litres of a tray that takes that volume with
// room for the splash: half as much again, common practice, no source.
func TrayFor(volume float64) float64 { return 1.5 * volume }
