package job

import (
	"testing"

	"tidysump/internal/plan"
)

// Every reading that a step can ask for is a quantity with bounds, or one of the
// two that are words.
func TestBelievable_EveryReading(t *testing.T) {
	for _, what := range plan.Readings {
		kind, low, high, ok := believable(what)
		if isWord := what == plan.AskLevel || what == plan.AskLeak; ok == isWord {
			t.Errorf("%s: a quantity %v, a word %v", what, ok, isWord)
		}
		if ok && (kind == "" || low >= high) {
			t.Errorf("%s: %s from %v to %v", what, kind, low, high)
		}
	}
	if kind, _, _, ok := believable("mood"); ok || kind != "" {
		t.Errorf("an unknown reading is of kind %q", kind)
	}
}
