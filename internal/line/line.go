// Package line reads one line that is typed or said at the bench: "25 Nm, wrench with 60
// mm adapter". It tells which calculation is meant, which figure goes into which of its
// fields, and what it did not understand. Its words are data (specs/terms): those of a
// calculation are calc.OP, those of its fields ask.OP.FIELD or ask.FIELD, those of a
// choice the word id of it. It fills in nothing by guess: where a figure could go into
// several fields, it asks.
package line

import (
	"slices"

	"tidysump/internal/calc"
	"tidysump/internal/finding"
	"tidysump/internal/manual"
	"tidysump/internal/place"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Ask is a line and what is known beside it.
type Ask struct {
	Text     string
	System   quantity.System
	Language string     // in which it most likely is
	Op       string     // the calculation that the person chose; "" leaves it open
	Put      []Put      // what the person said of figures that were asked for
	Kept     *calc.Form // the wrenches and bottles that the person has
}

// MostText is the most bytes of a line: more than anybody says in one.
const MostText = 2000

// Put says into which field a figure goes: the one that is quoted.
type Put struct {
	Quote place.Span
	List  string
	Field string
	Text  string // with its unit; "" where the line has it
}

// Members names the members of the question.
func (a *Ask) Members(m *wire.Members) {
	m.String("text", &a.Text, wire.Required)
	wire.Text(m, "system", &a.System)
	m.String("language", &a.Language)
	m.String("op", &a.Op)
	wire.List(m, "put", &a.Put)
	a.Kept = calc.Shelf()
	m.Object("kept", a.Kept)
}

// Members names the members of what the person said.
func (p *Put) Members(m *wire.Members) {
	m.Object("quote", &p.Quote, wire.Required)
	m.String("list", &p.List)
	m.String("field", &p.Field, wire.Required)
	m.String("text", &p.Text)
}

// Reading is how a line was read.
type Reading struct {
	Language string   // its own; "" where none of its words was known
	Op       string   // the calculation that is meant; "" where that is open
	Ops      []string // those that may be meant, the likeliest first
	Pieces   []Piece
	Unread   []place.Span      // what was not understood
	Given    *Given            // the form as far as the line fills it
	Answer   *calc.Answer      // of the calculation, where the line and the lists suffice
	Lacks    []finding.Finding // what keeps it from answering, at its fields
}

// Piece is a piece of the line and what it was read as.
type Piece struct {
	place.Span
	Goal
	Options []Goal // where it may go, where that is open: then it goes nowhere yet
}

// Goal is a field, with what goes into it. Row counts the rows of the list that it
// stands in.
type Goal struct {
	List   string
	Row    int
	Field  string
	Text   string // as it is filled in
	Word   string // word id of what was chosen
	ticked bool   // a field of yes or no
}

// Members names the members of a reading.
func (r *Reading) Members(m *wire.Members) {
	m.String("language", &r.Language)
	m.String("op", &r.Op)
	wire.Texts(m, "ops", &r.Ops)
	wire.List(m, "pieces", &r.Pieces)
	wire.List(m, "unread", &r.Unread)
	m.Other("given", r.Given, r.Given != nil)
	m.Other("answer", r.Answer, r.Answer != nil)
	wire.Findings(m, "lacks", &r.Lacks)
}

// Members names the members of a piece.
func (p *Piece) Members(m *wire.Members) {
	m.Object("quote", &p.Span)
	p.Goal.Members(m)
	wire.List(m, "options", &p.Options)
}

// Members names the members of a place.
func (p *Goal) Members(m *wire.Members) {
	m.String("list", &p.List)
	m.Int("row", &p.Row)
	m.String("field", &p.Field)
	m.String("text", &p.Text)
	m.String("word", &p.Word)
}

// Given is what a form holds: the members are those of the calculation's input.
type Given struct {
	fields []Goal
	lists  []list
}

// list is a list of a form, row by row.
type list struct {
	name string
	rows []Given
}

// Members names the fields that are filled.
func (g *Given) Members(m *wire.Members) {
	for n := range g.fields {
		p := &g.fields[n]
		if p.ticked {
			on := true
			m.Bool(p.Field, &on)
		} else {
			m.String(p.Field, &p.Text)
		}
	}
	for n := range g.lists {
		wire.List(m, g.lists[n].name, &g.lists[n].rows)
	}
}

// yes stands in a field of yes or no.
const yes = "yes"

// Read reads a line.
func Read(ask *Ask) *Reading {
	var best *fitted
	var all []*fitted
	known := languages(ask.Language)
	if len(ask.Put) > 0 { // what was offered was offered in one
		known = known[:1]
	}
	for _, language := range known {
		if best != nil && !knowsMore(language, best) {
			continue
		}
		list := readIn(ask, language)
		if len(list) > 0 && (best == nil || list[0].score > best.score) {
			best, all = list[0], list
		}
		if best != nil && len(best.unread()) == 0 {
			break // no other knows more
		}
	}
	if best == nil {
		return &Reading{Unread: whole(ask.Text)}
	}
	return reading(ask, all)
}

// knowsMore reports whether a language has a word for something that was not understood in
// the best one so far.
func knowsMore(language string, best *fitted) bool {
	tokens, heard := manual.EarOf(language).Hear(best.text)
	for _, q := range best.unread() {
		for i := range heard {
			if h := &heard[i]; tokens[h.First].From < q.To && tokens[h.Last-1].To > q.From {
				return true
			}
		}
	}
	return false
}

// languages lists those that are known, the likeliest first.
func languages(likely string) []string {
	list := manual.Languages()
	if n := slices.Index(list, likely); n > 0 {
		list = slices.Insert(slices.Delete(list, n, n+1), 0, likely)
	}
	return list
}

// readIn reads a line in one language, for each calculation that it may mean; the
// likeliest comes first.
func readIn(ask *Ask, language string) []*fitted {
	s := said(ask.Text, language, ask.System)
	all := calc.AtBench()
	var list []*fitted
	for n := range all {
		if ask.Op != "" && ask.Op != all[n].Op {
			continue
		}
		if f := s.fit(ask, &all[n]); f.score > 0 || ask.Op != "" {
			list = append(list, f)
		}
	}
	sortFitted(list)
	return list
}

func whole(text string) []place.Span {
	if text == "" {
		return nil
	}
	return []place.Span{{To: len(text)}}
}
