package site

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

func TestExport(t *testing.T) {
	s, dir := small(), t.TempDir()
	if err := s.Export(dir); err != nil {
		t.Fatal(err)
	}
	var headers map[string]map[string]string
	if err := json.Unmarshal(mustRead(t, dir, "headers.json"), &headers); err != nil {
		t.Fatal(err)
	}
	for _, f := range s.Files() {
		name := f.Path
		if name == "/" {
			name = "index.html"
		}
		if got := mustRead(t, dir, name); string(got) != string(f.Body) {
			t.Errorf("%s: other bytes than served", name)
		}
		if f.Brotli != nil && string(mustRead(t, dir, name+".br")) != string(f.Brotli) {
			t.Errorf("%s.br: other bytes than served", name)
		}
		if _, err := os.Stat(filepath.Join(dir, name+".gz")); (err == nil) != (f.Gzip != nil) {
			t.Errorf("%s.gz is there: %v, in the site: %v", name, err == nil, f.Gzip != nil)
		}
		served := ask(s, "GET", f.Path).Header()
		for header, value := range headers[f.Path] {
			if got := served.Get(header); got != value {
				t.Errorf("%s: %s is %q in headers.json, served %q", f.Path, header, value, got)
			}
		}
	}
}
