package core_test

import (
	"encoding/json"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// Each operation has a name of its own, makes an input that reads its examples
// and an answer that can be written while it is empty; both are fresh each time.
func TestOperations_DeclareWhatTheyReadAndWrite(t *testing.T) {
	seen := map[string]core.Operation{}
	for _, o := range core.Operations() {
		if _, twice := seen[o.Name]; twice || o.Name == "" {
			t.Errorf("the name %q stands twice or is none", o.Name)
		}
		seen[o.Name] = o
		if o.Input() == o.Input() || o.Answer() == o.Answer() {
			t.Errorf("%s: two calls share an input or an answer", o.Name)
		}
		if text := wire.Write(o.Answer()); !json.Valid(text) {
			t.Errorf("%s: an empty answer is %s", o.Name, text)
		}
	}
	read := map[string]bool{}
	for _, e := range specs.Examples() {
		if o, known := seen[e.Op]; known && len(wire.Read([]byte(e.In), o.Input())) == 0 {
			read[e.Op] = true
		}
	}
	for name := range seen {
		if !read[name] {
			t.Errorf("%s: no example can be read by its input", name)
		}
	}
	if !slices.IsSorted(operationNames()) || len(seen) < 25 {
		t.Errorf("operations %v", operationNames())
	}
}
