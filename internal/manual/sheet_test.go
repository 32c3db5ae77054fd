package manual_test

import (
	"slices"
	"testing"

	"tidysump/internal/manual"
)

// How data sheets, tables of torques and numbered steps tell it: labels over their figures,
// labels with brackets, heads of several lines, a torque below its step.
func TestRead_Sheets(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"a label in brackets over its figure", "Engine oil capacity\n(after disassembly)\n2.4 L (2.5 US qt)\nFork oil capacity\n480 mL\n", []string{"oil.engine.dry 2.4 L"}},
		{"such labels in German", "Motoröl Füllmenge\n(mit Filterwechsel)\n3,1 l\nMotoröl Füllmenge\n(nach Zerlegung)\n3,6 l\n", []string{"oil.engine.dry 3.6 L", "oil.engine.with-filter 3.1 L"}},
		{"a thread in a label over its figure", "Engine oil drain bolt (M12 × 1.5)\n27 N·m\nWater pump bolt (M6)\n10 N·m\n", []string{"bolt.drain.thread M12x1.5", "bolt.drain.torque 27 N·m"}},
		{"such a label in Spanish", "Tornillo de vaciado de aceite (M12 × 1,5)\n27 N·m\nTornillo de la bomba de agua (M6)\n10 N·m\n", []string{"bolt.drain.thread M12x1.5", "bolt.drain.torque 27 N·m"}},
		{"a list of labels of other things too", "Cooling system:\nAir cooled\nDisplacement:\n197 cm³\nEngine oil:\n0.9 L\nFuel:\n11 L\n", []string{"cooling air", "displacement 197 mL", "oil.engine.oil-only 0.9 L"}},
		{"such a list in French", "Système de refroidissement :\nRefroidissement par air\nCylindrée :\n197 cm³\nHuile moteur :\n0,9 L\n", []string{"cooling air", "displacement 197 mL", "oil.engine.oil-only 0.9 L"}},
		{"a head of two lines over counts and threads", "                          THREAD    TORQUE\nITEM               Q'TY   DIA. (mm)   N·m (kgf·m)\nEngine oil drain bolt  1   12   29 (3.0)\nOil pump bolt          3    6   10 (1.0)\n", []string{"bolt.drain.thread M12", "bolt.drain.torque 29 N·m"}},
		{"such a head in Italian", "                          FILETTO    COPPIA\nELEMENTO           Q.tà   Ø (mm)   N·m (kgf·m)\nTappo di scarico olio motore  1   12   29 (3,0)\nVite pompa olio          3    6   10 (1,0)\n", []string{"bolt.drain.thread M12", "bolt.drain.torque 29 N·m"}},
		{"a torque below its step", "1. Unscrew the oil filter and fit a new one.\n      Torque: 16 N·m\n2. Fit the drain bolt.\n      Torque: 31 N·m\n", []string{"bolt.drain.torque 31 N·m", "bolt.filter.torque 16 N·m", "filter.kind spin-on"}},
		{"such a torque in Portuguese", "1. Instale o bujão de drenagem do óleo.\n      Torque: 31 N·m\n2. Instale o filtro de óleo novo.\n      Torque: 16 N·m\n", []string{"bolt.drain.torque 31 N·m", "bolt.filter.torque 16 N·m"}},
		{"a filter's ring", "Oil the O-ring of the new oil filter and screw it on.", []string{"bolt.filter.seal o-ring", "filter.kind spin-on"}},
		{"a cold engine that is to run", "Checking the oil level\n1. If the engine is cold, let it idle for 4 minutes.\n2. Look at the oil level in the window.\n", []string{"level.device window", "level.run 4 min"}},
		{"such an engine in German", "Ölstand prüfen\n1. Ist der Motor kalt, ihn 4 Minuten laufen lassen.\n2. Den Ölstand am Schauglas ablesen.\n", []string{"level.device window", "level.run 4 min"}},
		{"a cold engine whose level is read", "Check the oil level in the window with the engine cold, before the engine has run.", []string{"level.device window", "level.state cold"}},
		{"pints of a page of both countries", "CAPACITIES     Imperial     U.S.\nOil tank       4 pints      4.8 pints\nGearbox        1 pint       1.2 pints\n\nDrain the oil tank and refill with 4 pints.\n", []string{"oil.engine.oil-only 4 imp pt", "oil.gearbox.volume 1 imp pt"}},
		{"a range that reaches into thousands", "Change the engine oil at the first 500–1,000 km (300–600 mi), then every 8,000 km.", []string{"interval.distance 8000 km", "interval.first 500–1000 km"}},
		{"such a range in German", "Motoröl wechseln: erstmals nach 800 bis 1.000 km, dann alle 8.000 km.", []string{"interval.distance 8000 km", "interval.first 800–1000 km"}},
		{"a table of all torques behind another oil's data", "Final drive\n   Capacity      170 ml\n\nTightening torques\n   Oil drain plug      40 Nm\n   Oil filter          12 Nm\n   Final drive, oil drain plug    22 Nm\n", []string{"bolt.drain.torque 40 N·m", "bolt.filter.torque 12 N·m", "bolt.final-drain.torque 22 N·m", "oil.final.volume 170 mL"}},
		{"such a table in German", "Hinterradantrieb\n   Füllmenge      170 ml\n\nAnzugsmomente\n   Ölablassschraube      40 Nm\n   Ölfilter          12 Nm\n   Hinterradantrieb, Ölablassschraube    22 Nm\n", []string{"bolt.drain.torque 40 N·m", "bolt.filter.torque 12 N·m", "bolt.final-drain.torque 22 N·m", "oil.final.volume 170 mL"}},
		{"torques of the drive alone", "Final drive\n   Capacity      170 ml\n\nTightening torques\n   Oil drain plug      20 Nm\n   Oil filler plug          20 Nm\n", []string{"bolt.final-drain.torque 20 N·m", "bolt.final-filler.torque 20 N·m", "oil.final.volume 170 mL"}},
		{"a rotor's cover of a filter that spins", "Oil filter: centrifugal\nRotor cover screws (4): 6 N·m\n", []string{"bolt.filter-cover.count 4", "bolt.filter-cover.torque 6 N·m", "filter.kind centrifugal"}},
		{"a rotor's cover of a generator", "Engine oil: 1.1 L\nRotor cover screws (4): 6 N·m\n", []string{"oil.engine.oil-only 1.1 L"}},
		{"such a cover in Italian", "Filtro olio: centrifugo\nViti del coperchio del rotore (4): 6 N·m\n", []string{"bolt.filter-cover.count 4", "bolt.filter-cover.torque 6 N·m", "filter.kind centrifugal"}},
		{"a first service that has a row of its own", "First service              800 km\nEngine oil and filter      at the first service, then every 9,000 km\nFinal drive oil            at the first service, then every 18,000 km\nSpark plugs                every 9,000 km\n", []string{"filter.every 1", "interval.distance 9000 km", "interval.final 18000 km", "interval.final-first 800 km", "interval.first 800 km"}},
		{"such a service in German", "Einfahrkontrolle        500 bis 1.200 km\nMotoröl mit Filter      bei der Einfahrkontrolle, danach alle 9.000 km\n", []string{"filter.every 1", "interval.distance 9000 km", "interval.first 500–1200 km"}},
		{"such a service in French", "Première révision            1 000 km\nHuile moteur et filtre       à la première révision, puis tous les 9 000 km\n", []string{"filter.every 1", "interval.distance 9000 km", "interval.first 1000 km"}},
		{"such a service in Italian", "Primo tagliando            1.000 km\nOlio motore e filtro       al primo tagliando, poi ogni 9.000 km\n", []string{"filter.every 1", "interval.distance 9000 km", "interval.first 1000 km"}},
		{"lines of two columns in turn, one a list", "ENGINE OIL CHANGE\nBRAKES AND CHAIN\nRemove the drain plug under the engine\nFree play of the brake lever, measured\nand let the oil run out. Clean the plug.\nat its end: 4–8 mm on the scale.\nFit a new ring, put the plug back and\nReplace the chain when it is longer than\nfill in the engine oil:\n319 mm over 20 links.\noil change 1.6 L (1.7 US qt)\nTyre pressure, cold: front 225 kPa,\nwith filter 1.8 L (1.9 US qt)\nrear 250 kPa.\n", []string{"oil.engine.oil-only 1.6 L", "oil.engine.with-filter 1.8 L"}},
		{"what is poured in first", "Initially add 2 litres of engine oil. Capacity with filter change is 2.6 litres.", []string{"oil.engine.with-filter 2.6 L"}},
		{"what is poured in first, in German", "Zunächst 2 l Motoröl einfüllen. Füllmenge mit Filterwechsel 2,6 l.", []string{"oil.engine.with-filter 2.6 L"}},
		{"oil and filter by a sign", "Engine oil: 0.9 L oil change, 1.0 L oil + filter, 1.3 L total", []string{"oil.engine.dry 1.3 L", "oil.engine.oil-only 0.9 L", "oil.engine.with-filter 1.0 L"}},
		{"such a sign in Italian", "Olio motore: 0,9 L cambio olio, 1,0 L olio + filtro", []string{"oil.engine.oil-only 0.9 L", "oil.engine.with-filter 1.0 L"}},
		{"an engine that is warm for draining", "OIL CHANGE\nRide until the engine is at operating temperature. Remove the dipstick. Undo the oil drain plug and let the oil drain.", nil},
		{"torques behind a gearbox that has no data", "Lubrication\n  Quantity    1.1 L with filter\nTransmission\n  5-speed\nTorques (Nm)\n  Oil drain plug M12x1.5      21\n  Oil filter cover M5         6\n", []string{"bolt.drain.thread M12x1.5", "bolt.drain.torque 21 N·m", "bolt.filter-cover.thread M5", "bolt.filter-cover.torque 6 N·m", "oil.engine.with-filter 1.1 L"}},
		{"a unified thread", "Engine oil drain plug      1/2-20 UNF      25 lbf ft\nOil pressure switch        1/8 NPT     9 lbf ft\n", []string{"bolt.drain.thread 1/2-20 UNF", "bolt.drain.torque 25 lbf·ft"}},
		{"a pipe's thread", "Tappo di scarico olio motore  G 1/4   20 Nm\n", []string{"bolt.drain.torque 20 N·m"}},
		{"a mark behind its category", "Engine oil: SAE 10W-40, API SL, MA2", []string{"oil.engine.grades 10W-40", "oil.engine.marks MA2", "oil.engine.service SL"}},
		{"a mark behind its grade, in French", "Huile moteur : 10W-40, MA2", []string{"oil.engine.grades 10W-40", "oil.engine.marks MA2"}},
		{"screws whose heads stand before what they hold", "Undo the drain bolt (17 mm). Take out the 3 bolts (8 mm heads) securing the oil filter cover and lift out the oil filter element.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 17 mm", "bolt.filter-cover.count 3", "bolt.filter-cover.drive hexagon", "bolt.filter-cover.size 8 mm", "filter.kind cartridge"}},
		{"a cartridge with a thread of its own", "                          THREAD    TORQUE\nITEM               Q'TY   DIA. (mm)   N·m (kgf·m)\nOil filter cartridge  1   20   26 (2.7)\nOil pump bolt         3    6   10 (1.0)\n", []string{"bolt.filter.thread M20", "bolt.filter.torque 26 N·m", "filter.kind spin-on"}},
		{"a title of a table with its years", "SERVICE CARD        DRAYMONT WRANE 125        FROM 2021\nENGINE OIL          10W-30         1.1 L\nDRAIN BOLT          24 N·m\n", []string{"bolt.drain.torque 24 N·m", "make Draymont", "model Wrane 125", "oil.engine.grades 10W-30", "oil.engine.oil-only 1.1 L", "years 2021-"}},
		{"a gauze that is washed in petrol", "Wash the gauze filter of the sump in petrol at each oil change.", []string{"strainer.every 1"}},
		{"a grade without its letter", "Engine: S.A.E. 20/50 in summer, S.A.E. 10-40 in winter. Gearbox: S.A.E. 80/90.", []string{"oil.engine.grades 10W-40", "oil.engine.grades 20W-50", "oil.gearbox.grades 80W-90"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, r := range manual.Read(c.text, "").Readings {
				if r.Text != "" {
					if got = append(got, r.What+" "+r.Text); !r.Sure {
						t.Logf("%s %s is doubted: %v", r.What, r.Text, r.Doubts)
					}
				}
			}
			slices.Sort(got)
			if !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}
