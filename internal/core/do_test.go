package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tidysump/internal/core"
)

// finding is the wire form of a finding, read here without the program's own
// reader.
type finding struct {
	Code   string            `json:"code"`
	Where  string            `json:"where"`
	Grade  string            `json:"grade"`
	Values map[string]string `json:"values"`
}

// answer is what the core says.
type answer struct {
	OK       json.RawMessage `json:"ok"`
	Findings []finding       `json:"findings"`
}

func do(t testing.TB, op string, in []byte) (answer, core.Outcome) {
	t.Helper()
	out, outcome := core.Do(op, in)
	var a answer
	if err := json.Unmarshal(out, &a); err != nil {
		t.Fatalf("%s %.200s: answer %.200s is no JSON: %v", op, in, out, err)
	}
	return a, outcome
}

// must gives the answer of an operation that succeeds.
func must(t testing.TB, op string, in []byte, into any) {
	t.Helper()
	a, outcome := do(t, op, in)
	if outcome != core.OK {
		t.Fatalf("%s %.200s: outcome %v, findings %+v", op, in, outcome, a.Findings)
	}
	if err := json.Unmarshal(a.OK, into); err != nil {
		t.Fatalf("%s: %v", op, err)
	}
}

func cardInput(card []byte, bench string) []byte {
	return slices.Concat([]byte(`{"card":`), card, []byte(`,"bench":`+bench+`}`))
}

// rootFile reads a file by its path in the repository.
func rootFile(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// operationNames lists the operations in the order of their names.
func operationNames() []string {
	var list []string
	for _, o := range core.Operations() {
		list = append(list, o.Name)
	}
	slices.Sort(list)
	return list
}
