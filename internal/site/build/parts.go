package build

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// parts are the files that a bundle was split into, by their names in the static
// folder.
type parts struct {
	site    *Site
	bodies  map[string]string
	imports map[string][]partImport
	under   []string // way from the entry to the part being added
}

// partImport is an import of one part by another.
type partImport struct {
	Path string `json:"path"`
	Kind string `json:"kind"` // "dynamic-import" when it is asked for later
}

// addParts adds the parts of the page, those first that others import: the name
// of a part holds a hash of its bytes, and stands in the bytes of its importers.
func (s *Site) addParts(o Options, result api.BuildResult) error {
	dir, err := filepath.Abs(o.Static)
	if err != nil {
		return err
	}
	var meta struct {
		Outputs map[string]struct {
			Imports []partImport `json:"imports"`
		} `json:"outputs"`
	}
	if err := json.Unmarshal([]byte(result.Metafile), &meta); err != nil {
		return err
	}
	p := parts{s, map[string]string{}, map[string][]partImport{}, nil}
	for _, f := range result.OutputFiles {
		name, err := filepath.Rel(dir, f.Path)
		if err != nil {
			return err
		}
		name = filepath.ToSlash(name)
		p.bodies[name], p.imports[name] = string(f.Contents), meta.Outputs[name].Imports
	}
	return p.add(pageEntry)
}

func (p *parts) add(name string) error {
	body, ok := p.bodies[name]
	if _, done := p.site.names[name]; done || !ok {
		return nil
	}
	if slices.Contains(p.under, name) {
		return fmt.Errorf("parts import each other in a circle: %s", strings.Join(append(p.under, name), ", "))
	}
	p.under = append(p.under, name)
	for _, i := range p.imports[name] {
		if err := p.add(i.Path); err != nil {
			return err
		}
		if url, ok := p.site.names[i.Path]; ok {
			written := `"./` + filepath.Base(i.Path) + `"`
			if !strings.Contains(body, written) {
				return fmt.Errorf("%s imports %s under another name than %s", name, i.Path, written)
			}
			body = strings.ReplaceAll(body, written, `"`+url+`"`)
			if i.Kind != "dynamic-import" && name == pageEntry {
				p.site.first = append(p.site.first, url)
			}
		}
	}
	p.under = p.under[:len(p.under)-1]
	return p.site.addHashed(name, []byte(body))
}
