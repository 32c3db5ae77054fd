// Package calc holds the calculations: each answers one question of a person, at
// the bench or about money. A calculation is a table of fields, from which the page
// draws its form, and a function from a filled-in form to an answer. The formulas
// stand in the mechanic's rooms, with their sources.
//
// The bench of today is plan.Bench; nothing here knows a job.
package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Calculation answers one question: what it asks a person for, and how it gets from
// a filled-in form to an answer.
type Calculation struct {
	Op        string // name of its operation
	fields    []field
	calculate func(f *Form, a *Answer)
	shape     []shape // that its answer may have
}

// atBench are the calculations in the order in which the page lists them.
var atBench = [...]Calculation{
	{"oil-suits", oilSuitsFields, oilSuits, oilSuitsShape},
	{"bottles", bottlesFields[:], bottles, bottlesShape},
	{"cool", coolFields[:], cool, coolShape},
	{"run-out", runOutFields[:], runOut, runOutShape},
	{"leak", leakFields[:], leak, leakShape},
	{"debris", debrisFields, judgeDebris, debrisShape},
	{"torque-check", torqueFields[:], torqueCheck, torqueShape},
	{"torque-guess", guessFields[:], torqueGuess, guessShape},
	{"wrench", wrenchFields[:], wrench, wrenchShape},
	{"o-ring", ringFields[:], matchRing, ringShape},
	{"wrench-check", wrenchCheckFields[:], wrenchCheck, wrenchCheckShape},
	{"turn", turnFields[:], turn, turnShape},
	{"first-fill", firstFields[:], firstFill, firstShape},
	{"level", levelFields[:], level, levelShape},
	{"oil-curve", oilCurveFields, oilCurve, oilCurveShape},
	{"oil-mix", oilMixFields, oilMix, oilMixShape},
	{"fuel", fuelFields, howMuchFuel, fuelShape},
	{"oil-pressure", oilPressureFields, oilPressure, oilPressureShape},
	{"oil-volume", oilVolumeFields, oilVolume, oilVolumeShape},
	{"convert", convertFields, convert, convertShape},
}

// caution gives the code of the finding that warns before one measures what it asks
// for; "" where measuring harms nobody.
func (c *Calculation) caution() string {
	switch c.Op {
	case "oil-pressure":
		return "engine-runs-hot"
	case "wrench-check":
		return "mass-falls"
	}
	return ""
}

// All lists the calculations: those at the bench, the bill and the ruler.
func All() []Calculation {
	return append(append([]Calculation{}, atBench[:]...), billing, ruler)
}

// Input gives an empty form to be read.
func (c *Calculation) Input() *Form { return newForm(c.fields) }

// Answer gives an answer with every member that it may have, all of them empty.
func (c *Calculation) Answer() *Answer { return emptyAnswer(c.shape) }

// Calculate gives the answer to a form that was read, or what refuses it. read is what
// the reading found.
func (c *Calculation) Calculate(f *Form, read []finding.Finding) (*Answer, []finding.Finding) {
	if !f.settle(read) {
		return nil, *f.list
	}
	a := &Answer{system: f.system}
	c.calculate(f, a)
	if finding.Refused(*f.list) {
		return nil, *f.list
	}
	a.notes = *f.list
	return a, nil
}

// Ask says for which forms one asks.
type Ask struct {
	System quantity.System
	Which  string // "bill" for the bill's form; else those at the bench
}

// Members names the members of the question.
func (i *Ask) Members(m *wire.Members) {
	wire.Text(m, "system", &i.System)
	m.String("of", &i.Which)
}

// Forms is what calculations ask for.
type Forms struct{ forms []formRecord }

// Members names the members of the forms.
func (f *Forms) Members(m *wire.Members) { wire.List(m, "forms", &f.forms) }

// FormsOf lists what calculations ask for.
func FormsOf(i *Ask) *Forms {
	of := atBench[:]
	if i.Which == billing.Op {
		of = []Calculation{billing}
	}
	list := make([]formRecord, len(of))
	for n := range of {
		list[n] = formRecord{of[n].Op, of[n].caution(), fieldRecords(of[n].fields, i.System)}
	}
	return &Forms{list}
}

func fieldRecords(fields []field, system quantity.System) []fieldRecord {
	list := make([]fieldRecord, len(fields))
	for n := range fields {
		d := &fields[n]
		list[n] = fieldRecord{field: *d, unit: quantity.Usual(d.kind, system), rows: fieldRecords(d.rows, system)}
	}
	return list
}

type formRecord struct {
	op      string
	caution string
	fields  []fieldRecord
}

func (r *formRecord) Members(m *wire.Members) {
	m.String("op", &r.op, wire.Required)
	m.String("caution", &r.caution)
	wire.List(m, "fields", &r.fields)
}

// fieldRecord is a field as the page draws it; unit is what a bare number is
// read in.
type fieldRecord struct {
	field field
	unit  string
	rows  []fieldRecord
}

func (r *fieldRecord) Members(m *wire.Members) {
	m.String("name", &r.field.name, wire.Required)
	wire.Text(m, "kind", &r.field.kind, wire.Required)
	m.Bool("needed", &r.field.needed)
	m.Bool("front", &r.field.front)
	m.String("unit", &r.unit)
	if r.field.kind == quantity.Share || m.Describing() { // it can be slid as well as typed: in percent
		low, high := 100*r.field.low, 100*r.field.high
		m.Float("low", &low)
		m.Float("high", &high)
	}
	letters := r.field.typed()
	m.Int("letters", &letters)
	m.Bool("lines", &r.field.lines)
	wire.Texts(m, "words", &r.field.words)
	m.String("family", &r.field.family)
	wire.List(m, "rows", &r.rows)
	m.String("on", &r.field.on)
	wire.Texts(m, "when", &r.field.when)
}
