package build

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"tidysump/internal/site"
	"tidysump/internal/site/slim"
)

// Options say what a site is built from.
type Options struct {
	// Static is the folder with index.html, sw.js, app/, icons/ and
	// node_modules/.
	Static string
	// Core is the path of core.wasm; wasm_exec.js of the compiler that made it
	// lies beside it.
	Core string
	// WholeCore leaves the core all that only traces of crashes need, 75 kB compressed: for a core
	// that package slim can't slim.
	WholeCore bool
	// Data are files made elsewhere, by name ("bikes.json"); the page finds
	// their URLs as __FILES__["data/bikes.json"].
	Data map[string][]byte
	// Fixed are files made elsewhere that the world finds under their own names
	// at the root ("card.schema.json").
	Fixed map[string][]byte
	// Preload names the data files that the first screen can't do without.
	Preload []string
	// Languages are those that the page can speak, the default first; the page
	// finds them as __LANGUAGES__. Its HTML and its manifest are in the default.
	Languages []Language
	// Sentences are the default language's, by id: index.html and the manifest
	// say them where {id} stands.
	Sentences map[string]string
	// Cache is a folder that keeps compressed bytes from one build to the next;
	// empty for none.
	Cache string
	// Quick compresses little: for a site that is built again in a moment.
	Quick bool
	// Script is the path of one more module that the page loads, for those who work
	// on it; empty for none.
	Script string
	// Built is the date shown beside the version, as YYYY-MM-DD; empty for the
	// date of the newest entry in changelog.json.
	Built string
}

// Language is a language of the page.
type Language struct {
	Tag  string `json:"tag"`  // BCP 47
	Name string `json:"name"` // in the language itself
	Dir  string `json:"dir"`  // in which it is written: "ltr" or "rtl"
}

// Site is a site with what is known of how it was built.
type Site struct {
	site.Site

	names  map[string]string // name in the static folder -> URL path
	inputs []string          // what went into bundles, relative to the static folder
	first  []string          // URL paths of the parts that the page's entry can't do without
}

// Build makes the site. It fails on the first thing that is missing or does not
// parse, and says which file it was.
func Build(o Options) (*Site, error) {
	s := &Site{Site: site.Site{Built: o.Built}, names: map[string]string{}}
	for _, step := range []func(Options) error{
		s.addCore, s.addData, s.addChangelog, s.addIcons,
		s.addWorker, s.addStyle, s.addRescue, s.addPage, s.addScript, s.addManifest, s.addIndex, s.addServiceWorker,
	} {
		if err := step(o); err != nil {
			return nil, err
		}
	}
	if o.Quick {
		return s, s.compress(quick, "")
	}
	return s, s.compress(best, o.Cache)
}

// First returns the URL paths of the parts that the page's entry imports at once.
func (s *Site) First() []string { return s.first }

// URL returns the path under which a file of the static folder is served, or ""
// if the site has no such file: URL("app/main.js") = "/app/main.0a1b2c3d4e.js".
func (s *Site) URL(name string) string { return s.names[name] }

// Sources returns the names of all files that the site was made from, relative to
// the static folder.
func (s *Site) Sources() []string {
	list := slices.Clone(s.inputs)
	for name := range s.names {
		list = append(list, name)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// addCore takes in the WebAssembly program, without its functions' names unless
// it is to stay whole.
func (s *Site) addCore(o Options) error {
	body, err := os.ReadFile(o.Core)
	if err != nil {
		return fmt.Errorf("the core is not built: %w", err)
	}
	if !o.WholeCore {
		if body, err = slim.Program(body); err != nil {
			return fmt.Errorf("the core can't be slimmed (-whole-core builds the site without): %w", err)
		}
	}
	return s.addHashed("core.wasm", body)
}

// addData takes in the files made elsewhere.
func (s *Site) addData(o Options) error {
	for name, body := range o.Data {
		if err := s.addHashed("data/"+name, body); err != nil {
			return err
		}
	}
	for name, body := range o.Fixed {
		if err := s.addFixed(name, body); err != nil {
			return err
		}
	}
	return nil
}

// addScript takes in the module that only those who work on the page have.
func (s *Site) addScript(o Options) error {
	if o.Script == "" {
		return nil
	}
	body, err := os.ReadFile(o.Script)
	if err != nil {
		return err
	}
	return s.addHashed(scriptName, body)
}

// addIcons takes in the icons and screenshots.
func (s *Site) addIcons(o Options) error {
	entries, err := os.ReadDir(filepath.Join(o.Static, "icons"))
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := "icons/" + e.Name()
		body, err := os.ReadFile(filepath.Join(o.Static, name))
		if err != nil {
			return err
		}
		if err := s.addHashed(name, body); err != nil {
			return err
		}
	}
	return nil
}
