package core

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// entryInput is what a person writes into a card: a quantity of that kind, a
// "number", "grades" or "marks".
type entryInput struct {
	kind       quantity.Kind
	text, unit string
	system     quantity.System
}

func (i *entryInput) Members(m *wire.Members) {
	wire.Text(m, "kind", &i.kind, wire.Required)
	m.String("text", &i.text, wire.Required)
	m.String("unit", &i.unit)
	wire.Text(m, "system", &i.system)
}

// entryAnswer is it as a card holds it: value and unit of a figure, or words.
type entryAnswer struct {
	figure card.Figure
	words  []string
	notes  []finding.Finding
}

func (a *entryAnswer) Members(m *wire.Members) {
	m.Float("value", &a.figure.Value)
	m.Float("to", &a.figure.To)
	m.String("unit", &a.figure.Unit)
	wire.Texts(m, "words", &a.words)
	wire.Findings(m, "notes", &a.notes)
}

// readEntry reads what goes into a card.
func readEntry(in []byte) (wire.Record, []finding.Finding) {
	var i entryInput
	if list := wire.Read(in, &i); finding.Refused(list) {
		return nil, list
	}
	a := &entryAnswer{}
	switch i.kind {
	case "grades", "marks":
		a.read(string(i.kind), i.text)
	case aNumber:
		v, ok := quantity.ParseNumber(i.text)
		if a.figure.Value = v; !ok {
			a.notes = []finding.Finding{{Code: "not-a-number", Grade: finding.Refuse, Values: finding.Values("text", clip(i.text))}}
		}
	default:
		a.figure, a.notes = card.ReadFigure(i.kind, i.text, i.unit, i.system)
	}
	for n := range a.notes {
		a.notes[n].Where = "/text"
	}
	if finding.Refused(a.notes) {
		return nil, a.notes
	}
	return a, nil
}

// read reads the grades or marks of a label, in whatever spelling.
func (a *entryAnswer) read(kind, text string) {
	for _, word := range oil.Words(text) {
		code, read := "unknown-grade", word
		grade, ok := oil.ReadGrade(word)
		if read = grade.String(); kind == "marks" {
			code = "unknown-mark"
			read, ok = oil.ReadMark(word)
		}
		if !ok {
			a.notes = append(a.notes, finding.Finding{Code: code, Grade: finding.Refuse,
				Values: finding.Values("text", clip(word))})
			continue
		}
		if read != "" { // the word "JASO" by itself says nothing
			a.words = append(a.words, read)
		}
	}
}
