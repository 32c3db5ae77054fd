package quantity

import (
	"math"

	"tidysump/internal/finding"
)

// often says which of two readings of a number is the usual one.
type often int

const (
	asks       often = iota // either may be meant
	takesSmall              // a thousand of it is out of this world: "1,500 L"
	takesLarge              // nobody counts it in thousandths: "1,500 mL"
)

// counted are the units that people count whole, and parted those that they part down
// to thousandths and of which a thousand is no part of an oil change; so is one of
// which a thousand is more than any drum, torque or weight here (mostOf). Of the rest
// either is met. Common practice, no source.
const (
	counted = "mL|km|mi|lbf·in|kgf·cm|kPa|psi|g|kg/m³|s|min|h|days"
	parted  = "in|bar|kgf/cm²|kg/L|m²|turn"
)

// mostOf is what is met of a kind in an oil change, in the base unit.
func mostOf(kind Kind) float64 {
	switch kind {
	case Volume:
		return 50
	case Torque:
		return 500
	case Mass:
		return 20
	}
	return math.Inf(1)
}

// marks says what the mark in "1,500" is in a unit.
func marks(u *Unit) often {
	switch {
	case oneOf(counted, u.ID):
		return takesLarge
	case oneOf(parted, u.ID) || u.ToBase(1000) > mostOf(u.Kind):
		return takesSmall
	}
	return asks
}

// decide settles which of two numbers of a unit was meant: what can be believed here,
// else the usual one, and where that says nothing the person is asked. It reports
// whether it is the larger. smallText and largeText are how either is written so that
// it can't be mistaken.
func (q *Ask) decide(unit *Unit, text string, small, large float64, smallText, largeText string, usual often) (notes []finding.Finding, isLarge bool) {
	note := func(read string) []finding.Finding {
		return []finding.Finding{{Code: "number-read-as", Where: "/", Grade: finding.Note,
			Values: finding.Values("text", text, "number", read)}}
	}
	s, l := q.believes(unit.ToBase(small)), q.believes(unit.ToBase(large))
	switch {
	case q.Low == q.High || s == l:
		if s && l && usual == takesSmall {
			usual = asks
		}
	case l:
		usual = takesLarge
	case usual == takesLarge:
		return note(Number(small, 6)), false
	default:
		usual = takesSmall
	}
	switch usual {
	case takesSmall:
		return nil, false
	case takesLarge:
		return note(largeText), true
	}
	return finding.Refusal("number-two-ways", "/", "text", text, "small", smallText, "large", largeText), false
}

// believes reports whether an amount is known to lie within what is believable.
func (q *Ask) believes(base float64) bool {
	return q.Low != q.High && AtLeast(base, q.Low) && AtMost(base, q.High)
}
