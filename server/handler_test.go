package main

import (
	"bytes"
	"encoding/json"
	"log"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/site"
)

// echo stands in for the core: the op says how the call ends, the answer is the
// input.
func echo(op string, in []byte) ([]byte, core.Outcome) {
	outcome, ok := map[string]core.Outcome{
		"good": core.OK, "garbled": core.Malformed, "refused": core.Refused, "huge": core.TooLarge, "broken": core.Crashed,
	}[op]
	if !ok {
		return []byte(`{"findings":[{"code":"unknown-op","where":"/","grade":"refuse","values":{"op":"x"}}]}`), core.UnknownOp
	}
	return in, outcome
}

// ask sends one request to the program's handler, over an empty site.
func ask(method, path, contentType, body string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	if contentType != "" {
		r.Header.Set("Content-Type", contentType)
	}
	w := httptest.NewRecorder()
	handlerOver(echo).ServeHTTP(w, r)
	return w
}

// handlerOver is the program's handler over an empty site and what stands in for the
// core.
func handlerOver(do door) http.Handler {
	var operations []core.Operation
	for _, name := range []string{"good", "garbled", "refused", "huge", "broken"} {
		operations = append(operations, core.Operation{Name: name})
	}
	return handlerOverAPI(newAPI(do, operations))
}

func handlerOverAPI(a *api) http.Handler {
	return handler(&site.Site{Version: "0123456789ab", Say: sayClipped}, a)
}

func TestHandler_Refusals(t *testing.T) {
	for _, c := range []struct {
		name, method, path, contentType, body string
		status                                int
		code                                  string
	}{
		{"unknown op", "POST", "/api/bake", "application/json", "{}", 404, "unknown-op"},
		{"no content type", "POST", "/api/bake", "", "{}", 404, "unknown-op"},
		{"charset", "POST", "/api/bake", "application/json; charset=utf-8", "{}", 404, "unknown-op"},
		{"no op", "POST", "/api/", "application/json", "{}", 404, "http.not-found"},
		{"too deep", "POST", "/api/plan/more", "application/json", "{}", 404, "http.not-found"},
		{"an op with a slash", "POST", "/api/plan%2Fmore", "application/json", "{}", 404, "http.not-found"},
		{"up and down", "POST", "/api/../api/good", "application/json", "{}", 404, "http.not-found"},
		{"form", "POST", "/api/good", "application/x-www-form-urlencoded", "a=b", 415, "http.media-type"},
		{"broken type", "POST", "/api/good", "application/json;;", "{}", 415, "http.media-type"},
		{"too large", "POST", "/api/good", "application/json", strings.Repeat(" ", maxBody+1), 413, "http.body-too-large"},
		{"get", "GET", "/api/bake", "", "", 405, "http.method"},
		{"put", "PUT", "/api/bake", "application/json", "{}", 405, "http.method"},
	} {
		w := ask(c.method, c.path, c.contentType, c.body)
		var got findings
		if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil {
			t.Errorf("%s: %v in %q", c.name, err, w.Body)
			continue
		}
		if w.Code != c.status || len(got.Findings) != 1 || got.Findings[0].Code != c.code {
			t.Errorf("%s: %d %s, want %d %s", c.name, w.Code, w.Body, c.status, c.code)
		}
		if text := got.Findings[0].Text; text == "" || strings.Contains(text, "{") {
			t.Errorf("%s: it says %q", c.name, text)
		}
		if allow := w.Header().Get("Allow"); (c.status == 405) != (allow == "POST") {
			t.Errorf("%s: Allow = %q", c.name, allow)
		}
		if got := w.Header().Get("X-Content-Type-Options"); got != "nosniff" {
			t.Errorf("%s: without the security headers", c.name)
		}
	}
}

func TestHandler_Outcomes(t *testing.T) {
	for op, status := range map[string]int{"good": 200, "garbled": 400, "unheard-of": 404, "huge": 413, "refused": 422, "broken": 500} {
		w := ask("POST", "/api/"+op, "application/json", `{"findings":[]}`)
		if w.Code != status || w.Header().Get("Content-Type") != "application/json" {
			t.Errorf("%s: %d %s, want %d", op, w.Code, w.Header().Get("Content-Type"), status)
		}
	}
	if got := ask("POST", "/api/good", "", `{"ok":1}`).Body.String(); got != "{\"ok\":1}\n" {
		t.Errorf("a good answer is passed on as it is, got %q", got)
	}
}

func TestHandler_Health(t *testing.T) {
	if w := ask("GET", "/healthz", "", ""); w.Code != 200 || w.Body.String() != "ok 0123456789ab\n" {
		t.Errorf("GET: %d %q", w.Code, w.Body)
	}
	if w := ask("POST", "/healthz", "", ""); w.Code != 405 || w.Header().Get("Allow") != "GET, HEAD" {
		t.Errorf("POST: %d, Allow %q", w.Code, w.Header().Get("Allow"))
	}
}

func TestRecovered(t *testing.T) {
	var logged bytes.Buffer
	log.SetOutput(&logged)
	defer log.SetOutput(os.Stderr)
	h := recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic("a bug") }))
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "/", nil))
	if w.Code != 500 || strings.Contains(w.Body.String(), "a bug") {
		t.Errorf("%d %q, want 500 without the reason", w.Code, w.Body)
	}
	if !strings.Contains(logged.String(), `GET "/": a bug`) {
		t.Errorf("the log says %q", logged.String())
	}
	abort := recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) }))
	defer func() {
		if recover() != http.ErrAbortHandler {
			t.Error("an aborted answer must stay aborted")
		}
	}()
	abort.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil))
}
