// Package shown makes figures ready to be read: in a person's units, with their
// standing and where it comes from. It decides nothing about them.
package shown

import (
	"tidysump/internal/card"
	"tidysump/internal/wire"
)

// Standard is the standing of a limit that a published standard sets: it is
// neither the bike's own figure nor an estimate, so no card has it.
const Standard card.Standing = "standard"

// Figure is a figure ready to be read: its name and texts, and how far it can
// be trusted. A figure that is not known has no text, and Lookup says where to
// find it.
type Figure struct {
	Name     string   // word id
	Texts    []string // in the person's units first
	Standing card.Standing
	Source   string // title of the document
	Page     string
	Method   string // in the card's words, or a word id after "@"
	Kept     string
	Quote    string // the words of the manual that it comes from
	Lookup   string // word id; only for what is not known
	// Values fill a text that is a word id after "@".
	Values map[string]string
	// Low and High are the figure itself, in the unit that specs/ops.md names:
	// only where a calculation gives them.
	Low, High float64
}

// Members names the members of a shown figure.
func (s *Figure) Members(m *wire.Members) {
	m.String("name", &s.Name, wire.Required)
	wire.Texts(m, "texts", &s.Texts)
	wire.Text(m, "standing", &s.Standing)
	m.String("source", &s.Source)
	m.String("page", &s.Page)
	m.String("method", &s.Method)
	m.String("kept", &s.Kept)
	m.String("quote", &s.Quote)
	m.String("lookup", &s.Lookup)
	m.TextMap("values", &s.Values)
	m.Float("low", &s.Low)
	m.Float("high", &s.High)
}

// First is the text in the person's own units, or a word for "not known".
func (s Figure) First() string {
	if len(s.Texts) == 0 {
		return "@not-known"
	}
	return s.Texts[0]
}

// Estimate is an estimate by that method, a word id without "method.".
func Estimate(name, method string, texts ...string) Figure {
	return Figure{Name: "figure." + name, Texts: texts, Standing: card.Estimated, Method: "@method." + method}
}

// Unknown is a figure that is not known; lookup.<lookup> says where it stands.
func Unknown(name, lookup string) Figure {
	return Figure{Name: "figure." + name, Standing: card.Unknown, Lookup: "lookup." + lookup}
}
