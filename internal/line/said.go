package line

import (
	"strings"

	"tidysump/internal/manual"
	"tidysump/internal/quantity"
)

// speech is a line taken apart in one language.
type speech struct {
	text     string
	language string
	system   quantity.System
	tokens   []manual.Token
	terms    []manual.Heard // that stand in it, of whatever sense
	ear      *manual.Ear
	atoms    []atom
	figures  []figure
	filler   []bool // by token: a short word that says nothing by itself
	clause   []int  // by token: which clause it stands in
	measures map[measured][2]float64
}

// atom is a piece of a figure: a token, a number that was said in words, or a unit's word.
type atom struct {
	first, last int // its tokens, last not included
	text        string
	glued       bool // to what stands before it
	numeric     bool // it ends in a digit
	stop        bool // a sign that ends a clause
}

// said takes a line apart.
func said(text, language string, system quantity.System) *speech {
	s := &speech{text: text, language: language, system: system, ear: manual.EarOf(language), measures: map[measured][2]float64{}}
	s.tokens, s.terms = s.ear.Hear(text)
	s.filler, s.clause = make([]bool, len(s.tokens)), make([]int, len(s.tokens))
	for i := range s.terms {
		if t := &s.terms[i]; t.Sense == "function" || t.Sense == "filler" || strings.HasPrefix(t.Sense, "join.") {
			for n := t.First; n < t.Last; n++ {
				s.filler[n] = true
			}
		}
	}
	s.takeApart()
	s.readFigures()
	s.parse()
	return s
}

// senseAt gives the longest term at a token whose sense begins so, and how many tokens it
// has; 0 where there is none.
func (s *speech) senseAt(at int, prefix string) (rest string, used int) {
	for i := range s.terms {
		t := &s.terms[i]
		if name, is := strings.CutPrefix(t.Sense, prefix); is && t.First == at && t.Last-at > used {
			rest, used = name, t.Last-at
		}
	}
	return rest, used
}

// takeApart makes the atoms: numbers in words become figures, and words of units that only
// this language has become their ids.
func (s *speech) takeApart() {
	for i := 0; i < len(s.tokens); {
		t := &s.tokens[i]
		a := atom{first: i, last: i + 1, text: t.Text, glued: t.Glued, numeric: t.Number}
		last := len(s.atoms) - 1
		beside := last >= 0 && s.atoms[last].numeric
		if n, used := s.numberAt(i); used > 0 {
			a.text, a.last, a.numeric = n, i+used, true
		} else if id, used := s.senseAt(i, "unit."); used > 0 && beside && !readsAsUnit(s.words(i, i+used), s.system) {
			a.text, a.last = id, i+used
		} else if _, used := s.senseAt(i, "range.to"); used > 0 && beside && s.startsNumber(i+used) {
			a.text, a.last, a.glued = "to", i+used, false
		} else if !t.Word && !t.Number {
			a.stop = s.ends(i)
		}
		s.atoms = append(s.atoms, a)
		i = a.last
	}
}

// words gives tokens as they stand in the line.
func (s *speech) words(from, to int) string {
	return s.text[s.tokens[from].From:s.tokens[to-1].To]
}

// readsAsUnit reports whether a word is a unit to whom reads quantities.
func readsAsUnit(word string, system quantity.System) bool {
	q := quantity.Ask{System: system}
	_, notes := q.Read("1 " + word)
	return clean(notes)
}

func (s *speech) startsNumber(at int) bool {
	if at >= len(s.tokens) {
		return false
	}
	_, used := s.numberAt(at)
	return used > 0 || s.tokens[at].Number || s.tokens[at].Text == "-" && at+1 < len(s.tokens) && s.tokens[at+1].Number
}

// ends reports whether a sign ends a clause: a mark before a blank, or any semicolon.
func (s *speech) ends(i int) bool {
	t := &s.tokens[i]
	if t.Text == ";" {
		return true
	}
	open := i+1 == len(s.tokens) || !s.tokens[i+1].Glued
	return open && t.Glued && strings.Contains(",.:!?…", t.Text)
}

// inTerm reports whether a token stands within a term of several words: "filled with".
func (s *speech) inTerm(i int) bool {
	for k := range s.terms {
		t := &s.terms[k]
		if t.First <= i && t.Last > i && t.Last-t.First > 1 && strings.HasPrefix(t.Sense, "ask.") {
			return true
		}
	}
	return false
}

// parse numbers the clauses: marks part them, and the words for and, with and without.
func (s *speech) parse() {
	n := 0
	inside := make([]bool, len(s.tokens))
	for i := range s.figures {
		for k := s.figures[i].first; k < s.figures[i].last; k++ {
			inside[k] = true
		}
	}
	for i := range s.tokens {
		if inside[i] {
			s.clause[i] = n
			continue
		}
		t := &s.tokens[i]
		_, and := s.senseAt(i, "join.and")
		_, with := s.senseAt(i, "with")
		if and+with > 0 && !s.inTerm(i) || !t.Word && !t.Number && s.ends(i) {
			n++
		}
		s.clause[i] = n
	}
}
