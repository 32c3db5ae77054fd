package bolt_test

import (
	"slices"
	"testing"

	"tidysump/internal/bolt"
)

type plugRow struct {
	thread     string
	hard, soft float64 // in steel and iron, in aluminium
}

// An engine maker's works standard for plugs with copper rings, N·m: every row.
// Threads and faces oiled; 10 % more by hand.
var copperPlugs = []plugRow{
	{"M10x1", 15, 15}, {"M12x1.5", 35, 25}, {"M14x1.5", 35, 25}, {"M16x1.5", 40, 30}, {"M18x1.5", 50, 35},
	{"M20x1.5", 55, 45}, {"M22x1.5", 60, 50}, {"M24x1.5", 70, 60}, {"M26x1.5", 80, 70}, {"M27x2", 80, 70},
	{"M30x1.5", 100, 90}, {"M30x2", 95, 85}, {"M33x2", 120, 110},
}

// Another standard of the same maker, "plug screws", the seal not being stated:
// in steel and iron, in aluminium and what may be added there.
var otherPlugs = []struct {
	thread           string
	hard, soft, more float64
}{
	{"M10x1", 20, 10, 2}, {"M12x1.5", 35, 14, 2}, {"M14x1.5", 45, 15, 3}, {"M16x1.5", 55, 18, 3},
	{"M18x1.5", 70, 23, 3}, {"M22x1.5", 100, 33, 4}, {"M27x2", 170, 57, 5},
}

func TestPublished_Plugs(t *testing.T) {
	for _, f := range copperPlugs {
		for seat, nm := range map[string]float64{"steel": f.hard, "cast-iron": f.hard, "aluminium": f.soft} {
			b := joint(t, f.thread, "plug", "flat-copper", seat, "").Published()
			near(t, f.thread+" in "+seat, b.Low, nm, 0)
			near(t, f.thread+" in "+seat+" by hand", b.High, nm*1.1, 1e-9)
		}
	}
	// Without a seal both standards count: the band holds both, and no more.
	for _, f := range otherPlugs {
		n := slices.IndexFunc(copperPlugs, func(c plugRow) bool { return c.thread == f.thread })
		c := copperPlugs[n]
		hard := joint(t, f.thread, "plug", "", "steel", "").Published()
		near(t, f.thread+" in steel, least", hard.Low, min(c.hard, f.hard), 0)
		near(t, f.thread+" in steel, most", hard.High, max(c.hard*1.1, f.hard), 1e-9)
		soft := joint(t, f.thread, "plug", "", "aluminium", "").Published()
		near(t, f.thread+" in aluminium, least", soft.Low, min(c.soft, f.soft), 0)
		near(t, f.thread+" in aluminium, most", soft.High, max(c.soft*1.1, f.soft+f.more), 1e-9)
	}
}

// A third standard, male stud connectors with copper rings into steel and iron,
// has other figures for the same threads, by up to a factor of two: they must
// not be called unbelievable.
func TestJudge_OtherStandard(t *testing.T) {
	for name, torque := range map[string]string{
		"M10x1": "15 N·m", "M12x1.5": "20 N·m", "M14x1.5": "35 N·m", "M16x1.5": "50 N·m",
		"M18x1.5": "60 N·m", "M22x1.5": "70 N·m", "M26x1.5": "100 N·m",
	} {
		g := judge(t, joint(t, name, "plug", "flat-copper", "steel", ""), torque)
		if g.Verdict != bolt.Believable {
			t.Errorf("%s at %s: %s, %s", name, torque, g.Verdict, codes(g))
		}
	}
}

// Published general tables for screws of class 8.8, N·m: each figure lies within
// the band for its seat.
func TestPublished_Screws(t *testing.T) {
	threads := [...]string{"M5", "M6", "M8", "M10"}
	for _, f := range []struct {
		source, seat string
		nm           [len(threads)]float64 // 0: not printed
	}{
		{"Dubbel, 18th edition, p. G175", "steel", [...]float64{5.5, 9.5, 23, 46}},
		{"DIN 13-13, friction 0.14, lightly oiled", "steel", [...]float64{5.9, 10, 25, 49}},
		{"90 % of yield, friction 0.14, not oiled", "steel", [...]float64{6.03, 10.3, 25.5, 50}},
		{"into steel SS400, a leaflet", "steel", [...]float64{2.9, 5, 12, 24}},
		{"into cast aluminium", "aluminium", [...]float64{0, 9, 20, 40}},
		{"into iron or die-cast aluminium, the leaflet's average", "aluminium", [...]float64{2.2, 3.6, 8.9, 18}},
		{"the same, least", "aluminium", [...]float64{1.7, 2.9, 7.1, 14}},
		{"the same, most", "aluminium", [...]float64{2.6, 4.4, 11, 21}},
		{"service manual, clean and dry", "aluminium", [...]float64{5, 8, 18, 36}},
	} {
		for n, nm := range f.nm {
			b := joint(t, threads[n], "screw", "", f.seat, "8.8").Published()
			if nm > 0 && (nm < b.Low || nm > b.High) {
				t.Errorf("%s at %v N·m (%s) is not within %+v", threads[n], nm, f.source, b.Range)
			}
		}
	}
	// The leaflet's figures for aluminium are about three quarters of its steel.
	for n, ratio := range [...]float64{1: 0.72, 2: 0.74, 3: 0.75} {
		steel, soft := [...]float64{2.9, 5, 12, 24}[n], [...]float64{2.2, 3.6, 8.9, 18}[n]
		if ratio > 0 {
			near(t, threads[n]+": aluminium over steel", soft/steel, ratio, 0.005)
		}
	}
}

// An engine maker's table for class 8.8 with "threads and mating faces coated
// with engine oil", friction 0.125, N·m: none overstresses its screw, and none
// is far below what the screw bears.
func TestPreload_OiledTable(t *testing.T) {
	for name, nm := range map[string]float64{
		"M6": 9, "M8": 21, "M10": 42, "M10x1.25": 45, "M12": 74, "M12x1.25": 80, "M12x1.5": 76, "M14": 115, "M14x1.5": 125,
	} {
		th := thread(t, name)
		force := bolt.Preload(bolt.NutFactor(th, 0.125, 0.125, bolt.HeadRing(th.Diameter)), th.Diameter, nm)
		if share := force / bolt.Permissible(th, 640, 1, 0.125); share < 0.7 || share > 0.9 {
			t.Errorf("%s at %v N·m: %.3f of yield", name, nm, share)
		}
	}
}
