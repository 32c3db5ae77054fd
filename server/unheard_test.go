package main

import (
	"crypto/tls"
	"fmt"
	"io"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/http2"
	"golang.org/x/net/http2/hpack"

	"tidysump/internal/site"
)

// minted is a folder with a certificate of its own, and that.
func minted(t *testing.T) (string, tls.Certificate) {
	t.Helper()
	dir := t.TempDir()
	mint(t, dir, 1)
	pair, err := tls.LoadX509KeyPair(filepath.Join(dir, "cert.pem"), filepath.Join(dir, "key.pem"))
	if err != nil {
		t.Fatal(err)
	}
	return dir, pair
}

// hasHeaders holds an answer to the headers that every answer has, each once.
func hasHeaders(t *testing.T, what string, h http.Header) {
	t.Helper()
	for name, values := range site.SecurityHeaders() {
		if got := h.Values(name); len(got) != 1 || got[0] != values[0] {
			t.Errorf("%s: %s is %q, want %q", what, name, got, values[0])
		}
	}
}

// strange is what net/http answers by itself, or a handler of a strange request. Of less
// than the first bytes of HTTP/2 net/http waits for more, over TLS.
var strange = []struct {
	name   string
	lines  []string
	status int
}{
	{"no request", []string{"none that is known", ""}, 400},
	{"no version", []string{"GET /index.html", ""}, 400},
	{"HTTP/0.9", []string{"GET / HTTP/0.9", ""}, 505},
	{"HTTP/2.0 in text", []string{"GET / HTTP/2.0", "Host: x", ""}, 505},
	{"HTTP/3.0", []string{"GET / HTTP/3.0", "Host: x", ""}, 505},
	{"no such version", []string{"GET / HTTP/x", "Host: x", ""}, 400},
	{"no host", []string{"GET / HTTP/1.1", ""}, 400},
	{"two hosts", []string{"GET / HTTP/1.1", "Host: x", "Host: y", ""}, 400},
	{"a broken host", []string{"GET / HTTP/1.1", "Host: <x>", ""}, 400},
	{"a broken target", []string{"GET %zz HTTP/1.1", "Host: x", ""}, 400},
	{"a broken path", []string{"GET /%zz HTTP/1.1", "Host: x", ""}, 400},
	{"a broken method", []string{"G(T / HTTP/1.1", "Host: x", ""}, 400},
	{"a broken name", []string{"GET / HTTP/1.1", "Host: x", "A B: c", ""}, 400},
	{"a name without a value", []string{"GET / HTTP/1.1", "Host: x", "name", ""}, 400},
	{"a folded head", []string{"GET / HTTP/1.1", " Host: x", ""}, 400},
	{"a broken value", []string{"GET / HTTP/1.1", "Host: x", "A: b\x00c", ""}, 400},
	{"two lengths", []string{"POST / HTTP/1.1", "Host: x", "Content-Length: 1", "Content-Length: 2", ""}, 400},
	{"a broken length", []string{"POST / HTTP/1.1", "Host: x", "Content-Length: -1", ""}, 400},
	{"a length without an end", []string{"POST / HTTP/1.1", "Host: x", "Content-Length: 99999999999999999999", ""}, 400},
	{"a strange coding", []string{"POST / HTTP/1.1", "Host: x", "Transfer-Encoding: gzip", ""}, 501},
	{"two codings", []string{"POST / HTTP/1.1", "Host: x", "Transfer-Encoding: chunked, chunked", ""}, 501},
	{"a large head", []string{"GET / HTTP/1.1", "Host: x", "A: " + strings.Repeat("b", 30_000), ""}, 431},
	{"a long path", []string{"GET /" + strings.Repeat("b", 30_000) + " HTTP/1.1", "Host: x", ""}, 431},
	{"many lines", []string{"GET / HTTP/1.1", strings.Repeat("A: b\r\n", 10_000) + "Host: x", ""}, 431},
	{"a strange expectation", []string{"POST / HTTP/1.1", "Host: x", "Content-Length: 1", "Expect: the-worst", ""}, 417},
	{"options of all", []string{"OPTIONS * HTTP/1.1", "Host: x", ""}, 405},
	{"HTTP/2's preface", []string{"PRI * HTTP/2.0", "", "XX", ""}, 405},
	{"a tunnel", []string{"CONNECT elsewhere.example:443 HTTP/1.1", "Host: elsewhere.example", ""}, 405},
	{"an upgrade", []string{"GET /nothing HTTP/1.1", "Host: x", "Connection: Upgrade", "Upgrade: websocket", ""}, 404},
	{"another host's address", []string{"GET http://elsewhere.example//nothing HTTP/1.1", "Host: x", ""}, 404},
	{"HTTP/1.0", []string{"GET /nothing HTTP/1.0", ""}, 404},
	{"HTTP/1.0, to be kept", []string{"GET /nothing HTTP/1.0", "Connection: keep-alive", ""}, 404},
	{"what was asked for", []string{"GET /healthz HTTP/1.1", "Host: x", ""}, 200},
	{"its head", []string{"HEAD /healthz HTTP/1.1", "Host: x", ""}, 200},
	{"a bug's", []string{"POST /api/good HTTP/1.1", "Host: x", "Content-Length: 2", "", "{}"}, 200},
}

// Whoever answers, and whatever was asked, over which line: the headers are there, and a
// sentence.
func TestUnheard_Headers(t *testing.T) {
	dir, pair := minted(t)
	plain := overSocket(t, handlerOver(echo), nil)
	secure := overTLS(t, handlerOver(echo), &tls.Config{Certificates: []tls.Certificate{pair}, NextProtos: []string{"h2", "http/1.1"}}, nil)
	lead := overSocket(t, site.Secure(unread(toHTTPS("443"))), nil)
	overTLS := func(protocols ...string) func() net.Conn {
		return func() net.Conn {
			config := trusting(t, dir)
			config.NextProtos = protocols
			c, err := tls.Dial("tcp", secure, config)
			if err != nil {
				t.Fatal(err)
			}
			return c
		}
	}
	for over, open := range map[string]func() net.Conn{
		"plain":                      func() net.Conn { return dial(t, plain).Conn },
		"leading to HTTPS":           func() net.Conn { return dial(t, lead).Conn },
		"TLS":                        overTLS(),
		"TLS, HTTP/1.1":              overTLS("http/1.1"),
		"TLS, HTTP/1.1 where not so": overTLS("h2"),
	} {
		for _, c := range strange {
			for _, before := range []int{0, 2} { // requests on the same connection
				what := fmt.Sprintf("%s, %s after %d", over, c.name, before)
				s := speak(t, open())
				for range before {
					s.say("GET /nothing HTTP/1.1", "Host: x", "")
					s.hear("GET")
				}
				s.say(c.lines...)
				resp, body := s.hear(c.lines[0][:strings.IndexAny(c.lines[0]+" ", " ")])
				if over == "leading to HTTPS" && (resp.StatusCode == 308 || resp.StatusCode == 400) {
					hasHeaders(t, what, resp.Header)
					continue
				}
				if resp.StatusCode != c.status {
					t.Errorf("%s: %s, want %d", what, resp.Status, c.status)
				}
				hasHeaders(t, what, resp.Header)
				if resp.Header.Get("Cache-Control") != "no-store" {
					t.Errorf("%s: Cache-Control: %q", what, resp.Header.Get("Cache-Control"))
				}
				if body == "" && resp.StatusCode != 417 && !strings.Contains(c.lines[0], "HEAD") {
					t.Errorf("%s: %s says nothing", what, resp.Status)
				}
				s.Close()
			}
		}
	}
}

// Plain HTTP where HTTPS is spoken is told so.
func TestUnheard_PlainWhereTLS(t *testing.T) {
	_, pair := minted(t)
	at := overTLS(t, handlerOver(echo), &tls.Config{Certificates: []tls.Certificate{pair}}, nil)
	for _, method := range []string{"GET", "POST", "HEAD", "OPTIONS", "DELETE", "PUT"} {
		s := dial(t, at)
		s.say(method+" / HTTP/1.1", "Host: x", "")
		resp, body := s.hear("GET")
		if resp.StatusCode != 400 || body != say("http.not-https", nil)+"\n" || !resp.Close {
			t.Errorf("%s: %s %q", method, resp.Status, body)
		}
		hasHeaders(t, method, resp.Header)
	}
	other := dial(t, at)
	other.say("what is this?")
	if answer, err := io.ReadAll(other); len(answer) > 0 {
		t.Errorf("to what is no request it says %q (%v)", answer, err)
	}
}

// Who says nothing, or not enough, is not waited for: over TLS neither.
func TestUnheard_Silent(t *testing.T) {
	_, pair := minted(t)
	soon := func(s *http.Server) { s.ReadHeaderTimeout = 50 * time.Millisecond }
	plain := overSocket(t, handlerOver(echo), soon)
	secure := overTLS(t, handlerOver(echo), &tls.Config{Certificates: []tls.Certificate{pair}}, soon)
	for _, c := range []struct{ name, at, said string }{
		{"nothing", plain, ""},
		{"half a head", plain, "GET / HTTP/1.1\r\nHost:"},
		{"nothing, where TLS", secure, ""},
		{"half a hello", secure, "\x16\x03\x01\x02\x00\x01"},
	} {
		s := dial(t, c.at)
		io.WriteString(s, c.said)
		if !s.ends() {
			t.Errorf("%s: the connection stays", c.name)
		}
	}
}

// twoClient speaks HTTP/2 without minding what may be sent.
type twoClient struct {
	t      *testing.T
	framer *http2.Framer
	block  strings.Builder
	coder  *hpack.Encoder
	stream uint32
}

func newTwoClient(t *testing.T, at string, config *tls.Config) *twoClient {
	config.NextProtos = []string{"h2"}
	c, err := tls.Dial("tcp", at, config)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	c.SetDeadline(time.Now().Add(patience))
	if _, err := io.WriteString(c, http2.ClientPreface); err != nil {
		t.Fatal(err)
	}
	client := &twoClient{t: t, framer: http2.NewFramer(c, c), stream: 1}
	client.framer.ReadMetaHeaders = hpack.NewDecoder(4096, nil)
	client.coder = hpack.NewEncoder(&client.block)
	if err := client.framer.WriteSettings(); err != nil {
		t.Fatal(err)
	}
	return client
}

// send sends the head of a request; with end that is all of it.
func (c *twoClient) send(method, path string, end bool, headers ...string) {
	c.t.Helper()
	c.block.Reset()
	all := append([]string{":method", method, ":scheme", "https", ":authority", "workshop.example", ":path", path}, headers...)
	for i := 0; i < len(all); i += 2 {
		c.coder.WriteField(hpack.HeaderField{Name: all[i], Value: all[i+1]})
	}
	block := []byte(c.block.String())
	first := block[:min(len(block), 16_000)]
	err := c.framer.WriteHeaders(http2.HeadersFrameParam{StreamID: c.stream, BlockFragment: first, EndStream: end, EndHeaders: len(first) == len(block)})
	if len(first) < len(block) {
		err = c.framer.WriteContinuation(c.stream, true, block[len(first):])
	}
	if err != nil {
		c.t.Fatal(err)
	}
	c.stream += 2
}

// hear reads the next head and, unless more of them come, the body after it.
func (c *twoClient) hear() (http.Header, string) {
	c.t.Helper()
	var head http.Header
	var body strings.Builder
	for {
		f, err := c.framer.ReadFrame()
		if err != nil {
			c.t.Fatal(err)
		}
		switch f := f.(type) {
		case *http2.MetaHeadersFrame:
			head = http.Header{}
			for _, field := range f.Fields {
				head.Add(field.Name, field.Value)
			}
			if f.StreamEnded() || head.Get(":status") < "200" {
				return head, ""
			}
		case *http2.DataFrame:
			body.Write(f.Data())
			if f.StreamEnded() {
				return head, body.String()
			}
		case *http2.RSTStreamFrame, *http2.GoAwayFrame:
			c.t.Fatal(f)
		}
	}
}

// Over HTTP/2 too, and what comes after is as it should be: both sides know the same
// headers.
func TestUnheard_HTTP2(t *testing.T) {
	dir, pair := minted(t)
	at := overTLS(t, handlerOver(echo), &tls.Config{Certificates: []tls.Certificate{pair}, NextProtos: []string{"h2", "http/1.1"}}, nil)
	client := newTwoClient(t, at, trusting(t, dir))
	for range 3 {
		for _, c := range []struct {
			name, path, status string
			headers            []string
		}{
			{"health", "/healthz", "200", nil},
			{"a large head", "/", "431", []string{"a", strings.Repeat("~", 9_000), "b", strings.Repeat("~", 9_000)}},
			{"a header of HTTP/1", "/", "400", []string{"connection", "close"}},
			{"nothing", "/nothing", "404", nil},
			{"the wrong method", "/api/good", "405", nil},
		} {
			client.send("GET", c.path, true, c.headers...)
			head, body := client.hear()
			if head.Get(":status") != c.status {
				t.Errorf("%s: %s %s, want %s", c.name, head[":status"], body, c.status)
			}
			plain := http.Header{}
			for name, values := range head {
				plain[http.CanonicalHeaderKey(name)] = values
			}
			hasHeaders(t, c.name, plain)
			if got := plain.Values("Cache-Control"); len(got) != 1 || got[0] != "no-store" {
				t.Errorf("%s: Cache-Control: %q", c.name, got)
			}
			if body == "" {
				t.Errorf("%s: %s says nothing", c.name, c.status)
			}
		}
	}
}

// What holds of bodies holds over HTTP/2 too, and the other requests on the line go on.
func TestAPI_HTTP2(t *testing.T) {
	dir, pair := minted(t)
	config := &tls.Config{Certificates: []tls.Certificate{pair}, NextProtos: []string{"h2", "http/1.1"}}
	g := newGate(t)
	for _, c := range []struct {
		name, path, status, code string
		do                       door
		headers                  []string
	}{
		{"what will be read", "/api/good", "100", "", echo, []string{"content-length", "100"}},
		{"what will be read, of no length", "/api/good", "100", "", echo, nil},
		{"too large", "/api/good", "413", "http.body-too-large", echo, []string{"content-length", fmt.Sprint(maxBody + 1)}},
		{"another type", "/api/good", "415", "http.media-type", echo, []string{"content-type", "text/plain"}},
		{"unknown", "/api/bake", "404", "unknown-op", echo, nil},
		{"no page", "/", "405", "does not take POST", echo, nil},
		{"busy", "/api/good", "503", "http.busy", g.do, nil},
	} {
		h := handlerOver(c.do)
		if c.code == "http.busy" {
			g.busy(t, overSocket(t, h, nil))
		}
		client := newTwoClient(t, overTLS(t, h, config, nil), trusting(t, dir))
		client.send("POST", c.path, false, append(c.headers, "expect", "100-continue")...)
		head, body := client.hear()
		if head.Get(":status") != c.status || !strings.Contains(body, c.code) {
			t.Errorf("%s: %s %s, want %s %s", c.name, head[":status"], body, c.status, c.code)
		}
	}
}
