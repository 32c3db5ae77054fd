package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// calculation answers one question that a person has at the bench.
type calculation struct {
	op     string
	fields []field
	work   func(f *form, a *answer)
}

// calculations in the order in which the page lists them.
var calculations = []calculation{
	{"oil-suits", oilSuitsFields, oilSuits},
	{"bottles", bottlesFields[:], bottles},
	{"cool", coolFields[:], cool},
	{"run-out", runOutFields[:], runOut},
	{"debris", debrisFields, judgeDebris},
	{"torque-check", torqueFields[:], torqueCheck},
	{"torque-guess", guessFields[:], torqueGuess},
	{"wrench", wrenchFields[:], wrench},
	{"turn", turnFields[:], turn},
	{"first-fill", firstFields[:], firstFill},
	{"level", levelFields[:], level},
	{"oil-curve", oilCurveFields, oilCurve},
	{"oil-mix", oilMixFields, oilMix},
	{"oil-volume", oilVolumeFields, oilVolume},
	{"convert", convertFields, convert},
}

// do reads the input, works and gives the answer.
func (c *calculation) do(in []byte) (wire.Record, []finding.Finding) {
	f, ok := fillIn(in, c.fields)
	if !ok {
		return nil, *f.list
	}
	a := &answer{system: f.system}
	c.work(f, a)
	if finding.Refused(*f.list) {
		return nil, *f.list
	}
	a.notes = *f.list
	return a, nil
}

// forms lists the calculations and what each asks for.
func forms(in []byte) (wire.Record, []finding.Finding) {
	var i formsInput
	if list := wire.Read(in, &i); finding.Refused(list) {
		return nil, list
	}
	return &i, nil
}

// formsInput is a system of units, and the answer made of it.
type formsInput struct {
	system quantity.System
	of     string // "bill" for the bill's form; else the calculations'
}

func (i *formsInput) Members(m *wire.Members) {
	if m.Reading() {
		wire.Text(m, "system", &i.system)
		m.String("of", &i.of)
		return
	}
	of := calculations
	if i.of == billing.op {
		of = []calculation{billing}
	}
	list := make([]formRecord, len(of))
	for n := range of {
		list[n] = formRecord{of[n].op, i.fieldRecords(of[n].fields)}
	}
	wire.List(m, "forms", &list)
}

func (i *formsInput) fieldRecords(fields []field) []fieldRecord {
	list := make([]fieldRecord, len(fields))
	for n := range fields {
		d := &fields[n]
		list[n] = fieldRecord{field: d, unit: quantity.Usual(d.kind, i.system), rows: i.fieldRecords(d.rows)}
	}
	return list
}

type formRecord struct {
	op     string
	fields []fieldRecord
}

func (r *formRecord) Members(m *wire.Members) {
	m.String("op", &r.op)
	wire.List(m, "fields", &r.fields)
}

// fieldRecord is a field as the page draws it; unit is what a bare number is
// read in.
type fieldRecord struct {
	field *field
	unit  string
	rows  []fieldRecord
}

func (r *fieldRecord) Members(m *wire.Members) {
	m.String("name", &r.field.name)
	wire.Text(m, "kind", &r.field.kind)
	m.Bool("needed", &r.field.needed)
	m.Bool("front", &r.field.front)
	m.String("unit", &r.unit)
	if r.field.kind == quantity.Share { // it can be slid as well as typed: in percent
		low, high := 100*r.field.low, 100*r.field.high
		m.Float("low", &low)
		m.Float("high", &high)
	}
	wire.Texts(m, "words", &r.field.words)
	m.String("family", &r.field.family)
	wire.List(m, "rows", &r.rows)
	m.String("on", &r.field.on)
	wire.Texts(m, "when", &r.field.when)
}
