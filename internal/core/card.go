package core

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// cardInput is the input of an operation that needs no more than a card.
type cardInput struct{ card card.Card }

func (i *cardInput) Members(m *wire.Members) { m.Object("card", &i.card, wire.Required) }

// checkAnswer is the answer of a check: what was found, and what of the card comes from the
// words of a manual.
type checkAnswer struct {
	list   []finding.Finding
	quotes []card.QuotedAt
}

func (a *checkAnswer) Members(m *wire.Members) {
	wire.Findings(m, "findings", &a.list)
	wire.List(m, "quotes", &a.quotes)
}

// checkCard answers with all findings about a card, also with those that
// refuse it: the check itself succeeded. Only what is not JSON is refused.
func checkCard(i *cardInput, read []finding.Finding) (*checkAnswer, []finding.Finding) {
	if malformed(read) {
		return nil, read
	}
	if card.Readable(read) {
		read = append(read, finding.Below("/card", card.Check(&i.card))...)
	}
	return &checkAnswer{read, i.card.Quoted()}, nil
}

// placesAnswer are places in a card, as pointers into it.
type placesAnswer struct{ places []string }

func (a *placesAnswer) Members(m *wire.Members) { wire.Texts(m, "places", &a.places) }

// firstEntries says which figures are to be asked for first, of a card however unfinished
// it is.
func firstEntries(i *cardInput, _ []finding.Finding) (*placesAnswer, []finding.Finding) {
	return &placesAnswer{card.First(&i.card)}, nil
}

// cardsInput is a set of cards to be listed, canonical with the text of each.
type cardsInput struct {
	cards     []card.Card
	bench     plan.Bench
	canonical bool
}

func (i *cardsInput) Members(m *wire.Members) {
	wire.List(m, "cards", &i.cards, wire.Required)
	m.Object("bench", &i.bench)
	m.Bool("canonical", &i.canonical)
}

// listed is a line in the list of bikes; place and text are given with the
// canonical text only.
type listed struct {
	plan.Bike
	place int    // in the input
	text  string // canonical
}

func (b *listed) Members(m *wire.Members) {
	b.Bike.Members(m)
	m.Int("place", &b.place)
	m.String("text", &b.text)
}

type cardsAnswer struct {
	bikes    []listed
	findings []finding.Finding
}

func (a *cardsAnswer) Members(m *wire.Members) {
	wire.List(m, "bikes", &a.bikes)
	wire.Findings(m, "findings", &a.findings)
}

// cards lists bikes by name. A card that can't be used is left out and reported;
// the others are listed all the same. With the canonical text come the doubts
// about each card too: it may be about to be taken in.
func cards(i *cardsInput, read []finding.Finding) (*cardsAnswer, []finding.Finding) {
	unread, list := sortByCard(read)
	if len(i.cards) == 0 {
		list = read // nothing could be read, for one card's sake perhaps
	}
	if finding.Refused(list) {
		return nil, list
	}
	a := &cardsAnswer{}
	var bikes []*listed // sorting by pointer is in the program once for all types
	for n := range i.cards {
		found, at := unread[n], "/cards/"+strconv.Itoa(n)
		var c *card.Checked
		if !finding.Refused(found) {
			var refused []finding.Finding
			c, refused = card.Accept(&i.cards[n])
			if c == nil {
				found = append(found, finding.Below(at, refused)...)
			} else {
				found = append(found, finding.Below(at, slices.Clone(c.Doubts()))...)
			}
		}
		if c == nil || i.canonical {
			a.findings = append(a.findings, found...)
		}
		if c == nil {
			continue
		}
		bike, refused := plan.BikeOf(c, i.bench.System)
		if bike == nil {
			return nil, refused
		}
		b := &listed{Bike: *bike}
		if i.canonical {
			b.place, b.text = n, string(wire.Write(c.Card()))
			if len(b.text) > card.MostBytes {
				a.findings = append(a.findings, finding.Refusal("too-large", at, "most", "250 kB")...)
				continue
			}
		}
		bikes = append(bikes, b)
	}
	slices.SortStableFunc(bikes, func(x, y *listed) int { return cmp.Compare(x.Name, y.Name) })
	for _, b := range bikes {
		a.bikes = append(a.bikes, *b)
	}
	return a, nil
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

// entryInput is what a person writes into a card, and what kind of thing it is.
type entryInput struct {
	kind       quantity.Kind
	text, unit string
	system     quantity.System
}

func (i *entryInput) Members(m *wire.Members) {
	wire.Text(m, "kind", &i.kind, wire.Required)
	m.String("text", &i.text, wire.Required)
	m.String("unit", &i.unit)
	wire.Text(m, "system", &i.system)
}

// entryAnswer is it as a card holds it: value and unit of a figure, or words.
type entryAnswer struct {
	card.Entry
	notes []finding.Finding
}

func (a *entryAnswer) Members(m *wire.Members) {
	m.Float("value", &a.Figure.Value)
	m.Float("to", &a.Figure.To)
	m.String("unit", &a.Figure.Unit)
	wire.Texts(m, "words", &a.Words)
	wire.Findings(m, "notes", &a.notes)
}

// readEntry reads what goes into a card.
func readEntry(i *entryInput, _ []finding.Finding) (*entryAnswer, []finding.Finding) {
	system, list := systemOf(i.system)
	if list != nil {
		return nil, list
	}
	entry, notes := card.ReadEntry(i.kind, i.text, i.unit, system)
	finding.At("/text", notes)
	if finding.Refused(notes) {
		return nil, notes
	}
	return &entryAnswer{entry, notes}, nil
}
