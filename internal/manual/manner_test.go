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
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := said(c.text, c.about); !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}
