package main

import (
	"net"
	"net/http"
	"net/url"
	"strings"
)

// toHTTPS leads from plain HTTP to the same address over HTTPS, on that port.
func toHTTPS(port string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		host, _, err := net.SplitHostPort(r.Host)
		if err != nil { // without a port
			host = strings.Trim(r.Host, "[]")
		}
		if host == "" {
			http.Error(w, http.StatusText(http.StatusBadRequest), http.StatusBadRequest)
			return
		}
		to := url.URL{
			Scheme: "https", Host: strings.TrimSuffix(net.JoinHostPort(host, port), ":443"),
			Path: r.URL.Path, RawPath: r.URL.RawPath, RawQuery: r.URL.RawQuery,
		}
		http.Redirect(w, r, to.String(), http.StatusPermanentRedirect)
	})
}
