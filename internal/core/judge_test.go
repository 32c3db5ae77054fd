package core_test

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

// rowsOfPages are lines of pages, each with the figures that it may have; no two are one.
var rowsOfPages = []struct {
	what, line string
	figures    []string
}{
	{"oil.engine.with-filter", "Engine oil with filter replacement ............ ", []string{"1.6 L", "1.8 L", "1.9 L"}},
	{"bolt.drain.torque", "Oil drain bolt ............. ", []string{"25 N·m", "20 N·m"}},
	{"bolt.filter-cover.torque", "Oil filter cover bolt ............. ", []string{"10 N·m", "12 N·m"}},
	{"interval.distance", "Change the engine oil every ............. ", []string{"6000 km", "10000 km"}},
}

// Pages of a manual in any order: what two of them say differently is asked once, with the
// words of both and the pages that they are on; what they agree in is not asked for it.
func TestJudgePages_WhatPagesSay(t *testing.T) {
	type reading struct {
		What   string `json:"what"`
		Text   string `json:"text"`
		Stands string `json:"stands,omitempty"`
		Sure   string `json:"sure"`
		Quote  struct{ From, To int }
	}
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.IntRange(1, 4).Draw(t, "pages")
		var all []reading
		said := map[string]map[string]bool{} // figures of each thing
		var quotes []string                  // of each reading
		for range count {
			var lines, figures []string
			for _, r := range rowsOfPages {
				if rapid.Bool().Draw(t, "says "+r.what) {
					figure := rapid.SampledFrom(r.figures).Draw(t, r.what)
					lines, figures = append(lines, r.line+figure), append(figures, r.what+" "+figure)
					if said[r.what] == nil {
						said[r.what] = map[string]bool{}
					}
					said[r.what][figure] = true
				}
			}
			text := strings.Join(lines, "\n")
			in, err := json.Marshal(map[string]string{"text": text})
			var read struct{ OK struct{ Readings []reading } }
			if err != nil || json.Unmarshal(core.Call("read-page", in), &read) != nil {
				t.Fatal(text, err)
			}
			for _, r := range read.OK.Readings {
				if r.Sure == "yes" {
					r.Stands = "sure"
				}
				all, quotes = append(all, r), append(quotes, text[r.Quote.From:r.Quote.To])
				if at := slices.Index(figures, r.What+" "+r.Text); at >= 0 {
					figures = slices.Delete(figures, at, at+1)
				}
			}
			if len(figures) > 0 {
				t.Fatalf("%s\nnobody read %q: %+v", text, figures, read.OK.Readings)
			}
		}
		in, err := json.Marshal(map[string]any{"readings": append([]reading{}, all...)})
		var out struct {
			OK struct {
				Asked     []int
				Contested []string
			}
		}
		if err != nil || json.Unmarshal(core.Call("judge-pages", in), &out) != nil {
			t.Fatal(string(in), err)
		}
		for what, figures := range said {
			questions, asked := map[int]bool{}, map[string]bool{}
			for n, q := range out.OK.Asked {
				if all[n].What == what && q > 0 {
					questions[q] = true
					asked[quotes[n]] = true
				}
			}
			if contested := len(figures) > 1; contested != (len(questions) == 1) || contested != slices.Contains(out.OK.Contested, what) || len(questions) > 1 {
				t.Fatalf("%s: said %v, questions %v; contested are %v", what, figures, questions, out.OK.Contested)
			}
			for figure := range figures {
				if len(figures) > 1 && !slices.ContainsFunc(slices.Collect(maps.Keys(asked)), func(quote string) bool { return strings.Contains(quote, figure) }) {
					t.Fatalf("%s: %s is not among what is asked: %v", what, figure, asked)
				}
			}
		}
		if len(out.OK.Contested) > len(said) {
			t.Fatalf("contested are %v, and said %v", out.OK.Contested, said)
		}
	})
}
