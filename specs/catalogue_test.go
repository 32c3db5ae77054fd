package specs_test

import (
	"encoding/json"
	"testing"

	"tidysump/specs"
)

// catalogue is the English word catalogue: word id to sentence.
func catalogue(t *testing.T) map[string]string {
	t.Helper()
	var words map[string]string
	if err := json.Unmarshal(specs.WordsEN, &words); err != nil {
		t.Fatal(err)
	}
	return words
}
