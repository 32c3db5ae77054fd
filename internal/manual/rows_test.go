package manual_test

import (
	"slices"
	"strings"
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
		{"oils and how often they are changed", "Motor, mit Filter    2,2 Liter    Marken-HD-Öl SAE 20W-50    alle 5000 km\nMotor, ohne Filter   2,0 Liter\nGetriebe             0,7 Liter    Hypoid-Getriebeöl SAE 80   alle 9000 km\nHinterradantrieb     0,2 Liter    Hypoid-Getriebeöl SAE 90   alle 12000 km\n", "interval.", []string{"interval.distance 5000 km", "interval.final 12000 km", "interval.gearbox 9000 km"}},
		{"marks under models", "                    Alisio 125     Alisio 200\nEngine oil 1.2 L        ●              –\nEngine oil 1.5 L        –              ●\nDrain plug 25 N·m       ●              ●\n", "oil.", []string{"oil.engine.oil-only 1.2 L", "oil.engine.oil-only 1.5 L"}},
		{"one mark in a row", "Olio motore          Alisio 125     Alisio 200\nogni 3000 km             ●\nogni 6000 km                            ●\n", "interval.", []string{"interval.distance 3000 km", "interval.distance 6000 km"}},
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
		{"Remove oil drain plug (1). Take off the oil filter cover (2) and the insert (5).", "bolt.filter-cover.", []string{}},
		{"Remove the two screws (4). Take off the oil filter cover (2). Refit plug (1).", "bolt.filter-cover.", []string{"bolt.filter-cover.count 2"}},
		{"Vis (4) et couvercle du filtre à huile (5) : déposer. Retirer l'élément (6).", "bolt.filter-cover.", []string{}},
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

// A mark in the column of a model says that its row is of that one.
func TestRead_MarksOfModels(t *testing.T) {
	p := manual.Read("                    Alisio 125     Alisio 200\nEngine oil 1.2 L        ●              –\nEngine oil 1.5 L        –              ●\nDrain plug 25 N·m       ●              ●\n", "")
	var got []string
	for _, r := range p.Readings {
		if r.What != "model" {
			got = append(got, r.Text+" "+r.Model)
		}
	}
	if want := []string{"1.2 L Alisio 125", "1.5 L Alisio 200", "25 N·m "}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What is due in frost is due in hard use.
func TestRead_DueInFrost(t *testing.T) {
	for _, text := range []string{
		"Engine oil ........ every 10 000 km *\n\n* With temperatures below 0 °C every 3 000 km or 3 months.\n",
		"Motoröl ........ alle 10 000 km *\n\n* Bei Temperaturen unter 0 °C alle 3 000 km oder 3 Monate.\n",
		"Huile moteur ........ tous les 10 000 km *\n\n* Par températures inférieures à 0 °C tous les 3 000 km ou 3 mois.\n",
		"Olio motore ........ ogni 10 000 km *\n\n* A temperature inferiori a 0 °C ogni 3 000 km o 3 mesi.\n",
		"Aceite del motor ........ cada 10 000 km *\n\n* Con temperaturas inferiores a 0 °C cada 3 000 km o 3 meses.\n",
		"Óleo do motor ........ a cada 10 000 km *\n\n* Com temperaturas abaixo de 0 °C a cada 3 000 km ou 3 meses.\n",
		"Motorolie ........ elke 10 000 km *\n\n* Bij temperaturen onder 0 °C elke 3 000 km of 3 maanden.\n",
	} {
		if got, want := said(text, "interval."), []string{"interval.distance 10000 km", "interval.severe 3000 km", "interval.severe-months 3 months"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A bolt that is undone to drain a gearbox is its drain plug, whatever it is called.
func TestRead_DrainedBy(t *testing.T) {
	for _, text := range []string{
		"To drain the gearbox, remove the lower bolt (19 mm spanner). Engine oil: 1 L.",
		"Pour vidanger la boîte de vitesses, retirer la vis inférieure (clé de 19). Huile moteur : 1 l.",
		"Per vuotare il cambio togliere la vite inferiore (chiave da 19 mm). Olio motore 1 l, olio cambio 0,7 l.",
		"Para vaciar la caja de cambios, quite el tornillo inferior (llave de 19 mm). Aceite del motor: 1 l.",
	} {
		if got, want := said(text, "bolt."), []string{"bolt.gearbox-drain.drive hexagon", "bolt.gearbox-drain.size 19 mm"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if got := said("Drain the engine oil (2.3 L). Remove the bolts of the guard (8 mm spanner).", "bolt."); len(got) > 0 {
		t.Errorf("%q", got)
	}
}

// What a step of a list says of its one part is sure, whatever the other steps are of.
func TestRead_TorqueOfStep(t *testing.T) {
	text := "Oil change\n\n1. Take off the oil filter cover and the element.\n2. Fit the oil drain plug with a new copper washer.\n   Torque: 24 N·m\n3. Fit the cover.\n   Torque: 10 N·m\n"
	if !sureIn(text, "bolt.drain.torque") {
		t.Errorf("asked: %v", manual.Read(text, "").Readings)
	}
}

// Names stand in quotation marks of each language.
func TestRead_QuotedNames(t *testing.T) {
	for _, text := range []string{"CORVALLE « Tundra » 250\nHuile moteur : 1,1 l, SAE 10W-40.\n", "CORVALLE “Tundra” 250\nOlio motore: 1,1 l, SAE 10W-40.\n", "CORVALLE „Tundra“ 250\nMotoröl: 1,1 l, SAE 10W-40.\n", "CORVALLE \"Tundra\" 250\nAceite del motor: 1,1 l, SAE 10W-40.\n"} {
		if got, want := said(text, "m"), []string{"make Corvalle", "model Tundra 250"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if got, want := said("CORVALLE 600 \"Tundra\"\n\nOlio motore: 2 l, SAE 40.\n", "m"), []string{"make Corvalle", "model 600 Tundra"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// An amount of oil by its name, of which a sentence tells with a word that nobody here knows, is
// asked for.
func TestRead_AmountBeforeItsOil(t *testing.T) {
	for _, text := range []string{
		"La Corvalle Tundra exige 1,1 l d'huile moteur.", "Die Brenndal Fjord verlangt 1,1 l Motoröl.", "La Corvalle Tundra vuole 1,1 l di olio motore.",
	} {
		if got, want := said(text, "oil."), []string{"oil.engine.oil-only 1.1 L"}; !slices.Equal(got, want) || sureIn(text, "oil.engine.oil-only") {
			t.Errorf("%q: %q, want %q asked", text, got, want)
		}
	}
}

// Nothing is drained at a nut, whatever was spoken of before it.
func TestRead_NutsHoldNoOil(t *testing.T) {
	for _, text := range []string{
		"Oil drain plug: 25 N·m.\nNut M10: 44 N·m\n", "Die Ablassschraube des Öls öffnen. Muttern mit 44 Nm anziehen.", "Enlever le bouchon de vidange d'huile. Serrer les écrous à 44 Nm.",
		"Togliere il tappo di scarico olio. Serrare i dadi a 44 Nm.", "Quite el tapón de vaciado del aceite. Apriete las tuercas a 44 N·m.", "Retire o bujão de drenagem do óleo. Aperte as porcas a 44 N·m.", "Verwijder de olieaftapplug. Draai de moeren vast met 44 Nm.",
	} {
		for _, s := range said(text, "bolt.") {
			if s == "bolt.drain.torque 44 N·m" || s == "bolt.drain.thread M10" {
				t.Errorf("%q: %s", text, s)
			}
		}
	}
}

// A screw may be told with its length, which is no pitch; "a bolt" counts no screws.
func TestRead_ScrewsAndTheirLength(t *testing.T) {
	for text, want := range map[string][]string{
		"Oil filter cover: 4 x M6x20, 8-10 Nm":                                                   {"bolt.filter-cover.count 4", "bolt.filter-cover.thread M6", "bolt.filter-cover.torque 8–10 N·m"},
		"Oil filter cover bolts (M6 x 25) ..... 10 N·m":                                          {"bolt.filter-cover.thread M6", "bolt.filter-cover.torque 10 N·m"},
		"Ölfilterdeckel, Schrauben M6 × 30 ..... 10 Nm":                                          {"bolt.filter-cover.thread M6", "bolt.filter-cover.torque 10 N·m"},
		"Oil drain plug M14 x 1.5 ..... 25 N·m":                                                  {"bolt.drain.thread M14x1.5", "bolt.drain.torque 25 N·m"},
		"Remove the right-hand cover. Behind it the centrifugal filter is held by a 10 mm bolt.": nil,
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// What a row says within its value is not what is spoken of below it; numbers that call the parts of a
// picture count nothing, also in steps set behind their marks.
func TestRead_WithinAValue(t *testing.T) {
	for _, c := range []struct {
		text, of string
		want     []string
	}{
		{"Technical data\nEngine\n   Type ............. air-cooled V-twin, shaft drive\n   Engine oil with filter ... 3.7 l\n   Permitted oil consumption ........ 0.7 l per 1,000 km\n   Grade ............ SAE 15W-50, API SG\nFinal drive\n   Oil change ....... 0.21 l\n   Grade ............ SAE 75W-140, API GL-5\n", ".grades",
			[]string{"oil.engine.grades 15W-50", "oil.final.grades 75W-140"}},
		{"Technische Daten\nMotor\n   Bauart ........... luftgekühlter Boxer, Kardanantrieb\n   Zulässiger Ölverbrauch ....... 0,7 l auf 1.000 km\n   Viskosität ....... SAE 15W-50\nEndantrieb\n   Ölwechsel ........ 0,21 l\n   Viskosität ....... SAE 75W-140\n", ".grades",
			[]string{"oil.engine.grades 15W-50", "oil.final.grades 75W-140"}},
		{"Changing the engine oil\n–  Remove oil drain plug (1) with the magnet.\n–  Remove screws (3). Take off the oil filter cover.\n", ".count", nil},
		{"Motoröl wechseln\n–  Ölablassschraube (1) entfernen.\n–  Schrauben (3) lösen. Ölfilterdeckel abnehmen.\n", ".count", nil},
	} {
		var got []string
		for _, s := range append(said(c.text, "oil."), said(c.text, "bolt.")...) {
			if strings.Contains(s, c.of) {
				got = append(got, s)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A column of threads may give their pitch behind a diameter without its M, and one of counts stands
// before it.
func TestRead_PitchesInColumns(t *testing.T) {
	for _, text := range []string{
		"BINÁRIOS DE APERTO                         Quant.   Rosca (mm)    N·m (kgf·m)\nParafuso de drenagem do óleo .............. 1        12 x 1,5      29 (3,0)\nParafuso da tampa da embraiagem ........... 9         6            12 (1,2)\n",
		"TIGHTENING TORQUES                         Q'ty     Thread (mm)   N·m (kgf·m)\nOil drain bolt ............................ 1        12 × 1.5      29 (3.0)\nClutch cover bolt ......................... 9         6            12 (1.2)\n",
	} {
		if got, want := said(text, "bolt.drain."), []string{"bolt.drain.thread M12x1.5", "bolt.drain.torque 29 N·m"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A row may name the filter beside the oil with a small word of its own.
func TestRead_OilAndOfFilter(t *testing.T) {
	for text, want := range map[string][]string{
		"Óleo do motor\n   mudança de óleo ................ 2,2 litros\n   mudança de óleo e de filtro .... 2,4 litros\n":      {"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"},
		"Huile moteur\n   changement d'huile ................ 2,2 litres\n   changement d'huile et du filtre ... 2,4 litres\n": {"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"},
	} {
		if got := said(text, "oil."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
