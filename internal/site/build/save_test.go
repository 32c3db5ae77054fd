package build

import (
	"path/filepath"
	"testing"

	"tidysump/internal/site"
)

// What is saved is the site as it was built, and nothing else is left beside it.
func TestSave(t *testing.T) {
	built := mustBuild(t, nil)
	path := filepath.Join(t.TempDir(), "new", "site.zip")
	for range 2 { // the second takes the first one's place
		if err := built.Save(path); err != nil {
			t.Fatal(err)
		}
	}
	read, err := site.Read(mustRead(t, path))
	if err != nil {
		t.Fatal(err)
	}
	if read.Version != built.Version || len(read.Files()) != len(built.Files()) {
		t.Errorf("read %s with %d files, built %s with %d", read.Version, len(read.Files()), built.Version, len(built.Files()))
	}
	for _, f := range built.Files() {
		if got := read.File(f.Path); got == nil || string(got.Body) != string(f.Body) || string(got.Brotli) != string(f.Brotli) {
			t.Errorf("%s is another one", f.Path)
		}
	}
	if left, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*")); err != nil || len(left) != 1 {
		t.Errorf("beside the archive: %v (%v)", left, err)
	}
}
