package build

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var hashedName = regexp.MustCompile(`^/.+\.[0-9a-f]{10}\.[a-z]+$`)

func TestBuild_Names(t *testing.T) {
	s := mustBuild(t, nil)
	var byName []string
	for _, f := range s.Files() {
		if f.Hashed != hashedName.MatchString(f.Path) {
			t.Errorf("%s: Hashed = %v", f.Path, f.Hashed)
		}
		if !f.Hashed {
			byName = append(byName, f.Path)
		}
	}
	if want := []string{"/", "/manifest.webmanifest", "/sw.js"}; !slices.Equal(byName, want) {
		t.Errorf("found by name: %v, want %v", byName, want)
	}
	if got := s.File("/manifest.webmanifest").Type; got != "application/manifest+json" {
		t.Errorf("the manifest is of the type %s", got)
	}
}

// A site for those who work on it has one more module, which no other has, and only
// what is compressed in no time.
func TestBuild_Watched(t *testing.T) {
	o := folder(t, map[string]string{"../watch/reload.js": `location.reload();`, "../core/core.wasm": strings.Repeat("\x00asm ", 1000)})
	o.Quick, o.Script = true, filepath.Join(o.Static, "../watch/reload.js")
	watched, err := Build(o)
	if err != nil {
		t.Fatal(err)
	}
	url := watched.URL(scriptName)
	if tag := `<script type="module" src="` + url + `"></script>`; url == "" || !strings.Contains(watched.body(t, "index.html"), tag) {
		t.Errorf("the page doesn't load the module at %q", url)
	}
	if core := watched.File(watched.URL("core.wasm")); core.Brotli != nil || core.Gzip == nil {
		t.Error("the core has another form than gzip")
	}
	if url := mustBuild(t, nil).URL(scriptName); url != "" {
		t.Errorf("any site has the module, at %s", url)
	}
}

// Each part holds the URLs of the parts it may ask for, and of no others.
func TestBuild_Chain(t *testing.T) {
	s := mustBuild(t, nil)
	for _, c := range []struct{ in, url string }{
		{"index.html", s.URL("app/main.js")},
		{"index.html", s.URL("app/main.css")},
		{"index.html", `data-src="` + s.URL("app/rescue-file.js") + `"`},
		{"index.html", `<script defer src="` + s.URL("app/rescue.js") + `">`},
		{"index.html", `rel="preload" as="fetch" crossorigin="anonymous" href="` + s.URL("data/bikes.json") + `"`},
		{"index.html", `<meta name="version" content="` + s.Version + `">`},
		{"index.html", `<meta name="built" content="2026-11-25">`},
		{"index.html", `<html lang="xa" dir="rtl">`},
		{"index.html", `<title>Small & "neat"</title>`}, // as the minifier writes it
		{"app/main.js", `tag:"xa",name:"Small talk",dir:"rtl"`},
		{"manifest.webmanifest", `"lang":"xa"`},
		{"manifest.webmanifest", `"name":"Small \u0026 \"neat\""`},
		{"app/main.js", s.URL("app/core/worker.js")},
		{"app/main.js", s.URL("data/bikes.json")},
		{"app/main.js", s.URL("data/changelog.json")},
		{"app/core/worker.js", s.URL("core.wasm")},
		{"app/core/worker.js", "fromTheCompiler"},
		{"manifest.webmanifest", s.URL("icons/a.png")},
		{"manifest.webmanifest", s.URL("icons/screenshot-a.png")},
		{"sw.js", s.Version},
		{"app/main.js", s.URL("app/screens.css")},
		{"app/main.css", "#123456"},
	} {
		if c.url == "" || !strings.Contains(s.body(t, c.in), c.url) {
			t.Errorf("%s doesn't hold %q: %s", c.in, c.url, s.body(t, c.in))
		}
	}
	// In a script of its own scope, which no page's names meet.
	if body := s.body(t, "app/rescue.js"); !strings.HasPrefix(body, `(()=>{`) {
		t.Errorf("the rescue is not by itself: %s", body)
	}
	if strings.Contains(s.body(t, "app/main.js"), "rescue") {
		t.Error("the page knows of the rescue, which must not hang on it")
	}
	if strings.Contains(s.body(t, "app/main.js"), "wasm") {
		t.Error("the page knows of the core, which is the worker's")
	}
}

// Scripts are minified; what a template says stays as it is written, white space
// too.
func TestBuild_Scripts(t *testing.T) {
	s := mustBuild(t, map[string]string{"app/greet.js": `/** Says. */
		export const greet = (someFiles) => {
			const html = (...given) => console.log('greeting', given, someFiles);
			const ninth = someFiles[9];
			return html` + "`<p>\n\t two   spaces ${ninth} </p>\n`" + `;
		};`})
	body := s.body(t, "app/main.js")
	if !regexp.MustCompile("`<p>\n\t two   spaces \\$\\{[^}]+\\} </p>\n`").MatchString(body) {
		t.Errorf("the template is not as it was: %s", body)
	}
	for _, gone := range []string{"someFiles", "Says", "ninth"} {
		if strings.Contains(body, gone) {
			t.Errorf("not minified, it has %q: %s", gone, body)
		}
	}
}

func TestBuild_Precache(t *testing.T) {
	s := mustBuild(t, nil)
	left := map[string]bool{"/sw.js": true, s.URL("icons/screenshot-a.png"): true}
	for _, f := range s.Files() {
		if slices.Contains(s.Precache(), f.Path) == left[f.Path] {
			t.Errorf("%s: is kept: %v", f.Path, !left[f.Path])
		}
	}
	// The worker compares what it fetches with these, so they are those of the bytes
	// that are served, the version in the page among them.
	found := regexp.MustCompile(`kept\s*=\s*(\[\[.*?\]\])`).FindStringSubmatch(s.body(t, "sw.js"))
	if found == nil {
		t.Fatalf("sw.js doesn't hold the list: %s", s.body(t, "sw.js"))
	}
	var list [][2]string
	if err := json.Unmarshal([]byte(found[1]), &list); err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, entry := range list {
		paths = append(paths, entry[0])
		body := s.File(entry[0]).Body
		if sum := sha256.Sum256(body); entry[1] != hex.EncodeToString(sum[:]) {
			t.Errorf("the sum of %s is %s, and its bytes have %x", entry[0], entry[1], sum)
		}
	}
	if !slices.Equal(paths, s.Precache()) {
		t.Errorf("the list holds %v, want %v", paths, s.Precache())
	}
}

func TestBuild_Version(t *testing.T) {
	base := mustBuild(t, nil).Version
	if len(base) != 12 {
		t.Errorf("version %q is not of 12 digits", base)
	}
	if again := mustBuild(t, nil).Version; again != base {
		t.Errorf("the same files gave %s and %s", base, again)
	}
	for name, body := range map[string]string{
		"app/greet.js":           `export const greet = (files) => console.log('hello', files);`,
		"app/paper.css":          `body { color: #654321; }`,
		"sw.js":                  small["sw.js"] + `self.more = 1;`,
		"../core/core.wasm":      "\x00asm, another",
		"../core/wasm_exec.js":   `globalThis.fromTheCompiler = 2;`,
		"icons/a.png":            "another picture",
		"changelog.json":         `[{"date":"2026-11-26"}]`,
		"icons/screenshot-a.png": "",
	} {
		changes := map[string]string{name: body}
		if body == "" { // a picture of the shop window: only the manifest's name for it counts
			changes["manifest.webmanifest"] = `{"name":"Small","icons":[{"src":"/icons/a.png"}]}`
		}
		if got := mustBuild(t, changes).Version; got == base {
			t.Errorf("another %s gave the same version", name)
		}
	}
}

func TestBuild_Errors(t *testing.T) {
	for name, c := range map[string]struct {
		changes map[string]string
		want    string
	}{
		"no core":           {map[string]string{"../core/core.wasm": ""}, "the core is not built"},
		"no compiler file":  {map[string]string{"../core/wasm_exec.js": ""}, "app/core/worker.js can't be bundled"},
		"broken module":     {map[string]string{"app/greet.js": "export const ="}, "app/greet.js:1"},
		"missing import":    {map[string]string{"app/greet.js": ""}, "app/main.js:1"},
		"missing style":     {map[string]string{"app/paper.css": ""}, "app/main.css:1"},
		"unknown reference": {map[string]string{"index.html": `<head></head><img src="/icons/b.png">`}, "icons/b.png"},
		"no head":           {map[string]string{"index.html": `<p>`}, "</head>"},
		"no sentence":       {map[string]string{"index.html": `<head></head><p>{no.such} {app.name}`}, "index.html: no sentence for {no.such}"},
		"no sentence there": {map[string]string{"manifest.webmanifest": `{"name":"{no.such}"}`}, "manifest.webmanifest: no sentence for {no.such}"},
		"broken manifest":   {map[string]string{"manifest.webmanifest": `{`}, "manifest.webmanifest"},
		"unknown icon":      {map[string]string{"icons/a.png": ""}, `icons: the site has no file "/icons/a.png"`},
		"strange file":      {map[string]string{"icons/a.exe": "x"}, "icons/a.exe"},
		"no list of files":  {map[string]string{"sw.js": `self.version = __VERSION__;`}, "sw.js names __PRECACHE__ 0 times"},
		"empty changelog":   {map[string]string{"changelog.json": `[]`}, "changelog.json has no entry"},
	} {
		_, err := Build(folder(t, c.changes))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	o := folder(t, nil)
	o.Preload = []string{"tyres.json"}
	if _, err := Build(o); err == nil || !strings.Contains(err.Error(), "tyres.json") {
		t.Errorf("unknown preload: %v", err)
	}
	o = folder(t, nil)
	o.WholeCore = false
	if _, err := Build(o); err == nil || !strings.Contains(err.Error(), "-whole-core builds the site without") {
		t.Errorf("a core that can't be slimmed: %v", err)
	}
}

func TestBuild_Cache(t *testing.T) {
	o := folder(t, nil)
	o.Cache = t.TempDir()
	first, err := Build(o)
	if err != nil {
		t.Fatal(err)
	}
	core := first.File(first.URL("core.wasm"))
	kept := o.Cache + "/" + core.Sum + ".br"
	if got := mustRead(t, kept); string(got) != string(core.Brotli) {
		t.Error("the cache holds other bytes than the site")
	}
	if err := os.WriteFile(kept, []byte("mark"), 0o644); err != nil {
		t.Fatal(err)
	}
	second, err := Build(o)
	if err != nil {
		t.Fatal(err)
	}
	if got := second.File(second.URL("core.wasm")).Brotli; string(got) != "mark" {
		t.Errorf("compressed again: %q", got)
	}
}
