package manual_test

import (
	"slices"
	"testing"

	"tidysump/internal/manual"
)

// "First: 1,000 km" is of what its row, its block or its heading tells of; where the page does not
// show it, it is asked.
func TestRead_BareFirst(t *testing.T) {
	for _, words := range [][4]string{
		{"Engine oil", "Final drive", "every", "First"},
		{"Motoröl", "Hinterachsantrieb", "alle", "Erstmals"},
		{"Huile moteur", "Huile de pont", "tous les", "Première fois"},
		{"Aceite del motor", "Aceite de la transmisión final", "cada", "Primera"},
		{"Olio motore", "Olio coppia conica", "ogni", "Prima"},
		{"Óleo do motor", "Óleo da transmissão final", "cada", "Primeira"},
		{"Motorolie", "Eindaandrijving", "elke", "Eerste"},
	} {
		engine, final, every, once := words[0], words[1], words[2], words[3]
		both := []string{"interval.distance 6000 km", "interval.final 20000 km", "interval.final-first 1500 km", "interval.first 1000 km"}
		for _, c := range []struct {
			text string
			sure []string
		}{
			{engine + ": " + every + " 6000 km\n" + once + ": 1000 km\n" + final + ": " + every + " 20000 km\n" + once + ": 1500 km\n", both},
			{engine + ": " + every + " 6000 km\n   " + once + ": 1000 km\n" + final + ": " + every + " 20000 km\n   " + once + ": 1500 km\n", both},
			{engine + ": " + every + " 6000 km\n" + final + ": " + every + " 20000 km\n" + once + ": 1000 km\n", both[:2]},
			{final + ": " + every + " 20000 km\n" + once + ": 1000 km\n" + engine + ": " + every + " 6000 km\n", both[:2]},
			{engine + ": " + every + " 6000 km\n" + once + ": 1000 km\n", []string{both[0], both[3]}},
		} {
			var sure []string
			for _, r := range manual.Read(c.text, "").Readings {
				if r.Sure {
					sure = append(sure, r.What+" "+r.Text)
				}
			}
			slices.Sort(sure)
			if !slices.Equal(sure, c.sure) {
				t.Errorf("%q: sure is %q, want %q", c.text, sure, c.sure)
			}
		}
	}
}
