package bolt_test

import (
	"slices"
	"strings"
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
	// As printed limits give it (computed from ASME B1.1-2003 appendix B).
	nearly(t, "M12x1.5", bolt.ThreadStripArea(thread(t, "M12x1.5"), 10), 257.49, 1e-3)
	nearly(t, "M14x1.5", bolt.ThreadStripArea(thread(t, "M14x1.5"), 10), 301.38, 1e-3)
	nearly(t, "M6", bolt.ThreadStripArea(thread(t, "M6"), 10), 121.91, 1e-3)
	nearly(t, "M10", bolt.ThreadStripArea(thread(t, "M10"), 10), 214.77, 1e-3)
	// Basic dimensions would give π·d·L·0.875: a fifth to a third more.
	nearly(t, "3/4-16 UNF", bolt.ThreadStripArea(thread(t, "3/4-16 UNF"), 10), 3.141593*19.05*10*0.875/1.25, 0.04)
}

func TestPullOutArea(t *testing.T) {
	// NASA RP-1228: M12x1.5, 10 mm deep in A380, holds 21.94 kN (computed), 45 % of
	// what ASME B1.1 gives.
	near(t, "M12x1.5 in A380, kN", bolt.PullOutArea(thread(t, "M12x1.5"), 10)*190/1000, 21.94, 0.01)
	nearly(t, "over ASME B1.1", bolt.PullOutArea(thread(t, "M12x1.5"), 1)/bolt.ThreadStripArea(thread(t, "M12x1.5"), 1), 0.45, 0.01)
}

// What is told of a thread: by the whole range of its safety, holds, doubtful or will
// strip; how much of it is enough; and what inserts would bring.
func TestJudge_Thread(t *testing.T) {
	for _, f := range []struct {
		thread, seat, state, torque string
		length                      float64 // mm; 0: not known
		verdict                     bolt.Verdict
		reason                      string
		enough                      float64 // mm; 0: no length is
	}{
		// π·11.026·136.8·12/3 = 18.95 kN against 25 N·m at a friction of 0.08, 19.1 kN.
		{"M12x1.5", "aluminium", "", "25 N·m", 0, bolt.Doubtful, "torque-may-strip", 15.1},
		{"M12x1.5", "aluminium", "", "25 N·m", 15, bolt.Doubtful, "torque-may-strip", 15.1},
		{"M12x1.5", "aluminium", "", "25 N·m", 15.2, bolt.Believable, "torque-no-strip", 15.1},
		{"M12x1.5", "a380", "", "25 N·m", 12, bolt.Believable, "torque-no-strip", 10.9},
		{"M12x1.5", "aluminium", "dry", "25 N·m", 12, bolt.Believable, "torque-no-strip", 9.35},
		// Longer than counts: no better than 2.5 diameters.
		{"M12x1.5", "aluminium", "", "50 N·m", 36, bolt.Doubtful, "torque-may-strip", 0},
		{"M12x1.5", "aluminium", "", "50 N·m", 30, bolt.Doubtful, "torque-may-strip", 0},
		{"M6", "aluminium", "", "9 N·m", 12, bolt.Doubtful, "length-never-enough", 0},
		// Three turns at least: a shorter length is doubted.
		{"M24x1.5", "aluminium", "", "5 N·m", 0, bolt.NotBelievable, "torque-no-strip", 4.5},
		{"M12x1.5", "aluminium", "", "177 N·m", 0, bolt.NotBelievable, "torque-will-strip", 0},
	} {
		j := joint(t, f.thread, "plug", "flat-copper", f.seat, "")
		if f.thread == "M6" {
			j.What, j.Seal = bolt.Screw, 0
		}
		j.Length, j.Lubrication = f.length, bolt.Lubrication(1+slices.Index(bolt.Lubrications, f.state))
		g := judge(t, j, f.torque)
		if g.Verdict != f.verdict || !strings.Contains(codes(g), f.reason) {
			t.Errorf("%+v: %s, %s (safety %+v)", f, g.Verdict, codes(g), g.Figures.Stripping)
		}
		near(t, f.thread+" in "+f.seat+" at "+f.torque+": length that is enough", g.Figures.Enough, f.enough, 0.15)
	}
}

// Beyond what counts a thread holds no more; an insert holds more the longer it is, and
// one as long as the bare thread more than that, since it is wider.
func TestJoint_LengthAndInserts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		th := drawThread(t)
		nm := rapid.Float64Range(0.5, 300).Draw(t, "torque")
		at := func(length float64) (all bolt.Figures) {
			settled(th, length).At(nm, &all)
			return all
		}
		most, beyond := at(2.5*th.Diameter), at(2.5*th.Diameter*rapid.Float64Range(1, 5).Draw(t, "longer"))
		if most.Stripping != beyond.Stripping {
			t.Fatalf("%+v: safety %+v at 2.5 diameters, %+v beyond", th, most.Stripping, beyond.Stripping)
		}
		if e := most.Enough; e > 0 {
			less, enough := at(e*0.999), at(e*1.001)
			shortest := e < 3.0001*th.Pitch // fewer turns are doubted, however little they bear
			if e > 2.5*th.Diameter*(1+1e-6) || e < 2.9999*th.Pitch || !shortest && less.Stripping.Low >= 1.25 || enough.Stripping.Low < min(1.25, most.Stripping.Low*(1-1e-9)) {
				t.Fatalf("%+v: %v mm is said to be enough: %+v below it, %+v above", th, e, less.Stripping, enough.Stripping)
			}
		} else if most.Stripping.Low > 1.2501 {
			t.Fatalf("%+v: no length is said to be enough, and 2.5 diameters have %+v", th, most.Stripping)
		}
		bare := at(1.5 * th.Diameter)
		for n, r := range bare.Inserts {
			if r.High == 0 {
				if bare.Stripping.Low < 1.2499 {
					t.Fatalf("%+v: no insert, and the bare thread has %+v", th, bare.Stripping)
				}
				continue
			}
			if !(r.Low < r.High) || n > 0 && r.Low <= bare.Inserts[n-1].Low {
				t.Fatalf("%+v: inserts %+v", th, bare.Inserts)
			}
		}
	})
}

// What no joint has is doubted wherever it stands, and what a standard has is not.
func TestJoint_Odd(t *testing.T) {
	ring := func(inner, outer float64) bolt.Ring { return bolt.Ring{Inner: inner, Outer: outer} }
	for _, f := range []struct {
		thread, seal string
		ring         bolt.Ring
		length       float64
		want         string
	}{
		{"M12x1.5", "flat-copper", ring(12.2, 16), 12, ""},
		{"M14x1.5", "flat-copper", ring(14, 20), 10, ""},
		{"M10x1", "flat-copper", ring(10, 13.5), 10, ""}, // the narrowest of DIN 7603, from memory
		{"M30x2", "flat-copper", ring(30.2, 36), 20, ""},
		{"M20x1.5", "o-ring", ring(18, 23), 12, ""},
		{"M12x1.5", "flat-copper", ring(20, 26), 12, "ring-not-on-thread"},
		{"M12x1.5", "flat-copper", ring(8, 16), 12, "ring-not-on-thread"},
		{"M12x1.5", "flat-copper", ring(12.2, 100), 12, "ring-width-odd"},
		{"M12x1.5", "flat-copper", ring(12.2, 12.4), 12, "ring-width-odd"},
		{"M12x1.5", "flat-copper", ring(12.2, 16), 37, "length-odd"},
		{"M12x1.5", "flat-copper", ring(12.2, 16), 200, "length-odd"},
		{"M12x1.5", "flat-copper", ring(12.2, 16), 4, "length-odd"},
		{"M12x1.5", "flat-copper", ring(12.2, 16), 36, ""},
		{"M12x1.5", "flat-copper", ring(12.2, 16), 4.5, ""},
	} {
		j := joint(t, f.thread, "plug", f.seal, "aluminium", "")
		j.Ring, j.Length = f.ring, f.length
		got := ""
		for _, o := range j.Odd() {
			got += o.Code
		}
		if got != f.want {
			t.Errorf("%+v: %q", f, got)
		}
		if g := judge(t, j, "25 N·m"); strings.Contains(codes(g), "odd") && g.Verdict == bolt.Believable {
			t.Errorf("%+v is believable", f)
		}
	}
	for _, f := range []struct {
		thread string
		bolt.Class
		odd bool
	}{
		{"M8", bolt.Class88, false}, {"5/16-18 UNC", bolt.Grade5, false}, {"1/4-20 UNC", bolt.Stainless, false}, {"M8", 0, false}, {"1/4-20 UNC", 0, false},
		{"M8", bolt.Grade5, true}, {"M6", bolt.Grade2, true}, {"5/16-18 UNC", bolt.Class88, true},
	} {
		j := bolt.Joint{Thread: *thread(t, f.thread), Class: f.Class}
		if got := len(j.Odd()) > 0; got != f.odd {
			t.Errorf("class %d on %s: %+v", f.Class, f.thread, j.Odd())
		}
	}
	for size, r := range map[string]bolt.Ring{"M6": bolt.UsualRing(6), "M30x2": bolt.UsualRing(30)} {
		j := bolt.Joint{Thread: *thread(t, size), Ring: r}
		if odd := j.Odd(); len(odd) > 0 {
			t.Errorf("the ring of DIN 7603 for %s: %+v", size, odd)
		}
	}
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
		length := rapid.Float64Range(0.1, 2.3).Draw(t, "length in diameters") * th.Diameter
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
