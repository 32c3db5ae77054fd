package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
)

// From the text of a page to a plan: what was read of every example page goes into a new
// card, each thing to its place, and the card is planned; a second time it changes nothing,
// and the reader finds nothing that the card contradicts.
func TestPages_ToThePlan(t *testing.T) {
	files, err := filepath.Glob("../../testdata/pages/*/*.json")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d pages, %v", len(files), err)
	}
	type reading struct {
		What  string `json:"what"`
		At    string `json:"at"`
		Text  string `json:"text"`
		Sure  string `json:"sure"`
		Model string `json:"model"`
		Quote struct {
			From int `json:"from"`
			To   int `json:"to"`
		} `json:"quote"`
	}
	const begin = `{"format":"tidysump-card","version":1,"id":"own","make":"","model":"","layout":"wet-sump",` +
		`"sources":[{"id":"manual","title":""}],"circuits":[{"id":"engine","role":"engine"}]}`
	ask := func(op string, in, out any) {
		t.Helper()
		text, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		answer, outcome := core.Do(op, text)
		if outcome != core.OK {
			t.Fatalf("%s: %s\n%.300s", op, answer, text)
		}
		if err := json.Unmarshal(answer, &struct{ OK any }{out}); err != nil {
			t.Fatal(err)
		}
	}
	taken := 0
	for _, name := range files {
		var page struct{ Text string }
		file, err := os.ReadFile(name)
		if err != nil || json.Unmarshal(file, &page) != nil {
			t.Fatal(name, err)
		}
		var read struct {
			Readings []reading
			Models   []string
		}
		ask("read-page", map[string]any{"text": page.Text, "card": json.RawMessage(begin)}, &read)
		list := []reading{}
		for _, r := range read.Readings {
			if r.At == "" {
				t.Errorf("%s: %s %s goes nowhere", name, r.What, r.Text)
			}
			if r.Text != "" && (len(read.Models) == 0 || r.Model == "" || r.Model == read.Models[0]) {
				list = append(list, r)
			}
		}
		in := map[string]any{"card": json.RawMessage(begin), "text": page.Text, "title": "Book", "page": "7", "readings": list}
		var out struct {
			Card     json.RawMessage
			At       []string
			Findings []struct{ Code, Where, Grade string }
		}
		ask("take-readings", in, &out)
		refused := map[string]bool{}
		for _, f := range out.Findings {
			refused[f.Where] = refused[f.Where] || f.Grade == "refuse"
		}
		for n, at := range out.At {
			if at == "" && list[n].Sure == "yes" {
				t.Errorf("%s: %s %s is sure, and was not taken: %v", name, list[n].What, list[n].Text, out.Findings)
			}
			if at != "" {
				taken++
			}
		}
		in["card"] = out.Card
		var again struct{ Card json.RawMessage }
		ask("take-readings", in, &again)
		if string(again.Card) != string(out.Card) {
			t.Errorf("%s: once more it is\n%s\nand was\n%s", name, again.Card, out.Card)
		}
		named := strings.NewReplacer(`"make":""`, `"make":"Plainford"`, `"model":""`, `"model":"One"`).Replace(string(out.Card))
		ask("plan", map[string]any{"card": json.RawMessage(named)}, &struct{}{})
	}
	if taken < 500 {
		t.Errorf("only %d readings were taken", taken)
	}
}

// What a person says that words of the page are stands in place of what was read there;
// what they can't be is refused.
func TestReadPage_Said(t *testing.T) {
	const text = `"text":"Plug at the side 25 N·m (18 lbf·ft)\nEngine oil 1.5 L"`
	for _, c := range []struct{ say, want string }{
		{`{"what":"bolt.filler.torque","quote":{"from":17,"to":25}}`, `"what":"bolt.filler.torque","text":"25 N·m"`},
		{`{"what":"oil.engine.with-filter","quote":{"from":49,"to":54}}`, `"what":"oil.engine.with-filter","text":"1.5 L"`},
		{`{"what":"bolt.filler.torque","quote":{"from":49,"to":54}}`, `"code":"manual-not-that","where":"/say/0"`},
		{`{"what":"bolt.fork.torque","quote":{"from":17,"to":25}}`, `"code":"unknown-word","where":"/say/0"`},
		{`{"what":"bolt.filler.torque","quote":{"from":17,"to":2500}}`, `"code":"quote-outside","where":"/say/0"`},
		{`{"what":"bolt.filler.torque","quote":{"from":-2,"to":5}}`, `"code":"quote-outside","where":"/say/0"`},
	} {
		out := string(core.Call("read-page", []byte(`{`+text+`,"say":[`+c.say+`]}`)))
		if !strings.Contains(out, c.want) {
			t.Errorf("%s: %s", c.say, out)
		}
	}
}

// Of a page of several models the one that was chosen is left: nothing is of another, the
// name of none is read, and which of them it is is asked no more.
func TestReadPage_Chosen(t *testing.T) {
	files, err := filepath.Glob("../../testdata/pages/*/*.json")
	if err != nil {
		t.Fatal(err)
	}
	type answer struct {
		OK struct {
			Models   []string
			Readings []struct {
				What, Text, Model, Sure string
				Doubts                  []struct{ Code string }
			}
		}
	}
	read := func(text, model string) (a answer) {
		in, err := json.Marshal(map[string]string{"text": text, "model": model})
		if err != nil || json.Unmarshal(core.Call("read-page", in), &a) != nil {
			t.Fatal(text, err)
		}
		return a
	}
	choices := 0
	for _, name := range files {
		var page struct{ Text string }
		file, err := os.ReadFile(name)
		if err != nil || json.Unmarshal(file, &page) != nil {
			t.Fatal(name, err)
		}
		models := read(page.Text, "").OK.Models
		for _, chosen := range models {
			choices++
			for _, r := range read(page.Text, chosen).OK.Readings {
				named := r.What == "model" || r.What == "years"
				if r.Model != "" && r.Model != chosen || named && r.Text != chosen && slices.Contains(models, r.Text) {
					t.Errorf("%s, %s: %s %s is of %q", name, chosen, r.What, r.Text, r.Model)
				}
				for _, d := range r.Doubts {
					if d.Code == "manual-of-one-model" || d.Code == "manual-several-models" {
						t.Errorf("%s, %s: %s %s: %s", name, chosen, r.What, r.Text, d.Code)
					}
				}
			}
		}
	}
	if choices < 10 {
		t.Errorf("only %d choices", choices)
	}
}
