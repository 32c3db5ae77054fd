package core

import (
	"tidysump/internal/card"
	"tidysump/internal/find"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// findBikes says which bikes of a list are meant by what is typed, and what is asked of
// them.
func findBikes(s *find.Search, _ []finding.Finding) (*find.Found, []finding.Finding) {
	system, list := systemOf(s.System)
	if list != nil {
		return nil, list
	}
	s.System = system
	found := s.Find()
	return &found, nil
}

// askedInput is a card, and the things that are asked of it.
type askedInput struct {
	card   card.Card
	bench  plan.Bench
	things []find.Thing
}

func (i *askedInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	m.Object("bench", &i.bench)
	wire.Texts(m, "things", &i.things, wire.Required)
}

// askedAnswer are the answers.
type askedAnswer struct{ answers []find.Reply }

func (a *askedAnswer) Members(m *wire.Members) { wire.List(m, "answers", &a.answers) }

// askedOf answers what is asked of a card. A thing of which it knows no name asks for
// nothing.
func askedOf(i *askedInput, _ []finding.Finding) (*askedAnswer, []finding.Finding) {
	c, list := card.Accept(&i.card)
	if c == nil {
		return nil, finding.Below("/card", list)
	}
	a := &askedAnswer{}
	a.answers, list = find.Answers(c, i.things, i.bench)
	if list != nil {
		return nil, list
	}
	return a, nil
}
