package core_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// Who names no system of units is metric, in every operation and every bench; one of a
// name that there is none of is refused.
func TestSystem_AbsentIsMetric(t *testing.T) {
	asked := map[string]bool{}
	for _, e := range specs.Examples() {
		for _, place := range []string{"", "bench"} {
			var in map[string]any
			if json.Unmarshal([]byte(e.In), &in) != nil {
				continue // an example of what is no JSON
			}
			at := in
			if place != "" {
				at, _ = in[place].(map[string]any)
			}
			if at == nil {
				continue
			}
			ask := func(system any) []byte {
				delete(at, "system")
				if system != nil {
					at["system"] = system
				}
				text, err := json.Marshal(in)
				if err != nil {
					t.Fatal(err)
				}
				out, _ := core.Do(e.Op, text)
				return out
			}
			metric := ask("metric")
			if bytes.Contains(metric, []byte(`"unknown-member"`)) {
				continue // it has none
			}
			asked[e.Op] = true
			for _, absent := range []any{nil, ""} {
				if out := ask(absent); !bytes.Equal(out, metric) {
					t.Errorf("%s %s with the system %v at %q:\n%.400s\nmetric:\n%.400s", e.Op, e.In, absent, place, out, metric)
				}
			}
			if out := ask("old"); !bytes.Contains(out, []byte(`"findings"`)) {
				t.Errorf("%s %s takes the system old at %q: %.400s", e.Op, e.In, place, out)
			}
		}
	}
	for _, op := range []string{"convert", "read-entry", "forms", "plan", "due", "csv", "survey", "torque-check"} {
		if !asked[op] {
			t.Errorf("%s was asked in no system: %v", op, slices.Sorted(maps.Keys(asked)))
		}
	}
}
