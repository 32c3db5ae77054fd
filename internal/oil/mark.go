package oil

import (
	"slices"
	"strings"
)

// Marks are the marks of JASO T903 for four-stroke motorcycle oils: MA, MA1
// and MA2 for wet clutches, MB for machines without one. MA1 and MA2 are the
// lower and the upper half of MA, by friction only. An oil's mark belongs to
// the edition it was tested by; the limits of the edition of 2023 are not
// known here, and none is needed to compare marks.
var Marks = []string{"MA", "MA1", "MA2", "MB"}

// None is what a bottle says that was read and carries no such mark.
const None = "NONE"

// WetClutchMark reports whether a JASO T903 mark is one for wet clutches.
func WetClutchMark(mark string) bool { return mark == "MA" || mark == "MA1" || mark == "MA2" }

// twoStroke reports whether a mark is one of JASO M345, FA to FD (from memory):
// oils to be burnt.
func twoStroke(mark string) bool {
	return len(mark) == 2 && mark[0] == 'F' && mark[1] >= 'A' && mark[1] <= 'D'
}

// ReadMark reads a mark as people write it: "JASO MA2", "ma-2", "none"; "" stays
// "", which means not known. It reports false for a mark that JASO has not.
func ReadMark(text string) (string, bool) {
	s := strings.TrimPrefix(squash(text), "JASO")
	return s, s == "" || s == None || twoStroke(s) || slices.Contains(Marks, s)
}

// Words parts what stands on a label, or in a list of it: at blanks and commas,
// without the names of the standards.
func Words(text string) []string {
	var list []string
	text = strings.ReplaceAll(text, ",", " ")
	for text != "" {
		var word string
		word, text, _ = strings.Cut(text, " ")
		if word != "" && word != "SAE" && word != "JASO" && word != "API" {
			list = append(list, word)
		}
	}
	return list
}

// mark judges the bottle's JASO mark, for the bike and for the clutch. That
// an oil of low friction makes some clutches slip is published; that every one
// does is disputed.
func (j *judge) mark() (Weight, string) {
	mark := j.bottle.Mark
	fits := slices.Contains(j.need.Marks, mark) || WetClutchMark(mark) && slices.Contains(j.need.Marks, "MA")
	switch {
	case twoStroke(mark):
		return never, "two-stroke"
	case j.need.WetClutch:
		return j.wetMark(mark, fits)
	case len(j.need.Marks) == 0:
		return Noted, ""
	case mark == "":
		return Open, "mark-unknown"
	case mark == None:
		return Limited, "mark-none"
	case fits:
		return Suits, "mark-fits"
	case WetClutchMark(mark):
		return Noted, "mark-more-friction"
	}
	return Limited, "mark-less-friction"
}

// wetMark judges the mark where a clutch runs in the oil.
func (j *judge) wetMark(mark string, fits bool) (Weight, string) {
	conserving := j.bottle.Conserving
	switch {
	case mark == "" && conserving:
		return Open, "conserving-unmarked"
	case mark == "":
		return Open, "mark-unknown-wet"
	case mark == "MB":
		return Unfit, "mark-low-friction"
	case mark == None && conserving:
		return Unfit, "conserving-wet"
	case mark == None && len(j.need.Marks) == 0:
		return Limited, "mark-none-wet"
	case mark == None:
		return Unfit, "mark-none-asked"
	case !fits && len(j.need.Marks) > 0:
		return Limited, "mark-other-wet"
	case conserving:
		return Suits, "conserving-marked"
	}
	return Suits, "mark-fits"
}
