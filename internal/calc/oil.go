package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/shown"
)

// Viscosities in mm²/s that are taken: wide bounds, against slips.
const (
	leastThick = 1
	mostThick  = 1e5
)

// grade reads the one grade out of a field; the zero Grade when there is none.
func (f *Form) grade(name string) oil.Grade {
	if !f.has(name) {
		return oil.Grade{}
	}
	l := f.label(name, "unknown-grade")
	if len(l.Grades) == 0 && l.Unread == "" {
		f.reject("unknown-grade", name, "text", finding.Clip(f.of(name).text))
	}
	return f.oneGrade(name, l.Grades)
}

// oneGrade refuses several grades where an oil has one.
func (f *Form) oneGrade(name string, grades []oil.Grade) oil.Grade {
	switch {
	case len(grades) == 0:
		return oil.Grade{}
	case len(grades) > 1:
		f.reject("several-grades", name, "grade", grades[0].Designation(), "other", grades[1].Designation())
	}
	return grades[0]
}

// label reads a field in which a label stands, or a part of one, and refuses what it
// doesn't understand with that code.
func (f *Form) label(name, code string) oil.Label {
	l := oil.ReadLabel(f.of(name).text)
	if l.Unread != "" {
		f.reject(code, name, "text", finding.Clip(l.Unread))
	}
	return l
}

// unused says that one field was not used, since another says more.
func (f *Form) unused(name, label, better string) {
	f.say(finding.Note, "not-used", name, "of", label, "better", better)
}

// checkGrade doubts a grade that has no viscosity from low to high at 100 °C.
func (f *Form) checkGrade(grade oil.Grade, low, high float64) {
	if b, ok := grade.Band(); ok && !b.Holds(low, high) {
		f.say(finding.Doubt, "oil-not-the-grade", "", "grade", grade.Designation())
	}
}

// figureAt adds a figure that holds at a temperature in °C.
func (a *Answer) figureAt(name string, by method, low, high float64, unit string, celsius float64, digits int) *shown.Figure {
	text := plain(low, high, unit+" ("+a.between(celsius, celsius, "°C", 3)[0]+")", digits)
	return ends(a.estimate("figures", name, by, text), low, high)
}

// figure adds a figure to a list, with its ends.
func (a *Answer) figure(list, name string, by method, low, high float64, unit string) *shown.Figure {
	return ends(a.estimate(list, name, by, plain(low, high, unit, 3)), low, high)
}

// worked adds an amount that was worked out, with its ends.
func (a *Answer) computed(name string, by method, low, high float64, unit string) {
	ends(a.amount("figures", name, by, low, high, unit, 3), low, high)
}

func ends(s *shown.Figure, low, high float64) *shown.Figure {
	s.Low, s.High = significant(low, 6), significant(high, 6)
	return s
}
