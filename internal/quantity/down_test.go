package quantity_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// What is rounded down is no more than it was, and less than one of its last digit
// below; what has no more digits stays as it is, in whatever unit it was typed.
func TestDown(t *testing.T) {
	for _, c := range []struct{ value, want float64 }{{3.15, 3.1}, {0.995, 0.99}, {10.5, 10}, {0.105, 0.1}, {2, 2}, {0, 0}, {0.29, 0.29}, {1.7000000000000002, 1.7}} {
		if got := quantity.Down(c.value, 2); !quantity.Near(got, c.want) {
			t.Errorf("%v is %v, not %v", c.value, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e-6, 1e6).Draw(t, "value")
		got := quantity.Down(v, 2)
		if !quantity.AtMost(got, v) || got < v*0.899 || !quantity.Near(quantity.Down(got, 2), got) {
			t.Errorf("%v is %v", v, got)
		}
		for i := range quantity.Units {
			u := &quantity.Units[i]
			typed := math.Round(rapid.Float64Range(10, 99).Draw(t, "typed"))
			if u.Kind == quantity.Temperature {
				continue // its zero is not nothing
			}
			if got := quantity.Down(u.FromBase(u.ToBase(typed)), 2); !quantity.Near(got, typed) {
				t.Errorf("%v %s is %v", typed, u.ID, got)
			}
		}
	})
}
