package core_test

import (
	"encoding/json"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// The description of the operations is true: each example's answer contains
// what the description says.
func TestOps_Examples(t *testing.T) {
	shown := map[string]bool{}
	for _, e := range specs.Examples() {
		shown[e.Op] = true
		t.Run(e.Heading, func(t *testing.T) {
			out, _ := core.Do(e.Op, []byte(e.In))
			if diff := missing(decode(t, []byte(e.Out)), decode(t, out), ""); diff != "" {
				t.Errorf("%s %s\n%s\nanswer: %s", e.Op, e.In, diff, out)
			}
		})
	}
	for _, op := range operationNames() {
		if !shown[op] {
			t.Errorf("specs/ops.md has no example of %q", op)
		}
	}
}

// missing says what of want does not stand in got; "" when all does. Elements of
// a list may be left out of want, their order not changed.
func missing(want, got any, where string) string {
	switch w := want.(type) {
	case map[string]any:
		g, ok := got.(map[string]any)
		if !ok {
			return where + ": want an object, got " + show(got)
		}
		for name, v := range w {
			if diff := missing(v, g[name], where+"/"+name); diff != "" {
				return diff
			}
		}
		return ""
	case []any:
		g, ok := got.([]any)
		if !ok {
			return where + ": want a list, got " + show(got)
		}
		return missingFromList(w, g, where)
	}
	if want != got {
		return where + ": want " + show(want) + ", got " + show(got)
	}
	return ""
}

func missingFromList(want, got []any, where string) string {
	n := 0
	for _, w := range want {
		for n < len(got) && missing(w, got[n], where) != "" {
			n++
		}
		if n == len(got) {
			return where + ": nothing there, in this order, holds " + show(w)
		}
		n++
	}
	return ""
}

func show(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// The comparison itself must be able to fail.
func TestMissing(t *testing.T) {
	for _, c := range []struct {
		want, got string
		found     bool
	}{
		{`{"a":1}`, `{"a":1,"b":2}`, true},
		{`{"a":1}`, `{"b":2}`, false},
		{`[1,3]`, `[1,2,3]`, true},
		{`[3,1]`, `[1,2,3]`, false},
		{`[1,1]`, `[1]`, false},
		{`[{"a":[2]}]`, `[{"a":[1]},{"a":[1,2]}]`, true},
		{`{"a":null}`, `{"a":0}`, false},
	} {
		if diff := missing(decode(t, []byte(c.want)), decode(t, []byte(c.got)), ""); (diff == "") != c.found {
			t.Errorf("missing(%s, %s) = %q, want found %v", c.want, c.got, diff, c.found)
		}
	}
}

// decode gives a JSON text as the language has it.
func decode(t testing.TB, text []byte) any {
	t.Helper()
	var v any
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatalf("%.80s: %v", text, err)
	}
	return v
}
