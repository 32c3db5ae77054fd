package main

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/server/pages"
	"tidysump/specs"
)

// plainly asks the program's handler, over the core, for a page.
func plainly(method, path, kind, body string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	if kind != "" {
		r.Header.Set("Content-Type", kind)
	}
	w := httptest.NewRecorder()
	handlerOverAPI(newAPI(core.Do, core.Operations())).ServeHTTP(w, r)
	return w
}

const formType = "application/x-www-form-urlencoded"

// Each page is there, is not kept by anybody, and runs nothing; what can't be answered is
// said in a sentence, on a page that leads on.
func TestPages(t *testing.T) {
	for _, c := range []struct {
		method, path, kind, body string
		status                   int
		want                     string
	}{
		{"GET", "/plain/", "", "", 200, "Skarvald Kettra 290"},
		{"GET", "/plain/bike/skarvald-kettra-290", "", "", 200, "0.69 L"},
		{"GET", "/plain/bike/skarvald-kettra-290?system=us&place=garage", "", "", 200, "0.73 US qt"},
		{"GET", "/plain/bike/none", "", "", 404, "There is no page"},
		{"GET", "/plain/card", "", "", 200, "is not kept there"},
		{"POST", "/plain/card", formType, "card=%7B", 400, "finding"},
		{"POST", "/plain/card", formType + "; charset=utf-8", "", 200, "is not kept there"},
		{"POST", "/plain/card", "text/plain", "card=%7B", 415, "text/plain"},
		{"POST", "/plain/card", formType, strings.Repeat("a", maxBody+1), 413, "1 MiB"},
		{"POST", "/plain/card", formType, strings.Repeat("a&", mostPairs), 413, "2000 fields"},
		{"POST", "/plain/card", formType, "card=%7", 400, "did not arrive whole"},
		{"POST", "/plain/bike/skarvald-kettra-290", formType, "", 405, "does not take POST"},
		{"PUT", "/plain/", "", "", 405, "does not take PUT"},
		{"GET", "/plain/calculate/convert?text=%D9%A1%D9%AB%D9%A5+L", "", "", 200, "1.5 L"},
		{"GET", "/plain/calculate/bake", "", "", 404, "There is no page"},
		{"GET", "/plain/calculate/convert?" + strings.Repeat("a", mostQuery+1), "", "", 414, "16 KiB"},
		{"GET", "/plain/trouble/drop-plug?returns=drips", "", "", 200, "Do not ride"},
		{"GET", "/plain/aid/burn", "", "", 200, "First aid"},
		{"GET", "/plain/aid/%3Cscript%3E", "", "", 404, "&lt;script&gt;"},
		{"GET", "/plain/" + strings.Repeat("x", 9000), "", "", 404, "There is no page"},
	} {
		got := plainly(c.method, c.path, c.kind, c.body)
		h := got.Header()
		said := strings.ReplaceAll(got.Body.String(), "\u00a0", " ")
		if got.Code != c.status || !strings.Contains(said, c.want) || len(got.Body.String()) > 200_000 {
			t.Errorf("%s %.80s: %d %.200s, want %d with %q", c.method, c.path, got.Code, got.Body, c.status, c.want)
		}
		if h.Get("Content-Type") != "text/html; charset=utf-8" || h.Get("Cache-Control") != "no-store" || h.Get("Content-Language") != specs.Words()[0].Tag || h.Get("Vary") != "Accept-Language" {
			t.Errorf("%s %.80s: %v", c.method, c.path, h)
		}
		if policy := h.Get("Content-Security-Policy"); policy != pagesPolicy || strings.Contains(policy, "script") {
			t.Errorf("%s %.80s: policy %q", c.method, c.path, policy)
		}
		if h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Set-Cookie") != "" {
			t.Errorf("%s %.80s: %v", c.method, c.path, h)
		}
	}
}

// What asks whether the pages are here is told by a status that no host of files gives.
func TestPages_Here(t *testing.T) {
	if got := plainly("GET", "/plain/here", "", ""); got.Code != http.StatusNoContent || got.Body.Len() != 0 {
		t.Errorf("%d %s", got.Code, got.Body)
	}
	style := plainly("GET", "/plain/style.css", "", "")
	if style.Code != 200 || style.Body.Len() > 3000 || strings.Contains(style.Body.String(), "var(") {
		t.Errorf("%d, %d bytes: %s", style.Code, style.Body.Len(), style.Body)
	}
}

// What is beyond the processors is refused at once, with when to ask again; a core that
// fails takes nobody else along.
func TestPages_Bounds(t *testing.T) {
	a := newAPI(core.Do, core.Operations())
	h := handlerOverAPI(a)
	for range cap(a.workers) {
		a.workers.take()
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "/plain/calculations", nil))
	if w.Code != 503 || w.Header().Get("Retry-After") != "1" || !strings.Contains(w.Body.String(), "busy") {
		t.Errorf("%d %v %s", w.Code, w.Header(), w.Body)
	}
	fails := newAPI(func(string, []byte) ([]byte, core.Outcome) { panic("broken") }, nil)
	for range cap(fails.workers) + 2 {
		w = httptest.NewRecorder()
		handlerOverAPI(fails).ServeHTTP(w, httptest.NewRequest("GET", "/plain/trouble/drop-plug", nil))
		if w.Code != 500 {
			t.Errorf("a core that fails: %d", w.Code)
		}
	}
	if len(fails.workers) != 0 {
		t.Errorf("%d workers are still engaged", len(fails.workers))
	}
}

// The largest sample as an own card comes back with its plan and its text, and nothing of
// it is there for who asks next.
func TestPages_KeepNothing(t *testing.T) {
	h := handlerOverAPI(newAPI(core.Do, core.Operations()))
	const mark = "Nobodys Own Bike"
	card := strings.Replace(string(specs.Cards()["skarvald-kettra-290.json"]), `"Kettra 290"`, `"`+mark+`"`, 1)
	r := httptest.NewRequest("POST", "/plain/card", strings.NewReader(url.Values{"card": {card}}.Encode()))
	r.Header.Set("Content-Type", formType)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	if w.Code != 200 || strings.Count(w.Body.String(), mark) < 2 {
		t.Fatalf("%d: %.300s", w.Code, w.Body)
	}
	for _, path := range []string{"", "card", "bike/skarvald-kettra-290"} {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", pages.At+path, nil))
		if strings.Contains(w.Body.String(), mark) {
			t.Errorf("%s knows of %s", path, mark)
		}
	}
}
