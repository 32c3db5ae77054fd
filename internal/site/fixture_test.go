package site

import (
	"crypto/sha256"
	"encoding/hex"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// corePath is where the small site has its largest file.
const corePath = "/core.0123456789.wasm"

// small is a site with one file of each kind: the page, one found by its name, one
// with a hash in its name and compressed forms, and one that has no such form.
func small() *Site {
	s := &Site{
		Version: "0123456789ab", Built: "2026-11-25",
		Say: func(id string, values map[string]string) string { return id + " " + values["path"] },
	}
	for _, f := range []*File{
		{Path: "/", Type: "text/html; charset=utf-8", Body: []byte("<!doctype html><title>Small</title>")},
		{Path: "/sw.js", Type: "text/javascript; charset=utf-8", Body: []byte("self.kept = [];"), Brotli: []byte("kept, br")},
		{
			Path: corePath, Type: "application/wasm", Hashed: true, Body: []byte(strings.Repeat("\x00asm ", 20_000)),
			Brotli: []byte(strings.Repeat("brotli", 10_000)), Gzip: []byte(strings.Repeat("gzip", 16_000)),
		},
		{Path: "/icons/a.0123456789.png", Type: "image/png", Hashed: true, Body: []byte("not really a picture")},
	} {
		sum := sha256.Sum256(f.Body)
		f.Sum = hex.EncodeToString(sum[:])
		s.Add(f)
	}
	return s
}

// ask sends one request with headers given as "Name: value".
func ask(s *Site, method, path string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, nil)
	for _, h := range headers {
		name, value, _ := strings.Cut(h, ": ")
		r.Header.Add(name, value)
	}
	w := httptest.NewRecorder()
	Secure(s.Handler()).ServeHTTP(w, r)
	return w
}

// mustRead reads a file.
func mustRead(t *testing.T, path ...string) []byte {
	t.Helper()
	body, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return body
}
