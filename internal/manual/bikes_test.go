package manual_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
)

// bikesPage is a page of one bike, and what it says when it is read alone.
type bikesPage struct {
	*pagetest.Page
	model string
	alone manual.Page
}

// pagesOfOne gives the pages of testdata that name one model each, by language.
func pagesOfOne(t *testing.T) map[string][]bikesPage {
	all := map[string][]bikesPage{}
	for _, folder := range []string{"pages", "blind-pages"} {
		pages, err := pagetest.Load("../../testdata/" + folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pages {
			q := bikesPage{Page: p, alone: manual.Read(p.Text, "")}
			named := 0
			for _, f := range p.Truth {
				if f.What == "model" {
					named++
				}
			}
			brand := ""
			for _, r := range q.alone.Readings {
				switch r.What {
				case "make":
					brand = r.Text
				case "model":
					if strings.Contains(p.Text[r.Quote.From:], "\n") { // in a foot it goes with such pages alone
						q.model = r.Text
					}
				}
			}
			if q.model != "" && q.model[0] >= '0' && q.model[0] <= '9' && brand != "" { // "650" is no name
				q.model = brand + " " + q.model
			}
			if named == 1 && q.model != "" && len(q.alone.Models) == 0 {
				all[p.Language] = append(all[p.Language], q)
			}
		}
	}
	return all
}

// sureOf gives what is said for sure, "what text" each.
func sureOf(list []manual.Reading) (sure []string) {
	for _, r := range list {
		if r.Sure {
			sure = append(sure, r.What+" "+r.Text)
		}
	}
	slices.Sort(sure)
	return sure
}

// oilBefore reports whether a page's head names an oil before its bike: without a blank line that
// may be a row of a table.
func oilBefore(head, model string) bool {
	head = strings.ToLower(head)
	before, _, _ := strings.Cut(head, strings.ToLower(model[:strings.IndexByte(model+" ", ' ')]))
	return slices.ContainsFunc([]string{"oil", "öl", "huile", "olio", "aceite", "óleo", "olie"}, func(w string) bool { return strings.Contains(before, w) })
}

// figures counts the figures of a name.
func figures(name string) (n int) {
	for _, c := range name {
		if c >= '0' && c <= '9' {
			n++
		}
	}
	return n
}

// Pages of several bikes that are pasted one after another are told apart: nothing is sure
// before one is chosen, all are in the list, and of the one that is chosen the same is said as
// of its page alone.
func TestRead_PagesOfSeveralBikes(t *testing.T) {
	all := pagesOfOne(t)
	var tags []string
	for tag, pages := range all {
		if len(pages) > 3 {
			tags = append(tags, tag)
		}
	}
	slices.Sort(tags)
	rapid.Check(t, func(t *rapid.T) {
		pages := all[rapid.SampledFrom(tags).Draw(t, "language")]
		between := rapid.SampledFrom([]string{"\n\n", "\n", "\n\n\n", "\n\f", "\f", "\n\n\f\n"}).Draw(t, "between")
		foot := rapid.Bool().Draw(t, "foot")
		if between == "\n" { // a head in a photo, in a sentence, or with an oil before its name is known by a blank line alone
			pages = slices.DeleteFunc(slices.Clone(pages), func(p bikesPage) bool {
				first, _, _ := strings.Cut(p.Text, "\n")
				return p.Kind == pagetest.Photo || strings.HasSuffix(first, ".") || oilBefore(first, p.model)
			})
		}
		list := rapid.SliceOfNDistinct(rapid.SampledFrom(pages), 2, 4, func(p bikesPage) string { return p.model }).Draw(t, "pages")
		var text strings.Builder
		var ends []int
		for _, p := range list {
			text.WriteString(p.Text)
			if foot {
				first, _, _ := strings.Cut(strings.TrimLeft(p.Text, "\n"), "\n")
				number := p.model[strings.LastIndexByte(p.model, ' ')+1:]
				if strings.Contains(first, number) { // its head
					text.WriteString("\n\n" + first)
				}
			}
			ends = append(ends, text.Len())
			text.WriteString(between)
		}
		read := manual.Read(text.String(), "")
		if sure := sureOf(read.Readings); len(sure) > 0 {
			t.Errorf("sure though nobody knows of which bike: %q\n%s", sure, text.String())
		}
		if between == "\n" && slices.ContainsFunc(list, func(p bikesPage) bool { return figures(p.model) == 1 }) {
			return // nobody can tell for sure whether a page begins there
		}
		from := 0
		for n, p := range list {
			if !slices.Contains(read.Models, p.model) {
				t.Errorf("%s %s is none of %q\n%s", p.Name, p.model, read.Models, text.String())
				return
			}
			one := manual.Read(text.String(), "")
			one.Chosen(p.model)
			for _, r := range one.Readings {
				if r.Sure && (r.Quote.From < from || r.Quote.To > ends[n]) {
					t.Errorf("%s: %s %s is of another\n%s", p.model, r.What, r.Text, text.String())
				}
			}
			got, want := sureOf(one.Readings), sureOf(p.alone.Readings)
			for _, s := range want {
				if !foot && !slices.Contains(got, s) {
					t.Errorf("%s: %s is sure of its page alone\n%s", p.model, s, text.String())
				}
			}
			for _, s := range got {
				if !foot && !slices.Contains(want, s) && !strings.HasPrefix(s, "make ") && !strings.HasPrefix(s, "model ") { // a name is surer where it comes first
					t.Errorf("%s: %s is not sure of its page alone\n%s", p.model, s, text.String())
				}
			}
			from = ends[n]
		}
	})
}

// What a page of one bike names besides, or says of its bike again, makes no second bike.
func TestRead_OneBike(t *testing.T) {
	for _, text := range []string{
		"ORRINSHAW PIKE 300\n\nEngine oil       Vortola 300\nOil filter       Hylax 204\nSealant          Lockwell 243\nOil drain bolt   25 N·m\n",
		"ORRINSHAW PIKE 300\n\nOil filter       Hylax 204\nOil drain bolt   25 N·m\n",
		"ORRINSHAW PIKE 300\n\nOil: Vortola 300, SAE 10W-40\nOil drain bolt: 25 N·m\n",
		"ORRINSHAW PIKE 300\n\nVortola 300 SAE 10W-40\nOil drain bolt: 25 N·m\n",
		"ORRINSHAW PIKE 300      Service data      2-3\n\nOil drain bolt: 25 N·m\n\nPike 300\n\nOil with filter: 1.2 L\n\nORRINSHAW PIKE 300   2-4\n",
		"ORRINSHAW PIKE 300\n\nOil drain bolt: 25 N·m\n\nPIKE 300 ABS\n\nOil with filter: 1.2 L\n",
		"ORRINSHAW PIKE 300\n\nOil drain bolt: 25 N·m\nThe plug is that of the Heron 450.\nOil with filter: 1.2 L\n",
		"WERKSTATTHANDBUCH ORRINSHAW PIKE 300\n\nÖlfilter         Hylax 204\nÖlablassschraube: 25 N·m\n",
		"ORRINSHAW PIKE 300\n\nFiltre à huile    Hylax 204\nBouchon de vidange : 25 N·m\n",
	} {
		if p := manual.Read(text, ""); len(p.Models) > 0 || len(sureOf(p.Readings)) < 2 {
			t.Errorf("%q is of %q, sure %q", text, p.Models, sureOf(p.Readings))
		}
	}
}

// Where the names of several bikes stand below each other, and so do their figures, all is asked.
func TestRead_NamesBelowEachOther(t *testing.T) {
	const text = "TARNBECK   Data\n\nHOLLIN 400\nHOLLIN 600 S\nDrain plug torque\n25 N·m\n30 N·m\nOil with filter\n1.2 L\n1.5 L\n"
	if sure := sureOf(manual.Read(text, "").Readings); len(sure) > 0 {
		t.Errorf("sure: %q", sure)
	}
}

// A bike whose name has no number, or one figure, is another too: where the head of its page says so
// for certain it is parted, and else nothing is sure. Its own second page makes no other bike of it.
func TestRead_BikesWithoutNumber(t *testing.T) {
	for _, of := range []struct {
		one, other string
		heads      []string
	}{
		{"Engine oil drain plug: 25 N·m\n", "Engine oil with filter: 2.4 L\nEngine oil: SAE 10W-40\n", []string{"ORRINSHAW PIKE 300      Service data      2-3", "ORRINSHAW \"PIKE\"   300 c.c.      12", "LUBRICATION OF THE \"GRAVLING\", 331 c.c. O.H.V.", "ZELMAR   Skrivan 3                     12", "ZELMAR TREMKA 2                 Owner's manual", "MUNTERSHAW TORVING            Owner's manual     12", "MUNTERSHAW DALLIK            Owner's manual     12"}},
		{"Ölablassschraube: 25 Nm\n", "Motoröl mit Filter: 2,4 l\nMotoröl: SAE 10W-40\n", []string{"GREVENSEE Dohle 300      Werkstatthandbuch      2-3", "SCHMIERUNG DER „GRAUAMMER“, 331 ccm", "ZELMAR   Skrivan 3                     12", "MUNTERSHAW TORVING            Betriebsanleitung     12"}},
		{"Bouchon de vidange d'huile moteur : 25 N.m\n", "Huile moteur avec filtre : 2,4 l\nHuile moteur : SAE 10W-40\n", []string{"SAUVELIN BUSARD 300      Manuel d'atelier      27", "GRAISSAGE DE LA « GRAVELOTTE », 331 cm³", "ZELMAR   Skrivan 3                     12", "MUNTERSHAW TORVING            Manuel du propriétaire     12"}},
		{"Tornillo de drenaje del motor: 25 N·m\n", "Aceite del motor con filtro: 2,4 l\nAceite del motor: SAE 10W-40\n", []string{"ALTOZÁN VENCEJO 300      Manual de taller      54", "ENGRASE DE LA «GARCETILLA», 331 cm³", "ZELMAR   Skrivan 3                     12", "MUNTERSHAW TORVING            Manual del propietario     12"}},
		{"Tappo scarico olio motore: 25 Nm\n", "Olio motore con filtro: 2,4 l\nOlio motore: SAE 10W-40\n", []string{"MONTEFOSCO GHEPPIO 300      Manuale d'officina      48", "LUBRIFICAZIONE DELLA «GARZETTONA», 331 cm³", "ZELMAR   Skrivan 3                     12", "MUNTERSHAW TORVING            Libretto di uso e manutenzione     12"}},
		{"Bujão de drenagem do óleo do motor: 25 N·m\n", "Óleo do motor com filtro: 2,4 l\nÓleo do motor: SAE 10W-40\n", []string{"SERRAVALE CURIÓ 300      Manual de serviço      5-9", "LUBRIFICAÇÃO DA «GARÇOTA», 331 cm³", "ZELMAR   Skrivan 3                     12", "MUNTERSHAW TORVING            Manual do proprietário     12"}},
	} {
		for i, a := range of.heads {
			for j, b := range of.heads {
				for _, between := range []string{"\n", "\n\n\n", "\f"} {
					text := a + "\n\n" + of.one + between + b + "\n\n" + of.other
					p := manual.Read(text, "")
					sure := sureOf(p.Readings)
					alike := i == j || strings.Contains(a, "PIKE") && strings.Contains(b, "PIKE")
					if !alike && len(sure) > 0 {
						t.Errorf("sure: %q of %q\n%s", sure, p.Models, text)
					}
					if i == j && (len(p.Models) > 0 || len(sure) < 3) {
						t.Errorf("one bike is %q, sure %q\n%s", p.Models, sure, text)
					}
				}
			}
		}
	}
}
