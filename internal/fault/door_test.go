package fault_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/fault"
)

// What one can look through on a phone in a dark garage: common practice, no source.
const (
	mostBehind = 16 // problems behind a door
	mostAtStep = 6  // problems on top at a step of a job
	mostOnTop  = 3  // problems before the doors
)

// Every problem stands behind one door, and no door has more than one can look through.
func TestTable_Doors(t *testing.T) {
	behind, top := map[string]int{}, 0
	for _, f := range table.Faults {
		if !slices.Contains(fault.Doors, f.Door) {
			t.Errorf("%s: %q is no door", f.ID, f.Door)
		}
		behind[f.Door]++
		if f.Top {
			top++
			if f.Door != fault.Doors[0] {
				t.Errorf("%s stands before the doors, and behind %q", f.ID, f.Door)
			}
		}
	}
	for _, door := range fault.Doors {
		if n := behind[door]; n == 0 || n > mostBehind {
			t.Errorf("behind %q stand %d problems", door, n)
		}
	}
	if top == 0 || top > mostOnTop {
		t.Errorf("before the doors stand %d problems", top)
	}
}

// Every step that was ever released has a problem or more on top, and no more than one
// takes in at a glance; a problem names no step that never was.
func TestTable_AtSteps(t *testing.T) {
	data, err := os.ReadFile("../../testdata/steps-released.txt")
	if err != nil {
		t.Fatal(err)
	}
	fitting := map[string]int{}
	for line := range strings.Lines(string(data)) {
		if word := strings.TrimSpace(line); word != "" && !strings.HasPrefix(word, "#") {
			fitting[word] = 0
		}
	}
	for _, f := range table.Faults {
		for n, word := range f.At {
			if _, is := fitting[word]; !is || slices.Contains(f.At[:n], word) {
				t.Errorf("%s: %q is no step, or stands twice", f.ID, word)
			}
			fitting[word]++
		}
	}
	for word, n := range fitting {
		if n == 0 || n > mostAtStep {
			t.Errorf("at the step %s stand %d problems", word, n)
		}
	}
}

// What goes with the address of a problem stands there beside its answers: none of the
// questions is called so.
func TestTable_NamesInAddresses(t *testing.T) {
	for _, name := range []string{"bike", "door", "hand", "job", "step"} {
		if _, is := table.Questions[name]; is {
			t.Errorf("a question is called %q", name)
		}
	}
}
