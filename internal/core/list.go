package core

import (
	"sort"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/wire"
)

// cardsInput is a set of cards to be listed, canonical with the text of each.
type cardsInput struct {
	cards     []card.Card
	bench     job.Bench
	canonical bool
}

func (i *cardsInput) Members(m *wire.Members) {
	wire.List(m, "cards", &i.cards, wire.Required)
	m.Object("bench", &i.bench)
	m.Bool("canonical", &i.canonical)
}

// bike is a line in the list of bikes.
type bike struct {
	id, name, years string
	layout          string // word id
	invented        bool
	oils            []job.Oil
	gaps            int
	place           int    // in the input; told with the text only
	text            string // canonical
}

func (b *bike) Members(m *wire.Members) {
	m.String("id", &b.id)
	m.String("name", &b.name)
	m.String("years", &b.years)
	m.String("layout", &b.layout)
	m.Bool("invented", &b.invented)
	wire.List(m, "oils", &b.oils)
	m.Int("gaps", &b.gaps)
	m.Int("place", &b.place)
	m.String("text", &b.text)
}

// byName sorts without the generic sort: see job.
type byName []bike

func (l byName) Len() int           { return len(l) }
func (l byName) Swap(i, j int)      { l[i], l[j] = l[j], l[i] }
func (l byName) Less(i, j int) bool { return l[i].name < l[j].name }

type cardsAnswer struct {
	bikes    []bike
	findings []finding.Finding
}

func (a *cardsAnswer) Members(m *wire.Members) {
	wire.List(m, "bikes", &a.bikes)
	wire.Findings(m, "findings", &a.findings)
}

// cards lists bikes by name. A card that can't be used is left out and told;
// the others are listed all the same. With the canonical text come the doubts
// about each card too: it may be about to be taken in.
func cards(in []byte) (wire.Record, []finding.Finding) {
	var i cardsInput
	read := wire.Read(in, &i)
	unread, list := sortByCard(read)
	if len(i.cards) == 0 {
		list = read // nothing could be read, for one card's sake perhaps
	}
	if finding.Refused(list) {
		return nil, list
	}
	a := &cardsAnswer{}
	for n := range i.cards {
		c := &i.cards[n]
		found := unread[n]
		if !finding.Refused(found) {
			found = append(found, checkedAt(n, c)...)
		}
		if refused := finding.Refused(found); refused || i.canonical {
			a.findings = append(a.findings, found...)
			if refused {
				continue
			}
		}
		p, refused := job.Make(c, job.Bench{System: i.bench.System})
		if p == nil {
			return nil, refused
		}
		b := bike{id: c.ID, name: p.Name, years: years(c), layout: "layout." + string(c.Layout), invented: c.Invented, oils: today(p.Oils), gaps: len(p.Gaps)}
		if i.canonical {
			b.place, b.text = n, string(wire.Write(c))
		}
		a.bikes = append(a.bikes, b)
	}
	sort.Stable(byName(a.bikes))
	return a, nil
}

// checkedAt checks a card that is the nth of a list.
func checkedAt(n int, c *card.Card) []finding.Finding {
	list := card.Check(c)
	for f := range list {
		list[f].Where = "/cards/" + strconv.Itoa(n) + list[f].Where
	}
	return list
}

// sortByCard parts what was found in reading a list of cards into what is
// wrong with each card, by its place, and the rest.
func sortByCard(list []finding.Finding) (cards map[int][]finding.Finding, rest []finding.Finding) {
	cards = map[int][]finding.Finding{}
	for _, f := range list {
		number, _, _ := strings.Cut(strings.TrimPrefix(f.Where, "/cards/"), "/")
		n, err := strconv.Atoi(number)
		if err != nil {
			rest = append(rest, f)
			continue
		}
		cards[n] = append(cards[n], f)
	}
	return cards, rest
}

// today leaves the oils of a plain oil change.
func today(oils []job.Oil) []job.Oil {
	var list []job.Oil
	for _, o := range oils {
		if o.Today {
			list = append(list, job.Oil{Circuit: o.Circuit, Role: o.Role, Today: true, Due: o.Due, Grades: o.Grades, Need: o.Need})
		}
	}
	return list
}

func years(c *card.Card) string {
	switch {
	case c.YearFrom == 0:
		return ""
	case c.YearTo == 0 || c.YearTo == c.YearFrom:
		return strconv.Itoa(c.YearFrom)
	}
	return strconv.Itoa(c.YearFrom) + "–" + strconv.Itoa(c.YearTo)
}
