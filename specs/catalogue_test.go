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

// No word stands in two parts of the catalogue.
func TestCatalogue_PartsAreApart(t *testing.T) {
	part := map[string]string{}
	for n, text := range specs.Words() {
		var words map[string]string
		if err := json.Unmarshal(text, &words); err != nil {
			t.Fatalf("%s: %v", n, err)
		}
		if len(words) == 0 {
			t.Fatalf("%s has no words", n)
		}
		for id := range words {
			if other, taken := part[id]; taken {
				t.Errorf("%q is in %s and in %s", id, other, n)
			}
			part[id] = n
		}
	}
}
