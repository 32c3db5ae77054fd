package drain

import "math"

const gravity = 9.80665 // m/s², standard

// velocityHeads is the head that the jet of a short laminar tube carries away
// and loses at the edge, in velocity heads: 2 for the parabolic jet and 0.24
// for the entrance (Hagenbach and Boussinesq; from memory).
const velocityHeads = 2.24

// Hole is a drain hole: a short round tube, with or without its thread.
type Hole struct {
	Diameter float64 // m
	Length   float64 // m
}

func (h Hole) area() float64 { return math.Pi / 4 * h.Diameter * h.Diameter }

// losses gives a and b of head = a·v² + b·v, for the mean speed v in the hole in
// m/s, the head of oil above it in m and the kinematic viscosity in m²/s: velocity
// heads and the wall friction of Hagen and Poiseuille. Laminar holds for nearly any
// oil in any drain hole (Reynolds number below about 2000); very hot oil in a very
// wide one comes near it.
func (h Hole) losses(viscosity float64) (a, b float64) {
	return velocityHeads / (2 * gravity), 32 * viscosity * h.Length / (gravity * h.Diameter * h.Diameter)
}

// flowSpeed solves head = a·v² + b·v in a form that stays exact when b is
// large.
func flowSpeed(a, b, head float64) float64 {
	if head <= 0 {
		return 0
	}
	return 2 * head / (b + math.Sqrt(b*b+4*a*head))
}
