package main

import (
	"fmt"
	"log"
	"net/http"
	"runtime/debug"

	"github.com/gorilla/mux"

	"tidysump/internal/site"
)

// handler joins the site, the API and the health check.
func handler(built *site.Site, do door) http.Handler {
	r := mux.NewRouter()
	r.Path("/api/{op}").Methods(http.MethodPost).HandlerFunc(do.serveAPI)
	r.PathPrefix("/api/").HandlerFunc(refuseAPI)
	r.Path("/healthz").Methods(http.MethodGet, http.MethodHead).HandlerFunc(
		func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "text/plain; charset=utf-8")
			w.Header().Set("Cache-Control", "no-store")
			fmt.Fprintln(w, "ok", built.Version)
		})
	r.PathPrefix("/").Handler(built.Handler())
	return site.Secure(recovered(r))
}

// recovered answers 500 where a handler panics, and says in the log what it was.
func recovered(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			switch reason := recover(); reason {
			case nil:
			case http.ErrAbortHandler:
				panic(reason) // net/http's own way to cut an answer short
			default:
				log.Printf("%s %s: %v\n%s", r.Method, r.URL.Path, reason, debug.Stack())
				http.Error(w, say("http.failed", nil), http.StatusInternalServerError)
			}
		}()
		next.ServeHTTP(w, r)
	})
}
