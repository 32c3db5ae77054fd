package calc

import (
	"math"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Answer is what a calculation gives back: its members in the order in which
// they were put there. What is empty isn't written.
type Answer struct {
	system  quantity.System
	members []member
	notes   []finding.Finding
}

// content is what kind of thing a member of an answer holds.
type content int

const (
	holdsWord    content = iota // a word id, or a text
	holdsNumber                 // a bare number, for a program or a picture
	holdsMoney                  // in minor units
	holdsYes                    // true or false
	holdsTexts                  // several texts
	holdsPoints                 // numbers of a curve or an axis
	holdsFigures                // shown figures
	holdsRows                   // answers with members of their own
)

// shape is a member that an answer may have; rows are what each of its rows may.
type shape struct {
	name string
	content
	rows []shape
}

// member is a member that an answer has; it holds what its content says.
type member struct {
	name string
	content
	text    string
	number  float64
	whole   int
	yes     bool
	texts   []string
	points  []float64
	figures []shown.Figure
	rows    []Answer
}

// emptyAnswer has every member that an answer may have, and nothing in them: it
// lists them.
func emptyAnswer(shapes []shape) *Answer {
	a := &Answer{}
	for _, p := range shapes {
		a.members = append(a.members, member{name: p.name, content: p.content, rows: []Answer{*emptyAnswer(p.rows)}})
	}
	return a
}

// Members names the answer's members.
func (a *Answer) Members(m *wire.Members) {
	for n := range a.members {
		e := &a.members[n]
		switch e.content {
		case holdsWord:
			m.String(e.name, &e.text)
		case holdsNumber:
			m.Float(e.name, &e.number)
		case holdsMoney:
			m.Int(e.name, &e.whole)
		case holdsYes:
			m.Bool(e.name, &e.yes)
		case holdsTexts:
			wire.Texts(m, e.name, &e.texts)
		case holdsPoints:
			m.Floats(e.name, e.points)
		case holdsFigures:
			wire.List(m, e.name, &e.figures)
		case holdsRows:
			wire.List(m, e.name, &e.rows)
		}
	}
	wire.Findings(m, "notes", &a.notes)
}

// put gives the member of that name, and adds it if there is none yet.
func (a *Answer) put(name string, c content) *member {
	for n := range a.members {
		if a.members[n].name == name {
			return &a.members[n]
		}
	}
	a.members = append(a.members, member{name: name, content: c})
	return &a.members[len(a.members)-1]
}

// word puts a word id, or a text; verdict is the one that says what comes of it all.
func (a *Answer) word(name, id string) { a.put(name, holdsWord).text = id }

// number puts a bare number, for a program or a picture.
func (a *Answer) number(name string, v float64) { a.put(name, holdsNumber).number = v }

// whole puts an amount of money, in minor units.
func (a *Answer) whole(name string, amount int) { a.put(name, holdsMoney).whole = amount }

// yes puts true or false.
func (a *Answer) yes(name string, v bool) { a.put(name, holdsYes).yes = v }

// list puts texts.
func (a *Answer) list(name string, texts []string) { a.put(name, holdsTexts).texts = texts }

// points puts the numbers of a curve or an axis.
func (a *Answer) points(name string, list []float64) { a.put(name, holdsPoints).points = list }

// rows puts answers with members of their own.
func (a *Answer) rows(name string, list []Answer) { a.put(name, holdsRows).rows = list }

// method is how an estimate was made: a word id without "method.".
type method string

// estimate adds an estimate to a list of figures, and gives it for what is to be
// changed in it.
func (a *Answer) estimate(list, name string, by method, texts ...string) *shown.Figure {
	m := a.put(list, holdsFigures)
	m.figures = append(m.figures, shown.Estimate(name, string(by), texts...))
	return &m.figures[len(m.figures)-1]
}

// unknown adds a figure that can't be had; lookup.<name> says where to look.
func (a *Answer) unknown(list, name string) {
	m := a.put(list, holdsFigures)
	m.figures = append(m.figures, shown.Unknown(name, name))
}

// amount adds an estimate from low to high in the unit's base, shown in the
// person's units.
func (a *Answer) amount(list, name string, by method, low, high float64, unit string, digits int) *shown.Figure {
	return a.estimate(list, name, by, a.between(low, high, unit, digits)...)
}

// between prints a range, or one figure where its ends are the same.
func (a *Answer) between(low, high float64, unit string, digits int) []string {
	p := shown.Printer{System: a.system}
	return p.Between(low, high, unit, digits)
}

// exact prints what is no estimate, such as what to pour out of a bottle.
func (a *Answer) exact(base float64, unit string, digits int) []string {
	p := shown.Printer{System: a.system}
	return p.Exact(base, unit, digits)
}

// axis puts what stands along an axis of the picture, "x" or "y": places in the
// unit's base, and their texts.
func (a *Answer) axis(name, unit string, digits int, places ...float64) {
	a.points(name+"Ticks", places)
	texts := make([]string, len(places))
	for n, v := range places {
		texts[n] = a.between(v, v, unit, digits)[0]
	}
	a.list(name+"Texts", texts)
}

// plain prints a range that has the same unit, or none, in every system.
func plain(low, high float64, unit string, digits int) string {
	return quantity.Span(quantity.Number(low, digits), quantity.Number(high, digits)) + unit
}

// timeRange gives an estimated span of time in seconds in one unit: "90–150 min".
func timeRange(low, high float64) string { return shown.Time(low, high) }

// timeText is timeRange of one time.
func timeText(seconds float64) string { return shown.Time(seconds, seconds) }

// significant rounds to so many digits.
func significant(v, digits float64) float64 {
	if v == 0 {
		return 0
	}
	return round(v, math.Pow(10, digits-1-math.Floor(math.Log10(math.Abs(v)))))
}
