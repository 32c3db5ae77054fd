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

// member is a named part of an answer; it holds one of these.
type member struct {
	name    string
	text    string
	number  float64
	whole   int // of money: minor units
	yes     bool
	texts   []string
	points  []float64
	figures []shown.Figure
	rows    []Answer
}

// Members names the answer's members.
func (a *Answer) Members(m *wire.Members) {
	for n := range a.members {
		e := &a.members[n]
		m.String(e.name, &e.text)
		m.Float(e.name, &e.number)
		m.Int(e.name, &e.whole)
		m.Bool(e.name, &e.yes)
		wire.Texts(m, e.name, &e.texts)
		m.Floats(e.name, e.points)
		wire.List(m, e.name, &e.figures)
		wire.List(m, e.name, &e.rows)
	}
	wire.Findings(m, "notes", &a.notes)
}

// put gives the member of that name, and adds it if there is none yet.
func (a *Answer) put(name string) *member {
	for n := range a.members {
		if a.members[n].name == name {
			return &a.members[n]
		}
	}
	a.members = append(a.members, member{name: name})
	return &a.members[len(a.members)-1]
}

// word puts a word id, or a text; verdict is the one that says what comes of it all.
func (a *Answer) word(name, id string) { a.put(name).text = id }

// number puts a bare number, for a program or a picture.
func (a *Answer) number(name string, v float64) { a.put(name).number = v }

// method is how an estimate was made: a word id without "method.".
type method string

// estimate adds an estimate to a list of figures, and gives it for what is to be
// changed in it.
func (a *Answer) estimate(list, name string, by method, texts ...string) *shown.Figure {
	m := a.put(list)
	m.figures = append(m.figures, shown.Estimate(name, string(by), texts...))
	return &m.figures[len(m.figures)-1]
}

// unknown adds a figure that can't be had; lookup.<name> says where to look.
func (a *Answer) unknown(list, name string) {
	m := a.put(list)
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

// axis puts what stands along an axis of the picture, "x" or "y": places in the
// unit's base, and their texts.
func (a *Answer) axis(name, unit string, digits int, places ...float64) {
	a.put(name + "Ticks").points = places
	texts := make([]string, len(places))
	for n, v := range places {
		texts[n] = a.between(v, v, unit, digits)[0]
	}
	a.put(name + "Texts").texts = texts
}

// plain prints a range that has the same unit, or none, in every system.
func plain(low, high float64, unit string, digits int) string {
	text := quantity.Number(low, digits)
	if upper := quantity.Number(high, digits); upper != text {
		text += "–" + upper
	}
	return text + unit
}

// timeText gives a span of time in the unit that reads best.
func timeText(seconds float64) string {
	switch {
	case seconds >= 3600:
		return plain(seconds/3600, seconds/3600, " h", 2)
	case seconds >= 60:
		return plain(seconds/60, seconds/60, " min", 2)
	}
	return plain(seconds, seconds, " s", 2)
}

// significant rounds to so many digits.
func significant(v, digits float64) float64 {
	if v == 0 {
		return 0
	}
	return round(v, math.Pow(10, digits-1-math.Floor(math.Log10(math.Abs(v)))))
}
