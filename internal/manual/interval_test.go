package manual_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// said gives what is read of a text, "what text" each, as far as it begins so.
func said(text, prefix string) (list []string) {
	for _, r := range manual.Read(text, "").Readings {
		if len(r.What) >= len(prefix) && r.What[:len(prefix)] == prefix && r.Text != "" {
			list = append(list, r.What+" "+r.Text)
		}
	}
	slices.Sort(list)
	return list
}

func TestRead_Intervals(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Change the oil at 1,000 km, then every 6,000 km or 12 months.", []string{"interval.distance 6000 km", "interval.first 1000 km", "interval.months 12 months"}},
		{"Engine oil: 1000 km, 6000 km, then every 12000 km.", []string{"interval.distance 12000 km", "interval.first 1000 km"}},
		{"Engine oil every 6,000 km, in dust every 3,000 km. Air filter every 12,000 km.", []string{"interval.distance 6000 km", "interval.severe 3000 km"}},
		{"Engine oil: change at 500, 2,000 and then every 3,000 km.", []string{"interval.distance 3000 km", "interval.first 500 km"}},
		{"Change the engine oil at 300, 1,500, 3,000 and every 3,000 miles after that.", []string{"interval.distance 3000 mi", "interval.first 300 mi"}},
		{"Motoröl bei 500, 2.000 und dann alle 3.000 km wechseln.", []string{"interval.distance 3000 km", "interval.first 500 km"}},
		{"In step 5, and then every 3,000 km change the engine oil.", []string{"interval.distance 3000 km"}},
		{"Service at 1,000 km: change the engine oil. Service every 5,000 km: change the engine oil.", []string{"interval.distance 5000 km", "interval.first 1000 km"}},
		{"Service at 1,000 km: change engine oil, check valve clearance.\nService every 5,000 km: change engine oil, check brakes.", []string{"interval.distance 5000 km", "interval.first 1000 km"}},
		{"The engine oil and the gearbox oil are drained hot. Change both every 6,000 km.", []string{"interval.distance 6000 km", "interval.gearbox 6000 km"}},
		{"The engine oil and the gearbox oil are drained hot. Change both at 1,000 km and then every 6,000 km.", []string{"interval.distance 6000 km", "interval.first 1000 km", "interval.gearbox 6000 km", "interval.gearbox-first 1000 km"}},
		{"Oil change intervals\nFirst change ............ 1,000 km / 600 miles\nSubsequent changes ...... 6,000 km / 4,000 miles\n", []string{"interval.distance 6000 km", "interval.first 1000 km"}},
		{"Ölwechsel\nErster Wechsel ...... 1.000 km\nWeitere Wechsel ..... 6.000 km\n", []string{"interval.distance 6000 km", "interval.first 1000 km"}},
		{"Check the oil level every 500 km.", nil},
		{"Look at the oil every 500 km. Change it every 4,000 km.", []string{"interval.distance 4000 km"}},
		{"Ölwechsel erstmals bei 1.000 km, danach alle 10.000 km oder jährlich.", []string{"interval.distance 10000 km", "interval.first 1000 km", "interval.months 12 months"}},
		{"Motoröl alle 8.000 km, Getriebe und Hinterachse alle 16.000 km, alles erstmals bei 1.000 km.", []string{"interval.distance 8000 km", "interval.final 16000 km", "interval.final-first 1000 km", "interval.first 1000 km", "interval.gearbox 16000 km", "interval.gearbox-first 1000 km"}},
		{"Bremsflüssigkeit alle zwei Jahre. Zündkerzen alle 12.000 km.", nil},
		{"Vidange du moteur à 500 km, puis tous les 4 000 km ou tous les ans. Courroie : 15 000 km.", []string{"interval.distance 4000 km", "interval.first 500 km", "interval.months 12 months"}},
		{"Huile moteur toutes les 15 heures ; en compétition, toutes les 5 heures.", []string{"interval.hours 15 h", "interval.severe-hours 5 h"}},
		{"Liquide de frein : tous les deux ans.", nil},
		{"Change the oil every 3,000 km. Clean the strainer every 6,000 km and the fuel tap every 12,000 km. Oil the front hub every 500 km.", []string{"interval.distance 3000 km", "interval.strainer 6000 km"}},
		{"The oil filter rotor spins. Change the oil every 3,000 km, clean the strainer every 6,000 km and the rotor every 12,000 km.", []string{"interval.distance 3000 km", "interval.filter 12000 km", "interval.strainer 6000 km"}},
		{"Le rotor du filtre tourne. Changer l'huile tous les 3 000 km, nettoyer la crépine tous les 6 000 km et le rotor tous les 12 000 km.", []string{"interval.distance 3000 km", "interval.filter 12000 km", "interval.strainer 6000 km"}},
		{"Change the oil every 3,000 km. Clean the strainer every 6,000 km and the wossname every 12,000 km.", []string{"interval.distance 3000 km", "interval.strainer 6000 km"}},
		{"Service\n1 000 km: engine oil\nevery 4 000 km: engine oil, oil filter\nevery 8 000 km: gearbox oil\n", []string{"interval.distance 4000 km", "interval.first 1000 km", "interval.gearbox 8000 km"}},
		{"Wartung des Motors\n1 000 km: Motoröl\nalle 5 000 km: Motoröl\nalle 10 000 km: Ölfilter\n", []string{"interval.distance 5000 km", "interval.filter 10000 km", "interval.first 1000 km"}},
		{"The first oil change is at 500 km, the second at 1,500 km.", []string{"interval.first 500 km"}},
		{"Gearbox          engine oil SAE 40       0.9 l      every 8,000 km\nAir filter       engine oil              -          every 2,000 km\nEngine           engine oil SAE 40       2.0 l      every 3,000 km\n", []string{"interval.distance 3000 km", "interval.gearbox 8000 km"}},
		{"Engine oil: every 4,000 km. An engine in good order may use up to 0.4 L of oil in 1,000 km.", []string{"interval.distance 4000 km"}},
		{"Motoröl alle 6.000 km wechseln. Der Motor darf bis 0,4 l auf 1.000 km verbrauchen.", []string{"interval.distance 6000 km"}},
		{"Fill in 1.2 L of engine oil every 3,000 km.", []string{"interval.distance 3000 km"}},
		{"Engine oil: every 5,000 km. On dusty roads, or if most trips are shorter than 8 km, replace the oil every 2,500 km.", []string{"interval.distance 5000 km", "interval.severe 2500 km"}},
		{"Engine oil: every 3,000 miles. If most rides are under 5 miles, change the oil every 1,500 miles.", []string{"interval.distance 3000 mi", "interval.severe 1500 mi"}},
		{"Motoröl alle 6.000 km wechseln. Bei Fahrten von weniger als 10 km oder bei Staub das Motoröl alle 3.000 km wechseln.", []string{"interval.distance 6000 km", "interval.severe 3000 km"}},
		{"Huile moteur : tous les 6 000 km. En cas de trajets courts de moins de 8 km, vidanger tous les 3 000 km.", []string{"interval.distance 6000 km", "interval.severe 3000 km"}},
		{"Olio motore: ogni 6.000 km. In caso di percorsi brevi inferiori a 8 km sostituire l'olio ogni 3.000 km.", []string{"interval.distance 6000 km", "interval.severe 3000 km"}},
		{"Engine oil: every 8,000 km. The model sold until 2008 had an interval of 3,000 km; this no longer applies.", []string{"interval.distance 8000 km"}},
	} {
		if got := said(c.text, "interval."); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A strainer that is named with the oil before its time is cleaned with each change of oil.
func TestRead_StrainerWithOil(t *testing.T) {
	const text = "Motoröl und Ölfilter wechseln, Ölsieb reinigen: nach 1 Betriebsstunde, danach alle 15 Betriebsstunden."
	if got := said(text, "strainer."); !slices.Equal(got, []string{"strainer.every 1"}) {
		t.Errorf("%q: %q", text, got)
	}
	if got := said(text, "interval."); !slices.Equal(got, []string{"interval.first-hours 1 h", "interval.hours 15 h"}) {
		t.Errorf("%q: %q", text, got)
	}
}

// A filter that is named with the oil before its distance is changed with each change of
// oil; it has no distance of its own.
func TestRead_FilterWithOil(t *testing.T) {
	for _, text := range []string{
		"Engine oil and oil filter every 6,000 km.",
		"Motoröl und Ölfilter alle 6.000 km.",
		"Huile moteur et filtre à huile tous les 6 000 km.",
		"Motoröl SAE 10W-40, API SJ, und Filter alle 6 000 km.",
	} {
		if got := said(text, "filter.every"); !slices.Equal(got, []string{"filter.every 1"}) {
			t.Errorf("%q: %q", text, got)
		}
		if got := said(text, "interval."); !slices.Equal(got, []string{"interval.distance 6000 km"}) {
			t.Errorf("%q: %q", text, got)
		}
	}
}

func TestRead_Sizes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Oil drain plug (A/F 17): 25 N·m", "bolt.drain.size 17 mm"},
		{"Remove the oil drain plug (17 mm).", "bolt.drain.size 17 mm"},
		{"Oil drain plug, M12 x 1.5 (17 mm) .... 22 N·m", "bolt.drain.size 17 mm"},
		{"Ölablassschraube (SW 17): 25 Nm", "bolt.drain.size 17 mm"},
		{"Ölablassschraube mit 17er Ringschlüssel lösen.", "bolt.drain.size 17 mm"},
		{"Bouchon de vidange d'huile (clé de 17) : 25 N.m", "bolt.drain.size 17 mm"},
	} {
		if got := said(c.text, "bolt.drain.size"); !slices.Equal(got, []string{c.want}) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
	if got := said("Oil drain plug (M17): 25 N·m. Drain the oil into a pan of 17 litres.", "bolt.drain.size"); got != nil {
		t.Errorf("no size: %q", got)
	}
}

// The words of a figure are quoted with what is joined to them.
func TestRead_Quotes(t *testing.T) {
	for _, c := range []struct{ text, what, quote string }{
		{"L'olio motore si cambia ogni 10.000 km o almeno una volta l'anno.", "interval.distance", "ogni 10.000 km o almeno una volta l'anno"},
		{"Mudança do óleo do motor: a primeira aos 1.000 km e as seguintes de 12.000 em 12.000 km ou uma vez por ano.", "interval.distance", "de 12.000 em 12.000 km ou uma vez por ano"},
		{"Der Primärkasten wird mit 200 cm³ SAE 20 gefüllt.", "oil.primary.volume", "Primärkasten wird mit 200 cm³ SAE 20"},
		{"OIL                                 FILTER\n1. Remove the drain bolt (17 mm     4. Remove the filter cover and\nwrench) and let the oil drain       take out the old element. Wipe\ninto a pan below the engine.        the housing of the filter dry.\n", "bolt.drain.drive", "drain bolt (17 mm"},
		{"Cambie el filtro de aceite: para quitarlo hace falta una llave de cinta. El nuevo se enrosca a mano.", "filter.kind", "se enrosca"},
	} {
		for _, r := range manual.Read(c.text, "").Readings {
			if quote := c.text[r.Quote.From:r.Quote.To]; r.What == c.what && !strings.Contains(quote, c.quote) {
				t.Errorf("%q: %s is quoted %q, want %q", c.text, c.what, quote, c.quote)
			}
		}
		if len(said(c.text, c.what)) != 1 {
			t.Errorf("%q: %q", c.text, said(c.text, c.what))
		}
	}
}

// What is told of behind a semicolon is another thing where nobody here knows it; a filter of
// the oil that stands before a further filter is no oil with a filter.
func TestRead_Subjects(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Olio motore: primo a 1.000 km, poi ogni 12.000 km; brugnole laterali ogni 24.000 km.", []string{"interval.distance 12000 km", "interval.first 1000 km"}},
		{"Óleo do motor: SAE 10W-40\n\nPrimeira troca aos 1.000 km, depois a cada 6.000 km;\nfiltro: a cada duas trocas. Uso severo: 3.000 km.", []string{"interval.distance 6000 km", "interval.first 1000 km", "interval.severe 3000 km"}},
		{"Motoröl alle 6.000 km; Quarbel alle 24.000 km.", []string{"interval.distance 6000 km"}},
		{"Óleo do motor.\nA tela do filtro de óleo e o filtro centrífugo devem ser limpos a cada 12.000 km.", []string{"interval.filter 12000 km", "interval.strainer 12000 km"}},
		{"Mudança do óleo e do filtro a cada 6.000 km.", []string{"interval.distance 6000 km"}},
	} {
		if got := said(c.text, "interval."); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A line of its own that begins with the change of oil is of that, whatever stands above it.
func TestRead_OwnLine(t *testing.T) {
	for _, text := range []string{
		"Olio motore: cambio 2,6 l\nCoppie: tappo scarico 30 Nm - tappo radiatore 5 Nm\nCambio olio: primo 1.000 km, poi ogni 10.000 km.",
		"Motoröl: 2,6 l\nKühlmittel: 1,2 l\nÖlwechsel: erstmals 1.000 km, dann alle 10.000 km.",
		"Aceite de motor: 2,6 l\nLíquido refrigerante: 1,2 l\nCambio de aceite: primero a 1.000 km, luego cada 10.000 km.",
	} {
		if got := said(text, "interval."); !slices.Equal(got, []string{"interval.distance 10000 km", "interval.first 1000 km"}) {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// A machine that is raced has an interval of its own.
func TestRead_Raced(t *testing.T) {
	want := []string{"interval.hours 15 h", "interval.severe-hours 5 h"}
	for _, text := range []string{
		"Change the engine oil every 15 hours. If the machine is raced, change it every 5 hours.",
		"Engine oil: every 15 hours, every 5 hours if it is raced.",
		"Engine oil: every 15 hours; when used in competition every 5 hours.",
		"Motoröl alle 15 Stunden wechseln. Wird das Motorrad im Rennen gefahren, alle 5 Stunden.",
		"Vidanger l'huile moteur toutes les 15 heures. En course, toutes les 5 heures.",
		"Cambie el aceite del motor cada 15 horas. Si se compite, cada 5 horas.",
		"Sostituire l'olio motore ogni 15 ore. Se si gareggia, ogni 5 ore.",
		"Troque o óleo do motor a cada 15 horas. Em competição, a cada 5 horas.",
		"Ververs de motorolie elke 15 uur. Als de machine wordt geracet elke 5 uur.",
	} {
		if got := said(text, "interval."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Things in which no oil is changed do not keep the oil that their paragraph tells of behind them;
// a fork, which has its own, does.
func TestRead_OilBehindAnotherJob(t *testing.T) {
	want := []string{"interval.distance 6000 km"}
	for _, text := range []string{
		"Drive chain: slack 30 mm. Change the oil every 6,000 km.",
		"Tyres: front 2.2 bar. Battery: 12 V. Change the oil every 6,000 km.",
		"Antriebskette: Durchhang 30 mm. Das Öl alle 6000 km wechseln.",
		"Chaîne : tension 30 mm. Remplacer l'huile tous les 6 000 km.",
		"Cadena: holgura 30 mm. Cambie el aceite cada 6.000 km.",
		"Catena: gioco 30 mm. Cambiare l'olio ogni 6.000 km.",
		"Corrente: folga 30 mm. Troque o óleo a cada 6.000 km.",
		"Ketting: speling 30 mm. Ververs de olie elke 6.000 km.",
	} {
		if got := said(text, "interval."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for _, text := range []string{
		"Front fork: 485 cc per leg. Change the oil every 20,000 km.",
		"Drive chain: slack 30 mm. Fork: air pressure 0.4 bar. Change the oil every 20,000 km.",
		"Gabel: 485 cm³ je Holm. Das Öl alle 20.000 km wechseln.",
		"Forcella: 485 cc per stelo. Cambiare l'olio ogni 20.000 km.",
	} {
		if got := said(text, "interval."); len(got) > 0 {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// A question is what its answer is about; an amount may have a hyphen before its unit.
func TestRead_QuestionsAndHyphens(t *testing.T) {
	for text, want := range map[string][]string{
		"How often do I change the engine oil?\nEvery 4,000 km or six months.\nHow often the fork oil?\nEvery 20,000 km.":    {"interval.distance 4000 km", "interval.months 6 months"},
		"Q: When is the oil changed?\nA: Six months or 4,000 km.":                                                            {"interval.distance 4000 km", "interval.months 6 months"},
		"Wie oft wird das Motoröl gewechselt?\nAlle 6000 km.":                                                                {"interval.distance 6000 km"},
		"Tous les combien vidanger l'huile moteur ?\nTous les 6 000 km.":                                                     {"interval.distance 6000 km"},
		"¿Cada cuánto se cambia el aceite del motor?\nCada 6.000 km.":                                                        {"interval.distance 6000 km"},
		"Ogni quanto si cambia l'olio motore?\nOgni 6.000 km.":                                                               {"interval.distance 6000 km"},
		"De quanto em quanto tempo se troca o óleo do motor?\nA cada 6.000 km.":                                              {"interval.distance 6000 km"},
		"Change the engine oil at 6,000-km or 6-month intervals.":                                                            {"interval.distance 6000 km", "interval.months 6 months"},
		"Drain the sump at 2,000-mile intervals.":                                                                            {"interval.distance 2000 mi"},
		"After the running-in period (600 mi/1000 km) and from then on at 7,500 mi (12,000 km) intervals: renew engine oil.": {"interval.distance 7500 mi", "interval.first 600 mi"},
	} {
		if got := said(text, "interval."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// What is due in hard use may stand first, and the usual behind "otherwise".
func TestRead_Otherwise(t *testing.T) {
	want := []string{"interval.distance 3000 km", "interval.severe 1500 km"}
	for _, text := range []string{
		"The engine oil must be changed more often, about every 1,500 km, if the bike is used for deliveries; otherwise every 3,000 km will do.",
		"Change the engine oil every 1,500 km if the bike is ridden in dust, otherwise every 3,000 km.",
		"Change the engine oil every 3,000 km, or every 1,500 km if the bike is ridden in dust.",
		"Remplacer l'huile moteur tous les 1 500 km si la moto roule en ville, sinon tous les 3 000 km.",
		"Sostituire l'olio motore ogni 1.500 km se la moto è usata in città, altrimenti ogni 3.000 km.",
		"Cambie el aceite del motor cada 1.500 km si circula por ciudad; de lo contrario, cada 3.000 km.",
		"Troque o óleo do motor a cada 1.500 km se usar a moto em cidade, caso contrário a cada 3.000 km.",
		"Das Motoröl bei Fahrten im Gelände alle 1500 km wechseln, sonst alle 3000 km.",
	} {
		if got := said(text, "interval."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
