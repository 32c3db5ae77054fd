package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/core"
	"tidysump/internal/wire"
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

// With the canonical text comes its place in the input, and the text is what
// package card writes.
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
		if c, _ := card.Read(in[b.Place]); c.ID != b.ID || string(wire.Write(c)) != b.Text {
			t.Errorf("%s, place %d: %s", b.ID, b.Place, b.Text)
		}
	}
}

// The doubts about a card are reported with its text, and not without it.
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

// What can't be read of a list of cards is reported, not passed over: with each card,
// or of the list as a whole.
func TestCards_UnreadableIsRefused(t *testing.T) {
	long := `{"format":"tidysump-card","model":"` + strings.Repeat("x", 30000) + `"}`
	for cards, want := range map[string]string{
		"[" + long + "]":              `{"ok":{"findings":[{`,
		"[" + long + "," + long + "]": `{"ok":{"findings":[{`,
		`[{"id":1,"id":2}]`:           `{"ok":{"findings":[{"code":"name-twice","where":"/cards/0/id"`,
		`[{}`:                         `{"findings":[{"code":"not-json"`,
		`[` + strings.Repeat("{},", 2000) + long + `]`: `{"findings":[{`, // more than is told
	} {
		if out := string(core.Call("cards", []byte(`{"cards":`+cards+`}`))); !strings.HasPrefix(out, want) || !strings.Contains(out, "refuse") {
			t.Errorf("%.60s: %.200s, want %s", cards, out, want)
		}
	}
}
