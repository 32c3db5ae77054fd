package manual_test

import (
	"slices"
	"testing"

	"tidysump/internal/manual"
)

// What is said in a text of a line or two of how a level is read, what an engine runs for, and
// whose oil it is.
func TestRead_LevelsAndPurposes(t *testing.T) {
	for text, want := range map[string][]string{
		"Check the oil level: push the dipstick fully into the tank.":                                                                                          {"level.device stick-pushed"},
		"To read the level screw the dip stick right in.":                                                                                                      {"level.device stick-screwed"},
		"Oil level: the dipstick is not to be screwed in.":                                                                                                     {"level.device stick-resting"},
		"Read the oil level at the window. From the lower line to the upper is 0.5 litre.":                                                                     {"level.device window", "level.band 0.5 L"},
		"Gearbox: with the machine upright fill until oil begins to weep from the level screw.":                                                                {"level.gearbox.device hole", "level.gearbox.stance upright"},
		"Run the engine for 3 minutes. Take out the drain plug and drain the oil.":                                                                             {"warm.time 3 min"},
		"Undo the drain plug and let it run for ten minutes.":                                                                                                  nil,
		"Pour in 1.5 litres, idle for one minute, and pour in what is left. Then look at the level.":                                                           nil,
		"Start the motor, idle it for 2 minutes, wait 3 minutes. Then check the oil level.":                                                                    {"level.run 2 min", "level.wait 3 min"},
		"9 Cooling system – check. The level must lie between the marks, with the engine cold.":                                                                nil,
		"Gearbox: check the level with the transmission dipstick resting on its threads.":                                                                      {"level.gearbox.device stick-resting"},
		"Check the oil level with the engine cold, the dipstick not screwed in.\nGearbox. Take out the level plug: oil must reach the lower edge of the hole.": {"level.device stick-resting", "level.gearbox.device hole", "level.state cold"},
		"Cold or hot? Read the oil level hot.":                                                                                                                 {"level.state hot"},
	} {
		got := append(said(text, "level."), said(text, "warm.")...)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// How warm the oil is to be for riding is asked for, as draining is not told of.
func TestRead_WarmForRiding(t *testing.T) {
	for text, sure := range map[string]bool{
		"Oil temperature at least 70 °C before riding hard.":   false,
		"Drain the oil at an oil temperature of 60 °C.":        true,
		"Oil temperature at least 60 °C. Undo the drain plug.": true,
	} {
		found := false
		for _, r := range manual.Read(text, "").Readings {
			if r.What == "warm.target" {
				if found = true; r.Sure != sure {
					t.Errorf("%q: sure is %v", text, r.Sure)
				}
			}
		}
		if !found {
			t.Errorf("%q: nothing", text)
		}
	}
}

// A two-stroke's plain oil, plug and interval are its gears', in every language.
func TestRead_TwoStrokes(t *testing.T) {
	for _, text := range []string{
		"The two-stroke has its own oil for the gearbox: 0.6 L. Drain plug: 20 N·m. Change the oil every 3,000 km.",
		"Der Zweitakter hat ein eigenes Getriebeöl: 0,6 l. Ablassschraube: 20 Nm. Öl alle 3.000 km wechseln.",
		"Le moteur deux temps a une huile de boîte : 0,6 l. Bouchon de vidange : 20 N.m. Vidanger l'huile tous les 3 000 km.",
		"El motor de dos tiempos lleva aceite de la caja de cambios: 0,6 l. Tapón de vaciado: 20 N·m. Cambie el aceite cada 3.000 km.",
		"Il motore a due tempi ha un olio cambio: 0,6 l. Tappo di scarico: 20 N·m. Sostituire l'olio ogni 3.000 km.",
		"O motor de dois tempos tem óleo da caixa de velocidades: 0,6 l. Bujão de drenagem: 20 N·m. Troque o óleo a cada 3.000 km.",
	} {
		want := []string{"bolt.gearbox-drain.torque 20 N·m", "interval.gearbox 3000 km", "oil.gearbox.volume 0.6 L"}
		got := append(append(said(text, "bolt."), said(text, "interval.")...), said(text, "oil.")...)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Figures that a page's own figures put right, and headings in the line of their text.
func TestRead_TellsItself(t *testing.T) {
	for text, want := range map[string][]string{
		"Engine oil drain plug: 2.5 N·m (2.5 kgf·m, 18 lbf·ft)":                                           {"bolt.drain.torque 2.5 kgf·m"},
		"FRONT FORK. Undo the drain screw. Drain screw: 6 N·m.\nENGINE OIL. Drain screw: 30 N·m.":         {"bolt.drain.torque 30 N·m"},
		"The hexagon cap below the engine carries the gauze. Wash it in petrol; fit a new copper washer.": {"bolt.strainer.drive hexagon", "bolt.strainer.seal flat-copper"},
		"Engine oil: pour in four and a half pints (2.5 litres).":                                         {"oil.engine.oil-only 4 1/2 imp pt"},
		"Engine oil 5 pints (2.8 litres). Gearbox oil: a quarter of a pint.":                              {"oil.engine.oil-only 5 imp pt", "oil.gearbox.volume 1/4 imp pt"},
	} {
		got := append(said(text, "bolt."), said(text, "oil.")...)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
