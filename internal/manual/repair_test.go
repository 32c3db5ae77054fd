package manual

import (
	"strings"
	"testing"

	"tidysump/internal/manual/pagetest"
)

// repairedText is a text's tokens after the repair, parted by blanks; those that were put
// right stand in brackets, as they are compared.
func repairedText(text, language string) (shown string, repaired int) {
	rows := rowsOf(text, &lexemes{})
	d := languageOf(rows, language).dictionary()
	d.settleRows(rows)
	repair(rows, d)
	var parts []string
	for _, r := range rows {
		for _, t := range r.tokens {
			if t.repaired {
				parts = append(parts, "["+t.fold+"]")
				repaired++
			} else {
				parts = append(parts, t.fold)
			}
		}
	}
	return strings.Join(parts, " "), repaired
}

// Nothing is put right on a page without errors.
func TestRepair_Clean(t *testing.T) {
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pages {
		if p.Kind == pagetest.Photo {
			continue
		}
		if shown, n := repairedText(p.Text, p.Language); n > 0 {
			t.Errorf("%s: %d put right: %s", p.Name, n, shown)
		}
	}
}

func TestRepair(t *testing.T) {
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		t.Fatal(err)
	}
	var language string // of the pages whose words these are
	for _, p := range pages {
		if p.Name == "20-photo-of-steps" {
			language = p.Language
		}
	}
	for _, c := range []struct{ text, want string }{
		{"drain plug l5 Nm", "drain plug [15] nm"},
		{"drain plug 2O N·m (2.O kgf·m, l4 lbf·ft)", "drain plug [20] n · m ( [2.0] kgf · m , [14] lbf · ft )"},
		{"(2 .4 kgf-m, 1. 5 L)", "( [2.4] kgf - m , [1.5] l )"},
		{"1 .O L", "[1.0] l"},
		{"every 4.OOO km", "every [4.000] km"},
		{"every 1O,OOO km", "every [10,000] km"},
		{"SAE lOW-3O", "sae [10] [w] - [30]"},
		{"SAE 2OW5O", "sae [20] [w] [50]"},
		{"plug  M14x1 .5    3O     3 .1     l2", "plug m 14 x [1.5] [30] [3.1] [12]"},
		{"Oi1 2 .6 1  (2.7 US qt)", "[oil] [2.6] [l] ( 2.7 us qt )"},
		{"01L CHANGE, 548 crn3, 5 rnim", "[oil] change , 548 [cm] 3 , 5 [min]"},
		{"P ENDRIFT 25O   (1 959-l964)", "[pendrift] [250] ( [1959] - [1964] )"},
		{"Oi1 dr ain p1ug 13/ l6 in", "[oil] [drain] [plug] 13 / [16] in"},
		{"Eng1ne oil, C1utch cover, dr ain p1ug l5 Nm", "[engine] oil , [clutch] cover , [drain] [plug] [15] nm"},
		{"24 N-m (l8 1b . ft, 2.4kgf-m), l.0kgf-m", "24 n - m ( [18] [lb] . ft , 2.4 kgf - m ) , [1.0] [kgf] - m"},
		{"P1ug M2O, Ml4x1.5 , MA2 MB", "[plug] [m] [20] , [m] [14] [x] [1.5] , ma 2 mb"},
		{"GRlLLO llO, fi1ter, 0-ring", "[grillo] [110] , [filter] , [o] - ring"},
		{"every l 000 krn, Mistra1 9OO", "every [1000] [km] , [mistral] [900]"},
		{"Oi1 fi1ter 1.5 l", "[oil] [filter] 1.5 l"},
		{"Oi1 drain plug 25 Nrn", "[oil] drain plug 25 [nm]"},
		{"0il: do mot screw it in", "[oil] : do [not] screw it in"},
		{"ENGlNE OlL, fi1ter", "[engine] [oil] , [filter]"},
		{"Oildrainplug every1000km, first500km, wait3min", "[oil] [drain] [plug] every [1000] km , first [500] km , wait [3] min"},
		// What reads as it stands.
		{"MA2 GL5 M12x1.5 150i 10W40 5W-30 H4 P650 2nd O2 T903", "ma 2 gl 5 m 12 x 1.5 150 i 10 w 40 5 w - 30 h 4 p 650 2 nd o 2 t 903"},
		{"5l oil, 1.5l oil", "5 l oil , 1.5 l oil"},
		{"do mot screw it in", "do mot screw it in"},
	} {
		if got, _ := repairedText(c.text, language); got != c.want {
			t.Errorf("%q\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}
