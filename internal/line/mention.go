package line

import (
	"slices"
	"strings"

	"tidysump/internal/calc"
)

// slot is a field of a calculation, or of the rows of one of its lists.
type slot struct {
	list string
	*calc.Asked
}

// slotsOf lists the fields of a calculation, those of its lists in their places.
func slotsOf(c *calc.Calculation) []slot {
	var slots []slot
	fields := c.Asks()
	for n := range fields {
		d := &fields[n]
		if d.Kind != calc.List {
			slots = append(slots, slot{"", d})
			continue
		}
		for i := range d.Rows {
			slots = append(slots, slot{d.Name, &d.Rows[i]})
		}
	}
	return slots
}

// calling marks the words of the line that call a calculation by what it is about, and
// gives how many there are. A word of them may be one that names a field too.
func (s *speech) calling(op string, calls []bool) int {
	n := 0
	for at := 0; at < len(s.tokens); {
		name, used := s.senseAt(at, "calc.")
		for i := range s.terms {
			if t := &s.terms[i]; t.First == at && t.Sense == "calc."+op && t.Last-at >= used {
				name, used = op, t.Last-at
			}
		}
		if name == op {
			n += used
			for k := at; k < at+used; k++ {
				calls[k] = true
			}
		}
		at += max(used, 1)
	}
	return n
}

// mention is a place where the line names a field, what is chosen in one, or what the
// calculation is about.
type mention struct {
	first, last int // its tokens, last not included
	names       []int
	spans       []int // that it names for a range alone: by the list in whose rows they stand
	words       []chosen
	denied      bool // "not" stands before it
}

// chosen is a word of a field of choice, or a yes.
type chosen struct {
	slot int
	word string
}

// mentions finds what of a calculation the line names: at each place the longest term.
func (s *speech) mentions(op string, slots []slot) []mention {
	var list []mention
	for at := 0; at < len(s.tokens); {
		m := mention{first: at, last: at}
		for i := range s.terms {
			t := &s.terms[i]
			if t.First != at || t.Last < m.last || s.cuts(t.First, t.Last) {
				continue
			}
			found := mention{first: t.First, last: t.Last}
			if !found.meant(op, t.Sense, slots) {
				continue
			}
			if t.Last > m.last {
				m = found
				continue
			}
			m.names, m.spans, m.words = append(m.names, found.names...), append(m.spans, found.spans...), append(m.words, found.words...)
		}
		if m.last == at {
			at++
			continue
		}
		m.denied = s.denied(at)
		list = append(list, m)
		at = m.last
	}
	return list
}

// cuts reports whether a term would take part of a figure, or an amount. A bare number may
// be of a term: "alloy 380".
func (s *speech) cuts(first, last int) bool {
	return slices.ContainsFunc(s.figures, func(g figure) bool {
		return g.first < last && g.last > first && !g.within(first, last)
	})
}

// within reports whether a figure is a bare number within a term of more words.
func (g *figure) within(first, last int) bool {
	return g.bare && g.first >= first && g.last <= last && last-first > g.last-g.first
}

func (s *speech) denied(at int) bool {
	for i := range s.terms {
		if t := &s.terms[i]; t.Last == at && (t.Sense == "not" || t.Sense == "without") {
			return true
		}
	}
	return false
}

// meant takes in what a sense names of a calculation, and reports whether it names any.
func (m *mention) meant(op, sense string, slots []slot) bool {
	field, asked := strings.CutPrefix(sense, "ask.")
	own, isOwn := strings.CutPrefix(field, op+".")
	for n := range slots {
		d := &slots[n]
		if asked && (isOwn && own == d.Name || !isOwn && field == d.Name) {
			if d.Kind == calc.Yes {
				m.words = append(m.words, chosen{n, yes})
			} else {
				m.names = append(m.names, n)
			}
		}
		if asked && isOwn && own == d.list && d.Then != "" {
			m.spans = append(m.spans, n)
		}
		word, is := strings.CutPrefix(sense, d.Family)
		if is && d.Family != "" && slices.Contains(d.Words, word) {
			m.words = append(m.words, chosen{n, word})
		}
	}
	return len(m.names)+len(m.spans)+len(m.words) > 0
}
