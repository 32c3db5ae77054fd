package job

import (
	"tidysump/internal/card"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Shown is a figure ready to be read: its name and texts, and how far it can
// be trusted. A figure that is not known has no text, and Lookup says where to
// find it.
type Shown struct {
	Name     string   // word id
	Texts    []string // in the person's units first
	Standing card.Standing
	Source   string // title of the document
	Page     string
	Method   string // in the card's words, or a word id after "@"
	Kept     string
	Lookup   string // word id; only for what is not known
	// Low and High are the figure itself, in the unit that specs/ops.md names:
	// only where a calculation gives them.
	Low, High float64
}

// Members names the members of a shown figure.
func (s *Shown) Members(m *wire.Members) {
	m.String("name", &s.Name)
	wire.Texts(m, "texts", &s.Texts)
	wire.Text(m, "standing", &s.Standing)
	m.String("source", &s.Source)
	m.String("page", &s.Page)
	m.String("method", &s.Method)
	m.String("kept", &s.Kept)
	m.String("lookup", &s.Lookup)
	m.Float("low", &s.Low)
	m.Float("high", &s.High)
}

// First is the text in the person's own units, or a word for "not known".
func (s Shown) First() string {
	if len(s.Texts) == 0 {
		return "@not-known"
	}
	return s.Texts[0]
}

// show prepares a card's figure. lookup is the word id of the place in a
// manual where such a figure stands.
func (p *planner) show(name string, f *card.Figure, lookup string) Shown {
	s := Shown{Name: "figure." + name, Standing: card.Unknown, Lookup: "lookup." + lookup}
	if f == nil {
		return s
	}
	s.Source, s.Page, s.Method, s.Kept = p.title(f.Source), f.Page, f.Method, f.Kept
	low, ok := f.Amount()
	if !ok {
		return s
	}
	s.Standing, s.Lookup = f.Standing, ""
	s.Texts = low.Show(p.bench.System)
	if high, ranged := f.Upper(); ranged {
		s.Texts = quantity.Join(s.Texts, high.Show(p.bench.System))
	}
	return s
}

func texts(kind quantity.Kind, base float64, unitID string, digits int, system quantity.System) []string {
	u, _ := quantity.Find(unitID)
	return quantity.Amount{Kind: kind, Base: base, Unit: u.ID, Digits: digits}.Show(system)
}

func (p *planner) title(source string) string {
	for _, s := range p.card.Sources {
		if s.ID == source {
			return s.Title
		}
	}
	return ""
}
