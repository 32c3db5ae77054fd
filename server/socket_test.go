package main

import (
	"bufio"
	"crypto/tls"
	"errors"
	"io"
	"net"
	"net/http"
	"os"
	"strings"
	"testing"
	"time"

	"tidysump/internal/site"
)

// patience is how long a test waits for what must come.
const patience = 30 * time.Second

// overSocket serves a handler over plain HTTP as the program does, and returns where.
func overSocket(t *testing.T, h http.Handler, change func(*http.Server)) string {
	t.Helper()
	return overTLS(t, h, nil, change)
}

// overTLS is overSocket over HTTPS.
func overTLS(t *testing.T, h http.Handler, config *tls.Config, change func(*http.Server)) string {
	t.Helper()
	at, err := listen("127.0.0.1:0", "-addr")
	if err != nil {
		t.Fatal(err)
	}
	l := newListening(at, config, h, site.SecurityHeaders())
	if change != nil {
		change(l.server)
	}
	go l.server.Serve(l.at[0])
	t.Cleanup(func() { l.server.Close() })
	return at.first().String()
}

// socket is a connection on which a test says what it likes.
type socket struct {
	net.Conn
	t  *testing.T
	in *bufio.Reader
}

// dial opens one.
func dial(t *testing.T, address string) *socket {
	t.Helper()
	c, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	return speak(t, c)
}

// speak makes a socket of a connection; with the test it is closed.
func speak(t *testing.T, c net.Conn) *socket {
	t.Cleanup(func() { c.Close() })
	c.SetDeadline(time.Now().Add(patience))
	return &socket{c, t, bufio.NewReader(c)}
}

// say sends lines as they are, each with its end.
func (s *socket) say(lines ...string) {
	s.t.Helper()
	if _, err := io.WriteString(s, strings.Join(lines, "\r\n")+"\r\n"); err != nil {
		s.t.Fatal(err)
	}
}

// hear reads an answer to a request of that method.
func (s *socket) hear(method string) (*http.Response, string) {
	s.t.Helper()
	resp, err := http.ReadResponse(s.in, &http.Request{Method: method})
	if err != nil {
		s.t.Fatal(err)
	}
	body, err := io.ReadAll(resp.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return resp, string(body)
}

// ends reports whether the other side has closed, with nothing more to say.
func (s *socket) ends() bool {
	n, err := s.in.Read(make([]byte, 1))
	return n == 0 && err != nil && !errors.Is(err, os.ErrDeadlineExceeded)
}
