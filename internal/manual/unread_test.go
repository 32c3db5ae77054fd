package manual

import "testing"

// A row whose figure nobody can read keeps it: what the row says is of no figure of another
// row, and does not make the page one of its oil.
func TestRead_UnreadRow(t *testing.T) {
	for _, c := range []struct{ text, never string }{
		{"CAPACITIES\nENGINE OIL AFTER DISASSEMBLY – 3.0 1\nFINAL DRIVE OIL – 0.1 l", "oil.final.dry"},
		{"CAPACITIES\nFinal drive oil: 0.1 1\n\nTORQUES\nOil drain bolt: 15 N·m", "bolt.final-drain.torque"},
		{"CAPACITIES\nGEARBOX OIL: 0.5 1\nENGINE OIL: 3.0 l\n\nOil change: every 2000 km", "interval.gearbox"},
		{"TORQUES            N·m     kgf·m\nCLUTCH COVER BOLTS   21      2.l\nFINAL DRIVE FILLER CAP   8   0.8\n\nOil change: every 2000 km", "interval.final"},
	} {
		for _, r := range Read(c.text, "").Readings {
			if r.What == c.never {
				t.Errorf("%s %s in\n%s", r.What, r.Text, c.text)
			}
		}
	}
}
