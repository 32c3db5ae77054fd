package pages

import (
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
)

// Calculations lists the calculations.
func (p *Pages) Calculations(ask Ask) Page {
	forms, _, status := p.forms(ask)
	return p.draw(ask, status, "calculations", func(s *speaker) shown {
		return shown{Title: s.t("bench.title", nil), Of: forms}
	})
}

func (p *Pages) forms(ask Ask) ([]form, []finding, int) {
	answer, found, status := call[struct{ Forms []form }](p.do, "forms", values{"system": p.systemOf(ask.Given)})
	return answer.Forms, found, status
}

// calculated is a calculation: its form as it was filled in, and what came of it.
type calculated struct {
	Limits limits
	Form   form
	Front  []control
	More   []control
	Answer *worked
	Found  []finding // what is beside no field
}

// control is a field as it is drawn.
type control struct {
	field
	ID, Path    string // the name in the form
	Label, Hint string
	Value       string
	Found       []finding
	Rows        [][]control // of a list
}

// Calculation is one calculation, worked out once something was given.
func (p *Pages) Calculation(ask Ask) Page {
	forms, _, status := p.forms(ask)
	at := slices.IndexFunc(forms, func(f form) bool { return f.Op == ask.Name })
	if at < 0 {
		return p.Missing(ask)
	}
	v := calculated{Limits: p.limits(), Form: forms[at]}
	given := asked(v.Form.Fields, ask.Given)
	var found []finding
	if given != nil {
		given["system"] = p.systemOf(ask.Given)
		var answer worked
		if answer, found, status = call[worked](p.do, ask.Name, given); status == http.StatusOK {
			v.Answer = &answer
		}
	}
	placed := map[string]bool{}
	return p.draw(ask, status, "calculation", func(s *speaker) shown {
		for _, d := range v.Form.Fields {
			if d.Kind == "taps" || !isAsked(d, ask.Given) {
				continue
			}
			c := s.control(v.Form.Op, d, "", "", ask.Given, found, placed)
			if d.Needed || d.Front {
				v.Front = append(v.Front, c)
			} else {
				v.More = append(v.More, c)
			}
		}
		for _, f := range found {
			if !placed[f.Where] {
				v.Found = append(v.Found, f)
			}
		}
		return shown{Title: s.t("calc."+v.Form.Op, nil), Of: v}
	})
}

// isAsked reports whether a field is asked for, as things stand.
func isAsked(d field, given url.Values) bool {
	return d.On == "" || slices.Contains(d.When, given.Get(d.On))
}

// asked makes the input of what was given to the fields that are asked for, nil where
// nothing was.
func asked(fields []field, given url.Values) map[string]any {
	in := map[string]any{}
	for _, d := range fields {
		if !isAsked(d, given) {
			continue
		}
		switch value := given.Get(d.Name); {
		case d.Kind == "list":
			var rows []map[string]any
			for n := range rowsOf(d, given) {
				if row := asked(d.Rows, within(given, d.Name, n)); row != nil {
					rows = append(rows, row)
				}
			}
			if rows != nil {
				in[d.Name] = rows
			}
		case value == "":
		case d.Kind == "yes":
			in[d.Name] = true
		default:
			in[d.Name] = value
		}
	}
	if len(in) == 0 {
		return nil
	}
	return in
}

// mostRows is the most rows of a list that a page takes.
const mostRows = 40

// rowsOf is how many rows of a list were sent.
func rowsOf(d field, given url.Values) (most int) {
	for name := range given {
		rest, is := strings.CutPrefix(name, d.Name+".")
		number, _, _ := strings.Cut(rest, ".")
		if n, err := strconv.Atoi(number); is && err == nil && n >= 0 && n < mostRows {
			most = max(most, n+1)
		}
	}
	return most
}

// within is what was given for a row of a list.
func within(given url.Values, name string, n int) url.Values {
	row := url.Values{}
	stem := fmt.Sprintf("%s.%d.", name, n)
	for path, list := range given {
		if rest, is := strings.CutPrefix(path, stem); is {
			row[rest] = list
		}
	}
	return row
}

// control draws a field. where is the place of it in the input, path its name in the form.
func (s *speaker) control(op string, d field, where, path string, given url.Values, found []finding, placed map[string]bool) control {
	word := "ask." + op + "." + d.Name
	if !s.has(word) {
		word = "ask." + d.Name
	}
	where += "/" + d.Name
	c := control{field: d, Path: path + d.Name, Label: s.t(word, nil), Value: given.Get(d.Name)}
	c.ID = "field-" + strings.ReplaceAll(c.Path, ".", "-")
	switch {
	case s.has(word + ".hint"):
		c.Hint = s.t("bench.like", values{"example": s.t(word+".hint", nil)})
	case d.Unit != "":
		c.Hint = s.t("bench.unit", values{"unit": d.Unit})
	}
	for _, f := range found {
		if f.Where == where {
			if f.Values["name"] == d.Name { // the field is named by its label
				f.Values = maps.Clone(f.Values)
				f.Values["name"] = c.Label
			}
			c.Found = append(c.Found, f)
			placed[where] = true
		}
	}
	if d.Kind != "list" {
		return c
	}
	full := 0 // rows that were empty are left out of the input, and count for no place in it
	for n := range min(rowsOf(d, given)+2, mostRows) {
		row := within(given, d.Name, n)
		at := "none"
		if asked(d.Rows, row) != nil {
			at = strconv.Itoa(full)
			full++
		} else if n >= full+2 {
			continue // two empty ones are room enough
		}
		var list []control
		for _, of := range d.Rows {
			list = append(list, s.control(op, of, where+"/"+at, fmt.Sprintf("%s.%d.", c.Path, n), row, found, placed))
		}
		c.Rows = append(c.Rows, list)
	}
	return c
}

// Loud are the notes of an answer that come before all else.
func (w worked) Loud() []finding {
	return slices.DeleteFunc(slices.Clone(w.Notes), func(f finding) bool { return f.Grade != "doubt" })
}

// Quiet are the others.
func (w worked) Quiet() []finding {
	return slices.DeleteFunc(slices.Clone(w.Notes), func(f finding) bool { return f.Grade == "doubt" })
}

// figures are a list of an answer, with the word for it.
type figures struct {
	Word string
	List []figure
}

// Lists are the lists of figures that an answer may have, in the order of reading.
func (w worked) Lists() []figures {
	return []figures{{"bench.before", w.Before}, {"bench.after", w.After}, {"", w.Figures}, {"bench.touch", w.Touch}, {"bench.assumed", w.Assumed}}
}
