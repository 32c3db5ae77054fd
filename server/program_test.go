package main

import (
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"

	"tidysump/internal/site"
)

// asProgram makes the test binary behave as the program itself.
const asProgram = "TIDYSUMP_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		os.Exit(run())
	}
	os.Exit(m.Run())
}

// archive returns the path of a small site's archive.
func archive(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "site.zip")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	small := site.Site{Version: "0123456789ab", Built: "2026-11-25"}
	small.Add(&site.File{Path: "/", Type: "text/html; charset=utf-8", Sum: strings.Repeat("0", 64), Body: []byte("<!doctype html><title>Small</title>")})
	if err := small.Write(f); err != nil {
		t.Fatal(err)
	}
	return path
}

// command is the program as a process of its own.
func command(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	args = append([]string{"-site", archive(t)}, args...)
	c := exec.Command(os.Args[0], args...)
	c.Env = append(os.Environ(), asProgram+"=1")
	return c
}

// running is the program as it runs.
type running struct {
	*exec.Cmd
	url   string   // that it says it is on
	lines []string // what else it says
	end   func()   // stops it, as a person would; it must end well
}

// start starts the program; with the test at the latest it ends.
func start(t *testing.T, args ...string) *running {
	t.Helper()
	c := command(t, args...)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	r := &running{Cmd: c}
	r.end = sync.OnceFunc(func() {
		if err := c.Process.Signal(syscall.SIGTERM); err != nil {
			t.Error(err)
		}
		if err := c.Wait(); err != nil {
			t.Errorf("after SIGTERM: %v", err)
		}
	})
	t.Cleanup(r.end)
	said := make([]byte, 1000)
	n, err := out.Read(said) // all that it says at its start it says at once
	r.lines = strings.Split(string(said[:n]), "\n")
	parts := regexp.MustCompile(`^Tidysump is on (https?://[a-z0-9.]+(:\d+)?) \(Ctrl-C stops it\)$`).FindStringSubmatch(r.lines[0])
	if parts == nil {
		t.Fatalf("it says %q (%v)", said[:n], err)
	}
	r.url = parts[1]
	return r
}

// started starts the program and returns the URL that it says it is on.
func started(t *testing.T, args ...string) string {
	t.Helper()
	return start(t, args...).url
}

func TestProgram_Process(t *testing.T) {
	url := started(t, "-addr", "localhost:0")
	if !strings.HasPrefix(url, "http://localhost:") {
		t.Errorf("it says it is on %s", url)
	}
	resp, err := http.Get(url + "/healthz")
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(resp.Body)
	resp.Body.Close()
	if err != nil || !regexp.MustCompile(`^ok [0-9a-f]{12}\n$`).Match(body) {
		t.Errorf("/healthz: %q (%v)", body, err)
	}
}

func TestProgram_BusyPort(t *testing.T) {
	busy, err := net.Listen("tcp", "localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	defer busy.Close()
	out, err := command(t, "-addr", busy.Addr().String()).CombinedOutput()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != 1 {
		t.Errorf("ended with %v, want exit code 1", err)
	}
	if lines := strings.Count(string(out), "\n"); lines != 1 || !strings.Contains(string(out), busy.Addr().String()) {
		t.Errorf("it says %q, want one line with the address", out)
	}
}

func TestProgram_Export(t *testing.T) {
	dir := t.TempDir()
	p := Program{Site: archive(t), Export: dir, Out: io.Discard}
	if err := p.Run(context.Background()); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"index.html", "headers.json"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
}

func TestProgram_NoSite(t *testing.T) {
	missing := filepath.Join(t.TempDir(), "site.zip")
	broken := filepath.Join(t.TempDir(), "broken.zip")
	if err := os.WriteFile(broken, []byte("PK"), 0o644); err != nil {
		t.Fatal(err)
	}
	for site, want := range map[string]string{missing: missing, broken: broken, "": "make build"} {
		err := Program{Site: site, Out: io.Discard}.Run(context.Background())
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("with the site %q: %v, want %q", site, err, want)
		}
	}
}
