package job

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Of all runs of times that don't fall none is longer than the one that is believed,
// and none as long ends earlier: every one of them is tried.
func TestLongestRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var times []string
		for range rapid.IntRange(0, 9).Draw(t, "times") {
			times = append(times, strconv.Itoa(rapid.IntRange(0, 5).Draw(t, "time")))
		}
		var run []string
		for i, in := range longestRun(times) {
			if in {
				run = append(run, times[i])
			}
		}
		if !slices.IsSorted(run) {
			t.Fatalf("%v: the run %v falls", times, run)
		}
		for mask := range 1 << len(times) {
			var other []string
			for i := range times {
				if mask>>i&1 == 1 {
					other = append(other, times[i])
				}
			}
			if !slices.IsSorted(other) || len(other) == 0 {
				continue
			}
			if len(other) > len(run) || len(other) == len(run) && strings.Compare(other[len(other)-1], run[len(run)-1]) < 0 {
				t.Fatalf("%v: the run is %v, and %v is better", times, run, other)
			}
		}
	})
}
