package quantity

import "math"

// AsTyped is how far, of its size, a value may be from the one that was typed: the
// way through the base unit costs the last bits, 12.5 becomes 12.4999999999999982.
const AsTyped = 1e-9

// Near reports whether two values are one, but for the way through the base unit.
func Near(a, b float64) bool { return math.Abs(a-b) <= AsTyped*min(math.Abs(a), math.Abs(b)) }

// AtMost reports whether a value is no more than a limit; one typed on the limit is
// not beyond it.
func AtMost(v, limit float64) bool { return v <= limit || Near(v, limit) }

// AtLeast reports whether a value is no less than a limit, as AtMost does.
func AtLeast(v, limit float64) bool { return v >= limit || Near(v, limit) }
