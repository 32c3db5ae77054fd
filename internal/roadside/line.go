// Package roadside says what one needs beside a bike that something is wrong with: how
// the level of just this bike is read, and what whoever fetches it has to know.
//
// It says nothing that the card or the person did not: what is not known is said to be
// so, since a level that is read in another way can be wrong by all between its marks.
package roadside

import (
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Line is a sentence to be said.
type Line struct {
	Word    string            // word id
	Values  map[string]string // fill it; one that begins with "@" is a word id itself
	Unknown bool              // it says that something is not known
}

// Members names the line's members.
func (l *Line) Members(m *wire.Members) {
	m.String("word", &l.Word, wire.Required)
	m.TextMap("values", &l.Values)
	m.Bool("unknown", &l.Unknown)
}

// say makes a line of a word id, and names and texts in turn.
func say(word string, values ...string) Line {
	return Line{Word: word, Values: finding.Values(values...)}
}

// unknown makes a line that says that something is not known.
func unknown(word string) Line { return Line{Word: word, Unknown: true} }
