package fault_test

import (
	"strings"
	"testing"

	"tidysump/internal/fault"
)

// An answer stops a leaking bike exactly where the table's rows stop it: every problem
// that asks the question and is of a leak, a lamp, a crack or too little oil stops by
// that answer, whatever else is said, with nothing at hand; and for each other answer
// there is a problem that doesn't.
func TestLeakStops_AsTheTable(t *testing.T) {
	problems := map[string]string{
		"tyre": "drop-wheel filter-burst lost-plug", "lamp": "too-little", "side": "cracked", "level": "lamp-start lamp-flicker",
	}
	for question, ids := range problems {
		for answer := range strings.FieldsSeq(table.Questions[question]) {
			stops := true
			for id := range strings.FieldsSeq(ids) {
				f := table.Find(id)
				said := map[string]string{question: answer}
				for _, q := range f.Asks {
					if q != question {
						said[q] = strings.Fields(table.Questions[q])[0] // the best
					}
				}
				hand := f.Hand
				if fault.LeakStops(question, answer) {
					hand = nil
				}
				stops = stops && fault.Stops(fault.Judge(table, f, said, hand).Outcome)
			}
			if got := fault.LeakStops(question, answer); got && !stops {
				t.Errorf("%s %s stops a leak; the table lets it ride", question, answer)
			}
		}
		if !fault.LeakStops(question, "") {
			t.Errorf("%s: nobody looked, and it rides", question)
		}
	}
	for _, free := range [][2]string{{"tyre", "no"}, {"lamp", "out"}, {"side", "pan"}, {"level", "right"}, {"colour", "blue"}} {
		if fault.LeakStops(free[0], free[1]) {
			t.Errorf("%s %s stops", free[0], free[1])
		}
	}
}
