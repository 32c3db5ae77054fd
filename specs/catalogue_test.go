package specs_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"tidysump/specs"
)

// Ids that the program puts together from a stem and something it has: the
// rest of such an id is not written anywhere as a whole. Plans are checked word
// by word in internal/job.
var stemsOfIDs = []string{"caution.", "device.", "drive.", "figure.", "finding.", "gap.", "layout.", "level.", "lookup.",
	"method.", "mount.", "plan.filter.", "plan.place.", "plan.units.", "poured.", "purpose.", "role.", "seal.", "signal.",
	"stage.", "stance.", "standing.", "state.", "step.", "tool.", "ask.", "settings.", "core.", "change.", "http.", "part.filter-"}

// sourceText joins the program's own sources of those kinds, tests apart.
func sourceText(t *testing.T, endings ...string) string {
	t.Helper()
	var b strings.Builder
	for _, root := range []string{"../internal", "../server", "../static/app", "../static/changelog.json"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(path, "_test.go") {
				return err
			}
			for _, e := range endings {
				if strings.HasSuffix(path, e) {
					text, err := os.ReadFile(path)
					b.Write(text)
					return err
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return b.String()
}

func catalogue(t *testing.T) map[string]string {
	t.Helper()
	var words map[string]string
	if err := json.Unmarshal(specs.WordsEN, &words); err != nil {
		t.Fatal(err)
	}
	return words
}

// Every word of the catalogue is used: by its whole id, or by a stem that the
// sources write and an ending that they write too.
func TestWords_AllUsed(t *testing.T) {
	text := sourceText(t, ".go", ".js", ".json") + "page.no-script" // see TestWords_InTheHTML
	for id := range catalogue(t) {
		base := strings.TrimSuffix(strings.TrimSuffix(id, ".do"), ".why")
		if strings.Contains(text, id) || strings.Contains(text, base) {
			continue
		}
		if !madeFromStem(base, text) {
			t.Errorf("%q is used nowhere", id)
		}
	}
}

// What the page says before it has the catalogue is the catalogue's sentence.
func TestWords_InTheHTML(t *testing.T) {
	page, err := os.ReadFile("../static/index.html")
	if err != nil {
		t.Fatal(err)
	}
	if want := catalogue(t)["page.no-script"]; want == "" || !strings.Contains(string(page), want) {
		t.Errorf("index.html does not say %q", want)
	}
}

func madeFromStem(id, text string) bool {
	for _, stem := range stemsOfIDs {
		rest, ok := strings.CutPrefix(id, stem)
		if !ok {
			continue
		}
		first, _, _ := strings.Cut(rest, ".")
		if strings.Contains(text, `"`+first) || strings.Contains(text, `'`+first) || strings.Contains(text, first+`"`) {
			return true
		}
	}
	return false
}

var (
	pageWord    = regexp.MustCompile(`\bt\('([a-z][a-zA-Z0-9.-]+)'`)
	findingCode = regexp.MustCompile(`(?:Code: |code: |\badd\([a-z.A-Z]*,? ?|fault\(e, |refuse\(kind, )["']([a-z-]+)["']`)
)

// Every word that the page asks for exists, and every finding of the program
// says what is wrong and what to do.
func TestWords_AllThere(t *testing.T) {
	words := catalogue(t)
	for _, m := range pageWord.FindAllStringSubmatch(sourceText(t, ".js"), -1) {
		if _, ok := words[m[1]]; !ok {
			t.Errorf("the page asks for %q, which is not in the catalogue", m[1])
		}
	}
	codes := findingCode.FindAllStringSubmatch(sourceText(t, ".go", ".js"), -1)
	if len(codes) < 30 {
		t.Fatalf("only %d finding codes seen: the pattern no longer fits the sources", len(codes))
	}
	for _, m := range codes {
		for _, id := range []string{"finding." + m[1], "finding." + m[1] + ".do"} {
			if _, ok := words[id]; !ok {
				t.Errorf("%q is not in the catalogue", id)
			}
		}
	}
}
