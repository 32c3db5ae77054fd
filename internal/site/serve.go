package site

import (
	"io"
	"net/http"
	"strconv"
	"strings"
)

// Handler serves the site from memory. It answers GET and HEAD only, each with
// the security headers.
func (s *Site) Handler() http.Handler {
	return Secure(http.HandlerFunc(s.serve))
}

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

// serve sends the form of the file that suits the request, or 304 where the
// browser has it.
func (f *File) serve(w http.ResponseWriter, r *http.Request) {
	token := chooseEncoding(r.Header, f)
	body, etag := *f.Form(token), f.etag(token)
	for name, value := range f.headers(token) {
		w.Header().Set(name, value)
	}
	if matches(r.Header.Values("If-None-Match"), etag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	w.Header().Set("Content-Type", f.Type)
	w.Header().Set("Content-Length", strconv.Itoa(len(body)))
	if token != "" {
		w.Header().Set("Content-Encoding", token)
	}
	if r.Method == http.MethodGet {
		w.Write(body) // the browser went away if this fails: nobody to tell
	}
}

// headers are those that a 304 repeats.
func (f *File) headers(token string) map[string]string {
	return map[string]string{
		"Cache-Control": f.cacheControl(),
		"ETag":          f.etag(token),
		"Vary":          "Accept-Encoding",
	}
}

// matches reports whether If-None-Match names the tag, by weak comparison
// (RFC 9110, 13.1.2).
func matches(fields []string, etag string) bool {
	for part := range strings.SplitSeq(strings.Join(fields, ","), ",") {
		part = strings.TrimPrefix(strings.TrimSpace(part), "W/")
		if part == etag || part == "*" {
			return true
		}
	}
	return false
}

// plain answers with one line of text.
func plain(w http.ResponseWriter, status int, line string) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	io.WriteString(w, line+"\n")
}
