package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// Whose it is where something nearer than a heading says so.
func TestRead_Beside(t *testing.T) {
	for _, c := range []struct {
		text, begin string
		want        []string
	}{
		// A row of what is due says what is done then, in the cell behind its figure.
		{"SERVICE\n1,000 km          engine oil, final drive oil\nevery 5,000 km    engine oil\nevery 10,000 km   final drive oil, spark plug (12 N·m)\nevery 15,000 km   belt, rollers\n", "interval.",
			[]string{"interval.distance 5000 km", "interval.final 10000 km", "interval.final-first 1000 km", "interval.first 1000 km"}},
		{"WARTUNG\n1.000 km         Motoröl\nalle 6.000 km    Motoröl\nalle 18.000 km   Riemen, Rollen\n", "interval.", []string{"interval.distance 6000 km", "interval.first 1000 km"}},
		// An oil's name over what is done to it, below when it is done.
		{"Every 1,000 miles\nPRIMARY CHAINCASE. Drain and refill with 1/4 Imp. pint.\n\nEvery 4,000 miles\nGEARBOX. Drain and refill with 1 Imp. pint.\n", "interval.", []string{"interval.gearbox 4000 mi", "interval.primary 1000 mi"}},
		// Whose level it is stands beside that word.
		{"BOÎTE                   0,75 l\nPONT ARRIÈRE            0,25 l\n\nNIVEAU MOTEUR  sur béquille centrale, arrêté depuis 5 minutes, par hublot côté droit.\n", "level.", []string{"level.device window", "level.stance centre-stand", "level.wait 5 min"}},
		// What a gearbox is filled with is its own oil, and what a page warns of is nobody's.
		{"Getriebe\n\nDas Wechselgetriebe enthält 800 ccm Motorenöl SAE 40. Der Ölstand reicht bis zur Unterkante der Einfüllöffnung.\n", "level.", []string{"level.gearbox.device hole"}},
		{"GEARBOX\n\nThe gearbox holds 800 cc of engine oil SAE 40. The oil has to reach the lower edge of the filler hole.\n", "level.", []string{"level.gearbox.device hole"}},
		{"Huile de pont arrière : SAE 80W-90. Ne jamais employer l'huile moteur 10W-40.\nContrôle du niveau : moto à la verticale ; l'huile doit affleurer le bord inférieur de l'orifice.\n", "level.", []string{"level.final.device hole", "level.final.stance upright"}},
		// A label with a colon is nearer than a heading.
		{"ENGINE OIL\nDrain plug 22 N·m.\n\nFinal drive: 120 cc, SAE 80W-90. Drain screw 15 N·m.\n", "bolt.", []string{"bolt.drain.torque 22 N·m", "bolt.final-drain.torque 15 N·m"}},
		// Two plugs that are told apart by what they close.
		{"Dois bujões: o do quadro (17 mm, 24 Nm) e o do cárter (M12, 26 Nm).", "bolt.", []string{"bolt.drain.thread M12", "bolt.drain.torque 26 N·m", "bolt.tank-drain.drive hexagon", "bolt.tank-drain.size 17 mm", "bolt.tank-drain.torque 24 N·m"}},
		// All years are no interval, and another job's capacity no oil.
		{"Torques (todos os anos)\n  Bujão de drenagem do óleo ..... 24 N.m\n", "interval.", nil},
		{"ACEITE DE MOTOR\nCantidad en el cambio ......... 1.350 cm³\n\nREFRIGERACIÓN\nCapacidad del circuito ........ 1.100 cm³\n", "oil.", []string{"oil.engine.oil-only 1350 mL"}},
		{"Oil change: 1,000 km, and after that each\nDrain plug: 32 N·m\n", "interval.", []string{"interval.first 1000 km"}},
		// "With the filter" beside an amount says how much goes in, and not how often it is changed.
		{"Moteur : 3,1 l (filtre compris), 2,9 l sans ; 10W40 SG\nFiltre : cartouche vissée\n", "filter.every", nil},
		{"Engine oil: vidange every 6,000 km, oil filter at every oil change.\n", "filter.every", []string{"filter.every 1"}},
		// What is told twice is due each time, and what follows the first is each other.
		{"Primeira mudança do óleo: 1.000 km; seguintes: de 8.000 em 8.000 km.\n", "interval.", []string{"interval.distance 8000 km", "interval.first 1000 km"}},
	} {
		got := said(c.text, c.begin)
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
	for _, years := range said("MODELOS ATÉ 2012 E A PARTIR DE 2013\nBujão de drenagem do óleo: 24 N.m\n", "years") {
		if strings.Contains(years, "2012") {
			t.Errorf("%q", years)
		}
	}
}

// A figure in another unit than the head of its column says, and a state that the page tells in
// two ways, are asked.
func TestRead_TwoWays(t *testing.T) {
	for _, text := range []string{
		"COPPIE DI SERRAGGIO                     Nm\nTappo scarico olio, M12x1,25 ..... 25\nFiltro olio ...................... 15 kgm\n",
		"TORQUES                                 N·m\nOil drain bolt ................... 25\nOil filter ....................... 15 kgf·m\n",
	} {
		for _, r := range manual.Read(text, "").Readings {
			if strings.HasSuffix(r.What, ".torque") && (r.Sure != (r.What == "bolt.drain.torque") || r.Sure != (r.Text != "")) {
				t.Errorf("%q: %s %q is sure: %v", text, r.What, r.Text, r.Sure)
			}
		}
	}
	text := "LIVELLO OLIO\nControllare il livello a motore freddo, all'oblò.\nIl livello si controlla solo a motore caldo.\n"
	if got := said(text, "level.state"); len(got) != 2 {
		t.Errorf("%q: %q", text, got)
	}
}

// A torque behind its label is of the one part that was spoken of since the heading, and is asked
// where there were two.
func TestRead_OneSpokenOf(t *testing.T) {
	for text, sure := range map[string]bool{
		"OIL CHANGE\nUndo the drain plug (17 mm spanner). Renew the copper washer.\nTorque: 25 N·m\n":                                       true,
		"ÖLWECHSEL\nAblassschraube (SW 17) herausdrehen. Kupferring erneuern.\nAnzugsmoment: 25 Nm\n":                                       true,
		"VIDANGE\nDéposer le bouchon de vidange (clé de 17). Remplacer le joint de cuivre.\nCouple de serrage : 25 N·m\n":                   true,
		"OIL CHANGE\nUndo the drain plug (17 mm spanner). Clean the oil strainer and its cover. Renew the copper washer.\nTorque: 25 N·m\n": false,
	} {
		found := false
		for _, r := range manual.Read(text, "").Readings {
			if strings.HasSuffix(r.What, ".torque") {
				if found = true; r.Sure != sure {
					t.Errorf("%q: %s is sure: %v", text, r.What, r.Sure)
				}
			}
		}
		if !found && sure {
			t.Errorf("%q: no torque", text)
		}
	}
}
