package main

import (
	"bytes"
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"log"
	"maps"
	"net"
	"net/http"
	"slices"
	"sync/atomic"
	"time"
)

// net/http answers by itself what is no request, or one too large or too strange, and no
// handler hears of it: 400, 417, 431, 501, 505. What it writes then goes through a
// connection of ours, which puts in the headers that every answer has.

// dressing is a listener whose connections do so.
type dressing struct {
	net.Listener
	config *tls.Config // nil for plain HTTP
	extra  http.Header // that every answer has
}

func (l dressing) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	d := &dressed{Conn: c, extra: l.extra}
	if l.config != nil {
		// net/http is not told that this is TLS: it would take no connection of ours for
		// it. Of HTTP/2 it is told by how that begins.
		d.tls = tls.Server(c, l.config)
		d.Conn = d.tls
	}
	return d, nil
}

// dressed is one connection.
type dressed struct {
	net.Conn
	extra  http.Header
	tls    *tls.Conn // nil over plain HTTP
	shaken bool      // the TLS handshake is done, as ended says
	ended  error
	spoken bool    // it was written to
	frames *frames // over HTTP/2
	heard  atomic.Bool
}

// dressedKey is where a request's context has its connection.
type dressedKey struct{}

// hearOf makes a server tell its connections when a handler hears of a request, and
// when that is answered.
func hearOf(s *http.Server) {
	next := s.Handler
	s.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if d, ok := r.Context().Value(dressedKey{}).(*dressed); ok {
			d.heard.Store(true)
		}
		next.ServeHTTP(w, r)
	})
	s.ConnContext = func(ctx context.Context, c net.Conn) context.Context {
		return context.WithValue(ctx, dressedKey{}, c)
	}
	s.ConnState = func(c net.Conn, state http.ConnState) {
		if d, ok := c.(*dressed); ok && state == http.StateIdle {
			d.heard.Store(false)
		}
	}
}

// Read shakes hands first, in the time that a head may take.
func (d *dressed) Read(b []byte) (int, error) {
	if d.tls != nil && !d.shaken {
		d.shaken = true
		d.ended = d.shake()
		d.SetReadDeadline(time.Now().Add(headDeadline))
	}
	if d.ended != nil {
		return 0, d.ended
	}
	return d.Conn.Read(b)
}

// shake does the TLS handshake. Whoever speaks plain HTTP is told that this is HTTPS.
// After an error there is nothing more to say: io.EOF has net/http say nothing.
func (d *dressed) shake() error {
	err := d.tls.Handshake()
	if err == nil {
		return nil
	}
	var plain tls.RecordHeaderError
	if errors.As(err, &plain) && plain.Conn != nil && looksLikeHTTP(plain.RecordHeader[:]) {
		extra := d.extra.Clone()
		extra.Del("Strict-Transport-Security") // which nobody may believe here (RFC 6797, 7.2)
		fmt.Fprintf(plain.Conn, "HTTP/1.1 400 Bad Request\r\n%sContent-Type: text/plain; charset=utf-8\r\nConnection: close\r\n\r\n%s\n",
			lines(extra), say("http.not-https", nil))
	} else if !errors.Is(err, io.EOF) && !errors.Is(err, net.ErrClosed) {
		log.Printf("no TLS with %s: %v", d.RemoteAddr(), err)
	}
	return io.EOF
}

// looksLikeHTTP reports whether the first five bytes are how a request over plain HTTP
// begins.
func looksLikeHTTP(first []byte) bool {
	method, _, _ := bytes.Cut(first, []byte(" "))
	return len(method) >= 3 && !bytes.ContainsFunc(method, func(r rune) bool { return r < 'A' || r > 'Z' })
}

// Write passes on what a handler has answered; to what net/http says by itself it adds
// the headers, after the first line. net/http writes such an answer in one go.
func (d *dressed) Write(b []byte) (int, error) {
	text := bytes.HasPrefix(b, []byte("HTTP/"))
	if !d.spoken && !text {
		d.frames = newFrames(d.Conn, d.extra)
	}
	d.spoken = true
	switch {
	case d.frames != nil:
		return d.frames.Write(b)
	case d.heard.Load() || !text:
		return d.Conn.Write(b)
	}
	status, rest, _ := bytes.Cut(b, []byte("\r\n"))
	if _, err := d.Conn.Write(slices.Concat(status, []byte("\r\n"), lines(d.extra), rest)); err != nil {
		return 0, err
	}
	return len(b), nil
}

// lines are headers as HTTP/1 has them.
func lines(headers http.Header) []byte {
	var all []byte
	for _, name := range slices.Sorted(maps.Keys(headers)) {
		all = fmt.Appendf(all, "%s: %s\r\n", name, headers.Get(name))
	}
	return all
}

// CloseWrite is how net/http lets a caller who still sends hear the answer.
func (d *dressed) CloseWrite() error {
	if c, ok := d.Conn.(interface{ CloseWrite() error }); ok {
		return c.CloseWrite()
	}
	return nil
}
