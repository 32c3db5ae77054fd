package site

import (
	"encoding/json"
	"os"
	"path/filepath"
)

// Export writes the site into a folder for a host that serves files: each file,
// its compressed forms beside it (.br, .gz), and headers.json, which says which
// headers to send with which path. What else lies in the folder stays.
func (s *Site) Export(dir string) error {
	headers := map[string]map[string]string{}
	for _, f := range s.Files() {
		headers[f.Path] = f.exportHeaders()
		for name, body := range f.forms() {
			if err := write(filepath.Join(dir, name), body); err != nil {
				return err
			}
		}
	}
	list, err := json.MarshalIndent(headers, "", "  ")
	if err != nil {
		return err
	}
	return write(filepath.Join(dir, "headers.json"), append(list, '\n'))
}

// exportHeaders are all headers of the file in its plain form. ETags are left to the
// host, which knows what it sends.
func (f *File) exportHeaders() map[string]string {
	h := map[string]string{}
	for name := range securityHeaders {
		h[name] = securityHeaders.Get(name)
	}
	h["Content-Type"] = f.Type
	h["Cache-Control"] = f.cacheControl()
	h["Vary"] = "Accept-Encoding"
	return h
}

func write(path string, body []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, body, 0o644)
}
