package line

import (
	"math"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/calc"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
)

// figure is a figure of the line: an amount, a bare number, a thread, a grade or a mark.
type figure struct {
	first, last int    // its tokens, last not included
	text        string // as it is filled in
	says        calc.Said
	bare        bool // a number without a unit
	ranged      bool
}

// mostAtoms are the most that a figure has: "from 1 1/16 - 1 1/8 in" is nine.
const mostAtoms = 12

// readFigures finds the figures: at each place the longest that can be read.
func (s *speech) readFigures() {
	for i := 0; i < len(s.atoms); i++ {
		if f, used := s.figureAt(i); used > 0 {
			s.figures = append(s.figures, f)
			i += used - 1
		}
	}
}

func (s *speech) figureAt(i int) (f figure, used int) {
	if before := i - 1; i > 0 && s.atoms[i].glued && s.tokens[s.atoms[before].last-1].Word && !(i > 1 && s.times(s.atoms[before].first) && s.atoms[before-1].numeric) {
		return f, 0
	}
	end := i
	for end < len(s.atoms) && end < i+mostAtoms && !s.atoms[end].stop {
		end++
	}
	for ; end > i; end-- {
		if end < len(s.atoms) && s.atoms[end].glued && !s.atoms[end].stop && !s.parts(end) {
			continue // it would end within a word
		}
		if end > i+1 && s.times(s.atoms[end-1].first) {
			continue
		}
		if f, ok := s.figureOf(s.atoms[i:end]); ok {
			f.first, f.last = s.atoms[i].first, s.atoms[end-1].last
			return f, end - i
		}
	}
	return f, 0
}

// parts reports whether a sign stands at an atom that parts what is before it from what is
// behind it: "10W-40/MA2" is two.
func (s *speech) parts(i int) bool {
	return strings.Contains("/()", s.atoms[i].text) || s.times(s.atoms[i].first) && i+1 < len(s.atoms) && s.atoms[i+1].numeric
}

// times reports whether a token is the sign between two figures, or is said for it.
func (s *speech) times(at int) bool {
	_, used := s.senseAt(at, "number.by")
	return used == 1 || s.tokens[at].Fold == "x" || s.tokens[at].Text == "×"
}

// figureOf reads atoms as one figure, and reports whether they are one.
func (s *speech) figureOf(atoms []atom) (f figure, ok bool) {
	f.text = s.join(atoms, false)
	switch first := &s.tokens[atoms[0].first]; {
	case s.thread(&f, atoms):
		return f, true
	case s.label(&f, atoms):
		return f, true
	case !atoms[0].numeric && !strings.Contains("-+±~≈#", first.Text):
		return f, false
	}
	return f, s.amount(&f)
}

// join gives the text of atoms. In a thread "by" is said for the sign between its figures.
func (s *speech) join(atoms []atom, thread bool) string {
	var b strings.Builder
	for n := range atoms {
		a := &atoms[n]
		text := a.text
		if _, used := s.senseAt(a.first, "number.by"); thread && used == a.last-a.first {
			text = "x"
		}
		if n > 0 && !a.glued {
			b.WriteByte(' ')
		}
		b.WriteString(text)
	}
	return b.String()
}

// thread reads a thread: one that is named by its letter or by its series.
func (s *speech) thread(f *figure, atoms []atom) bool {
	text := s.join(atoms, true)
	metric := s.tokens[atoms[0].first].Fold == "m" // "50 x 3" may be a ring
	unified := strings.HasPrefix(text, "#") || strings.HasPrefix(strings.ToUpper(text[strings.LastIndexByte(text, ' ')+1:]), "UN")
	if len(atoms) < 2 || !metric && !unified || metric && s.apart(atoms) {
		return false
	}
	if _, ok := bolt.ParseThread(text); !ok {
		return false
	}
	f.text, f.says = strings.ReplaceAll(text, " x ", "x"), calc.Thread
	return true
}

// apart reports whether two figures stand beside one another with nothing between them:
// then they are no metric thread.
func (s *speech) apart(atoms []atom) bool {
	for n := range atoms[1:] {
		if atoms[n].numeric && atoms[n+1].numeric && !atoms[n+1].glued {
			return true
		}
	}
	return false
}

// label reads what stands on an oil's label: grades, or marks in capitals.
func (s *speech) label(f *figure, atoms []atom) bool {
	first, last, text := &s.tokens[atoms[0].first], &s.tokens[atoms[len(atoms)-1].last-1], f.text
	winter, sae := strings.ContainsAny(text, "wW"), first.Fold == "sae"
	capitals := first.Word && first.Text == strings.ToUpper(first.Text)
	if !winter && !sae && !capitals || len(atoms) > 8 {
		return false
	}
	l := oil.ReadLabel(text)
	if l.Unread != "" || len(l.Other) > 0 {
		return false
	}
	switch grades, marks, service := len(l.Grades), len(l.Marks), len(l.Service); {
	case s.talks(atoms) || grades > 1:
		return false
	case grades > 0 && marks+service == 0 && (winter || sae) && last.Fold != "sae":
		f.says = calc.Grade
	case capitals && marks > 0 && grades+service == 0:
		f.says = calc.Mark
	case capitals && service > 0 && grades+marks == 0:
		f.says = calc.Service
	default:
		return false
	}
	return true
}

// talks reports whether a word stands there that labels have too, and that says nothing on
// them: "at".
func (s *speech) talks(atoms []atom) bool {
	for n := range atoms {
		t := &s.tokens[atoms[n].first]
		if t.Word && t.Text != strings.ToUpper(t.Text) && t.Fold != "w" && t.Fold != "sae" {
			return true
		}
	}
	return false
}

// amount reads an amount with its unit, or a bare number.
func (s *speech) amount(f *figure) bool {
	q := quantity.Ask{System: s.system}
	_, _, ranged, notes := q.ReadRange(f.text)
	f.ranged = ranged
	if clean(notes) {
		f.says = calc.Amount
		return true
	}
	// Whichever unit: what is left open is whether it has one.
	q.Kind, q.Unit = quantity.Volume, "L"
	_, _, f.ranged, notes = q.ReadRange(f.text)
	f.bare = clean(notes) && !strings.ContainsAny(f.text, "°%")
	if !f.bare {
		q = quantity.Ask{Kind: quantity.Temperature, Unit: "°C", System: s.system} // "70°"
		_, _, f.ranged, notes = q.ReadRange(f.text)
		if clean(notes) {
			f.says = calc.Amount
			return true
		}
	}
	return f.bare
}

// clean reports whether all of a text was read, and as one thing.
func clean(notes []finding.Finding) bool {
	for i := range notes {
		if notes[i].Grade == finding.Refuse || notes[i].Code == "rest-not-read" {
			return false
		}
	}
	return true
}

// fits reports whether a figure may stand in a field: of a quantity one of its kind, that
// has its unit or is called by the field's name.
func (s *speech) fits(f *figure, d *calc.Asked, called bool) bool {
	switch d.Kind {
	case calc.Text:
		return f.says == d.Says && d.Says != ""
	case calc.Number:
		return f.bare && called && !f.ranged
	case calc.Choice:
		for _, w := range d.Words {
			if called && d.Family == "" && sameWord(f.text, w) {
				return true
			}
		}
		return false
	case calc.Yes, calc.List, calc.Taps:
		return false
	}
	low, _ := s.measure(f, d, called)
	return !math.IsNaN(low)
}

// measured is a figure that is read as one of a kind, of which the bounds are known: what
// may be read in two ways is settled by these.
type measured struct {
	first     int // the figure's token
	kind      quantity.Kind
	low, high float64
	called    bool
}

// measure reads a figure for a field: its ends in the base unit, NaN for what it is no
// figure of.
func (s *speech) measure(f *figure, d *calc.Asked, called bool) (low, high float64) {
	key := measured{f.first, d.Kind, d.Low, d.High, called}
	if known, ok := s.measures[key]; ok {
		return known[0], known[1]
	}
	q := quantity.Ask{Kind: d.Kind, System: s.system, Low: d.Low, High: d.High}
	if called && f.bare && (!f.fraction() || d.Kind == quantity.Share) { // of what else it is a part nobody knows
		q.Unit = quantity.Usual(d.Kind, s.system)
	}
	if d.Kind == quantity.Temperature && !f.bare {
		q.Unit = quantity.Usual(d.Kind, s.system) // "70 degrees" are of the person's scale
	}
	low, high = math.NaN(), math.NaN()
	if f.says == calc.Amount || q.Unit != "" {
		if a, b, _, notes := q.ReadRange(f.text); clean(notes) {
			low, high = a.Base, b.Base
		}
	}
	s.measures[key] = [2]float64{low, high}
	return low, high
}

// fraction reports whether a figure is a part of a whole.
func (f *figure) fraction() bool { return strings.Contains(f.text, "/") }

// believable reports whether a figure lies between what a field takes.
func (s *speech) believable(f *figure, d *calc.Asked) bool {
	if d.Kind == calc.Text || d.Kind == calc.Choice || d.High == 0 {
		return true
	}
	low, high := s.measure(f, d, true)
	return quantity.AtLeast(low, d.Low) && quantity.AtMost(high, d.High)
}

// written gives a figure as it is filled into a field: as the program writes it, where
// that says the same.
func (s *speech) written(f *figure, d *calc.Asked) string {
	switch f.says {
	case calc.Grade:
		var names []string
		for _, g := range oil.ReadLabel(f.text).Grades {
			names = append(names, g.String())
		}
		return strings.Join(names, ", ")
	case calc.Thread:
		return strings.Replace(f.text, "m", "M", 1)
	case calc.Mark, calc.Service:
		return f.text
	}
	q := quantity.Ask{System: s.system}
	if d.Kind != calc.Text {
		q.Kind, q.Unit = d.Kind, quantity.Usual(d.Kind, s.system)
	}
	low, high, _, notes := q.ReadRange(f.text)
	unit, known := quantity.Find(high.Unit)
	if !clean(notes) || !known {
		return f.text
	}
	text := quantity.Range(low, high, unit)
	if a, b, _, notes := q.ReadRange(text); clean(notes) && quantity.Near(a.Base, low.Base) && quantity.Near(b.Base, high.Base) {
		return text
	}
	return f.text
}

func sameWord(a, b string) bool {
	return strings.EqualFold(strings.ReplaceAll(a, " ", ""), strings.ReplaceAll(b, " ", ""))
}

// ends gives the texts of a range's two ends.
func (s *speech) endsOf(f *figure, kind quantity.Kind) (low, high string) {
	q := quantity.Ask{Kind: kind, System: s.system, Unit: quantity.Usual(kind, s.system)}
	a, b, _, _ := q.ReadRange(f.text)
	return a.Print(a.Unit), b.Print(b.Unit)
}
