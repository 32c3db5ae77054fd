package card

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

// Kinds of what a person writes into a card, besides quantities and quantity.Plain.
const (
	GradesEntry  quantity.Kind = "grades"
	GradeEntry   quantity.Kind = "grade" // one of them
	MarksEntry   quantity.Kind = "marks"
	ServiceEntry quantity.Kind = "service" // API categories
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
	case GradesEntry, GradeEntry, MarksEntry, ServiceEntry:
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

// readLabel reads grades, marks or categories as labels and manuals have them. What is
// understood and belongs elsewhere is refused as well: nothing is left out unsaid.
func readLabel(kind quantity.Kind, text string) (e Entry, notes []finding.Finding) {
	text = quantity.PlainDigits(text)
	l := oil.ReadLabel(text)
	var grades []string
	for _, g := range l.Grades {
		grades = append(grades, g.String())
	}
	code, elsewhere := "unknown-grade", slices.Concat(l.Marks, l.Service, l.Other)
	e.Words = grades
	switch kind {
	case MarksEntry:
		code, e.Words, elsewhere = "unknown-mark", l.Marks, slices.Concat(grades, l.Service, l.Other)
	case ServiceEntry:
		code, e.Words, elsewhere = "unknown-service", l.Service, slices.Concat(grades, l.Marks, l.Other)
	}
	if l.Unread != "" {
		elsewhere = []string{l.Unread}
	}
	if l.None {
		elsewhere = []string{text}
	}
	if len(elsewhere) > 0 {
		notes = finding.Refusal(code, "", "text", finding.Clip(strings.Join(elsewhere, ", ")))
	} else if kind == GradeEntry && len(e.Words) > 1 {
		notes = finding.Refusal("several-grades", "", "grade", "SAE "+e.Words[0], "other", "SAE "+e.Words[1])
	}
	return e, notes
}
