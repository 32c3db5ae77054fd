package manual

import "testing"

func TestNumber(t *testing.T) {
	for text, want := range map[string]string{
		"PLAINFORD HERON 320          2-3\nEngine oil 1.5 L":          "2-3",
		"Plainford Heron 320 · Owner's manual · 58\nEngine oil 1.5 L": "58",
		"PLAINFORD HERON 320 / SERVICE DATA / PAGE 2-11\nOil: 1.5 L":  "2-11",
		"Plainford Heron 320   Handbook for the rider, p. 41\nOil":    "41",
		"PLAINFORD HERON410 SERVICE MANUAL 2-6\nOil drain plug 25 Nm": "2-6",
		"PLAINFORD HERON 320 · SHEET · 3/5\nENGINE OIL":               "3/5",
		"Plainford Heron 320, Fahrerhandbuch, Seite 112\nDas Motoröl": "112",
		"Engine oil\nOil drain plug 25 Nm\n        – 27 –":            "27",
		"Engine oil\nOil drain plug 25 Nm\n               4-3":        "4-3",
		"PLAINFORD HERON 320\nEngine oil 1.5 L":                       "",
		"Plainford Heron\nOil drain plug ..... 25":                    "",
		"Oil drain bolt      25    2.5    18\nOil filter     12":      "",
		"Oil drain bolt      20-25\nOil":                              "",
		"Engine oil capacity     2\nOil drain plug":                   "",
		"PLAINFORD HERON 320   model years 2016-2022\nEngine oil":     "",
		"":  "",
		"7": "7",
	} {
		if got := Read(text, "").Number; got != want {
			t.Errorf("%q is page %q, want %q", text, got, want)
		}
	}
}
