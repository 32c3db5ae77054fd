package core

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// takeInput is a card, however unfinished, and what was read on a page.
type takeInput struct {
	card     card.Card
	readings []place.Reading
	page     place.Page
	system   quantity.System
}

func (i *takeInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	wire.List(m, "readings", &i.readings, wire.Required)
	m.LongString("text", &i.page.Text)
	m.String("title", &i.page.Title)
	m.String("page", &i.page.Page)
	m.String("model", &i.page.Model)
	wire.Text(m, "system", &i.system)
}

// takeAnswer is the card with the readings, and what it still lacks.
type takeAnswer struct {
	card     card.Card
	at       []string
	findings []finding.Finding
	gaps     []plan.Gap
}

func (a *takeAnswer) Members(m *wire.Members) {
	m.Object("card", &a.card)
	wire.Texts(m, "at", &a.at)
	wire.Findings(m, "findings", &a.findings)
	wire.List(m, "gaps", &a.gaps)
}

// takeReadings takes readings of a page into a card.
func takeReadings(i *takeInput, read []finding.Finding) (*takeAnswer, []finding.Finding) {
	if !card.Readable(read) {
		return nil, read
	}
	system, list := systemOf(i.system)
	if list != nil {
		return nil, list
	}
	taken := place.Take(&i.card, i.readings, &i.page, system)
	a := &takeAnswer{card: *taken.Card, at: taken.At, findings: taken.Findings}
	if c, _ := card.Accept(taken.Card); c != nil {
		a.gaps = gapsOf(c, system)
	}
	return a, nil
}

// gapsOf is what a plan of all the oils of a card lacks.
func gapsOf(c *card.Checked, system quantity.System) []plan.Gap {
	bench := plan.Bench{System: system}
	for _, r := range c.Card().Circuits {
		bench.Circuits = append(bench.Circuits, r.ID)
	}
	p, _ := plan.Make(c, bench)
	if p == nil {
		return nil
	}
	return p.Gaps
}
