package main

import (
	"fmt"
	"net/http"
	"net/http/httputil"
	"net/url"
	"sync"
)

// front is what browsers speak to: it hands requests on to the server that runs now,
// and lets pages know when there is a newer version.
type front struct {
	mu      sync.Mutex
	to      *httputil.ReverseProxy
	version string        // of the site that is served; empty before the first
	newer   chan struct{} // closed when another version takes its place
}

// turn hands requests to the server at an address from now on, which serves that
// version of the site.
func (f *front) turn(to *url.URL, version string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.to, f.version = httputil.NewSingleHostReverseProxy(to), version
	if f.newer != nil {
		close(f.newer)
	}
	f.newer = make(chan struct{})
}

// now returns the state of things, and what is closed when it changes.
func (f *front) now() (to *httputil.ReverseProxy, version string, newer <-chan struct{}) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.newer == nil {
		f.newer = make(chan struct{})
	}
	return f.to, f.version, f.newer
}

func (f *front) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	switch r.URL.Path {
	case "/watch":
		f.serveEvents(w, r)
	case "/sw.js": // a page without its service worker shows what was built last
		http.NotFound(w, r)
	default:
		to, _, _ := f.now()
		if to == nil {
			http.Error(w, "The site can't be built yet: the terminal says why.", http.StatusServiceUnavailable)
			return
		}
		to.ServeHTTP(w, r)
	}
}

// serveEvents sends an event (Server-Sent Events, HTML Standard, 9.2) to a page that
// shows another version than the one that is served, at once or as soon as it is so.
func (f *front) serveEvents(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	shown := r.URL.Query().Get("shown")
	for {
		_, version, newer := f.now()
		if version != "" && version != shown {
			fmt.Fprint(w, "data: newer\n\n") // the page went away if this fails
			return
		}
		if http.NewResponseController(w).Flush() != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-newer:
		}
	}
}
