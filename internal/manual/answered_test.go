package manual_test

import (
	"slices"
	"testing"

	"tidysump/internal/manual"
)

// A column of labels and the column of their figures below it are a table, in each language,
// and lines that only look alike are none.
func TestRead_ColumnsBelowEachOther(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"volumes and an oil", "Engine oil, with filter\nEngine oil, total amount\nFork oil, each leg\nRecommended engine oil\n2.1 L (2.2 US qt)\n2.6 L (2.7 US qt)\n420 mL\nSAE 10W-40, API SG\n",
			[]string{"oil.engine.dry 2.6 L", "oil.engine.grades 10W-40", "oil.engine.service SG", "oil.engine.with-filter 2.1 L"}},
		{"below a heading in capitals", "TORQUES\nRear axle nut\nOil drain plug\nOil filter cover screws\n88 N·m\n24 N·m (2.4 kgf·m)\n8 N·m\n", []string{"bolt.drain.torque 24 N·m", "bolt.filter-cover.torque 8 N·m"}},
		{"a label of two lines", "Engine oil drain\nplug\nSpark plug\n30 Nm\n12 Nm\n", []string{"bolt.drain.torque 30 N·m"}},
		{"German", "Die Werte für das Motoröl und den Motor stehen in der Tabelle.\n\nMotoröl mit Filterwechsel\nKraftstofftank\n1,9 l\n14 l\n", []string{"oil.engine.with-filter 1.9 L"}},
		{"French", "Les valeurs de l'huile du moteur et des couples sont dans le tableau.\n\nBouchon de vidange d'huile\nBougie\n25 N·m\n18 N·m\n", []string{"bolt.drain.torque 25 N·m"}},
		{"Italian", "I valori per l'olio del motore sono nella tabella con le coppie.\n\nOlio forcella\nOlio motore con filtro\n0,5 l\n1,7 l\n", []string{"oil.engine.with-filter 1.7 L"}},
		{"Spanish", "Los valores del aceite del motor y de los pares están en la tabla.\n\nTapón de drenaje de aceite\nBujía\n22 N·m\n17 N·m\n", []string{"bolt.drain.torque 22 N·m"}},
		{"Portuguese", "Os valores do óleo do motor e dos apertos estão na tabela.\n\nBujão de drenagem do óleo\nVela de ignição\n22 N·m\n17 N·m\n", []string{"bolt.drain.torque 22 N·m"}},
		{"Dutch", "De waarden voor de olie van de motor staan in de tabel.\n\nOlieaftapplug\nBougie\n22 Nm\n17 Nm\n", []string{"bolt.drain.torque 22 N·m"}},
		{"the same figure in other units", "Engine oil\nAt oil change\n1.5 L\n1.6 US qt\n", []string{"oil.engine.oil-only 1.5 L", "oil.engine.oil-only 1.6 US qt"}},
		{"cells below a title", "Somewhere\nWorkshop manual\n2-17\nTORQUES\nPart\nThread\nN·m\nkgf·m\nSpark plug\nM12\n18\n1.8\nOil drain bolt\nM14\n26\n2.6\n", []string{"bolt.drain.thread M14", "bolt.drain.torque 26 N·m"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := append(said(c.text, "oil."), said(c.text, "bolt.")...)
			slices.Sort(got)
			if !slices.Equal(got, c.want) {
				t.Errorf("%q: %q, want %q", c.text, got, c.want)
			}
		})
	}
}

// Where a figure is missing nobody knows whose the others are: the first of them is no label's
// that stands above three others.
func TestRead_ColumnsThatDoNotMatch(t *testing.T) {
	for _, r := range manual.Read("Engine oil drain plug\nOil filter\nLevel plug\nSpark plug\n30 N·m\n14 N·m\n12 N·m\n", "").Readings {
		if r.Sure && r.What != "filter.kind" {
			t.Errorf("%s = %q is sure", r.What, r.Text)
		}
	}
}
