package quantity

import "testing"

// Every unit stands once in the table of graduations: one that is missing would
// be printed whole, "1 kN" for 1.4 kN.
func TestGraduations_HaveEveryUnit(t *testing.T) {
	rows := map[string]int{}
	for _, g := range graduations {
		for _, u := range g.units {
			rows[u]++
			if _, known := Find(u); !known {
				t.Errorf("a graduation of %q, which is no unit", u)
			}
		}
	}
	for _, u := range Units {
		if rows[u.ID] != 1 {
			t.Errorf("%s stands in %d rows of graduations (graduation.go), want one", u.ID, rows[u.ID])
		}
	}
}
