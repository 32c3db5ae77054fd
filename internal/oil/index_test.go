package oil

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Table 1 of ASTM D2270: an extract, read in public copies.
func TestIndexTable(t *testing.T) {
	for _, c := range [][3]float64{
		{2, 7.994, 6.394}, {3, 15.49, 12.15}, {4, 25.32, 19.56}, {5, 40.23, 28.49}, {5.1, 41.99, 29.46}, {6, 57.97, 38.19},
		{7, 78, 48.57}, {7.8, 95.43, 57.31}, {8, 100, 59.60}, {8.8, 118.5, 68.79}, {8.9, 120.9, 69.94}, {9, 123.3, 71.10},
		{9.3, 130.4, 74.57}, {10, 147.7, 82.87}, {10.9, 171.2, 93.92}, {11.4, 184.9, 100.2}, {12.5, 216.6, 114.7},
		{14, 263.3, 135.4}, {14.5, 279.6, 142.4}, {15, 296.5, 149.7}, {16.3, 342.9, 169.2}, {18, 408.6, 196.2},
		{18.3, 420.7, 201.0}, {20, 493.2, 229.5}, {22, 585.2, 264.9}, {30, 1023, 421.7}, {40, 1730, 651.8}, {50, 2618, 919.6},
		{70, 4905, 1558},
		// Between two rows, as the standard's example reads them.
		{8.86, 119.94, 69.48},
	} {
		l, h, ok := indexLimits(c[0])
		if !ok || !near(l, c[1], 1e-9) || !near(h, c[2], 1e-9) {
			t.Errorf("at %v: L %v H %v, want %v and %v", c[0], l, h, c[1], c[2])
		}
	}
	// A slip in a digit would show as a bend: the table's own kinks, and what
	// its four digits round away, stay below a tenth of the rise.
	for column, name := range map[*[rows]uint16]string{&indexL: "L", &indexH: "H"} {
		for y := 2.5; y < 69.4; y += 0.05 {
			step := 0.1
			if y > 19.5 {
				step = 0.5
			}
			a, b, c := tabled(column, y-step), tabled(column, y), tabled(column, y+step)
			if !(a < b && b < c) || math.Abs(a-2*b+c) > 0.1*(c-a) {
				t.Errorf("%s bends at %.2f: %v %v %v", name, y, a, b, c)
			}
		}
	}
}

func TestIndex(t *testing.T) {
	for _, c := range []struct {
		at40, at100, want, tolerance float64
		source                       string
	}{
		{73.30, 8.86, 92.43, 0.005, "ASTM D2270, example of procedure A"},
		{73.50, 8.86, 92.0332937, 5e-8, "test of an open-source library"},
		{22.83, 5.05, 156.37, 0.1, "ASTM D2270, example of procedure B, which rounds H before"},
		{22.83, 5.05, 156.4234829, 5e-8, "test of an open-source library"},
		{1000, 100, 192.9975428, 5e-8, "test of an open-source library, above the table"},
		{68, 8.8, 102, 0.5, "a page on extrapolating viscosity"},
		{114.1, 14.58, 131, 0.5, "test of an open-source library"},
		{107.7, 11.88, 99, 0.5, "test of an open-source library"},
		{70, 11.1, 150, 0.5, "a library's table"},
		{2000, 80, 98.372, 5e-4, "computed, above the table"},
		{32, 5.4, 102.213, 5e-4, "computed"},
		{97, 14.5, 154.794, 5e-4, "computed"},
		{160, 18.3, 127.701, 5e-4, "computed"},
		{7, 2, 62.125, 5e-4, "computed, the table's first row"},
		{30, 5.81, 139.99, 5e-3, "computed, an ester"},
		{120, 20.9, 200.52, 5e-3, "computed, a polyglycol"},
	} {
		got, ok := Index(c.at40, c.at100)
		if !ok || !near(got, c.want, c.tolerance) {
			t.Errorf("%v @ 40, %v @ 100: %v, want %v (%s)", c.at40, c.at100, got, c.want, c.source)
		}
	}
}

// A library truncates where the standard rounds; what it prints is not ours.
func TestIndexIsRoundedNotTruncated(t *testing.T) {
	for _, c := range [][4]float64{{68, 8.6, 96, 97}, {30, 5.23, 104, 105}, {30, 4.24, -25, -26}} {
		if got, ok := Index(c[0], c[1]); !ok || math.RoundToEven(got) != c[3] {
			t.Errorf("%v @ 40, %v @ 100: %v, want %v and not %v", c[0], c[1], got, c[3], c[2])
		}
	}
}

func TestNoIndex(t *testing.T) {
	for _, c := range [][2]float64{{3, 1.5}, {8, 8}, {7, 8}, {math.NaN(), 8}, {8, math.NaN()}, {math.Inf(1), math.Inf(1)}} {
		if got, ok := Index(c[0], c[1]); ok || !math.IsNaN(got) {
			t.Errorf("%v @ 40, %v @ 100 has the index %v", c[0], c[1], got)
		}
	}
}

func TestIndexProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at100 := rapid.Float64Range(2, 120).Draw(t, "at100")
		_, h, ok := indexLimits(at100)
		if !ok {
			t.Fatal("no limits")
		}
		// The two procedures meet at 100.
		for _, share := range []float64{1, 1 - 1e-9, 1 + 1e-9} {
			if got, ok := Index(h*share, at100); !ok || !near(got, 100, 1e-4) {
				t.Fatalf("U = H·%v: %v", share, got)
			}
		}
		// More index is thinner at 40 °C, and back it gives the same.
		index := rapid.Float64Range(-50, 300).Draw(t, "index")
		l, ok := FromIndex(at100, index)
		if !ok {
			t.Skip("no oil")
		}
		if got, ok := Index(l.At(40), at100); !ok || !near(got, index, 1e-6) {
			t.Fatalf("index %v gives back %v", index, got)
		}
		if more, ok := FromIndex(at100, index+1); ok && !(more.At(40) < l.At(40)) {
			t.Fatalf("index %v is thicker than %v", index+1, index)
		}
	})
}
