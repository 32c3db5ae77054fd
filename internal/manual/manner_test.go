package manual_test

import (
	"slices"
	"testing"
)

// Manuals of many houses say the same in manners of their own.
func TestRead_Manners(t *testing.T) {
	for _, c := range []struct {
		name, text, about string
		want              []string
	}{
		{"all of it, and what goes in", "Engine\nCapacity of lubricating oil: 0.9L (whole), replacement 0.75L.", "oil.", []string{"oil.engine.dry 0.9 L", "oil.engine.oil-only 0.75 L"}},
		{"all of a gear box's", "Gear box. Capacity 120 ml (whole), 100 ml (replacement).", "oil.", []string{"oil.gearbox.dry 120 mL", "oil.gearbox.volume 100 mL"}},
		{"an engine that was opened", "Engine oil: 2.1 L with a new filter. An engine that has been opened takes 2.4 L.", "oil.", []string{"oil.engine.dry 2.4 L", "oil.engine.with-filter 2.1 L"}},
		{"capacity among an engine's measures", "Bore x stroke      86 x 96 mm\nCapacity           562 cc\nSump, refill       2.6 litres\n", "", []string{"displacement 562 mL", "oil.engine.oil-only 2.6 L"}},
		{"capacity below a bore", "Bore               72 mm\nCapacity ......... 24.1 cu in\nEngine oil ....... 2.6 litres\n", "", []string{"displacement 24.1 cu in", "oil.engine.oil-only 2.6 L"}},
		{"capacity of oil", "ENGINE OIL\nCapacity           900 cc\nGrade              SAE 30\n", "", []string{"oil.engine.grades 30", "oil.engine.oil-only 900 mL"}},
		{"a unit before its figure, and its twins", "Drain plug (A) . . . . Nm 22 (Kgm 2,2 ; lb/ft 16)", "bolt.", []string{"bolt.drain.torque 22 N·m"}},
		{"how often, as a label", "Engine oil.\nPeriodicity: 1st free service (500~750 km), then every 3000 km.", "interval.", []string{"interval.distance 3000 km", "interval.first 500–750 km"}},
		{"how often, of two things", "Engine oil. Frequency: at 1000 km and every 5000 km. The net filter every 10000 km.", "interval.", []string{"interval.distance 5000 km", "interval.first 1000 km", "interval.strainer 10000 km"}},
		{"Häufigkeit", "Motoröl wechseln. Häufigkeit: erstmals nach 500 km, danach alle 3000 km.", "interval.", []string{"interval.distance 3000 km", "interval.first 500 km"}},
		{"fréquence", "Huile moteur. Fréquence : la première fois à 1000 km, puis tous les 5000 km.", "interval.", []string{"interval.distance 5000 km", "interval.first 1000 km"}},
		{"a cleaner at a shaft's end", "Change the engine oil. The centrifugal oil cleaner at the front of the crankshaft is opened and washed every 10,000 km.", "interval.", []string{"interval.filter 10000 km"}},
		{"a chapter of another job", "7.1 Engine\nOil 0.9 L. Change each 3000 km.\n\n8. Air filter\nClean each 2000 km, replace each 8000 km.", "interval.", []string{"interval.distance 3000 km"}},
		{"run between two pours", "OIL\nCheck the oil level after 3 minutes.\nPour 1.5 L into the tank, run the engine for one minute and put in the rest.", "level.run", nil},
		{"a dipstick taken out before draining", "Replacing\n1. Warm up the engine for 3 minutes and stop it. Remove dip stick.\n2. Remove the drain bolt and let the oil drain.", "warm.", []string{"warm.time 3 min"}},
		{"a dipstick that is read", "Run the engine for 3 minutes. Take out the dip stick and wipe it. Put the dip stick in and look.\nThe drain bolt is below.", "level.run", []string{"level.run 3 min"}},
		{"steps of a level", "ENGINE OIL\nCheck the oil level daily before starting.\n* Park on the centre stand. The engine should be warm.\n* Unscrew the dip stick and clean it.", "level.st", []string{"level.stance centre-stand", "level.state warm"}},
		{"before it is started", "Check the oil level daily before starting, on the centre stand.", "level.st", []string{"level.stance centre-stand", "level.state cold"}},
		{"vor dem Starten", "Ölstand täglich vor dem Starten prüfen.", "level.state", []string{"level.state cold"}},
		{"plugs of a frame and of its crankcase", "Dry sump lubrication. Drain the oil.\n(1) Unscrew the plug at the foot of the frame tube, 17 mm hexagon.\n(2) Unscrew the plug of the crankcase, Allen key 8 mm. Clean both, fit them with new copper rings.", "bolt.", []string{"bolt.drain.drive hexagon-key", "bolt.drain.seal flat-copper", "bolt.drain.size 8 mm", "bolt.tank-drain.drive hexagon", "bolt.tank-drain.seal flat-copper", "bolt.tank-drain.size 17 mm"}},
		{"a plug of a gearbox, of which nobody knows what it is", "The plug of the gearbox: 20 N·m.", "bolt.", nil},
		{"a name in quotation marks", "KAMENOGOR \"TAYGA-637\" WITH SIDECAR\n\nEngine oil 2.1 L.", "model", []string{"model Tayga-637"}},
		{"an inch behind a number", "Hexagon 7/8\" for the oil drain plug. Engine oil 2.1 L.", "bolt.drain.size", []string{"bolt.drain.size 7/8 in"}},
		{"the bowl of a filter", "Filter bowl centre bolt 24 Nm.", "bolt.", []string{"bolt.filter.torque 24 N·m"}},
		{"the same oil in a row", "Place                   Oil                   Quantity, l\nEngine crankcase        SAE 20W-40            2.1\nGearbox                 the same as engine    0.9\n", "oil.", []string{"oil.engine.grades 20W-40", "oil.engine.oil-only 2.1 L", "oil.gearbox.grades 20W-40", "oil.gearbox.volume 0.9 L"}},
		{"the same oil in a sentence", "Engine oil SAE 20W-40, API SF, 2.1 L. The gearbox is filled with the same oil as the engine, 0.9 L.", "oil.gearbox", []string{"oil.gearbox.grades 20W-40", "oil.gearbox.service SF", "oil.gearbox.volume 0.9 L"}},
		{"wie Motor", "Motoröl SAE 20W-40, 2,1 L. Getriebe: wie Motor, 0,9 L.", "oil.gearbox", []string{"oil.gearbox.grades 20W-40", "oil.gearbox.volume 0.9 L"}},
		{"comme le moteur", "Huile moteur SAE 20W-40, 2,1 L\nBoîte de vitesses    comme le moteur    0,9 L", "oil.gearbox", []string{"oil.gearbox.grades 20W-40", "oil.gearbox.volume 0.9 L"}},
		{"of one metal, and not of one oil", "Motoröl SAE 20W-40, 2,1 L. Das Getriebe ist wie der Motor aus Aluminium.", "oil.gearbox", nil},
		{"the same key", "The drain plug of the engine is turned out with the spanner 19 mm. The drain plugs of gearbox and final drive have the same spanner and 2.0-2.5 kgf·m.", "bolt.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 19 mm", "bolt.final-drain.size 19 mm", "bolt.final-drain.torque 2.0–2.5 kgf·m", "bolt.gearbox-drain.size 19 mm", "bolt.gearbox-drain.torque 2.0–2.5 kgf·m"}},
		{"screws that are counted below a column of litres", "Place          Oil          Quantity, l\nEngine         SAE 40       2.1\nThe oil filter's cover is held by 5 screws.\n", "oil.engine.oil", []string{"oil.engine.oil-only 2.1 L"}},
		{"a category without its standard", "Engine oil: SAE15W/40, winter SAE10W/30, quality grade SF or above.", "oil.engine.service", []string{"oil.engine.service SF"}},
		{"a model of two letters", "Class SM machines take the larger oil filter.", "oil.", nil},
		{"a ring of a bowl", "Filter bowl centre bolt 24 Nm. Renew the square-section ring of the bowl with the paper element.", "bolt.", []string{"bolt.filter.seal square-ring", "bolt.filter.torque 24 N·m"}},
		{"warm before the strainer comes out", "SCOOTER\nLet the engine idle for five minutes and stop it. Take off the strainer cap, M36.", "warm.", []string{"warm.time 5 min"}},
		{"a title that stands further in", "Engine oil\nThe oil is changed every 5,000 km and no later.\n   Chain\nSlack 40 mm on the side stand. Oil\nit every 500 km, more in rain.", "interval.", []string{"interval.distance 5000 km"}},
		{"a heading of a change behind another job", "ENGINE OIL\nSAE 20W-50.\n\nCHAIN\nOil it every 500 km.\n\nOil and filter change\nThe drain plug has 42 N·m.\n", "bolt.", []string{"bolt.drain.torque 42 N·m"}},
		{"a heading of an oil change behind another job", "ENGINE OIL\nSAE 20W-50.\n\nCHAIN\nOil it every 500 km.\n\nOil change\nThe drain plug has 42 N·m.\n", "bolt.", []string{"bolt.drain.torque 42 N·m"}},
		{"a size at a line's end", "The oil is changed, the filter with it. A 24 mm\nsocket fits the drain plug, and no other one does.", "bolt.", []string{"bolt.drain.drive hexagon", "bolt.drain.size 24 mm"}},
		{"run after filling", "Undo the drain plug. Pour oil in, run the engine for two minutes, look for leaks.", "warm.", nil},
		{"from line to line", "The oil level stands between the lines of the window. From one line to the other it takes 0.7 litre.", "level.b", []string{"level.band 0.7 L"}},
		{"a wrench at hand", "If no torque wrench is at hand, turn the oil drain plug by a quarter of a turn.", "filter.", nil},
		{"a head, and no key", "Undo the oil drain plug, which has a hexagon head.", "bolt.", []string{"bolt.drain.drive hexagon"}},
		{"the same oil in another job", "The fork oil is the same as the engine oil, 0.3 L. Engine oil SAE 30, 2 L.", "oil.", []string{"oil.engine.grades 30", "oil.engine.oil-only 2 L"}},
		{"what is burnt", "Type: 2-stroke single\nEngine oil tank ..... 1.2 L (1.3 US qt)\nTransmission oil ..... 0.6 L\n", "oil.", []string{"oil.gearbox.volume 0.6 L"}},
		{"what an engine displaces, before its cooling", "The 149 cm³ air-cooled engine of your Plover holds little oil. Engine oil 0.9 L.", "", []string{"cooling air", "displacement 149 mL", "oil.engine.oil-only 0.9 L"}},
		{"what an engine displaces, before its cylinders", "Engine oil 0.9 L. Check the level of a 99 cu in (1,622 cm³) V-twin daily.", "displacement", []string{"displacement 99 cu in"}},
		{"Hubraum vor Kühlung", "Der 149 cm³ luftgekühlte Motor enthält wenig Öl. Motoröl 0,9 l.", "displacement", []string{"displacement 149 mL"}},
		{"cylindrée devant le refroidissement", "Le moteur de 149 cm³ refroidi par air contient peu d'huile. Huile moteur : 0,9 l.", "displacement", []string{"displacement 149 mL"}},
		{"cilindrada delante de la refrigeración", "El motor de 149 cm³ refrigerado por aire lleva poco aceite. Aceite del motor: 0,9 l.", "displacement", []string{"displacement 149 mL"}},
		{"an engine in pieces", "Engine oil: 2.1 L with a new filter. (An engine that has been in pieces takes 2.4 litres.)", "oil.", []string{"oil.engine.dry 2.4 L", "oil.engine.with-filter 2.1 L"}},
		{"ein zerlegter Motor", "Motoröl: 2,1 l mit Filter. (Ein Motor, der auseinandergebaut war, braucht 2,4 Liter.)", "oil.", []string{"oil.engine.dry 2.4 L", "oil.engine.with-filter 2.1 L"}},
		{"un moteur démonté", "Huile moteur : 2,1 l avec filtre. (Un moteur complètement démonté demande 2,4 litres.)", "oil.", []string{"oil.engine.dry 2.4 L", "oil.engine.with-filter 2.1 L"}},
		{"un motore smontato", "Olio motore: 2,1 l con filtro. (Un motore smontato richiede 2,4 litri.)", "oil.", []string{"oil.engine.dry 2.4 L", "oil.engine.with-filter 2.1 L"}},
		{"how a level is not read", "Engine oil level. Never check the level of an engine that is cold.", "level.state", nil},
		{"wie man nicht misst", "Ölstand. Niemals den Ölstand bei kaltem Motor prüfen.", "level.state", nil},
		{"comment ne pas mesurer", "Niveau d'huile. Ne jamais contrôler le niveau moteur froid.", "level.state", nil},
		{"cómo no se mide", "Nivel de aceite. Nunca compruebe el nivel con el motor frío.", "level.state", nil},
		{"come non si misura", "Livello dell'olio. Non controllare mai il livello a motore freddo.", "level.state", nil},
		{"como não se mede", "Nível do óleo. Nunca verifique o nível com o motor frio.", "level.state", nil},
		{"how a stick is not put in, of a cold engine", "Check the oil level when the engine is cold. Do not screw the dipstick in when checking it cold.", "level.state", []string{"level.state cold"}},
		{"what comes out or not", "ENGINE OIL\nLoosen the oil gallery bolt and idle the engine until oil seeps out. If none appears after one minute, stop the engine at once.\nAfter 3 minutes check the level at the window.", "level.wait", []string{"level.wait 3 min"}},
		{"a machine that is put on its stand behind a wait", "Level check. Stop the engine, wait 10 minutes, put the motorcycle on its centre stand. Read the dipstick.", "level.", []string{"level.stance centre-stand", "level.wait 10 min"}},
		{"una moto sul cavalletto", "Verifica del livello dell'olio. Spegnere, attendere 10 minuti, mettere il motociclo sul cavalletto centrale.", "level.", []string{"level.stance centre-stand", "level.wait 10 min"}},
		{"une moto sur la béquille", "Contrôle du niveau d'huile. Arrêter le moteur, attendre 10 minutes, mettre la moto sur la béquille centrale.", "level.", []string{"level.stance centre-stand", "level.wait 10 min"}},
		{"una moto en el caballete", "Nivel de aceite. Pare el motor, espere 10 minutos, ponga la moto sobre el caballete central.", "level.", []string{"level.stance centre-stand", "level.wait 10 min"}},
		{"uma moto no cavalete", "Nível do óleo. Desligue o motor, aguarde 10 minutos, coloque a moto no cavalete central.", "level.", []string{"level.stance centre-stand", "level.wait 10 min"}},
		{"how often it is looked at, behind a title", "The engine carries its oil in a sump.\n\nInspection of the level. This is done every 200 miles.\n\nRenewal of the oil. It is changed every 2,000 miles.", "interval.", []string{"interval.distance 2000 mi"}},
		{"Prüfung, hinter einem Titel", "Motoröl 2 l.\n\nPrüfung des Ölstands. Dies geschieht alle 300 km.\n\nÖlwechsel. Das Öl wird alle 3000 km gewechselt.", "interval.", []string{"interval.distance 3000 km"}},
		{"contrôle, derrière un titre", "Huile moteur 2 l.\n\nContrôle du niveau. À faire tous les 300 km.\n\nVidange. Elle se fait tous les 3000 km.", "interval.", []string{"interval.distance 3000 km"}},
		{"controllo, dietro un titolo", "Olio motore 2 l.\n\nControllo del livello. Si esegue ogni 300 km.\n\nSostituzione dell'olio. Si esegue ogni 3000 km.", "interval.", []string{"interval.distance 3000 km"}},
		{"nuts of a gauze", "The filter gauze under the crankcase is held by a plate. Engine oil 2.4 L.\n\nFilter plate nuts ..... 7 lb ft\n", "", []string{"bolt.strainer.torque 7 lbf·ft", "oil.engine.oil-only 2.4 L"}},
		{"nuts of a filter and of a gauze", "The filter gauze is cleaned. Renew the filter element. Engine oil 2.4 L.\n\nFilter cover nuts ..... 7 lb ft\n", "bolt.", []string{"bolt.filter-cover.torque 7 lbf·ft"}},
		{"a chapter's number that stands apart", "2.4  Changing the engine oil\n\n1. Warm the engine up.\n2. Remove the skid plate (four M6 bolts, 9 Nm).\n3. Fit the drain plug with a new copper washer.", "bolt.", []string{"bolt.drain.seal flat-copper"}},
		{"Nummer eines Kapitels", "2.4  Motoröl wechseln\n\n1. Motor warm fahren.\n2. Motorschutz abbauen (vier Schrauben M 6, 9 Nm).\n3. Ablassschraube mit neuem Kupferdichtring einschrauben.", "bolt.", []string{"bolt.drain.seal flat-copper"}},
		{"a sentence that goes on behind a figure at a line's end", "The engine holds 2 litres of SAE 30 oil, changed every 2,000 miles.\n\nThe gearbox is a separate casting and wants ¾ pint (430 c.c.)\nof SAE 50 oil, renewed every 5,000 miles (8,000 km).", "interval.", []string{"interval.distance 2000 mi", "interval.gearbox 5000 mi"}},
		{"years below a name", "ASHGRAVE CURLEW 520                    WORKSHOP MANUAL\n1961-1967                              LUBRICATION\n\nEngine oil 2 L.", "years", []string{"years 1961-1967"}},
		{"between scratches", "Take out the dipstick. Between the two scratches lie ½ litre. Engine oil 2 L.", "level.band", []string{"level.band 1/2 L"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := said(c.text, c.about); !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}
