package manual_test

import (
	"slices"
	"testing"
)

// What a page names only to say that it holds no longer is no reading, in any language.
func TestRead_OldFigures(t *testing.T) {
	for text, want := range map[string]string{
		"Oil drain plug: tighten to 30 N·m instead of 42 N·m.":                                "30 N·m",
		"Oil drain plug: 30 N·m, not 42 N·m.":                                                 "30 N·m",
		"The oil drain plug takes 30 N·m; the old manual prints 42 N·m there.":                "30 N·m",
		"Oil drain plug: 30 N·m (previously 42 N·m).":                                         "30 N·m",
		"The 42 N·m for the oil drain plug is a misprint.":                                    "",
		"                        old        new\nOil drain plug          42 N·m     30 N·m\n": "30 N·m",
		"                        was        now\nOil drain plug, N·m     42         30\n":     "30 N·m",
		"Ölablassschraube: 30 Nm statt bisher 42 Nm.":                                         "30 N·m",
		"Ölablassschraube: 30 Nm (in der Anleitung irrtümlich 42 Nm).":                        "30 N·m",
		"Ölablassschraube: 42 Nm ist ein Druckfehler.":                                        "",
		"Bouchon de vidange d'huile : 30 N·m au lieu de 42 N·m.":                              "30 N·m",
		"Tapón de vaciado de aceite: 30 N·m en lugar de 42 N·m.":                              "30 N·m",
		"Tappo di scarico olio: 30 Nm invece di 42 Nm.":                                       "30 N·m",
		"Bujão de dreno de óleo: 30 N·m em vez de 42 N·m.":                                    "30 N·m",
		"Olieaftapplug: 30 Nm in plaats van 42 Nm.":                                           "30 N·m",
	} {
		var wants []string
		if want != "" {
			wants = []string{"bolt.drain.torque " + want}
		}
		if got := said(text, "bolt."); !slices.Equal(got, wants) {
			t.Errorf("%q: %q", text, got)
		}
	}
}
