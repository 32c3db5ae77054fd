package core_test

import (
	"encoding/json"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// What a step gives to a calculation can be used there: at most something that a
// person must add is missing.
func TestHelps_CanBeUsed(t *testing.T) {
	used := map[string]bool{}
	for name, card := range specs.Cards() {
		for _, bench := range []string{`{}`, `{"keepFilter":true,"system":"us"}`} {
			in := slices.Concat([]byte(`{"card":`), card, []byte(`,"bench":`+bench+`}`))
			var plan struct {
				OK struct {
					Steps []struct {
						ID    string
						Helps []struct {
							Op    string
							Given json.RawMessage
						}
					}
				}
			}
			if err := json.Unmarshal(core.Call("plan", in), &plan); err != nil {
				t.Fatal(err)
			}
			for _, s := range plan.OK.Steps {
				for _, h := range s.Helps {
					used[h.Op] = true
					if h.Given == nil {
						h.Given = []byte(`{}`)
					}
					var answer struct {
						Findings []struct{ Code, Where string }
					}
					if err := json.Unmarshal(core.Call(h.Op, h.Given), &answer); err != nil {
						t.Fatal(err)
					}
					for _, f := range answer.Findings {
						if f.Code != "missing" && f.Code != "fuel-nothing-read" {
							t.Errorf("%s %s: %s %s: %s at %s", name, s.ID, h.Op, h.Given, f.Code, f.Where)
						}
					}
				}
			}
		}
	}
	for _, op := range []string{"torque-check", "wrench", "wrench-check", "bottles", "first-fill", "level", "run-out", "cool", "oil-suits", "o-ring", "fuel", "oil-pressure"} {
		if !used[op] {
			t.Errorf("no step of a sample card helps with %s", op)
		}
	}
}
