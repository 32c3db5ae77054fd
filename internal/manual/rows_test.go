package manual_test

import (
	"slices"
	"testing"

	"tidysump/internal/manual"
)

// Whose a row is follows from its label and from the rows beside it.
func TestRead_RowsBesideEachOther(t *testing.T) {
	for _, c := range []struct {
		name, text, prefix string
		want               []string
	}{
		{"a transmission beside a gearbox", "Coppa motore        litri 2,5    SAE 20W/50    ogni 3000 km\nScatola cambio      litri 0,6    SAE 80        ogni 9000 km\nScatola trasmissione  litri 0,2  SAE 90        ogni 12000 km\n", "oil.", []string{"oil.engine.grades 20W-50", "oil.engine.oil-only 2.5 L", "oil.final.grades 90", "oil.final.volume 0.2 L", "oil.gearbox.grades 80", "oil.gearbox.volume 0.6 L"}},
		{"gear oil beside a gearbox", "Engine oil        2.5 l\nGearbox           0.6 l\nGear oil          0.2 l\n", "oil.", []string{"oil.engine.oil-only 2.5 L", "oil.final.volume 0.2 L", "oil.gearbox.volume 0.6 L"}},
		{"gear oil alone is the gearbox's", "Engine oil        2.5 l\nGear oil          0.6 l\nGearbox drain plug    25 N·m\n", "oil.", []string{"oil.engine.oil-only 2.5 L", "oil.gearbox.volume 0.6 L"}},
		{"a product behind an amount", "Motor      2,4 Liter    Marken-HD-Öl SAE 20W-50      alle 5000 km\nGetriebe   0,7 Liter    Hypoid-Getriebeöl SAE 80     alle 9000 km\nHinterradantrieb   0,2 Liter   Hypoid-Getriebeöl SAE 90   alle 12000 km\n", "interval.", []string{"interval.distance 5000 km", "interval.final 12000 km", "interval.gearbox 9000 km"}},
		{"the same in English", "Engine        2.4 l    premium oil SAE 20W-50     every 5,000 km\nGearbox       0.7 l    hypoid gear oil SAE 80     every 9,000 km\nFinal drive   0.2 l    hypoid gear oil SAE 90     every 12,000 km\n", "oil.", []string{"oil.engine.grades 20W-50", "oil.engine.oil-only 2.4 L", "oil.final.grades 90", "oil.final.volume 0.2 L", "oil.gearbox.grades 80", "oil.gearbox.volume 0.7 L"}},
		{"a note behind the last mark", "                 1 000 km   10 000 km   20 000 km   30 000 km   40 000 km   Notas\nÓleo do motor       S          S           S           S           S       (1)\nFiltro de ar                   I           S           I           S\n\nS = substituir   I = inspecionar\n\n(1) Ou uma vez por ano.\n", "interval.", []string{"interval.distance 10000 km", "interval.first 1000 km", "interval.months 12 months"}},
		{"heads that are the numbers of a title's models", "LUMARD Alisio 125 / Alisio 200\n\n                     125          200\nEngine oil, change   0.9 l        1.2 l\nDisplacement         124 cc       198 cc\n", "", []string{"displacement 124 mL", "displacement 198 mL", "make Lumard", "model Alisio 125", "model Alisio 200", "oil.engine.oil-only 0.9 L", "oil.engine.oil-only 1.2 L"}},
		{"heads that are numbers of nothing", "                     125          200\nEngine oil, change   0.9 l        1.2 l\n", "model", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := said(c.text, c.prefix); !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}

// A cover may be held by nuts, and a key fits the part beside which it stands.
func TestRead_NutsAndKeys(t *testing.T) {
	for _, c := range []struct {
		text, prefix string
		want         []string
	}{
		{"Remova as 3 porcas da tampa do filtro de óleo e troque o elemento.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Togliere i 3 dadi del coperchio del filtro olio e cambiare l'elemento.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Undo the three nuts of the oil filter cover and take out the element.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Die drei Muttern des Ölfilterdeckels lösen und den Einsatz wechseln.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Quite las tres tuercas de la tapa del filtro de aceite y cambie el elemento.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Draai de drie moeren van het oliefilterdeksel los en vervang het element.", "bolt.", []string{"bolt.filter-cover.count 3"}},
		{"Engine oil. Spark plug nut: 20 N·m. Rear wheel nut: 90 N·m.", "bolt.", nil},
		{"Quite el tapón de llenado y el perno de drenaje del aceite (llave de 17 mm).", "bolt.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 17 mm"}},
		{"Remove the oil filler cap and the oil drain plug (17 mm spanner).", "bolt.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 17 mm"}},
	} {
		if got := said(c.text, c.prefix); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// The level of two oils may be told of in one sentence.
func TestRead_LevelOfTwo(t *testing.T) {
	for _, text := range []string{
		"Getriebe und Hinterradantrieb sind richtig gefüllt, wenn das Öl bis zur Unterkante der Einfüllöffnung steht.",
		"The gearbox and the final drive are full when the oil stands at the edge of the filler hole.",
	} {
		if got, want := said(text, "level."), []string{"level.final.device hole", "level.gearbox.device hole"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// An amount of oil is asked for on a text that shows nothing else of an engine.
func TestRead_LoneAmount(t *testing.T) {
	for _, c := range []struct {
		text string
		sure bool
	}{
		{"oil 1 L", false},
		{"olive oil 1 L\nflour 2 kg\n", false},
		{"Öl 1 l\n", false},
		{"huile d'olive 1 L", false},
		{"aceite de oliva: 1 L", false},
		{"olio 1 l", false},
		{"óleo 1 L", false},
		{"Engine oil 1 L", true},
		{"Oil: 1 L, SAE 10W-40", true},
	} {
		got := sureIn(c.text, "oil.engine.oil-only")
		if got != c.sure {
			t.Errorf("%q: sure %v, want %v", c.text, got, c.sure)
		}
	}
}

// sureIn reports whether a text says a thing for certain.
func sureIn(text, what string) bool {
	for _, r := range manual.Read(text, "").Readings {
		if r.What == what && r.Sure {
			return true
		}
	}
	return false
}
