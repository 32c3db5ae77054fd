package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// made runs `make build` once, so that the tests see what is shipped.
var made = sync.OnceValues(func() ([]byte, error) {
	return exec.Command("make", "-C", "../..", "build").CombinedOutput()
})

// built returns the path of a file that `make build` puts into build/.
func built(t *testing.T, name string) string {
	t.Helper()
	if out, err := made(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return filepath.Join("../../build", name)
}

// coreFiles returns the core's path, with what belongs to it beside it.
func coreFiles(t *testing.T) string { return built(t, "core.wasm") }

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
