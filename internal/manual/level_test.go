package manual_test

import (
	"slices"
	"testing"
)

// How warm the engine is and how it stands is of the level where nothing else is told between.
func TestRead_BesideLevel(t *testing.T) {
	for text, want := range map[string][]string{
		"Ride for ten minutes so that the oil is hot and put the bike on its centre stand. Undo the drain plug. Fill in 3.4 L of oil. Hold the bike upright and read the level at the sight glass.": {"level.device window", "level.stance upright"},
		"Motor kalt, Motorrad auf dem Hauptständer. Ölstand am Schauglas ablesen.":                                                                                                                  {"level.device window", "level.stance centre-stand", "level.state cold"},
		"Contrôler le niveau d'huile au hublot. La moto est droite, le moteur froid.":                                                                                                               {"level.device window", "level.stance upright", "level.state cold"},
		"Scaldare il motore. Svitare il tappo di scarico e far uscire l'olio. Controllare il livello dall'oblò.":                                                                                    {"level.device window"},
		"Stand the motorcycle upright. Fill up with 1.2 L of engine oil. Check the level through the sight glass.":                                                                                  {"level.device window", "level.stance upright"},
		"Motorrad senkrecht stellen. Motoröl einfüllen (1,2 l). Ölstand am Schauglas prüfen.":                                                                                                       {"level.device window", "level.stance upright"},
		"Put the bike on its side stand. Undo the drain plug and drain the oil. Check the level at the sight glass.":                                                                                {"level.device window"},
		"Comprobación del nivel: observe la mirilla de nivel, en la parte inferior derecha del cárter.":                                                                                             {"level.device window"},
		"Nivel de aceite: mantenga la moto derecha y observe la mirilla, en el lado derecho.":                                                                                                       {"level.device window", "level.stance upright"},
		"Contrôler le niveau d'huile au hublot, dans la partie inférieure droite du carter.":                                                                                                        {"level.device window"},
		"Verifique o nível do óleo no visor, na parte inferior direita do motor.":                                                                                                                   {"level.device window"},
		"1. Put the moped on its centre stand.\n2. Undo the gearbox drain screw and let the oil run out.\n3. Pour in gearbox oil slowly until it comes out of the level hole.\n":                    {"level.gearbox.device hole", "level.gearbox.stance centre-stand"},
	} {
		if got := said(text, "level."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A hot engine is called so where the language has another word for a warm one.
func TestRead_HotAndWarm(t *testing.T) {
	for text, state := range map[string]string{
		"Controllare il livello dell'olio motore a motore caldo.":       "hot",
		"Controllare il livello dell'olio motore a motore tiepido.":     "warm",
		"Contrôler le niveau d'huile moteur à chaud.":                   "hot",
		"Contrôler le niveau d'huile moteur, moteur tiède.":             "warm",
		"Compruebe el nivel de aceite del motor con el motor caliente.": "hot",
		"Compruebe el nivel de aceite del motor con el motor templado.": "warm",
		"Verifique o nível do óleo do motor com o motor quente.":        "hot",
		"Verifique o nível do óleo do motor com o motor morno.":         "warm",
		"Ölstand bei betriebswarmem Motor prüfen.":                      "hot",
		"Ölstand bei handwarmem Motor prüfen.":                          "warm",
		"Check the oil level with the engine hot.":                      "hot",
		"Check the oil level with the engine warm.":                     "warm",
	} {
		if got := said(text, "level.state"); !slices.Equal(got, []string{"level.state " + state}) {
			t.Errorf("%q: %q, want %s", text, got, state)
		}
	}
}

// Oil may be said to reach a hole in many ways, and a stick to be screwed in.
func TestRead_HolesAndSticks(t *testing.T) {
	for text, device := range map[string]string{
		"Final drive: the oil should reach the bottom thread of the filler opening.":      "level.final.device hole",
		"Gearbox: oil level is correct when it begins to seep from the hole.":             "level.gearbox.device hole",
		"Check the oil level with the dipstick. Screw the cap right down before reading.": "level.device stick-screwed",
	} {
		if got := said(text, "level."); !slices.Contains(got, device) {
			t.Errorf("%q: %q, want %q", text, got, device)
		}
	}
}

// Where a plug is does not make it another's.
func TestRead_WhereAPlugIs(t *testing.T) {
	want := []string{"bolt.drain.drive hexagon-key", "bolt.drain.size 14 mm"}
	for _, text := range []string{
		"The oil drain plug (magnetic, 14 mm Allen key) is on the left-hand side beneath the alternator.",
		"The oil drain plug (14 mm Allen key) is below the clutch.",
		"The oil drain plug, 14 mm Allen key, is below the clutch.",
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
