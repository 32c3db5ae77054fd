package build

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path"
	"strings"

	"tidysump/internal/site"
)

// mediaTypes are the kinds of files a site may hold; another one stops the build.
var mediaTypes = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// addHashed minifies a file and adds it under a name that holds its hash.
func (s *Site) addHashed(name string, body []byte) error {
	return s.add(name, body, true)
}

// addFixed minifies a file and adds it under its own name: for the files that are
// found by name.
func (s *Site) addFixed(name string, body []byte) error {
	return s.add(name, body, false)
}

func (s *Site) add(name string, body []byte, hashed bool) error {
	ext := path.Ext(name)
	kind, ok := mediaTypes[ext]
	if !ok {
		return fmt.Errorf("%s: a site has no files of this kind", name)
	}
	body, err := minified(kind, body)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	digest := sha256.Sum256(body)
	f := &site.File{Path: "/" + name, Type: kind, Hashed: hashed, Body: body, Sum: hex.EncodeToString(digest[:])}
	switch {
	case hashed:
		f.Path = "/" + strings.TrimSuffix(name, ext) + "." + f.Sum[:10] + ext
	case name == site.IndexName:
		f.Path = "/"
	}
	s.Add(f)
	s.names[name] = f.Path
	return nil
}
