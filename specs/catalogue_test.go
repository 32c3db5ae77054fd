package specs_test

import (
	"testing"

	"tidysump/specs"
)

// catalogue is the default language's: word id to sentence.
func catalogue(t *testing.T) map[string]string {
	t.Helper()
	return specs.Sentences()
}

// No word stands in two parts of the catalogue.
func TestCatalogue_PartsAreApart(t *testing.T) {
	part := map[string]string{}
	for n := range specs.Words()[0].Parts {
		words := specs.Words()[0].Part(n)
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
