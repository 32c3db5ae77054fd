package bolt_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
)

func TestStripArea(t *testing.T) {
	// A design handbook: M10 in an aluminium of 130 MPa, 58 mm² at 1200 MPa, needs
	// 21.6 mm with the diameters it prints. It prints 9.968 as the least major
	// diameter of 6g, which is the greatest; with the least, 9.732 (from memory),
	// it is 24.9 mm.
	const force, shear = 58 * 1200, 130
	near(t, "as printed", force/(bolt.StripArea(1.5, 1, 9.968, 9.206)*shear), 21.55, 0.01)
	near(t, "with the least diameter", force/(bolt.StripArea(1.5, 1, 9.732, 9.206)*shear), 24.93, 0.01)
	// Computed from the formula of ASME B1.1-2003 appendix B.
	near(t, "M12x1.5", bolt.StripArea(1.5, 10, 11.732, 11.216), 257.49, 0.01)
	near(t, "M14x1.5", bolt.StripArea(1.5, 10, 13.732, 13.216), 301.38, 0.01)
	near(t, "M6", bolt.StripArea(1, 10, 5.794, 5.5), 121.91, 0.01)
	near(t, "M12x1.5 in A380, kN", bolt.StripArea(1.5, 10, 11.732, 11.216)*190/1000, 48.9, 0.05)
	near(t, "M12x1.5 in AZ91D, kN", bolt.StripArea(1.5, 10, 11.732, 11.216)*138/1000, 35.5, 0.05)
	near(t, "M14x1.5 in A380, kN", bolt.StripArea(1.5, 10, 13.732, 13.216)*190/1000, 57.3, 0.05)
	near(t, "M14x1.5 in AZ91D, kN", bolt.StripArea(1.5, 10, 13.732, 13.216)*138/1000, 41.6, 0.05)
	near(t, "M6 in A380, kN", bolt.StripArea(1, 10, 5.794, 5.5)*190/1000, 23.16, 0.005)
	// From basic dimensions it is π·d·L·0.875 (computed).
	near(t, "M6, basic", bolt.StripArea(1, 1, 6, thread(t, "M6").PitchDiameter()), 16.493, 0.001)
	near(t, "M12x1.5, basic", bolt.StripArea(1.5, 1, 12, thread(t, "M12x1.5").PitchDiameter()), 32.987, 0.001)
}

func TestThreadStripArea(t *testing.T) {
	// The tolerances by formula must give the areas of the published limits.
	nearly(t, "M12x1.5", bolt.ThreadStripArea(thread(t, "M12x1.5"), 10), 257.49, 0.01)
	nearly(t, "M14x1.5", bolt.ThreadStripArea(thread(t, "M14x1.5"), 10), 301.38, 0.01)
	nearly(t, "M6", bolt.ThreadStripArea(thread(t, "M6"), 10), 121.91, 0.01)
	nearly(t, "M10", bolt.ThreadStripArea(thread(t, "M10"), 10), 214.77, 0.01)
	// From basic dimensions it is π·d·L·0.875 (computed): a fifth to a third more.
	nearly(t, "3/4-16 UNF", bolt.ThreadStripArea(thread(t, "3/4-16 UNF"), 10), 3.141593*19.05*10*0.875, 1e-3)
}

func TestRing(t *testing.T) {
	// An engineering data file citing DIN 7603, second hand.
	for diameter, want := range map[float64]bolt.Ring{
		6: {Inner: 6.2, Outer: 10}, 8: {Inner: 8.2, Outer: 12}, 10: {Inner: 10.2, Outer: 14}, 12: {Inner: 12.2, Outer: 16},
		14: {Inner: 14.2, Outer: 18}, 16: {Inner: 16.2, Outer: 20}, 18: {Inner: 18.2, Outer: 22}, 20: {Inner: 20.2, Outer: 24},
		24: {Inner: 24.2, Outer: 30}, 30: {Inner: 30.2, Outer: 36},
		// Nominal sizes of catalogues, from memory.
		22: {Inner: 22, Outer: 27}, 26: {Inner: 26, Outer: 31},
		// Plugs of these sizes are published (M27x2, M33x2), rings for them nowhere.
		27: {}, 33: {},
	} {
		if r := bolt.UsualRing(diameter); r != want {
			t.Errorf("M%v: ring %+v, want %+v", diameter, r, want)
		}
	}
	r := bolt.UsualRing(12)
	near(t, "area", r.Area(), 84.16, 0.01)
	near(t, "mean", r.Mean(), 14.1, 1e-9)
	if r := bolt.UsualRing(13); r.Area() != 0 {
		t.Errorf("there is no usual ring for 13 mm: %+v", r)
	}
}

// settled is a joint with an engaged length.
func settled(th bolt.Thread, length float64) *bolt.Joint {
	j := &bolt.Joint{Thread: th, What: bolt.Plug, Seat: bolt.Aluminium, Class: bolt.Class88, Length: length}
	j.Settle()
	return j
}

func TestJoint_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		th := drawThread(t)
		length := rapid.Float64Range(2, 60).Draw(t, "length")
		nm := rapid.Float64Range(0.5, 300).Draw(t, "torque")
		var at, tighter, longer bolt.Figures
		settled(th, length).At(nm, &at)
		settled(th, length).At(nm*1.05, &tighter)
		settled(th, length*1.05).At(nm, &longer)
		for n, r := range []bolt.Range{at.Preload, at.NutFactor, at.YieldShare, at.Stripping, at.Pressure} {
			if !(r.Low <= r.High) {
				t.Fatalf("figure %d: %+v", n, r)
			}
		}
		if !(tighter.Stripping.Low < at.Stripping.Low && tighter.Stripping.High < at.Stripping.High) {
			t.Fatal("the safety against stripping doesn't fall with the torque")
		}
		if !(longer.Stripping.Low > at.Stripping.Low && longer.Stripping.High > at.Stripping.High) {
			t.Fatal("the safety against stripping doesn't grow with the engaged length")
		}
		if tighter.YieldShare.High <= at.YieldShare.High {
			t.Fatal("the share of yield doesn't grow with the torque")
		}
	})
}
