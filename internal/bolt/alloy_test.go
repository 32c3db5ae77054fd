package bolt

import (
	"math"
	"slices"
	"testing"
)

// The alloys as their tables print them, MPa. NADCA's own megapascals are its
// kilopounds per square inch, rounded to ten for yield and shear.
func TestAlloys(t *testing.T) {
	for _, f := range []struct {
		seat                        string
		tensile, yield, shear       float64 // 0: none printed
		tensileKsi, yieldKsi, shKsi float64 // 0: not printed so
		source                      string
	}{
		{"a380", 324, 160, 190, 47, 23, 27, "NADCA table A-3-2-12"},
		{"380", 317, 160, 190, 46, 23, 28, "same"},
		{"383", 310, 150, 0, 45, 22, 0, "same; a second page has no shear strength either"},
		{"a413", 290, 130, 170, 42, 19, 25, "same"},
		{"adc12", 228, 154, 0, 0, 0, 0, "JIS H 5302:2006, die-cast parts"},
		{"az91d", 230, 150, 138, 0, 0, 0, "property tables; one prints a yield of 160"},
		{"en-ac-46000", 240, 140, 0, 0, 0, 0, "EN 1706:2010, from memory"},
	} {
		a := &alloys[slices.Index(Seats, f.seat)+1-int(firstAlloy)]
		if a.Tensile != f.tensile || a.Yield != f.yield || a.Shear != f.shear {
			t.Errorf("%s: %+v, want %v/%v/%v (%s)", f.seat, *a, f.tensile, f.yield, f.shear, f.source)
		}
		for _, c := range []struct{ mpa, ksi, half float64 }{{f.tensile, f.tensileKsi, 0.51}, {f.yield, f.yieldKsi, 5.1}, {f.shear, f.shKsi, 5.1}} {
			if c.ksi > 0 && math.Abs(c.mpa-c.ksi*6.894757) > c.half {
				t.Errorf("%s: %v MPa and %v ksi are not one", f.seat, c.mpa, c.ksi)
			}
		}
	}
	// 200 MPa, which a page prints for 383, is 384's (29 ksi).
	if r := Seat(slices.Index(Seats, "383") + 1).Shear(); r.High >= 200 {
		t.Errorf("383 has the misprint's shear strength: %+v", r)
	}
}
