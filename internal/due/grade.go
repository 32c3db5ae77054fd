package due

// Grade is how urgent a change of oil is.
type Grade int

// The grades, the least urgent first. Up to a tenth of the interval too late is
// fine, up to a half is pointed out, more asks for a harder look at what comes out, and
// more than the interval again for a second change soon after: common practice,
// no source, and so are the nine tenths from which it is soon.
const (
	NotYet    Grade = iota
	Soon            // from 9/10 of the interval, or within SoonDays
	Likely          // nothing read says so, but by the usual pace it is due
	Now             // reached, up to a tenth over
	Over            // up to half an interval over
	FarOver         // up to a whole interval over
	TwiceOver       // more
)

// SoonDays is how many days ahead of a day an oil is due soon: common practice,
// no source.
const SoonDays = 30

// GradeOf grades the greatest share used of distance, hours and time.
func GradeOf(share float64) Grade {
	switch {
	case share < 0.9:
		return NotYet
	case share < 1:
		return Soon
	case share <= 1.1:
		return Now
	case share <= 1.5:
		return Over
	case share <= 2:
		return FarOver
	}
	return TwiceOver
}
