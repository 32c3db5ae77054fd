package card

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

// Kinds of what a person writes into a card, besides quantities and quantity.Plain.
const (
	GradesEntry quantity.Kind = "grades"
	MarksEntry  quantity.Kind = "marks"
)

// Letters that are offered for what is written into a card: a line, and a remark of
// several lines.
const (
	EntryLetters  = 60
	RemarkLetters = 4000
)

// Entry is what a person wrote, as a card holds it: value and unit of a figure,
// or words.
type Entry struct {
	Figure Figure
	Words  []string
}

// ReadEntry reads what a person writes into a card. Of a quantity a bare number is
// in that unit, or where that is "" in the one usual for the person. The findings
// have no place.
func ReadEntry(kind quantity.Kind, text, unit string, system quantity.System) (e Entry, notes []finding.Finding) {
	switch kind {
	case GradesEntry, MarksEntry:
		return readLabel(kind, text)
	case quantity.Plain:
		e.Figure.Value, notes = (&quantity.Ask{}).ReadNumber(text)
		if finding.Refused(notes) {
			e.Figure.Value = 0
		}
	default:
		e.Figure, notes = ReadFigure(kind, text, unit, system)
	}
	return e, notes
}

// readLabel reads the grades or marks of a label, in whatever spelling.
func readLabel(kind quantity.Kind, text string) (e Entry, notes []finding.Finding) {
	for _, word := range oil.Words(text) {
		code := "unknown-grade"
		grade, ok := oil.ReadGrade(word)
		read := grade.String()
		if kind == MarksEntry {
			code = "unknown-mark"
			read, ok = oil.ReadMark(word)
		}
		if !ok {
			notes = append(notes, finding.Refusal(code, "", "text", finding.Clip(word))...)
			continue
		}
		if read != "" { // the word "JASO" by itself says nothing
			e.Words = append(e.Words, read)
		}
	}
	return e, notes
}
