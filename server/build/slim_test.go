package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// The core as the page gets it, slimmed, answers every example of ops.md as the
// native one does, byte for byte. A version of Go may be named in slim.Seen when
// this holds with it.
func TestSlimCore_AnswersAlike(t *testing.T) {
	s := page(t)
	slimmed := s.File(s.URL("core.wasm")).Body
	if whole, err := os.ReadFile(coreFiles(t)); err != nil || bytes.Equal(slimmed, whole) {
		t.Fatalf("the site's core is not slimmed (%v)", err)
	}
	examples := specs.Examples()
	var calls [][2]string
	for range 3 { // what an answer leaves behind changes no later one
		for _, e := range examples {
			calls = append(calls, [2]string{e.Op, e.In})
		}
	}
	for n, got := range answers(t, slimmed, calls) {
		if want := core.Call(calls[n][0], []byte(calls[n][1])); got != string(want) {
			t.Errorf("%s %s\nthe slim core: %s\nthe native one: %s", calls[n][0], calls[n][1], got, want)
		}
	}
}

// answers gives what a core in Node answers to calls, each an operation and its
// input.
func answers(t *testing.T, program []byte, calls [][2]string) (list []string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "core.wasm")
	if err := os.WriteFile(path, program, 0o600); err != nil {
		t.Fatal(err)
	}
	in, err := json.Marshal(calls)
	if err != nil {
		t.Fatal(err)
	}
	node := exec.Command("node", "../../static/test/core-answers.js", path)
	node.Stdin = bytes.NewReader(in)
	var complaints bytes.Buffer
	node.Stderr = &complaints
	out, err := node.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaints.Bytes())
	}
	if err := json.Unmarshal(out, &list); err != nil || len(list) != len(calls) {
		t.Fatalf("%d answers to %d calls (%v)", len(list), len(calls), err)
	}
	return list
}
