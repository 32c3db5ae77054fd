package manual

import (
	"slices"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// witnesses says what a figure's own piece of the page has to doubt: how it was read, and
// which of its twins are not the same amount.
func (p *page) witnesses(f *fact) []finding.Finding {
	return append(slices.Clone(f.doubts), f.differing()...)
}

// differing says which of a figure's twins are not the same amount within the rounding of
// either.
func (f *fact) differing() (list []finding.Finding) {
	for i := range f.twins {
		if t := &f.twins[i]; !f.agrees(t) {
			list = append(list, doubt("manual-units-differ", "text", f.text, "other", t.text))
		}
	}
	return list
}

// agrees reports whether a twin is the same amount, within the rounding of either, or
// within 2 %: some manuals have kilogram-metres that are newton metres over ten.
func (f *fact) agrees(t *fact) bool {
	near := func(a, b float64) bool {
		d := abs64(a - b)
		return quantity.AtMost(d, f.half+t.half) || d <= 0.02*max(a, b)
	}
	if near(f.low, t.low) && near(f.high, t.high) {
		return true
	}
	// A twin of a range may be its middle, as the card's checks take it.
	return t.low == t.high && f.low != f.high && t.low >= f.low-t.half && t.low <= f.high+t.half
}

func abs64(v float64) float64 { return max(v, -v) }
