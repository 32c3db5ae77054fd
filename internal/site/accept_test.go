package site

import (
	"net/http"
	"strings"
	"testing"
)

func TestChooseEncoding(t *testing.T) {
	both := &File{Brotli: []byte("b"), Gzip: []byte("g")}
	for _, c := range []struct{ field, want string }{
		{"", ""},
		{"br", "br"},
		{"gzip", "gzip"},
		{"x-gzip", "gzip"},
		{"gzip, deflate, br, zstd", "br"},
		{"GZIP, BR", "br"},
		{"br;q=0.5, gzip;q=0.8", "gzip"},
		{"br; q=0.8 ,gzip ; Q=0.8", "br"},
		{"br;q=0, gzip;q=0", ""},
		{"br;q=0, *", "gzip"},
		{"*", "br"},
		{"*;q=0", ""},
		{"identity;q=0, gzip;q=0.1", "gzip"},
		{"identity, gzip;q=0.5", ""},
		{"identity;q=0.5, br;q=0.5", "br"},
		{"gzip;q=2", ""},
		{"gzip;q=much", ""},
		{"gzip;level=9", ""},
		{"gzip;q=NaN", ""},
		{",,;;,", ""},
	} {
		h := http.Header{"Accept-Encoding": {c.field}}
		if got := chooseEncoding(h, both); got != c.want {
			t.Errorf("%q: %q, want %q", c.field, got, c.want)
		}
	}
	two := http.Header{"Accept-Encoding": {"gzip;q=0.2", "br"}}
	if got := chooseEncoding(two, both); got != "br" {
		t.Errorf("over two fields: %q", got)
	}
	if got := chooseEncoding(two, &File{Gzip: []byte("g")}); got != "gzip" {
		t.Errorf("without brotli: %q", got)
	}
	many := http.Header{"Accept-Encoding": {strings.Repeat("a,b;q=0.5,", 2000) + "gzip"}}
	if got := acceptedWeights(many.Get("Accept-Encoding")); len(got) != 1 || chooseEncoding(many, both) != "gzip" {
		t.Errorf("of thousands it remembers %d and picks %q", len(got), chooseEncoding(many, both))
	}
	if got := chooseEncoding(two, &File{}); got != "" {
		t.Errorf("without any: %q", got)
	}
}
