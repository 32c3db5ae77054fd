package manual_test

import (
	"slices"
	"testing"
)

// "The first" and "the second" of a sentence are the two parts that were named before it.
func TestRead_Orders(t *testing.T) {
	want := []string{"bolt.drain.torque 25 N·m", "bolt.tank-drain.torque 18 N·m"}
	for _, text := range []string{
		"Undo the drain plug of the frame, then that of the crankcase. Tighten the former to 18 N·m and the latter to 25 N·m.",
		"Ablassschraube am Rahmen und Ablassschraube am Kurbelgehäuse herausdrehen. Die erste mit 18 Nm, die zweite mit 25 Nm anziehen.",
		"Ôter le bouchon de vidange du cadre, puis celui du carter moteur. Serrer le premier à 18 N.m, le second à 25 N.m.",
		"Svitare il tappo di scarico del serbatoio, poi quello del carter motore. Serrare il primo a 18 Nm e il secondo a 25 Nm.",
	} {
		if got := said(text, "bolt."); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if got := said("Drain the engine oil. The first change is at 500 km, the second at 2,000 km.", "bolt."); len(got) > 0 {
		t.Errorf("changes are no parts: %q", got)
	}
}
