package site

import (
	"iter"
	"strings"
)

// IndexName is the name of the page's own file, which is served as "/".
const IndexName = "index.html"

// File is one file of the site in every form it is sent in.
type File struct {
	// Path is the URL path; "/" is the page itself.
	Path string `json:"path"`
	// Type is the media type, with charset where it is text.
	Type string `json:"type"`
	// Hashed says that the path holds a hash of the body, so that a copy of it
	// never grows old.
	Hashed bool `json:"hashed,omitempty"`
	// Sum is the SHA-256 of Body, 64 hex digits.
	Sum string `json:"sum"`
	// Body is the file as it is; Brotli and Gzip are nil where compressing it
	// saves nothing.
	Body   []byte `json:"-"`
	Brotli []byte `json:"-"`
	Gzip   []byte `json:"-"`
}

// encoding is one form beside the body as it is.
type encoding struct {
	token string // as in Accept-Encoding
	ext   string // of the file that holds it
}

var encodings = []encoding{{"br", ".br"}, {"gzip", ".gz"}}

// Form returns the place of the body in an encoding, "br" or "gzip"; "" is the
// body as it is.
func (f *File) Form(token string) *[]byte {
	switch token {
	case "br":
		return &f.Brotli
	case "gzip":
		return &f.Gzip
	}
	return &f.Body
}

// name is the name of the file in a folder or an archive.
func (f *File) name() string {
	if f.Path == "/" {
		return IndexName
	}
	return strings.TrimPrefix(f.Path, "/")
}

// forms gives each form that the file has, by name: the body as it is first.
func (f *File) forms() iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		if !yield(f.name(), f.Body) {
			return
		}
		for _, e := range encodings {
			if body := *f.Form(e.token); body != nil && !yield(f.name()+e.ext, body) {
				return
			}
		}
	}
}
