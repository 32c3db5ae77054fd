package specs_test

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"tidysump/internal/quantity"
)

// notSpoken are texts of three words and more that nobody reads on the page:
// messages of errors that are caught or that only a developer meets. A NUL
// stands for what a template fills in.
var notSpoken = map[string]bool{
	"everything was erased":              true, // store/job.js: the page loads again
	"no core to work jobs out":           true, // store/survey.js: reported as restore.unanswered, csv.failed
	"not a script of this version: \x00": true, // site/trusted.js: an attack, or a fault of the build
}

var (
	markup   = regexp.MustCompile(`(?s)<!--.*?-->|<[^>]*>`)
	threeUp  = regexp.MustCompile(`\pL[\pL']+[,;:]? \pL[\pL']*[,;:]? \pL`)
	anyWord  = regexp.MustCompile(`\pL{2,}`)
	cssOrURL = regexp.MustCompile(`^[a-z-]+: |^\(`)
)

// No sentence stands in the page's modules: they hold ids of the catalogue. In
// templates no word at all stands between the tags.
func TestSentences_NoneInThePage(t *testing.T) {
	seen := map[string]bool{}
	for _, path := range filesOf(t, ".js", "static/app") {
		for _, s := range readScript(t, readText(t, path)).texts {
			seen[s.text] = true
			if notSpoken[s.text] || cssOrURL.MatchString(s.text) {
				continue
			}
			if s.tag == "html" {
				if word := anyWord.FindString(markup.ReplaceAllString(s.text, " ")); word != "" {
					t.Errorf("%s: %q stands in a template", path, word)
				}
			} else if threeUp.MatchString(s.text) {
				t.Errorf("%s: the sentence %q; if nobody reads it, add it to notSpoken", path, s.text)
			}
		}
	}
	for text := range notSpoken {
		if !seen[text] {
			t.Errorf("%q is no longer there: take it out of notSpoken", text)
		}
	}
}

// coreFolders are the folders of this program that the core is made of.
func coreFolders(t *testing.T) []string {
	t.Helper()
	list := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}", "../wasm")
	list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	var folders []string
	for path := range strings.FieldsSeq(string(out)) {
		if folder, own := strings.CutPrefix(path, "tidysump/"); own {
			folders = append(folders, folder)
		}
	}
	if len(folders) < 10 {
		t.Fatalf("the core is made of %v", folders)
	}
	return folders
}

// No sentence stands in what the core is made of.
func TestSentences_NoneInTheCore(t *testing.T) {
	for _, text := range literals(goSources(t, coreFolders(t)...)) {
		if _, terms, _ := strings.Cut(text, "\t"); strings.HasSuffix(text, "\n") && terms != "" {
			continue // a row of the terms of the trade
		}
		if _, isUnit := quantity.Find(text); !isUnit && threeUp.MatchString(text) {
			t.Errorf("the sentence %q", text)
		}
	}
}

// Every sentence can be drawn: placeholders are whole, and nothing is markup.
func TestSentences_OfTheCatalogue(t *testing.T) {
	brace := regexp.MustCompile(`\{[a-z]+\}`)
	for id, sentence := range catalogue(t) {
		if rest := brace.ReplaceAllString(sentence, ""); strings.ContainsAny(rest, "{}<>&") {
			t.Errorf("%q: %q", id, sentence)
		}
		if strings.TrimSpace(sentence) != sentence || sentence == "" || strings.Contains(sentence, "  ") {
			t.Errorf("%q: blanks in %q", id, sentence)
		}
	}
}
