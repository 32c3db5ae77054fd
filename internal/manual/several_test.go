package manual_test

import (
	"slices"
	"strconv"
	"testing"

	"tidysump/internal/manual"
)

// sureBolts gives what a text says of bolts for sure.
func sureBolts(text string) (list []string) {
	for _, s := range sureOf(manual.Read(text, "").Readings) {
		if len(s) > 5 && s[:5] == "bolt." {
			list = append(list, s)
		}
	}
	return list
}

// A word for several things stands for no single plug: its size and its torque are asked at most.
// The same sentence of one thing is sure.
func TestRead_SeveralThings(t *testing.T) {
	for _, c := range []struct{ drain, one, several, tighten string }{
		{"Engine oil: undo the drain plug.", "the plug", "the plugs", "Tighten %s to %d N·m."},
		{"Engine oil: undo the drain bolt.", "the bolt", "the two bolts", "Tighten %s to %d N·m."},
		{"Engine oil: undo the drain bolt.", "the bolt", "the bolts", "Tighten %s to %d N·m."},
		{"Motoröl: Ablassschraube herausdrehen.", "Die Schraube", "Die Schrauben", "%s mit %d Nm anziehen."},
		{"Motoröl: Ablassschraube herausdrehen.", "Die Schraube", "Alle drei Schrauben", "%s mit %d Nm anziehen."},
		{"Huile moteur : dévisser la vis de vidange.", "la vis", "les vis", "Serrer %s à %d N.m."},
		{"Huile moteur : dévisser le bouchon de vidange.", "le bouchon", "les bouchons", "Serrer %s à %d N.m."},
		{"Aceite del motor: afloje el tapón de vaciado.", "el tapón", "los tapones", "Apriete %s a %d N·m."},
		{"Aceite del motor: afloje el tornillo de vaciado.", "el tornillo", "los tornillos", "Apriete %s a %d N·m."},
		{"Olio motore: svitare il tappo di scarico.", "il tappo", "i tappi", "Serrare %s a %d Nm."},
		{"Olio motore: svitare la vite di scarico.", "la vite", "le viti", "Serrare %s a %d Nm."},
		{"Óleo do motor: solte o bujão de drenagem.", "o bujão", "os bujões", "Aperte %s a %d N·m."},
		{"Óleo do motor: solte o parafuso de drenagem.", "o parafuso", "os parafusos", "Aperte %s a %d N·m."},
		{"Motorolie: draai de aftapplug los.", "de plug", "de pluggen", "Zet %s vast met %d Nm."},
	} {
		for _, torque := range []int{8, 12, 20, 25, 30} {
			want := "bolt.drain.torque " + strconv.Itoa(torque) + " N·m"
			if got := sureBolts(c.drain + " " + sentence(c.tighten, c.one, torque)); !slices.Contains(got, want) {
				t.Errorf("%s %s: %q are sure, not %q", c.drain, c.one, got, want)
			}
			if got := sureBolts(c.drain + " " + sentence(c.tighten, c.several, torque)); slices.Contains(got, want) {
				t.Errorf("%s %s: %q is sure", c.drain, c.several, got)
			}
		}
	}
	for _, text := range []string{
		"Drain the gearbox oil. Remove the bolts (8 mm spanner).",
		"Drain the engine oil. Remove the plugs (17 mm spanner) and fit new O-rings.",
		"Drain the gearbox oil. Remove the four screws (5 mm Allen key).",
	} {
		if got := sureBolts(text); len(got) > 0 {
			t.Errorf("%q: %q are sure", text, got)
		}
	}
}

// sentence puts a thing and a number into a sentence that has a place for each.
func sentence(form, thing string, number int) string {
	var b []byte
	for i := 0; i < len(form); i++ {
		switch {
		case form[i] != '%':
			b = append(b, form[i])
			continue
		case form[i+1] == 's':
			b = append(b, thing...)
		default:
			b = strconv.AppendInt(b, int64(number), 10)
		}
		i++
	}
	return string(b)
}

// Rings in the plural are those of the two plugs that are named together.
func TestRead_RingsOfTwoPlugs(t *testing.T) {
	drain, filler, level := "bolt.gearbox-drain.seal flat-copper", "bolt.gearbox-filler.seal flat-copper", "bolt.gearbox-level.seal flat-copper"
	for text, want := range map[string][]string{
		"Gearbox oil\nRemove the drain plug and the filler plug and fit new copper washers.":                               {drain, filler},
		"Gearbox oil\nRemove the drain plug and the filler plug. Fit new copper washers.":                                  {drain, filler},
		"Remove the drain plug and the level plug of the gearbox. Refit the plugs with new copper washers.":                {drain, level},
		"Schaltgetriebeöl\nAblassschraube und Einfüllschraube mit neuen Kupferdichtringen einsetzen.":                      {drain, filler},
		"Huile de boîte\nRemonter le bouchon de vidange et le bouchon de remplissage avec des rondelles en cuivre neuves.": {drain, filler},
		"Gearbox oil\nRemove the filler plug. Remove the drain plug and fit a new copper washer.":                          {drain},
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Where a language calls a key so that goes into a bolt and one that goes over it, its size is
// sure, and what it turns is asked.
func TestRead_KeyOfTwoKinds(t *testing.T) {
	for _, c := range []struct{ text, size, drive string }{
		{"Ablassschraube mit einem Sechskantschlüssel SW 17 lösen.", "17", "hexagon"},
		{"Ablassschraube mit einem Sechskantschlüssel 8 mm lösen.", "8", "hexagon-key"},
		{"Svitare il tappo di scarico (chiave esagonale da 19).", "19", "hexagon"},
		{"Solte o bujão de drenagem com uma chave sextavada de 10 mm.", "10", "hexagon-key"},
		{"Draai de aftapplug los met een zeskantsleutel van 17 mm.", "17", "hexagon"},
	} {
		if got, want := said(c.text, "bolt."), []string{"bolt.drain.drive " + c.drive, "bolt.drain.size " + c.size + " mm"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", c.text, got, want)
		}
		if !sureIn(c.text, "bolt.drain.size") || sureIn(c.text, "bolt.drain.drive") {
			t.Errorf("%q: the size is sure, and the drive is not", c.text)
		}
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
