package oil

import (
	"math"
	"testing"
)

// Printed pairs of A and B of a gear-oil library: they were made for °C + 273,
// and give back the ISO grade's viscosity only so (first figure). With the 273.15
// of the standard they are up to 0.7 % low (second figure), as in that library
// itself, which mixes the two.
func TestConstantsForAnotherKelvin(t *testing.T) {
	const off = 273 - kelvin
	for _, c := range []struct {
		name                string
		line                Line
		at, own, here, wide float64 // wide: half of the last digit
	}{
		{"ISO 150, synthetic", Line{7.646383, 2.928541}, 40, 149.998, 148.942, 5e-4},
		{"ISO 150, synthetic", Line{7.646383, 2.928541}, 100, 19.403, 19.332, 5e-4},
		{"ISO 68, mineral", Line{9.4422, 3.6778}, 40, 67.992, 67.482, 5e-4},
		{"ISO 68, mineral", Line{9.4422, 3.6778}, 100, 8.499, 8.469, 5e-4},
		{"ISO 46", Line{9.7044, 3.7995}, 40, 46.017, 45.691, 5e-4},
		{"ISO 46", Line{9.7044, 3.7995}, 100, 6.501, 6.480, 5e-4},
	} {
		if got := c.line.At(c.at + off); !near(got, c.own, c.wide) {
			t.Errorf("%s at %v °C, + 273: %v, want %v", c.name, c.at, got, c.own)
		}
		if got := c.line.At(c.at); !near(got, c.here, c.wide) || near(got, c.own, c.wide) {
			t.Errorf("%s at %v °C: %v, want %v", c.name, c.at, got, c.here)
		}
	}
}

// A and B of the lecture notes' example belong to °C + 273; ours are others,
// and the viscosity is the same.
func TestLineOfLectureNotes(t *testing.T) {
	const off = 273 - kelvin
	theirs := through(t, 40+off, 32, 100+off, 5.4)
	if !near(theirs.A, 9.5259, 5e-5) || !near(theirs.B, 3.7449, 5e-5) {
		t.Errorf("with + 273: A %v, B %v, printed 9.5259 and 3.7449", theirs.A, theirs.B)
	}
	ours := through(t, 40, 32, 100, 5.4)
	if !near(ours.A, 9.53082, 5e-6) || !near(ours.B, 3.74658, 5e-6) || near(ours.A, 9.5259, 5e-4) {
		t.Errorf("A %v, B %v, want 9.53082 and 3.74658", ours.A, ours.B)
	}
}

// An article prints "K = °F + 273". With that, the 6.89 mm²/s at 20 °C that a
// library's test prints don't come out.
func TestKelvinOfFahrenheitIsAMisprint(t *testing.T) {
	wrong := func(celsius float64) float64 { return celsius*1.8 + 32 + 273 - kelvin }
	if got := through(t, wrong(40), 4.6, wrong(100), 2).At(wrong(20)); near(got, 6.89, 0.05) {
		t.Errorf("°F + 273 gives %v too: this test tells nothing", got)
	}
	if got := through(t, 40, 4.6, 100, 2).At(20); !near(got, 6.89, 0.005) {
		t.Errorf("at 20 °C %v, want 6.89", got)
	}
}

// More points of lines whose inputs are published or usual; all computed.
func TestLineAtMorePoints(t *testing.T) {
	for _, c := range []struct{ v1, at1, v2, at2, at, want, tolerance float64 }{
		{10, 40, 2.63, 100, 25, 16.865, 5e-4},
		{70, 40, 11.1, 100, 0, 674.6, 0.05},
		{70, 40, 11.1, 100, 65, 27.89, 0.005},
		{70, 40, 11.1, 100, 80, 18.02, 0.005},
		{70, 40, 11.1, 100, 150, 4.61, 0.005},
		{97, 40, 14.5, 100, 20, 263.01, 0.005},
		{97, 40, 14.5, 100, 65, 37.65, 0.005},
		{97, 40, 14.5, 100, 80, 23.97, 0.005},
		{97, 40, 14.5, 100, 82, 22.68, 0.005},
	} {
		if got := through(t, c.at1, c.v1, c.at2, c.v2).At(c.at); !near(got, c.want, c.tolerance) {
			t.Errorf("%v @ %v, %v @ %v: at %v °C %v, want %v", c.v1, c.at1, c.v2, c.at2, c.at, got, c.want)
		}
	}
	for _, c := range []struct{ v, short float64 }{{1.5, 2.20462}, {3, 3.70001}} {
		if z := thickness(c.v); !near(z, c.short, 5.1e-6) {
			t.Errorf("Z(%v) = %v, want %v", c.v, z, c.short)
		}
	}
}

// The example of procedure B in ASTM D2270 prints H = 28.97 and N = 0.14708;
// its H is 28.975, which it rounds before it goes on.
func TestIndexStepsAsPrinted(t *testing.T) {
	_, h, _ := indexLimits(5.05)
	if !near(h, 28.97, 0.00501) {
		t.Errorf("H = %v, printed 28.97", h)
	}
	n := math.Log10(28.97/22.83) / math.Log10(5.05)
	if !near(n, 0.14708, 5e-6) || !near((math.Pow(10, n)-1)/0.00715+100, 156.37, 0.01) {
		t.Errorf("with the H as printed N is %v", n)
	}
	for _, c := range []struct {
		at100, l, h, wide float64
		source            string
	}{
		{100, 9604, 2772, 0.05, "steps of an open-source library's test"},
		{80, 6303.52, 1928.76, 0.005, "computed, above the table"},
		{5.4, 47.31, 32.37, 0.005, "computed, in the table"},
	} {
		if l, h, ok := indexLimits(c.at100); !ok || !near(l, c.l, c.wide) || !near(h, c.h, c.wide) {
			t.Errorf("at %v: L %v H %v, want %v and %v (%s)", c.at100, l, h, c.l, c.h, c.source)
		}
	}
	// The polynomials beyond the table meet its last row within 0.03 %.
	l, h, _ := indexLimits(math.Nextafter(70, 71))
	if !near(l, 4903.87, 0.005) || !near(h, 1557.66, 0.005) {
		t.Errorf("just above 70: L %v H %v, want 4903.87 and 1557.66", l, h)
	}
}

// The index of oils whose two viscosities are published; the index itself is
// computed, and reported as a whole number.
func TestIndexOfPublishedOils(t *testing.T) {
	for _, c := range []struct {
		oil              string
		at40, at100      float64
		index, tolerance float64
	}{
		{"a 5W-30, open-source figures", 73, 12.3, 167.275, 5e-4},
		{"a 15W-40, open-source figures", 115, 15.4, 140.554, 5e-4},
		{"a 5W-40, open-source figures", 80.53, 13.44, 170.382, 5e-4},
		{"a 0W-20, open-source figures", 47, 8.9, 172.721, 5e-4},
		{"a 10W-60, open-source figures", 160, 24, 181.639, 5e-4},
		{"a 10W-40, open-source figures", 100, 14.4, 148, 0.5},
		{"engine oil, public data base AD00697", 66, 10, 136, 0.5},
		{"20W-40, public data base AD02232", 123, 14, 112, 0.5},
		{"40, public data base AD02231", 145, 15, 104, 0.5},
		{"15W-40, public data base AD02545", 112, 15, 139, 0.5},
	} {
		if got, ok := Index(c.at40, c.at100); !ok || !near(got, c.index, c.tolerance) {
			t.Errorf("%s, %v and %v: %v, want %v", c.oil, c.at40, c.at100, got, c.index)
		}
	}
}

// Shares that a library prints by another published rule, ln ln (ν + K): ours
// differ by less than half a percentage point.
func TestShareForATarget(t *testing.T) {
	for _, c := range []struct {
		first, second, share, target float64
		source                       string
	}{
		{220, 680, 0.6732, 460, "test of an open-source library, at 40 °C"},
		{18.1, 13.9, 0.1459, 17.4, "test of an open-source library, at 100 °C"},
	} {
		one, other := Mix(c.first, c.second, c.share-0.005), Mix(c.first, c.second, c.share+0.005)
		if c.target < min(one, other) || c.target > max(one, other) {
			t.Errorf("%v of %v in %v: %v to %v, want %v (%s)", c.share, c.second, c.first, one, other, c.target, c.source)
		}
	}
	for _, c := range []struct{ first, second, share, want, tolerance float64 }{
		{220, 680, 0.67443, 460, 0.01},
		{18.1, 13.9, 0.14445, 17.4, 5e-5},
		{10, 100, 0.5526, 30, 5e-3},
		{16.4, 21.5, 0.5, 18.7280, 5e-5},
		{158, 200, 0.35, 171.3848, 5e-5},
	} {
		if got := Mix(c.first, c.second, c.share); !near(got, c.want, c.tolerance) {
			t.Errorf("%v of %v in %v: %v, computed %v", c.share, c.second, c.first, got, c.want)
		}
	}
}
