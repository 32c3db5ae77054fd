package manual_test

import (
	"slices"
	"testing"
)

// A letter or a number stands for the part behind which it stood, and one behind two for neither.
func TestRead_Letters(t *testing.T) {
	for text, want := range map[string][]string{
		"GEARBOX. Remove the drain screw (A) and the level screw (B); replace (A) with a sound fibre washer.":                              {"bolt.gearbox-drain.seal fibre"},
		"Loosen the oil drain plug (1) and the oil level plug (2). Tighten (2) to 8 N·m and (1) to 25 N·m.":                                {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
		"(1) Remove the oil drain plug (A).\n(2) Fit the plug (A) and tighten it to 30 N·m.":                                               {"bolt.drain.torque 30 N·m"},
		"Ölablassschraube (A) und Kontrollschraube (B) herausdrehen. Schraube (A) mit 25 Nm, Schraube (B) mit 8 Nm festziehen.":            {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
		"Déposer le bouchon de vidange d'huile (A) et le bouchon de niveau (B). Serrer le bouchon (B) à 8 N.m et le bouchon (A) à 25 N.m.": {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
		"Svitare il tappo di scarico olio (A) e il tappo di livello (B). Serrare il tappo (B) a 8 Nm e il tappo (A) a 25 Nm.":              {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
		"Quite el tapón de vaciado del aceite (A) y el tapón de nivel (B). Apriete el tapón (B) a 8 N·m y el tapón (A) a 25 N·m.":          {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
		"Retire o bujão de drenagem do óleo (A) e o bujão de nível (B). Aperte o bujão (B) a 8 N·m e o bujão (A) a 25 N·m.":                {"bolt.drain.torque 25 N·m", "bolt.level.torque 8 N·m"},
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if text := "Engine oil: remove the drain plug (A) and the filler plug (A). Tighten (A) to 25 N·m."; len(sureBolts(text)) > 0 {
		t.Errorf("%q: %q are sure", text, sureBolts(text))
	}
}

// Where figures stand before what they are for, none is taken for the part of the one before it.
func TestRead_FiguresForParts(t *testing.T) {
	want := []string{"bolt.drain.torque 20 N·m", "bolt.filter.torque 10 N·m"}
	for _, text := range []string{
		"20 N·m for the oil drain plug, 10 N·m for the oil filter.",
		"Do not overtighten: 20 N·m is ample for the oil drain plug, 10 N·m for the oil filter.",
		"20 Nm für die Ölablassschraube, 10 Nm für den Ölfilter.",
		"20 N.m pour le bouchon de vidange, 10 N.m pour le filtre à huile.",
		"20 N·m para el tapón de vaciado, 10 N·m para el filtro de aceite.",
		"20 Nm per il tappo di scarico olio, 10 Nm per il filtro olio.",
		"20 N·m para o bujão de drenagem, 10 N·m para o filtro de óleo.",
		"20 Nm voor de olieaftapplug, 10 Nm voor het oliefilter.",
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for _, text := range []string{
		"Page 58 gives 45 N·m for the oil drain plug. This is a printing error. Oil drain plug: 25 N·m.",
		"Seite 58 nennt 45 Nm für die Ölablassschraube. Das ist ein Druckfehler. Ölablassschraube: 25 Nm.",
		"La página 58 da 45 N·m para el tapón de vaciado. Es una errata. Tapón de vaciado: 25 N·m.",
	} {
		if got := said(text, "bolt.drain.torque"); !slices.Equal(got, []string{"bolt.drain.torque 25 N·m"}) {
			t.Errorf("%q: %q", text, got)
		}
	}
}
