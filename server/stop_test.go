package main

import (
	"crypto/tls"
	"net"
	"path/filepath"
	"strings"
	"testing"
)

// hanging are callers who do not go: each keeps a connection in another state. The last
// two have a request under way, which gets its time.
var hanging = []struct {
	name  string
	say   []string
	hears bool // an answer, before the stop
	under bool // a request is under way
}{
	{"who says nothing", nil, false, false},
	{"who has said half a head", []string{"GET / HTTP/1.1", "Host: x"}, false, false},
	{"who keeps the line", []string{"GET / HTTP/1.1", "Host: x", ""}, true, false},
	{"who has said half a head after a request", []string{"GET / HTTP/1.1", "Host: x", "", "GET / HTTP/1.1", "Host: x"}, true, false},
	{"who has said half a body", []string{"POST /api/plan HTTP/1.1", "Host: x", "Content-Length: 100", "", "{"}, false, true},
	{"who asks to send a body", []string{"POST /api/plan HTTP/1.1", "Host: x", "Content-Length: 100", "Expect: 100-continue", ""}, false, true},
}

// The program ends well at a stop, whoever is still there.
func TestProgram_StopsWhileCallersHang(t *testing.T) {
	dir := t.TempDir()
	mint(t, dir, 1)
	for _, c := range hanging {
		for _, over := range []string{"http", "https"} {
			t.Run(over+", "+c.name, func(t *testing.T) {
				t.Parallel()
				args := []string{"-addr", "localhost:0"}
				if over == "https" {
					args = append(args, "-cert", filepath.Join(dir, "cert.pem"), "-key", filepath.Join(dir, "key.pem"))
				}
				program := start(t, args...)
				_, port, _ := strings.Cut(strings.TrimPrefix(program.url, over+"://"), ":")
				conn, err := net.Dial("tcp", net.JoinHostPort("localhost", port))
				if err != nil {
					t.Fatal(err)
				}
				if over == "https" && c.say != nil {
					conn = tls.Client(conn, trusting(t, dir))
				}
				s := speak(t, conn)
				if c.say != nil {
					s.say(c.say...)
				}
				if c.hears {
					if resp, _ := s.hear("GET"); resp.StatusCode != 200 {
						t.Errorf("before the stop: %s", resp.Status)
					}
				}
				program.end()
				if !c.under && !s.ends() {
					t.Error("the connection is still open")
				}
			})
		}
	}
}
