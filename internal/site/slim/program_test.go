package slim_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"tidysump/internal/site/slim"
)

// built builds a program of testdata for WebAssembly, as the core is built.
func built(t *testing.T) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "program.wasm")
	build := exec.Command("go", "build", "-trimpath", "-gcflags=all=-l", "-ldflags=-s -w -buildid=", "-o", out, "./testdata/program")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	program, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// run runs a program in Node, collecting garbage as often as can be, and gives what
// it printed and its exit code.
func run(t *testing.T, program []byte) (printed string, code int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "program.wasm")
	if err := os.WriteFile(path, program, 0o600); err != nil {
		t.Fatal(err)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	node := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec_node.js"), path)
	node.Env = append(os.Environ(), "GOGC=1")
	out, err := node.CombinedOutput()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return string(out), node.ProcessState.ExitCode()
}

// A slim program does what the whole one does, made by the Go in use.
func TestProgram_RunsAlike(t *testing.T) {
	whole := built(t)
	slimmed, err := slim.Program(whole)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(slimmed, []byte("main.caught")) || !bytes.Contains(whole, []byte("main.caught")) {
		t.Error("the names of functions are still there, or never were")
	}
	if len(whole)-len(slimmed) < 100_000 {
		t.Errorf("of %d bytes only %d are gone: the functions for traces are still there", len(whole), len(whole)-len(slimmed))
	}
	want, wantCode := run(t, whole)
	got, code := run(t, slimmed)
	if got != want || code != wantCode {
		t.Errorf("the slim program exits with %d and prints\n%s\nthe whole one with %d\n%s", code, got, wantCode, want)
	}
	if code != 3 || strings.Count(got, "after: ") != 5 {
		t.Errorf("the program doesn't do what the test needs: %d\n%s", code, got)
	}
}
