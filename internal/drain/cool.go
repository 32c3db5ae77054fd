package drain

import "math"

// CoolingRate gives k in 1/min of Newton's law of cooling,
// T = air + (T0 − air)·e^(−k·t), from two readings so many minutes apart. It
// reports false unless the second is below the first, above the air, and later.
func CoolingRate(first, second, air, minutes float64) (k float64, ok bool) {
	if !(second < first && second > air && minutes > 0) {
		return math.NaN(), false
	}
	return math.Log((first-air)/(second-air)) / minutes, true
}

// CoolingTime gives the minutes to cool from one temperature to another, both in °C,
// 0 when it is already there; k is that of CoolingRate. It reports false for a target that is not above the air:
// that is never reached.
func CoolingTime(from, target, air, k float64) (minutes float64, ok bool) {
	if !(target > air && from > air && k > 0) {
		return math.NaN(), false
	}
	return max(math.Log((from-air)/(target-air))/k, 0), true
}

// Cooled gives the temperature in °C after so many minutes; k is that of
// CoolingRate.
func Cooled(from, air, k, minutes float64) float64 { return air + (from-air)*math.Exp(-k*minutes) }
