package bolt

import "math"

// PitchDiameter is the basic pitch diameter d2 = D2 in mm: d − 0.649519·P (ISO
// 68-1, ISO 724; ASME B1.1).
func (t *Thread) PitchDiameter() float64 { return t.Diameter - 0.649519*t.Pitch }

// BoreDiameter is the basic minor diameter D1 of the internal thread in mm:
// d − 1.082532·P (ISO 68-1, ISO 724; ASME B1.1).
func (t *Thread) BoreDiameter() float64 { return t.Diameter - 1.082532*t.Pitch }

// RootDiameter is the diameter d3 in mm at the rounded root of an ISO metric
// external thread: d − 1.226869·P (DIN 13, VDI 2230). For a unified thread it
// is a close figure, not the standard's own.
func (t *Thread) RootDiameter() float64 { return t.Diameter - 1.226869*t.Pitch }

// LeadAngle is the slope of the thread at the pitch diameter, in degrees; a
// single start is taken.
func (t *Thread) LeadAngle() float64 {
	return math.Atan(t.Pitch/(math.Pi*t.PitchDiameter())) * 180 / math.Pi
}

// StressDiameter is the diameter in mm of a round bar as strong as the thread:
// (d2+d3)/2 for metric threads (ISO 898-1:2013, 9.1.6.1), d − 0.9743·P for
// unified ones (ASME B1.1).
func (t *Thread) StressDiameter() float64 {
	if t.Unified {
		return t.Diameter - 0.9743*t.Pitch
	}
	return (t.PitchDiameter() + t.RootDiameter()) / 2
}

// StressArea is the tensile stress area in mm².
func (t *Thread) StressArea() float64 { return disc(t.StressDiameter()) }

// disc is the area of a circle of that diameter.
func disc(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }

// Limits gives what the strength of an internal thread depends on: the least
// major diameter of the screw and the greatest pitch diameter of the hole, in
// mm. For metric threads they are those of 6g and 6H after the formulas of ISO
// 965-1 (from memory; unrounded, they lie within 0.01 mm of the published
// limits in the tests). For unified threads the tolerances are not known here:
// the basic dimensions come back, and the strength found from them is too high.
func (t *Thread) Limits() (screwMajor, holePitch float64) {
	if t.Unified {
		return t.Diameter, t.PitchDiameter()
	}
	allowance := 0.015 + 0.011*t.Pitch
	major := 0.180*math.Pow(t.Pitch, 2.0/3) - 0.00315/math.Sqrt(t.Pitch)
	pitch := 1.32 * 0.090 * math.Pow(t.Pitch, 0.4) * math.Pow(middleOfRange(t.Diameter), 0.1)
	return t.Diameter - allowance - major, t.PitchDiameter() + pitch
}

// middleOfRange is the geometric mean of the range of diameters (1.4, 2.8, 5.6,
// 11.2 … mm) for which ISO 965-1 has one tolerance.
func middleOfRange(diameter float64) float64 {
	low := 1.4
	for diameter > 2*low {
		low *= 2
	}
	return low * math.Sqrt2
}

// Travel is how far a screw moves, in mm, when it is turned by that many
// degrees.
func (t *Thread) Travel(degrees float64) float64 { return t.Pitch * degrees / 360 }
