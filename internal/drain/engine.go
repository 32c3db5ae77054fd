package drain

import "math"

// startFilm is the film in m that walls and parts carry when the plug comes
// out soon after stopping: on the assumed walls it is a quarter of a litre of
// three, within the 100 to 300 mL that are still up in the engine in the first
// minute (from memory).
const startFilm = 0.25e-3

// Engine is an engine as its oil sees it when the plug comes out.
type Engine struct {
	Oil    float64 // m³, all that is in it
	Head   float64 // m of oil above the hole
	Hole   Hole
	Walls  float64 // m² of walls and parts that oil has wetted
	Height float64 // m over which they drain
}

// Guess gives an engine's shape from its oil alone, in m³, and the diameter of
// its drain hole in m. All of it is assumed, no source: a sump three heads
// squared in plan, so that 3 L stand 0.1 m deep; a hole half as long again as
// wide; for 3 L one square metre of wet walls and parts, draining over 0.25 m.
// Real engines hold more than such smooth walls.
func Guess(oil, hole float64) *Engine {
	head := math.Pow(oil/3, 1.0/3)
	return &Engine{Oil: oil, Head: head, Hole: Hole{hole, 1.5 * hole}, Walls: 100 * head * head, Height: 2.5 * head}
}

// Left gives the oil still in the engine in m³, so many seconds after the plug
// came out, at a kinematic viscosity in m²/s: what stands in the sump and the
// film on the walls, never more than at the start and never less with thicker
// oil.
func (e *Engine) Left(viscosity, seconds float64) float64 {
	start := e.filmStart()
	return (e.Oil-e.Walls*start)*e.standing(viscosity, seconds) + e.Film(viscosity, seconds)
}

// Film gives the oil on walls and parts in m³ after so many seconds.
func (e *Engine) Film(viscosity, seconds float64) float64 {
	return e.Walls * FilmMean(viscosity, e.Height, seconds, e.filmStart())
}

// filmStart keeps the first film below half of the oil, whatever walls were
// given.
func (e *Engine) filmStart() float64 {
	if e.Walls <= 0 {
		return 0
	}
	return min(startFilm, e.Oil/2/e.Walls)
}

// standing gives the share of the sump's oil that still stands in it.
func (e *Engine) standing(viscosity, seconds float64) float64 {
	plan := (e.Oil - e.Walls*e.filmStart()) / e.Head
	spent := seconds * e.Hole.area() / plan
	a, b := e.Hole.losses(viscosity)
	first := flowSpeed(a, b, e.Head)
	low, high := 0.0, first
	for range 60 {
		v := (low + high) / 2
		if falling(a, b, first, v) > spent {
			low = v
		} else {
			high = v
		}
	}
	return (a*high + b) * high / e.Head
}

// falling gives the time, times hole area over plan area, in which the speed
// falls from first to v: the integral of plan·dh = −area·v·dt with
// h = a·v² + b·v.
func falling(a, b, first, v float64) float64 {
	if v <= 0 {
		return math.Inf(1)
	}
	return 2*a*(first-v) + b*math.Log(first/v)
}

// RunsFor gives the seconds until one hundredth of the sump's oil still stands
// in it: by then the stream has broken into drops.
func (e *Engine) RunsFor(viscosity float64) float64 {
	a, b := e.Hole.losses(viscosity)
	plan := (e.Oil - e.Walls*e.filmStart()) / e.Head
	return plan / e.Hole.area() * falling(a, b, flowSpeed(a, b, e.Head), flowSpeed(a, b, e.Head/100))
}

// Gain gives what oil of the viscosity hot brings over oil of the viscosity warm,
// both in m²/s, when it is left to run for so many seconds: how much less stays
// inside, in m³, and how many seconds sooner the stream ends.
func (e *Engine) Gain(warm, hot, seconds float64) (less, sooner float64) {
	return e.Left(warm, seconds) - e.Left(hot, seconds), e.RunsFor(warm) - e.RunsFor(hot)
}

// Rough is how many times the oil of the assumed smooth walls real ones may hold:
// pockets, ribs and rough castings (an assumption, no source).
const Rough = 3

// Until gives the seconds after which less than so much oil in m³ comes within a
// minute, from walls as smooth as assumed to walls as rough as Rough, at a kinematic
// viscosity in m²/s; 0 where as much never comes.
func (e *Engine) Until(viscosity, less float64) (low, high float64) {
	rough := *e
	rough.Walls *= Rough
	smooth, held := e.until(viscosity, less), rough.until(viscosity, less)
	return min(smooth, held), max(smooth, held) // thick oil still stands when walls are done
}

// longest is how many seconds nobody waits for the last drops: a month.
const longest = 30 * 24 * 3600

func (e *Engine) until(viscosity, less float64) float64 {
	comes := func(after float64) float64 { return e.Left(viscosity, after) - e.Left(viscosity, after+60) }
	low, high := 0.0, float64(longest)
	if comes(0) < less {
		return 0
	}
	for range 60 {
		if middle := (low + high) / 2; comes(middle) < less {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
