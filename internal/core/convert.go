package core

import (
	"math"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// convertInput is a quantity as a person types it.
type convertInput struct {
	kind   quantity.Kind
	text   string
	system quantity.System
}

func (i *convertInput) Members(m *wire.Members) {
	wire.Text(m, "kind", &i.kind)
	m.String("text", &i.text, wire.Required)
	wire.Text(m, "system", &i.system)
}

// convertAnswer is that quantity in every unit of its kind.
type convertAnswer struct {
	kind  quantity.Kind
	base  float64
	texts []string
	notes []finding.Finding
}

func (a *convertAnswer) Members(m *wire.Members) {
	wire.Text(m, "kind", &a.kind)
	m.Float("base", &a.base)
	wire.Texts(m, "texts", &a.texts)
	wire.Findings(m, "notes", &a.notes)
}

func convert(in []byte) (wire.Record, []finding.Finding) {
	var i convertInput
	if list := wire.Read(in, &i); finding.Refused(list) {
		return nil, list
	}
	amount, list := quantity.Parse(i.kind, i.text, "", i.system)
	for n := range list {
		list[n].Where = "/text"
	}
	if math.IsNaN(amount.Base) {
		return nil, list
	}
	if amount.Base < 0 && amount.Kind != quantity.Temperature {
		return nil, []finding.Finding{{Code: "negative", Where: "/text", Grade: finding.Refuse,
			Values: map[string]string{"value": amount.Print(amount.Unit.ID)}}}
	}
	a := &convertAnswer{kind: amount.Kind, base: amount.Base, notes: list}
	for _, u := range quantity.Units {
		if u.Kind == amount.Kind {
			a.texts = append(a.texts, amount.Print(u.ID))
		}
	}
	return a, nil
}
