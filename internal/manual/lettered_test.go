package manual_test

import (
	"slices"
	"testing"
)

// A letter or a number in brackets stands for the part that the page has called so.
func TestRead_Lettered(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Undo the drain plug (A). Unscrew the strainer cap (B). Renew the copper washer of (A) and the O-ring of (B).", []string{"bolt.drain.seal flat-copper", "bolt.strainer.seal o-ring"}},
		{"Undo the oil drain bolt (1) and the strainer plug (2). Fit a new aluminium washer on (1) and an O-ring on (2).", []string{"bolt.drain.seal flat-aluminium", "bolt.strainer.seal o-ring"}},
		{"Ölablassschraube (A) und Siebdeckel (B) abnehmen. Den Kupferring der (A) und den O-Ring der (B) ersetzen.", []string{"bolt.drain.seal flat-copper", "bolt.strainer.seal o-ring"}},
		{"Svitare il tappo di scarico olio (A) e il tappo del filtro a rete (B). Sostituire la rondella di alluminio del (A) e l'O-ring del (B).", []string{"bolt.drain.seal flat-aluminium", "bolt.strainer.seal o-ring"}},
		{"Drain the engine oil. Take off the fork cap (A). Renew the O-ring of (A).", nil},
		{"Drain the oil. (1) Undo the drain plug, with its copper washer. (2) Fit the plug.", []string{"bolt.drain.seal flat-copper"}},
	} {
		got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return !slices.Contains(c.want, s) && !hasSeal(s) })
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

func hasSeal(s string) bool {
	for i := 0; i+6 < len(s); i++ {
		if s[i:i+6] == ".seal " {
			return true
		}
	}
	return false
}

// A letter behind a bare plug, cover or screw, or a number in brackets behind a plug, says which it
// is wherever it stands.
func TestRead_Tags(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Engine oil change\nUndo plug (1) at the foot of the frame, which holds the oil. Undo plug (2) below the crankcase. Take out plug (3) and wash the strainer.\nPlug (1) is tightened to 16 N·m, plug (2) to 26 N·m and plug (3) to 20 N·m.", []string{"bolt.drain.torque 26 N·m", "bolt.strainer.torque 20 N·m", "bolt.tank-drain.torque 16 N·m"}},
		{"Cambio olio motore\n- Svitare il tappo A alla base del telaio, che fa da serbatoio dell'olio.\n- Svitare il tappo B sotto il carter.\n- Svitare il tappo C e sfilare il filtro a rete.\n- Togliere le viti D, staccare il coperchio ed estrarre la cartuccia filtrante.\n\n   Tappo A .......... 16 Nm\n   Tappo B .......... 26 Nm\n   Tappo C .......... 20 Nm\n   Viti D ........... 8 Nm\n", []string{"bolt.drain.torque 26 N·m", "bolt.filter-cover.torque 8 N·m", "bolt.strainer.torque 20 N·m", "bolt.tank-drain.torque 16 N·m"}},
		{"Vidange de l'huile moteur\nDévisser le bouchon A sous le carter moteur. Dévisser le bouchon B sous la boîte de vitesses.\nBouchon A : 26 N.m. Bouchon B : 20 N.m.", []string{"bolt.drain.torque 26 N·m", "bolt.gearbox-drain.torque 20 N·m"}},
		{"Oil change\nUndo the drain plug A below the crankcase and plug B of the radiator, where coolant runs out.\nPlug A: 26 N·m.", []string{"bolt.drain.torque 26 N·m"}},
		{"Cambio de aceite del motor\nQuite el tapón A situado bajo el cárter y el tapón B del tamiz de aceite.\nTapón A ..... 26 N·m\nTapón B ..... 20 N·m\n", []string{"bolt.drain.torque 26 N·m", "bolt.strainer.torque 20 N·m"}},
	} {
		got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return s[len(s)-4:] != "N·m" })
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

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
