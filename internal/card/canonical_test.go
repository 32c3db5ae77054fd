package card_test

import (
	"compress/gzip"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// A canonical text says all that the card said, and is its own canonical text.
func TestCanonical_Samples(t *testing.T) {
	for name, text := range specs.Cards() {
		c, _ := card.Read(text)
		written := wire.Write(c)
		if got, want := said(t, string(written)), said(t, string(text)); got != want {
			t.Errorf("%s: the text says\n%s, the card\n%s", name, got, want)
		}
		again, _ := card.Read(written)
		if string(wire.Write(again)) != string(written) {
			t.Errorf("%s: the canonical text of its canonical text is another", name)
		}
	}
}

// said is a JSON text with its names in order, empty members left out.
func said(t *testing.T, text string) string {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	out, err := json.Marshal(filled(v))
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// filled is a value without its empty members.
func filled(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for name, member := range v {
			switch member := filled(member); member {
			case nil, "", 0.0, false:
				delete(v, name)
			}
		}
	case []any:
		for i := range v {
			filled(v[i])
		}
	}
	return v
}

// all is a card that says whatever a card may say since notes belong to a moment, and
// what is behind what.
const all = `{"format":"tidysump-card","version":1,"id":"all","make":"Plainford","model":"All","layout":"dry-sump",
	"engine":{"cylinders":1,"displacement":250,"cooling":"air","clutch":"wet","noLamp":true,"returnSeen":true,"noNeutral":true},
	"circuits":[{"id":"engine","role":"engine","oil":{},"level":{}}],
	"chart":[{"circuit":"engine","grade":"10W-40","from":{"value":0,"unit":"°C","standing":"measured","method":"tried"},"to":{"value":104,"unit":"°F","standing":"measured","method":"tried"}},
		{"circuit":"engine","grade":"20W50","from":{"value":-10,"unit":"°C","standing":"measured","method":"tried"}}],
	"bolts":[{"id":"guard","purpose":"panel"},{"id":"drain","purpose":"drain-plug","circuit":"engine","behind":"guard","drains":true},
		{"id":"plate","purpose":"strainer-cap","circuit":"engine","of":"mesh","behind":"can"},
		{"id":"can","purpose":"filter-can","circuit":"engine","of":"filter","thread":"M20x1.5"}],
	"filters":[{"id":"filter","kind":"spin-on","circuit":"engine","behind":"guard","thread":"M20x1.5",
		"ring":{"value":63,"unit":"mm","standing":"measured","method":"calliper"},
		"height":{"value":3.3,"unit":"in","standing":"measured","method":"calliper"},"ownNumber":"shelf 4, \"blue\""}],
	"strainers":[{"id":"mesh","circuit":"engine","behind":"filter"}],
	"interval":{},
	"notes":["One.","Two."],
	"notesAt":[{"at":"drain","text":"One."},{"at":"drain","text":"Two lines,\nand another."},{"at":"waste","text":"Last."}]}`

// Nothing of it is lost on the way through the program, and nothing added.
func TestCanonical_All(t *testing.T) {
	c, found := card.Read([]byte(all))
	if len(found) > 0 {
		t.Fatalf("%v", found)
	}
	if !strings.Contains(string(wire.Write(c)), `"value":0,"unit":"°C"`) {
		t.Errorf("the air of 0 °C isn't written: %s", wire.Write(c))
	}
	if got, want := said(t, string(wire.Write(c))), said(t, all); got != want {
		t.Errorf("the text says\n%s, the card\n%s", got, want)
	}
	for _, m := range []string{"noLamp", "returnSeen", "noNeutral", "behind", "ring", "height", "ownNumber", "notesAt", "chart"} {
		if minimal, _ := card.Read(rootFile(t, "testdata/card-minimal.json")); strings.Contains(string(wire.Write(minimal)), m) {
			t.Errorf("a card without %q is written with it", m)
		}
	}
}

// The cards that released versions wrote are, byte for byte, still what is written of
// them: a code on paper, and a version by its digest, stay what they were.
func TestCanonical_Released(t *testing.T) {
	files, err := filepath.Glob("../../testdata/backups/*.jsonl.gz")
	if err != nil || len(files) < 3 {
		t.Fatalf("%v, %v", files, err)
	}
	for _, name := range files {
		cards := 0
		for line := range strings.Lines(unpacked(t, name)) {
			var kept struct {
				Card struct{ Card json.RawMessage }
				Job  struct{ Card json.RawMessage }
			}
			if json.Unmarshal([]byte(line), &kept) != nil {
				continue
			}
			was := kept.Card.Card
			if was == nil {
				was = kept.Job.Card // each job holds its own
			}
			if was == nil {
				continue
			}
			cards++
			c, found := card.Read(was)
			if text := wire.Write(c); string(text) != string(was) || len(found) > 0 {
				t.Errorf("%s: %v, written as\n%s, was\n%s", name, found, text, was)
			}
		}
		if cards == 0 {
			t.Errorf("%s has no card", name)
		}
	}
}

func unpacked(t *testing.T, name string) string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := gzip.NewReader(f)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	text, err := io.ReadAll(r)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return string(text)
}
