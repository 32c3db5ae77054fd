package drain

import (
	"testing"

	"pgregory.net/rapid"
)

// publishedTouches are limits and thresholds as others print them, in °C, each for a
// contact in seconds.
var publishedTouches = []struct {
	surface        Surface
	seconds, limit float64
	source         string
}{
	{Metal, 1, 62, "sheet metal 62 to 65, quoting ISO 13732-1"},
	{Metal, 2, 60, "sheet metal 60 to 64, quoting ISO 13732-1"},
	{Metal, 5, 56, "sheet metal 56 to 61, quoting ISO 13732-1"},
	{Metal, 60, 51, "all metals, quoting ISO 13732-1"},
	{Metal, 600, 48, "\"48 °C at 10 min contact on bare metal\""},
	{Metal, 8 * 3600, 43, "43 °C for prolonged contact"},
	{Metal, 10, 60, "IEC 62368-1 TS1, metal, 1 to 10 s"},
	{Metal, 60, 51, "IEC 62368-1 TS1, metal, 10 s to 1 min"},
	{Metal, 600, 48, "IEC 62368-1 TS1, metal, above 1 min"},
	{Metal, 1, 65, "ECMA-287, touch below 1 s, metal"},
	{Metal, 10, 55, "ECMA-287, touch below 10 s, metal"},
	{Metal, 8 * 3600, 43, "ECMA-287, hold up to 8 h"},
	{Metal, 5, 60, "ASTM C1055, 60 °C for 5 s, second hand"},
	{Coated, 60, 51, "ISO 13732-1, coated metal, from memory"},
	{Coated, 600, 48, "ISO 13732-1, all materials, from memory"},
	{Coated, 8 * 3600, 43, "ISO 13732-1, all materials, from memory"},
	{Plastic, 1, 85, "dense coat 85 to 87, quoting ISO 13732-1"},
	{Plastic, 2, 80, "dense coat 80 to 87, quoting ISO 13732-1"},
	{Plastic, 5, 74, "dense coat 74 to 82, quoting ISO 13732-1"},
	{Plastic, 60, 60, "dense coat, quoting ISO 13732-1"},
	{Plastic, 600, 48, "dense coat, quoting ISO 13732-1"},
	{Plastic, 8 * 3600, 43, "dense coat, quoting ISO 13732-1"},
	{Plastic, 1, 94, "IEC 62368-1 TS1, plastic and rubber, below 1 s"},
	{Plastic, 10, 77, "IEC 62368-1 TS1, plastic and rubber, 1 to 10 s"},
	{Plastic, 60, 60, "IEC 62368-1 TS1, plastic and rubber, 10 s to 1 min"},
	{Plastic, 600, 48, "IEC 62368-1 TS1, plastic and rubber, above 1 min"},
	{Plastic, 1, 85, "ECMA-287, touch below 1 s, not metal"},
	{Plastic, 10, 65, "ECMA-287, touch below 10 s, not metal"},
}

// TestBandsHoldPublishedLimits: no threshold here is above what others print for a
// contact as long, and none is hotter for a longer one. The thresholds of ISO 13732-1
// are quoted by others: it was not seen itself.
func TestBandsHoldPublishedLimits(t *testing.T) {
	for _, row := range publishedTouches {
		found := false
		for _, b := range row.surface.Bands() {
			if b.Seconds == row.seconds {
				found = true
				if b.Low > row.limit {
					t.Errorf("%s, %v s: a burn from %v °C on, printed %v (%s)", row.surface, row.seconds, b.Low, row.limit, row.source)
				}
			}
		}
		if !found {
			t.Errorf("%s: no band for %v s (%s)", row.surface, row.seconds, row.source)
		}
	}
	for _, s := range Surfaces {
		bands := s.Bands()
		for i, b := range bands {
			if b.High < b.Low || i > 0 && (b.Low >= bands[i-1].Low || b.High > bands[i-1].High || b.Seconds <= bands[i-1].Seconds) {
				t.Errorf("%s: band %d, %v, does not fall", s, i, b)
			}
		}
	}
}

// No published threshold for the same surface and a contact as short or shorter is
// met while the surface is said to burn later, at any temperature; and a coat of
// paint is never said to protect.
func TestBurnsIn_NoPublishedThresholdIsLower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		celsius := rapid.Float64Range(20, 120).Draw(t, "celsius")
		for _, row := range publishedTouches {
			if seconds, ok := row.surface.BurnsIn(celsius); celsius >= row.limit && (!ok || seconds > row.seconds) {
				t.Fatalf("%s at %v °C burns in %v s, %v; printed %v s from %v °C (%s)", row.surface, celsius, seconds, ok, row.seconds, row.limit, row.source)
			}
		}
		metal, burns := Metal.BurnsIn(celsius)
		if coated, ok := Coated.BurnsIn(celsius); ok != burns || coated != metal {
			t.Fatalf("at %v °C a coat burns in %v s, metal in %v", celsius, coated, metal)
		}
		if plastic, ok := Plastic.BurnsIn(celsius); ok && (!burns || plastic < metal) {
			t.Fatalf("at %v °C plastic burns in %v s, metal in %v", celsius, plastic, metal)
		}
	})
}

// publishedScalds are the times in seconds that are printed for hot water on an
// adult's skin.
var publishedScalds = []struct {
	celsius, seconds float64
	source           string
}{
	{43, 8 * 3600, "hot water, at least first degree, quoting ISO 13732-1"},
	{44, 6 * 3600, "Moritz and Henriques 1947, as quoted"},
	{45, 2 * 3600, "second degree"}, {45, 3 * 3600, "third degree"},
	{47, 20 * 60, "second degree"}, {47, 45 * 60, "third degree"},
	{48, 10 * 60, "hot water, at least first degree, quoting ISO 13732-1"},
	{48, 15 * 60, "second degree"}, {48, 20 * 60, "third degree"},
	{48.9, 5 * 60, "CPSC and hospitals, 120 °F"},
	{49, 8 * 60, "second degree"}, {49, 10 * 60, "third degree"},
	{51, 60, "hot water, at least first degree, quoting ISO 13732-1"},
	{51, 2 * 60, "second degree"}, {51, 4.2 * 60, "third degree"},
	{51.7, 1.5 * 60, "hospitals, 125 °F"},
	{54, 10, "hot water, at least first degree, quoting ISO 13732-1"},
	{54.4, 30, "CPSC and hospitals, 130 °F"},
	{55, 17, "second degree"}, {55, 30, "third degree"},
	{57.2, 10, "hospitals, 135 °F"},
	{60, 3, "second degree"}, {60, 5, "third degree"}, {60, 6, "CPSC, 140 °F"},
	{62.8, 3, "hospitals, 145 °F, under 3 s"},
	{64, 1, "hot water, at least first degree, quoting ISO 13732-1"},
	{65, 2, "Moritz and Henriques, from memory"},
	{65.6, 1.5, "hospitals, 150 °F"}, {65.6, 2, "CPSC, 150 °F"},
	{67, 0.5, "hot water, at least first degree, quoting ISO 13732-1"},
	{68.3, 1, "hospitals, 155 °F"},
	{70, 1, "Moritz and Henriques, from memory"},
	{72.2, 0, "NIST as quoted, 162 °F, on contact"},
}

// At no temperature is a shorter time published, for that one or for one of less
// heat; and no time is said that isn't printed somewhere.
func TestScald_NoPublishedTimeIsShorter(t *testing.T) {
	printed := map[float64]bool{}
	for _, row := range publishedScalds {
		printed[row.seconds] = true
		if got, ok := Scald(row.celsius); !ok || got > row.seconds {
			t.Errorf("Scald(%v) = %v, %v, printed %v (%s)", row.celsius, got, ok, row.seconds, row.source)
		}
	}
	last := publishedScalds[0].seconds
	for tenth := 430; tenth <= 850; tenth++ {
		celsius := float64(tenth) / 10
		got, ok := Scald(celsius)
		if !ok || got > last || !printed[got] {
			t.Errorf("Scald(%v) = %v, %v; a tenth below %v, printed %v", celsius, got, ok, last, printed[got])
		}
		last = got
		for _, row := range publishedScalds {
			if row.celsius <= celsius && got > row.seconds {
				t.Errorf("Scald(%v) = %v, printed %v at %v (%s)", celsius, got, row.seconds, row.celsius, row.source)
			}
		}
	}
}
