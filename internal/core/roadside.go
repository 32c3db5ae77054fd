package core

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/roadside"
	"tidysump/internal/wire"
)

// roadsideInput is a problem of the table as it was met, or the door behind which one
// looks, and the bike, as far as it is known.
type roadsideInput struct {
	faultInput
	door   string
	name   string // of the bike
	card   *card.Card
	system quantity.System
}

func (i *roadsideInput) Members(m *wire.Members) {
	m.Object("table", &i.table)
	m.String("id", &i.id)
	m.String("door", &i.door)
	m.TextMap("answers", &i.answers)
	wire.Texts(m, "hand", &i.hand)
	m.String("name", &i.name)
	wire.Optional(m, "card", &i.card)
	wire.Text(m, "system", &i.system)
}

// roadsideAnswer is how the level of this bike is read, where that is asked, and what
// to say to whoever fetches it, where there is a problem.
type roadsideAnswer struct {
	levels []roadside.Level
	say    []roadside.Line
}

func (a *roadsideAnswer) Members(m *wire.Members) {
	wire.List(m, "levels", &a.levels)
	wire.List(m, "say", &a.say)
}

// besideBike says what one needs beside a bike that something is wrong with. A card that
// can't be used is as if there were none: the problem comes first.
func besideBike(i *roadsideInput, _ []finding.Finding) (*roadsideAnswer, []finding.Finding) {
	f := i.table.Find(i.id)
	if f == nil && i.id != "" {
		return nil, finding.Refusal("unknown-fault", "/id", "text", finding.Clip(i.id))
	}
	system, list := systemOf(i.system)
	if list != nil {
		return nil, list
	}
	var c *card.Checked
	if i.card != nil {
		c, _ = card.Accept(i.card)
	}
	a := &roadsideAnswer{}
	if c != nil && roadside.Asks(i.door, f) {
		a.levels = roadside.Levels(c, system)
	}
	if f != nil {
		seen := roadside.Seen{Table: &i.table, Fault: f, Answers: i.answers, Hand: i.hand, Bike: i.name, Card: c}
		a.say = seen.Message()
	}
	return a, nil
}
