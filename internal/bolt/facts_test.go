package bolt_test

import (
	"math"
	"testing"

	"tidysump/internal/bolt"
)

func TestParseThread_Published(t *testing.T) {
	for _, f := range []struct {
		text            string
		diameter, pitch float64 // mm
		source          string
	}{
		// A designation without a pitch has that of the coarse series.
		{"M5", 5, 0.8, "ISO 261, coarse"},
		{"M6", 6, 1, "ISO 261, coarse"},
		{"M8", 8, 1.25, "ISO 261, coarse"},
		{"M10", 10, 1.5, "ISO 261, coarse"},
		{"M12", 12, 1.75, "ISO 261, coarse"},
		{"M14", 14, 2, "ISO 261, coarse"},
		{"M16", 16, 2, "ISO 261, coarse"},
		{"M20", 20, 2.5, "ISO 261, coarse"},
		{"M24", 24, 3, "ISO 261, coarse"},
		{"M12x1.5", 12, 1.5, "ISO 262, fine"},
		{"M14x1.5", 14, 1.5, "ISO 262, fine"},
		{"M10x1.25", 10, 1.25, "ISO 262, fine"},
		{"M20x1.5", 20, 1.5, "ISO 262, fine"},
		{"m12 × 1,5", 12, 1.5, "the same, as people type it"},
		{"3/4-16 UNF", 19.05, 1.5875, "ASME B1.1, 25.4/16"},
		{"1/2-20 UNF", 12.7, 1.27, "ASME B1.1, 25.4/20"},
		{"3/8-24 UNF", 9.525, 25.4 / 24, "ASME B1.1"},
		{"5/8-18 UNF", 15.875, 25.4 / 18, "ASME B1.1"},
		{"1/4-20 UNC", 6.35, 1.27, "ASME B1.1"},
		{"1-12UNF", 25.4, 25.4 / 12, "ASME B1.1"},
	} {
		got, ok := bolt.ParseThread(f.text)
		if !ok || math.Abs(got.Diameter-f.diameter) > 1e-12 || math.Abs(got.Pitch-f.pitch) > 1e-12 {
			t.Errorf("ParseThread(%q) = %+v, %v, want %g × %g (%s)", f.text, got, ok, f.diameter, f.pitch, f.source)
		}
	}
}

func TestParseThread_Refuses(t *testing.T) {
	for _, text := range []string{
		"", "M", "Mx1", "M12x", "M13", "M12x0", "M12x-1.5", "M-12x1.5", "M1x0.25", "M80x2", "M12x13", "M2x2",
		"M1e1x1.5", "MInfx1", "MNaNx1", "M12x1.5x2", "M1_2x1.5", "M+12x1.5", "M12x0x1p1",
		"3/4", "3/4-", "3/4-0", "3/4-+16", "3/4--16", "/4-16", "3/-16", "3/0-16", "3/4/2-16", "-16", "16-3/4",
		"G1/2", "R 1/2", "1/2 NPT", "wide", "M12x1.5 left",
	} {
		if got, ok := bolt.ParseThread(text); ok {
			t.Errorf("ParseThread(%q) = %+v, want a refusal", text, got)
		}
	}
}

// ISO 6789:2003 tests a wrench of type II class A at 20, 60 and 100 % of its
// highest torque; below 20 % nothing is promised.
func TestWrench_Sets(t *testing.T) {
	for _, f := range []struct {
		low, high, torque float64
		want              bool
	}{
		{20, 100, 20, true},
		{20, 100, 19.9, false},
		{20, 100, 100, true},
		{20, 100, 100.1, false},
		{40, 200, 25, false},
		{40, 200, 40, true},
		{10, 200, 25, false}, // on the scale, and below its fifth
		{2, 10, 8, true},
		{2, 10, 1.9, false},
	} {
		w := bolt.Wrench{Low: f.low, High: f.high}
		if got := w.Sets(f.torque); got != f.want {
			t.Errorf("a %g to %g N·m wrench sets %g N·m: %v, want %v", f.low, f.high, f.torque, got, f.want)
		}
	}
}

// ISO 6789:2003, type II class A: 4 % where the highest torque is above 10 N·m,
// 6 % at 10 N·m and below.
func TestDeviation(t *testing.T) {
	for _, f := range []struct{ highest, torque, low, high float64 }{
		{100, 25, 24, 26},
		{10, 8, 7.52, 8.48},
		{10.1, 10, 9.6, 10.4},
	} {
		off := bolt.Deviation(f.highest)
		if low, high := f.torque*(1-off), f.torque*(1+off); math.Abs(low-f.low) > 1e-9 || math.Abs(high-f.high) > 1e-9 {
			t.Errorf("a wrench to %g N·m at %g N·m: %g to %g, want %g to %g", f.highest, f.torque, low, high, f.low, f.high)
		}
	}
}

// Each torque is set by one of the wrenches, each wrench fits a scale, and no
// two could be one.
func TestNeeded(t *testing.T) {
	for _, f := range []struct {
		torques []float64
		want    []bolt.Wrench
	}{
		{nil, nil},
		{[]float64{25}, []bolt.Wrench{{25, 25}}},
		{[]float64{9.8, 30}, []bolt.Wrench{{9.8, 30}}},
		{[]float64{10, 50}, []bolt.Wrench{{10, 50}}},
		{[]float64{10, 50.1}, []bolt.Wrench{{10, 10}, {50.1, 50.1}}},
		{[]float64{5, 10, 25, 30, 120}, []bolt.Wrench{{5, 25}, {30, 120}}},
	} {
		got := bolt.Needed(f.torques)
		if len(got) != len(f.want) {
			t.Errorf("Needed(%v) = %v, want %v", f.torques, got, f.want)
			continue
		}
		for i := range got {
			if got[i] != f.want[i] {
				t.Errorf("Needed(%v) = %v, want %v", f.torques, got, f.want)
			}
		}
	}
	if got := bolt.LongestScale(25); got != 125 {
		t.Errorf("LongestScale(25) = %g, want 125: a fifth of it is 25", got)
	}
}
