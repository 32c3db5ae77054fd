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
	// Enough is the engaged length in mm from which on the thread holds by the lower
	// estimate too, three turns at least, since fewer are doubted; 0 where no length
	// does, or the thread's strength isn't known.
	Enough float64
	// Inserts are what Stripping would be with wire thread inserts of InsertLengths,
	// where the bare thread isn't sure to hold.
	Inserts [len(InsertLengths)]Range
}

// At works out the figures of a joint at a torque in N·m, over the friction that
// its state stands for. The joint must be settled. The safety against stripping
// goes from the lower published estimate, the weakest alloy and the lowest friction to
// the higher one, the strongest alloy and the highest friction.
func (j *Joint) At(torque float64, to *Figures) {
	t, f := &j.Thread, Friction(j.Lubrication, j.Class)
	k := Range{NutFactor(t, f.Low, f.Low, j.bearing), NutFactor(t, f.High, f.High, j.bearing)}
	p := Range{Preload(k.High, j.Diameter, torque), Preload(k.Low, j.Diameter, torque)}
	to.Preload, to.NutFactor = p, k
	if yield := j.Class.Strength(j.Diameter).Yield; yield > 0 {
		to.YieldShare = Range{p.Low / Permissible(t, yield, 1, f.High), p.High / Permissible(t, yield, 1, f.Low)}
	}
	j.strip(to)
	if a := j.Area(); a > 0 {
		to.Pressure = Range{p.Low / a, p.High / a}
	}
}

// strip works out what the internal thread bears, for a preload that is known.
func (j *Joint) strip(to *Figures) {
	t, shear := &j.Thread, j.Seat.Shear()
	// On a millimetre of engagement.
	each := Range{PullOutArea(t, 1) * shear.Low / to.Preload.High, ThreadStripArea(t, 1) * shear.High / to.Preload.Low}
	to.Stripping = each.times(t.counted(j.Length))
	if !quantity.AtLeast(to.Stripping.Low, safeThread) {
		for n, lengths := range InsertLengths {
			to.Inserts[n] = each.times(t.insertFactor(lengths))
		}
	}
	if enough := max(safeThread/each.Low, leastTurns*t.Pitch); shear.High > 0 && quantity.AtMost(enough, t.counted(enough)) {
		to.Enough = enough
	}
}

// Washered reports whether a washer takes the preload, so that there is a pressure
// on it to speak of.
func (j *Joint) Washered() bool { return j.Outer > 0 || j.washered() }
