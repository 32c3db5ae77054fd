package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// How old handbooks tell it, in sentences: plugs by where they are, levels by where oil comes
// out, what is topped up beside what is changed.
func TestRead_Handbooks(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"plugs by their places", "The engine has a dry sump; the oil is carried in a tank. Undo the hexagon plug at the bottom of the tank and the plug under the crankcase and let the oil run out. Both copper washers are to be renewed.",
			[]string{"bolt.drain.seal flat-copper", "bolt.tank-drain.drive hexagon", "bolt.tank-drain.seal flat-copper"}},
		{"a plug of a fuel tank", "Drain the petrol through the plug at the bottom of the tank. Engine oil: 1.2 L.", []string{"oil.engine.oil-only 1.2 L"}},
		{"topped up and changed", "GEARBOX. Contains 0.5 litre of oil. Top up to the level plug every 500 miles; drain and refill every 3,000 miles.",
			[]string{"interval.gearbox 3000 mi", "level.gearbox.device hole", "oil.gearbox.volume 0.5 L"}},
		{"out of a screw", "PRIMARY CHAINCASE. The level is right when oil begins to flow from the small screw.", []string{"level.primary.device hole"}},
		{"out of a screw, in German", "GETRIEBE. Der Ölstand ist richtig, wenn das Öl an der roten Schraube austritt.", []string{"level.gearbox.device hole"}},
		{"filled in to a plug, in Italian", "OLIO DEL CAMBIO. Rabboccare l'olio fino al tappo di livello ogni 1.000 km; sostituire l'olio ogni 10.000 km.", []string{"interval.gearbox 10000 km", "level.gearbox.device hole"}},
		{"filled in to a plug, in French", "BOÎTE DE VITESSES. Compléter jusqu'au bouchon de niveau tous les 1 000 km ; vidanger l'huile tous les 10 000 km.", []string{"interval.gearbox 10000 km", "level.gearbox.device hole"}},
		{"filled in to a plug, in Spanish", "CAJA DE CAMBIOS. Completar el aceite hasta el tapón de nivel cada 1.000 km; cambiar el aceite cada 10.000 km.", []string{"interval.gearbox 10000 km", "level.gearbox.device hole"}},
		{"a title with its displacement", "THE SANDLING \"LARK\"   250 c.c.      12\n\nEngine oil: 3 pints (1.7 litres).\n", []string{"displacement 250 mL", "make Sandling", "model Lark", "oil.engine.oil-only 3 imp pt"}},
		{"a nut that holds a gauze", "The oil is carried in a separate tank. Unscrew the hexagon nut under the tank, withdraw the gauze filter and wash it in petrol. The fibre washer of the nut must be sound.", []string{"bolt.strainer.drive hexagon", "bolt.strainer.seal fibre"}},
		{"changed with another oil", "ENGINE. Change the oil every 2,000 miles.\n\nPRIMARY CHAINCASE. Use SAE 20 only. Change every 3,000 miles with the engine oil.", []string{"interval.distance 2000 mi", "interval.primary 3000 mi", "oil.primary.grades 20"}},
		{"changed with another oil, in German", "GETRIEBE. 0,5 Liter SAE 80. Wechsel alle 4.000 km zusammen mit dem Motoröl.", []string{"interval.gearbox 4000 km", "oil.gearbox.grades 80", "oil.gearbox.volume 0.5 L"}},
		{"a two-stroke's gears and clutch", "Two-stroke engine.\n\nFuel and lubrication\nPetrol and oil are mixed 40 : 1. Tank 5.8 litres.\n\nThe gearbox and the clutch share their oil: 0.45 litre of SAE 80. It is changed every 6,000 km.", []string{"interval.gearbox 6000 km", "oil.gearbox.grades 80", "oil.gearbox.volume 0.45 L"}},
		{"a two-stroke's gears and clutch, in German", "Zweitaktmotor.\n\nKraftstoff und Schmierung\nGemisch 1 : 50. Tank 6 Liter.\n\nGetriebe und Kupplung haben gemeinsames Öl: 0,4 Liter SAE 80. Wechsel alle 6.000 km.", []string{"interval.gearbox 6000 km", "oil.gearbox.grades 80", "oil.gearbox.volume 0.4 L"}},
		{"a two-stroke's gears and clutch, in French", "Moteur deux temps.\n\nCarburant\nMélange à 4 %.\n\nLa boîte de vitesses et l'embrayage partagent leur huile : 0,4 litre de SAE 80. Vidange tous les 6 000 km.", []string{"interval.gearbox 6000 km", "oil.gearbox.grades 80", "oil.gearbox.volume 0.4 L"}},
		{"out of a level hole", "GEARBOX. Top up every 1,000 miles until it runs out at the level plug hole.", []string{"level.gearbox.device hole"}},
		{"rings of all plugs", "Engine drain plug: 30 N·m. Gearbox drain plug: 28 N·m.\nThe sealing rings of all drain plugs are of aluminium.", []string{"bolt.drain.seal flat-aluminium", "bolt.drain.torque 30 N·m", "bolt.gearbox-drain.seal flat-aluminium", "bolt.gearbox-drain.torque 28 N·m"}},
		{"rings of all plugs, new", "Engine drain plug: 30 N·m. Gearbox drain plug: 28 N·m.\nFit new copper washers to all drain plugs.", []string{"bolt.drain.seal flat-copper", "bolt.drain.torque 30 N·m", "bolt.gearbox-drain.seal flat-copper", "bolt.gearbox-drain.torque 28 N·m"}},
		{"rings of all plugs, in German", "Ablassschraube Motor: 30 Nm. Ablassschraube Getriebe: 28 Nm.\nDie Dichtringe aller Ablassschrauben sind aus Kupfer.", []string{"bolt.drain.seal flat-copper", "bolt.drain.torque 30 N·m", "bolt.gearbox-drain.seal flat-copper", "bolt.gearbox-drain.torque 28 N·m"}},
		{"a ring in the remarks of a filter", "Torque         N·m     Remarks\nOil filter     17      O-ring\nDrain bolt     30      aluminium washer\n", []string{"bolt.drain.seal flat-aluminium", "bolt.drain.torque 30 N·m", "bolt.filter.seal o-ring", "bolt.filter.torque 17 N·m"}},
		{"an age", "I have had mine for seven years now. Change the engine oil every 4,000 km.", []string{"interval.distance 4000 km"}},
		{"an age, in German", "Ich fahre sie seit sieben Jahren. Das Motoröl wechsle ich alle 4.000 km.", []string{"interval.distance 4000 km"}},
		{"an age, in French", "Je l'ai depuis sept ans. L'huile du moteur se change tous les 4 000 km.", []string{"interval.distance 4000 km"}},
		{"allowed to run", "Start the engine and allow it to run for five minutes. Stop it, undo the oil drain plug and let the oil drain.", []string{"warm.time 5 min"}},
		{"part of an hour", "Ride for half an hour, then undo the engine oil drain plug. The oil is changed every 20 hours.", []string{"interval.hours 20 h", "warm.time 1/2 h"}},
		{"an oil that is brought to its warmth", "Bring the oil to 60 °C. Undo the oil drain plug and let it drain.", []string{"warm.target 60 °C"}},
		{"an oil that is brought to its warmth, in German", "Das Öl auf 60 °C bringen. Die Ölablassschraube lösen und das Öl ablassen.", []string{"warm.target 60 °C"}},
		{"a filter at each second change", "Change the engine oil every 4,000 km, with the filter at every second change.", []string{"filter.every 2", "interval.distance 4000 km"}},
		{"screws before their element", "Undo the two cover screws and take out the oil filter element. Tighten the screws to 9 N·m.", []string{"bolt.filter-cover.count 2", "bolt.filter-cover.torque 9 N·m", "filter.kind cartridge"}},
		{"where a tank is", "The engine oil is carried in a tank below the seat, which holds 2.8 litres. Drain and refill every 2,000 miles.", []string{"interval.distance 2000 mi", "oil.engine.oil-only 2.8 L"}},
		{"where a plug is, in German", "Die Ablassschraube für das Motoröl sitzt unter dem Kupplungsdeckel: 25 Nm.", []string{"bolt.drain.torque 25 N·m"}},
		{"a job of its own", "The clutch cover is held by eight screws: 9 N·m. Engine oil: 1.2 L.", []string{"oil.engine.oil-only 1.2 L"}},
		{"until it drips", "GEARBOX. Every 500 miles remove the level screw and add oil until it drips from the hole. Change the oil every 4,000 miles.", []string{"interval.gearbox 4000 mi", "level.gearbox.device hole"}},
		{"with a new one", "Fill in 2.2 litres if you leave the filter, 2.4 litres with a new one.", []string{"oil.engine.oil-only 2.2 L", "oil.engine.with-filter 2.4 L"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, r := range manual.Read(c.text, "").Readings {
				if r.Text != "" && !strings.HasPrefix(r.What, "level.run") {
					got = append(got, r.What+" "+r.Text)
				}
			}
			slices.Sort(got)
			if !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}
