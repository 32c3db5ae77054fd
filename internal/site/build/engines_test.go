package build

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What a browser that is too old is told, and what is promised beforehand, names the
// versions that the page is written for.
func TestOldest_Told(t *testing.T) {
	if told := Oldest(); len(told) != len(oldest) || told[""] != "" {
		t.Fatalf("a browser has no name that people are told: %v", told)
	}
	files, err := filepath.Glob("../../../specs/words/*/site.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no words: %v, %v", files, err)
	}
	for _, file := range append(files, "../../../README.md") {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for name, version := range Oldest() {
			if told := name + " " + version; !strings.Contains(string(text), told) {
				t.Errorf("%s does not name %q", file, told)
			}
		}
	}
}
