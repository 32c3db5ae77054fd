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

// ThreadStripArea is that area of a thread along a length in mm. For a unified
// thread it is found from basic dimensions, and too large.
func ThreadStripArea(t *Thread, length float64) float64 {
	major, pitch := t.Limits()
	return StripArea(t.Pitch, length, major, pitch)
}
