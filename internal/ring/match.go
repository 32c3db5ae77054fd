package ring

import (
	"math"

	"tidysump/internal/quantity"
)

// Measured is a ring as somebody measured it, and how far off that may be, each way. Used
// says that it was in its place, pressed flat and stretched.
type Measured struct {
	Inside, Section             float64
	InsideWithin, SectionWithin float64
	Used                        bool
}

// By how much a used ring may have been thicker and narrower: half of a squeeze of
// 30 % stays (common practice, no source), and the stretch that guides allow.
const flattened, widened = 0.15, 0.05

// Match is a size that a measured ring may be, and how it would lie in its groove.
type Match struct {
	Size
	Lie
	off float64 // from what was measured, as if the ring were new
}

// before reports whether one is to be told before another: what lies better, then what
// is nearer.
func (m *Match) before(other *Match) bool {
	if m.Verdict != other.Verdict {
		return m.Verdict < other.Verdict
	}
	return m.off < other.off
}

// off gives how far a size is from what was measured, in what it may be off; 1 is the
// most that still fits.
func (m *Measured) off(s *Size, used bool) float64 {
	inside, section := s.Tolerance()
	narrower, thicker := m.Inside-s.Inside, s.Section-m.Section
	if used {
		narrower = less(narrower, widened*m.Inside)
		thicker = less(thicker, flattened*m.Section)
	}
	return max(math.Abs(narrower)/(inside+m.InsideWithin), math.Abs(thicker)/(section+m.SectionWithin))
}

// less takes what use explains off a difference; it explains one direction only.
func less(v, most float64) float64 { return max(v-most, min(v, 0)) }

// Fitting gives the sizes that a measured ring may be, in the order in which they are
// told; and the nearest size of all.
func (m *Measured) Fitting(g *Groove) (fitting []Match, nearest Match) {
	nearest.off = math.Inf(1)
	for _, s := range Sizes() {
		e := Match{Size: s, off: m.off(&s, false)}
		if quantity.AtMost(m.off(&s, m.Used), 1) {
			e.Lie = g.lie(&s)
			fitting = append(fitting, e)
			for n := len(fitting) - 1; n > 0 && fitting[n].before(&fitting[n-1]); n-- {
				fitting[n], fitting[n-1] = fitting[n-1], fitting[n]
			}
		}
		if e.off < nearest.off {
			nearest = e
		}
	}
	return fitting, nearest
}
