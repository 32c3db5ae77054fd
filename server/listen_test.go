package main

import (
	"errors"
	"net"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

// hasSix reports whether this machine has ::1.
func hasSix(t *testing.T) bool {
	l, err := net.Listen("tcp6", "[::1]:0")
	if err != nil {
		return false
	}
	l.Close()
	return true
}

// elsewhere are the addresses of this machine that others reach.
func elsewhere(t *testing.T) []net.IP {
	t.Helper()
	all, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	var list []net.IP
	for _, a := range all {
		if ip := a.(*net.IPNet).IP; ip.IsGlobalUnicast() {
			list = append(list, ip)
		}
	}
	return list
}

// Who can reach it, and what is said of that.
func TestListen(t *testing.T) {
	for _, c := range []struct {
		addr      string
		four, six bool
		open      bool
		host      string
	}{
		{"localhost:0", true, hasSix(t), false, "localhost"},
		{"127.0.0.1:0", true, false, false, "localhost"},
		{":0", true, hasSix(t), true, "localhost"},
		{"0.0.0.0:0", true, hasSix(t), true, "localhost"}, // Go takes it for all,
	} {
		all, err := listen(c.addr, "-addr")
		if err != nil {
			t.Fatal(err)
		}
		defer all.close()
		reaches := func(host string) bool {
			conn, err := net.Dial("tcp", net.JoinHostPort(host, strconv.Itoa(all.port())))
			if err == nil {
				conn.Close()
			}
			return err == nil
		}
		if got := reaches("127.0.0.1"); got != c.four {
			t.Errorf("%s: over 127.0.0.1: %v", c.addr, got)
		}
		if got := reaches("::1"); got != c.six {
			t.Errorf("%s: over ::1: %v", c.addr, got)
		}
		for _, ip := range elsewhere(t) {
			if got := reaches(ip.String()); got != (c.open && (c.six || ip.To4() != nil)) {
				t.Errorf("%s: over %s: %v", c.addr, ip, got)
			}
		}
		if got := all.host(); got != c.host {
			t.Errorf("%s: opened as %s, want %s", c.addr, got, c.host)
		}
		said := all.reach()
		if open := strings.HasPrefix(said, "Other machines can open it"); open != c.open {
			t.Errorf("%s: it says %q", c.addr, said)
		}
		if tells := strings.Contains(said, "-addr :"+strconv.Itoa(all.port())+" "); tells == c.open || !strings.Contains(said, "HTTPS") {
			t.Errorf("%s: it says %q", c.addr, said)
		}
	}
}

// A loopback address that another program has is not left to it: a browser might be led
// there.
func TestListen_HalfBusy(t *testing.T) {
	for _, busy := range []string{"127.0.0.1:0", "[::1]:0"} {
		other, err := net.Listen("tcp", busy)
		if err != nil {
			continue // a machine without it
		}
		defer other.Close()
		port := strconv.Itoa(other.Addr().(*net.TCPAddr).Port)
		all, err := listen("localhost:"+port, "-addr")
		if err == nil {
			all.close()
		}
		if !errors.Is(err, syscall.EADDRINUSE) || !strings.Contains(err.Error(), other.Addr().String()) {
			t.Errorf("while another program has %s: %v", other.Addr(), err)
		}
		for _, address := range []string{"127.0.0.1:", "[::1]:"} {
			if address+port == other.Addr().String() {
				continue
			}
			if l, err := net.Listen("tcp", address+port); err == nil {
				l.Close()
			} else if errors.Is(err, syscall.EADDRINUSE) {
				t.Errorf("%s%s is still listened on", address, port)
			}
		}
	}
}

// By itself it listens to nobody but this machine.
func TestProgram_DefaultAddress(t *testing.T) {
	free, err := listen("localhost:8080", "-addr")
	if err != nil {
		out, err := command(t).CombinedOutput()
		if err == nil || !strings.Contains(string(out), ":8080 already") {
			t.Errorf("while another program has the port: %s (%v)", out, err)
		}
		return
	}
	free.close()
	r := start(t)
	if r.url != "http://localhost:8080" || !strings.HasPrefix(r.lines[1], "Only this machine can open it. -addr :8080 ") {
		t.Errorf("it says %q", r.lines)
	}
	for _, ip := range elsewhere(t) {
		if conn, err := net.Dial("tcp", net.JoinHostPort(ip.String(), "8080")); err == nil {
			conn.Close()
			t.Errorf("others reach it at %s", ip)
		}
	}
}
