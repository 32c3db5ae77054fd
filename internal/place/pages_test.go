package place_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// page is an example page with what it says.
type page struct {
	Text  string
	Truth []struct{ What, Value, Quote, For string }
}

// pages are the examples, by name.
func pages(t *testing.T) map[string]page {
	t.Helper()
	files, err := filepath.Glob("../../testdata/pages/*/*.json")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d pages, %v", len(files), err)
	}
	all := map[string]page{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var p page
		if err := json.Unmarshal(text, &p); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all[name] = p
	}
	return all
}

// readings are all that a page says, as a reader without a fault would hand it on.
func (p *page) readings() (list []place.Reading) {
	for _, truth := range p.Truth {
		from := strings.Index(p.Text, truth.Quote)
		list = append(list, place.Reading{What: place.What(truth.What), Text: truth.Value,
			Quote: place.Span{From: from, To: from + len(truth.Quote)}, Model: truth.For})
	}
	return list
}

// Whatever an example page says has its place in a card, and stands there as it was read
// with the words of the page; the card passes its check.
func TestTake_Pages(t *testing.T) {
	for name, p := range pages(t) {
		list := p.readings()
		model := ""
		for _, r := range list {
			if model == "" {
				model = r.Model
			}
		}
		taken := place.Take(place.Bare(place.LayoutOf(list, place.Hints{}).Word), list, &place.Page{Text: p.Text, Title: "Book", Page: "7", Model: model}, quantity.Metric)
		for _, f := range taken.Findings {
			if f.Grade == finding.Refuse && f.Code != "missing" || f.Code == "reading-differs" {
				t.Errorf("%s: %v", name, f)
			}
		}
		text := wire.Write(taken.Card)
		if _, found := card.Read(text); finding.Refused(found) {
			t.Errorf("%s: %v\n%s", name, found, text)
		}
		quoted := map[string]bool{}
		for _, q := range taken.Card.Quoted() {
			quoted[q.At] = true
		}
		for n, at := range taken.At {
			if at == "" && list[n].Model == model {
				t.Errorf("%s: %s has no place", name, list[n].What)
			}
			if at != "" && !quoted[at] && len(taken.Findings) == 0 {
				t.Errorf("%s: %s at %s is not quoted", name, list[n].What, at)
			}
		}
		if t.Failed() {
			t.Logf("%s", text)
			return
		}
	}
}
