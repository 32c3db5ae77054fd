package bolt

import "math"

// StripArea is the area in mm² over which an internal thread shears, for a
// pitch and a length of engagement in mm, the least major diameter of the screw
// and the greatest pitch diameter of the hole (ASME B1.1-2003 appendix B,
// FED-STD-H28/2B):
//
//	π/P · L · d · (P/2 + 0.57735·(d − D2))
func StripArea(pitch, length, screwMajor, holePitch float64) float64 {
	return math.Pi / pitch * length * screwMajor * (pitch/2 + (screwMajor-holePitch)/math.Sqrt(3))
}

// ThreadStripArea is that area of a thread along a length in mm.
func ThreadStripArea(t *Thread, length float64) float64 {
	major, pitch := t.Limits()
	return StripArea(t.Pitch, length, major, pitch)
}

// PullOutArea is the area in mm² for which a screw in a tapped hole may be counted on:
// π·d2·L/3 (NASA RP-1228, 1990). The third is empirical; it would be a half "if the
// threads matched perfectly". It is less than half of ThreadStripArea.
func PullOutArea(t *Thread, length float64) float64 {
	return math.Pi * t.PitchDiameter() * length / 3
}

// mostCounted is the engaged length, in diameters, beyond which more of it isn't
// counted: the first turns bear most. It is the longest that the published tables ask
// for in any aluminium (Roloff/Matek: 2.5·d in pure aluminium; others 2 to 2.5·d).
const mostCounted = 2.5

// counted is how much of a length in mm counts.
func (t *Thread) counted(length float64) float64 { return min(length, mostCounted*t.Diameter) }

// InsertLengths are the usual lengths of wire thread inserts, in diameters (DIN 8140
// has 1 to 3); shorter ones are no longer than the thread that they mend.
var InsertLengths = [...]float64{1.5, 2, 2.5}

// insertFactor is by how much more a wire thread insert bears, so many diameters long,
// than the bare thread on a millimetre: its outside thread has the pitch diameter
// d + 0.6495·P (DIN 8140, from memory), and its ends, a pitch together, bear nothing
// (from memory).
func (t *Thread) insertFactor(lengths float64) float64 {
	return (t.Diameter + 0.649519*t.Pitch) / t.PitchDiameter() * (t.counted(lengths*t.Diameter) - t.Pitch)
}

// Safeties, least force that breaks over the force: from these on nothing is said to
// be doubtful. Strengths are those of test bars, and the wall of a casting has less
// (common practice, no source); screws are tightened to 90 % of their yield strength
// (VDI 2230).
const (
	safeThread = 1.25
	safeScrew  = 1 / 0.9
)
