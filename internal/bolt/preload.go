package bolt

import "math"

// NutFactor is K in T = K·d·F, for a friction coefficient in the thread and
// under the head and a mean diameter of the bearing ring in mm, after Kellermann
// and Klein as in VDI 2230:
//
//	K·d = 0.159·P + 0.577·μ·d2 + μK·ring/2
//
// With a ring of MeanRing it is the form of MIL-HDBK-60 (1990), 100.5.1.
func NutFactor(t *Thread, thread, head, ring float64) float64 {
	lever := t.Pitch/(2*math.Pi) + thread*t.PitchDiameter()/math.Sqrt(3) + head*ring/2
	return lever / t.Diameter
}

// MeanRing is the mean bearing diameter in mm that MIL-HDBK-60 takes where
// nothing is known of the head: 1.25·d.
func MeanRing(diameter float64) float64 { return 1.25 * diameter }

// Torque gives the torque in N·m for a preload in N: T = K·d·F, d in mm.
func Torque(factor, diameter, preload float64) float64 {
	return factor * diameter * preload / 1000
}

// Preload gives the preload in N from a torque in N·m: F = T/(K·d), d in mm.
func Preload(factor, diameter, torque float64) float64 {
	return torque * 1000 / (factor * diameter)
}

// Permissible is the preload in N at which a screw being tightened, pulled and
// twisted at once, bears a share of its yield strength (MPa); 0.9 is usual. VDI
// 2230 R7/1, from memory; it reproduces 27 published pairs.
func Permissible(t *Thread, yield, share, friction float64) float64 {
	slope := t.Pitch/(math.Pi*t.PitchDiameter()) + 2/math.Sqrt(3)*friction
	twist := 1.5 * t.PitchDiameter() / t.StressDiameter() * slope
	return share * yield * t.StressArea() / math.Sqrt(1+3*twist*twist)
}

// heads: least bearing diameter of hexagon heads (ISO 4014) and medium
// clearance holes (ISO 273), mm, from memory; they reproduce the torques that
// VDI 2230 publishes.
var heads = [...]struct{ size, washerFace, hole float64 }{
	{5, 6.88, 5.5}, {6, 8.88, 6.6}, {8, 11.63, 9}, {10, 14.63, 11}, {12, 16.63, 13.5},
	{14, 19.64, 15.5}, {16, 22.49, 17.5}, {20, 28.19, 22},
}

// HeadRing is the mean bearing diameter in mm of a hexagon head, and 0 for sizes
// other than M5 to M16 and M20.
func HeadRing(diameter float64) float64 {
	for n := range heads {
		if h := &heads[n]; h.size == diameter {
			return (h.washerFace + h.hole) / 2
		}
	}
	return 0
}

// Lubrication is the state of threads and faces; 0: not known.
type Lubrication int

// The states.
const (
	Oiled Lubrication = 1 + iota
	Dry
)

// Lubrications are the names of the states, the first being Oiled.
var Lubrications = []string{"oiled", "dry"}

// Friction gives the friction coefficients between which a screw's threads and
// head lie, steel on the metals of an engine. Oiled is friction class B of VDI
// 2230 (from memory); it stands for nut factors of 0.11 to 0.21, within the
// published 0.10 to 0.26 for machine oil on steel. Dry stands for the published
// nut factors 0.18 to 0.27 of dry steel, dry stainless for 0.30 to 0.50 (K ≈
// 1.33·μ). When it isn't known which, both are taken.
func Friction(state Lubrication, class Class) Range {
	r := Range{0.08, 0.20}
	if class == Stainless {
		r.High = 0.40
	} else if state == Oiled {
		r.High = 0.16
	}
	if state == Dry {
		r.Low = 0.14
		if class == Stainless {
			r.Low = 0.25
		}
	}
	return r
}
