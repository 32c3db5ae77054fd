package specs_test

import (
	"regexp"
	"strings"
	"testing"
)

// What stands of a caution at every step is one sentence: the hazard, and how to avoid it.
// What happens otherwise follows, and is never missing.
func TestCautions_OneSentenceAndWhatFollows(t *testing.T) {
	words, checked := catalogue(t), 0
	parts := regexp.MustCompile(`^(If [^:,.]+, |[^:.]+: )[^:]+\.$`)
	for id, more := range words {
		short, is := strings.CutSuffix(id, ".more")
		if !is || !strings.HasPrefix(id, "caution.") {
			continue
		}
		checked++
		if said := words[short]; len(sentencesOf(said)) != 1 || !parts.MatchString(said) {
			t.Errorf("%s: %q is not one sentence of hazard and avoidance", short, said)
		}
		if more == "" || strings.Contains(words[short], more) {
			t.Errorf("%s: nothing follows", id)
		}
	}
	if checked < 20 {
		t.Errorf("only %d cautions", checked)
	}
}
