package bolt

import (
	"math"

	"tidysump/internal/quantity"
)

// row is what a table has for one thread, N·m: in steel and iron, and in
// aluminium.
type row struct {
	diameter, pitch float64 // mm
	hard, soft      Range
}

// The tables, in the order of rows; each ends where the next begins.
const (
	tableCopper = "copper-plugs"
	tableOther  = "plugs"
	tableInch   = "inch-plugs"
	tableScrews = "screws"

	firstOther = 13
	firstInch  = 20
	firstScrew = 22
)

var rows = [...]row{
	// An engine maker's works standard for plugs DIN 908, DIN 910 and DIN 7604
	// with copper rings DIN 7603, threads and faces oiled; the upper figure is its
	// 10 % more for tightening by hand.
	{10, 1, Range{15, 16.5}, Range{15, 16.5}},
	{12, 1.5, Range{35, 38.5}, Range{25, 27.5}},
	{14, 1.5, Range{35, 38.5}, Range{25, 27.5}},
	{16, 1.5, Range{40, 44}, Range{30, 33}},
	{18, 1.5, Range{50, 55}, Range{35, 38.5}},
	{20, 1.5, Range{55, 60.5}, Range{45, 49.5}},
	{22, 1.5, Range{60, 66}, Range{50, 55}},
	{24, 1.5, Range{70, 77}, Range{60, 66}},
	{26, 1.5, Range{80, 88}, Range{70, 77}},
	{27, 2, Range{80, 88}, Range{70, 77}},
	{30, 1.5, Range{100, 110}, Range{90, 99}},
	{30, 2, Range{95, 104.5}, Range{85, 93.5}},
	{33, 2, Range{120, 132}, Range{110, 121}},
	// Another standard of the same maker, "plug screws", whose seal isn't stated.
	{10, 1, Range{20, 20}, Range{10, 12}},
	{12, 1.5, Range{35, 35}, Range{14, 16}},
	{14, 1.5, Range{45, 45}, Range{15, 18}},
	{16, 1.5, Range{55, 55}, Range{18, 21}},
	{18, 1.5, Range{70, 70}, Range{23, 26}},
	{22, 1.5, Range{100, 100}, Range{33, 37}},
	{27, 2, Range{170, 170}, Range{57, 62}},
	// Straight-thread plugs with O-ring, an engine manual; half of it where plug
	// or port is of no ferrous metal.
	{9.0 / 16 * inch, inch / 18, Range{43, 53}, Range{21.5, 26.5}},
	{3.0 / 4 * inch, inch / 16, Range{74, 90}, Range{37, 45}},
	// hard: from a leaflet's average for steel SS400 up to 90 % of yield, class
	// 8.8, friction 0.14. soft: from the least of the same leaflet for die-cast
	// aluminium up to a table for class 8.8 in cast aluminium (M5: the general
	// table of a service manual).
	{5, 0.8, Range{2.9, 6.03}, Range{1.7, 5}},
	{6, 1, Range{5, 10.3}, Range{2.9, 9}},
	{8, 1.25, Range{12, 25.5}, Range{7.1, 20}},
	{10, 1.5, Range{24, 50}, Range{14, 40}},
}

// tableOf names the table in which a row stands.
func tableOf(row int) string {
	switch {
	case row < firstOther:
		return tableCopper
	case row < firstInch:
		return tableOther
	case row < firstScrew:
		return tableInch
	}
	return tableScrews
}

// can is what is usual for a spin-on filter, N·m: common practice, no source;
// widerCan goes to what is printed on wide ones (from memory).
var can, widerCan = Range{10, 12}, Range{10, 20}

// Band is a torque band in N·m: the table it stands in (a word id's last part),
// and the thread there (a word id after "@" for a filter), where near says that it
// isn't the one asked for. One that isn't known ends at 0.
type Band struct {
	Range
	Table  string
	Thread string
	near   bool
}

// tabled is the tensile strength in MPa of class 8.8, for which the tables of
// screws are made.
const tabled = 800

// Published gives the torque band that published tables have for just the
// joint's thread, seal (0: not stated) and seat. Not in them are other threads,
// other seals, magnesium but for inch plugs, screws weaker than class 8.8 or
// stainless. A filter's band is common practice.
func (j *Joint) Published() Band {
	b := j.Usual()
	switch {
	case j.What == Filter:
		b.Range = can
	case b.near, j.Seat == 0,
		j.What == Screw && j.Class != 0 && j.Class.Strength(j.Diameter).Tensile < tabled,
		j.What == Plug && j.Seal != 0 && j.Seal != FlatCopper && b.Table != tableInch:
		return Band{}
	}
	return b
}

// Usual is Published for the nearest thread of the tables, at most a tenth
// thicker or thinner, and with the tables of all seals together for a seal that
// they don't have; the seat may be unknown. It is for judging a figure, not for
// setting a wrench.
func (j *Joint) Usual() Band {
	if j.What == Filter {
		return Band{Range: widerCan, Table: "practice", Thread: "@purpose.filter-can"}
	}
	metal := j.Seat.Metal()
	first, end := j.asked(metal)
	var b Band
	best, least := -1, 10*j.Diameter
	for n := first; n < end; n++ {
		r := &rows[n]
		// Any difference in diameter counts for more than one in pitch.
		off := 100*math.Abs(r.diameter-j.Diameter) + math.Abs(r.pitch-j.Pitch)
		if off > least {
			continue
		}
		band := r.in(metal, n >= firstScrew)
		if best >= 0 && off == least {
			band.widen(b.Range)
		}
		b.Range, best, least = band, n, off
	}
	if best < 0 {
		return b
	}
	b.Table, b.Thread, b.near = tableOf(best), j.Name, least > 1e-6
	if b.near {
		b.Thread = "M" + quantity.Number(rows[best].diameter, 3) + "x" + quantity.Number(rows[best].pitch, 3)
	}
	return b
}

// asked gives the rows that may say something about the joint. Magnesium is known
// for inch plugs alone.
func (j *Joint) asked(metal Seat) (first, end int) {
	end = firstInch
	switch {
	case j.What == Screw:
		first, end = firstScrew, len(rows)
	case j.Seal == FlatCopper:
		end = firstOther
	case j.Seal == ORing && j.Unified:
		end = firstScrew
	}
	if metal == Magnesium {
		first, end = firstInch, min(end, firstScrew)
	}
	return first, end
}

// in gives a row's band for a metal, and for all of them where none is named.
func (r *row) in(metal Seat, screw bool) Range {
	switch {
	case metal >= Aluminium:
		return r.soft
	case metal == 0, metal == CastIron && screw:
		// The leaflet for screws puts iron with die-cast aluminium, the table for
		// class 8.8 with steel.
		return Range{r.soft.Low, r.hard.High}
	}
	return r.hard
}
