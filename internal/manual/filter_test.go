package manual_test

import (
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// Of what kind a filter is stands on a page or it doesn't: what names the filter alone, its
// change or its torque says nothing of it. The quote holds the words that say it.
func TestRead_KindOfFilter(t *testing.T) {
	for _, c := range []struct{ text, kind, words string }{
		{"Engine oil, with filter .......... 3.3 L\nOil filter ....... 18 N·m", "", ""},
		{"Replace the oil filter at every oil change.\nOil drain bolt: 25 N·m (18 lbf·ft)", "", ""},
		{"Ölfilter wechseln. Füllmenge mit Filterwechsel: 2,9 l. Ölfilter: 18 N·m", "", ""},
		{"Vidange avec filtre à huile : 2,9 l. Filtre à huile : 18 N·m", "", ""},
		{"Sustituya el filtro de aceite. Con filtro: 2,9 l", "", ""},
		{"Sostituire il filtro olio. Con filtro: 2,9 litri", "", ""},
		{"Troque o filtro de óleo. Com filtro: 2,9 litros", "", ""},
		{"Ververs het oliefilter. Met filter: 2,9 l", "", ""},
		{"Spin-on oil filter: 18 N·m", "spin-on", "Spin-on oil filter"},
		{"Unscrew the filter. Lubricate the gasket of the new filter and spin it on until it touches the mount. Then hand tighten 3/4 turn.", "spin-on", "spin it on until"},
		{"Cambio olio e filtro\nSostituire il filtro: oliare la guarnizione e avvitarlo a fondo.\nQuantità 2,8 litri; solo olio 2,6 litri", "spin-on", "avvitarlo a fondo"},
		{"Engine oil: 2.8 L\nReplace the filter: oil the gasket and spin it on.", "spin-on", "spin it on"},
		{"Oil the gasket of the new filter and hand tighten the filter.", "spin-on", "hand tighten the filter"},
		{"Take off the oil filter cover and replace the filter element.", "cartridge", "element"},
	} {
		kind, words := "", ""
		for _, r := range manual.Read(c.text, "").Readings {
			if r.What == "filter.kind" {
				kind, words = r.Text, c.text[r.Quote.From:r.Quote.To]
			}
		}
		if kind != c.kind || !strings.Contains(words, c.words) {
			t.Errorf("%q: %q from %q, not %q from %q", c.text, kind, words, c.kind, c.words)
		}
	}
}

// What is tightened by hand alone is turned by hand: what loosens a filter, or its torque, says more.
func TestRead_FilterByHand(t *testing.T) {
	for text, drive := range map[string]string{
		"Oil filter: spin-on. Hand tighten.":                                                           "hand",
		"Table 14\n\n  Oil filter                Hand tighten 3/4 turn after the gasket touches":       "hand",
		"Screw on the new oil filter by hand.":                                                         "hand",
		"Den neuen Ölfilter von Hand aufschrauben.":                                                    "hand",
		"Visser le filtre à huile neuf à la main.":                                                     "hand",
		"Enrosque a mano el filtro de aceite nuevo.":                                                   "hand",
		"Avvitare a mano il filtro olio.":                                                              "hand",
		"Enrosque à mão o novo filtro de óleo.":                                                        "hand",
		"Remove the oil filter with a strap wrench. Screw on the new filter by hand.":                  "strap",
		"Screw on the new oil filter by hand, then tighten it to 18 N·m.":                              "",
		"Put in the filter element and its cover. Screw in the two bolts of the filter cover by hand.": "",
	} {
		got := ""
		for _, r := range manual.Read(text, "").Readings {
			if r.What == "bolt.filter.drive" {
				got += r.Text
			}
		}
		if got != drive {
			t.Errorf("%q: %q, want %q", text, got, drive)
		}
	}
}
