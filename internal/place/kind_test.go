package place_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// closing lists what a card says of what closes its filters, whatever they are.
func closing(c *card.Card) (list []string) {
	for i := range c.Bolts {
		b := c.Bolts[i]
		if b.Purpose != card.FilterCanned && b.Purpose != card.FilterCover && b.Purpose != card.FilterClosed {
			continue
		}
		if b.Drive == card.Strap {
			b.Drive = "" // what goes without saying of one that is screwed on
		}
		b.Purpose = ""
		list = append(list, string(wire.Write(&b)))
	}
	return list
}

// Of what kind a filter is may be learnt at any time, by a page or by hand: what the card
// says of what closes it is then of the can or of the cover, with the words of its page.
func TestKind_IsLearntLater(t *testing.T) {
	text := "Oil filter 18 N·m, M20 x 1.5, 27 mm"
	quote := place.Span{From: 0, To: len(text)}
	first := []place.Reading{{What: "bolt.filter.torque", Text: "18 N·m", Quote: quote}, {What: "bolt.filter.thread", Text: "M20x1.5", Quote: quote},
		{What: "bolt.filter.size", Text: "27 mm", Quote: quote}, {What: "oil.engine.with-filter", Text: "2.4 L", Quote: quote}}
	for name, begin := range beginnings(t) {
		if strings.HasSuffix(name, "spin-on") || strings.HasSuffix(name, "cartridge") {
			continue
		}
		told := place.Take(begin, first, &place.Page{Text: text}, quantity.Metric).Card
		filter := told.Filters[0]
		if filter.Kind != card.KindUnknown || len(closing(told)) != 1 {
			t.Fatalf("%s: %+v, closed with %v", name, filter, closing(told))
		}
		for kind, purpose := range map[card.FilterKind]card.Purpose{card.SpinOn: card.FilterCanned, card.Cartridge: card.FilterCover} {
			page := place.Take(told, []place.Reading{{What: "filter.kind", Text: string(kind), Quote: quote}}, &place.Page{Text: text}, quantity.Metric)
			hand, list := place.OfKind(told, filter.ID, kind)
			if len(page.Findings) > 0 || len(list) > 0 {
				t.Errorf("%s: %v, %v", name, page.Findings, list)
			}
			for by, c := range map[string]*card.Card{"page": page.Card, "hand": hand} {
				held := slices.ContainsFunc(c.Bolts, func(b card.Bolt) bool { return b.Holds == filter.ID && b.Purpose == purpose })
				if c.Filters[0].Kind != kind || !held || !slices.Equal(closing(c), closing(told)) {
					t.Errorf("%s: by %s a %s, closed with %v, before %v", name, by, c.Filters[0].Kind, closing(c), closing(told))
				}
				if got := len(c.Quoted()); got < len(told.Quoted()) {
					t.Errorf("%s: by %s %d places have the words of the page, before %d", name, by, got, len(told.Quoted()))
				}
			}
		}
	}
}

// A page that tells of a cover tells that the filter lies under it, though another page
// told how tight the filter gets: neither figure is lost.
func TestKind_OfACover(t *testing.T) {
	for name, begin := range beginnings(t) {
		if !strings.HasSuffix(name, "unknown") {
			continue
		}
		c := begin
		for _, what := range []string{"bolt.filter.torque", "bolt.filter-cover.torque"} {
			taken := place.Take(c, []place.Reading{{What: what, Text: fmt.Sprint(len(what)-8, " N·m")}}, &place.Page{}, quantity.Metric)
			if c = taken.Card; len(taken.Findings) > 0 {
				t.Errorf("%s: %v", name, taken.Findings)
			}
		}
		if len(c.Filters) == 0 || c.Filters[0].Kind != card.Cartridge || len(closing(c)) != 2 {
			t.Errorf("%s: %+v, closed with %v", name, c.Filters, closing(c))
		}
	}
}

// By hand a filter may be of one kind after the other: nothing that the card says of how it
// is closed is lost, and what can't be is refused.
func TestOfKind_LosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := plantest.Card(t)
		if len(c.Filters) == 0 {
			return
		}
		f := rapid.SampledFrom(c.Filters).Draw(t, "filter")
		for range 3 {
			kind := rapid.SampledFrom(append(slices.Clone(card.FilterKinds), "", "paper")).Draw(t, "as")
			next, list := place.OfKind(c, f.ID, kind)
			if next == nil {
				known := kind == card.SpinOn || kind == card.Cartridge || kind == card.KindUnknown
				if !finding.Refused(list) || known && f.Kind != card.Centrifugal {
					t.Fatalf("%s as %q: %v", f.Kind, kind, list)
				}
				continue
			}
			for _, says := range closing(c) {
				if !slices.Contains(closing(next), says) {
					t.Fatalf("%s is lost of %v, as %s", says, closing(next), kind)
				}
			}
			if _, list := card.Accept(next); finding.Refused(list) {
				t.Fatalf("as %s: %v", kind, list)
			}
			c = next
		}
	})
	if c, list := place.OfKind(&card.Card{}, "none", card.SpinOn); c != nil || !finding.Refused(list) {
		t.Errorf("a filter that there is none of: %v", list)
	}
}
