package bolt_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
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
		{"1 1/16-12", 26.9875, 25.4 / 12, "ASME B1.1, SAE J514 size 12"},
		{"1-1/16-12", 26.9875, 25.4 / 12, "the same"},
		{"1-1/16-12 UN-2B", 26.9875, 25.4 / 12, "the same, with series and class"},
		{"1 5/16 - 12", 33.3375, 25.4 / 12, "SAE J514 size 16"},
		{"3/4\"-16 UNF-2A", 19.05, 1.5875, "ASME B1.1, 25.4/16"},
		{"3/4-16-2A", 19.05, 1.5875, "the same"},
		{"¾-16", 19.05, 1.5875, "the same"},
		{"#10-32", 4.826, 0.79375, "ASME B1.1, 0.190 in"},
		{"No. 10-32 UNF", 4.826, 0.79375, "the same"},
		{"10-32", 4.826, 0.79375, "the same"},
		{"#12-24", 5.4864, 25.4 / 24, "ASME B1.1, 0.216 in"},
		{"M14*1.5", 14, 1.5, "ISO 262, fine"},
		{"M14·1,5", 14, 1.5, "the same"},
		{"14x1.5", 14, 1.5, "the same"},
		{"M14x1.5-6g", 14, 1.5, "the same, with a tolerance class of ISO 965-1"},
		{"M14 x 1.5 6H", 14, 1.5, "the same"},
		{"M14x1.5 – 5g6g", 14, 1.5, "the same"},
		{"M8-6H", 8, 1.25, "ISO 261, coarse"},
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
		"1-1/16", "1/2-1/16-12", "1-2-12", "1-17/16-12", "#13-32", "#10-12", "#1/2-20", "14", "14-1.5", "3/4-16 UNSAFE", "M14x1.5-8.8", "3/4-16-3C",
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

// A designation means the same in every way it is written.
func TestParseThread_AnyKeyboard(t *testing.T) {
	times := []string{"x", "X", "×", "*", "·", "•", " x ", " × ", "✕", "х"}
	ends := []string{"", "-6g", " 6H", "-6H", " - 5g6g", "–6g"}
	for _, size := range []float64{6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 33} {
		for _, pitch := range []float64{0.75, 1, 1.25, 1.5, 2} {
			for _, point := range []string{".", ",", "．"} {
				for n, x := range times {
					for k, first := range []string{"M", "m", "M ", ""} {
						number := func(v float64) string {
							return strings.Replace(strconv.FormatFloat(v, 'f', -1, 64), ".", point, 1)
						}
						text := first + number(size) + x + number(pitch) + ends[(n+k)%len(ends)]
						got, ok := bolt.ParseThread(text)
						if !ok || got.Diameter != size || got.Pitch != pitch || got.Unified || got.PitchOpen() {
							t.Errorf("ParseThread(%q) = %+v, %v", text, got, ok)
						}
					}
				}
			}
		}
	}
	for sixteenths := 2; sixteenths <= 32; sixteenths++ {
		for _, perInch := range []int{8, 12, 16, 20} {
			whole, part := sixteenths/16, fmt.Sprintf("%d/16", sixteenths%16)
			sizes := []string{fmt.Sprintf("%d %s", whole, part), fmt.Sprintf("%d-%s", whole, part), fmt.Sprintf("%d %s\"", whole, part)}
			switch {
			case sixteenths%16 == 0:
				sizes = []string{strconv.Itoa(whole)}
			case whole == 0:
				sizes = []string{part, part + `"`}
			}
			for _, size := range sizes {
				for _, end := range []string{"", " UN", "UNF", " UN-2A", "-2B"} {
					text := fmt.Sprintf("%s-%d%s", size, perInch, end)
					want := float64(sixteenths) / 16 * 25.4
					if pitch := 25.4 / float64(perInch); pitch >= want {
						continue
					}
					if got, ok := bolt.ParseThread(text); !ok || math.Abs(got.Diameter-want) > 1e-9 || got.Pitch != 25.4/float64(perInch) {
						t.Errorf("ParseThread(%q) = %+v, %v, want %g", text, got, ok, want)
					}
				}
			}
		}
	}
}

// A bare size is that of the coarse series; from M8 on it leaves open whether it is a
// fine one (ISO 262).
func TestParseThread_PitchOpen(t *testing.T) {
	for text, open := range map[string]bool{"M6": false, "M8": true, "M14": true, "M14-6g": true, "M14x2": false, "3/4-16": false} {
		if got, ok := bolt.ParseThread(text); !ok || got.PitchOpen() != open {
			t.Errorf("ParseThread(%q) = %+v, %v; open %v", text, got, ok, got.PitchOpen())
		}
	}
}
