package manual_test

import (
	"slices"
	"testing"
)

// Make and model as they stand in the first line of a page. All are invented.
func TestRead_Names(t *testing.T) {
	const page = "\n\nMotoröl wechseln: 2,5 Liter SAE 20W-50.\n"
	for head, want := range map[string][]string{
		"OSTERWALD  K 85 Kardan                  Wartung          17":      {"make Osterwald", "model K 85 Kardan"},
		"ROTHFELS  X-450 Enduro        Bedienungsanleitung          31":    {"make Rothfels", "model X-450 Enduro"},
		"TRESMONT  Bicylindre 500, type M 6         Tableau de graissage":  {"make Tresmont", "model Bicylindre 500 type M 6"},
		"Kranzau Specht 250 S                     Betriebsanleitung     3": {"make Kranzau", "model Specht 250 S"},
		"SERVICEINFORMATION 3/2008                  MORGENTAU Zephir 450":  {"make Morgentau", "model Zephir 450"},
		"Wartung       M12 x 1,5       25":                                 nil,
	} {
		got := append(said(head+page, "make"), said(head+page, "model")...)
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", head, got, want)
		}
	}
}
