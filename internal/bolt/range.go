package bolt

import "tidysump/internal/quantity"

// Range is a figure between two ends; one that isn't known ends at 0.
type Range struct{ Low, High float64 }

// within reports whether a value lies in the range, or out of it by no more
// than a factor.
func (r *Range) within(value, factor float64) bool {
	return value*factor >= r.Low && value <= r.High*factor
}

// widen makes the range hold another.
func (r *Range) widen(other Range) {
	if r.Low == 0 || other.Low < r.Low {
		r.Low = other.Low
	}
	if other.High > r.High {
		r.High = other.High
	}
}

// times gives the range so many times.
func (r *Range) times(n float64) Range { return Range{r.Low * n, r.High * n} }

// Text prints the ends, each divided by a scale, with two digits: "14–16 kN".
func (r *Range) Text(scale float64, unit string) string {
	low, high := quantity.Number(r.Low/scale, 2), quantity.Number(r.High/scale, 2)
	if low != high {
		low += "–" + high
	}
	return low + unit
}

// Torques prints a range of torques in N·m in the units of a system: "14–16
// N·m", unit by unit.
func (r *Range) Torques(system quantity.System) []string {
	return quantity.Between(torque(r.Low), torque(r.High), system)
}

// Texts prints a torque in N·m in the units of a system.
func Texts(nm float64, system quantity.System) []string { return torque(nm).Show(system) }

func torque(nm float64) quantity.Amount {
	u, _ := quantity.Find("N·m")
	return quantity.Amount{Kind: quantity.Torque, Base: nm, Unit: u.ID, Digits: 3}
}
