package build

import (
	"maps"
	"os"
	"path/filepath"
	"testing"
)

// small is a static folder with one file of each kind.
var small = map[string]string{
	"index.html": `<!doctype html><html lang="{lang}" dir="{dir}"><head><title>{app.name}</title>
		<link rel="stylesheet" href="/app/main.css"><link rel="manifest" href="/manifest.webmanifest">
		<script defer src="/app/rescue.js"></script><script defer src="/app/older.js"></script><script type="module" src="/app/main.js"></script></head><body><a data-src="/app/rescue-file.js" href="#top">Top</a></body></html>`,
	"app/main.js":                  `import { greet } from './greet.js'; greet(__FILES__, __LANGUAGES__);`,
	"app/greet.js":                 `export const greet = (files) => console.log('greeting', files);`,
	"app/rescue.js":                `const rescued = 1; document.title = rescued;`,
	"app/older.js":                 `if (!Object.hasOwn) { document.title = 'old'; }`,
	"app/rescue-file.js":           `export const save = () => 'saved';`,
	"app/core/worker.js":           `import 'wasm_exec.js'; fetch(__FILES__['core.wasm']);`,
	"app/main.css":                 `@import './paper.css';`,
	"app/screens.css":              `.later { top: 0 }`,
	"app/paper.css":                `body { color: #123456; }`,
	"sw.js":                        `self.kept = __PRECACHE__; self.version = __VERSION__;`,
	"manifest.webmanifest":         `{"name":"{app.name}","lang":"{lang}","dir":"{dir}","icons":[{"src":"/icons/a.png"}],"screenshots":[{"src":"icons/screenshot-a.png"}]}`,
	"changelog.json":               `[{"date":"2026-11-25"},{"date":"2026-10-01"}]`,
	"icons/a.png":                  "not really a picture",
	"icons/screenshot-a.png":       "nor is this",
	"../core/core.wasm":            "\x00asm and so on and so on and so on and so on and so on",
	"../core/wasm_exec.js":         `globalThis.fromTheCompiler = true;`,
	"node_modules/unused/index.js": `throw 'never';`,
}

// folder writes the small site with changes ("" takes a file away) and returns
// options that build it.
func folder(t *testing.T, changes map[string]string) Options {
	t.Helper()
	files := maps.Clone(small)
	maps.Copy(files, changes)
	dir := filepath.Join(t.TempDir(), "static")
	for name, body := range files {
		if body == "" {
			continue
		}
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(body), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return Options{
		Static: dir, Core: filepath.Join(dir, "../core/core.wasm"), WholeCore: true,
		Data: map[string][]byte{"bikes.json": []byte(`[ "a bike" ]`)}, Preload: []string{"bikes.json"},
		Languages: []Language{{"xa", "Small talk", "rtl"}, {"ab", "Other", "ltr"}}, Sentences: map[string]string{"app.name": `Small & "neat"`},
	}
}

// mustBuild builds the small site with changes.
func mustBuild(t *testing.T, changes map[string]string) *Site {
	t.Helper()
	s, err := Build(folder(t, changes))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// body returns what the site has for a file of the static folder.
func (s *Site) body(t *testing.T, name string) string {
	t.Helper()
	f := s.File(s.names[name])
	if f == nil {
		t.Fatalf("the site has no %s", name)
	}
	return string(f.Body)
}

// mustRead reads a file.
func mustRead(t *testing.T, path ...string) []byte {
	t.Helper()
	body, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return body
}
