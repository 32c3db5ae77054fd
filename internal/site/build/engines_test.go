package build

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/evanw/esbuild/pkg/api"
)

// What a browser that is too old is told, and what is promised beforehand, names the
// versions that the page is written for.
func TestOldest_Told(t *testing.T) {
	names := map[api.EngineName]string{api.EngineIOS: "iOS", api.EngineFirefox: "Firefox", api.EngineChrome: "Chrome"}
	files, err := filepath.Glob("../../../specs/words/*/site.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no words: %v, %v", files, err)
	}
	for _, file := range append(files, "../../../README.md") {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range oldest {
			if told := names[e.Name] + " " + e.Version; names[e.Name] == "" || !strings.Contains(string(text), told) {
				t.Errorf("%s does not name %q", file, told)
			}
		}
	}
}
