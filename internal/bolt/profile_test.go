package bolt_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
)

// thread reads a designation that must be one.
func thread(t testing.TB, text string) *bolt.Thread {
	t.Helper()
	th, ok := bolt.ParseThread(text)
	if !ok {
		t.Fatalf("%s is no thread", text)
	}
	return &th
}

// near fails unless got is want within an absolute tolerance.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tolerance)
	}
}

// nearly is near with a share of the value wanted.
func nearly(t testing.TB, what string, got, want, share float64) {
	t.Helper()
	near(t, what, got, want, math.Abs(want)*share)
}

func TestThread_Profile(t *testing.T) {
	for _, f := range []struct {
		thread     string
		d2, d3, d1 float64 // mm; 0: not printed
		source     string
	}{
		{"M8x1", 7.350, 6.773, 6.917, "table of metric fine threads, ISO 724"},
		{"M10x1.25", 9.188, 8.466, 8.647, "same"},
		{"M12x1.5", 11.026, 10.160, 10.376, "same"},
		{"M14x1.5", 13.026, 12.160, 12.376, "same"},
		{"M16x1.5", 15.026, 14.160, 14.376, "same"},
		{"M20x1.5", 19.026, 18.160, 18.376, "same"},
		{"M10", 9.026, 0, 8.376, "ASME B1.13M-1995"},
		{"M12", 10.863, 0, 10.106, "same"},
		{"M14", 12.701, 0, 11.835, "same"},
		{"M5", 4.456 + 0.024, 4.019, 4.134, "ISO 965 prints d2 of 6g, which lies 0.024 mm below; d3 and D1 computed"},
		{"M6", 5.324 + 0.026, 4.773, 4.917, "ISO 965 prints d2 of 6g, which lies 0.026 mm below; d3 and D1 computed"},
		{"M8", 7.188, 6.466, 6.647, "from memory"},
		{"M24x1.5", 23.026, 22.160, 22.376, "computed"},
		{"M24x2", 22.701, 21.546, 21.835, "computed"},
		{"M30x1.5", 29.026, 28.160, 28.376, "computed"},
	} {
		const half = 5.1e-4 // of the third decimal
		th := thread(t, f.thread)
		near(t, f.thread+" d2, "+f.source, th.PitchDiameter(), f.d2, half)
		near(t, f.thread+" D1, "+f.source, th.BoreDiameter(), f.d1, half)
		if f.d3 > 0 {
			near(t, f.thread+" d3, "+f.source, th.RootDiameter(), f.d3, half)
		}
	}
	// A table of unified fine threads, in inches; its root is another than d3.
	th := thread(t, "3/4-16 UNF")
	near(t, "3/4-16 UNF E", th.PitchDiameter()/25.4, 0.7094, 5.1e-5)
	near(t, "3/4-16 UNF K", th.BoreDiameter()/25.4, 0.6823, 5.1e-5)
}

// A chart of threads prints 6.917 mm as the minor diameter of M8x1.25: that is
// M8x1's.
func TestThread_Profile_Misprint(t *testing.T) {
	if d1 := thread(t, "M8x1.25").BoreDiameter(); d1 > 6.7 {
		t.Errorf("M8x1.25: D1 %v is the misprint 6.917", d1)
	}
	near(t, "M8x1 has it", thread(t, "M8x1").BoreDiameter(), 6.917, 5.1e-4)
}

func TestThread_StressArea(t *testing.T) {
	const squareInch = 25.4 * 25.4
	for _, f := range []struct {
		thread    string
		area, off float64 // mm²
		source    string
	}{
		{"M5", 14.2, 0.05, "EN ISO 898-1, nominal stress area"},
		{"M6", 20.1, 0.05, "same"},
		{"M8", 36.6, 0.05, "same"},
		{"M10", 58.0, 0.05, "same"},
		{"M12", 84.3, 0.05, "same"},
		{"M14", 115, 0.5, "same"},
		{"M8x1", 39.2, 0.05, "table of metric fine threads"},
		{"M10x1.25", 61.2, 0.05, "same"},
		{"M12x1.5", 88.1, 0.05, "same"},
		{"M14x1.5", 125, 0.5, "same"},
		{"M16x1.5", 167, 0.5, "same"},
		{"M20x1.5", 272, 0.51, "ISO 898-1 fine series, from memory"},
		{"M24x2", 384, 0.5, "same"},
		{"M24x1.5", 400.89, 0.005, "computed"},
		{"M30x1.5", 642.10, 0.005, "computed"},
		{"3/8-24 UNF", 0.0878 * squareInch, 5e-5 * squareInch, "table of unified fine threads"},
		{"7/16-20 UNF", 0.1187 * squareInch, 5e-5 * squareInch, "same"},
		{"1/2-20 UNF", 0.1599 * squareInch, 6e-5 * squareInch, "same; it is 0.15995"},
		{"3/4-16 UNF", 0.373 * squareInch, 5e-4 * squareInch, "same"},
	} {
		near(t, f.thread+" stress area, "+f.source, thread(t, f.thread).StressArea(), f.area, f.off)
	}
}

// The table of metric fine threads prints stress areas that its own d2 and d3
// don't give; those are not taken over.
func TestThread_StressArea_Misprints(t *testing.T) {
	for _, f := range []struct {
		thread         string
		printed, right float64 // mm²
	}{
		{"M8x0.75", 44.2, 41.81}, {"M10x0.75", 72.7, 67.88}, {"M12x1", 98.0, 96.10}, {"M16x1", 182, 178.17},
	} {
		got := thread(t, f.thread).StressArea()
		near(t, f.thread, got, f.right, 0.005)
		if got > f.printed*0.985 {
			t.Errorf("%s: stress area %v is the misprint %v", f.thread, got, f.printed)
		}
	}
}

// The limits as they are printed: what is taken is what stands there, rounded as the
// standard rounds, and never stronger than that.
func TestThread_Limits(t *testing.T) {
	const iso, read, memory = "ISO 965", "ASME B1.13M-1995, 6H", "from memory"
	for _, f := range []struct {
		thread       string
		major, pitch float64 // mm; 0: no published limit
		source       string
	}{
		{"M5", 4.826, 4.605, iso + ", 6g; 6H: a tap maker's table, +125 µm"},
		{"M6", 5.794, 5.500, iso + ", 6g; 6H: the same table, +150 µm"},
		{"M8", 7.760, 7.348, memory + "; 6H: the same table, +160 µm"},
		{"M4", 3.838, 3.663, memory + "; 6H: the same table, +118 µm"},
		{"M3", 2.874, 2.775, memory + "; 6H: the same table, +100 µm"},
		{"M10", 9.732, 9.206, memory + "; " + read},
		{"M10x1.25", 9.760, 9.348, memory + "; " + read},
		{"M12x1.5", 11.732, 11.216, memory + "; " + read},
		{"M14x1.5", 13.732, 13.216, memory + "; " + read},
		{"M12", 11.701, 11.063, memory},
		{"M14", 13.682, 12.913, memory},
		{"M20x1.5", 19.732, 19.216, memory},
		{"M24x2", 23.682, 22.925, memory},
		{"M24", 23.577, 22.316, memory},
		{"M36", 35.465, 33.702, memory},
	} {
		major, pitch := thread(t, f.thread).Limits()
		const half = 6e-4 // of the third decimal, as the basic diameter is rounded too
		near(t, f.thread+" least major diameter, "+f.source, major, f.major, half)
		near(t, f.thread+" greatest pitch diameter, "+f.source, pitch, f.pitch, half)
	}
	// Inches: limits of 2A and 2B, from memory.
	for name, want := range map[string][2]float64{"3/4-16 UNF": {0.7391, 0.7159}, "1/2-20 UNF": {0.4906, 0.4731}, "1/4-20 UNC": {0.2408, 0.2224}} {
		major, pitch := thread(t, name).Limits()
		near(t, name+" 2A, least major diameter", major/25.4, want[0], 1.1e-4)
		near(t, name+" 2B, greatest pitch diameter", pitch/25.4, want[1], 1.1e-4)
	}
}

// Over all sizes: what is printed lies within a step of the R40 series of the standard's
// formulas, so that a misread row would be seen; and where nothing is printed, no limit
// makes a thread stronger than its formula.
func TestThread_LimitsAndFormulas(t *testing.T) {
	for _, size := range []float64{3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 27, 30, 33, 36, 42, 48, 56} {
		for _, p := range []float64{0.35, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5} {
			if p > size/4 {
				continue
			}
			th := bolt.Thread{Diameter: size, Pitch: p}
			low := 1.4
			for size > 2*low {
				low *= 2
			}
			major, pitch := th.Limits()
			screw := 0.015 + 0.011*p + 0.180*math.Pow(p, 2.0/3) - 0.00315/math.Sqrt(p)
			hole := 0.1188 * math.Pow(p, 0.4) * math.Pow(low*math.Sqrt2, 0.1)
			name := fmt.Sprintf("M%vx%v", size, p)
			nearly(t, name+", screw", size-major, screw*1.01, 0.06)
			nearly(t, name+", hole", pitch-th.PitchDiameter(), hole*1.01, 0.06)
		}
	}
}

func TestThread_LeadAngle(t *testing.T) {
	// Computed: atan(1.5/(π·11.026)).
	near(t, "M12x1.5", thread(t, "M12x1.5").LeadAngle(), 2.480, 0.001)
}

func TestThread_Travel(t *testing.T) {
	// Computed from the pitch of a single start.
	for _, f := range []struct {
		thread    string
		turns, mm float64
	}{
		{"M20x1.5", 0.5, 0.750}, {"M20x1.5", 0.75, 1.125}, {"3/4-16 UNF", 0.75, 1.190625}, {"M6", 0.25, 0.250}, {"M14x1.5", 0.25, 0.375},
	} {
		near(t, f.thread, thread(t, f.thread).Travel(360*f.turns), f.mm, 1e-9)
	}
}

// drawThread draws a thread of the sizes that an oil change meets.
func drawThread(t *rapid.T) bolt.Thread {
	d := rapid.Float64Range(4, 40).Draw(t, "diameter")
	return bolt.Thread{Diameter: d, Pitch: rapid.Float64Range(0.5, math.Min(3, d/4)).Draw(t, "pitch"),
		Unified: rapid.Bool().Draw(t, "unified")}
}

func TestThread_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		th := drawThread(t)
		if !(th.RootDiameter() < th.BoreDiameter() && th.BoreDiameter() < th.PitchDiameter() && th.PitchDiameter() < th.Diameter) {
			t.Fatalf("%+v: diameters out of order", th)
		}
		major, pitch := th.Limits()
		if major > th.Diameter || pitch < th.PitchDiameter() || major <= pitch {
			t.Fatalf("%+v: limits %v and %v leave no thread", th, major, pitch)
		}
	})
}
