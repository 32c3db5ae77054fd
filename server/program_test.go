package main

import (
	"bufio"
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
)

// asProgram makes the test binary behave as the program itself.
const asProgram = "TIDYSUMP_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		os.Exit(run())
	}
	os.Exit(m.Run())
}

// made runs make's target for the core once, so that the tests see what the
// program is shipped with.
var made = sync.OnceValues(func() ([]byte, error) {
	return exec.Command("make", "-C", "..", "core").CombinedOutput()
})

// coreFiles returns the core's path, with what belongs to it beside it.
func coreFiles(t *testing.T) string {
	t.Helper()
	if out, err := made(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return "../build/core.wasm"
}

// compilersFile returns wasm_exec.js of the compiler in use.
func compilersFile(t *testing.T) []byte {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	body, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec.js"))
	if err != nil {
		t.Fatal(err)
	}
	return body
}

// command is the program as a process of its own.
func command(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	args = append([]string{"-static", "../static", "-core", coreFiles(t), "-cache", "../build/compressed"}, args...)
	c := exec.Command(os.Args[0], args...)
	c.Env = append(os.Environ(), asProgram+"=1")
	return c
}

func TestProgram_Process(t *testing.T) {
	c := command(t, "-addr", "localhost:0")
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	defer c.Process.Kill()
	line, err := bufio.NewReader(out).ReadString('\n')
	parts := regexp.MustCompile(`^Tidysump is on (http://localhost:\d+) \(Ctrl-C stops it\)\n$`).FindStringSubmatch(line)
	if parts == nil {
		t.Fatalf("it says %q (%v)", line, err)
	}
	resp, err := http.Get(parts[1] + "/healthz")
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(resp.Body)
	resp.Body.Close()
	if err != nil || !regexp.MustCompile(`^ok [0-9a-f]{12}\n$`).Match(body) {
		t.Errorf("/healthz: %q (%v)", body, err)
	}
	if err := c.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := c.Wait(); err != nil {
		t.Errorf("after SIGTERM: %v", err)
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
	p := Program{Static: "../static", Core: coreFiles(t), Cache: "../build/compressed", Export: dir, Out: io.Discard}
	if err := p.Run(context.Background()); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"index.html", "index.html.br", "sw.js", "headers.json"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
}

func TestProgram_NoSources(t *testing.T) {
	p := Program{Static: t.TempDir(), Core: coreFiles(t), Out: io.Discard}
	if err := p.Run(context.Background()); err == nil || !strings.Contains(err.Error(), "changelog.json") {
		t.Errorf("without sources: %v", err)
	}
}
