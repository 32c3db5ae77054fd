package ring

import (
	"math"

	"tidysump/internal/quantity"
)

// Range is a figure between two ends.
type Range struct{ Low, High float64 }

// Groove is where a ring lies, measured to Accuracy each way; what isn't known is 0.
type Groove struct {
	Diameter float64 // that the ring is stretched over
	Depth    float64 // from the groove's bottom to the face that presses
	Accuracy float64
}

// Verdict is how a ring would lie; the smaller the better.
type Verdict int

// The verdicts.
const (
	Fits   Verdict = iota // nothing is known of the groove
	Suits                 // within the published limits, whatever the tolerances
	Unsure                // within them or not
	Wrong                 // out of them, whatever the tolerances
)

// Verdicts are the names of the verdicts, the first being Fits.
var Verdicts = []string{"fits", "suits", "unsure", "wrong"}

// Lie is how a ring lies in its groove, over its tolerance and the groove's: what isn't
// known is zero, and so is Has of it.
type Lie struct {
	Verdict
	Stretch, Squeeze       Range
	HasStretch, HasSqueeze bool
}

// Squeeze of a ring that doesn't move: a published design guide has 10 to 40 %; printed
// glands for sections of 1.78 to 6.99 mm have 13 to 33 %.
const leastSqueeze, mostSqueeze = 0.10, 0.40

// mostStretch is how far a ring may stay stretched, by its inside: ISO 3601-2, from
// memory. Published design guides have 5 % for all.
func mostStretch(inside float64) float64 {
	switch {
	case inside < 14:
		return 0.08
	case inside < 40:
		return 0.06
	case inside < 100:
		return 0.05
	}
	return 0.04
}

// lie works out how a size would lie. A stretched ring gets thinner, as its volume stays.
func (g *Groove) lie(s *Size) Lie {
	var l Lie
	inside, section := s.Tolerance()
	thin := Range{s.Section - section, s.Section + section}
	if g.Diameter > 0 {
		l.Stretch = Range{(g.Diameter-g.Accuracy)/(s.Inside+inside) - 1, (g.Diameter+g.Accuracy)/(s.Inside-inside) - 1}
		l.HasStretch = true
		l.judge(l.Stretch, 0, mostStretch(s.Inside))
		thin.Low /= math.Sqrt(1 + max(l.Stretch.High, 0))
		thin.High /= math.Sqrt(1 + max(l.Stretch.Low, 0))
	}
	if g.Depth > 0 {
		l.Squeeze = Range{1 - (g.Depth+g.Accuracy)/thin.Low, 1 - max(g.Depth-g.Accuracy, 0)/thin.High}
		l.HasSqueeze = true
		l.judge(l.Squeeze, leastSqueeze, mostSqueeze)
	}
	return l
}

// judge holds a range against its limits, by the whole of it; the worst of all counts.
func (l *Lie) judge(r Range, low, high float64) {
	v := Unsure
	switch {
	case !quantity.AtLeast(r.High, low), !quantity.AtMost(r.Low, high):
		v = Wrong
	case quantity.AtLeast(r.Low, low) && quantity.AtMost(r.High, high):
		v = Suits
	}
	l.Verdict = max(l.Verdict, v)
}
