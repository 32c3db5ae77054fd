package place

import (
	"strings"
	"unicode/utf8"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Reading is a figure or word that was read on a page.
type Reading struct {
	What  What
	Text  string // "30 N·m", "26–34 N·m", "cartridge"
	Quote Span
	Model string // of several models on one page, the one that it is of
	// Over: the person chose it over what the card says.
	Over  bool
	Stand Stand // as Judge is to know it
}

// Members names the members of a reading. One that is handed on as it was read has more.
func (r *Reading) Members(m *wire.Members) {
	m.Lenient()
	wire.Text(m, "what", &r.What, wire.Required)
	m.String("text", &r.Text)
	m.Object("quote", &r.Quote)
	m.String("model", &r.Model)
	m.Bool("over", &r.Over)
	wire.Text(m, "stands", &r.Stand)
}

// Span is a piece of a page's text: bytes of its UTF-8, To not included.
type Span struct{ From, To int }

// Members names the members of a piece.
func (s *Span) Members(m *wire.Members) {
	m.Offset("from", &s.From)
	m.Offset("to", &s.To)
}

// Page is what readings are taken from.
type Page struct {
	Text  string
	Title string // of the document; empty for the first that the card names
	Page  string // its number or name
	Model string // the one of several that the bike is; empty for any
}

// mostWords is how many letters of a page are kept beside what was read there: a row of a
// table or a sentence.
const mostWords = 300

// words gives a piece of the page's text, blanks taken for one; false where there is no
// such piece. No piece at all is no words.
func (p *Page) words(s Span) (string, bool) {
	if s == (Span{}) {
		return "", true
	}
	if s.From < 0 || s.To < s.From || s.To > len(p.Text) || !border(p.Text, s.From) || !border(p.Text, s.To) {
		return "", false
	}
	return finding.Cut(strings.Join(strings.Fields(p.Text[s.From:s.To]), " "), mostWords), true
}

// border reports whether no letter of a text is cut there.
func border(text string, at int) bool { return at == len(text) || utf8.RuneStart(text[at]) }
