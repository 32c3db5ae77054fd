package site

import (
	"slices"
	"strings"
)

// Site is a built page: every file with its bytes, ready to be served.
type Site struct {
	// Version is the first 12 hex digits of a hash over the names and bytes of
	// all that the service worker keeps.
	Version string
	// Built is the date shown beside the version, as YYYY-MM-DD.
	Built string
	// Say renders a sentence of the word catalogue: "http.not-found" {path} and
	// "http.method" {path, method}. Handler needs it.
	Say func(id string, values map[string]string) string

	files map[string]*File // by URL path
}

// Add takes in a file, in place of one that had the same path.
func (s *Site) Add(f *File) {
	if s.files == nil {
		s.files = map[string]*File{}
	}
	s.files[f.Path] = f
}

// File returns the file under a URL path, nil if the site has none.
func (s *Site) File(path string) *File { return s.files[path] }

// Files returns every file of the site, ordered by path.
func (s *Site) Files() []*File {
	list := make([]*File, 0, len(s.files))
	for _, f := range s.files {
		list = append(list, f)
	}
	slices.SortFunc(list, func(a, b *File) int { return strings.Compare(a.Path, b.Path) })
	return list
}
