package pages_test

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/server/pages"
	"tidysump/specs"
)

var all = pages.New(core.Do)

// read gives what a person reads of a page, one blank between words, and checks that the
// page is well-formed: what html/template wrote is what a parser finds.
func read(t testing.TB, p pages.Page) string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(string(p.HTML)))
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	ids := map[string]bool{}
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		if n.Type == html.TextNode {
			b.WriteString(n.Data + " ")
		}
		if n.Type == html.ElementNode {
			check(t, n, ids)
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	checkClosed(t, string(p.HTML))
	return plain(b.String())
}

// plain is a text with one blank wherever it has any, and none before a mark.
func plain(text string) string { return strings.Join(strings.Fields(text), " ") }

// check holds that nothing of a page runs, and that each id stands once.
func check(t testing.TB, n *html.Node, ids map[string]bool) {
	t.Helper()
	if slices.Contains([]string{"script", "style", "iframe", "img", "object"}, n.Data) {
		t.Errorf("the page has a %s", n.Data)
	}
	for _, a := range n.Attr {
		switch {
		case strings.HasPrefix(a.Key, "on") || a.Key == "style" || strings.Contains(a.Val, "javascript:"):
			t.Errorf("%s has %s=%q", n.Data, a.Key, a.Val)
		case a.Key == "id" && ids[a.Val]:
			t.Errorf("the id %q stands twice", a.Val)
		case a.Key == "id":
			ids[a.Val] = true
		}
	}
}

var void = []string{"meta", "link", "br", "input"}

// checkClosed holds that each element is closed by its own end, so that no parser has to
// guess.
func checkClosed(t testing.TB, text string) {
	t.Helper()
	var open []string
	z := html.NewTokenizer(strings.NewReader(text))
	for {
		switch z.Next() {
		case html.ErrorToken:
			if len(open) > 0 {
				t.Errorf("open at the end: %q", open)
			}
			return
		case html.StartTagToken:
			if name, _ := z.TagName(); !slices.Contains(void, string(name)) {
				open = append(open, string(name))
			}
		case html.EndTagToken:
			name, _ := z.TagName()
			if len(open) == 0 || open[len(open)-1] != string(name) {
				t.Errorf("</%s> closes %q", name, open)
				return
			}
			open = open[:len(open)-1]
		}
	}
}

// saidTexts are the texts of all figures of an answer: its members "texts" and those
// whose names end so. A word id among them is left to the words' own tests.
func saidTexts(v any, found func(text string)) {
	switch is := v.(type) {
	case map[string]any:
		for name, inner := range is {
			if list, isList := inner.([]any); isList && (name == "texts" || name == "pourTexts") {
				for _, text := range list {
					if s, isText := text.(string); isText && !strings.HasPrefix(s, "@") {
						found(s)
					}
				}
				continue
			}
			saidTexts(inner, found)
		}
	case []any:
		for _, inner := range is {
			saidTexts(inner, found)
		}
	}
}

func answered(t testing.TB, op string, in any) map[string]any {
	t.Helper()
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var answer map[string]any
	if err := json.Unmarshal(core.Call(op, text), &answer); err != nil {
		t.Fatal(err)
	}
	return answer
}

// benches are such as the form of a bike can tell, with the query that tells them.
var benches = map[string]map[string]any{
	"":                                   {"system": "metric", "place": "garage"},
	"system=us&filter=keep":              {"system": "us", "place": "garage", "keepFilter": true},
	"system=imperial&place=roadside":     {"system": "imperial", "place": "roadside"},
	"place=roadside&home=on&helper=on":   {"system": "metric", "place": "roadside", "getHome": true, "helper": true},
	"outside=%D9%A2%D9%A0+%C2%B0C&hand=": {"system": "metric", "place": "garage", "outside": "٢٠ °C"},
}

// The plan of each sample card says each figure that the core's plan has, on each bench;
// sent as an own card too, with the card in its form.
func TestBike_SaysThePlan(t *testing.T) {
	for _, text := range specs.Cards() {
		var card map[string]any
		if err := json.Unmarshal(text, &card); err != nil {
			t.Fatal(err)
		}
		id := card["id"].(string)
		for query, bench := range benches {
			given, err := url.ParseQuery(query)
			if err != nil {
				t.Fatal(err)
			}
			answer := answered(t, "plan", map[string]any{"card": json.RawMessage(text), "bench": bench})
			page := all.Bike(pages.Ask{Name: id, Given: given})
			said := read(t, page)
			ok := answer["ok"].(map[string]any)
			ok["bolts"] = slices.DeleteFunc(ok["bolts"].([]any), func(b any) bool { return b.(map[string]any)["listed"] == nil })
			figures := 0
			saidTexts(ok, func(figure string) {
				figures++
				if !strings.Contains(said, plain(figure)) {
					t.Errorf("%s?%s says no %q", id, query, figure)
				}
			})
			if page.Status != 200 || figures < 6 {
				t.Errorf("%s?%s: %d with %d figures", id, query, page.Status, figures)
			}
			steps := ok["steps"].([]any)
			if n := strings.Count(string(page.HTML), "<li>\n<p><strong>"); n != len(steps) {
				t.Errorf("%s?%s has %d steps, the plan %d", id, query, n, len(steps))
			}
			if left := regexp.MustCompile(`\{\w+\}|\b(step|caution|tool|part|figure|purpose|gap|finding|timer|stage|tally|calc|ask|role|standing|lookup|signal)\.[a-z-]+`).FindString(said); left != "" {
				t.Errorf("%s?%s says %q", id, query, left)
			}
			given.Set("card", string(text))
			own := all.Card(pages.Ask{Given: given})
			if mine := read(t, own); own.Status != 200 || !strings.Contains(mine, plain(string(text))) {
				t.Errorf("%s?%s as an own card: %d, or the card isn't in the form", id, query, own.Status)
			}
		}
	}
}

// Each example of a calculation, typed into its form, is answered with the same figures;
// what is wrong with it is said.
func TestCalculation_SaysTheAnswer(t *testing.T) {
	tried := map[string]int{}
	for _, e := range specs.Examples() {
		var in map[string]any
		if !isCalculation(t, e.Op) || json.Unmarshal([]byte(e.In), &in) != nil {
			continue
		}
		given, typed := queryOf(in)
		if !typed {
			continue
		}
		if given.Get("system") == "" {
			given.Set("system", "metric")
		}
		page := all.Calculation(pages.Ask{Name: e.Op, Given: given})
		said, answer := read(t, page), answered(t, e.Op, in)
		saidTexts(answer, func(figure string) {
			if !strings.Contains(said, plain(figure)) {
				t.Errorf("%s %s says no %q", e.Op, e.In, figure)
			}
		})
		if _, ok := answer["ok"]; ok != (page.Status == 200) {
			t.Errorf("%s %s: status %d, the core: %v", e.Op, e.In, page.Status, answer)
		}
		list, _ := answer["findings"].([]any)
		for _, f := range list {
			sentence, _, _ := strings.Cut(specs.Sentences()["finding."+f.(map[string]any)["code"].(string)], "{")
			if !strings.Contains(said, plain(sentence)) {
				t.Errorf("%s %s says no %q", e.Op, e.In, sentence)
			}
		}
		tried[e.Op]++
	}
	for _, op := range calculations(t) {
		if tried[op] == 0 {
			t.Errorf("no example of %s was tried", op)
		}
	}
}

// queryOf is the query of a form in which an input was typed; false where no form can
// send it, as another type than its field's.
func queryOf(in map[string]any) (q url.Values, typed bool) {
	q = url.Values{}
	for name, v := range in {
		switch is := v.(type) {
		case string:
			q.Set(name, is)
		case bool:
			if is {
				q.Set(name, "on")
			}
		case []any:
			for n, row := range is {
				inner, isRow := row.(map[string]any)
				if !isRow {
					return nil, false
				}
				of, fits := queryOf(inner)
				if !fits {
					return nil, false
				}
				for path := range of {
					q.Set(fmt.Sprintf("%s.%d.%s", name, n, path), of.Get(path))
				}
			}
		default:
			return nil, false
		}
	}
	return q, true
}

func calculations(t testing.TB) (ops []string) {
	t.Helper()
	for _, f := range answered(t, "forms", map[string]string{})["ok"].(map[string]any)["forms"].([]any) {
		ops = append(ops, f.(map[string]any)["op"].(string))
	}
	return ops
}

func isCalculation(t testing.TB, op string) bool { return slices.Contains(calculations(t), op) }

// Each problem with each answer to each question is judged as the core judges it, and
// what it takes before the bike is ridden again is said.
func TestTrouble_SaysTheVerdict(t *testing.T) {
	var table struct {
		Questions map[string]string
		Faults    []struct {
			ID   string
			Asks []string
		}
	}
	if err := json.Unmarshal(specs.Faults, &table); err != nil {
		t.Fatal(err)
	}
	words := specs.Sentences()
	for _, f := range table.Faults {
		for _, q := range append(f.Asks, "") {
			for _, a := range append(strings.Fields(table.Questions[q]), "") {
				answers := map[string]string{}
				if q != "" && a != "" {
					answers[q] = a
				}
				given := url.Values{}
				for id, is := range answers {
					given.Set(id, is)
				}
				said := read(t, all.Trouble(pages.Ask{Name: f.ID, Given: given}))
				ok := answered(t, "fault", map[string]any{"table": json.RawMessage(specs.Faults), "id": f.ID, "answers": answers})["ok"].(map[string]any)
				want := []string{"outcome." + ok["outcome"].(string)}
				for _, name := range []string{"now", "limits", "home", "until"} {
					list, _ := ok[name].([]any)
					for _, id := range list {
						want = append(want, id.(string))
					}
				}
				asks := len(said)
				if q != "" {
					asks = strings.LastIndex(said, plain(words["fault-ask."+q]))
				}
				for _, id := range want {
					at := strings.Index(said, plain(words[id]))
					if first := strings.HasPrefix(id, "outcome.") || strings.HasPrefix(id, "until."); at < 0 || first && at > asks {
						t.Errorf("%s %v says no %q, or only after it asks", f.ID, answers, words[id])
					}
				}
			}
		}
	}
}

// First aid is the app's: the same cards, the same lines.
func TestAid_IsTheApps(t *testing.T) {
	source, err := fs.ReadFile(os.DirFS("../../static/app/aid"), "kinds.js")
	if err != nil {
		t.Fatal(err)
	}
	words := specs.Sentences()
	found := regexp.MustCompile(`(?m)^  (\w+): \[(.*)\],$`).FindAllStringSubmatch(string(source), -1)
	if len(found) < 5 {
		t.Fatalf("kinds.js has %d cards", len(found))
	}
	for _, m := range found {
		said := read(t, all.Aid(pages.Ask{Name: m[1]}))
		for line := range strings.SplitSeq(m[2], ", ") {
			id := "aid." + m[1] + "." + strings.Trim(line, "'")
			if words[id] == "" || !strings.Contains(said, plain(words[id])) {
				t.Errorf("the card %s says no %s: %q", m[1], id, words[id])
			}
		}
		if !strings.Contains(read(t, all.Aid(pages.Ask{})), plain(words["aid."+m[1]])) {
			t.Errorf("the list of first aid has no %s", m[1])
		}
	}
}

// The home page leads to each sample, and lists what the others lead to.
func TestHome(t *testing.T) {
	home := all.Home(pages.Ask{})
	read(t, home)
	for _, text := range specs.Cards() {
		var card struct{ ID, Make, Model string }
		if err := json.Unmarshal(text, &card); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(home.HTML), pages.At+"bike/"+card.ID+"?") || !strings.Contains(read(t, home), card.Make+" "+card.Model) {
			t.Errorf("there is no way to %s", card.ID)
		}
	}
	for _, op := range calculations(t) {
		if list := all.Calculations(pages.Ask{}); !strings.Contains(string(list.HTML), "calculate/"+op+"?") {
			t.Errorf("there is no way to %s", op)
		}
	}
}

// Whatever comes in is answered with a page, and what comes in is no part of its markup.
func TestPages_Hostile(t *testing.T) {
	odd := []string{`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, "javascript:alert(1)", "\x00\xff", "{{.}}", "@step.pour", strings.Repeat("9", 400), "1e999", "../../etc", "٣", "-", "null", `{"a":`, "}", `{}`, `[]`, `1}, "bench":{"system":1}`, "{volume}", "\u202e"}
	makers := map[string]func(pages.Ask) pages.Page{"bike": all.Bike, "card": all.Card, "calculations": all.Calculations, "calculation": all.Calculation, "trouble": all.Trouble, "troubles": all.Troubles, "aid": all.Aid, "home": all.Home, "missing": all.Missing}
	names := append([]string{"skarvald-kettra-290", "cool", "bottles", "wrench", "drop-plug", "burn"}, odd...)
	fields := []string{"system", "place", "filter", "circuit", "also", "outside", "home", "card", "now", "bottles.0.size", "bottles.9999999.size", "bottles.-1.size", "bottles..", "need", "wrenches.1.low", "returns", "hand", "what", "thread"}
	rapid.Check(t, func(t *rapid.T) {
		which := rapid.SampledFrom([]string{"bike", "card", "calculations", "calculation", "trouble", "troubles", "aid", "home", "missing"}).Draw(t, "page")
		given := url.Values{}
		for _, name := range rapid.SliceOfN(rapid.SampledFrom(fields), 0, 6).Draw(t, "fields") {
			given.Add(name, rapid.OneOf(rapid.SampledFrom(odd), rapid.String()).Draw(t, "value"))
		}
		page := makers[which](pages.Ask{Name: rapid.SampledFrom(names).Draw(t, "name"), Given: given, Accept: rapid.SampledFrom(append([]string{specs.Words()[0].Tag, "de-AT,*;q=0.5"}, odd...)).Draw(t, "accept")})
		if page.Status < 200 || page.Status >= 500 || page.Language == "" {
			t.Fatalf("%s %v: status %d", which, given, page.Status)
		}
		text := string(page.HTML)
		for _, bad := range []string{"<script", "<img", "href=\"javascript", "src=\"x"} {
			if strings.Contains(text, bad) {
				t.Fatalf("%s %v: the page has %q", which, given, bad)
			}
		}
	})
}

// What is wrong with an own card is said in a sentence, and the card stays in its form.
func TestCard_Wrong(t *testing.T) {
	for _, text := range []string{"", "{", "[]", "null", "12", `{"format":"tidysump-card"}`, `{"format":"x"},"bench":{}`, `{}}`, strings.Repeat(" ", 150_000) + "x", strings.Repeat("x", 250_000)} {
		page := all.Card(pages.Ask{Given: url.Values{"card": {text}}})
		said := read(t, page)
		if text == "" {
			if page.Status != 200 {
				t.Errorf("without a card: %d", page.Status)
			}
			continue
		}
		if page.Status < 400 || page.Status >= 500 || !strings.Contains(string(page.HTML), `class="finding"`) {
			t.Errorf("%.40q: %d, %.300s", text, page.Status, said)
		}
		if len(text) < 100 && !strings.Contains(said, plain(text)) {
			t.Errorf("%.40q is not in its form: %s", text, said)
		}
	}
}

// What is wrong with a field is said beside it: the paragraph that a reader of the
// screen is led to by the field.
func TestCalculation_FindingsAreBesideTheirField(t *testing.T) {
	page := string(all.Calculation(pages.Ask{Name: "bottles", Given: url.Values{"need": {"much"}, "bottles.0.size": {"1 L"}, "bottles.2.size": {"large"}}}).HTML)
	for _, field := range []string{"field-need", "field-bottles-2-size"} {
		at := strings.Index(page, `id="`+field+`"`)
		found := strings.Index(page, `id="`+field+`-found"`)
		if at < 0 || found < at || strings.Count(page[at:found], "<input") != 1 && strings.Count(page[at:found], "<label") > 0 {
			t.Errorf("nothing is beside %s:\n%s", field, page)
		}
	}
	if strings.Count(page, "-found\"><p") != 2 {
		t.Errorf("not two findings beside fields:\n%s", page)
	}
}
