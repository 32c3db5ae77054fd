package changes

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/shown"
)

// side is one of the cards, with what prints its figures.
type side struct {
	card  *card.Card
	print shown.Printer
}

// part gives the word and the place of a part by its id; its id where there is none.
func (s *side) part(id string) (word, place string) {
	if r := s.card.Circuit(id); r != nil {
		return "role." + string(r.Role), ""
	}
	if b := s.card.Bolt(id); b != nil {
		return "purpose." + string(b.Purpose), b.Place
	}
	for i := range s.card.Filters {
		if f := &s.card.Filters[i]; f.ID == id {
			return "differs-of." + string(f.Kind), f.Place
		}
	}
	for i := range s.card.Strain {
		if f := &s.card.Strain[i]; f.ID == id {
			return "differs-of.strainer", f.Place
		}
	}
	return "", id
}

// comparer collects what differs between two cards.
type comparer struct {
	from, to      side
	list          []Change
	heading, spot string // of what the things are that are compared now
}

// of says what the things are of that are compared next.
func (c *comparer) of(word, place string) { c.heading, c.spot = word, strings.TrimLeft(place, "@ ") }

// one tells of a part that only one card has, and reports whether that is so; to and
// from say of what it is. Of a part that both have it is that of the newer card.
func (c *comparer) one(added, removed bool, to, from func()) bool {
	if removed {
		from()
		c.add(Removed, nil, nil)
		return true
	}
	to()
	if added {
		c.add(Added, nil, nil)
	}
	return added
}

func (c *comparer) add(word Word, before, after *shown.Figure) *Change {
	c.list = append(c.list, Change{Part: c.heading, Place: c.spot, Word: "differs." + string(word), Before: before, After: after})
	for _, f := range [...]*shown.Figure{before, after} {
		if f != nil {
			f.Name = "differs." + string(word)
		}
	}
	return &c.list[len(c.list)-1]
}

// text is what a card says in its own words, nil for nothing. Nobody's words are a word
// id.
func text(s string) *shown.Figure {
	if s = strings.TrimLeft(s, "@ "); s == "" {
		return nil
	}
	return &shown.Figure{Texts: []string{s}}
}

func (c *comparer) text(word Word, a, b string) {
	if a != b {
		c.add(word, text(a), text(b))
	}
}

// word compares words out of a fixed list, whose ids begin with family.
func (c *comparer) word(word Word, family, a, b string) {
	if a != b {
		c.add(word, wordOf(family, a), wordOf(family, b))
	}
}

func wordOf(family, s string) *shown.Figure {
	if s == "" {
		return nil
	}
	return &shown.Figure{Texts: []string{"@" + family + s}}
}

func (c *comparer) flag(word Word, a, b bool) {
	if a != b {
		c.add(word, wordOf("differs-is.", strconv.FormatBool(a)), wordOf("differs-is.", strconv.FormatBool(b)))
	}
}

func (c *comparer) number(word Word, a, b int) {
	if a != b {
		c.add(word, numberOf(a), numberOf(b))
	}
}

func numberOf(n int) *shown.Figure {
	if n == 0 {
		return nil
	}
	return text(strconv.Itoa(n))
}

// nth compares at each how many oil changes a thing is due: 0 is at each.
func (c *comparer) nth(a, b int) { c.number(EveryNth, max(a, 1), max(b, 1)) }

// part compares what refers to another part by its id.
func (c *comparer) part(word Word, a, b string) {
	if a != b {
		c.add(word, partOf(&c.from, a), partOf(&c.to, b))
	}
}

func partOf(s *side, id string) *shown.Figure {
	if id == "" {
		return nil
	}
	word, place := s.part(id)
	f := &shown.Figure{}
	if word != "" {
		f.Texts = []string{"@" + word}
	}
	if place = strings.TrimLeft(place, "@ "); place != "" {
		f.Texts = append(f.Texts, place)
	}
	return f
}

// oil compares the grades with where they are from, then marks and categories, which
// are from there too.
func (c *comparer) oil(a, b *card.OilNeed) {
	before, after := c.from.grades(a), c.to.grades(b)
	same := slices.Equal(a.Grades, b.Grades)
	if !same || a.Standing != b.Standing || a.Source != b.Source || a.Page != b.Page || a.Method != b.Method {
		c.differ(Grades, before, after)
	}
	c.text(Marks, strings.Join(a.Marks, ", "), strings.Join(b.Marks, ", "))
	c.text(Service, a.Service, b.Service)
}

func (s *side) grades(o *card.OilNeed) *shown.Figure {
	f := &shown.Figure{Standing: o.Standing, Source: s.print.Title(o.Source), Page: o.Page, Method: o.Method}
	if len(o.Grades) > 0 {
		f.Texts = []string{strings.Join(o.Grades, ", ")}
	}
	return f
}

// figure compares two figures, and where they are from. One that a card leaves out is
// not known.
func (c *comparer) figure(word Word, a, b *card.Figure) {
	none := card.Figure{Standing: card.Unknown}
	if a == nil {
		a = &none
	}
	if b == nil {
		b = &none
	}
	if *a == *b {
		return
	}
	before, after := c.from.figure(a), c.to.figure(b)
	if before.First() == after.First() && (a.Value != b.Value || a.To != b.To || a.Unit != b.Unit) {
		before.Texts, after.Texts = a.Exactly(), b.Exactly() // they are rounded to the same
	}
	c.differ(word, before, after)
}

func (s *side) figure(f *card.Figure) *shown.Figure {
	p := s.print.Card("", f, "")
	p.Lookup = ""
	return &p
}

// differ tells of what says something else, or the same from elsewhere.
func (c *comparer) differ(word Word, before, after *shown.Figure) {
	origin := slices.Equal(before.Texts, after.Texts) && before.Standing == after.Standing
	c.add(word, known(before), known(after)).Origin = origin
}

// known is a figure of which something is known, nil for another.
func known(f *shown.Figure) *shown.Figure {
	if len(f.Texts) == 0 && f.Method == "" && f.Source == "" && f.Page == "" && f.Kept == "" {
		return nil
	}
	return f
}
