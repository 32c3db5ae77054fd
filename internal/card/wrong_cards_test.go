package card_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

func TestCheck_WrongCards(t *testing.T) {
	n := 0
	for line := range strings.Lines(string(rootFile(t, "testdata/cards-wrong/want.txt"))) {
		want := strings.Fields(line)
		if len(want) != 5 || want[0] == "#" {
			continue
		}
		n++
		t.Run(want[0], func(t *testing.T) {
			_, got := card.Read(rootFile(t, "testdata/cards-wrong/"+want[0]+".json"))
			if len(got) != 1 {
				t.Fatalf("got %d findings %+v, want one: %v", len(got), got, want[1:])
			}
			f := got[0]
			if f.Code != want[1] || "/card"+f.Where != want[2] || string(f.Grade) != want[3] {
				t.Errorf("got %s %s %s, want %v", f.Code, f.Where, f.Grade, want[1:4])
			}
		})
	}
	if n < 30 {
		t.Errorf("only %d wrong cards", n)
	}
}

// A card with more parts than the schema allows is refused in one finding for each kind,
// whatever else is wrong with them.
func TestCheck_TooManyParts(t *testing.T) {
	schema := decode(t, specs.CardSchema)
	for list, part := range map[string]string{
		"sources": `{"id":"a","title":"b"}`, "circuits": `{"id":"a","role":"engine"}`, "chart": `{"circuit":"engine","grade":"30"}`, "bolts": `{"id":"a","purpose":"drain-plug"}`,
		"filters": `{"id":"a","circuit":"engine","kind":"spin-on"}`, "strainers": `{"id":"a","circuit":"engine"}`,
	} {
		most, _ := at(schema, "properties/"+list+"/maxItems").(float64)
		text := strings.Replace(string(rootFile(t, "testdata/card-minimal.json")), `"`+list+`":`, `"was":`, 1)
		text = strings.Replace(text, "{", `{"`+list+`":[`+strings.Repeat(part+",", int(most))+part+`],`, 1)
		_, found := card.Read([]byte(text))
		found = slices.DeleteFunc(found, func(f finding.Finding) bool { return f.Code == "unknown-member" })
		if most < 100 || len(found) != 1 || found[0].Code != "too-many-parts" || found[0].Where != "/"+list {
			t.Errorf("%v and one more %s: %.300v", most, list, found)
		}
	}
}

func TestCheck_RightCards(t *testing.T) {
	cards := specs.Cards()
	cards["card-minimal.json"] = rootFile(t, "testdata/card-minimal.json")
	for name, text := range cards {
		if _, got := card.Read(text); len(got) > 0 {
			t.Errorf("%s: %+v, want none", name, got)
		}
	}
}

// enumPlaces are the places of a card whose words come from a fixed list, with
// the place of the list in the schema.
var enumPlaces = []struct{ card, schema string }{
	{"layout", "properties/layout"},
	{"engine/cooling", "$defs/engine/properties/cooling"},
	{"engine/clutch", "$defs/engine/properties/clutch"},
	{"circuits/0/role", "$defs/circuit/properties/role"},
	{"circuits/0/oil/standing", "$defs/standing"},
	{"circuits/0/oil/marks/0", "$defs/oil/properties/marks/items"},
	{"circuits/0/level/device", "$defs/level/properties/device"},
	{"circuits/0/level/state", "$defs/level/properties/state"},
	{"circuits/0/level/stance", "$defs/level/properties/stance"},
	{"bolts/0/purpose", "$defs/bolt/properties/purpose"},
	{"bolts/0/drive", "$defs/bolt/properties/drive"},
	{"bolts/0/seal/kind", "$defs/seal/properties/kind"},
	{"notesAt/0/at", "$defs/noteAt/properties/at"},
	{"filters/0/kind", "$defs/filter/properties/kind"},
	{"filters/0/mount", "$defs/filter/properties/mount"},
	{"filters/0/ringWith", "$defs/filter/properties/ringWith"},
	{"circuits/0/oilOnly/unit", "$defs/volume/properties/unit"},
	{"bolts/0/torque/unit", "$defs/torque/properties/unit"},
	{"bolts/0/size/unit", "$defs/length/properties/unit"},
	{"bolts/1/turn/unit", "$defs/angle/properties/unit"},
	{"interval/distance/unit", "$defs/distance/properties/unit"},
	{"chart/0/from/unit", "$defs/degrees/properties/unit"},
	{"circuits/0/warm/target/unit", "$defs/warmth/properties/unit"},
	{"circuits/0/level/wait/unit", "$defs/duration/properties/unit"},
}

// wordCodes are the findings that say that a word is not one of a list.
var wordCodes = map[string]bool{"unknown-word": true, "unknown-mark": true, "unknown-standing": true, "unknown-unit": true}

// The schema's lists of words and the program's are the same: each word of the
// schema is known to the check, and no other word is.
func TestCheck_WordsOfTheSchema(t *testing.T) {
	schema := decode(t, specs.CardSchema)
	for _, place := range enumPlaces {
		words, _ := at(schema, place.schema).(map[string]any)["enum"].([]any)
		if len(words) == 0 {
			t.Errorf("schema %s has no list", place.schema)
		}
		for _, w := range words {
			if code := codeWith(t, place.card, w.(string)); code != "" {
				t.Errorf("%s %q stands in the schema and is %s to the check", place.card, w, code)
			}
		}
		if code := codeWith(t, place.card, "made-up"); code == "" {
			t.Errorf("%s \"made-up\" is no fault to the check", place.card)
		}
	}
}

// unitLists are the places of the schema that list the units of a kind.
var unitLists = map[quantity.Kind]string{
	quantity.Volume: "$defs/volume", quantity.Torque: "$defs/torque", quantity.Length: "$defs/length",
	quantity.Distance: "$defs/distance", quantity.Duration: "$defs/duration", quantity.Angle: "$defs/angle",
	quantity.Temperature: "$defs/degrees",
}

// noCard are the kinds of quantities that no figure of a card is.
var noCard = []quantity.Kind{quantity.Pressure, quantity.Mass, quantity.Viscosity,
	quantity.Density, quantity.Area, quantity.Share}

// Every unit in which a figure of a card can be read stands in the schema.
func TestCheck_UnitsStandInTheSchema(t *testing.T) {
	schema := decode(t, specs.CardSchema)
	for _, u := range quantity.Units {
		place, onCards := unitLists[u.Kind]
		if onCards == slices.Contains(noCard, u.Kind) {
			t.Errorf("%s: are there figures of cards in %s, or not?", u.ID, u.Kind)
		}
		if !onCards {
			continue
		}
		list, _ := at(schema, place+"/properties/unit").(map[string]any)["enum"].([]any)
		if !slices.Contains(list, any(u.ID)) {
			t.Errorf("specs/card.schema.json has no %s: at %s it lists %v", u.ID, place, list)
		}
	}
}

// Every list of words in the schema is checked above.
func TestCheck_NoOtherLists(t *testing.T) {
	known := map[string]bool{}
	for _, p := range enumPlaces {
		known[p.schema] = true
	}
	var walk func(at string, v any)
	walk = func(path string, v any) {
		m, ok := v.(map[string]any)
		if !ok {
			return
		}
		if _, list := m["enum"]; list && !known[path] {
			t.Errorf("nobody checks the list at %s", path)
		}
		for k, child := range m {
			walk(strings.TrimPrefix(path+"/"+k, "/"), child)
		}
	}
	walk("", decode(t, specs.CardSchema))
}

// codeWith gives the code of the finding about words when that word stands at a
// place of the minimal card; "" if there is none.
func codeWith(t *testing.T, place, word string) string {
	t.Helper()
	minimal := decode(t, rootFile(t, "testdata/card-minimal.json"))
	put(minimal, []string{"chart"}, []any{map[string]any{"circuit": "engine", "grade": "10W-40",
		"from": map[string]any{"value": 15, "unit": "°C", "standing": "manual", "source": "book"}}})
	put(minimal, []string{"circuits", "0", "warm"}, map[string]any{"target": map[string]any{"value": 60, "unit": "°C", "standing": "manual", "source": "book"}})
	put(minimal, []string{"notesAt"}, []any{map[string]any{"at": "drain", "text": "a note"}})
	put(minimal, strings.Split(place, "/"), word)
	text, err := json.Marshal(minimal)
	if err != nil {
		t.Fatal(err)
	}
	_, list := card.Read(text)
	for _, f := range list {
		if wordCodes[f.Code] && strings.HasPrefix("/"+place, f.Where) {
			return f.Code
		}
	}
	return ""
}

// rootFile reads a file by its path in the repository.
func rootFile(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The kinds of seals that a card may name are those that the joint of a fastener
// knows.
func TestSealKinds_AreThoseOfJoints(t *testing.T) {
	if len(card.SealKinds) != len(bolt.Seals) {
		t.Fatalf("%v, and of joints %v", card.SealKinds, bolt.Seals)
	}
	for n, kind := range card.SealKinds {
		if string(kind) != bolt.Seals[n] {
			t.Errorf("%s is %s to a joint", kind, bolt.Seals[n])
		}
	}
}

// A card that is accepted was checked, and keeps its doubts; one that is refused
// is not to be had.
func TestAccept(t *testing.T) {
	for name, refused := range map[string]bool{"card-minimal": false, "cards-wrong/torque-4000": true, "cards-wrong/years-reversed": true} {
		c, _ := card.Read(rootFile(t, "testdata/"+name+".json"))
		list := card.Check(c)
		got, found := card.Accept(c)
		if (got == nil) != refused || refused != finding.Refused(found) || refused && len(found) != len(list) {
			t.Errorf("%s: accepted %v, %v", name, got != nil, found)
		}
		if got != nil && (got.Card() != c || len(got.Doubts()) != len(list)) {
			t.Errorf("%s: the doubts %v, of %v", name, got.Doubts(), list)
		}
	}
}
