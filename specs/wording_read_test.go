package specs_test

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// readStep is a step of a golden plan, as far as its sentences go.
type readStep struct {
	ID, Word string
	Values   map[string]string
}

// asRead is a text with its values filled in; one that begins with "@" is a word itself.
func asRead(words string, values, catalogue map[string]string) string {
	return placeholder.ReplaceAllStringFunc(words, func(name string) string {
		value := values[strings.Trim(name, "{}")]
		if id, isWord := strings.CutPrefix(value, "@"); isWord {
			return asRead(catalogue[id], values, catalogue)
		}
		return value
	})
}

// What a step says is short as it is read, with what the sample cards put into it,
// and no sentence begins with a small letter.
func TestWording_StepsAsTheyAreRead(t *testing.T) {
	words := catalogue(t)
	files, err := filepath.Glob("../testdata/plans/*.json")
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]bool{}
	for _, file := range files {
		var plan struct{ Steps []readStep }
		if err := json.Unmarshal([]byte(readText(t, file)), &plan); err != nil {
			t.Fatal(file, err)
		}
		for _, s := range plan.Steps {
			for _, ending := range []string{".do", ".why"} {
				for _, template := range sentencesOf(words[s.Word+ending]) {
					sentence := asRead(template, s.Values, words)
					if read[sentence] {
						continue
					}
					read[sentence] = true
					if n := length(asRead(listed.ReplaceAllString(template, ""), s.Values, words)); n > mostWords {
						t.Errorf("%s, %s: %q has %d words, %d at most", file, s.ID, sentence, n, mostWords)
					}
					if first, _ := utf8.DecodeRuneInString(sentence); unicode.IsLower(first) {
						t.Errorf("%s, %s: %q begins with a small letter", file, s.ID, sentence)
					}
				}
			}
		}
	}
	if len(read) < 300 {
		t.Errorf("only %d sentences were read", len(read))
	}
}
