package main

import (
	"bufio"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// patience is how long a test waits for what must come.
const patience = 30 * time.Second

// overSocket serves a handler as the program does, and returns where.
func overSocket(t *testing.T, h http.Handler, change func(*http.Server)) string {
	t.Helper()
	at, err := net.Listen("tcp", "localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	s := server(h)
	if change != nil {
		change(s)
	}
	go s.Serve(at)
	t.Cleanup(func() { s.Close() })
	return at.Addr().String()
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
	return n == 0 && err == io.EOF
}
