package drain

import "math"

// FilmDepth gives the thickness in m of the film at the depth below the upper
// edge of a vertical wall, both in m, so many seconds after the oil has left
// it: √(viscosity·depth/(g·time)), viscosity in m²/s (Jeffreys 1930; Bird,
// Stewart and Lightfoot, 2nd edition, problem 2D.2). It holds for laminar flow
// on a smooth wall; roughness and pockets hold more.
func FilmDepth(viscosity, depth, seconds float64) float64 {
	return math.Sqrt(viscosity * depth / (gravity * seconds))
}

// FilmMean gives the mean thickness in m of the film on a wall of that height,
// when it was of even thickness start at time 0: where Jeffreys' film would
// be thicker than that, it is still start. This solves the same equation of
// motion exactly, and unlike Jeffreys' film it is finite from the first moment.
func FilmMean(viscosity, height, seconds, start float64) float64 {
	if seconds <= 0 || viscosity <= 0 {
		return start
	}
	thinned := gravity * seconds * start * start / viscosity // depth down to which the film has thinned
	if thinned < height {
		return start * (1 - thinned/(3*height))
	}
	return 2.0 / 3 * FilmDepth(viscosity, height, seconds)
}
