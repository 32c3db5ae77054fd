package card_test

import (
	"encoding/json"
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
