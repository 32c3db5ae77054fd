package site

import (
	"archive/zip"
	"bytes"
	"reflect"
	"strings"
	"testing"
)

func archived(t *testing.T, s *Site) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := s.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestArchive_RoundTrip(t *testing.T) {
	want := small()
	archive := archived(t, want)
	got, err := Read(archive)
	if err != nil {
		t.Fatal(err)
	}
	if got.Version != want.Version || got.Built != want.Built || !reflect.DeepEqual(got.Files(), want.Files()) {
		t.Errorf("read back: %v, want %v", got, want)
	}
	if again := archived(t, got); !bytes.Equal(again, archive) {
		t.Error("the same site gave another archive")
	}
	core := got.File(corePath)
	at := bytes.Index(archive, core.Brotli)
	if at < 0 || &archive[at] != &core.Brotli[0] {
		t.Error("a body is a copy and no part of the archive")
	}
}

func TestArchive_Errors(t *testing.T) {
	whole := archived(t, small())
	pack := func(name string, method uint16, body string) []byte {
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: method})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(body)); err != nil {
			t.Fatal(err)
		}
		if err := z.Close(); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	for name, c := range map[string]struct {
		archive []byte
		want    string
	}{
		"nothing":     {nil, "zip"},
		"cut short":   {whole[:len(whole)-100], "zip"},
		"no contents": {pack("other.json", zip.Store, "{}"), "site.json"},
		"compressed":  {pack("site.json", zip.Deflate, "{}"), "site.json is not stored as it is"},
		"no such file": {
			pack("site.json", zip.Store, `{"files":[{"path":"/a.js"}]}`), "the archive has no a.js",
		},
	} {
		if _, err := Read(c.archive); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
