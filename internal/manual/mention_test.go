package manual_test

import (
	"slices"
	"testing"
)

// A cover of an oil's case is none of the filter, on whichever side the case is named; a gear
// case is the final drive's where that has the same name with a word more.
func TestRead_CasesAndCovers(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"English", "Engine oil drain plug .... 30 N·m\nOil filter ............... 3/4 turn after contact\nTransmission side cover screws .... 11 N·m\nGearbox outer cover .... 12 N·m\n", []string{"bolt.drain.torque 30 N·m"}},
		{"German", "Motoröl-Ablassschraube .... 30 Nm\nÖlfilter .... 14 Nm\nGetriebe, Schrauben seitlicher Deckel .... 11 Nm\nSchrauben Deckel Getriebe .... 11 Nm\n", []string{"bolt.drain.torque 30 N·m", "bolt.filter.torque 14 N·m"}},
		{"French", "Bouchon de vidange d'huile moteur .... 30 Nm\nFiltre à huile .... 14 Nm\nVis du couvercle latéral de la boîte de vitesses .... 11 Nm\n", []string{"bolt.drain.torque 30 N·m", "bolt.filter.torque 14 N·m"}},
		{"Italian", "Tappo di scarico olio motore .... 30 Nm\nFiltro olio .... 14 Nm\nViti coperchio laterale cambio .... 11 Nm\n", []string{"bolt.drain.torque 30 N·m", "bolt.filter.torque 14 N·m"}},
		{"Spanish", "Tapón de drenaje del aceite del motor .... 30 Nm\nFiltro de aceite .... 14 Nm\nTornillos de la tapa lateral de la caja de cambios .... 11 Nm\n", []string{"bolt.drain.torque 30 N·m", "bolt.filter.torque 14 N·m"}},
		{"a gear case", "Engine oil 1.0 L\nRear gear case 0.2 L\nGear case drain bolt .... 9 N·m\nGear case filler bolt .... 10 N·m\n", []string{"bolt.final-drain.torque 9 N·m", "bolt.final-filler.torque 10 N·m"}},
		{"two cases", "Engine oil 1.0 L\nGearbox 0.8 L\nRear gear case 0.2 L\nGearbox drain bolt .... 19 N·m\nRear gear case drain bolt .... 9 N·m\n", []string{"bolt.final-drain.torque 9 N·m", "bolt.gearbox-drain.torque 19 N·m"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return s[len(s)-4:] != "N·m" })
			if !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}
