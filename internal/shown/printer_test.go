package shown_test

import (
	"slices"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// A card's figure is shown with its standing and source, in the person's units
// first; what isn't known has no text, and says where it stands.
func TestPrinter_Card(t *testing.T) {
	torque := &card.Figure{Value: 22, To: 26, Unit: "N·m", Standing: card.FromManual, Source: "book", Page: "7-3"}
	for name, c := range map[string]struct {
		system   quantity.System
		figure   *card.Figure
		texts    []string
		standing card.Standing
		source   string
		lookup   string
	}{
		"metric":  {quantity.Metric, torque, []string{"22–26 N·m", "16.2–19.2 lbf·ft"}, card.FromManual, "Plainford One", ""},
		"us":      {quantity.US, torque, []string{"16.2–19.2 lbf·ft", "22–26 N·m"}, card.FromManual, "Plainford One", ""},
		"absent":  {quantity.Metric, nil, nil, card.Unknown, "", "lookup.torque"},
		"unknown": {quantity.Metric, &card.Figure{Standing: card.Unknown, Source: "book"}, nil, card.Unknown, "Plainford One", "lookup.torque"},
		"no unit": {quantity.Metric, &card.Figure{Value: 2, Unit: "cubits", Standing: card.Measured}, nil, card.Unknown, "", "lookup.torque"},
	} {
		p := shown.Printer{System: c.system, Sources: []card.Source{{ID: "book", Title: "Plainford One"}}}
		got := p.Card("torque", c.figure, "torque")
		if got.Name != "figure.torque" || !slices.Equal(got.Texts, c.texts) || got.Standing != c.standing || got.Source != c.source || got.Lookup != c.lookup {
			t.Errorf("%s: %+v", name, got)
		}
		if (got.First() == "@not-known") != (c.texts == nil) {
			t.Errorf("%s: first %q of %v", name, got.First(), got.Texts)
		}
	}
}

// What is added up is printed as finely as it was measured: 10 mL of oil, whole
// kilometres.
func TestPrinter_Sums(t *testing.T) {
	p := shown.Printer{System: quantity.Metric}
	if got := p.Litres(1.23456)[0]; got != "1.23 L" {
		t.Errorf("1.23456 L is %s", got)
	}
	if got := p.Kilometres(12345.6, 7)[0]; got != "12346 km" {
		t.Errorf("12345.6 km is %s", got)
	}
	if got := p.Between(0.09, 0.12, "mL", 2)[0]; got != "90–120 mL" {
		t.Errorf("0.09 to 0.12 L is %s", got)
	}
}

// An estimate names its method, and neither is of another standing.
func TestEstimate(t *testing.T) {
	e, u := shown.Estimate("torque", "published", "25 N·m"), shown.Unknown("torque", "size")
	if e.Standing != card.Estimated || e.Method != "@method.published" || e.First() != "25 N·m" {
		t.Errorf("%+v", e)
	}
	if u.Standing != card.Unknown || u.Lookup != "lookup.size" || u.First() != "@not-known" || u.Method != "" {
		t.Errorf("%+v", u)
	}
}
