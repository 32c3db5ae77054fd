package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// Make and model as they stand in the first line of a page. All are invented.
func TestRead_Names(t *testing.T) {
	const page = "\n\nMotoröl wechseln: 2,5 Liter SAE 20W-50.\n"
	for head, want := range map[string][]string{
		"OSTERWALD  K 85 Kardan                  Wartung          17":         {"make Osterwald", "model K 85 Kardan"},
		"ROTHFELS  X-450 Enduro        Bedienungsanleitung          31":       {"make Rothfels", "model X-450 Enduro"},
		"TRESMONT  Bicylindre 500, type M 6         Tableau de graissage":     {"make Tresmont", "model Bicylindre 500 type M 6"},
		"Kranzau Specht 250 S                     Betriebsanleitung     3":    {"make Kranzau", "model Specht 250 S"},
		"SERVICEINFORMATION 3/2008                  MORGENTAU Zephir 450":     {"make Morgentau", "model Zephir 450"},
		"Wartung       M12 x 1,5       25":                                    nil,
		"G R E V E N   Sparber 3                     Wartung        12":       {"make Greven", "model Sparber 3"},
		"GREVENSEE FAHRZEUGWERKE AG       12\n\nSchmierung der „Lerche“":      {"make Grevensee", "model Lerche"},
		"WENDLEBURY MOTOR CYCLES LTD.     Page 17":                            {"make Wendlebury"},
		"WENDLE & SONS    17\n\nLUBRICATION OF THE \"LARK\", 331 c.c. O.H.V.": {"make Wendle", "model Lark"},
		"Kranzau Specht 250 (1994-1999) und Specht 350 (1997-2003)":           {"make Kranzau", "model Specht 250", "model Specht 350"},
		"KRANZAU SPECHT 250 / SPECHT 350":                                     {"make Kranzau", "model Specht 250", "model Specht 350"},
		"Wartung                     Kranzau Specht 250 - Specht 250 Tour":    {"make Kranzau", "model Specht 250", "model Specht 250 Tour"},
		"Kranzau Specht 250 und 350":                                          {"make Kranzau", "model Specht 250", "model Specht 350"},
		"Kranzau Specht 250 - 24 Seiten":                                      {"make Kranzau", "model Specht 250"},
		"Motoröl       R I R I R":                                             nil,
	} {
		got := append(said(head+page, "make"), said(head+page, "model")...)
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", head, got, want)
		}
	}
}

// Where a name stands as a title does it is sure; where a part of it may be missing, or a title
// that nobody here knows may stand before it, it is asked.
func TestRead_NamesThatAreSure(t *testing.T) {
	const page = "\n\nMotoröl wechseln: 2,5 Liter SAE 20W-50.\n"
	for head, want := range map[string]bool{
		"GREVENSEE  Dohle 175                     Werkstattblatt 4":              true,
		"DER BRENDEL \"LERCHE\"   250 ccm          12":                           true,
		"Datenblatt für die Werkstatt\n\nLagune 150i           Modelljahre 2015": false,
		"Wartung\n\nPelluca Lagune 150           Modelljahre 2015-2019":          true,
		"FAHRWERKSTEILE               Dohle 175":                                 false,
		"GREVENSEE  Dohle 175 i.e.                Werkstattblatt 4":              false,
		"Gesendet: Son 14 Feb, 21:07\n\nMeine Grevensee Dohle 175 (1986)":        false,
	} {
		for _, r := range manual.Read(head+page, "").Readings {
			if r.What == "model" && r.Sure != want {
				t.Errorf("%q: %q sure %v", head, r.Text, r.Sure)
			}
		}
	}
}

// A name is as the page has it, whatever word of the trade it looks like, and no sign of a photo.
func TestRead_NamesThatLookLikeWords(t *testing.T) {
	for _, name := range []string{"Lince", "Drein", "Filtar", "Scrow", "Gcar", "Lovel", "Bolte"} {
		for _, head := range []string{"Corvallo " + name + " 250", strings.ToUpper("Corvallo "+name) + " 250           TECHNICAL DATA    12"} {
			text := head + "\n\nEngine oil, at change ........ 1.2 L\nDrain plug ....... 25 N·m\n"
			got := said(text, "model")
			if !slices.Equal(got, []string{"model " + name + " 250"}) {
				t.Errorf("%q: %q", head, got)
			}
			if !sureIn(text, "bolt.drain.torque") {
				t.Errorf("%q: the page is said to be a photo's", head)
			}
		}
	}
}

// Years are also written without their century, with the word or the sign that says from when to when.
func TestRead_YearsWithoutCentury(t *testing.T) {
	for head, want := range map[string][]string{
		"NAGORU HAYATEN 437          '11 on":           {"years 2011-"},
		"NAGORU HAYATEN 437          '08-'12":          {"years 2008-2012"},
		"NAGORU HAYATEN 437 ('98 onwards)":             {"years 1998-"},
		"Nagoru Hayaten 437, models from ’86 to ’91":   {"years 1986-1991"},
		"NAGORU HAYATEN 437          '11":              nil,
		"NAGORU HAYATEN 437, length 6'11 on the stand": nil,
	} {
		if got := said(head+"\n\nEngine oil: 2.5 litres SAE 20W-50.\n", "years"); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", head, got, want)
		}
	}
}
