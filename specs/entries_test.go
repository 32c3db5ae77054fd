package specs_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/core"
	"tidysump/specs"
)

// place finds the part of the schema that describes a place in a card.
func place(t *testing.T, schema map[string]any, pointer string) map[string]any {
	t.Helper()
	node := schema
	follow := func() {
		for ref, ok := node["$ref"].(string); ok; ref, ok = node["$ref"].(string) {
			node = schema["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		}
	}
	for step := range strings.SplitSeq(strings.Trim(pointer, "/"), "/") {
		follow()
		if items, ok := node["items"].(map[string]any); ok && node["type"] == "array" {
			node = items
			follow()
			if step == "0" {
				continue
			}
		}
		next, ok := node["properties"].(map[string]any)[step].(map[string]any)
		if !ok {
			t.Errorf("%s: the schema has no %q", pointer, step)
			return nil
		}
		node = next
	}
	follow()
	return node
}

// Every entry of the editor is a place of the schema, and offers its words.
func TestEntries_AreOfTheSchema(t *testing.T) {
	var table struct {
		Sections []struct {
			Each    string
			Entries []struct {
				At, Kind string
				Words    []string
				Settles  bool
			}
		}
	}
	if err := json.Unmarshal(specs.Entries, &table); err != nil {
		t.Fatal(err)
	}
	schema := instance(t, specs.CardSchema).(map[string]any)
	for _, s := range table.Sections {
		for _, e := range s.Entries {
			node := place(t, schema, s.Each+"/"+strings.TrimPrefix(e.At, "/"))
			if node == nil || e.Kind != "choice" {
				continue
			}
			var words []string
			for _, w := range node["enum"].([]any) {
				if w != "" && !(e.Settles && w == string(card.Centrifugal)) { // one that is cleaned is a part of its own
					words = append(words, fmt.Sprint(w))
				}
			}
			slices.Sort(words)
			if got := slices.Sorted(slices.Values(e.Words)); !slices.Equal(got, words) {
				t.Errorf("%s%s offers %v, the schema has %v", s.Each, e.At, got, words)
			}
		}
	}
}

// Every layout of the schema has what a new card begins with, and what that has
// been named may be planned: nothing is wrong but that nothing is known.
func TestEntries_LayoutsBegin(t *testing.T) {
	var table struct {
		Layouts map[string]struct {
			Circuits []map[string]any
			Parts    []any // a word, or a word and a circuit
		}
		Parts []struct{ Word string }
	}
	if err := json.Unmarshal(specs.Entries, &table); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, p := range table.Parts {
		known[p.Word] = true
	}
	for _, layout := range enum(t, "properties/layout") {
		begin, ok := table.Layouts[layout]
		if !ok || len(begin.Circuits) == 0 {
			t.Errorf("nothing to begin a card of the layout %q with", layout)
			continue
		}
		for _, part := range begin.Parts {
			if of, ok := part.(map[string]any); ok {
				part = of["word"]
			}
			if word, _ := part.(string); !known[word] {
				t.Errorf("%s: there is no part %q", layout, word)
			}
		}
		card, err := json.Marshal(map[string]any{"card": map[string]any{"format": "tidysump-card", "version": 1, "id": "new",
			"make": "Plainford", "model": "New", "layout": layout, "circuits": begin.Circuits}})
		if err != nil {
			t.Fatal(err)
		}
		if out, outcome := core.Do("plan", card); outcome != core.OK {
			t.Errorf("%s: %s", layout, out)
		}
	}
}
