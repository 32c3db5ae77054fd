package place_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/changes"
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// texts are what a page may say for each kind of thing, by the end of its name; the first
// that fits counts.
var texts = []struct {
	end   string
	texts []string
}{
	{".volume", []string{"1.2 L", "0.9 US qt", "800 cm³", "150 mL"}}, {".dry", []string{"2 L", "3 US qt"}},
	{".with-filter", []string{"1.6 L", "1.9 US qt"}}, {".oil-only", []string{"1.4 L", "1500 cm³"}}, {".band", []string{"0.4 L", "300 mL"}},
	{".grades", []string{"10W-40", "80W-90", "20W-50", "30"}}, {".marks", []string{"MA", "MA2", "MB"}}, {".service", []string{"SG", "SJ", "GL-4"}},
	{".device", []string{"window", "stick-screwed", "hole"}}, {".state", []string{"cold", "warm", "hot"}}, {".stance", []string{"upright", "centre-stand"}},
	{".wait", []string{"3 min", "2–3 min"}}, {".run", []string{"5 min"}}, {".target", []string{"60 °C", "50–60 °C", "140 °F"}}, {".time", []string{"5 min"}},
	{"filter.kind", []string{"spin-on", "cartridge", "centrifugal"}}, {".every", []string{"1", "2"}},
	{".torque", []string{"25 N·m", "18–22 lbf·ft", "30 ± 4 N·m", "2.5 kgf·m"}}, {".thread", []string{"M12x1.5", "M6", "3/4-16 UNF"}},
	{".drive", []string{"hexagon", "hexagon-key"}}, {".size", []string{"17 mm", "8 mm"}}, {".seal", []string{"flat-copper", "o-ring"}},
	{".turn", []string{"3/4 turn", "1/2 turn", "180 °"}}, {".count", []string{"3", "4"}},
	{"-months", []string{"12 months", "2 years"}}, {".months", []string{"6 months"}}, {"-hours", []string{"20 h"}}, {".hours", []string{"15 h"}},
	{"make", []string{"Plainford"}}, {"model", []string{"One"}}, {"years", []string{"2014", "2014-2018", "2014-"}},
	{"displacement", []string{"292 cm³"}}, {"cooling", []string{"air", "liquid"}},
	{"", []string{"6,000 km", "5000 mi"}}, // what is left are distances
}

func textsOf(what place.What) []string {
	for _, t := range texts {
		if strings.HasSuffix(what, t.end) {
			return t.texts
		}
	}
	return nil
}

// beginnings are the cards with which a person begins, of every layout with every filter.
func beginnings(t testing.TB) map[string]*card.Card {
	t.Helper()
	var table struct {
		Parts []struct {
			Word string
			Adds map[string]map[string]any
		}
		Layouts map[string]struct {
			Circuits []map[string]any
			Parts    []any
		}
	}
	if err := json.Unmarshal(specs.Entries, &table); err != nil {
		t.Fatal(err)
	}
	all := map[string]*card.Card{}
	for layout, begin := range table.Layouts {
		for _, filter := range []string{"", "edit.filter-spin-on", "edit.filter-cartridge", "edit.filter-unknown"} {
			c := map[string]any{"format": "tidysump-card", "version": 1, "id": "own", "make": "", "model": "", "layout": layout,
				"sources": []any{map[string]any{"id": "manual", "title": ""}}, "circuits": begin.Circuits}
			for _, part := range begin.Parts {
				word, circuit := "", begin.Circuits[0]["id"]
				if of, ok := part.(map[string]any); ok {
					word, circuit = of["word"].(string), of["circuit"]
				} else {
					word = part.(string)
				}
				if strings.HasPrefix(word, "edit.filter-") {
					word = filter
				}
				for _, p := range table.Parts {
					if p.Word == word {
						add(c, p.Adds, circuit)
					}
				}
			}
			text, err := json.Marshal(c)
			if err != nil {
				t.Fatal(err)
			}
			read, found := card.Read(text)
			if finding.Refused(found) {
				t.Fatalf("%s: %v", text, found)
			}
			all[layout+" "+filter] = read
		}
	}
	return all
}

// add adds a part as the page does.
func add(c map[string]any, adds map[string]map[string]any, circuit any) {
	for _, list := range []string{"filters", "strainers", "bolts"} {
		if adds[list] == nil {
			continue
		}
		part := map[string]any{}
		for name, v := range adds[list] {
			part[name] = v
		}
		parts, _ := c[list].([]any)
		part["id"] = part["id"].(string) + "-" + strconv.Itoa(len(parts)+1)
		part["circuit"] = circuit
		if part["of"] != nil {
			held := c[part["of"].(string)].([]any)
			part["of"] = held[len(held)-1].(map[string]any)["id"]
		}
		delete(part, "apart")
		c[list] = append(parts, part)
	}
}

// says is what a card says at a place that a pointer leads to.
func says(t testing.TB, c *card.Card, pointer string) any {
	t.Helper()
	var v any
	if err := json.Unmarshal(wire.Write(c), &v); err != nil {
		t.Fatal(err)
	}
	for step := range strings.SplitSeq(strings.Trim(pointer, "/"), "/") {
		switch w := v.(type) {
		case map[string]any:
			v = w[step]
		case []any:
			n, err := strconv.Atoi(step)
			if err != nil || n >= len(w) {
				return nil
			}
			v = w[n]
		default:
			return nil
		}
	}
	return v
}

func refused(list []finding.Finding) (codes []string) {
	for _, f := range list {
		if f.Grade == finding.Refuse {
			codes = append(codes, f.Code+" "+f.Where)
		}
	}
	return codes
}

// All that a page may say has its place on a card of every layout, where it then stands,
// with the words of the page.
func TestTake_EveryWhat(t *testing.T) {
	tried := 0
	for name, begin := range beginnings(t) {
		for _, what := range place.Whats() {
			for n, text := range textsOf(what) {
				if n > 0 && !strings.HasPrefix(name, "wet-sump ") {
					break // how it is written is the same to all
				}
				tried++
				r := place.Reading{What: what, Text: text, Quote: place.Span{From: 2, To: 9}}
				taken := place.Take(begin, []place.Reading{r}, &place.Page{Text: "a line\nof it", Title: "book", Page: "3"}, quantity.Metric)
				at := taken.At[0]
				if codes := refused(taken.Findings); at == "" || len(codes) > 0 || says(t, taken.Card, at) == nil {
					t.Fatalf("%s: %s %s goes to %q: %v\n%s", name, what, text, at, codes, wire.Write(taken.Card))
				}
				if of := place.Of(begin, what); of != at && what != "filter.kind" {
					t.Errorf("%s: %s is said to go to %s, and goes to %s", name, what, of, at)
				}
				quotes := taken.Card.Quoted()
				if len(quotes) != 1 || quotes[0].At != at || quotes[0].Words != "line of" || quotes[0].Title != "book" || quotes[0].Page != "3" {
					t.Errorf("%s: %s %s at %s is quoted as %v", name, what, text, at, quotes)
				}
			}
		}
	}
	if tried < 4000 {
		t.Errorf("only %d were tried", tried)
	}
}

// draw draws readings of a page, one of each thing at most.
func draw(t *rapid.T) ([]place.Reading, *place.Page) {
	page := &place.Page{Text: strings.Repeat("words of a page ", 200), Title: "book", Page: rapid.SampledFrom([]string{"", "3-4"}).Draw(t, "page")}
	var list []place.Reading
	for _, what := range rapid.SliceOfNDistinct(rapid.SampledFrom(place.Whats()), 0, 60, rapid.ID[string]).Draw(t, "whats") {
		from := rapid.IntRange(0, 3000).Draw(t, "from")
		list = append(list, place.Reading{What: what, Text: rapid.SampledFrom(textsOf(what)).Draw(t, what), Quote: place.Span{From: from, To: from + 30}})
	}
	return list, page
}

func shuffled(t *rapid.T, list []place.Reading) []place.Reading {
	return rapid.Permutation(list).Draw(t, "order")
}

// planned wants a card to be planned on every bench.
func planned(t *rapid.T, c *card.Card) {
	next := *c
	next.Make, next.Model = "Plainford", "One"
	checked, list := card.Accept(&next)
	if checked == nil {
		t.Fatalf("refused: %v\n%s", refused(list), wire.Write(c))
	}
	all := plan.Bench{}
	for i := range next.Circuits {
		all.Circuits = append(all.Circuits, next.Circuits[i].ID)
	}
	for _, b := range []plan.Bench{{}, all, {KeepFilter: true, Severe: true}, {GetHome: true}} {
		if p, list := plan.Make(checked, b); p == nil {
			t.Fatalf("no plan: %v\n%s", list, wire.Write(c))
		}
	}
}

// Whatever is read, in whatever order, gives one card, which can be planned.
func TestTake_AnySubsetAnyOrder(t *testing.T) {
	all := beginnings(t)
	names := slices.Sorted(func(yield func(string) bool) {
		for name := range all {
			if !yield(name) {
				return
			}
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		begin := all[rapid.SampledFrom(names).Draw(t, "layout")]
		before := string(wire.Write(begin))
		list, page := draw(t)
		taken := place.Take(begin, list, page, quantity.Metric)
		if string(wire.Write(begin)) != before {
			t.Fatal("the card that was handed in was changed")
		}
		text := string(wire.Write(taken.Card))
		if other := place.Take(begin, shuffled(t, list), page, quantity.Metric); string(wire.Write(other.Card)) != text {
			t.Fatalf("in another order\n%s\nand\n%s", text, wire.Write(other.Card))
		}
		for n := range list {
			if taken.At[n] == "" {
				t.Fatalf("%s has no place: %v", list[n].What, taken.Findings)
			}
		}
		planned(t, taken.Card)
		again := place.Take(taken.Card, list, page, quantity.Metric)
		if string(wire.Write(again.Card)) != text {
			t.Fatalf("the same page once more makes\n%s\nof\n%s", wire.Write(again.Card), text)
		}
	})
}

// What somebody wrote into a card stays as it is, whatever a page says: without his word
// things are only added, but for what the page says the same of.
func TestTake_NothingIsOverwritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := plantest.Card(t)
		list, page := draw(t)
		taken := place.Take(c, list, page, quantity.Metric)
		bare := map[string]bool{} // parts of which the card says nothing
		for i := range c.Bolts {
			b := c.Bolts[i]
			b.Circuit, b.Holds, b.ID, b.Purpose, b.Drains, b.Drive = "", "", "", "", false, ""
			if b == (card.Bolt{}) {
				bare[string(c.Bolts[i].Purpose)] = true
			}
		}
		for i := range c.Filters {
			f := c.Filters[i]
			said := f.Place != "" || f.OwnNumber != "" || f.Mount != "" || f.RingWith != "" || f.Behind != "" || len(f.Seals) > 0
			bare["differs.kind"] = bare["differs.kind"] || !said || f.Kind == card.KindUnknown
		}
		for _, change := range changes.Between(c, taken.Card, quantity.Metric) {
			kind := strings.TrimPrefix(change.Part, "purpose.")
			switch {
			case change.Before == nil && change.Word != "differs.removed", change.Origin:
			case change.Word == "differs.quote", change.Word == "differs.sequence":
			case bare[kind], bare[change.Word], change.Word == "differs.every-nth", change.Word == "differs.count" && change.Before.First() == "1":
				// what went without saying
			case change.Word == "differs.purpose" && change.Before.First() == "@purpose.filter-or-cover": // its kind is known by now
			case change.After != nil && change.Before != nil && change.Before.Standing == card.Estimated:
			default:
				t.Fatalf("%s of %s was %v, and is %v\n%v", change.Word, change.Part, change.Before, change.After, list)
			}
		}
		planned(t, taken.Card)
	})
}

// What a page says otherwise than the card is told with both, and taken once the person
// has chosen it; then the card has the words of that page, and those of the other no more.
func TestTake_ContradictionIsChosen(t *testing.T) {
	all := beginnings(t)
	begin := all["separate-oils edit.filter-spin-on"]
	for _, what := range place.Whats() {
		list := textsOf(what)
		if len(list) < 2 {
			continue
		}
		first := place.Reading{What: what, Text: list[0], Quote: place.Span{From: 0, To: 5}}
		other := place.Reading{What: what, Text: list[1], Quote: place.Span{From: 6, To: 12}}
		one := place.Take(begin, []place.Reading{first}, &place.Page{Text: "first second", Title: "book", Page: "1"}, quantity.Metric)
		text := string(wire.Write(one.Card))
		two := place.Take(one.Card, []place.Reading{other}, &place.Page{Text: "first second", Title: "book", Page: "2"}, quantity.Metric)
		several := strings.HasSuffix(what, ".grades") || strings.HasSuffix(what, ".marks") || strings.HasSuffix(what, ".service")
		differs := slices.ContainsFunc(two.Findings, func(f finding.Finding) bool {
			return f.Code == "reading-differs" && f.Where == "/readings/0" && f.Values["has"] != "" && f.Values["given"] != ""
		})
		if several {
			if quotes := two.Card.Quoted(); differs || len(quotes) != 2 {
				t.Errorf("%s: %s beside %s: %v, %v", what, list[1], list[0], two.Findings, quotes)
			}
			continue
		}
		if string(wire.Write(two.Card)) != text || !differs {
			t.Errorf("%s: %s was overwritten by %s, or nothing told: %v", what, list[0], list[1], two.Findings)
		}
		other.Over = true
		chosen := place.Take(one.Card, []place.Reading{other}, &place.Page{Text: "first second", Title: "book", Page: "2"}, quantity.Metric)
		quotes := chosen.Card.Quoted()
		if len(chosen.Findings) > 0 && chosen.Findings[0].Code == "reading-differs" || len(quotes) != 1 || quotes[0].Words != "second" || quotes[0].Page != "2" {
			t.Errorf("%s: %s chosen over %s: %v, %v", what, list[1], list[0], quotes, chosen.Findings)
		}
	}
}

// Pages come one after the other, in any parts: each adds, and the card is planned.
func TestTake_PagesOneAfterTheOther(t *testing.T) {
	begin := beginnings(t)["wet-sump "]
	rapid.Check(t, func(t *rapid.T) {
		list, page := draw(t)
		c := begin
		at := rapid.IntRange(0, len(list)).Draw(t, "first page")
		for _, part := range [][]place.Reading{list[:at], list[at:]} {
			taken := place.Take(c, part, page, quantity.Metric)
			if codes := refused(taken.Findings); len(codes) > 0 || slices.Contains(taken.At, "") {
				t.Fatalf("%v, at %v", codes, taken.At)
			}
			c = taken.Card
		}
		planned(t, c)
	})
}

// A figure that somebody changes by hand is from no page any more, and all others are; a
// part that goes takes its quotes with it.
func TestQuoted_SurvivesEdits(t *testing.T) {
	begin := beginnings(t)["wet-sump edit.filter-spin-on"]
	rapid.Check(t, func(t *rapid.T) {
		list, page := draw(t)
		c := place.Take(begin, list, page, quantity.Metric).Card
		before := c.Quoted()
		if len(c.Bolts) == 0 || len(before) == 0 {
			return
		}
		n := rapid.IntRange(0, len(c.Bolts)-1).Draw(t, "bolt")
		gone := "/bolts/" + strconv.Itoa(n) + "/"
		c.Bolts = slices.Delete(c.Bolts, n, n+1)
		lost := 0
		for _, q := range before {
			if strings.HasPrefix(q.At, gone) {
				lost++
			}
		}
		if after := c.Quoted(); len(after) != len(before)-lost {
			t.Fatalf("%d of %d quotes are left, %d are gone with their part", len(after), len(before), lost)
		}
		if _, list := card.Accept(c); slices.ContainsFunc(list, func(f finding.Finding) bool { return strings.HasPrefix(f.Where, "/quotes") }) {
			t.Fatalf("%v", list)
		}
		read := &card.Card{}
		wire.Read(wire.Write(c), read)
		if len(read.Quoted()) != len(c.Quoted()) {
			t.Fatal("quotes are lost on the way through the text")
		}
	})
}

// Hostile readings spoil nothing: what can't be used is told, and the rest is taken.
func TestTake_Hostile(t *testing.T) {
	begin := beginnings(t)["scooter "]
	rapid.Check(t, func(t *rapid.T) {
		list, page := draw(t)
		page.Text = rapid.String().Draw(t, "text")
		for range rapid.IntRange(1, 20).Draw(t, "hostile") {
			list = append(list, place.Reading{
				What:  rapid.OneOf(rapid.SampledFrom(place.Whats()), rapid.String()).Draw(t, "what"),
				Text:  rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "0 L", "-3 N·m", "1e99 km", "999 L", "12", "M99", "½", "2014-1999", "0"})).Draw(t, "text"),
				Quote: place.Span{From: rapid.IntRange(-3, 40).Draw(t, "from"), To: rapid.IntRange(-3, 40).Draw(t, "to")},
				Over:  rapid.Bool().Draw(t, "over"),
			})
		}
		taken := place.Take(begin, list, page, quantity.Metric)
		if len(taken.At) != len(list) {
			t.Fatalf("%d places of %d readings", len(taken.At), len(list))
		}
		for n, at := range taken.At {
			told := slices.ContainsFunc(taken.Findings, func(f finding.Finding) bool { return f.Where == "/readings/"+strconv.Itoa(n) })
			if at == "" && !told {
				t.Fatalf("%+v has no place, and nothing is told", list[n])
			}
		}
		planned(t, taken.Card)
	})
}

// Roundings of one figure in two units are no contradiction, and figures that are none are.
func TestTake_Roundings(t *testing.T) {
	for _, c := range []struct {
		what, one, other string
		same             bool
	}{
		{"oil.engine.oil-only", "1.5 L", "1.6 US qt", true}, {"oil.engine.oil-only", "1.5 L", "1.8 US qt", false},
		{"oil.engine.oil-only", "2 L", "3 US qt", false}, {"oil.engine.oil-only", "1500 cm³", "1.5 L", true},
		{"bolt.drain.torque", "25 N·m", "18 lbf·ft", true}, {"bolt.drain.torque", "25 N·m", "25 lbf·ft", false},
		{"bolt.drain.torque", "26–34 N·m", "30 ± 4 N·m", true}, {"bolt.drain.torque", "26–34 N·m", "30 N·m", false},
		{"interval.distance", "6000 km", "4000 mi", true}, {"interval.distance", "6000 km", "6000 mi", false},
		{"interval.months", "12 months", "1 years", true}, {"bolt.drain.thread", "M12x1.5", "M12 x 1.5", true},
		{"bolt.drain.thread", "M12x1.5", "M12", true}, {"bolt.drain.thread", "M12x1.5", "M14x1.5", false},
		{"make", "Plainford", "PLAINFORD", true}, {"bolt.filter.turn", "1/2 turn", "180 °", true},
	} {
		readings := []place.Reading{{What: c.what, Text: c.one}}
		first := place.Take(place.Bare(card.WetSump), readings, &place.Page{}, quantity.Metric)
		readings[0].Text = c.other
		then := place.Take(first.Card, readings, &place.Page{}, quantity.Metric)
		differs := slices.ContainsFunc(then.Findings, func(f finding.Finding) bool { return f.Code == "reading-differs" })
		if differs == c.same || len(refused(then.Findings)) > 0 {
			t.Errorf("%s: %s and %s: %v", c.what, c.one, c.other, then.Findings)
		}
	}
}

// A page that gives a volume with the filter, or how tight it gets, has a filter; where
// nobody says of which kind, it is of none, and no page says that it is.
func TestTake_FilterOfNoKind(t *testing.T) {
	begin := beginnings(t)["wet-sump "]
	for _, c := range []struct {
		list []place.Reading
		kind card.FilterKind
	}{
		{[]place.Reading{{What: "oil.engine.with-filter", Text: "1.6 L"}}, card.KindUnknown},
		{[]place.Reading{{What: "filter.every", Text: "2"}}, card.KindUnknown},
		{[]place.Reading{{What: "interval.filter", Text: "12000 km"}}, card.KindUnknown},
		{[]place.Reading{{What: "bolt.filter.torque", Text: "18 N·m"}, {What: "bolt.filter.thread", Text: "M20x1.5"}}, card.KindUnknown},
		{[]place.Reading{{What: "bolt.filter.torque", Text: "18 N·m"}, {What: "filter.kind", Text: "spin-on"}}, card.SpinOn},
		{[]place.Reading{{What: "filter.kind", Text: "unknown"}}, ""},
		{[]place.Reading{{What: "oil.engine.with-filter", Text: "1.6 L"}, {What: "filter.kind", Text: "cartridge"}}, card.Cartridge},
		{[]place.Reading{{What: "oil.engine.with-filter", Text: "1.6 L"}, {What: "bolt.filter-cover.count", Text: "3"}}, card.Cartridge},
		{[]place.Reading{{What: "bolt.filter.turn", Text: "3/4 turn"}}, card.SpinOn},
		{[]place.Reading{{What: "oil.engine.oil-only", Text: "1.6 L"}}, ""},
	} {
		taken := place.Take(begin, c.list, &place.Page{}, quantity.Metric)
		kind := card.FilterKind("")
		if len(taken.Card.Filters) > 0 {
			kind = taken.Card.Filters[0].Kind
		}
		if kind != c.kind {
			t.Errorf("%v: %q, not %q", c.list, kind, c.kind)
		}
	}
}

// An oil that has an interval of its own is changed with the last of the engine's changes
// before that is over.
func TestTake_OwnInterval(t *testing.T) {
	begin := beginnings(t)["scooter "]
	for _, c := range []struct {
		engine, own string
		nth         int
	}{{"3000 km", "9000 km", 3}, {"6000 km", "15000 km", 2}, {"6000 mi", "12000 mi", 2}, {"6000 km", "6000 mi", 1}, {"10000 km", "5000 km", 1}, {"4000 km", "7900 km", 2}} {
		taken := place.Take(begin, []place.Reading{{What: "interval.distance", Text: c.engine}, {What: "interval.final", Text: c.own}}, &place.Page{}, quantity.Metric)
		if got := taken.Card.Circuits[1]; got.Role != card.FinalDrive || taken.Card.Nth(got.EveryNth, got.Interval) != c.nth {
			t.Errorf("%s beside %s: at each %d", c.own, c.engine, taken.Card.Nth(got.EveryNth, got.Interval))
		}
	}
}

// A plug of which a page gives no torque but a turn is closed by that.
func TestTake_PlugByItsTurn(t *testing.T) {
	taken := place.Take(beginnings(t)["wet-sump "], []place.Reading{{What: "bolt.drain.turn", Text: "1/2 turn"}}, &place.Page{}, quantity.Metric)
	c := taken.Card
	c.Make, c.Model = "Plainford", "One"
	checked, _ := card.Accept(c)
	p, _ := plan.Make(checked, plan.Bench{})
	p.LayPlate()
	closing := p.Step("tighten-drain-plug-1")
	if closing == nil || len(closing.Figures) != 1 || closing.Figures[0].Name != "figure.turn" || closing.Values["to"] != "@tight-to.turn" || len(closing.Asks) > 0 {
		t.Errorf("%+v", closing)
	}
	if !slices.ContainsFunc(p.Plate, func(f plan.PlateFigure) bool {
		return f.About == "drain-plug-1" && f.First() == closing.Figures[0].First()
	}) {
		t.Errorf("the plate has %+v", p.Plate)
	}
	if slices.ContainsFunc(p.Gaps, func(g plan.Gap) bool { return g.Word == "gap.torque" }) {
		t.Errorf("a torque is missing: %+v", p.Gaps)
	}
}

// A filler plug of which a page gives the torque is closed with it, and not by hand as the
// cap is with which a card begins.
func TestTake_FillerWithTorque(t *testing.T) {
	begin := beginnings(t)["flat-twin edit.filter-spin-on"]
	taken := place.Take(begin, []place.Reading{{What: "bolt.gearbox-filler.torque", Text: "24 N·m"}, {What: "bolt.final-filler.torque", Text: "20 N·m"}}, &place.Page{}, quantity.Metric)
	c := taken.Card
	c.Make, c.Model = "Plainford", "One"
	checked, _ := card.Accept(c)
	p, _ := plan.Make(checked, plan.Bench{Circuits: []string{"engine", "gearbox", "final"}})
	var told []string
	for _, s := range p.Steps {
		for _, f := range s.Figures {
			if f.Name == "figure.torque" && f.Standing == card.FromManual {
				told = append(told, f.First())
			}
		}
	}
	slices.Sort(told)
	if !slices.Equal(told, []string{"20 N·m", "24 N·m"}) {
		t.Errorf("the steps say %v", told)
	}
}

// A cover's screws and the bolt through a filter's housing are two, whatever comes first.
func TestTake_CoverAndFilter(t *testing.T) {
	list := []place.Reading{{What: "bolt.filter.torque", Text: "20 N·m"}, {What: "bolt.filter-cover.torque", Text: "10 N·m"}, {What: "bolt.filter-cover.count", Text: "3"}}
	for name, begin := range beginnings(t) {
		for _, page := range [][][]place.Reading{{list}, {list[1:], list[:1]}} {
			c := begin
			for _, readings := range page {
				taken := place.Take(c, readings, &place.Page{}, quantity.Metric)
				if slices.ContainsFunc(taken.Findings, func(f finding.Finding) bool { return strings.HasPrefix(f.Code, "reading-") }) {
					t.Errorf("%s: %v", name, taken.Findings)
				}
				c = taken.Card
			}
			var told []string
			for _, b := range c.Bolts {
				if b.Torque.Known() {
					told = append(told, b.Torque.Exactly()[0])
				}
			}
			slices.Sort(told)
			if !slices.Equal(told, []string{"10 N·m", "20 N·m"}) {
				t.Errorf("%s: %v", name, told)
			}
		}
	}
}
