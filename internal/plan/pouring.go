package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/quantity"
)

// through says what an oil is poured through. A funnel needs a hole that looks up, and a
// level hole is in the side; of the filler plug of a gear case the card doesn't say.
func (d *day) through(c *card.Circuit) string {
	word := "@through.funnel"
	for i := range d.card.Bolts {
		b := &d.card.Bolts[i]
		switch {
		case b.Circuit != c.ID || !d.fills(b) || b.Number() > 1 || byHand(b) || isEngineOil(c):
		case b.Purpose == card.FillerCap:
			word = "@through.either"
		default:
			return "@through.syringe"
		}
	}
	return word
}

// Marks that jugs have, the coarsest first: in mL, also beside Imperial units, and in
// US fl oz.
var (
	jugs   = [...]float64{100, 50, 25, 20, 10, 5}
	usJugs = [...]float64{4, 2, 1, 0.5, 0.25}
)

// jugMarks says how far apart the marks of a jug may be: a tenth of the least that is
// measured with it, since a jug is read to half a mark, and 5 % is as near as it need
// be; twice that of what is kept back. Common practice, no source. "" where no volume is
// known.
func (d *day) jugMarks() string {
	least := 0.0
	for _, c := range d.circuits {
		a, known := d.volume(c).Amount()
		if !known {
			continue
		}
		v := a.Base
		if isEngineOil(c) && hasGauge(c) {
			v = 2 * (v - fill.First(v)) // the level mends what is kept back
		}
		if least == 0 || v < least {
			least = v
		}
	}
	marks, unit := jugs[:], "mL"
	if d.print.System == quantity.US {
		marks, unit = usJugs[:], "US fl oz"
	}
	if least == 0 {
		return ""
	}
	u, _ := quantity.Find(unit)
	last := len(marks) - 1
	for n := range last {
		if marks[n]*u.Scale <= least/10 {
			last = n
			break
		}
	}
	return quantity.Number(marks[last], 3) + " " + unit
}
