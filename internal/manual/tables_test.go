package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// says reports whether a page says something, as a reader would answer it.
func says(page manual.Page, what, text string) bool {
	for _, r := range page.Readings {
		if r.What == what && r.Text == text {
			return true
		}
	}
	return false
}

// What stands in a row by a mark, below its table or in its head is read with the row. All
// figures are invented.
func TestRead_Tables(t *testing.T) {
	type reading struct{ what, text string }
	for _, test := range []struct {
		name, text string
		says       []reading
		not        []reading
	}{
		{"footnotes", "Engine oil quantity *     2.3 l\nEngine oil quantity **    2.1 l\nDrain plug 2)             M14x1.5, 25 Nm\n\n*  with filter\n** without filter\n2) with new copper washer\n",
			[]reading{{"oil.engine.with-filter", "2.3 L"}, {"oil.engine.oil-only", "2.1 L"}, {"bolt.drain.seal", "flat-copper"}}, nil},
		{"footnotes on one line", "Anziehdrehmomente\n\nÖlablassschraube 1)      25 Nm\nFüllmenge Motor 2)       2,5 l\n\n1) mit neuem Kupferring   2) mit Filter\n",
			[]reading{{"bolt.drain.seal", "flat-copper"}, {"oil.engine.with-filter", "2.5 L"}}, nil},
		{"columns of oils", "Torque, Nm      Engine      Gearbox      Final drive\nDrain plug      27          28           24\nFiller plug     10          12           20\n",
			[]reading{{"bolt.drain.torque", "27 N·m"}, {"bolt.gearbox-drain.torque", "28 N·m"}, {"bolt.final-drain.torque", "24 N·m"}, {"bolt.gearbox-filler.torque", "12 N·m"}},
			[]reading{{"bolt.drain.torque", "28 N·m"}, {"bolt.drain.torque", "24 N·m"}}},
		{"roles of rows and columns", "Huile (litres)       vidange     à sec\nMoteur avec filtre   2,5         2,9\nMoteur sans filtre   2,3         -\nBoîte de vitesses    0,8         0,9\n",
			[]reading{{"oil.engine.with-filter", "2.5 L"}, {"oil.engine.oil-only", "2.3 L"}, {"oil.engine.dry", "2.9 L"}, {"oil.gearbox.volume", "0.8 L"}, {"oil.gearbox.dry", "0.9 L"}}, nil},
		{"counts and diameters", "TORQUES\n\nITEM                    Q'TY   THREAD      TORQUE\n                               DIA. (mm)   N·m (kgf·m, lbf·ft)\nLUBRICATION:\nEngine oil drain bolt    1      12         29 (3.0, 22)\nOil filter cover bolt    3       6         12 (1.2, 9)\n",
			[]reading{{"bolt.drain.torque", "29 N·m"}, {"bolt.drain.thread", "M12"}, {"bolt.filter-cover.count", "3"}, {"bolt.filter-cover.torque", "12 N·m"}},
			[]reading{{"bolt.drain.torque", "1 N·m"}, {"bolt.drain.torque", "12 N·m"}}},
		{"columns of hours", "                         run-in    training   racing\nEngine oil and filter    2 h       20 h       10 h\nGearbox oil              2 h       40 h       -\n",
			[]reading{{"interval.first-hours", "2 h"}, {"interval.hours", "20 h"}, {"interval.severe-hours", "10 h"}, {"interval.gearbox-hours", "40 h"}}, nil},
		{"cells of several lines", "WHERE         WHAT           HOW MUCH                  HOW OFTEN\nEngine        SAE 15W-50     3.0 l, with               at 600 miles, then\n                             new filter 3.2 l          each 6,000 miles\nGearbox       SAE 75W-90     0.80 l                    each 12,000 miles\n",
			[]reading{{"oil.engine.with-filter", "3.2 L"}, {"interval.first", "600 mi"}, {"interval.distance", "6000 mi"}, {"oil.gearbox.volume", "0.80 L"}, {"interval.gearbox", "12000 mi"}}, nil},
		{"pints beside litres", "Gearbox ......... 1 pint (570 cc)\nGearbox oil ..... SAE 90\n", []reading{{"oil.gearbox.volume", "1 imp pt"}}, []reading{{"oil.gearbox.volume", "1 US pt"}}},
		{"what is looked at", "Gearbox oil: SAE 90. Check the level every 6,000 km, replace the oil every 24,000 km.\n", []reading{{"interval.gearbox", "24000 km"}}, []reading{{"interval.gearbox", "6000 km"}}},
		{"gear oil beside a final drive", "Technische Daten\n\nMotoröl               3,2 l\nGetriebeöl            0,80 l   SAE 80W-90\nHinterachsantrieb     0,25 l   SAE 80W-90\n\nGetriebe, Ablassschraube      M 14 x 1,5   28 Nm\nHinterachse, Ablassschraube   M 12 x 1,5   23 Nm\nÖlwanne                       M 6          9 Nm\n",
			[]reading{{"oil.gearbox.volume", "0.80 L"}, {"oil.final.volume", "0.25 L"}, {"bolt.final-drain.torque", "23 N·m"}},
			[]reading{{"oil.final.volume", "0.80 L"}, {"bolt.final-drain.torque", "9 N·m"}, {"bolt.final-drain.thread", "M6"}}},
		{"leaders below a title in two parts", "ATELIER 600                                  Manuel       2-4\n\nCylindrée .................................. 599 cm³\nRefroidissement ............................ liquide\nHuile moteur\n  vidange simple ........................... 2,3 l\n  vidange avec remplacement du filtre ...... 2,5 l\n  moteur démonté (à sec) ................... 3,0 l\nHuile de fourche, par tube ................. 470 cm³\n",
			[]reading{{"oil.engine.oil-only", "2.3 L"}, {"oil.engine.with-filter", "2.5 L"}, {"oil.engine.dry", "3.0 L"}}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			page := manual.Read(test.text, "")
			for _, r := range test.says {
				if !says(page, r.what, r.text) {
					t.Errorf("does not say %s = %s; says %v", r.what, r.text, page.Readings)
				}
			}
			for _, r := range test.not {
				if says(page, r.what, r.text) {
					t.Errorf("says %s = %s", r.what, r.text)
				}
			}
		})
	}
}

// A copied table may have lost the places of its columns, or have its cells below each other;
// then their order tells what they are. All figures are invented.
func TestRead_TablesWithoutPlaces(t *testing.T) {
	type reading struct{ what, text string }
	for _, test := range []struct {
		name, text string
		says       []reading
	}{
		{"volumes", "Óleo do motor\nmudança   com filtro   motor desmontado\n1,6 L   1,8 L   2,1 L\nLíquido de refrigeração\nmudança   total\n1,2 L   1,4 L\n",
			[]reading{{"oil.engine.oil-only", "1.6 L"}, {"oil.engine.with-filter", "1.8 L"}, {"oil.engine.dry", "2.1 L"}}},
		{"unit in the first cell", "Füllmengen, in Litern   Wechsel   mit Filter   trocken\nMotoröl   3,3   3,5   4,1\nGetriebeöl   0,7   –   0,8\n",
			[]reading{{"oil.engine.oil-only", "3.3 L"}, {"oil.engine.with-filter", "3.5 L"}, {"oil.engine.dry", "4.1 L"}}},
		{"torques", "Pièce   Qté   Filetage   N·m   kgf·m   lbf·ft\nBouchon de vidange, moteur   1   M14×1,5   29   3,0   21\nVis, couvercle du filtre à huile   3   M6   12   1,2   9\n",
			[]reading{{"bolt.drain.torque", "29 N·m"}, {"bolt.drain.thread", "M14x1.5"}, {"bolt.filter-cover.torque", "12 N·m"}, {"bolt.filter-cover.count", "3"}}},
		{"distances", "Bewerking   eerste keer   daarna\nMotorolie   1000 km   6000 km of 12 maanden\nOliefilter   1000 km   12 000 km\n",
			[]reading{{"interval.first", "1000 km"}, {"interval.distance", "6000 km"}, {"interval.months", "12 months"}, {"interval.filter", "12000 km"}}},
		{"a cell a line", "Denominazione\nFiletto\nN·m\nNote\nTappo di scarico olio\nM12 x 1,5\n20\nrondella di rame nuova\nTappo di scarico acqua\nM6\n7\nrondella di rame\nViti coperchio filtro olio (3)\nM6\n10\nO-ring nuovo\n",
			[]reading{{"bolt.drain.torque", "20 N·m"}, {"bolt.drain.thread", "M12x1.5"}, {"bolt.drain.seal", "flat-copper"}, {"bolt.filter-cover.torque", "10 N·m"}, {"bolt.filter-cover.count", "3"}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			page := manual.Read(test.text, "")
			for _, r := range test.says {
				if !says(page, r.what, r.text) {
					t.Errorf("%s is not %s: %+v", r.what, r.text, page.Readings)
				}
			}
			for _, r := range page.Readings {
				if r.Sure && r.Text != "" && !slices.Contains(test.says, reading{r.What, r.Text}) && strings.HasSuffix(r.What, ".torque") {
					t.Errorf("%s is no %s", r.What, r.Text)
				}
			}
		})
	}
}

// Where all words stand two blanks apart, as a phone reads wide print, two blanks begin no
// cell. All figures are invented.
func TestRead_BlanksDoubled(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Aceite  de  motor :  SAE  10W-40 ,  API  SJ\n  Cambio  periódico        0,90  l\n  Desmontaje  total        1,05  l\nAceite  de  transmisión  final :  SAE  90\n  Cambio                   0,12  l\n\nMotor :  a  los  500  km ,  luego  cada  3.000  km .  Transmisión  final :  cada  6.000  km .\n",
			[]string{"interval.distance 3000 km", "interval.final 6000 km", "interval.first 500 km", "oil.engine.dry 1.05 L", "oil.engine.grades 10W-40", "oil.engine.oil-only 0.90 L", "oil.engine.service SJ", "oil.final.grades 90", "oil.final.volume 0.12 L"}},
		{"Motoröl  mit  Filter        2,6  l\nMotoröl  ohne  Filter       2,4  l\nÖlablassschraube  M12       25  Nm   mit  neuem  Kupferring\nWechsel  des  Motoröls  alle  6.000  km ,  erstmals  bei  1.000  km .\n",
			[]string{"interval.distance 6000 km", "interval.first 1000 km", "oil.engine.oil-only 2.4 L", "oil.engine.with-filter 2.6 L"}},
	} {
		got := append(said(c.text, "interval."), said(c.text, "oil.")...)
		if !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q\n%s", got, c.want, c.text)
		}
	}
}

// A label that is as long as its column leaves one blank before its number.
func TestRead_LongLabels(t *testing.T) {
	const head = "TORQUES\n\n  Item                                 Q'ty   Thread   N·m (kgf·m)\n"
	for _, row := range []string{
		"  Oil filter cover bolt, on the right 3      M5       5 (0.5)\n",
		"  Oil filter cover bolt, on the right 3      5        5 (0.5)\n",
		"  Oil filter cover bolt               3      5        5 (0.5)\n",
	} {
		page := manual.Read(head+"  Engine oil drain bolt               1      12       24 (2.4)\n"+row+"  Spark plug                          1      10       16 (1.6)\n", "")
		for what, text := range map[string]string{"bolt.filter-cover.count": "3", "bolt.filter-cover.thread": "M5", "bolt.filter-cover.torque": "5 N·m", "bolt.drain.torque": "24 N·m", "bolt.drain.thread": "M12"} {
			if !says(page, what, text) {
				t.Errorf("%q: no %s %s", row, what, text)
			}
		}
	}
}
