package main

import (
	"fmt"
	"log"
	"net/http"
	"runtime/debug"
	"time"

	"github.com/gorilla/mux"

	"tidysump/internal/site"
)

// handler joins the site, the API and the health check. A path is taken as it was
// asked for: nothing here lies under another one, to be led there.
func handler(built *site.Site, a *api) http.Handler {
	r := mux.NewRouter().SkipClean(true)
	r.Path("/api/{op}").Methods(http.MethodPost).HandlerFunc(a.serve)
	r.PathPrefix("/api/").HandlerFunc(refuseAPI)
	a.addPages(r)
	r.Path("/healthz").Methods(http.MethodGet, http.MethodHead).HandlerFunc(
		func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "text/plain; charset=utf-8")
			w.Header().Set("Cache-Control", "no-store")
			fmt.Fprintln(w, "ok", built.Version)
		})
	r.PathPrefix("").Handler(built.Handler())
	return site.Secure(unread(recovered(r)))
}

// lingering is how long a connection is read from after an answer that did not wait for
// the body: one that is closed while its caller still sends may lose the answer.
const lingering = time.Second

// unread has a connection closed whose body nobody takes in: net/http would else read
// on before it answers, for as long as the caller likes to send. Who takes the body in
// calls keepAlive.
func unread(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.ContentLength == 0 || r.ProtoMajor != 1 { // HTTP/2 ends the request alone
			next.ServeHTTP(w, r)
			return
		}
		w.Header().Set("Connection", "close")
		next.ServeHTTP(w, r)
		if w.Header().Get("Connection") == "close" {
			http.NewResponseController(w).SetReadDeadline(time.Now().Add(lingering))
		}
	})
}

func keepAlive(w http.ResponseWriter) { w.Header().Del("Connection") }

// recovered answers 500 where a handler panics, and says in the log what it was.
func recovered(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			switch reason := recover(); reason {
			case nil:
			case http.ErrAbortHandler:
				panic(reason) // net/http's own way to cut an answer short
			default:
				log.Printf("%s %q: %v\n%s", r.Method, r.URL.Path, reason, debug.Stack())
				http.Error(w, say("http.failed", nil), http.StatusInternalServerError)
			}
		}()
		next.ServeHTTP(w, r)
	})
}
