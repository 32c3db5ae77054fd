package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// In a table of two models a cell that is printed once, or stands amid the columns, is of both.
func TestRead_SpannedCells(t *testing.T) {
	for _, words := range []struct {
		volume, oil, filter, kind string
	}{
		{"Oil with filter", "Engine oil", "Oil filter", "Spin-on oil filter"},
		{"Motoröl mit Filter", "Motoröl", "Ölfilter", "Anschraubfilter"},
		{"Huile moteur avec filtre", "Huile moteur", "Filtre à huile", "Filtre vissé"},
		{"Aceite con filtro", "Aceite del motor", "Filtro de aceite", "Filtro roscado"},
		{"Olio motore con filtro", "Olio motore", "Filtro olio", "Filtro avvitabile"},
		{"Óleo do motor com filtro", "Óleo do motor", "Filtro de óleo", "Filtro roscado"},
	} {
		cell := func(label, cells string) string {
			return label + strings.Repeat(" ", 30-len([]rune(label))) + cells + "\n"
		}
		head := "TARNBECK\n" + cell("", "HOLLIN 400          HOLLIN 600 S") + cell(words.volume, "1.2 L               1.5 L")
		for _, row := range []string{
			cell(words.oil, "SAE 10W-40, API SG") + cell(words.filter, words.kind),
			cell(words.oil, "      SAE 10W-40, API SG") + cell(words.filter, "      "+words.kind),
		} {
			for _, model := range []string{"Hollin 400", "Hollin 600 S"} {
				p := manual.Read(head+row, "")
				p.Chosen(model)
				var got []string
				for _, r := range p.Readings {
					if r.What == "filter.kind" || r.What == "oil.engine.grades" || r.What == "oil.engine.service" {
						got = append(got, r.Text)
					}
				}
				slices.Sort(got)
				if want := []string{"10W-40", "SG", "spin-on"}; !slices.Equal(got, want) {
					t.Errorf("%s: %q, want %q of\n%s", model, got, want, head+row)
				}
			}
		}
	}
}

// Beside the card of another bike it is asked whose a page is: nothing of it is sure, and of the card's
// bike nothing is taken. A name that is longer or shorter is no other.
func TestPage_Beside(t *testing.T) {
	const text = "ORRINSHAW PIKE 300   Service data\n\nOil drain plug: 25 N·m\nEngine oil with filter: 1.2 L\n"
	for model, other := range map[string]bool{"": false, "Pike 300": false, "Pike 300 ABS": false, "pike": false, "Pike 450": true, "Heron 300": true} {
		alone := len(sureOf(manual.Read(text, "").Readings))
		p := manual.Read(text, "")
		p.Beside(model)
		if asked := len(p.Models) == 2; asked != other || asked && len(sureOf(p.Readings)) > 0 || alone == 0 {
			t.Errorf("beside %q: %q, sure %q", model, p.Models, sureOf(p.Readings))
		}
		if !other {
			continue
		}
		p.Chosen("Pike 300")
		if got := len(sureOf(p.Readings)); got != alone {
			t.Errorf("beside %q: of its own bike %d are sure, %d alone", model, got, alone)
		}
		q := manual.Read(text, "")
		q.Beside(model)
		q.Chosen(model)
		if len(q.Readings) > 0 {
			t.Errorf("of %q it says %v", model, q.Readings)
		}
	}
}
