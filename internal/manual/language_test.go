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
	"SMÖRJNING\nMotorolja    SAE 10W-40    1,6 liter\nVäxellåda    SAE 80W-90    0,8 liter\nFramgaffel   SAE 10W       0,3 liter",
	"Motorolja        1,2 liter\nOljefilter       18 Nm",
	"Motorolja, med filter     3,2 l\nAvtappningsplugg          25 Nm",
	"Motorolje     1,6 l     SAE 10W-40\nGirkasse      0,8 l     SAE 80",
	"Moottoriöljy  1,6 l\nÖljynsuodatin 18 Nm",
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
		page := manual.Read(text, "")
		if page.Language != "" {
			t.Errorf("%q is said to be of %q", text, page.Language)
		}
		if sure := sureOf(page.Readings); len(sure) > 0 {
			t.Errorf("%q: %q are sure", text, sure)
		}
	}
}

// The shortest texts are of a language that is read.
func TestAShortTextIsOfItsLanguage(t *testing.T) {
	for text, want := range map[string]string{
		"Motoröl 2,2 l":                          "de",
		"Motor 2,2 l SAE 20W-50\nGetriebe 0,8 l": "de",
		"Ölfilter 18 Nm":                         "de",
		"Motorolie   1,6 l\nOliefilter  18 Nm":   "nl",
		"Moteur 2,2 l SAE 20W50":                 "fr",
		"Olio motore 2,2 l":                      "it",
		"Aceite del motor 2,2 l":                 "es",
		"Óleo do motor 2,2 l":                    "pt",
	} {
		if got := manual.Read(text, "").Language; got != want {
			t.Errorf("%q is of %q, not %q", text, got, want)
		}
	}
}
