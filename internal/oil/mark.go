package oil

import (
	"slices"
	"strings"
)

// Marks are the marks of JASO T903 for four-stroke motorcycle oils: MA, MA1
// and MA2 for wet clutches, MB for machines without one. MA1 and MA2 are the
// lower and the upper half of MA, by friction only. An oil's mark belongs to
// the edition it was tested by; the limits of the edition of 2023 are not
// known here, and none is needed to compare marks. ISO 24254 calls them EMA
// and EMB.
var Marks = []string{"MA", "MA1", "MA2", "MB"}

// None is what a bottle says that was read and carries no such mark.
const None = "NONE"

// WetClutchMark reports whether a JASO T903 mark is one for wet clutches.
func WetClutchMark(mark string) bool { return mark == "MA" || mark == "MA1" || mark == "MA2" }

// fits reports whether a mark is one that is asked for, or half of it: "a machine that
// asks for MA may take MA1 or MA2" (a maker's page).
func (j *judge) fits(mark string) bool {
	return slices.Contains(j.need.Marks, mark) || WetClutchMark(mark) && slices.Contains(j.need.Marks, "MA")
}

// mark judges the bottle's marks, for the bike and for the clutch. That an oil of low
// friction makes some clutches slip is published; that every one does is disputed.
func (j *judge) mark() (Weight, string) {
	marks := j.bottle.Marks
	fits := slices.ContainsFunc(marks, j.fits)
	switch {
	case slices.ContainsFunc(marks, func(mark string) bool { return slices.Contains(twoStroke, mark) }):
		return never, "two-stroke"
	case j.need.WetClutch:
		return j.wetMark(marks, fits)
	case len(j.need.Marks) == 0:
		return Noted, ""
	case len(marks) == 0:
		return unread, "mark-unknown"
	case marks[0] == None:
		return Limited, "mark-none"
	case fits:
		return Suits, "mark-fits"
	case slices.ContainsFunc(marks, WetClutchMark):
		return Noted, "mark-more-friction"
	}
	return Limited, "mark-less-friction"
}

// wetMark judges the marks where a clutch runs in the oil.
func (j *judge) wetMark(marks []string, fits bool) (Weight, string) {
	conserving := j.bottle.Conserving
	none := slices.Contains(marks, None)
	switch {
	case len(marks) == 0 && conserving:
		return unread, "conserving-unmarked"
	case len(marks) == 0:
		return unread, "mark-unknown-wet"
	case slices.Contains(marks, "MB"):
		return Unfit, "mark-low-friction"
	case none && conserving:
		return Unfit, "conserving-wet"
	case none && len(j.need.Marks) == 0:
		return Limited, "mark-none-wet"
	case none:
		return Unfit, "mark-none-asked"
	case !fits && len(j.need.Marks) > 0:
		return Limited, "mark-other-wet"
	case conserving:
		return Suits, "conserving-marked"
	}
	return Suits, "mark-fits"
}

// printed is marks or categories as a label has them.
func printed(words []string) string {
	if len(words) == 1 && words[0] == None {
		return ""
	}
	return strings.Join(words, "/")
}
