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
// mm, of the usual tolerances: 6g and 6H (ISO 965-1), 2A and 2B (ASME B1.1).
func (t *Thread) Limits() (screwMajor, holePitch float64) {
	major, pitch := t.isoTolerances()
	if t.Unified {
		major, pitch = t.inchTolerances()
	}
	return t.Diameter - major, t.PitchDiameter() + pitch
}

// printed is what ISO 965-1 prints for a pitch in mm, in µm: how far the least major
// diameter of 6g lies below the nominal one (allowance and tolerance, tables 1 and 6),
// and the tolerance of the pitch diameter of 6H (table 4) for nominal diameters up to
// 5.6, 11.2, 22.4, 45 and 90 mm; 0: none printed. From memory; the tests name the
// rows that were read. The standard rounds to the R40 series, but not always to the
// nearest, "to reproduce a smooth progression", so no rule gives the table.
var printed = [...]struct {
	pitch float64
	major float64
	holes [5]float64
}{
	{0.5, 126, [5]float64{100, 112}},
	{0.7, 162, [5]float64{118}},
	{0.75, 162, [5]float64{118, 132, 140}},
	{0.8, 174, [5]float64{125}},
	{1, 206, [5]float64{0, 150, 160, 170}},
	{1.25, 240, [5]float64{0, 160, 180}},
	{1.5, 268, [5]float64{0, 180, 190, 200, 212}},
	{1.75, 299, [5]float64{0, 0, 200}},
	{2, 318, [5]float64{0, 0, 212, 224, 236}},
	{2.5, 377, [5]float64{0, 0, 224}},
	{3, 423, [5]float64{0, 0, 0, 265, 280}},
	{3.5, 478, [5]float64{0, 0, 0, 280}},
	{4, 535, [5]float64{0, 0, 0, 300, 315}},
}

// unprinted is by how much a tolerance may be wider than its formula where the
// table has none: one step of the R40 series.
const unprinted = 1.06

// isoTolerances gives in mm by how much the screw may be thinner and the hole wider
// than basic: what ISO 965-1 prints, else its formulas (from memory), widened.
func (t *Thread) isoTolerances() (major, pitch float64) {
	for n := range printed {
		if r := &printed[n]; r.pitch == t.Pitch {
			at := 0
			for over := 5.6; t.Diameter > over; over *= 2 {
				at++
			}
			major, pitch = r.major/1000, r.holes[min(at, len(r.holes)-1)]/1000
		}
	}
	if major == 0 {
		major = 0.015 + 0.011*t.Pitch + unprinted*(0.180*math.Pow(t.Pitch, 2.0/3)-0.00315/math.Sqrt(t.Pitch))
	}
	if pitch == 0 {
		pitch = unprinted * 1.32 * 0.090 * math.Pow(t.Pitch, 0.4) * math.Pow(middleOfRange(t.Diameter), 0.1)
	}
	return major, pitch
}

// inchTolerances gives the same for 2A and 2B, after the formulas of ASME B1.1 (from
// memory; they give the published limits in the tests), for an engagement of one
// diameter, as for the coarse and fine series.
func (t *Thread) inchTolerances() (major, pitch float64) {
	d, p := t.Diameter/inch, t.Pitch/inch
	flank := math.Pow(p, 2.0/3)
	screw := 0.0015*(math.Cbrt(d)+math.Sqrt(d)) + 0.015*flank
	return inch * (0.3*screw + 0.060*flank), inch * 1.3 * screw
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
