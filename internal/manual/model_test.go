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
