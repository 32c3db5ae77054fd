package drain

import "testing"

// TestBandsHoldPublishedLimits: no threshold here is above what others print for
// a contact as long, or longer. The bands of sheet metal are quoted from ISO
// 13732-1, which was not seen itself.
func TestBandsHoldPublishedLimits(t *testing.T) {
	for _, row := range []struct {
		seconds, limit float64
		source         string
	}{
		{1, 62, "sheet metal 62 to 65, quoting ISO 13732-1"},
		{5, 56, "sheet metal 56 to 61, quoting ISO 13732-1"},
		{60, 51, "all metals, quoting ISO 13732-1"},
		{600, 48, "\"48 °C at 10 min contact on bare metal\""},
		{8 * 3600, 43, "43 °C for prolonged contact"},
		{5, 60, "IEC 62368-1 TS1, metal, 1 to 10 s"},
		{60, 51, "IEC 62368-1 TS1, metal, 10 s to 1 min"},
		{600, 48, "IEC 62368-1 TS1, metal, above 1 min"},
		{1, 65, "ECMA-287, touch below 1 s, metal"},
		{8 * 3600, 43, "ECMA-287, hold up to 8 h"},
		{5, 60, "ASTM C1055, 60 °C for 5 s, second hand"},
	} {
		found := false
		for _, b := range Bands {
			if b.Seconds == row.seconds {
				found = true
				if b.Low > row.limit {
					t.Errorf("%v s: a burn from %v °C on, printed %v (%s)", row.seconds, b.Low, row.limit, row.source)
				}
			}
		}
		if !found {
			t.Errorf("no band for %v s (%s)", row.seconds, row.source)
		}
	}
	for i, want := range []Band{{1, 62, 65}, {5, 56, 61}, {60, 51, 51}, {600, 48, 48}, {8 * 3600, 43, 43}} {
		if Bands[i] != want {
			t.Errorf("band %d is %v, printed %v", i, Bands[i], want)
		}
	}
}

// TestScaldIsNeverLonger: the lists of agencies and hospitals differ by up to
// two; none of them gives less time at its temperature than is given here. Where
// a row is the shortest it is given as printed.
func TestScaldIsNeverLonger(t *testing.T) {
	const hour, minute = 3600, 60
	for _, row := range []struct {
		celsius, seconds float64
		exact            bool
		source           string
	}{
		{44, 6 * hour, false, "Moritz and Henriques 1947, as quoted"},
		{45, 2 * hour, true, "second degree"}, {45, 3 * hour, false, "third degree"},
		{47, 20 * minute, true, "second degree"}, {47, 45 * minute, false, "third degree"},
		{48, 15 * minute, true, "second degree"}, {48, 20 * minute, false, "third degree"},
		{48.9, 5 * minute, true, "CPSC, 120 °F"},
		{49, 8 * minute, false, "second degree"}, {49, 10 * minute, false, "third degree"},
		{51, 2 * minute, true, "second degree"}, {51, 4.2 * minute, false, "third degree"},
		{51.7, 1.5 * minute, true, "hospitals, 125 °F"},
		{54.4, 30, true, "CPSC and hospitals, 130 °F"},
		{55, 17, true, "second degree"}, {55, 30, false, "third degree"},
		{57.2, 10, true, "hospitals, 135 °F"},
		{60, 3, true, "second degree"}, {60, 5, false, "third degree"}, {60, 6, false, "CPSC, 140 °F"},
		{62.8, 3, false, "hospitals, 145 °F, under 3 s"},
		{65.6, 1.5, true, "hospitals, 150 °F"}, {65.6, 2, false, "CPSC, 150 °F"},
		{68.3, 1, true, "hospitals, 155 °F"},
		{72.2, 0, true, "NIST as quoted, 162 °F, on contact"},
	} {
		got, ok := Scald(row.celsius)
		if !ok || got > row.seconds || row.exact && got != row.seconds {
			t.Errorf("Scald(%v) = %v, %v, printed %v (%s)", row.celsius, got, ok, row.seconds, row.source)
		}
	}
}
