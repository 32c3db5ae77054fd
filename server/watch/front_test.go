package main

import (
	"bufio"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"testing"
)

// serves starts a server that answers every request with a text.
func serves(t *testing.T, text string) *url.URL {
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { io.WriteString(w, text) }))
	t.Cleanup(s.Close)
	u, err := url.Parse(s.URL)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func ask(t *testing.T, address string) *http.Response {
	t.Helper()
	resp, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { resp.Body.Close() })
	return resp
}

func TestFront_HandsOn(t *testing.T) {
	f := &front{}
	s := httptest.NewServer(f)
	defer s.Close()
	if resp := ask(t, s.URL); resp.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("before the first site: %s", resp.Status)
	}
	for _, version := range []string{"one", "two"} {
		f.turn(serves(t, version), version)
		if body, err := io.ReadAll(ask(t, s.URL).Body); string(body) != version {
			t.Errorf("version %s: %q (%v)", version, body, err)
		}
	}
	if resp := ask(t, s.URL+"/sw.js"); resp.StatusCode != http.StatusNotFound {
		t.Errorf("the service worker: %s", resp.Status)
	}
}

// A page that shows what is served waits; one that shows another version is let know
// at once, also when it asks late.
func TestFront_Events(t *testing.T) {
	f := &front{}
	s := httptest.NewServer(f)
	defer s.Close()
	f.turn(serves(t, ""), "one")
	waiting := ask(t, s.URL+"/watch?shown=one")
	if kind := waiting.Header.Get("Content-Type"); kind != "text/event-stream" {
		t.Errorf("the events are %q", kind)
	}
	f.turn(serves(t, ""), "two")
	for name, resp := range map[string]*http.Response{
		"waiting": waiting, "late": ask(t, s.URL+"/watch?shown=one"),
	} {
		if line, err := bufio.NewReader(resp.Body).ReadString('\n'); line != "data: newer\n" {
			t.Errorf("%s: %q (%v)", name, line, err)
		}
	}
}
