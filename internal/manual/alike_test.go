package manual_test

import (
	"slices"
	"strings"
	"testing"
)

// What is said alike in several languages is read alike. All figures are invented.
func TestRead_Alike(t *testing.T) {
	for _, c := range []struct {
		name, prefix string
		want         []string
		texts        []string
	}{
		{"changing the filter is the filter's where a distance is told for it", "", []string{"interval.distance 5000 km", "interval.filter 10000 km"}, []string{
			"Every 5,000 km change the engine oil. Every 10,000 km change the filter.",
			"Engine oil: every 5,000 km. Filter change every 10,000 km.",
			"Ogni 5.000 km sostituire l'olio motore. Ogni 10.000 km sostituire il filtro olio.",
			"Cambio olio motore ogni 5.000 km, cambio filtro ogni 10.000 km.",
			"Cambio de aceite del motor cada 5.000 km, cambio de filtro cada 10.000 km.",
			"Cada 5.000 km cambiar el aceite de motor. Cada 10.000 km cambiar el filtro de aceite.",
			"A cada 5.000 km trocar o óleo do motor. A cada 10.000 km trocar o filtro de óleo.",
			"Huile moteur tous les 5 000 km. Tous les 10 000 km, remplacement du filtre à huile.",
			"Motoröl alle 5.000 km. Filterwechsel alle 10.000 km.",
			"Motorolie om de 5.000 km. Filterwissel om de 10.000 km.",
		}},
		{"and with the oil where it is told for both", "", []string{"filter.every 1", "interval.distance 5000 km"}, []string{
			"Cambio de aceite del motor y cambio de filtro cada 5.000 km.",
			"Ogni 5.000 km sostituire l'olio motore e sostituire il filtro.",
		}},
		{"what stands behind a distance may be of the next", "interval.", []string{"interval.distance 7500 km", "interval.filter 15000 km"}, []string{
			"Oil: SAE 15W-50. Replace every 7,500 km, filter every 15,000 km.",
			"Huile : SAE 15W50. Remplacement tous les 7 500 km, filtre tous les 15 000 km.",
			"Öl: SAE 15W-50. Wechsel alle 7.500 km, Filter alle 15.000 km.",
			"Olio: SAE 15W-50. Sostituzione ogni 7.500 km, filtro ogni 15.000 km.",
		}},
		{"hard use behind a time and a distance", "interval.", []string{"interval.months 12 months", "interval.severe 2500 km"}, []string{
			"Change the engine oil at least once a year, every 2,500 km if you often ride on dusty roads.",
			"L'olio motore va comunque cambiato almeno una volta l'anno, ogni 2.500 km se si viaggia spesso su strade polverose.",
		}},
		{"two distances in a line are over no list", "interval.", []string{"interval.distance 7500 km", "interval.first 1000 km"}, []string{
			"Engine oil SAE 10W-60.\n\nFirst change at 1,000 km, then every 7,500 km.\nAt the same time grease the suspension linkage.",
			"Olio motore SAE 10W-60.\n\nPrimo cambio a 1.000 km, poi ogni 7.500 km.\nContemporaneamente ingrassare i leveraggi della sospensione.",
		}},
		{"not changing a filter warns of no grade", "oil.engine.grades", []string{"oil.engine.grades 10W-60"}, []string{
			"Engine oil: fill in 2.1 L of SAE 10W-60 (2.0 L if the filter is not changed).",
			"Olio motore: immettere 2,1 l di olio SAE 10W-60 (2,0 l se la cartuccia non viene cambiata).",
			"Aceite de motor: vierta 0,9 litros SAE 10W-60, ponga el motor en marcha y compruebe que no hay fugas.",
			"Motoröl: 2,1 l SAE 10W-60 (2,0 l, wenn der Filter nicht gewechselt wird).",
		}},
		{"but a grade may be warned of", "oil.engine.grades", nil, []string{
			"Engine oil: SAE 20W-20 must not be used.",
			"Motoröl: SAE 20W-20 darf nicht verwendet werden.",
		}},
		{"what an air filter is soaked in is of no engine", "oil.", nil, []string{
			"Air filter, foam: wash every 3,000 km and soak it in oil SAE 30.",
			"Filtro aria in spugna: lavare ogni 3.000 km e impregnare con olio SAE 30.",
			"Luftfilter aus Schaumstoff: alle 3.000 km auswaschen und mit Öl SAE 30 tränken.",
			"Filtre à air en mousse : laver tous les 3 000 km et imprégner d'huile SAE 30.",
		}},
		{"a key is of the part that the sentence goes on to", "bolt.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 19 mm"}, []string{
			"Engine oil. Take off the filler cap and, with a 19 mm spanner, the drain plug.",
			"Engine oil. Take off the filler cap, then undo with a 19 mm spanner the drain plug.",
			"Huile moteur. Ôter le bouchon de remplissage puis, à l'aide d'une clé de 19, le bouchon de vidange.",
			"Motoröl. Einfülldeckel abnehmen und mit einem Schlüssel SW 19 die Ablassschraube herausdrehen.",
			"Olio motore. Togliere il tappo di riempimento e, con una chiave da 19 mm, il tappo di scarico.",
		}},
		{"and of the part before it where it says so", "bolt.drain.size", []string{"bolt.drain.size 17 mm"}, []string{
			"Engine oil. Undo the drain plug and refit it with a 17 mm spanner, the filler cap by hand.",
			"Engine oil. Undo the drain plug with a 17 mm spanner and take off the filler cap.",
		}},
		{"a machine that leans on its stand is no stick that rests", "level.device", []string{"level.device stick-screwed"}, []string{
			"Nível do óleo do motor\nMota apoiada no descanso lateral. Tirar a vareta, limpá-la e enroscá-la completamente.",
			"Livello olio motore\nMoto appoggiata al cavalletto laterale. Estrarre l'asta e avvitarla a fondo.",
			"Nivel de aceite del motor\nMoto apoyada en el caballete central. Saque la varilla y enrósquela hasta el tope.",
		}},
		{"what holds a filter's thread is no filter", "bolt.", []string{"bolt.drain.torque 30 N·m", "bolt.filter.torque 16 N·m"}, []string{
			"COUPLES DE SERRAGE          N.m\nBouchon de vidange d'huile   30\nFiltre à huile               16\nRaccord fileté de cartouche  45\n",
			"COPPIE DI SERRAGGIO          Nm\nTappo scarico olio           30\nFiltro olio                  16\nNipplo del filtro            45\n",
			"ANZUGSMOMENTE                Nm\nÖlablassschraube             30\nÖlfilter                     16\nÖlfilterstutzen              45\n",
			"TORQUES                      Nm\nOil drain plug               30\nOil filter                   16\nFilter adaptor               45\n",
		}},
		{"two drain plugs, told by where they are", "bolt.", []string{"bolt.drain.seal flat-copper", "bolt.drain.torque 24 N·m", "bolt.tank-drain.seal flat-copper", "bolt.tank-drain.torque 30 N·m"}, []string{
			"Undo the drain plug of the oil tank. Undo the drain plug of the crankcase.\nRefit both drain plugs with new copper rings: at the tank 30 Nm, at the crankcase 24 Nm.",
			"Ablassschraube am Öltank lösen. Ablassschraube des Kurbelgehäuses lösen.\nBeide Ablassschrauben mit neuen Kupferringen einsetzen: am Tank 30 Nm, am Kurbelgehäuse 24 Nm.",
		}},
		{"one oil of gearbox and primary drive is the gearbox's", "oil.", []string{"oil.gearbox.grades 80W-90", "oil.gearbox.volume 0.75 L"}, []string{
			"Two-stroke engine, petroil.\nGearbox and primary drive: shared oil, 0.75 litres, SAE 80W-90.",
			"Motore a due tempi, a miscela.\nCambio e trasmissione primaria: olio in comune, 0,75 litri, SAE 80W-90.",
			"Zweitaktmotor, Gemisch.\nGetriebe und Primärantrieb gemeinsam: 0,75 Liter SAE 80W-90.",
		}},
		{"a level at the hole of a screw", "level.gearbox.device", []string{"level.gearbox.device hole"}, []string{
			"Gearbox oil: 0.75 litres SAE 80W-90. Level at the hole of the side screw.",
			"Olio cambio: 0,75 litri SAE 80W-90. Livello al foro della vite laterale.",
			"Getriebeöl: 0,75 Liter SAE 80W-90. Ölstand bis zur Bohrung der seitlichen Schraube.",
			"Aceite de la caja de cambios: 0,75 litros SAE 80W-90. Nivel en el orificio del tornillo lateral.",
		}},
		{"a photo's thread whose pitch has a letter", "bolt.drain.thread", []string{"bolt.drain.thread M14x1.5"}, []string{
			"Aceite de motor\nTapón de vaciado, M14xl,5 .... 31 Nm",
			"Motoröl\nÖl-Ablaßschraube M14xl,5 .... 31 Nm",
			"Engine oil\nDrain plug M14xI.5 .... 31 N·m",
		}},
		{"a word cut short by a stop in a row's label", "bolt.", []string{"bolt.final-drain.torque 11.0 N·m", "bolt.gearbox-drain.torque 25 N·m"}, []string{
			"Anzugsmomente               Nm\nAblaßschr. Getriebe         25\nAblaßschr. Endantrieb       11,0\n",
		}},
		{"and behind the filter's cover how many, cut short", "bolt.filter-cover.count", []string{"bolt.filter-cover.count 2"}, []string{
			"Aceite de motor\nTapa filtro aceite, M6 (2 torn.) .... 10 Nm",
			"Óleo do motor\nTampa do filtro de óleo, M6 (2 paraf.) .... 10 N.m",
			"Motoröl\nÖlfilterdeckel, M6 (2 Schr.) .... 10 Nm",
		}},
		{"hard use behind two distances, over another job", "interval.severe", []string{"interval.severe-hours 25 h"}, []string{
			"Engine oil SAE 10W-60.\n\nFirst change at 1,000 km, then every 7,500 km. Races and dusty ground: every 25 hours.\nAt the same time grease the suspension linkage.",
			"Olio motore SAE 10W-60.\n\nPrimo cambio a 1.000 km, poi ogni 7.500 km. Gare e terreni polverosi: ogni 25 ore.\nContemporaneamente ingrassare i leveraggi della sospensione.",
		}},
		{"a make that begins like a drum", "m", []string{"make Tamborá", "model Sabiá 165"}, []string{
			"TAMBORÁ SABIÁ 165                 Manual do proprietário\n\nÓleo do motor SAE 10W-30, 1,15 litro.",
		}},
		{"cover screws are the filter's where nothing else has a cover", "bolt.filter-cover.torque", []string{"bolt.filter-cover.torque 8 N·m"}, []string{
			"Motoröl: Ablassschraube 30 Nm. Die Schrauben des Filterdeckels herausnehmen und den Papiereinsatz erneuern. Deckelschrauben über Kreuz, 8 Nm.",
			"Engine oil: drain plug 30 Nm. Take out the screws of the filter cover and renew the paper element. Cover screws crosswise, 8 Nm.",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, text := range c.texts {
				got := said(text, c.prefix)
				if c.prefix == "" {
					got = slices.DeleteFunc(got, func(s string) bool {
						return !strings.HasPrefix(s, "interval.") && !strings.HasPrefix(s, "filter.every")
					})
				}
				if !slices.Equal(got, c.want) {
					t.Errorf("%q, want %q of %q", got, c.want, text)
				}
			}
		})
	}
}

// A schedule counts in thousands and halves of them, and what is marked every 10 hours is not done
// every 20 too.
func TestRead_SchedulesThatCountHalves(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Kilometerstand in 1.000 km   1     7,5   15    22,5  30\nMotoröl                      W     W     W     W     W\nÖlfilter                     W     –     W     –     W\nW = wechseln\n", []string{"interval.distance 7500 km", "interval.filter 15000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"Odometer, x 1,000 km   0.5   2.5   5     7.5   10\nEngine oil             R     R     R     R     R\nR = replace\n", []string{"interval.distance 2500 km", "interval.first 500 km"}},
		{"ENTRETIEN                     après   toutes les   toutes les   toutes les\n                              1 h     10 h         20 h         40 h\nHuile moteur, remplacement    •       •            •            •\nCrépine d'huile, nettoyage    •       –            •            •\n", []string{"interval.first-hours 1 h", "interval.hours 10 h", "interval.strainer-hours 20 h"}},
	} {
		if got := said(c.text, "interval."); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q\n%s", got, c.want, c.text)
		}
	}
}
