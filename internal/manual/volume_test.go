package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// What an amount is of follows from what parts it from the words beside it.
func TestRead_Volumes(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"before and behind", "Engine oil with filter 2.4 l, without 2.2 l.", []string{"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
		{"behind", "Fill in 2.4 l of engine oil with filter, 2.2 l without filter.", []string{"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
		{"in brackets with its own figure", "Fill in 2.4 litres of engine oil (oil change without filter: 2.2 litres).", []string{"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
		{"two labels in a row", "Engine oil\nAt change: 850 cc    After overhaul: 1,000 cc", []string{"oil.engine.dry 1000 mL", "oil.engine.oil-only 850 mL"}},
		{"heads of columns", "                drained    filter changed    dry\nEngine oil      3.3 L      3.6 L             4.3 L\nGearbox oil     0.85 L\n", []string{"oil.engine.dry 4.3 L", "oil.engine.oil-only 3.3 L", "oil.engine.with-filter 3.6 L", "oil.gearbox.volume 0.85 L"}},
		{"figures below their labels", "Engine oil capacity\nwithout filter replacement\n1.65 L\nwith filter replacement\n1.75 L\n", []string{"oil.engine.oil-only 1.65 L", "oil.engine.with-filter 1.75 L"}},
		{"unit of a bracket in the head", "Engine oil (litres)\nAt oil change ........ 2.0\nAfter overhaul ....... 2.6\n", []string{"oil.engine.dry 2.6 L", "oil.engine.oil-only 2.0 L"}},
		{"what an engine burns", "Engine oil: 2.2 L. An engine in good order may use up to 0.4 L of oil in 1,000 km.", []string{"oil.engine.oil-only 2.2 L"}},
		{"what an engine burns, in German", "Motoröl 2,2 l. Der Motor darf bis 0,4 l auf 1.000 km verbrauchen.", []string{"oil.engine.oil-only 2.2 L"}},
		{"filled in at a distance", "Engine oil: 2.2 L at 1,000 km.", []string{"oil.engine.oil-only 2.2 L"}},
		{"a change and a filter with a stroke", "Engine oil    After draining             2.2 L\ncapacity      After draining/filter      2.4 L\n              After disassembly          2.9 L\n", []string{"oil.engine.dry 2.9 L", "oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
		{"a change and a filter with a stroke, in German", "Motoröl    Ölwechsel            2,2 l\n           Ölwechsel/Filter     2,4 l\n", []string{"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
		{"a point at half height", "Engine oil, 2·3 litres.", []string{"oil.engine.oil-only 2.3 L"}},
		{"a row that goes on below its second cell", "Brakes           Disc\nCooling          Liquid\nEngine oil       Change: 1.2 L\n                 Dry: 1.5 L\n                 SAE 10W-40, API SJ\n", []string{"oil.engine.dry 1.5 L", "oil.engine.grades 10W-40", "oil.engine.oil-only 1.2 L", "oil.engine.service SJ"}},
		{"a row that goes on, in French", "Refroidissement  liquide\nHuile moteur     Vidange : 1,2 l\n                 SAE 10W-40\nHuile de boîte   Quantité : 0,6 l\n                 SAE 80W-90\n", []string{"oil.engine.grades 10W-40", "oil.engine.oil-only 1.2 L", "oil.gearbox.grades 80W-90", "oil.gearbox.volume 0.6 L"}},
		{"what a gearbox is filled with", "Gearbox oil        0.7 l        Engine oil (SAE 15W/50), JASO MA2\n", []string{"oil.gearbox.grades 15W-50", "oil.gearbox.marks MA2", "oil.gearbox.volume 0.7 L"}},
		{"a grade of gears without its standard", "Gearbox oil: EP 90, 0.8 L.", []string{"oil.gearbox.grades 90", "oil.gearbox.volume 0.8 L"}},
		{"columns of oils", "CAPACITIES\n                     Engine        Gearbox       Primary case     Fork\nQuantity             3.0 L         0.5 L         0.25 L           0.19 L\nLubricant            SAE 20W-50    SAE 90 EP     SAE 20           SAE 10\n", []string{"oil.engine.grades 20W-50", "oil.engine.oil-only 3.0 L", "oil.gearbox.grades 90", "oil.gearbox.volume 0.5 L", "oil.primary.grades 20", "oil.primary.volume 0.25 L"}},
		{"columns of oils, in German", "                 Motor         Getriebe      Endantrieb\nMenge            3,0 l         0,8 l         0,2 l\nViskosität       SAE 20W-50    SAE 80W-90    SAE 75W-90\n", []string{"oil.engine.grades 20W-50", "oil.engine.oil-only 3.0 L", "oil.final.grades 75W-90", "oil.final.volume 0.2 L", "oil.gearbox.grades 80W-90", "oil.gearbox.volume 0.8 L"}},
		{"columns of oils and rows of amounts", "                     Engine        Gearbox\nAt change            3.0 L         0.5 L\nWhen dry             3.5 L         0.6 L\n", []string{"oil.engine.dry 3.5 L", "oil.engine.oil-only 3.0 L", "oil.gearbox.dry 0.6 L", "oil.gearbox.volume 0.5 L"}},
		{"two oils in a row", "Gearbox oil  0.7 l     Engine oil  2.5 l\n", []string{"oil.engine.oil-only 2.5 L", "oil.gearbox.volume 0.7 L"}},
		{"what an engine displaces in all", "Total engine capacity    650 cc\nEngine oil               2.6 L\n", []string{"oil.engine.oil-only 2.6 L"}},
		{"what an engine displaces in all, beside its bore", "Total capacity           718 cm³\nBore x stroke            84 x 64.8 mm\n", nil},
		{"other jobs", "Coolant: 1.1 L. Fork oil, each leg: 455 cc. Fuel tank 17 L.", nil},
		{"below a heading of another job", "AIR CLEANER\nOil the element; 60 mL are enough.", nil},
		{"an engine that has no filter", "Moteur : verser 1,1 litre d'huile. Ce moteur n'a pas de cartouche filtrante.", []string{"oil.engine.oil-only 1.1 L"}},
		{"a sentence behind a litre", "Engine oil 2.3 L. Do not leave the oil filter dry.", []string{"oil.engine.with-filter 2.3 L"}},
		{"imperial by the head over it", "                Imperial     U.S.\nEngine oil      4 pints      4.8 pints\n", []string{"oil.engine.oil-only 4 imp pt"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := said(c.text, "oil."); !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}

// What a sentence, a line further out or a heading begins with governs what stands below.
func TestRead_WhatGoverns(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"the begin of a paragraph", "GEARBOX. Capacity 0.9 l, SAE 80W-90. Drain plug: 25 N·m. Level plug: 10 N·m.", []string{"bolt.gearbox-drain.torque 25 N·m", "bolt.gearbox-level.torque 10 N·m"}},
		{"a plug behind which a strainer is cleaned", "Undo the oil drain plug and drain the oil. Clean the strainer. Torque: 20 N·m.", []string{"bolt.drain.torque 20 N·m"}},
		{"plugs of two", "Drain the oil. The drain plugs of the oil tank and of the crankcase are opened. Tighten both to 20 N·m.", []string{"bolt.drain.torque 20 N·m", "bolt.tank-drain.torque 20 N·m"}},
		{"a key before a torque", "Bouchon de vidange d'huile : clé de 22, 35 Nm.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 22 mm", "bolt.drain.torque 35 N·m"}},
		{"a ring below a plug", "Undo the oil drain plug. Unscrew the oil filter. Fit a new copper washer and tighten to 28 N·m.", []string{"bolt.drain.seal flat-copper", "bolt.drain.torque 28 N·m"}},
		{"a strainer before its plug", "Engine oil strainer: plug M20x1.5, 15 N·m.", []string{"bolt.strainer.thread M20x1.5", "bolt.strainer.torque 15 N·m"}},
		{"no range that falls", "The torque of the drain plug changes from 40 N·m to 32 N·m.", []string{"bolt.drain.torque 32 N·m", "bolt.drain.torque 40 N·m"}},
		{"a step of two jobs", "–  Remove the skid plate.  –  Stand the motorcycle on its side stand on a horizontal surface.\nMain work\n–  Place an appropriate container under the engine. Remove oil drain plug 1 with the magnet and the seal ring.\n–  Remove screw plug 2 with the oil screen and the O-rings. Clean thoroughly.\n–  Mount and tighten oil drain plug 1 with a new copper seal ring.\n     Guideline\n     Oil drain plug with magnet          M12x1.5     20 Nm (14.8 lbf ft)\n     Screw plug, oil screen              M20x1.5     15 Nm (11.1 lbf ft)\n", []string{"bolt.drain.torque 20 N·m", "bolt.strainer.torque 15 N·m"}},
		{"a line further out", "FINAL GEAR OIL    SAE 80W-90\n   Capacity       0.2 L\n   Drain bolt     13 N·m\n", []string{"bolt.final-drain.torque 13 N·m"}},
		{"a heading below a heading", "FINAL DRIVE\nTightening torques\nDrain plug: 20 N·m\nFiller plug: 22 N·m\n", []string{"bolt.final-drain.torque 20 N·m", "bolt.final-filler.torque 22 N·m"}},
		{"heads of columns that are parts", "                Fluid        Drain plug torque\nEngine          SAE 40       20 N·m\nTransmission    SAE 80       25 N·m\n", []string{"bolt.drain.torque 20 N·m", "bolt.gearbox-drain.torque 25 N·m"}},
		{"the only plug of a tank", "Remove the oil tank drain plug and let the oil run out. Refit the drain plug. Tighten the drain plug to 20 N·m.", []string{"bolt.tank-drain.torque 20 N·m"}},
		{"the only plug of a tank, in German", "Ablassschraube des Öltanks lösen. Ablassschraube einsetzen und mit 20 Nm anziehen.", []string{"bolt.tank-drain.torque 20 N·m"}},
		{"a plug of a tank and one of the crankcase", "Remove the oil tank drain plug. Undo the drain plug of the crankcase. Tighten the crankcase drain plug to 20 N·m.", []string{"bolt.drain.torque 20 N·m"}},
		{"a heading of another job", "FRONT FORK\n\nDrain screw, M6 ..... 6 N·m\nFork cap ..... 23 N·m\n", nil},
		{"a thing of its own", "TORQUE VALUES\nOil filter boss ....... 18 N·m\nSpark plug ....... 12 N·m\n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return s[len(s)-4:] != "N·m" && !slices.Contains(c.want, s) })
			if !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}

// A word that repeats a part, beside another oil or a tank, is such a part of that.
func TestRead_MeansSame(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Zuerst die Ablassschraube am Öltank (SW 17), dann die im Motorgehäuse (SW 22) öffnen.", []string{"bolt.drain.size 22 mm", "bolt.tank-drain.size 17 mm"}},
		{"Öl ablassen. Die Ablassschraube des Getriebes und die des Kardans haben M 12.", []string{"bolt.final-drain.thread M12", "bolt.gearbox-drain.thread M12"}},
		{"Dévisser le bouchon de vidange du réservoir d'huile (clé de 17), puis celui du carter moteur (clé de 22).", []string{"bolt.drain.size 22 mm", "bolt.tank-drain.size 17 mm"}},
		{"Quite el tapón de vaciado del aceite (llave de 14 mm) y el del depósito de aceite (llave de 17 mm).", []string{"bolt.drain.size 14 mm", "bolt.tank-drain.size 17 mm"}},
		{"Togliere il tappo di scarico del serbatoio olio (chiave da 17 mm) e quello del carter motore (chiave da 22 mm).", []string{"bolt.drain.size 22 mm", "bolt.tank-drain.size 17 mm"}},
		{"Le bouchon de vidange d'huile se serre à 25 N·m, celui de niveau à 10 N·m.", []string{"bolt.drain.torque 25 N·m", "bolt.level.torque 10 N·m"}},
		{"Öl wechseln. Ablassschraube lösen. Das sind rund 2 mkp am Behälter und 3 mkp am Boden.", []string{"bolt.tank-drain.torque 2 kgf·m"}},
		{"Öl wechseln. Die Ablassschraube herausdrehen. Am Rahmenrohr werden 20 Nm verlangt, am Motorgehäuse 25 Nm.", []string{"bolt.drain.torque 25 N·m", "bolt.tank-drain.torque 20 N·m"}},
	} {
		got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return strings.Contains(s, ".drive ") })
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A bare tank holds fuel, unless the page tells of one that holds oil.
func TestRead_BareTank(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Olio motore: 1,2 litri.\nSerbatoio: 8,5 litri, riserva 1,5 litri.", []string{"oil.engine.oil-only 1.2 L"}},
		{"Motoröl: 1,2 l\nTank: 6,5 l", []string{"oil.engine.oil-only 1.2 L"}},
		{"Huile moteur : le réservoir d'huile contient 2,1 litres.", []string{"oil.engine.oil-only 2.1 L"}},
		{"Carter seco. Óleo do motor: o depósito leva 2,1 litros.", []string{"oil.engine.oil-only 2.1 L"}},
	} {
		if got := said(c.text, "oil."); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// What is said of all drain plugs is said of each that the page names.
func TestRead_AllPlugs(t *testing.T) {
	for _, text := range []string{
		"Tappo scarico olio motore 18 Nm. Tappo scarico olio cambio 20 Nm. Tutti i tappi di scarico vanno montati con guarnizione di alluminio nuova.",
		"Ölablassschraube Motor 18 Nm. Ablassschraube Getriebe 20 Nm. Alle Ablassschrauben bekommen neue Aluminiumdichtringe.",
		"Bouchon de vidange moteur : 18 Nm. Bouchon de vidange de boîte : 20 Nm. Tous les bouchons de vidange reçoivent un joint aluminium neuf.",
		"Tapón de vaciado del motor: 18 Nm. Tapón de vaciado del cambio: 20 Nm. Todos los tapones de vaciado llevan arandela de aluminio nueva.",
	} {
		got := slices.DeleteFunc(said(text, "bolt."), func(s string) bool { return !strings.Contains(s, ".seal") })
		if want := []string{"bolt.drain.seal flat-aluminium", "bolt.gearbox-drain.seal flat-aluminium"}; !slices.Equal(got, want) {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// What stays says as much as what is changed.
func TestRead_FilterStays(t *testing.T) {
	for _, text := range []string{
		"Pour in 2.9 L of oil (2.7 L if the element was left in)",
		"Pour in 2.9 L of oil; with the filter left in place 2.7 L",
		"Pour in 2.9 L of oil; if you leave the old filter on, 2.7 L",
		"Oil quantity, filter left alone: 2.7 L\nFilter renewed as well: 2.9 L",
	} {
		if !slices.Contains(said(text, "oil."), "oil.engine.oil-only 2.7 L") {
			t.Errorf("%q", text)
		}
	}
}

// "Both plugs" are the two that were named last; where one is, it is asked.
func TestRead_BothPlugs(t *testing.T) {
	two := said("The engine oil drain plug and the gearbox drain plug lie below. Both plugs: 25 N·m.", "bolt.")
	if want := []string{"bolt.drain.torque 25 N·m", "bolt.gearbox-drain.torque 25 N·m"}; !slices.Equal(two, want) {
		t.Errorf("%q, want %q", two, want)
	}
	for _, r := range manual.Read("Remove the oil drain plug. Both plugs are tightened to 20 N·m.", "").Readings {
		if r.What == "bolt.drain.torque" && r.Sure {
			t.Errorf("%s is sure, and one plug is not named", r.Text)
		}
	}
}

// One oil of the engine and its gears is the engine's, in any language.
func TestRead_SharedOil(t *testing.T) {
	for text, want := range map[string]string{
		"Crankcase oil (engine, gearbox and clutch together)\n   oil change .... 2.6 Imp. pt. / 3.2 U.S. pt. / 1.5 l.": "oil.engine.oil-only 2.6 imp pt",
		"Engine and gearbox share their oil: 1.5 L":                                           "oil.engine.oil-only 1.5 L",
		"Motor und Getriebe haben einen gemeinsamen Ölvorrat.\nÖlwechsel: 1,5 l":              "oil.engine.oil-only 1.5 L",
		"Le moteur et la boîte de vitesses partagent la même huile : 1,5 litre à la vidange.": "oil.engine.oil-only 1.5 L",
	} {
		if got := said(text, "oil."); !slices.Equal(got, []string{want}) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A text in one column beside a list of figures in the other is read down, and not across.
func TestRead_TextBesideList(t *testing.T) {
	text := `CAMBIO OLIO                        TABELLA DEI DATI
Portare il motore in tempera-      Olio: SAE 15W-50, API SG
tura e spegnerlo. Togliere il      Con filtro: 2,1 litri
tappo di scarico (brugola da       Senza filtro: 1,9 litri
8 mm) e far colare l'olio.         Motore smontato: 2,4 litri
Rimontare il tappo con una         Tappo di scarico: 28 Nm
rondella di rame nuova.            Viti coperchio filtro: 9 Nm
Svitare le quattro viti del        Candela: 18 Nm
coperchio del filtro e cam-        Perno ruota: 65 Nm
biare la cartuccia filtrante.      Forcella: 200 cc per stelo
`
	want := []string{"bolt.drain.seal flat-copper", "bolt.drain.size 8 mm", "bolt.drain.torque 28 N·m", "bolt.filter-cover.count 4", "bolt.filter-cover.torque 9 N·m",
		"oil.engine.dry 2.4 L", "oil.engine.oil-only 1.9 L", "oil.engine.with-filter 2.1 L"}
	got := append(said(text, "bolt."), said(text, "oil.")...)
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("%s is not in %q", w, got)
		}
	}
}

// What goes in beyond another amount is none by itself.
func TestRead_Extra(t *testing.T) {
	want := []string{"oil.engine.oil-only 1.8 L"}
	for _, text := range []string{
		"Engine oil: 1.8 litres. Add a further 0.2 litre if the filter is changed.",
		"Engine oil: 1.8 litres; with a new filter 0.2 litre more.",
		"Engine oil: 1.8 litres. An extra 0.2 litre is needed whenever the filter has been replaced.",
		"Motoröl: 1,8 Liter. Bei Filterwechsel zusätzlich 0,2 Liter.",
		"Huile moteur : 1,8 litre. Avec filtre, 0,2 litre de plus.",
		"Aceite del motor: 1,8 litros. Con cambio de filtro, 0,2 litros adicionales.",
		"Olio motore: 1,8 litri. Con cambio filtro 0,2 litri in più.",
		"Óleo do motor: 1,8 litro. Com troca de filtro, 0,2 litro a mais.",
		"Motorolie: 1,8 liter. Met filter 0,2 liter meer.",
	} {
		if got := said(text, "oil."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	both := []string{"oil.engine.oil-only 3.0 L", "oil.engine.with-filter 3.3 L"}
	if got := said("Oil capacity: 3.3 litres when the filter is renewed; 3.0 litres for an oil change only.", "oil."); !slices.Equal(got, both) {
		t.Errorf("%q, want %q", got, both)
	}
}

// Of what an engine holds a part is changed.
func TestRead_OfWhich(t *testing.T) {
	want := []string{"oil.engine.dry 1100 mL", "oil.engine.oil-only 1000 mL"}
	for _, text := range []string{
		"Engine oil: 1,100 cc; of this 1,000 cc at a change.",
		"Engine oil: 1,100 cc, of which 1,000 cc at a change.",
		"Motoröl: 1100 cm³, davon 1000 cm³ beim Ölwechsel.",
		"Huile moteur : 1100 cm³, dont 1000 cm³ à la vidange.",
		"Olio motore: 1100 cm³, di cui 1000 cm³ al cambio olio.",
		"Aceite del motor: 1100 cm³, de los cuales 1000 cm³ en el cambio de aceite.",
	} {
		if got := said(text, "oil."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
