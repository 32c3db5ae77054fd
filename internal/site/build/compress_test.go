package build

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

// Each compressed form unpacks to the body, and a form that saves nothing is left
// out.
func TestBuild_Forms(t *testing.T) {
	s := mustBuild(t, map[string]string{"../core/core.wasm": strings.Repeat("\x00asm ", 1000)})
	core := s.File(s.URL("core.wasm"))
	unzip, err := gzip.NewReader(bytes.NewReader(core.Gzip))
	if err != nil {
		t.Fatal(err)
	}
	for name, r := range map[string]io.Reader{"br": brotli.NewReader(bytes.NewReader(core.Brotli)), "gzip": unzip} {
		if body, err := io.ReadAll(r); err != nil || !bytes.Equal(body, core.Body) {
			t.Errorf("%s: another body (%v)", name, err)
		}
		if packed := len(*core.Form(name)); packed >= len(core.Body) {
			t.Errorf("%s: %d bytes of %d", name, packed, len(core.Body))
		}
	}
	if icon := s.File(s.URL("icons/a.png")); icon.Brotli != nil || icon.Gzip != nil {
		t.Error("a picture is compressed twice")
	}
}
