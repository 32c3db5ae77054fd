package build

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/andybalholm/brotli"

	"tidysump/internal/site"
)

// encoding is one way to compress a body.
type encoding struct {
	token string // as in Accept-Encoding
	ext   string // of the file in the cache
	open  func(io.Writer) (io.WriteCloser, error)
}

// best are the encodings at their best and slowest: it is done once per content.
var best = []encoding{
	{"br", ".br", func(w io.Writer) (io.WriteCloser, error) {
		return brotli.NewWriterLevel(w, brotli.BestCompression), nil
	}},
	{"gzip", ".gz", func(w io.Writer) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, gzip.BestCompression)
	}},
}

// quick is for a site that is built again in a moment.
var quick = []encoding{
	{"gzip", ".gz", func(w io.Writer) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, gzip.BestSpeed)
	}},
}

// compress fills in the compressed forms of every file, from the cache where
// the same content was compressed before.
func (s *Site) compress(encodings []encoding, cache string) error {
	for _, f := range s.Files() {
		if f.Type == "image/png" {
			continue // compressed already
		}
		for _, e := range encodings {
			out, err := e.cached(cache, f)
			if err != nil {
				return fmt.Errorf("%s: %w", f.Path, err)
			}
			if len(out) < len(f.Body) {
				*f.Form(e.token) = out
			}
		}
	}
	return nil
}

// cached returns the compressed body of a file and keeps it for the next build.
func (e encoding) cached(cache string, f *site.File) ([]byte, error) {
	if cache == "" {
		return e.apply(f.Body)
	}
	kept := filepath.Join(cache, f.Sum+e.ext)
	if out, err := os.ReadFile(kept); err == nil {
		return out, nil
	}
	out, err := e.apply(f.Body)
	if err != nil {
		return nil, err
	}
	return out, keep(kept, out)
}

func (e encoding) apply(body []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := e.open(&b)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(body); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
