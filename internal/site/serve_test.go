package site

import (
	"bytes"
	"crypto/tls"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
)

func TestHandler_Encodings(t *testing.T) {
	s := small()
	core := s.File(corePath)
	tags := map[string]string{}
	for _, encoding := range []string{"", "br", "gzip"} {
		w := ask(s, "GET", corePath, "Accept-Encoding: "+encoding)
		if got := w.Header().Get("Content-Encoding"); got != encoding {
			t.Errorf("asked for %q, got %q", encoding, got)
		}
		if got := w.Header().Get("Content-Length"); got != strconv.Itoa(w.Body.Len()) {
			t.Errorf("%q: Content-Length %s for %d bytes", encoding, got, w.Body.Len())
		}
		if !bytes.Equal(w.Body.Bytes(), *core.Form(encoding)) {
			t.Errorf("%q: another body", encoding)
		}
		tags[w.Header().Get("ETag")] = encoding
	}
	if len(tags) != 3 {
		t.Errorf("three forms share tags: %v", tags)
	}
}

func TestHandler_Headers(t *testing.T) {
	s := small()
	for _, c := range []struct{ path, name, want string }{
		{"/", "Content-Type", "text/html; charset=utf-8"},
		{"/", "Cache-Control", "no-cache"},
		{"/index.html", "Content-Type", "text/html; charset=utf-8"},
		{"/?from=icon", "Content-Type", "text/html; charset=utf-8"},
		{"/sw.js", "Cache-Control", "no-cache"},
		{"/sw.js", "Content-Type", "text/javascript; charset=utf-8"},
		{corePath, "Content-Type", "application/wasm"},
		{corePath, "Cache-Control", "public, max-age=31536000, immutable"},
		{corePath, "Vary", "Accept-Encoding"},
		{"/", "X-Content-Type-Options", "nosniff"},
		{"/nothing", "X-Content-Type-Options", "nosniff"},
		{"/nothing", "Content-Type", "text/plain; charset=utf-8"},
		{"/", "Strict-Transport-Security", ""},
		{"/", "Clear-Site-Data", ""},
	} {
		if got := ask(s, "GET", c.path).Header().Get(c.name); got != c.want {
			t.Errorf("%s: %s = %q, want %q", c.path, c.name, got, c.want)
		}
	}
	csp := ask(s, "GET", corePath).Header().Get("Content-Security-Policy")
	if !strings.HasPrefix(csp, "default-src 'none'; script-src 'self' 'wasm-unsafe-eval';") || strings.Contains(csp, "unsafe-inline") {
		t.Errorf("the policy: %s", csp)
	}
}

// That a host is opened over HTTPS only is its own decision.
func TestHandler_TransportSecurity(t *testing.T) {
	r := httptest.NewRequest("GET", "/", nil)
	r.TLS = &tls.ConnectionState{}
	w := httptest.NewRecorder()
	Secure(small().Handler()).ServeHTTP(w, r)
	if got := w.Header().Get("Strict-Transport-Security"); got != "" {
		t.Errorf("over TLS, unasked: %q", got)
	}
}

func TestHandler_Answers(t *testing.T) {
	s := small()
	tag := ask(s, "GET", "/").Header().Get("ETag")
	for _, c := range []struct {
		name, method, path, header string
		status, length             int
	}{
		{"get", "GET", "/", "", 200, len(s.File("/").Body)},
		{"head", "HEAD", "/", "", 200, 0},
		{"post", "POST", "/", "", 405, len("http.method /\n")},
		{"put", "PUT", "/nothing", "", 405, len("http.method /nothing\n")},
		{"unknown", "GET", "/nothing", "", 404, len("http.not-found /nothing\n")},
		{"source name", "GET", "/app/main.js", "", 404, len("http.not-found /app/main.js\n")},
		{"up", "GET", "/../go.mod", "", 404, len("http.not-found /../go.mod\n")},
		{"known", "GET", "/", "If-None-Match: " + tag, 304, 0},
		{"known, weak", "GET", "/", "If-None-Match: W/" + tag, 304, 0},
		{"known among others", "GET", "/", `If-None-Match: "x", ` + tag, 304, 0},
		{"any", "HEAD", "/", "If-None-Match: *", 304, 0},
		{"another", "GET", "/", `If-None-Match: "x"`, 200, len(s.File("/").Body)},
	} {
		var headers []string
		if c.header != "" {
			headers = []string{c.header}
		}
		w := ask(s, c.method, c.path, headers...)
		if w.Code != c.status || w.Body.Len() != c.length {
			t.Errorf("%s: %d with %d bytes, want %d with %d", c.name, w.Code, w.Body.Len(), c.status, c.length)
		}
		if allow := w.Header().Get("Allow"); (w.Code == http.StatusMethodNotAllowed) != (allow == "GET, HEAD") {
			t.Errorf("%s: Allow = %q", c.name, allow)
		}
	}
}
