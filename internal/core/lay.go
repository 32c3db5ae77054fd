package core

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// layInput is a card, and the figures of a machine that follows it.
type layInput struct {
	card    card.Card
	figures []card.Own
}

func (i *layInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	wire.List(m, "figures", &i.figures)
}

// layAnswer is the card with those figures over its own.
type layAnswer struct {
	card     *card.Card
	places   []card.OwnPlace // what the machine may have of its own
	findings []finding.Finding
}

func (a *layAnswer) Members(m *wire.Members) {
	wire.Optional(m, "card", &a.card)
	wire.List(m, "places", &a.places)
	wire.Findings(m, "findings", &a.findings)
}

// layOver lays the figures over the card.
func layOver(i *layInput, read []finding.Finding) (*layAnswer, []finding.Finding) {
	c, list := card.Accept(&i.card)
	if c == nil {
		return nil, append(read, finding.Below("/card", list)...)
	}
	laid, list := card.Lay(c, i.figures)
	return &layAnswer{laid.Card(), card.OwnPlaces(c.Card()), finding.Below("/figures", list)}, nil
}
