package ring_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/ring"
)

// sized gives the sizes by name.
func sized(t testing.TB) map[string]ring.Size {
	t.Helper()
	all := map[string]ring.Size{}
	for _, s := range ring.Sizes() {
		if other, twice := all[s.Name]; twice && other.Series == s.Series {
			t.Errorf("%s is there twice: %+v and %+v", s.Name, other, s)
		}
		all[s.Name] = s
	}
	return all
}

// Sizes as they are printed, mm.
func TestSizes_Published(t *testing.T) {
	all := sized(t)
	for _, f := range []struct{ source, rows string }{
		{"AS568, tables that were read; section 1.78", "004 1.78 005 2.57 006 2.90 007 3.68 008 4.47 010 6.07 011 7.65 012 9.25 013 10.82 014 12.42 015 14.00 016 15.60 017 17.17 018 18.77 020 21.95"},
		{"same, section 2.62", "110 9.19 111 10.77 112 12.37 113 13.95 114 15.54 115 17.12 116 18.72 120 25.07"},
		{"same, section 3.53", "210 18.64 211 20.22 212 21.82 213 23.39 214 24.99 215 26.57 216 28.17 217 29.74 218 31.34 220 34.52 222 37.69 225 47.22 230 63.09"},
		{"same, section 5.33", "325 37.47"},
		{"from memory; section 1.78", "009 5.28 028 34.65 029 37.82 041 75.92 042 82.27 050 133.07"},
		{"from memory; section 2.62", "102 1.24 107 5.23 109 7.59 150 72.69 151 75.87 152 82.22"},
		{"from memory; section 3.53", "201 4.34 206 12.29 223 40.87 247 117.07 257 148.82"},
		{"from memory; section 5.33", "309 10.46 318 24.77 324 34.29 326 40.64 349 113.67"},
	} {
		section := f.source[strings.LastIndex(f.source, " ")+1:]
		rows := strings.Fields(f.rows)
		for n := 0; n < len(rows); n += 2 {
			s := all["AS568-"+rows[n]]
			inside, _ := strconv.ParseFloat(rows[n+1], 64)
			// Tables differ by a hundredth where they round inches.
			if math.Abs(s.Inside-inside) > 0.011 || fmt.Sprint(s.Section) != section {
				t.Errorf("AS568-%s: %v × %v, want %v × %s (%s)", rows[n], s.Inside, s.Section, inside, section, f.source)
			}
		}
	}
	for name, want := range map[string][2]float64{
		// A list of JIS B 2401, second hand.
		"P3": {2.8, 1.9}, "P9": {8.8, 1.9}, "P10": {9.8, 1.9}, "P10A": {9.8, 2.4}, "P11.2": {11, 2.4}, "P12": {11.8, 2.4}, "P22": {21.8, 2.4},
		"G25": {24.4, 3.1}, "G60": {59.4, 3.1}, "G100": {99.4, 3.1},
		// From memory.
		"P12.5": {12.3, 2.4}, "P22A": {21.7, 3.5}, "P25": {24.7, 3.5}, "P29.5": {29.2, 3.5}, "P48A": {47.6, 5.7}, "S20": {19.5, 1.5}, "S40": {39.5, 2},
		"25×3.55": {25, 3.55}, "11.8×2.65": {11.8, 2.65}, "6.9×1.8": {6.9, 1.8}, "24×3": {24, 3}, "48×2.5": {48, 2.5},
		// Rings of plugs with straight threads, AS568, from memory: 9/16-18 and 3/4-16.
		"AS568-906": {11.89, 1.98}, "AS568-908": {16.36, 2.21}, "AS568-932": {59.36, 3},
		// Its first and its last inside and section were read: 0.185 to 2.337 in, 1.42 to 3.0 mm.
		"AS568-901": {4.7, 1.42},
	} {
		if s := all[name]; math.Abs(s.Inside-want[0]) > 1e-9 || math.Abs(s.Section-want[1]) > 1e-9 {
			t.Errorf("%s: %+v, want %v", name, s, want)
		}
	}
	// A supplier's list of metric rings, inside by section.
	for section, insides := range map[string]string{"1": "2 2.5", "1.5": "3 3.5 4 5 6", "2": "5 6 7 8 9 10 12 14 16", "2.5": "10 12 15 18 20 22", "3": "20 25 28 30 32 38 40 45", "3.5": "35 42 48"} {
		for _, inside := range strings.Fields(insides) {
			if s := all[inside+"×"+section]; s.Series != ring.Metric {
				t.Errorf("%s×%s: %+v", inside, section, s)
			}
		}
	}
}

// Pages print these, and they are wrong: AS568-001 of 1.02 mm inside, -104 of 0.139 in,
// -240 of 101.19 mm, -325 of 37.69 mm, and 3.5 mm for the section of G25.
func TestSizes_Misprints(t *testing.T) {
	all := sized(t)
	for name, wrong := range map[string]float64{"AS568-104": 3.53, "AS568-240": 101.19, "AS568-325": 37.69} {
		if s := all[name]; s.Inside == 0 || math.Abs(s.Inside-wrong) < 0.02 {
			t.Errorf("%s has the misprint: %+v", name, s)
		}
	}
	if all["G25"].Section == 3.5 {
		t.Error("G25 has the misprint 3.5")
	}
}

// Tolerances that are printed, AS568 and JIS B 2401 (from memory): what is taken is no
// narrower, or by no more than a twentieth of a millimetre.
func TestSize_Tolerance(t *testing.T) {
	all := sized(t)
	for name, want := range map[string][2]float64{
		"AS568-012": {0.13, 0.08}, "AS568-020": {0.23, 0.08}, "AS568-110": {0.13, 0.08}, "AS568-210": {0.25, 0.10}, "AS568-222": {0.38, 0.10}, "AS568-325": {0.38, 0.13},
		"P10": {0.17, 0.08}, "P20": {0.22, 0.09}, "P50": {0.45, 0.10}, "P100": {0.84, 0.13}, "G25": {0.25, 0.10}, "G100": {0.85, 0.10},
	} {
		s := all[name]
		inside, section := s.Tolerance()
		if inside < want[0]-0.05 || section < want[1]-0.011 || inside > 1.6*want[0] || section > want[1]+0.021 {
			t.Errorf("%s: ±%.3f and ±%.2f, printed ±%v and ±%v", name, inside, section, want[0], want[1])
		}
	}
}

// names gives the names of what fits.
func names(list []ring.Match) string {
	var all []string
	for _, m := range list {
		all = append(all, m.Name)
	}
	return strings.Join(all, " ")
}

func TestFitting(t *testing.T) {
	for _, f := range []struct {
		inside, section float64
		first           string
		also            string // must be there too
		not             string
	}{
		{12.4, 1.8, "AS568-014", "12.5×1.8", "P12.5"},
		{12.4, 2.4, "P12.5", "", "AS568-014"},
		{24.2, 3.1, "G25", "24×3", "P25"},
		{24.7, 3.5, "P25", "AS568-214", "G25"},
		{24.1, 3, "24×3", "G25", "P24"},
		{16.4, 2.2, "AS568-908", "", "P16"},
		{21.7, 3.5, "P22A", "AS568-212", "P22"},
	} {
		m := ring.Measured{Inside: f.inside, Section: f.section, InsideWithin: 0.1, SectionWithin: 0.1}
		list, _ := m.Fitting(&ring.Groove{})
		got := " " + names(list) + " "
		if len(list) == 0 || list[0].Name != f.first || f.also != "" && !strings.Contains(got, " "+f.also+" ") || strings.Contains(got, " "+f.not+" ") {
			t.Errorf("%v × %v: %s; want %s first, and %s, not %s", f.inside, f.section, got, f.first, f.also, f.not)
		}
	}
	// Too thick for anything; the nearest is told all the same.
	m := ring.Measured{Inside: 20, Section: 9, InsideWithin: 0.1, SectionWithin: 0.1}
	if list, nearest := m.Fitting(&ring.Groove{}); len(list) != 0 || nearest.Name == "" {
		t.Errorf("20 × 9: %s, nearest %+v", names(list), nearest)
	}
	// Pressed flat and stretched, P22A measures as nothing; used, it is found again.
	m = ring.Measured{Inside: 22.6, Section: 3.1, InsideWithin: 0.1, SectionWithin: 0.1}
	asNew, _ := m.Fitting(&ring.Groove{})
	m.Used = true
	asUsed, _ := m.Fitting(&ring.Groove{})
	if strings.Contains(names(asNew), "P22A") || !strings.Contains(names(asUsed), "P22A") {
		t.Errorf("22.6 × 3.1: new %s, used %s", names(asNew), names(asUsed))
	}
}

// How a ring would lie, by the limits of ISO 3601-2 (from memory) and of a design guide:
// up to 8, 6, 5 % of stretch by its inside, 10 to 40 % of squeeze.
func TestFitting_Lie(t *testing.T) {
	for _, f := range []struct {
		inside, section, diameter, depth float64
		name                             string
		want                             ring.Verdict
	}{
		{24.99, 3.53, 25.7, 0, "AS568-214", ring.Suits},
		{24.99, 3.53, 25.7, 2.8, "AS568-214", ring.Suits},
		{24.99, 3.53, 25.7, 3.2, "AS568-214", ring.Unsure}, // 2 to 18 %
		{24.99, 3.53, 25.7, 3.6, "AS568-214", ring.Wrong},  // not pressed
		{24.99, 3.53, 25.7, 1.5, "AS568-214", ring.Wrong},  // crushed
		{24.99, 3.53, 25.1, 0, "AS568-214", ring.Unsure},   // may hang loose
		{24.99, 3.53, 24, 0, "AS568-214", ring.Wrong},      // hangs loose
		{24.99, 3.53, 28, 0, "AS568-214", ring.Wrong},      // 12 %
		{24.99, 3.53, 0, 0, "AS568-214", ring.Fits},
	} {
		m := ring.Measured{Inside: f.inside, Section: f.section, InsideWithin: 0.1, SectionWithin: 0.1}
		list, _ := m.Fitting(&ring.Groove{Diameter: f.diameter, Depth: f.depth, Accuracy: 0.1})
		found := false
		for n, e := range list {
			if n > 0 && e.Verdict < list[n-1].Verdict {
				t.Errorf("%+v: what lies worse stands first: %s", f, names(list))
			}
			if e.Name != f.name {
				continue
			}
			found = true
			if e.Verdict != f.want || e.HasStretch != (f.diameter > 0) || e.HasSqueeze != (f.depth > 0) {
				t.Errorf("%+v: %s, %+v", f, ring.Verdicts[e.Verdict], e.Lie)
			}
		}
		if !found {
			t.Errorf("%+v: %s", f, names(list))
		}
	}
}

// Every size, made anywhere within its tolerance and measured as well as it is said, is
// among what fits; the verdict is never milder than the ranges; and a deeper groove
// never squeezes more, a wider one never stretches less.
func TestFitting_Properties(t *testing.T) {
	all := ring.Sizes()
	rapid.Check(t, func(t *rapid.T) {
		s := all[rapid.IntRange(0, len(all)-1).Draw(t, "size")]
		accuracy := rapid.Float64Range(0.01, 0.3).Draw(t, "accuracy")
		inside, section := s.Tolerance()
		off := rapid.Float64Range(-1, 1)
		m := ring.Measured{InsideWithin: accuracy, SectionWithin: accuracy, Used: rapid.Bool().Draw(t, "used"),
			Inside: s.Inside + off.Draw(t, "inside")*(inside+accuracy), Section: s.Section + off.Draw(t, "section")*(section+accuracy)}
		g := ring.Groove{Accuracy: accuracy, Diameter: s.Inside * rapid.Float64Range(0.9, 1.2).Draw(t, "groove"), Depth: s.Section * rapid.Float64Range(0.4, 1.1).Draw(t, "depth")}
		list, _ := m.Fitting(&g)
		wider, deeper := g, g
		wider.Diameter, deeper.Depth = g.Diameter*1.01, g.Depth*1.01
		stretched, _ := m.Fitting(&wider)
		pressed, _ := m.Fitting(&deeper)
		lie := func(list []ring.Match) *ring.Match {
			for n := range list {
				if list[n].Name == s.Name && list[n].Series == s.Series {
					return &list[n]
				}
			}
			t.Fatalf("%s, measured %v × %v ± %v: %s", s.Name, m.Inside, m.Section, accuracy, names(list))
			return nil
		}
		e := lie(list)
		if x := lie(stretched); x.Stretch.Low <= e.Stretch.Low || x.Stretch.High <= e.Stretch.High || x.Squeeze.High > e.Squeeze.High {
			t.Fatalf("%s on a wider place: %+v, before %+v", s.Name, x.Lie, e.Lie)
		}
		if x := lie(pressed); x.Squeeze.Low >= e.Squeeze.Low || x.Squeeze.High >= e.Squeeze.High {
			t.Fatalf("%s in a deeper groove: %+v, before %+v", s.Name, x.Lie, e.Lie)
		}
		inLimits := e.Stretch.Low >= 0 && e.Stretch.High <= 0.08 && e.Squeeze.Low >= 0.1 && e.Squeeze.High <= 0.4
		if e.Verdict == ring.Suits && !inLimits || e.Verdict == ring.Fits || !(e.Stretch.Low <= e.Stretch.High) || !(e.Squeeze.Low <= e.Squeeze.High) {
			t.Fatalf("%s is %s: %+v", s.Name, ring.Verdicts[e.Verdict], e.Lie)
		}
	})
}

// Each size found is near what was measured: nothing fits that no tolerance explains.
func TestFitting_NothingFar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := ring.Measured{Inside: rapid.Float64Range(1, 200).Draw(t, "inside"), Section: rapid.Float64Range(0.5, 12).Draw(t, "section"), InsideWithin: rapid.Float64Range(0.01, 2).Draw(t, "inside within"), SectionWithin: rapid.Float64Range(0.01, 2).Draw(t, "section within")}
		list, nearest := m.Fitting(&ring.Groove{})
		for _, e := range list {
			inside, section := e.Tolerance()
			if math.Abs(e.Inside-m.Inside) > (inside+m.InsideWithin)*(1+1e-6) || math.Abs(e.Section-m.Section) > (section+m.SectionWithin)*(1+1e-6) {
				t.Fatalf("%+v fits %+v", e.Size, m)
			}
		}
		if len(list) > 0 && list[0].Name != nearest.Name && list[0].Series == nearest.Series {
			t.Fatalf("%+v: %s first, %s nearest", m, list[0].Name, nearest.Name)
		}
	})
}
