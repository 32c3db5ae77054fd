package main

import (
	"errors"
	"fmt"
	"net/http"
	"time"
)

// Strict is what browsers are to remember about a host that is served over HTTPS
// (RFC 6797). They would hold it to that long after somebody has changed their mind:
// it is the host's own decision, and said only where it was asked for.
type Strict struct {
	For        *time.Duration // for how long never to open the host without HTTPS; 0 takes it back
	Subdomains bool           // and all names below it
}

func (s Strict) set() bool { return s.For != nil || s.Subdomains }

// check finds what doesn't go together.
func (s Strict) check() error {
	switch {
	case s.For == nil && s.Subdomains:
		return errors.New("-hsts-subdomains goes with -hsts, which says for how long")
	case s.For != nil && *s.For < 0:
		return errors.New("-hsts is less than nothing; 0 takes it back")
	}
	return nil
}

// add sets the header, if it was asked for.
func (s Strict) add(h http.Header) {
	if s.For == nil {
		return
	}
	value := fmt.Sprintf("max-age=%d", int64(s.For.Seconds()))
	if s.Subdomains {
		value += "; includeSubDomains"
	}
	h.Set("Strict-Transport-Security", value)
}

// on has every answer of next say it.
func (s Strict) on(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.add(w.Header())
		next.ServeHTTP(w, r)
	})
}
