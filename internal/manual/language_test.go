package manual_test

import (
	"testing"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
)

// Texts of our own in languages that nobody here reads, from memory.
var elsewhere = []string{
	"Kontrollera oljenivån med motorcykeln stående upprätt på plant underlag. Dra åt pluggen med 25 Nm.",
	"Olej silnikowy z wymianą filtra: 1,6 l\nKorek spustowy oleju: 25 N·m\nOlej: SAE 10W-40, JASO MA2",
	"Motorový olej s výměnou filtru: 1,6 l. Vypouštěcí šroub oleje: 25 N·m. Výměna oleje každých 6000 km.",
	"Motorolie med filterskift: 1,6 l. Aftapningsprop: 25 Nm. Skift olie hver 6000 km eller 12 måneder.",
	"Motor yağı filtre değişimi ile: 1,6 l. Boşaltma tapası: 25 N·m.",
	"エンジンオイル\nオイル交換時 1.5 L\nドレンボルト 25 N·m",
	"Моторное масло с заменой фильтра 1,6 л. Сливная пробка 25 Н·м.",
}

func TestAPageIsOfItsLanguage(t *testing.T) {
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pages {
		if got := manual.Read(p.Text, "").Language; got != p.Language {
			t.Errorf("%s is of %q, and not of %q", p.Name, p.Language, got)
		}
	}
}

func TestATextOfAnotherLanguageIsOfNone(t *testing.T) {
	for _, text := range elsewhere {
		if got := manual.Read(text, "").Language; got != "" {
			t.Errorf("%q is said to be of %q", text, got)
		}
	}
}
