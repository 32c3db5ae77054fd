package manual

import "testing"

// What a photo has glued, torn or spoilt is asked as what it was, or is not read: never is
// something else sure.
func TestRead_GluedAndTorn(t *testing.T) {
	for _, c := range []struct{ text, what, value string }{
		{"Engine oil afterdisassembly ..... 3.0 L", "oil.engine.dry", "3.0 L"},
		{"Engine oil after disassermbly ..... 3.0 L", "", ""},
		{"Engine oil after disassermbly ..... 3.0 L\nGearbox oil ..... O.6 L", "oil.engine.dry", "3.0 L"},
		{"Engine oil, fotal amount – 3.0 L", "", ""},
		{"Final drive oil: 0.  1 L", "oil.final.volume", "0.1 L"},
		{"Final drive oil: 0 . 1 L", "oil.final.volume", "0.1 L"},
		{"Final drive oil – 0, 1 L", "oil.final.volume", "1 L"},
		{"Engine oil: SAE 20W-S0", "oil.engine.grades", "20W-50"},
		{"Engine oil: SAEl0W-40", "oil.engine.grades", "10W-40"},
		{"Engine oil: SAE |0W-40", "", ""},
		{"Engine oil: SAE 10W-40, JASOMA2", "oil.engine.marks", "MA2"},
		{"Primary drain plug: |5 N·m", "bolt.primary-drain.torque", "5 N·m"},
		{"Coolanf drain bolt: 5 N·m\nFinal drive drain bolt: 12 N·m", "bolt.final-drain.torque", "12 N·m"},
		{"Oil change: first at300 km, then every 2000 km", "interval.first", "300 km"},
		{"Final drive oil: 0.1 L (0.1 US qt\nEngine oil after disassembly: 3.0 L (3.2 US qt)", "oil.engine.dry", "3.0 L"},
		{"SPIN-0N OIL FILTER ..... 10 N·m", "bolt.filter.torque", "10 N·m"},
	} {
		found := false
		for _, r := range Read(c.text, "").Readings {
			switch {
			case r.What == c.what && r.Text == c.value:
				found = true
			case r.Sure && r.What != "bolt.final-drain.torque" && r.What != "oil.final.volume" && r.What != "oil.engine.grades" && r.What != "interval.distance" && r.What != "filter.kind":
				t.Errorf("%s %s is sure of %q", r.What, r.Text, c.text)
			}
		}
		if !found && c.what != "" {
			t.Errorf("%s %s is not read in %q", c.what, c.value, c.text)
		}
	}
}
