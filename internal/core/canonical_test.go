package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

type canonicalAnswer struct {
	OK struct {
		Bikes []struct {
			ID, Text string
			Place    int
		}
		Findings []struct{ Code, Where, Grade string }
	}
}

func canonical(t *testing.T, cards string) canonicalAnswer {
	t.Helper()
	var a canonicalAnswer
	out := core.Call("cards", []byte(`{"canonical":true,"cards":`+cards+`}`))
	if err := json.Unmarshal(out, &a); err != nil {
		t.Fatalf("%s: %v", out, err)
	}
	return a
}

// A canonical text says all that the card said, is its own canonical text, and
// is found at its place in the input.
func TestCanonical_Samples(t *testing.T) {
	var in []json.RawMessage
	if err := json.Unmarshal(specs.Samples(), &in); err != nil {
		t.Fatal(err)
	}
	a := canonical(t, string(specs.Samples()))
	if len(a.OK.Bikes) != len(in) || len(in) == 0 {
		t.Fatalf("%d bikes of %d cards", len(a.OK.Bikes), len(in))
	}
	for _, b := range a.OK.Bikes {
		if got, want := said(t, b.Text), said(t, string(in[b.Place])); got != want {
			t.Errorf("%s: the text says\n%s, the card\n%s", b.ID, got, want)
		}
		again := canonical(t, "["+b.Text+"]")
		if len(again.OK.Bikes) != 1 || again.OK.Bikes[0].Text != b.Text {
			t.Errorf("%s: the canonical text of its canonical text is another", b.ID)
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

// The doubts about a card are told with its text, and not without it.
func TestCanonical_TellsDoubts(t *testing.T) {
	samples := string(specs.Samples())
	cards := strings.Replace(samples, `{`, `{"later":1,`, 1)
	a := canonical(t, cards)
	if len(a.OK.Findings) != 1 || a.OK.Findings[0].Where != "/cards/0/later" || a.OK.Findings[0].Grade != "doubt" {
		t.Errorf("with the text: %v", a.OK.Findings)
	}
	if out := string(core.Call("cards", []byte(`{"cards":`+cards+`}`))); strings.Contains(out, "findings") || strings.Contains(out, `"text":`) {
		t.Errorf("a plain list holds findings or texts: %.300s", out)
	}
}

// A card that keeps the whole list from being read is told, not passed over.
func TestCards_UnreadableIsRefused(t *testing.T) {
	long := `{"format":"tidysump-card","model":"` + strings.Repeat("x", 30000) + `"}`
	for _, cards := range []string{"[" + long + "]", "[" + long + "," + long + "]", `[{"id":1,"id":2}]`} {
		if out := string(core.Call("cards", []byte(`{"cards":`+cards+`}`))); !strings.HasPrefix(out, `{"findings":[{`) {
			t.Errorf("%.60s: %.200s", cards, out)
		}
	}
}
