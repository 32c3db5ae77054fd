package place

import (
	"slices"

	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// OfKind gives a card whose filter of that id is of a kind, as somebody saw it on the bike.
// What the card says of what closes the filter stays, whatever it said of its kind before.
func OfKind(c *card.Card, filter string, kind card.FilterKind) (*card.Card, []finding.Finding) {
	p := partsOf(copyOf(c))
	n := slices.IndexFunc(p.card.Filters, func(f card.Filter) bool { return f.ID == filter })
	if n < 0 {
		return nil, finding.Refusal("unknown-id", "/filter", "text", finding.Clip(filter))
	}
	f := &p.card.Filters[n]
	if f.Kind == card.Centrifugal || kind == card.Centrifugal || !slices.Contains(card.FilterKinds, kind) {
		return nil, finding.Refusal("unknown-word", "/kind", "text", finding.Clip(string(kind)))
	}
	p.become(f, card.KindUnknown)
	p.become(f, kind)
	return p.card, nil
}
