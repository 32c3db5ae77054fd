package specs_test

import (
	"regexp"
	"strings"
	"testing"

	"tidysump/specs"
)

// Which languages there are is said by the folders of specs/words alone: another
// one is another folder. So no source names one.
func TestLanguages_StandInTheirFoldersOnly(t *testing.T) {
	named := map[string]string{} // text -> where it stands
	for _, s := range allGoSources(t, "internal", "server", "specs", "wasm") {
		for _, text := range literals([]goSource{s}) {
			named[text] = s.path
		}
	}
	for _, path := range filesOf(t, ".js", "static/app", "static/test") {
		for _, s := range readScript(t, readText(t, path)).texts {
			named[s.text] = path
		}
	}
	for _, path := range []string{"../static/index.html", "../static/manifest.webmanifest", "../static/sw.js"} {
		for _, m := range regexp.MustCompile(`"([^"]*)"`).FindAllStringSubmatch(readText(t, path), -1) {
			named[m[1]] = path
		}
	}
	for _, l := range specs.Words() {
		for text, path := range named {
			if text == l.Tag || strings.Contains(text, "words/"+l.Tag) {
				t.Errorf("%s names the language %q in %q", path, l.Tag, text)
			}
		}
	}
	if named["words/"] == "" {
		t.Error("no source makes the name of a file of words: this test looks in the wrong place")
	}
}
