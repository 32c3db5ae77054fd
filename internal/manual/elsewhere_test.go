package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// Words that look like a reading, and stand for something else.
func TestRead_Elsewhere(t *testing.T) {
	gears := []string{"oil.gearbox.grades 10W-40", "oil.gearbox.service SG"}
	upright := []string{"level.gearbox.device hole", "level.gearbox.stance upright"}
	run := []string{"warm.time 3 min"}
	for _, c := range []struct {
		text, begin string
		want        []string
	}{
		// An engine's oil that a gearbox is filled with is the gearbox's.
		{"Single-cylinder two-stroke\nGearbox oil, type ........ engine oil SAE 10W-40, API SG\n", "oil.", gears},
		{"Einzylinder-Zweitaktmotor\nSchaltgetriebeöl, Sorte ........ Motoröl SAE 10W-40, API SG\n", "oil.", gears},
		{"Moteur monocylindre deux temps\nHuile de boîte, type ........ huile moteur SAE 10W-40, API SG\n", "oil.", gears},
		{"Motore monocilindrico due tempi\nOlio cambio, tipo ........ olio motore SAE 10W-40, API SG\n", "oil.", gears},
		// The engine that cools is not whose level is read.
		{"GEARBOX OIL\nLet the engine cool, hold the machine upright and take out the level screw: a little oil runs out of the hole.\n", "level.", upright},
		{"SCHALTGETRIEBEÖL\nMotor abkühlen lassen, Motorrad senkrecht halten, Kontrollschraube herausdrehen, bis Öl austritt.\n", "level.", upright},
		// A heading may be long where it is in capitals.
		{"CHECKING THE OIL LEVEL\nRead the level at the window.\n\nCHANGING THE ENGINE OIL AND CLEANING THE OIL STRAINER\nRun the engine for 3 minutes. Undo the drain plug.\n", "warm.", run},
		{"VERIFICA LIVELLO OLIO\nControllare il livello dall'oblò.\n\nSOSTITUZIONE OLIO MOTORE E PULIZIA DEL FILTRO A RETE\nScaldare il motore per 3 minuti. Svitare il tappo di scarico.\n", "warm.", run},
		{"ÖLSTAND PRÜFEN\nÖlstand am Schauglas ablesen.\n\nMOTORÖL WECHSELN UND DAS ÖLSIEB IM KURBELGEHÄUSE REINIGEN\nMotor 3 Minuten laufen lassen. Ablassschraube herausdrehen.\n", "warm.", run},
		// Air that cleans does not cool.
		{"Pulire la retina del filtro con aria compressa.", "cooling", nil},
		{"Limpiar el tamiz con aire comprimido.", "cooling", nil},
		{"Raffreddamento: aria\nOlio motore: 1,2 l\n", "cooling", []string{"cooling air"}},
		// What turns a filter need not be a strap.
		{"Take off the oil filter with the cap wrench.", "bolt.", nil},
		{"Den Ölfilter mit dem Ölfilterschlüssel lösen.", "bolt.", nil},
		{"Dévisser le filtre à huile avec une clé à filtre.", "bolt.", nil},
		{"Unscrew the oil filter with a strap wrench.", "bolt.", []string{"bolt.filter.drive strap"}},
		// A washer at each change is no strainer at each.
		{"Oil strainer: clean every 12,000 km. Replace the washer of the drain plug at every oil change.", "strainer.", nil},
		{"Ölsieb alle 12.000 km reinigen. Den Dichtring der Ablassschraube bei jedem Ölwechsel erneuern.", "strainer.", nil},
		{"Clean the oil strainer at every oil change.", "strainer.", []string{"strainer.every 1"}},
		// A motorcycle rests on its stand, and no dipstick.
		{"Cambie el aceite con la moto apoyada en la pata de cabra.", "level.", nil},
		{"Change the oil with the bike resting on its side stand.", "level.", nil},
	} {
		if got := said(c.text, c.begin); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A leader may be one dot long, and an oil may stand behind its plug.
func TestRead_HardlyRoom(t *testing.T) {
	for text, want := range map[string][]string{
		"TORQUES                         N·m     kgf·m\nOil drain plug, M12 x 1.5 ..... 22      2.2\nOil filter cover, 3 screws M6 . 10      1.0\n": {"bolt.drain.torque 22 N·m", "bolt.filter-cover.torque 10 N·m"},
		"ANZUGSMOMENTE                   Nm      kpm\nÖlablassschraube .............. 22      2,2\nÖlfilterdeckel, 3 Schrauben M6 . 10     1,0\n":   {"bolt.drain.torque 22 N·m", "bolt.filter-cover.torque 10 N·m"},
		"Drain plug, gearbox    M12x1.5    20 Nm    copper washer\nDrain plug, engine     M14x1.5    30 Nm    aluminium washer\n":                   {"bolt.drain.torque 30 N·m", "bolt.gearbox-drain.torque 20 N·m"},
	} {
		got := slices.DeleteFunc(said(text, "bolt."), func(s string) bool { return s[len(s)-4:] != "N·m" })
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A footnote that has figures of its own, or is long, tells of its row, and of nothing before it.
func TestRead_LongFootnotes(t *testing.T) {
	oil := []string{"oil.engine.with-filter 3.6 L", "oil.final.dry 200 mL", "oil.final.volume 170 mL"}
	level := []string{"level.final.device hole", "level.final.stance centre-stand"}
	for _, c := range []struct {
		text, begin string
		want        []string
	}{
		{"Filling         Quantity     Renew every\nEngine          3.6 l 1)     12,000 km\nFinal drive     170 ml 2)    24,000 km\n\n1) Filter renewed.\n2) After dismantling: 200 ml.\n", "oil.", oil},
		{"Füllmengen\nMotoröl            3,6 l *\nHinterachsöl       170 ml **\n\n* mit Filterwechsel.\n** Nach dem Zerlegen: 200 ml.\n", "oil.", oil},
		{"Capacités\nHuile moteur          3,6 l (1)\nHuile de pont         170 ml   (2)\n\n(2) Après démontage : 200 ml.\n", "oil.final", oil[1:]},
		{"Tightening                   N·m\nEngine drain plug            34\nFinal drive filler cap *     12\n\n* New O-ring. The oil stands level with the lower edge of the opening, with the machine on its centre stand.\n", "level.", level},
		{"Anzugsmomente                Nm\nÖlablassschraube             34\nEinfüllschraube Hinterachsantrieb *     12\n\n* Dichtring erneuern. Das Öl steht bis zur Unterkante der Öffnung, das Motorrad auf dem Hauptständer.\n", "level.", level},
	} {
		if got := said(c.text, c.begin); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A long name ends where a longer part begins, a raised figure marks a footnote, a column of
// figures is none of text, and a cell may say how the engine is cooled.
func TestRead_CellsAndNames(t *testing.T) {
	hole := []string{"level.gearbox.device hole"}
	severe := []string{"interval.distance 12000 km", "interval.severe 6000 km"}
	for _, c := range []struct {
		text, begin string
		want        []string
	}{
		{"GEARBOX OIL\nTake out the gearbox oil level screw: a little oil has to run out of the hole.\n", "level.", hole},
		{"GEARBOX OIL\nUndo the gearbox oil level plug; some oil should run out.\n", "level.", hole},
		{"Gearbox oil level bolt: 6 N·m. Engine oil drain bolt: 25 N·m.", "bolt.", []string{"bolt.drain.torque 25 N·m", "bolt.gearbox-level.torque 6 N·m"}},
		{"Engine oil, renew     every 12 000 km ¹)\nBrake fluid, renew    every 2 years\n¹) In dust: every 6 000 km.\n", "interval.", severe},
		{"Motoröl wechseln           alle 12 000 km¹\nBremsflüssigkeit wechseln  alle 2 Jahre\n¹ Bei Staub: alle 6 000 km.\n", "interval.", severe},
		{"Vidange huile moteur    tous les 12 000 km ²\nLiquide de frein        tous les 2 ans\n² Dans la poussière : tous les 6 000 km.\n", "interval.", severe},
		{"Engine ....... single cylinder\nCooling ...... air\nEngine oil ... 1.2 L\n", "cooling", []string{"cooling air"}},
		{"Kühlung: Flüssigkeit\nMotoröl: 1,2 l\n", "cooling", []string{"cooling liquid"}},
		{"Cooling: air filter cleaned at each change", "cooling", nil},
		{"Tapón de vaciado, líquido ..... 10 N·m\nRefrigeración ..... aire\n", "cooling", []string{"cooling air"}},
		{"Oil filter cover screws (3 off, M6): 10 N·m", "bolt.filter-cover.count", []string{"bolt.filter-cover.count 3"}},
		{"Engine oil: API service classification: SG or higher", "oil.", []string{"oil.engine.service SG"}},
		{"Motoröl: API-Klasse SG, JASO MA", "oil.", []string{"oil.engine.marks MA", "oil.engine.service SG"}},
		{"Huile moteur : API classe SG", "oil.", []string{"oil.engine.service SG"}},
	} {
		if got := said(c.text, c.begin); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// "All three oils" are the three that the page names; a sentence before "Then every" tells of
// the first change.
func TestRead_AllOils(t *testing.T) {
	two := []string{"interval.first 1000 km", "interval.gearbox-first 1000 km"}
	for text, want := range map[string][]string{
		"Engine oil 4 L. Gearbox oil 0.9 L. Primary oil 1 L.\nFirst service: 1,000 miles, all three oils.\n": {"interval.first 1000 mi", "interval.gearbox-first 1000 mi", "interval.primary-first 1000 mi"},
		"Engine oil 4 L. Gearbox oil 0.9 L.\nFirst change of both oils: 1,000 km.\n":                         two,
		"Motoröl 4 L. Schaltgetriebeöl 0,9 L.\nErster Wechsel bei 1.000 km, beide Öle.\n":                    two,
		"Huile moteur 4 L. Huile de boîte 0,9 L.\nPremière vidange des deux huiles à 1 000 km.\n":            two,
		"Change the engine oil at 1,000 km. Then change it every 6,000 km.\n":                                {"interval.distance 6000 km", "interval.first 1000 km"},
		"Motoröl bei 1.000 km wechseln. Danach alle 6.000 km wechseln.\n":                                    {"interval.distance 6000 km", "interval.first 1000 km"},
		"Changer l'huile moteur à 1 000 km. Ensuite, la changer tous les 6 000 km.\n":                        {"interval.distance 6000 km", "interval.first 1000 km"},
	} {
		if got := said(text, "interval."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Months that another part of the book has are a doubt of those that a page tells.
func TestRead_OtherMonths(t *testing.T) {
	for text, sure := range map[string]bool{
		"Engine oil is changed every 10,000 km or 12 months. The chart has 24 months.":                      false,
		"Das Motoröl wird alle 10.000 km oder 12 Monate gewechselt. In der Tabelle stehen 24 Monate.":       false,
		"L'huile moteur se change tous les 10 000 km ou 12 mois. Le tableau de la page 90 indique 24 mois.": false,
		"Engine oil is changed every 10,000 km or 12 months. The brake fluid lasts 24 months.":              true,
		"Engine oil is changed every 10,000 km or 12 months. The chart has 12 months too.":                  true,
	} {
		for _, r := range manual.Read(text, "").Readings {
			if r.What == "interval.months" && (r.Text != "12 months" || r.Sure != sure) {
				t.Errorf("%q: %s is sure: %v, want %v", text, r.Text, r.Sure, sure)
			}
		}
		if got := said(text, "interval.months"); len(got) != 1 {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// A photo has 5 for S, S for 5 and Z for 2 in marks and categories too; a clean page has not.
func TestRead_SpoiltCategories(t *testing.T) {
	for text, want := range map[string][]string{
		"Engine oil   SAE 1OW-4O   APl SF or 5G   JASO MAZ\nOil drain p1ug ..... 3O Nrn\n":        {"oil.engine.grades 10W-40", "oil.engine.marks MA2", "oil.engine.service SF", "oil.engine.service SG"},
		"Motoröl   SAE 1OW-4O   API 5J\nHinterachsöl   API GL-S\nÖlablassschraube ..... 3O Nrn\n": {"oil.engine.grades 10W-40", "oil.engine.service SJ", "oil.final.service GL-5"},
		"Huile moteur   API 5L, JASO MAZ\nVis de vidange d'huile ..... 3O Nrn\n":                  {"oil.engine.marks MA2", "oil.engine.service SL"},
		"Engine oil   API SF, 5G network\nOil drain plug ..... 30 Nm\n":                           {"oil.engine.service SF"},
	} {
		got := slices.DeleteFunc(said(text, "oil."), func(s string) bool { return strings.Contains(s, "volume") })
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
