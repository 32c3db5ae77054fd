package site

import (
	"fmt"
	"io"
	"mime"
	"mime/multipart"
	"net/http"
	"strconv"
	"strings"
	"testing"
)

// A range counts in the bytes of the form that is sent, and only that form's tag
// makes it good for If-Range.
func TestHandler_Ranges(t *testing.T) {
	s := small()
	for _, encoding := range []string{"", "br", "gzip"} {
		form := string(*s.File(corePath).Form(encoding))
		n := len(form)
		accept := "Accept-Encoding: " + encoding
		tag := ask(s, "HEAD", corePath, accept).Header().Get("ETag")
		other := ask(s, "HEAD", corePath, "Accept-Encoding: "+map[string]string{"": "br", "br": "gzip", "gzip": ""}[encoding]).Header().Get("ETag")
		for _, c := range []struct {
			name, asked, condition string
			status, from, to       int // to is the first byte left out
		}{
			{"the first", "bytes=0-9", "", 206, 0, 10},
			{"some", "bytes=100-199", "", 206, 100, 200},
			{"the rest", "bytes=50000-", "", 206, 50000, n},
			{"the last", "bytes=-10", "", 206, n - 10, n},
			{"past the end", "bytes=50000-9999999", "", 206, 50000, n},
			{"all, resumed", "bytes=0-", "If-Range: " + tag, 206, 0, n},
			{"resumed", "bytes=50000-", "If-Range: " + tag, 206, 50000, n},
			{"resumed in another form", "bytes=50000-", "If-Range: " + other, 200, 0, n},
			{"resumed, weak", "bytes=50000-", "If-Range: W/" + tag, 200, 0, n},
			{"of this form", "bytes=0-9", "If-Match: " + tag, 206, 0, 10},
			{"whole, of this form", "", "If-Match: " + tag, 200, 0, n},
			{"of another form", "bytes=0-9", "If-Match: " + other, 412, 0, 0},
			{"whole, of another form", "", "If-Match: " + other, 412, 0, 0},
			{"known", "bytes=0-9", "If-None-Match: " + tag, 304, 0, 0},
			{"known in another form", "bytes=0-9", "If-None-Match: " + other, 206, 0, 10},
		} {
			headers := []string{accept}
			if c.asked != "" {
				headers = append(headers, "Range: "+c.asked)
			}
			if c.condition != "" {
				headers = append(headers, c.condition)
			}
			w := ask(s, "GET", corePath, headers...)
			if w.Code != c.status || w.Body.String() != form[c.from:c.to] {
				t.Errorf("%q, %s: %d with %d bytes, want %d with %d", encoding, c.name, w.Code, w.Body.Len(), c.status, c.to-c.from)
			}
			h := w.Header()
			wantRange := ""
			if c.status == http.StatusPartialContent {
				wantRange = fmt.Sprintf("bytes %d-%d/%d", c.from, c.to-1, n)
			}
			if got := h.Get("Content-Range"); got != wantRange {
				t.Errorf("%q, %s: Content-Range %q, want %q", encoding, c.name, got, wantRange)
			}
			if length := h.Get("Content-Length"); length != "" && length != strconv.Itoa(w.Body.Len()) {
				t.Errorf("%q, %s: Content-Length %s for %d bytes", encoding, c.name, length, w.Body.Len())
			}
			if c.status < 300 && h.Get("Content-Encoding") != encoding {
				t.Errorf("%q, %s: Content-Encoding %q", encoding, c.name, h.Get("Content-Encoding"))
			}
			if h.Get("ETag") != tag || h.Get("Vary") != "Accept-Encoding" || h.Get("X-Content-Type-Options") != "nosniff" {
				t.Errorf("%q, %s: headers %v", encoding, c.name, h)
			}
		}
	}
}

func TestHandler_RangeOutside(t *testing.T) {
	s := small()
	w := ask(s, "GET", corePath, "Accept-Encoding: br", "Range: bytes=60000-")
	if want := "bytes */60000"; w.Code != 416 || w.Header().Get("Content-Range") != want {
		t.Errorf("%d, Content-Range %q, want 416 and %q", w.Code, w.Header().Get("Content-Range"), want)
	}
	for _, header := range []string{"Content-Encoding", "Cache-Control", "ETag"} {
		if got := w.Header().Get(header); got != "" {
			t.Errorf("a refusal has %s: %s", header, got)
		}
	}
}

func TestHandler_TwoRanges(t *testing.T) {
	s := small()
	w := ask(s, "GET", corePath, "Accept-Encoding: gzip", "Range: bytes=0-9,100-119")
	_, parameters, err := mime.ParseMediaType(w.Header().Get("Content-Type"))
	if err != nil || w.Code != 206 {
		t.Fatalf("%d %v", w.Code, err)
	}
	parts := multipart.NewReader(w.Body, parameters["boundary"])
	gzip := string(s.File(corePath).Gzip)
	for _, want := range []string{gzip[:10], gzip[100:120]} {
		part, err := parts.NextPart()
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(part); err != nil || string(got) != want {
			t.Errorf("%q (%v), want %q", got, err, want)
		}
	}
}

// Who asks for very many ranges gets the whole, in one piece.
func TestHandler_ManyRanges(t *testing.T) {
	s := small()
	gzip := string(s.File(corePath).Gzip)
	for many, want := range map[int]int{mostRanges: 206, mostRanges + 1: 200, 3000: 200} {
		asked := "bytes=0-0" + strings.Repeat(",0-0", many-1)
		w := ask(s, "GET", corePath, "Accept-Encoding: gzip", "Range: "+asked)
		if w.Code != want || (want == 200) != (w.Body.String() == gzip) {
			t.Errorf("%d ranges: %d with %d bytes, want %d", many, w.Code, w.Body.Len(), want)
		}
	}
}
