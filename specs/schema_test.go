package specs_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"tidysump/specs"
)

const schemaID = "https://tidysump.example/card.schema.json"

func cardSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(specs.CardSchema))
	if err != nil {
		t.Fatalf("card.schema.json: %v", err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schemaID, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(schemaID)
	if err != nil {
		t.Fatalf("card.schema.json: %v", err)
	}
	return s
}

func instance(t *testing.T, text []byte) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatalf("%.80s: %v", text, err)
	}
	return v
}

func TestSchema_AcceptsTheCards(t *testing.T) {
	s := cardSchema(t)
	cards := specs.Cards()
	cards["card-minimal.json"] = rootFile(t, "testdata/card-minimal.json")
	if len(cards) < 5 {
		t.Fatalf("only %d cards", len(cards))
	}
	for name, text := range cards {
		if err := s.Validate(instance(t, text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Of the wrong cards the schema refuses those that are wrong in form; those
// wrong in sense (a reference that leads nowhere, a figure that can't be) are
// beyond it, and stay in the list as such.
func TestSchema_RefusesWrongForm(t *testing.T) {
	s := cardSchema(t)
	for _, w := range wrongCards(t) {
		err := s.Validate(instance(t, rootFile(t, "testdata/cards-wrong/"+w.name+".json")))
		if refused := err != nil; refused != (w.kind == "form") {
			t.Errorf("%s, a fault of %s: schema says %v", w.name, w.kind, err)
		}
	}
}

type wrongCard struct{ name, kind string }

// wrongCards reads the list beside the wrong cards and checks that it names
// each file, and no other.
func wrongCards(t *testing.T) []wrongCard {
	t.Helper()
	var list []wrongCard
	named := map[string]bool{}
	for line := range strings.Lines(string(rootFile(t, "testdata/cards-wrong/want.txt"))) {
		if f := strings.Fields(line); len(f) == 5 && f[0] != "#" {
			list = append(list, wrongCard{f[0], f[4]})
			named[f[0]+".json"] = true
		}
	}
	files, err := filepath.Glob("../testdata/cards-wrong/*.json")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d wrong cards, error %v", len(files), err)
	}
	for _, f := range files {
		if !named[filepath.Base(f)] {
			t.Errorf("%s is not in want.txt", f)
		}
	}
	return list
}

func rootFile(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Everything that a person may write in a card is explained.
func TestSchema_DescribesItself(t *testing.T) {
	top := instance(t, specs.CardSchema).(map[string]any)
	if top["$id"] != schemaID || top["title"] == nil || top["description"] == nil {
		t.Errorf("$id %v, title %v, description %v", top["$id"], top["title"], top["description"])
	}
	for name := range top["$defs"].(map[string]any) {
		if !strings.Contains(string(specs.CardSchema), fmt.Sprintf(`"#/$defs/%s"`, name)) {
			t.Errorf("$defs/%s is not used", name)
		}
	}
}
