package site

import (
	"bytes"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// Handler serves the site from memory. It answers GET and HEAD only. The security
// headers are Secure's, around this and whatever else is served.
func (s *Site) Handler() http.Handler { return http.HandlerFunc(s.serve) }

func (s *Site) serve(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		plain(w, http.StatusMethodNotAllowed, s.Say("http.method", map[string]string{"path": r.URL.Path, "method": r.Method}))
		return
	}
	path := r.URL.Path
	if path == "/"+IndexName {
		path = "/"
	}
	f, ok := s.files[path]
	if !ok {
		plain(w, http.StatusNotFound, s.Say("http.not-found", map[string]string{"path": path}))
		return
	}
	f.serve(w, r)
}

// serve sends the form of the file that suits the request, or what of it is asked
// for: nothing where the browser has it, or a range (RFC 9110, 13 and 14).
func (f *File) serve(w http.ResponseWriter, r *http.Request) {
	token := chooseEncoding(r.Header, f)
	body := *f.Form(token)
	h := w.Header()
	h.Set("Cache-Control", f.cacheControl())
	h.Set("ETag", f.etag(token))
	h.Set("Vary", "Accept-Encoding")
	h.Set("Content-Type", f.Type)
	if token != "" {
		h.Set("Content-Encoding", token)
		// ServeContent leaves the length of what is encoded to its caller, and takes it
		// out again where it sends something else, unless If-Match fails.
		if r.Header.Get("If-Match") == "" {
			h.Set("Content-Length", strconv.Itoa(len(body)))
		}
	}
	if strings.Count(strings.Join(r.Header.Values("Range"), ","), ",") >= mostRanges {
		r.Header.Del("Range")
	}
	http.ServeContent(sender{w}, r, "", time.Time{}, inMemory{bytes.NewReader(body), body})
}

// mostRanges is how many ranges are sent one by one; who asks for more gets the whole
// (RFC 9110, 14.2), which costs less than thousands of parts with a head each.
const mostRanges = 8

// plain answers with one line of text.
func plain(w http.ResponseWriter, status int, line string) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	io.WriteString(w, line+"\n")
}
