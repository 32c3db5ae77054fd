package specs_test

import (
	"encoding/json"
	"testing"

	"tidysump/specs"
)

// catalogue is the English word catalogue: word id to sentence.
func catalogue(t *testing.T) map[string]string {
	t.Helper()
	return specs.EN()
}

// No word stands in both parts of the catalogue.
func TestCatalogue_PartsAreApart(t *testing.T) {
	var page, bench map[string]string
	if err := json.Unmarshal(specs.WordsEN, &page); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(specs.BenchWordsEN, &bench); err != nil {
		t.Fatal(err)
	}
	if len(page) == 0 || len(bench) == 0 {
		t.Fatalf("%d words and %d words", len(page), len(bench))
	}
	for id := range bench {
		if page[id] != "" {
			t.Errorf("%q is in both", id)
		}
	}
}
