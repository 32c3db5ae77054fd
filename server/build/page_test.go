package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/site"
	"tidysump/internal/site/build"
	"tidysump/specs"
)

// page builds the real page.
func page(t *testing.T) *build.Site {
	t.Helper()
	s, err := sources{static: "../../static", core: coreFiles(t), cache: "../../build/compressed"}.site()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sent is how many bytes of a file go over the line to a browser of today.
func sent(f *site.File) int {
	if f.Brotli != nil {
		return len(f.Brotli)
	}
	return len(f.Body)
}

func TestPage_Budget(t *testing.T) {
	s := page(t)
	first := []string{"/", s.URL("app/main.css"), s.URL("app/rescue.js"), s.URL("app/older.js"), s.URL("app/main.js")}
	first = append(first, s.First()...)
	for _, name := range firstScreen(specs.Words()[0].Tag) {
		first = append(first, s.URL("data/"+name))
	}
	budgets := []struct {
		name  string
		bytes int // brotli; 1 kB = 1000 B
		paths []string
	}{
		{"first paint", 20_000, first},
		{"core", 1_440_000, []string{s.URL("core.wasm")}},
		{"all that is kept", 1_714_000, s.Precache()},
	}
	for _, b := range budgets {
		total := 0
		for _, f := range s.Files() {
			if slices.Contains(b.paths, f.Path) {
				total += sent(f)
			}
		}
		t.Logf("%s: %d of %d bytes", b.name, total, b.bytes)
		if total == 0 || total > b.bytes {
			t.Errorf("%s weighs %d bytes, budget %d", b.name, total, b.bytes)
		}
	}
}

// All that the policy forbids is missing from the page, so that nothing is lost
// to it in silence.
func TestPage_NothingInline(t *testing.T) {
	inline := regexp.MustCompile(`(?i)<style|\sstyle=|\son[a-z]+=|javascript:|<script(>|\s[^>]*>[^<])|<base|<form[^>]+action`)
	outside := regexp.MustCompile(`(href|src)="(https?:)?//`)
	for _, f := range page(t).Files() {
		if f.Path != "/" {
			continue
		}
		for _, forbidden := range []*regexp.Regexp{inline, outside} {
			if found := forbidden.Find(f.Body); found != nil {
				t.Errorf("index.html has %q", found)
			}
		}
	}
}

// Every file of the static folder is part of the site, went into a bundle of it,
// or is named here.
func TestPage_NoFileLeftOver(t *testing.T) {
	s := page(t)
	left := []string{"eslint.config.js", "package.json", "package-lock.json", ".npmrc", ".prettierrc", ".prettierignore", "tsconfig.json", "tsconfig.ground.json", "tsconfig.worker.json", "style/README.md"}
	used := s.Sources()
	list, err := exec.Command("git", "ls-files", "--cached", "--others", "--exclude-standard", "../../static").Output()
	if err != nil {
		t.Skip("not a git work tree")
	}
	for path := range strings.Lines(string(list)) {
		name := strings.TrimPrefix(strings.TrimSpace(path), "../../static/")
		test := strings.HasPrefix(name, "test/") || strings.HasSuffix(name, ".test.js")
		switch shipped := slices.Contains(used, name); {
		case test && shipped:
			t.Errorf("static/%s is a test, and part of the site", name)
		case !test && !shipped && !slices.Contains(left, name) && !strings.HasSuffix(name, ".d.ts"):
			t.Errorf("static/%s is in no part of the site", name)
		}
	}
}

// The core must not link what costs much: measured, fmt alone is 97 kB and embed
// 33 kB after compression; DEVELOPERS.md has the table.
func TestCore_Dependencies(t *testing.T) {
	list := exec.Command("go", "list", "-deps", "../../wasm")
	list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	deps := strings.Fields(string(out))
	if !slices.Contains(deps, "tidysump/internal/core") {
		t.Fatalf("not the core's dependencies: %v", deps)
	}
	for _, heavy := range []string{
		"fmt", "encoding/json", "reflect", "regexp", "time", "text/template", "html/template",
		"embed", "net", "net/http", "os", "io/fs", "syscall/js",
	} {
		if slices.Contains(deps, heavy) {
			t.Errorf("the core links %s", heavy)
		}
	}
}

// The glue that `make` put beside the core is the one of the compiler in use.
func TestCore_Glue(t *testing.T) {
	body, err := os.ReadFile(filepath.Join(filepath.Dir(coreFiles(t)), "wasm_exec.js"))
	if err != nil || !bytes.Equal(body, compilersFile(t)) {
		t.Errorf("build/wasm_exec.js is another than the compiler's (%v): make core", err)
	}
}
