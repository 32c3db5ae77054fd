package manual_test

import (
	"slices"
	"testing"
)

// Marks below distances and times say when a row's work is due; a letter says what its legend
// says. All figures are invented.
func TestRead_Schedules(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"dots below every", "Wartung               1.000 km   alle 15.000 km   jährlich\n Motoröl wechseln        ●             ●              ●\n Ölfilter wechseln       ●             ●              ●\n Ölsieb reinigen         ●        alle 30.000 km\n Zündkerzen ersetzen                   ●\n",
			[]string{"filter.every 1", "interval.distance 15000 km", "interval.first 1000 km", "interval.months 12 months", "interval.strainer 30000 km", "interval.strainer-first 1000 km"}},
		{"letters with a legend", "Plano                         1.000 km    cada 5.000 km    cada 10.000 km\nÓleo do motor                     S             S\nÓleo da transmissão final         S                              S\nFiltro de ar                                    L\n(S substituir, L limpar)\n",
			[]string{"interval.distance 5000 km", "interval.final 10000 km", "interval.final-first 1000 km", "interval.first 1000 km"}},
		{"equal steps behind a first service", "Entretien            500 km   4 000 km   8 000 km   12 000 km\nHuile moteur           R         R          R          R\nFiltre à huile         R                    R\nBougie                           I          R          I\nR : remplacer, I : inspecter\n",
			[]string{"interval.distance 4000 km", "interval.filter 8000 km", "interval.filter-first 500 km", "interval.first 500 km"}},
		{"thousands in the head", "Mantenimiento (x 1000 km)     1      6      12      18     24\nAceite de motor               C      C      C       C      C\nBujía                                I      C       I      C\nC: cambiar, I: inspeccionar\n",
			[]string{"interval.distance 6000 km", "interval.first 1000 km"}},
		{"thousands by the odometer", "Kilometerstand (x 1000)   1     6     12    18    24\nMotoröl                   E     E     E     E     E\nÖlfilter                  E           E           E\nZündkerzen                      P     E     P     E\nE = Erneuern, P = Prüfen\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"a unit before its thousands in the head", "TABELLA (km x 1000)           1      5      10     15     20\nOlio motore                   S             S             S\nOlio mozzo                    S             S             S\nS = sostituzione\n",
			[]string{"interval.distance 10000 km", "interval.final 10000 km", "interval.final-first 1000 km", "interval.first 1000 km"}},
		{"miles before their thousands", "Service chart (miles x 1,000)     1     4     8     12    16\nEngine oil                        R     R     R     R     R\nOil filter                        R           R           R\nR: replace\n",
			[]string{"interval.distance 4000 mi", "interval.filter 8000 mi", "interval.filter-first 1000 mi", "interval.first 1000 mi"}},
		{"thousands beyond fifty", "Wartung (km x 1000)     1     20    40    60    80\nMotoröl                 E     E     E     E     E\nE = Erneuern\n",
			[]string{"interval.distance 20000 km", "interval.first 1000 km"}},
		{"no label over the rows", "                      bei 1.000 km   alle 8.000 km   alle 16.000 km\nMotoröl wechseln           x              x\nGetriebeöl wechseln        x                              x\n\nGetriebe: 0,8 l\n",
			[]string{"interval.distance 8000 km", "interval.first 1000 km", "interval.gearbox 16000 km", "interval.gearbox-first 1000 km"}},
		{"words over the distances", "                      Premiers     Tous les     Tous les\n                      1 000 km     6 000 km     12 000 km\nHuile moteur          R            R\nFiltre à huile        R                         R\nBougies                            C            R\nR : remplacer, C : contrôler\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"points as marks", "Opération             1 000 km    6 000 km    12 000 km   18 000 km   24 000 km\nHuile moteur              •           •            •           •           •\nFiltre à huile            •                        •                       •\nBougies                                            •                       •\n• remplacement\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"the unit behind the last", "Onderhoud                1.000    6.000    12.000   18.000 km\nMotorolie                V        V        V        V\nV = vervangen\n",
			[]string{"interval.distance 6000 km", "interval.first 1000 km"}},
		{"looked at only", "Manutenzione            ogni 6.000 km    ogni 12.000 km\nOlio motore                   C\nOlio cambio                   C               S\nC controllare, S sostituire\n",
			[]string{"interval.gearbox 12000 km"}},
		{"a row of hard use", "Item                    First       Then every    Not later than\nEngine oil              1 000 km    12 000 km     12 months\n   in dust              –           6 000 km      –\nBrake fluid             –           –             24 months\n",
			[]string{"interval.distance 12000 km", "interval.first 1000 km", "interval.months 12 months", "interval.severe 6000 km"}},
		{"a row of the same oil in hard use", "Arbeit                  Erstmals    Danach alle   Spätestens\nMotoröl                 1 000 km    12 000 km     12 Monate\nMotoröl, bei Staub      –           6 000 km      –\n",
			[]string{"interval.distance 12000 km", "interval.first 1000 km", "interval.months 12 months", "interval.severe 6000 km"}},
		{"a column of hard use", "Opération           Premier     Ensuite tous les    Compétition\nHuile moteur        2 h         20 h                10 h\n",
			[]string{"interval.first-hours 2 h", "interval.hours 20 h", "interval.severe-hours 10 h"}},
		{"thousands beside the label, and notes by number", "Item                  x 1,000 km    1     10    20    30\nEngine oil   Note 1                 R     R     R     R\nOil filter                          R           R\nSpark plugs  Note 2                             R\nR: replace\n\nNotes: 1. Replace every 5,000 km if the machine is used in dust.\n       2. Clean every 3,000 km.\n",
			[]string{"interval.distance 10000 km", "interval.filter 20000 km", "interval.filter-first 1000 km", "interval.first 1000 km", "interval.severe 5000 km"}},
		{"notes by number in another language", "Arbeit                     x 1 000 km    1     6     12    18\nMotoröl (Anmerkung 1)                    E     E     E     E\nBremsflüssigkeit (Anmerkung 2)                       E\nE = erneuern\n\nAnmerkung 1: bei Staub alle 3 000 km.\nAnmerkung 2: alle 24 Monate.\n",
			[]string{"interval.distance 6000 km", "interval.first 1000 km", "interval.severe 3000 km"}},
		{"heads in three lines", "                   Months      1       6       12      18\n                   km x 1000   1       6       12      18\nOperation          mi x 1000   0.6     3.7     7.5     11\nEngine oil                     R       R       R       R\nEngine oil filter              R               R\nSpark plug                             I       R       I\n\nR - replace   I - inspect\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.filter-months 12 months", "interval.first 1000 km", "interval.first-months 1 months", "interval.months 6 months"}},
		{"months below the distances", "E = ersetzen   P = prüfen\nKilometerstand x 1000              6     12    18    24\nMonate                             12    24    36    48\nMotoröl                            E     E     E     E\nÖlfilter                                 E           E\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-months 24 months", "interval.months 12 months"}},
		{"months in uneven steps", "R: replace   I: inspect\n                   x 1,000 km      5     10    15    20\n                   Months          6     9     18    24\nEngine oil                         R     R     R     R\n",
			[]string{"interval.distance 5000 km"}},
		{"months without the first service", "                      x 1,000 km      1    6    12   18   24\n  Item                Months               6    12   18   24\n  Engine oil                          R    R    R    R    R\n  Engine oil filter                   R         R         R\nR: replace\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.filter-months 12 months", "interval.first 1000 km", "interval.months 6 months"}},
		{"months alone", "Monate                     6     12     18     24\nMotoröl                    E     E      E      E\nÖlfilter                         E             E\nE = erneuern\n",
			[]string{"interval.filter-months 12 months", "interval.months 6 months"}},
		{"hours alone", "Operating hours            10     20     30     40\nEngine oil                 C      C      C      C\nOil filter                        C             C\nSpark plug                 I      I      I      C\nC change, I inspect\n",
			[]string{"interval.filter-hours 20 h", "interval.hours 10 h"}},
		{"a unit before the first column", "Entretien            km     500    3.000    6.000   9.000   12.000\nHuile moteur                 R      R        R       R       R\nFiltre à huile               R               R               R\nR : remplacer\n",
			[]string{"interval.distance 3000 km", "interval.filter 6000 km", "interval.filter-first 500 km", "interval.first 500 km"}},
		{"thousands in the line above", "               Odometer reading (x 1,000 km)\n               1     6     12    18    24\nEngine oil     R     R     R     R     R\nOil filter     R           R           R\nAir filter           C     R     C     R\nR: replace  C: clean\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"two verbs in a row", "Service schedule                                             after 1 h     every 15 h    every 30 h\nChange the engine oil and oil filter, clean the oil screen.     •             •\nCheck the valve clearance.                                      •                           •\n",
			[]string{"filter.every 1", "interval.first-hours 1 h", "interval.hours 15 h", "strainer.every 1"}},
		{"labels before the first column", "ITEMS              FREQUENCY                x 1,000 km   1    12   24   36   48\n                   NOTE                     x 1,000 mi   0.6  8    16   24   32   REFER TO PAGE\nENGINE OIL                                                R    R    R    R    R    3-12\nENGINE OIL FILTER                                         R         R         R    3-13\nDRIVE CHAIN        EVERY 1,000 km (600 mi)  I, L                                   3-20\nR: Replace  I: Inspect  L: Lubricate\n",
			[]string{"interval.distance 12000 km", "interval.filter 24000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"verbs as marks", "                           Initial      Every        Every        Every\nItem                       500 km       3,000 km     6,000 km     12,000 km\nEngine oil                 Replace      Replace\nOil filter (paper)         Replace                   Replace\nOil strainer screen        Clean                     Clean\nSpark plug                                           Clean        Replace\nTransmission oil           Replace                                Replace\n",
			[]string{"interval.distance 3000 km", "interval.filter 6000 km", "interval.filter-first 500 km", "interval.first 500 km", "interval.gearbox 12000 km", "interval.gearbox-first 500 km", "interval.strainer 6000 km", "interval.strainer-first 500 km"}},
		{"verbs as marks, in German", "                           Erstmals     Alle         Alle\nArbeit                     500 km       3.000 km     6.000 km\nMotoröl                    wechseln     wechseln\nÖlfilter                   wechseln                  wechseln\nÖlsieb                     reinigen                  reinigen\n",
			[]string{"interval.distance 3000 km", "interval.filter 6000 km", "interval.filter-first 500 km", "interval.first 500 km", "interval.strainer 6000 km", "interval.strainer-first 500 km"}},
		{"numbered rows", "N°   Élément               1 000 km     Tous les 6 000 km     Tous les 12 000 km\n1    Huile moteur          √            √\n2    Filtre à huile        √                                  √\n3    Liquide de frein                                         √\n",
			[]string{"interval.distance 6000 km", "interval.filter 12000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"lines between the cells", "Operation                 Months  |   6  |  12  |  18  |  24\n                          km      | 5000 | 10000 | 15000 | 20000\nEngine oil                        |  R   |  R   |  R   |  R\nOil filter                        |      |  R   |      |  R\nR replace, C check\n",
			[]string{"interval.distance 5000 km", "interval.filter 10000 km", "interval.filter-months 12 months", "interval.months 6 months"}},
		{"lines between cells that are not below each other", "Operation        | 1,000 km | every 5,000 km | every 10,000 km\nEngine oil       | R | R | -\nOil filter       | R | - | R\nR replace\n",
			[]string{"interval.distance 5000 km", "interval.filter 10000 km", "interval.filter-first 1000 km", "interval.first 1000 km"}},
		{"uneven steps", "Service        1,000 km   7,000 km   12,000 km   30,000 km\nEngine oil        R          R          R           R\nR replace\n",
			[]string{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := append(append(said(c.text, "filter."), said(c.text, "interval.")...), said(c.text, "strainer.")...)
			if !slices.Equal(got, c.want) {
				t.Errorf("%q, want %q\n%s", got, c.want, c.text)
			}
		})
	}
}
