package fill

import "math"

// A usual level glass in mm: how wide it is, and how far its marks are apart.
// From memory: 15 to 25 and 8 to 14.
const (
	UsualGlass = 20
	UsualMarks = 10
)

// ShareAt gives the share of the band between the marks (0 at the lower, 1 at
// the upper) of a height above the glass's lowest point; the marks are taken to
// lie as far above as below its middle. All lengths in one unit.
func ShareAt(height, glass, marks float64) float64 { return (height - (glass-marks)/2) / marks }

// Covered gives the share of a round glass that is covered by oil, from the
// height of the oil line as a share of the glass's diameter, 0 to 1: the
// circle segment r²·acos((r−h)/r) − (r−h)·√(2rh−h²) over πr².
func Covered(height float64) float64 {
	h := clamp(height)
	// The arc cosine by way of an arc tangent, which keeps its digits near 0.
	arc := 2 * math.Atan(math.Sqrt(h/(1-h)))
	return clamp((arc - 2*(1-2*h)*HalfChord(h)) / math.Pi)
}

// LineAt is the inverse of Covered: the height of the oil line as a share of
// the diameter.
func LineAt(covered float64) float64 {
	covered = clamp(covered)
	low, high := 0.0, 1.0
	for range 50 {
		if mid := (low + high) / 2; Covered(mid) < covered {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// HalfChord gives half the length of the oil line as a share of the diameter.
func HalfChord(height float64) float64 {
	h := clamp(height)
	return math.Sqrt(h * (1 - h))
}

func clamp(v float64) float64 { return min(max(v, 0), 1) }
