package card_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// Over all sample cards: five places, each once, the engine's grade and volume first; what
// is already known changes none of them.
func TestFirst_Samples(t *testing.T) {
	for name, text := range specs.Cards() {
		var c card.Card
		if list := wire.Read(text, &c); list != nil {
			t.Fatal(name, list)
		}
		got := card.First(&c)
		if len(got) != 5 || !strings.HasSuffix(got[0], "/oil/grades") || !strings.HasPrefix(got[1], "/circuits/") {
			t.Errorf("%s: %v", name, got)
		}
		sorted := slices.Sorted(slices.Values(got))
		if len(slices.Compact(sorted)) != len(got) {
			t.Errorf("%s: one stands twice in %v", name, got)
		}
		for n := range c.Bolts {
			c.Bolts[n].Torque, c.Bolts[n].Turn = nil, nil
		}
		for n := range c.Circuits {
			c.Circuits[n].Oil, c.Circuits[n].WithFilt, c.Circuits[n].OilOnly = card.OilNeed{}, nil, nil
		}
		if again := card.First(&c); !slices.Equal(again, got) {
			t.Errorf("%s: %v of the known, %v of the unknown", name, got, again)
		}
	}
}

// Which they are follows from the layout; a card without anything asks for nothing.
func TestFirst(t *testing.T) {
	for _, c := range []struct {
		name string
		card card.Card
		want string
	}{
		{"nothing", card.Card{}, ""},
		{"an oil alone", card.Card{Circuits: []card.Circuit{{ID: "e", Role: card.EngineOil}}},
			"/circuits/0/oil/grades /circuits/0/oilOnly /circuits/0/level/device /circuits/0/level/state /circuits/0/level/stance"},
		{"the engine's oil stands second", card.Card{Circuits: []card.Circuit{{ID: "g", Role: card.GearboxOil}, {ID: "e", Role: card.EngineOil}},
			Bolts: []card.Bolt{{ID: "g", Drains: true, Circuit: "g"}, {ID: "d", Drains: true, Circuit: "e"}}},
			"/circuits/1/oil/grades /circuits/1/oilOnly /bolts/1/torque /circuits/0/oilOnly /circuits/1/level/device"},
		{"a cartridge", card.Card{Circuits: []card.Circuit{{ID: "e", Role: card.EngineOil}}, Filters: []card.Filter{{ID: "f"}},
			Bolts: []card.Bolt{{ID: "s", Purpose: card.FilterCover}, {ID: "d", Drains: true}}},
			"/circuits/0/oil/grades /circuits/0/withFilter /bolts/1/torque /bolts/0/torque /circuits/0/level/device"},
		{"a filter of no kind, and a gearbox", card.Card{Circuits: []card.Circuit{{ID: "e", Role: card.EngineOil}, {ID: "g", Role: card.GearboxOil}},
			Filters: []card.Filter{{ID: "f", Kind: card.KindUnknown}}, Bolts: []card.Bolt{{ID: "s", Purpose: card.FilterClosed}, {ID: "d", Drains: true}}},
			"/circuits/0/oil/grades /circuits/0/withFilter /bolts/1/torque /filters/0/kind /circuits/1/oilOnly"},
	} {
		if got := strings.Join(card.First(&c.card), " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}
