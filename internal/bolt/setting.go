package bolt

import (
	"math"

	"tidysump/internal/quantity"
)

// Fit says whether a wrench can be set to a torque.
type Fit string

// The fits of a wrench.
const (
	Sets         Fit = "sets"
	SetsWide     Fit = "sets-wide"     // the torque is what it must be; what it may come to isn't
	BetweenMarks Fit = "between-marks" // its marks are too coarse
	BelowFifth   Fit = "below-fifth"
	BelowScale   Fit = "below-scale"
	AboveScale   Fit = "above-scale"
	NoGrip       Fit = "grip-unknown"
	Backward     Fit = "adapter-backward" // the adapter takes the leverage away
)

// OK reports whether the wrench can be set.
func (f Fit) OK() bool { return f == Sets || f == SetsWide }

// FitOf says whether the wrench can be set to a torque in N·m.
func (w Wrench) FitOf(torque float64) Fit {
	switch {
	case !quantity.AtMost(torque, w.High):
		return AboveScale
	case !quantity.AtLeast(torque, w.Low):
		return BelowScale
	case !quantity.AtLeast(torque, w.Fifth()):
		return BelowFifth
	}
	return Sets
}

// asPrinted is the share by which a torque may be off from its figure and still be
// it: as far as another unit's print of it may take it away.
const asPrinted = 0.01

// Must is what a torque has to be, in N·m.
type Must struct {
	Range       // the torque that is set for
	Whole Range // the torque with all that may be off
}

// MustBe gives what a torque has to be. One figure (upper 0) stands for what a wrench
// that is as good as ISO 6789 asks gives when it is set to it; with all that may be
// off it may go beyond that by as much as it may be off in print.
func MustBe(figure, upper float64) Must {
	if upper > 0 {
		r := Range{figure, upper}
		return Must{r, r}
	}
	off := Deviation(figure)
	around := func(off float64) Range { return Range{figure * (1 - off), figure * (1 + off)} }
	return Must{Range: around(off), Whole: around(off + asPrinted)}
}

// Aim is the torque in N·m that is set for: the middle.
func (m *Must) Aim() float64 { return (m.Low + m.High) / 2 }

// Mark is a setting of a wrench, and what comes of it.
type Mark struct {
	At   float64 // N·m on the wrench
	Gets Range   // N·m, what the fastener gets then with all that may be off
}

// Setting is how a wrench is set for a torque.
type Setting struct {
	Fit
	// Mark is the one to set; where there is none At is where it would have to be, and
	// 0 where that isn't known.
	Mark
	// Beside are the marks that may be used next to it, where none gives the torque.
	Beside []Mark
}

// Set finds the mark of a wrench that gives what a torque must be, its marks being
// multiples of a graduation in N·m.
func (w Wrench) Set(a *Adapter, tool Tool, must *Must, graduation float64) (s Setting) {
	if s.Fit = a.fit(); s.Fit != Sets {
		return s
	}
	s.At, _ = a.Setting(must.Aim())
	// Where just that can't be set, what can may do as well.
	marks := w.marks(min(max(s.At, w.Low, w.Fifth()), w.High), graduation)
	off := math.Inf(1)
	for _, at := range marks {
		m, got := Mark{at, w.gets(a, tool, at)}, a.Applied(at)
		s.Beside = append(s.Beside, m)
		if d := math.Abs(got - must.Aim()); quantity.AtLeast(got, must.Low) && quantity.AtMost(got, must.High) && d < off {
			s.Mark, off = m, d
		}
	}
	switch {
	case off < math.Inf(1):
		s.Beside = nil
		if !quantity.AtLeast(s.Gets.Low, must.Whole.Low) || !quantity.AtMost(s.Gets.High, must.Whole.High) {
			s.Fit = SetsWide
		}
	case w.FitOf(s.At) != Sets:
		s.Fit, s.Beside = w.FitOf(s.At), nil
	default:
		s.Fit = BetweenMarks
	}
	return s
}

// marks are the marks at or next to a setting, in N·m, within the part of the scale
// that may be used. The ends of the scale are marks too.
func (w Wrench) marks(setting, graduation float64) (marks []float64) {
	n := math.Round(setting / graduation)
	if quantity.Near(n*graduation, setting) || quantity.Near(setting, w.Low) || quantity.Near(setting, w.High) {
		return []float64{setting}
	}
	n = math.Floor(setting / graduation)
	if below := max(n*graduation, w.Low); quantity.AtLeast(below, w.Fifth()) {
		marks = append(marks, below)
	}
	return append(marks, min((n+1)*graduation, w.High))
}

// gets is what the fastener gets, in N·m, when a wrench that is as good as its
// standard asks answers at a setting in N·m. The deviation was measured with the
// wrench set to its marks, and holds how well that is done.
func (w Wrench) gets(a *Adapter, tool Tool, setting float64) Range {
	off, g := tool.Deviation(w.High), a.gains()
	return Range{setting * (1 - off) * g.Low, setting * (1 + off) * g.High}
}

// Fifth is the torque in N·m below which the wrench must not be used.
func (w Wrench) Fifth() float64 { return lowestUse * w.High }
