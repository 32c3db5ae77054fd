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

// What pages say that are right is not doubted, and what the check of a card doubts of a
// page with faults is told at the reading.
func TestDoubts_Pages(t *testing.T) {
	for name, p := range pages(t) {
		list := p.readings()
		for n, doubts := range place.Doubts(nil, list) {
			if len(doubts) > 0 {
				t.Errorf("%s: %s %s: %v", name, list[n].What, list[n].Text, doubts)
			}
		}
	}
	for _, c := range []struct{ what, text, beside, of, code string }{
		{"oil.engine.dry", "14 L", "oil.engine.oil-only", "1.2 L", "dry-odd"},
		{"oil.engine.dry", "1.1 L", "oil.engine.oil-only", "1.6 L", "dry-odd"},
		{"oil.engine.oil-only", "12 L", "make", "Plainford", "volume-unusual"},
		{"oil.final.volume", "2.2 L", "make", "Plainford", "volume-unusual"},
		{"oil.engine.with-filter", "3.8 L", "oil.engine.oil-only", "2.1 L", "filter-volume-much"},
		{"bolt.drain.torque", "160 lbf·ft", "make", "Plainford", "torque-unusual"},
		{"bolt.drain.torque", "250 N·m", "bolt.drain.thread", "M12x1.5", "torque-unit"},
		{"bolt.filter.torque", "15 lbf·in", "make", "Plainford", "torque-unusual"},
		{"warm.target", "500 °C", "make", "Plainford", "not-believable"},
		{"interval.first", "10000 km", "interval.distance", "12000 km", "interval-odd"},
		{"interval.severe", "8000 km", "interval.distance", "6000 km", "interval-longer"},
		{"bolt.drain.size", "37 mm", "bolt.drain.thread", "M12x1.5", ""},
	} {
		list := []place.Reading{{What: place.What(c.what), Text: c.text}, {What: place.What(c.beside), Text: c.of}}
		doubts := place.Doubts(nil, list)[0]
		got := ""
		if len(doubts) > 0 {
			got = doubts[0].Code
		}
		if got != c.code {
			t.Errorf("%s %s beside %s %s: %q, want %q", c.what, c.text, c.beside, c.of, got, c.code)
		}
	}
}
