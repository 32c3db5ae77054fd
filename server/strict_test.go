package main

import (
	"crypto/tls"
	"net/http"
	"path/filepath"
	"strings"
	"testing"
)

// What browsers are to remember is said as it was asked for, whoever answers; over HTTPS
// only, and never unasked.
func TestProgram_Strict(t *testing.T) {
	dir := t.TempDir()
	mint(t, dir, 1)
	certificate := []string{"-addr", "localhost:0", "-cert", filepath.Join(dir, "cert.pem"), "-key", filepath.Join(dir, "key.pem")}
	for _, c := range []struct {
		flags []string
		want  string
	}{
		{nil, ""},
		{[]string{"-hsts", "24h"}, "max-age=86400"},
		{[]string{"-hsts", "8760h", "-hsts-subdomains"}, "max-age=31536000; includeSubDomains"},
		{[]string{"-hsts", "0"}, "max-age=0"},
	} {
		url := started(t, append(c.flags, certificate...)...)
		at := "localhost" + strings.TrimPrefix(url, "https://workshop.example")
		for _, path := range []string{"/", "/nothing", "/api/plan", "/healthz", "none of these"} {
			conn, err := tls.Dial("tcp", at, trusting(t, dir))
			if err != nil {
				t.Fatal(err)
			}
			s := speak(t, conn)
			s.say("GET "+path+" HTTP/1.1", "Host: x", "")
			resp, _ := s.hear("GET")
			if got := strings.Join(resp.Header.Values("Strict-Transport-Security"), " and "); got != c.want {
				t.Errorf("with %v, %s: %s, Strict-Transport-Security %q, want %q", c.flags, path, resp.Status, got, c.want)
			}
		}
		plain := dial(t, at)
		plain.say("GET / HTTP/1.1", "Host: x", "")
		if resp, _ := plain.hear("GET"); resp.StatusCode != 400 || resp.Header.Get("Strict-Transport-Security") != "" {
			t.Errorf("with %v, in plain: %s, Strict-Transport-Security %q", c.flags, resp.Status, resp.Header.Get("Strict-Transport-Security"))
		}
	}
	resp, err := http.Get(started(t, "-addr", "localhost:0"))
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	if got := resp.Header.Get("Strict-Transport-Security"); got != "" {
		t.Errorf("over plain HTTP: %q", got)
	}
}

func TestProgram_StrictErrors(t *testing.T) {
	dir := t.TempDir()
	mint(t, dir, 1)
	secure := []string{"-cert", filepath.Join(dir, "cert.pem"), "-key", filepath.Join(dir, "key.pem")}
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"-hsts", "24h"}, "-hsts is about HTTPS"},
		{append([]string{"-hsts-subdomains"}, secure...), "-hsts-subdomains goes with -hsts"},
		{append([]string{"-hsts", "-1h"}, secure...), "-hsts is less than nothing"},
		{append([]string{"-hsts", "long"}, secure...), `invalid value "long" for flag -hsts`},
		{[]string{"-memory", "-1"}, "-memory is less than nothing"},
	} {
		out, err := command(t, append([]string{"-addr", "localhost:0"}, c.args...)...).CombinedOutput()
		if err == nil || !strings.Contains(string(out), c.want) {
			t.Errorf("%v: %s (%v), want %q", c.args, out, err, c.want)
		}
	}
}
