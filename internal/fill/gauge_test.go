package fill

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, within)
	}
}

// TestCovered: circle segments. The first row is a published example (r 10, h 5:
// area 61.4185, 19.55 %); those with y/D 0.55 to 0.70 are Chow 1959, Table 2-2
// (area over D², top width over D); the rest were worked out apart.
func TestCovered(t *testing.T) {
	near(t, "r 10, h 5, area", Covered(0.25)*math.Pi*100, 61.4185, 5e-5)
	near(t, "r 10, h 5", Covered(0.25), 0.1955, 5e-5)
	for _, row := range []struct{ height, area, width float64 }{
		{0.55, 0.442616, 0.994987}, {0.60, 0.492028, 0.979796}, {0.65, 0.540418, 0.953939}, {0.70, 0.587230, 0.916515},
	} {
		near(t, "area over D²", Covered(row.height)*math.Pi/4, row.area, 5e-7)
		near(t, "width over D", 2*HalfChord(row.height), row.width, 5e-7)
	}
	for _, row := range [][2]float64{{0, 0}, {0.1, 0.052044}, {0.2, 0.142378}, {0.3, 0.252316}, {0.5, 0.5}, {0.9, 0.947956}, {1, 1}} {
		near(t, "share of the glass", Covered(row[0]), row[1], 5e-7)
	}
	// A tank 10 m long, surface 1 m wide, 0.2 m below its top: r 0.725, empty
	// segment 0.1375 m², 15.138 m³ in it (published).
	r := 0.725
	near(t, "empty segment", Covered(0.2/(2*r))*math.Pi*r*r, 0.1375, 5e-5)
	near(t, "tank", Covered(1-0.2/(2*r))*math.Pi*r*r*10, 15.138, 5e-4)
	// A lying cylinder of r 60 mm, 150 mm long, 40 mm deep (worked out apart).
	near(t, "lying cylinder, L", Covered(40.0/120)*math.Pi*0.6*0.6*1.5, 0.49501, 5e-6)
}

func TestLevelRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		glass := rapid.Float64Range(5, 60).Draw(t, "glass")
		marks := glass * rapid.Float64Range(0.1, 1).Draw(t, "marks")
		height := rapid.Float64Range(0, 1).Draw(t, "height")
		share := ShareAt(height*glass, glass, marks)
		if back := Window(glass, marks).Height(share); math.Abs(back-height) > 1e-9 {
			t.Fatalf("height %v comes back as %v", height*glass, back)
		}
		// At the rim the area hardly grows, so it shows the height less well.
		if back := LineAt(Covered(height)); math.Abs(back-height) > 1e-8 {
			t.Fatalf("line %v comes back as %v", height, back)
		}
		if d := Covered(height) + Covered(1-height) - 1; math.Abs(d) > 1e-12 {
			t.Fatalf("the two halves differ by %v", d)
		}
	})
}

func TestAmend(t *testing.T) {
	for _, row := range []struct {
		name             string
		share, band, off float64
		advice           Advice
		ml               float64
	}{
		{"a fifth of 400 mL: 120 missing, 70 in the first step", 0.20, 400, 0, AddOil, 70},
		{"at the lower mark", 0, 400, 0, AddOil, 150},
		{"less missing than a reading shows", 0.49, 400, 0, Leave, 0},
		{"an eighth of the band is shown", 0.375, 400, 0, AddOil, 50},
		{"a little less is not", 0.376, 400, 0, Leave, 0},
		{"of a large band a reading shows no less than 125 mL", 0.35, 1000, 0, AddOil, 120},
		{"two digits", 0, 5000, 0, AddOil, 2400},
		{"on the upper mark, and leaning", 0.95, 400, 0.1, Unsure, 0},
		{"very small band", 0, 15, 0, AddOil, 7},
		{"the middle", 0.5, 400, 0, Leave, 0},
		{"three quarters", 0.75, 400, 0, Leave, 0},
		{"near the upper mark", 0.9, 400, 0, Full, 0},
		{"at the upper mark", 1, 400, 0, Full, 0},
		{"0.6 L over by a wrong figure, band 500", 1.2 + AimHigh, 500, 0, TakeOut, 600},
		{"below the lower mark: up to it", -0.5, 400, 0, AddOil, 200},
		{"a little below the mark", -0.02, 400, 0, AddOil, 50},
		{"a leaning bike", 0.2, 400, 0.5, Unsure, 0},
	} {
		advice, ml := Amend(row.share, row.share, row.band, row.off)
		if advice != row.advice || ml != row.ml {
			t.Errorf("%s: %s %v, want %s %v", row.name, advice, ml, row.advice, row.ml)
		}
	}
	near(t, "missing", Missing(0.20, 400), 120, 1e-9)
}

// TestAmendHeat: the growth by heat alone never changes what is to be done.
func TestAmendHeat(t *testing.T) {
	for _, row := range []struct {
		name         string
		share, grown float64
		advice       Advice
		ml           float64
	}{
		{"within, and by heat above", 0.9, 1.17, Unsure, 0},
		{"at the upper mark, and by a hair of heat above", 1, 1.0001, Unsure, 0},
		{"above, and cold within: oil comes down yet", 1.1, 0.9, Unsure, 0},
		{"low, and by heat in the middle", 0.25, 0.52, Unsure, 0},
		{"in the middle, and cold low", 0.5, 0.2, Unsure, 0},
		{"right, and by heat high", 0.6, 0.9, Full, 0},
		{"high, and cold right", 0.9, 0.6, Leave, 0},
		{"low in both: the lesser step", 0, 0.2, AddOil, 70},
		{"above in both: the lesser amount", 1.5, 1.3, TakeOut, 220},
	} {
		if advice, ml := Amend(row.share, row.grown, 400, 0); advice != row.advice || ml != row.ml {
			t.Errorf("%s: %s %v, want %s %v", row.name, advice, ml, row.advice, row.ml)
		}
	}
}

func TestNeverPastUpperMark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := told(t, -1, 3, "share")
		grown := share
		if rapid.Bool().Draw(t, "warm or cold") {
			grown = AsTold(share + told(t, -0.6, 0.6, "heat"))
		}
		band := rapid.Float64Range(10, 5000).Draw(t, "band")
		off := told(t, 0, 0.3, "off")
		advice, ml := Amend(share, grown, band, off)
		low, high := min(share, grown), max(share, grown)
		switch advice {
		case AddOil:
			if after := high + ml/band; ml <= 0 || after > AimHigh+hair || after+off > 1+hair {
				t.Fatalf("%v mL lead to %v, wrong by up to %v", ml, after, off)
			}
			if missing := Missing(high, band); missing < Reliable*band*(1-hair) || ml < min(Reliable*band, 50)*0.89-1 || ml > max(missing-50, 50, Reliable*band)+1e-6 {
				t.Fatalf("a step of %v for %v missing", ml, missing)
			}
		case TakeOut:
			// What is told is rounded by a tenth of it at the most.
			if after := low - ml/band; share <= 1 || after < AimLow || after > 1 {
				t.Fatalf("taking out %v leads to %v", ml, after)
			}
		case Leave, Full:
			// Never milder than what is shown: neither end asks for an act.
			if high > 1 || share+off > 1+hair || AimLow-low >= Reliable || (advice == Leave) != (grown <= AimHigh) {
				t.Fatalf("%v to %v, wrong by up to %v: %s", low, high, off, advice)
			}
		case Unsure:
			if off <= Reliable && share == grown && share+off <= 1 {
				t.Fatalf("%v is unsure", share)
			}
		}
		if ml > 0 && ml < 1e4 && math.Abs(ml-shownDigits(ml)) > 1e-6 {
			t.Fatalf("%v mL", ml)
		}
	})
}

// hair is what a sum of shares may be off by in its last bits.
const hair = 1e-9

// told draws a share as it is told.
func told(t *rapid.T, low, high float64, name string) float64 {
	return AsTold(rapid.Float64Range(low, high).Draw(t, name))
}

// shownDigits rounds to two digits.
func shownDigits(v float64) float64 {
	step := math.Pow(10, math.Floor(math.Log10(v)+1e-12)-1)
	return math.Round(v/step) * step
}

// TestStepsArrive: pouring as advised, again and again, ends in the aim, but for what a
// reading doesn't show.
func TestStepsArrive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := told(t, -1, 0.5, "share")
		band := rapid.Float64Range(10, 5000).Draw(t, "band")
		for range 60 {
			advice, ml := Amend(share, share, band, 0)
			if advice != AddOil {
				break
			}
			share = AsTold(share + ml/band)
		}
		if share > AimHigh || AimLow-share >= Reliable {
			t.Fatalf("ends at %v of a band of %v mL", share, band)
		}
	})
}

// TestTilt: d·tan θ, worked out apart to the printed digit.
func TestTilt(t *testing.T) {
	for _, row := range []struct{ d, lean, mm, within float64 }{
		{120, 3, 6.29, 0.005}, {110, 12, 23.38, 0.005},
		{60, 1, 1.0, 0.05}, {100, 1, 1.7, 0.05}, {140, 1, 2.4, 0.05},
		{60, 2, 2.1, 0.05}, {100, 2, 3.5, 0.05}, {140, 2, 4.9, 0.05},
		{60, 5, 5.2, 0.05}, {100, 5, 8.7, 0.05}, {140, 5, 12.2, 0.05},
		{60, 10, 10.6, 0.05}, {100, 10, 17.6, 0.05}, {140, 10, 24.7, 0.05},
		{60, 12, 12.8, 0.05}, {100, 12, 21.3, 0.05}, {140, 12, 29.8, 0.05},
		{150, 1, 2.6, 0.05}, {150, 12, 32, 0.5},
	} {
		near(t, "tilt", Tilt(row.d, row.lean), row.mm, row.within)
	}
	near(t, "side stand, marks 10 mm apart: bands", Tilt(110, 12)/Upright(10, 0), 2.34, 0.005)
	near(t, "marks 40 mm along a stick at 30°", Upright(40, 30), 34.64, 0.005)
}

// TestRise: 200 L heated by 50 K grow by "about 7 liters", 100 L from 20 to 40 °C by
// 1.4 L (both published, with 0.0007 per K); 3.00 L at 20 °C are 3.161 L at 90 °C (ASTM
// D1250, density 880 at 15 °C; with the usual 875 it is 1 mL more).
func TestRise(t *testing.T) {
	for _, row := range []struct{ litres, from, to, ml, within float64 }{
		{200, 15, 65, 7000, 600}, {100, 20, 40, 1400, 80}, {3, 20, 90, 161, 2},
	} {
		near(t, "rise", Rise(row.litres*1000, row.from, row.to), row.ml, row.within)
	}
	near(t, "net of the case, of 3 L by 60 K", Rise(3000, 20, 80)-RiseInCase(3000, 20, 80), 12.6, 1e-9)
}

func TestBegin(t *testing.T) {
	// 3.0 L with filter: 87.5 %, the middle of the range, are 2.625 L, and 375 mL
	// are kept for the steps (worked out apart).
	s := Begin(3, SpinOn, OpenDown, false, false)
	near(t, "middle of before", (s.Before.Low+s.Before.High)/2, 2.625, 1e-12)
	near(t, "middle of after", (s.After.Low+s.After.High)/2, 0.375, 1e-12)
	near(t, "First agrees", First(3), 2.625, 1e-12)
	for _, row := range []struct {
		name    string
		start   *Start
		prefill Span
		drop    Span
	}{
		{"spin-on, down", s, Span{}, Span{0.2, 0.4}},
		{"spin-on, sideways", Begin(3, SpinOn, OpenSideways, false, false), Span{0.03, 0.06}, Span{0.14, 0.37}},
		{"spin-on, up", Begin(3, SpinOn, OpenUp, false, false), Span{0.075, 0.2625}, Span{0, 0.325}},
		{"cartridge", Begin(1.5, Cartridge, OpenSideways, false, false), Span{}, Span{0.05, 0.15}},
		{"strainer: not known", Begin(0.9, Mesh, "", false, false), Span{}, Span{}},
		{"cooler emptied", Begin(3, Cartridge, "", true, false), Span{}, Span{0.3, 0.8}},
		{"0.8 L, spin-on, up", Begin(0.8, SpinOn, OpenUp, false, false), Span{0.075, 0.2625}, Span{0, 0.325}},
		{"50 mL: no spin-on fits", Begin(0.05, SpinOn, OpenUp, false, false), Span{}, Span{}},
		{"1.5 L: the usual cooler doesn't fit", Begin(1.5, Cartridge, "", true, false), Span{}, Span{}},
	} {
		near(t, row.name+", prefill low", row.start.Prefill.Low, row.prefill.Low, 1e-12)
		near(t, row.name+", prefill high", row.start.Prefill.High, row.prefill.High, 1e-12)
		near(t, row.name+", drop low", row.start.Drop.Low, row.drop.Low, 1e-12)
		near(t, row.name+", drop high", row.start.Drop.High, row.drop.High, 1e-12)
	}
}

func TestBeginNeverTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tankOnly := rapid.Bool().Draw(t, "tank only")
		due := rapid.Float64Range(0.05, 25).Draw(t, "due")
		if tankOnly {
			due = max(due, LeastTank)
		}
		filter := rapid.SampledFrom([]Filter{SpinOn, Cartridge, Mesh, Stays}).Draw(t, "filter")
		mount := rapid.SampledFrom([]Mount{"", OpenUp, OpenSideways, OpenDown}).Draw(t, "mount")
		s := Begin(due, filter, mount, rapid.Bool().Draw(t, "cooler"), tankOnly)
		for _, span := range []Span{s.Before, s.Prefill, s.Holds, s.Old, s.After, s.Drop} {
			if span.Low < 0 || span.High < span.Low {
				t.Fatalf("a range of %v", span)
			}
		}
		if s.Before.High > due || !tankOnly && math.Abs(s.Before.Low+s.After.High-due) > 1e-9 {
			t.Fatalf("%v before and %v after of %v", s.Before, s.After, due)
		}
		// What is said to go into a part is part of what is poured.
		if s.Prefill.High > s.Before.Low || s.Holds.High > due/2 || s.Drop.High > due/2 || s.After.High > 0 && s.After.Low < 0.02-1e-9 {
			t.Fatalf("of %v L: %+v", due, s)
		}
		if tankOnly && s.Before.High+s.Old.High > due {
			t.Fatalf("with %v of old oil in the case, %v is too much for %v", s.Old.High, s.Before.High, due)
		}
	})
}
