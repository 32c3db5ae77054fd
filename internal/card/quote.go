package card

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Quote are words of a manual, and what of the card comes from them: figures and words
// alike, several where one line of the manual says several things.
type Quote struct {
	Words  string // as they stand in the manual
	Source string // id of one of the card's sources
	Page   string
	Of     []Quoted
}

// Members names the members of a quote.
func (q *Quote) Members(m *wire.Members) {
	m.String("words", &q.Words, wire.Required)
	m.String("source", &q.Source)
	m.String("page", &q.Page)
	wire.List(m, "of", &q.Of, wire.Required)
}

// Quoted is one thing that comes from the words of a manual. It is called by the id of its
// part, and not by its place, so that it stays with it; and it holds what was said there:
// once the card says something else, by whichever hand, nothing of it is from those words.
type Quoted struct {
	At   string // as Slot has it
	Says string // what the card said when it was taken from there
}

// Members names the members.
func (q *Quoted) Members(m *wire.Members) {
	m.String("at", &q.At, wire.Required)
	m.String("says", &q.Says, wire.Required)
}

// Holds reports whether the card still says what was taken from the words, and where; of a
// list of words one of them. The card isn't changed.
func (q *Quoted) Holds(c *Card) (Slot, bool) {
	s, ok := c.Slot(q.At)
	return s, ok && slices.Contains(s.Says(), q.Says)
}

// QuotedAt is a quote as it is shown: the place that it is of, and its words.
type QuotedAt struct {
	At    string // JSON pointer into the card
	Words string
	Title string // of the document
	Page  string
}

// Members names the members.
func (q *QuotedAt) Members(m *wire.Members) {
	m.String("at", &q.At, wire.Required)
	m.String("words", &q.Words, wire.Required)
	m.String("title", &q.Title)
	m.String("page", &q.Page)
}

// Quoted lists what of the card comes from the words of a manual, in the order of the
// quotes: what still says what it said there.
func (c *Card) Quoted() []QuotedAt {
	var list []QuotedAt
	c.eachQuoted(func(q *Quote, _ *Quoted, s *Slot) {
		list = append(list, QuotedAt{At: s.At, Words: q.Words, Title: c.titleOf(q.Source), Page: q.Page})
	})
	return list
}

func (c *Card) eachQuoted(do func(*Quote, *Quoted, *Slot)) {
	for i := range c.Quotes {
		q := &c.Quotes[i]
		for n := range q.Of {
			if s, ok := q.Of[n].Holds(c); ok {
				do(q, &q.Of[n], &s)
			}
		}
	}
}

func (c *Card) titleOf(source string) string {
	for i := range c.Sources {
		if c.Sources[i].ID == source {
			return c.Sources[i].Title
		}
	}
	return ""
}

// quote gives each figure that is from the manual the words that it comes from, and the
// oil asked for those of its first grade.
func (c *Card) quote() {
	c.eachQuoted(func(q *Quote, of *Quoted, s *Slot) {
		if s.Figure != nil && (*s.Figure).Standing == FromManual {
			(*s.Figure).Quote = strings.TrimLeft(q.Words, "@ ") // nobody's words are a word id
		}
		id, member, _ := strings.Cut(of.At, "/")
		if o := c.Circuit(id); o != nil && member == "oil/grades" && o.Oil.Grades[0] == of.Says && o.Oil.Standing == FromManual {
			o.Oil.Quote = strings.TrimLeft(q.Words, "@ ")
		}
	})
}

// quotes checks the quotes by themselves. That one is of nothing any more is no fault: the
// part is gone, or says something else.
func (c *checker) quotes(k *Card) {
	for i := range k.Quotes {
		q := &k.Quotes[i]
		at := "/quotes/" + strconv.Itoa(i)
		c.few(at+"/of", len(q.Of))
		if strings.TrimSpace(q.Words) == "" {
			c.add(finding.Refuse, "quote-empty", at+"/words")
		}
		if q.Source != "" && !c.sources[q.Source] {
			c.add(finding.Refuse, "unknown-source", at+"/source", "text", finding.Clip(q.Source))
		}
	}
}
