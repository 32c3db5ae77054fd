package core

import (
	"tidysump/internal/card"
	"tidysump/internal/changes"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// changesInput are two texts of one card, the earlier one first.
type changesInput struct {
	from, to card.Card
	system   quantity.System
}

func (i *changesInput) Members(m *wire.Members) {
	m.Object("from", &i.from, wire.Required)
	m.Object("to", &i.to, wire.Required)
	wire.Text(m, "system", &i.system)
}

// changesAnswer is where they differ.
type changesAnswer struct{ changes []changes.Change }

func (a *changesAnswer) Members(m *wire.Members) { wire.List(m, "changes", &a.changes) }

// cardChanges says where two cards differ. Neither is checked: what is to be told of may
// be what is wrong with one.
func cardChanges(i *changesInput, _ []finding.Finding) (*changesAnswer, []finding.Finding) {
	system, list := systemOf(i.system)
	if list != nil {
		return nil, list
	}
	return &changesAnswer{changes.Between(&i.from, &i.to, system)}, nil
}
