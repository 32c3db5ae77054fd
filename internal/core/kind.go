package core

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/wire"
)

// kindInput is a card, however unfinished, and what somebody saw of a filter of it.
type kindInput struct {
	card   card.Card
	filter string
	kind   card.FilterKind
}

func (i *kindInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	m.String("filter", &i.filter, wire.Required)
	wire.Text(m, "kind", &i.kind, wire.Required)
}

// kindAnswer is the card with a filter of that kind.
type kindAnswer struct{ card *card.Card }

func (a *kindAnswer) Members(m *wire.Members) { wire.Optional(m, "card", &a.card) }

// filterKind says of what kind a filter of a card is.
func filterKind(i *kindInput, read []finding.Finding) (*kindAnswer, []finding.Finding) {
	if !card.Readable(read) {
		return nil, read
	}
	c, list := place.OfKind(&i.card, i.filter, i.kind)
	if c == nil {
		return nil, list
	}
	return &kindAnswer{c}, nil
}
