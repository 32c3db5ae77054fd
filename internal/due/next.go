// Package due says when the oil is due again.
package due

// Next gives the odometer reading in kilometres at which the oil is due, from
// the reading now and the card's interval.
func Next(odometer, interval float64) float64 { return odometer + interval }
