package specs_test

import (
	"path"
	"strings"
	"testing"

	"tidysump/specs"
)

// firstPart lists the modules that the first screen is made of: all that main.js
// imports before it fetches the rest.
func firstPart(t *testing.T) map[string]string {
	t.Helper()
	modules := map[string]string{}
	var add func(file string)
	add = func(file string) {
		if modules[file] != "" || file == "../static/app/site/files.js" { // made by the build
			return
		}
		modules[file] = readText(t, file)
		for _, module := range readScript(t, modules[file]).imports {
			if strings.HasPrefix(module, ".") { // no package
				add(path.Join(path.Dir(file), module))
			}
		}
	}
	add("../static/app/main.js")
	return modules
}

// The first part of the catalogue has just what the first screen says, which
// doesn't wait for more.
func TestFirstWords_AreTheFirstScreens(t *testing.T) {
	first := specs.Words()[0].Part(specs.FirstPart)
	said := map[string]bool{}
	for file, text := range firstPart(t) {
		for _, s := range readScript(t, text).texts {
			said[s.text] = true
			if _, here := first[s.text]; !here && catalogue(t)[s.text] != "" && !strings.HasPrefix(s.text, "change.") {
				t.Errorf("%s says %q, which comes with a later part", file, s.text)
			}
		}
	}
	for id := range first {
		if !said[id] && !strings.HasPrefix(id, "layout.") && !strings.HasPrefix(id, "apart.") && !strings.HasPrefix(id, "core.") && !strings.HasPrefix(id, "nav.") {
			t.Errorf("%q is in the first part, and the first screen doesn't say it", id)
		}
	}
}
