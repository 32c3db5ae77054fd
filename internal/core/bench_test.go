package core_test

import (
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// BenchmarkPlan makes the plan of every sample card once.
func BenchmarkPlan(b *testing.B) {
	var inputs [][]byte
	for _, text := range specs.Cards() {
		inputs = append(inputs, slices.Concat([]byte(`{"card":`), text, []byte(`}`)))
	}
	for b.Loop() {
		for _, in := range inputs {
			if _, outcome := core.Do("plan", in); outcome != core.OK {
				b.Fatal("no plan")
			}
		}
	}
}
