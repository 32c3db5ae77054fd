package bolt

import (
	"slices"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// What is a kind of fastener.
type What int

// The kinds.
const (
	Plug What = 1 + iota
	Screw
	Filter // a spin-on can
)

// Whats are the names of the kinds, the first being Plug.
var Whats = []string{"plug", "screw", "filter"}

// Seal is a kind of seal; 0: not known.
type Seal int

// The seals. From ORing on they are pressed by less than the whole preload.
const (
	FlatAluminium Seal = 1 + iota
	FlatCopper
	Folded
	Bonded
	Fibre
	ORing
	SquareRing
	Paper
)

// Seals are the names of the seals, the first being FlatAluminium.
var Seals = []string{"flat-aluminium", "flat-copper", "folded", "bonded", "fibre", "o-ring", "square-ring", "paper"}

// SealOf gives the seal of that name; 0 for one that isn't known.
func SealOf(name string) Seal { return Seal(1 + slices.Index(Seals, name)) }

// Joint is a fastener in its place. What isn't known is zero.
type Joint struct {
	Thread
	What
	Seal
	Seat
	Class
	Lubrication
	Length float64 // mm of engaged thread
	Ring           // the sealing washer
	// bearing is the mean diameter in mm on which the screw turns.
	bearing float64
	assumed reasons
}

// washered reports whether the whole preload presses a washer; an unknown seal of
// a plug is taken for one.
func (j *Joint) washered() bool { return j.What == Plug && j.Seal < ORing }

// Settle assumes what isn't known and can be assumed, and notes it: an engaged
// length of one diameter (common practice, no source), the usual sealing ring,
// the bearing ring of a hexagon head or of MIL-HDBK-60.
func (j *Joint) Settle() {
	if j.Length == 0 {
		j.Length = j.Diameter
		j.assumed.add(finding.Note, "length-assumed", "value", quantity.Number(j.Length, 3)+" mm")
	}
	if j.Outer == 0 && j.washered() {
		j.Ring = UsualRing(j.Diameter)
		if j.Outer > 0 {
			size := Range{j.Inner, j.Outer}
			j.assumed.add(finding.Note, "washer-assumed", "value", size.Text(1, " mm"))
		}
	}
	j.bearing = j.Mean()
	if j.bearing == 0 && j.What == Screw {
		j.bearing = HeadRing(j.Diameter)
	}
	if j.bearing == 0 {
		j.bearing = MeanRing(j.Diameter)
		j.assumed.add(finding.Note, "head-assumed", "", "")
	}
	if j.Unified && j.Seat.Shear().High > 0 {
		j.assumed.add(finding.Note, "thread-basic-size", "", "")
	}
	if j.Class.Strength(j.Diameter).Memory || j.Seat >= firstAlloy && alloys[j.Seat-firstAlloy].Memory {
		j.assumed.add(finding.Note, "strength-from-memory", "", "")
	}
	f := Friction(j.Lubrication, j.Class)
	j.assumed.add(finding.Note, "friction-taken", "value", f.Text(1, ""))
}

// Figures are the figures of a joint at a torque; one that isn't known ends at 0.
// All but preload and nut factor may be unknown; the pressure is, where there is no
// washer.
type Figures struct {
	Preload    Range // N, the lower end at the highest friction
	NutFactor  Range // K in T = K·d·F
	YieldShare Range // share of its yield strength that the screw bears; a bore in a plug isn't counted
	Stripping  Range // force that strips the internal thread over the preload
	Pressure   Range // MPa on the sealing washer
}

// At works out the figures of a joint at a torque in N·m, over the friction that
// its state stands for. The joint must be settled. The safety against stripping
// begins with the weakest alloy at the lowest friction.
func (j *Joint) At(torque float64, to *Figures) {
	t, f := &j.Thread, Friction(j.Lubrication, j.Class)
	k := Range{NutFactor(t, f.Low, f.Low, j.bearing), NutFactor(t, f.High, f.High, j.bearing)}
	p := Range{Preload(k.High, j.Diameter, torque), Preload(k.Low, j.Diameter, torque)}
	to.Preload, to.NutFactor = p, k
	if yield := j.Class.Strength(j.Diameter).Yield; yield > 0 {
		to.YieldShare = Range{p.Low / Permissible(t, yield, 1, f.High), p.High / Permissible(t, yield, 1, f.Low)}
	}
	shear, area := j.Seat.Shear(), ThreadStripArea(t, j.Length)
	to.Stripping = Range{area * shear.Low / p.High, area * shear.High / p.Low}
	if a := j.Area(); a > 0 {
		to.Pressure = Range{p.Low / a, p.High / a}
	}
}

// Washered reports whether a washer takes the preload, so that there is a pressure
// on it to speak of.
func (j *Joint) Washered() bool { return j.Outer > 0 || j.washered() }
