package build

import (
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

const (
	pageEntry   = "app/main.js"
	rescueEntry = "app/rescue.js"
	rescueFile  = "app/rescue-file.js"
	olderEntry  = "app/older.js"
	workerEntry = "app/core/worker.js"
	styleEntry  = "app/main.css"
	laterStyle  = "app/screens.css"
	wasmExec    = "wasm_exec.js"
)

// addWorker bundles the core worker, which learns the URL of its core.
func (s *Site) addWorker(o Options) error {
	return s.addBundle(o, workerEntry, map[string]any{
		"__FILES__": map[string]string{"core.wasm": s.names["core.wasm"]},
	})
}

// addRescue bundles the script that is there when the page's own can't be had, the module
// that it asks for, and the script that tells browsers that are too old: parts by
// themselves, which share nothing with the others.
func (s *Site) addRescue(o Options) error {
	for _, entry := range []string{rescueFile, rescueEntry, olderEntry} {
		if err := s.addBundle(o, entry, nil); err != nil {
			return err
		}
	}
	return nil
}

// addStyle bundles the style sheet with all that it imports, and that of the
// screens that come after the first.
func (s *Site) addStyle(o Options) error {
	if err := s.addBundle(o, styleEntry, nil); err != nil {
		return err
	}
	return s.addBundle(o, laterStyle, nil)
}

// addPage bundles the page's modules, which learn the URL of every file that a
// page may ask for, and the languages that it can speak. The core is not among them: only the worker knows it. A
// module that is imported when it is needed, import('./screens.js'), becomes a
// part of its own, and what parts share one more.
func (s *Site) addPage(o Options) error {
	files := map[string]string{}
	for name, url := range s.names {
		if !slices.Contains([]string{"core.wasm", styleEntry, rescueEntry, rescueFile, olderEntry}, name) && !strings.HasPrefix(name, "icons/") {
			files[name] = url
		}
	}
	result, err := s.build(o, pageEntry, map[string]any{"__FILES__": files, "__LANGUAGES__": o.Languages}, true)
	if err != nil {
		return err
	}
	return s.addParts(o, result)
}

func (s *Site) addBundle(o Options, entry string, define map[string]any) error {
	out, err := s.bundle(o, entry, define)
	if err != nil {
		return err
	}
	return s.addHashed(entry, out)
}

// bundle joins an entry file with all that it imports and puts the constants in.
func (s *Site) bundle(o Options, entry string, define map[string]any) ([]byte, error) {
	result, err := s.build(o, entry, define, false)
	if err != nil {
		return nil, err
	}
	return result.OutputFiles[0].Contents, nil
}

// build runs the bundler; nothing is written. The page and the core worker are
// modules; the service worker is a classic script, the one kind that every
// browser starts, and so is the rescue, which shall run where modules fail. What tells
// that a browser is too old must run in each.
func (s *Site) build(o Options, entry string, define map[string]any, split bool) (api.BuildResult, error) {
	dir, err := filepath.Abs(o.Static)
	if err != nil {
		return api.BuildResult{}, err
	}
	format := api.FormatESModule
	if entry == swName || entry == rescueEntry || entry == olderEntry {
		format = api.FormatIIFE
	}
	engines, target := oldest, api.DefaultTarget
	if entry == olderEntry {
		engines, target = nil, api.ES5
	}
	script := filepath.Ext(entry) == ".js" // style sheets are minified with the other kinds of files
	constants := map[string]string{}
	for name, value := range define {
		text, err := json.Marshal(value)
		if err != nil {
			return api.BuildResult{}, err
		}
		constants[name] = string(text)
	}
	result := api.Build(api.BuildOptions{
		AbsWorkingDir:     dir,
		EntryPoints:       []string{entry},
		Outbase:           dir,
		Outdir:            dir, // nothing is written; esbuild names its output by it
		ChunkNames:        "app/[name]-[hash]",
		Bundle:            true,
		Splitting:         split,
		Format:            format,
		Engines:           engines,
		Target:            target,
		Conditions:        []string{"module"}, // never "development": its builds are for people who debug lit
		LegalComments:     api.LegalCommentsNone,
		Loader:            map[string]api.Loader{".svg": api.LoaderDataURL},
		Define:            constants,
		MinifyWhitespace:  script,
		MinifyIdentifiers: script,
		MinifySyntax:      script,
		Metafile:          true,
		Plugins:           []api.Plugin{wasmExecPlugin(filepath.Join(filepath.Dir(o.Core), wasmExec))},
	})
	if len(result.Errors) > 0 {
		return result, bundleError(entry, result.Errors)
	}
	return result, s.noteInputs(result.Metafile)
}

// wasmExecPlugin resolves `import 'wasm_exec.js'` to the copy that belongs to
// the compiler which made the core: another one may not fit it.
func wasmExecPlugin(path string) api.Plugin {
	return api.Plugin{Name: "wasm_exec", Setup: func(b api.PluginBuild) {
		b.OnResolve(api.OnResolveOptions{Filter: `^wasm_exec\.js$`}, func(api.OnResolveArgs) (api.OnResolveResult, error) {
			abs, err := filepath.Abs(path)
			return api.OnResolveResult{Path: abs}, err
		})
	}}
}

// noteInputs remembers which files of the static folder are in use.
func (s *Site) noteInputs(metafile string) error {
	var meta struct {
		Inputs map[string]struct{} `json:"inputs"`
	}
	if err := json.Unmarshal([]byte(metafile), &meta); err != nil {
		return err
	}
	for name := range meta.Inputs {
		if !slices.Contains(s.inputs, name) {
			s.inputs = append(s.inputs, name)
		}
	}
	return nil
}

func bundleError(entry string, messages []api.Message) error {
	lines := []error{fmt.Errorf("%s can't be bundled", entry)}
	for _, m := range messages {
		where := ""
		if m.Location != nil {
			where = fmt.Sprintf("%s:%d: ", m.Location.File, m.Location.Line)
		}
		lines = append(lines, errors.New(where+m.Text))
	}
	return errors.Join(lines...)
}
