package core_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
	"tidysump/specs"
)

var update = flag.Bool("update", false, "rewrite the plans in testdata/plans")

// benches are the benches of the golden plans. "all" does every oil, and cleans
// everything, of a card that has more of them than an oil change always does;
// "us-keep-filter" is for the cards that have a filter to keep. What is else at the
// roadside, on the way home and with a helper is read on two cards.
func benches(t *testing.T, c *card.Card) map[string]string {
	list := map[string]string{"metric": `{"system":"metric"}`}
	if slices.ContainsFunc(c.Filters, func(f card.Filter) bool { return f.Kind != card.Centrifugal }) {
		list["us-keep-filter"] = `{"system":"us","keepFilter":true}`
	}
	switch c.ID {
	case "tessaly-corda-570":
		list["roadside"], list["helper"] = `{"place":"roadside"}`, `{"helper":true}`
	case "skarvald-torrek-440":
		list["get-home"] = `{"place":"roadside","getHome":true}`
	}
	var circuits, also []string
	for i := range c.Circuits {
		circuits = append(circuits, c.Circuits[i].ID)
	}
	for i := range c.Filters {
		if c.Filters[i].Kind == card.Centrifugal {
			also = append(also, c.Filters[i].ID)
		}
	}
	for i := range c.Strain {
		if c.Strain[i].EveryNth > 1 {
			also = append(also, c.Strain[i].ID)
		}
	}
	if len(circuits) > 1 || len(also) > 0 {
		all, err := json.Marshal(map[string]any{"system": "metric", "circuits": circuits, "also": also})
		if err != nil {
			t.Fatal(err)
		}
		list["all"] = string(all)
	}
	return list
}

// The plans of the sample cards are as a mechanic has read and approved them.
func TestPlan_Golden(t *testing.T) {
	wanted := map[string]bool{}
	for file, text := range specs.Cards() {
		c, _ := card.Read(text)
		for bench, in := range benches(t, c) {
			name := strings.TrimSuffix(file, ".json") + "." + bench + ".json"
			wanted[name] = true
			t.Run(name, func(t *testing.T) { checkGolden(t, name, cardInput(text, in)) })
		}
	}
	unlooked := "tessaly-corda-570.filter-unknown.json"
	wanted[unlooked] = true
	t.Run(unlooked, func(t *testing.T) {
		c := plantest.Unlooked(plantest.Sample(t, "tessaly-corda-570"))
		checkGolden(t, unlooked, cardInput(wire.Write(c), `{"system":"metric"}`))
	})
	files, err := filepath.Glob("../../testdata/plans/*.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !wanted[filepath.Base(f)] {
			t.Errorf("%s belongs to no card and bench", f)
		}
	}
}

func checkGolden(t *testing.T, name string, in []byte) {
	var plan json.RawMessage
	must(t, "plan", in, &plan)
	var got bytes.Buffer
	if err := json.Indent(&got, plan, "", "  "); err != nil {
		t.Fatal(err)
	}
	got.WriteByte('\n')
	path := filepath.Join("..", "..", "testdata", "plans", name)
	if *update {
		if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; go test ./internal/core -update writes it", err)
	}
	if line, g, w := firstDifference(got.String(), string(want)); line > 0 {
		t.Errorf("plan differs in line %d:\n got %s\nwant %s\ngo test ./internal/core -update, then read the difference", line, g, w)
	}
}

// firstDifference gives the first line, counted from 1, in which two texts
// differ; 0 if none.
func firstDifference(a, b string) (line int, inA, inB string) {
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range max(len(as), len(bs)) {
		switch {
		case i >= len(as):
			return i + 1, "the end", bs[i]
		case i >= len(bs):
			return i + 1, as[i], "the end"
		case as[i] != bs[i]:
			return i + 1, as[i], bs[i]
		}
	}
	return 0, "", ""
}
