package quantity_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// A figure typed in any unit is on the limit that is given in that unit, whatever
// the way through the base unit did to its last bits; one in the sixth digit is not.
func TestNear_JudgesWhatWasTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		limit := float64(rapid.IntRange(1, 99999).Draw(t, "limit")) / 1000
		back := u.FromBase(u.ToBase(limit))
		if !quantity.AtMost(back, limit) || !quantity.AtLeast(back, limit) || !quantity.Near(limit, back) {
			t.Fatalf("%v %s comes back as %.17g and is not on its limit", limit, u.ID, back)
		}
		over, under := limit*(1+1e-6), limit*(1-1e-6)
		if quantity.AtMost(over, limit) || quantity.AtLeast(under, limit) || quantity.Near(over, limit) {
			t.Fatalf("%.9g or %.9g passes for %v %s", over, under, limit, u.ID)
		}
		if !quantity.AtMost(-limit, -limit) || quantity.AtMost(limit, -limit) || quantity.AtLeast(-limit, limit) {
			t.Fatalf("-%v and %v are mixed up", limit, limit)
		}
	})
	nan := math.NaN()
	if quantity.Near(nan, 1) || quantity.AtMost(nan, 1) || quantity.AtLeast(nan, 1) || !quantity.AtMost(1, math.Inf(1)) || quantity.AtLeast(1, math.Inf(1)) || !quantity.Near(0, 0) {
		t.Error("what is no number is on no limit, and a number is at most without end")
	}
}
