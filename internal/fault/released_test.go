package fault_test

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// A job keeps the problem that was met, what was answered and what was at hand by
// their ids: none that was ever released leaves the table, or is given another
// meaning.
func TestTable_KeepsWhatWasReleased(t *testing.T) {
	data, err := os.ReadFile("../../testdata/faults-released.txt")
	if err != nil {
		t.Fatal(err)
	}
	var now []string
	for _, f := range table.Faults {
		now = append(now, "problem "+f.ID)
		for _, q := range f.Asks {
			for _, a := range strings.Fields(table.Questions[q]) {
				now = append(now, "answer "+f.ID+" "+q+"="+a)
			}
		}
		for _, thing := range f.Hand {
			now = append(now, "at hand "+f.ID+" "+thing)
		}
	}
	released := strings.Split(strings.TrimSpace(string(data)), "\n")
	for _, line := range released {
		if !slices.Contains(now, line) {
			t.Errorf("%q was released and is not in the table any more", line)
		}
	}
	for _, line := range now {
		if !slices.Contains(released, line) {
			t.Errorf("%q is not in faults-released.txt", line)
		}
	}
	if len(released) < 200 {
		t.Errorf("only %d lines were released", len(released))
	}
}
