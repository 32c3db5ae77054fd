package bolt_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// joint is a joint by its words.
func joint(t testing.TB, name, what, seal, seat, class string) *bolt.Joint {
	t.Helper()
	j := &bolt.Joint{What: bolt.What(1 + slices.Index(bolt.Whats, what)), Seal: bolt.Seal(1 + slices.Index(bolt.Seals, seal)),
		Seat: bolt.Seat(1 + slices.Index(bolt.Seats, seat)), Class: bolt.Class(1 + slices.Index(bolt.Classes, class))}
	if name != "" {
		j.Thread = *thread(t, name)
	}
	return j
}

func TestJoint_Published(t *testing.T) {
	for _, f := range []struct {
		thread, what, seal, seat, class string
		low, high                       float64 // N·m; 0: not known
		table                           string
	}{
		// Works standard for plugs with copper rings; 10 % more by hand.
		{"M10x1", "plug", "flat-copper", "steel", "", 15, 16.5, "copper-plugs"},
		{"M12x1.5", "plug", "flat-copper", "aluminium", "", 25, 27.5, "copper-plugs"},
		{"M12x1.5", "plug", "flat-copper", "steel", "", 35, 38.5, "copper-plugs"},
		{"M14x1.5", "plug", "flat-copper", "a380", "", 25, 27.5, "copper-plugs"},
		{"M18x1.5", "plug", "flat-copper", "cast-iron", "", 50, 55, "copper-plugs"},
		{"M30x2", "plug", "flat-copper", "aluminium", "", 85, 93.5, "copper-plugs"},
		// Both standards, the seal not being stated.
		{"M12x1.5", "plug", "", "aluminium", "", 14, 27.5, "plugs"},
		{"M14x1.5", "plug", "", "steel", "", 35, 45, "plugs"},
		{"M27x2", "plug", "", "aluminium", "", 57, 77, "plugs"},
		{"M20x1.5", "plug", "", "aluminium", "", 45, 49.5, "copper-plugs"},
		// O-ring plugs in inches: 82±8 and 48±5, half in what is not ferrous.
		{"3/4-16 UNF", "plug", "o-ring", "steel", "", 74, 90, "inch-plugs"},
		{"3/4-16 UNF", "plug", "o-ring", "aluminium", "", 37, 45, "inch-plugs"},
		{"9/16-18 UNF", "plug", "o-ring", "magnesium", "", 21.5, 26.5, "inch-plugs"},
		// General tables for screws.
		{"M6", "screw", "", "aluminium", "8.8", 2.9, 9, "screws"},
		{"M10", "screw", "", "steel", "10.9", 24, 50, "screws"},
		// Common practice.
		{"", "filter", "", "", "", 10, 12, "practice"},
		// Not in the tables.
		{"M12x1.5", "plug", "flat-aluminium", "aluminium", "", 0, 0, ""},
		{"M12x1.5", "plug", "o-ring", "aluminium", "", 0, 0, ""},
		{"M12x1.5", "plug", "flat-copper", "magnesium", "", 0, 0, ""},
		{"M12x1.5", "plug", "flat-copper", "", "", 0, 0, ""},
		{"M12x1.25", "plug", "flat-copper", "aluminium", "", 0, 0, ""},
		{"1/2-20 UNF", "plug", "o-ring", "steel", "", 0, 0, ""},
		{"3/4-16 UNF", "plug", "flat-copper", "steel", "", 0, 0, ""},
		{"M6", "screw", "", "magnesium", "8.8", 0, 0, ""},
		{"M6", "screw", "", "aluminium", "4.8", 0, 0, ""},
		{"M6", "screw", "", "aluminium", "A2-70", 0, 0, ""},
		{"M6x0.75", "screw", "", "aluminium", "8.8", 0, 0, ""},
	} {
		b := joint(t, f.thread, f.what, f.seal, f.seat, f.class).Published()
		if b.Low != f.low || b.High != f.high || b.Table != f.table {
			t.Errorf("%+v: got %v to %v out of %q", f, b.Low, b.High, b.Table)
		}
	}
}

// The tables themselves: aluminium never takes more than steel, and the two
// standards for plugs differ by about the factor that the judgement allows.
func TestPublished_Shape(t *testing.T) {
	for _, name := range []string{"M10x1", "M12x1.5", "M14x1.5", "M16x1.5", "M18x1.5", "M20x1.5", "M22x1.5", "M24x1.5", "M26x1.5", "M27x2", "M30x1.5", "M30x2", "M33x2"} {
		soft, hard := joint(t, name, "plug", "flat-copper", "aluminium", "").Published(), joint(t, name, "plug", "flat-copper", "steel", "").Published()
		if soft.Low > hard.Low || soft.Low < 0.7*hard.Low {
			t.Errorf("%s: %v in aluminium, %v in steel", name, soft.Low, hard.Low)
		}
		if both := joint(t, name, "plug", "", "aluminium", "").Published(); both.High/both.Low > 2 {
			t.Errorf("%s: the tables differ by more than two: %+v", name, both.Range)
		}
	}
}

// judge settles and judges a torque as text.
func judge(t testing.TB, j *bolt.Joint, torque string) *bolt.Judgement {
	t.Helper()
	a, list := quantity.Parse(quantity.Torque, torque, "", quantity.Metric)
	if len(list) > 0 {
		t.Fatalf("%s: %v", torque, list)
	}
	g := &bolt.Judgement{}
	j.Settle()
	u, _ := quantity.Find(a.Unit)
	g.Judge(j, a.Base, u.Scale, quantity.Metric)
	return g
}

func codes(g *bolt.Judgement) string {
	var list []string
	for _, f := range g.Reasons {
		list = append(list, f.Code)
	}
	return strings.Join(list, " ")
}

func TestJudge(t *testing.T) {
	for _, f := range []struct {
		thread, what, seal, seat, class, torque string
		verdict                                 bolt.Verdict
		meant                                   string
		reason                                  string // a code that must be there
	}{
		{"M12x1.5", "plug", "flat-copper", "aluminium", "", "22 lbf·ft", bolt.Doubtful, "", "torque-near-table"},
		{"M12x1.5", "plug", "flat-aluminium", "aluminium", "", "20 N·m", bolt.Doubtful, "", "torque-in-table"},
		{"M14x1.5", "plug", "flat-aluminium", "aluminium", "", "29 N·m", bolt.Believable, "", "torque-near-table"},
		{"M10x1.25", "plug", "", "aluminium", "", "15 N·m", bolt.Doubtful, "", "torque-in-table"}, // by M10x1
		// 177 lbf·in are 20 N·m, 18 lbf·ft are 24 N·m, 2.5 kgf·m are 25 N·m.
		{"M12x1.5", "plug", "flat-copper", "aluminium", "", "177 N·m", bolt.NotBelievable, "lbf·in", "torque-will-strip"},
		{"M12x1.5", "plug", "flat-copper", "aluminium", "", "18 lbf·in", bolt.NotBelievable, "N·m", "torque-slip"},
		{"M12x1.5", "plug", "flat-copper", "aluminium", "", "2.5 N·m", bolt.NotBelievable, "kgf·m", "torque-slip"},
		{"M14x1.5", "plug", "flat-copper", "steel", "", "35 lbf·in", bolt.NotBelievable, "N·m", "torque-slip"},
		{"M12x1.5", "plug", "flat-copper", "steel", "", "26 lbf·in", bolt.NotBelievable, "N·m", "torque-slip"},
		{"M6", "screw", "", "aluminium", "8.8", "10 N·m", bolt.Doubtful, "", "torque-may-strip"},
		{"M6", "screw", "", "aluminium", "8.8", "88 N·m", bolt.NotBelievable, "lbf·in", "torque-will-yield"},
		{"M6", "screw", "", "aluminium", "8.8", "10 lbf·ft", bolt.NotBelievable, "N·m", "torque-slip"},
		{"M8", "screw", "", "steel", "4.6", "14 N·m", bolt.Doubtful, "", "torque-may-yield"},
		{"", "filter", "", "", "", "12 N·m", bolt.Believable, "", "torque-on-gasket"},
		{"", "filter", "", "", "", "100 N·m", bolt.NotBelievable, "lbf·in", "torque-slip"},
		// An O-ring needs no force: far below the tables for washers is usual.
		{"M30x1.5", "plug", "o-ring", "aluminium", "", "20 N·m", bolt.NotJudged, "", "torque-under-washers"},
		{"M30x1.5", "plug", "o-ring", "aluminium", "", "400 N·m", bolt.NotBelievable, "", "torque-out-of-table"},
		// Nothing published for magnesium: that it holds makes nothing believable.
		{"M14x1.5", "plug", "flat-copper", "magnesium", "", "25 N·m", bolt.NotJudged, "", "torque-no-table"},
		{"M14x1.5", "plug", "flat-copper", "magnesium", "", "250 N·m", bolt.NotBelievable, "", "torque-will-strip"},
		{"M48x1.5", "plug", "", "steel", "", "100 N·m", bolt.NotJudged, "", "torque-no-table"},
		{"5/8-18 UNF", "plug", "o-ring", "aluminium", "", "19 N·m", bolt.Believable, "", "torque-no-strip"},
		{"M6", "screw", "", "en-ac-46000", "8.8", "8 N·m", bolt.Doubtful, "", "strength-from-memory"},
	} {
		g := judge(t, joint(t, f.thread, f.what, f.seal, f.seat, f.class), f.torque)
		if g.Verdict != f.verdict || g.Meant != f.meant || !strings.Contains(codes(g), f.reason) {
			t.Errorf("%+v:\ngot %s, meant %q: %s", f, g.Verdict, g.Meant, codes(g))
		}
	}
}

func TestJudge_Assumed(t *testing.T) {
	j := joint(t, "M12x1.5", "plug", "flat-copper", "aluminium", "")
	if got := codes(judge(t, j, "25 N·m")); got != "torque-in-table torque-may-strip length-assumed washer-assumed friction-taken" {
		t.Errorf("nothing known: %s", got)
	}
	near(t, "one diameter is assumed", j.Length, 12, 0)
	j = joint(t, "M12x1.5", "plug", "flat-copper", "aluminium", "")
	j.Length, j.Ring = 18, bolt.Ring{Inner: 12.2, Outer: 18}
	if got := codes(judge(t, j, "25 N·m")); got != "torque-in-table torque-no-strip friction-taken" {
		t.Errorf("length and washer known: %s", got)
	}
}

// Whatever the joint, a figure that was doubted is not praised when it grows
// beyond what tables and strength allow, and nothing is not a number.
func TestJudge_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := bolt.Joint{Thread: drawThread(t), What: bolt.What(rapid.IntRange(1, 3).Draw(t, "what")),
			Seal: bolt.Seal(rapid.IntRange(0, len(bolt.Seals)).Draw(t, "seal")), Seat: bolt.Seat(rapid.IntRange(0, len(bolt.Seats)).Draw(t, "seat")),
			Class: bolt.Class(rapid.IntRange(0, len(bolt.Classes)).Draw(t, "class")), Lubrication: bolt.Lubrication(rapid.IntRange(0, 2).Draw(t, "state"))}
		j.Settle()
		nm := rapid.Float64Range(0.1, 1000).Draw(t, "torque")
		var at, tighter bolt.Judgement
		at.Judge(&j, nm, 1, quantity.Metric)
		tighter.Judge(&j, nm*1.1, 1, quantity.Metric)
		for n, r := range []bolt.Range{at.Figures.Preload, at.Figures.NutFactor, at.Figures.YieldShare, at.Figures.Stripping, at.Figures.Pressure} {
			if !(r.Low >= 0 && r.Low <= r.High) || n < 2 && j.What != bolt.Filter && r.High == 0 {
				t.Fatalf("figure %d of %+v: %+v", n, j, r)
			}
		}
		if at.Verdict == bolt.NotBelievable && at.Figures.Stripping.High > 0 &&
			at.Figures.Stripping.High < 1 && tighter.Verdict != bolt.NotBelievable {
			t.Fatalf("%v N·m strips, and a tenth more is %s", nm, tighter.Verdict)
		}
		// Verdict and reasons are never milder than what is shown.
		figures := &at.Figures
		for _, f := range []struct {
			what string
			bolt.Range
			shown bool
		}{
			{"strip", figures.Stripping, figures.Stripping.High > 0},
			{"yield", bolt.Range{Low: 1 / figures.YieldShare.High, High: 1 / figures.YieldShare.Low}, figures.YieldShare.High > 0},
		} {
			want := ""
			switch {
			case !f.shown:
			case f.High < 1:
				want = "torque-will-" + f.what
			case f.Low > 1.25:
				want = "torque-no-" + f.what
			case f.Low < 1.1:
				want = "torque-may-" + f.what
			}
			if !strings.Contains(codes(&at), want) {
				t.Fatalf("%+v at %v N·m, safety %+v: %s", j, nm, f.Range, codes(&at))
			}
			if f.shown && (at.Verdict == bolt.Believable || at.Verdict == bolt.NotJudged) && f.Low < 1.1 ||
				f.shown && f.High < 1 && at.Verdict != bolt.NotBelievable {
				t.Fatalf("%+v at %v N·m is %s with a safety of %+v", j, nm, at.Verdict, f.Range)
			}
		}
		doubts := slices.ContainsFunc(at.Reasons, func(f finding.Finding) bool { return f.Grade == finding.Doubt })
		if bad := at.Verdict == bolt.NotBelievable || at.Verdict == bolt.Doubtful; bad != doubts {
			t.Fatalf("verdict %s with the reasons %s", at.Verdict, codes(&at))
		}
	})
}
