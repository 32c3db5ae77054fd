package build

import (
	"fmt"
	"regexp"
	"strings"
)

// saidID is where a sentence is put, "{app.name}".
var saidID = regexp.MustCompile(`\{([a-z][a-z.-]*)\}`)

// say puts the sentences of the default language into a text where their ids
// stand, each as `escape` writes it there. Of the language itself {lang} is the
// tag and {dir} the direction.
func (o Options) say(text string, escape func(string) string) (string, error) {
	var missing []string
	out := saidID.ReplaceAllStringFunc(text, func(mark string) string {
		id := mark[1 : len(mark)-1]
		sentence := o.Sentences[id]
		switch {
		case id == "lang" && len(o.Languages) > 0:
			sentence = o.Languages[0].Tag
		case id == "dir" && len(o.Languages) > 0:
			sentence = o.Languages[0].Dir
		}
		if sentence == "" {
			missing = append(missing, mark)
		}
		return escape(sentence)
	})
	if missing != nil {
		return "", fmt.Errorf("no sentence for %s", strings.Join(missing, ", "))
	}
	return out, nil
}
