package oil

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// near reports whether got is want within a tolerance.
func near(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance }

// The rows of SAE J300 as its edition of 2015 prints them (those of the W
// grades also in that of 2021; 0W, 5W, 10W, 20 and 30 also in that of 2024).
func TestLimits(t *testing.T) {
	const superseded = "not the row of before"
	for _, c := range []struct {
		grade                                                             string
		cranking, crankingAt, pumping, pumpingAt, least, below, highShear float64
		not                                                               float64
		why                                                               string
	}{
		{"0W", 6200, -35, 60000, -40, 3.8, 0, 0, 0, ""},
		{"5W", 6600, -30, 60000, -35, 3.8, 0, 0, 0, ""},
		{"10W", 7000, -25, 60000, -30, 4.1, 0, 0, 0, ""},
		{"15W", 7000, -20, 60000, -25, 5.6, 0, 0, 0, ""},
		{"20W", 9500, -15, 60000, -20, 5.6, 0, 0, 0, ""},
		{"25W", 13000, -10, 60000, -15, 9.3, 0, 0, 0, ""},
		{"8", 0, 0, 0, 0, 4.0, 6.1, 1.7, 0, ""},
		{"12", 0, 0, 0, 0, 5.0, 7.1, 2.0, 0, ""},
		{"16", 0, 0, 0, 0, 6.1, 8.2, 2.3, 0, ""},
		{"20", 0, 0, 0, 0, 6.9, 9.3, 2.6, 5.6, superseded + " 2013: 20 from 5.6"},
		{"30", 0, 0, 0, 0, 9.3, 12.5, 2.9, 0, ""},
		{"40", 0, 0, 0, 0, 12.5, 16.3, 3.7, 3.77, "a page prints 3.77: 3.7 with its note 7"},
		{"50", 0, 0, 0, 0, 16.3, 21.9, 3.7, 0, ""},
		{"60", 0, 0, 0, 0, 21.9, 26.1, 3.7, 0, ""},
		// Multigrades join both rows.
		{"10W-40", 7000, -25, 60000, -30, 12.5, 16.3, 3.5, 2.9, superseded + " 2007: 2.9 for a 10W-40"},
		{"0W-40", 6200, -35, 60000, -40, 12.5, 16.3, 3.5, 3.56, "a page prints 3.56: 3.5 with its note 6"},
		{"15W-40", 7000, -20, 60000, -25, 12.5, 16.3, 3.7, 0, ""},
		{"25W-40", 13000, -10, 60000, -15, 12.5, 16.3, 3.7, 0, ""},
		{"0W-8", 6200, -35, 60000, -40, 4.0, 6.1, 1.7, 0, ""},
		{"15W-8", 7000, -20, 60000, -25, 5.6, 6.1, 1.7, 0, ""},
		// SAE J306, edition of February 2019, as two public copies print it.
		{"70W", 0, 0, 150000, -55, 3.8, 0, 0, 0, ""},
		{"75W", 0, 0, 150000, -40, 3.8, 0, 0, 4.1, superseded + " 2019: 75W from 4.1"},
		{"80W", 0, 0, 150000, -26, 8.5, 0, 0, 7, superseded + " 2019: 80W from 7.0"},
		{"85W", 0, 0, 150000, -12, 11, 0, 0, 0, ""},
		{"80", 0, 0, 0, 0, 8.5, 11, 0, 7, superseded + " 2019: 80 from 7.0"},
		{"85", 0, 0, 0, 0, 11, 13.5, 0, 0, ""},
		{"90", 0, 0, 0, 0, 13.5, 18.5, 0, 24, superseded + " 2005: 90 up to 24.0"},
		{"110", 0, 0, 0, 0, 18.5, 24, 0, 0, ""},
		{"140", 0, 0, 0, 0, 24, 32.5, 0, 41, superseded + " 2005: 140 up to 41.0"},
		{"190", 0, 0, 0, 0, 32.5, 41, 0, 0, ""},
		{"250", 0, 0, 0, 0, 41, 0, 0, 0, ""},
		{"75W-90", 0, 0, 150000, -40, 13.5, 18.5, 0, 0, ""},
		{"85W-140", 0, 0, 150000, -12, 24, 32.5, 0, 0, ""},
		{"80W-80", 0, 0, 150000, -26, 8.5, 11, 0, 0, ""},
	} {
		g, ok := ReadGrade(c.grade)
		w, s, known := g.Limits()
		got := [...]float64{w.Cranking, w.CrankingAt, w.Pumping, w.PumpingAt, s.Least, s.Below, s.HighShear}
		want := [...]float64{c.cranking, c.crankingAt, c.pumping, c.pumpingAt, c.least, c.below, c.highShear}
		if !ok || !known || got != want {
			t.Errorf("%s: limits %v, want %v", c.grade, got, want)
		}
		if c.not != 0 && slices.Contains(got[:], c.not) {
			t.Errorf("%s: has %v (%s)", c.grade, c.not, c.why)
		}
	}
	for _, text := range []string{"", "10W-90", "25W-20", "85W-80"} {
		g, _ := ReadGrade(text)
		if _, _, ok := g.Limits(); ok {
			t.Errorf("%q has limits", text)
		}
	}
}

// From the ranges of SAE J300 (2015) and J306 (2019); which end belongs to a range is
// read from the tables' signs.
func TestGradesAt(t *testing.T) {
	const engine, gear = false, true
	for _, c := range []struct {
		low, high float64
		gear      bool
		want      []string
	}{
		{9.30, 9.30, engine, []string{"30"}},
		{12.49, 12.49, engine, []string{"30"}},
		{12.50, 12.50, engine, []string{"40"}},
		{16.29, 16.29, engine, []string{"40"}},
		{16.30, 16.30, engine, []string{"50"}},
		{26.1, 26.1, engine, nil},
		{3.9, 3.9, engine, nil},
		{7.0, 7.0, engine, []string{"12", "16", "20"}}, // which of them, high shear says
		{5.5, 5.5, engine, []string{"8", "12"}},
		{12.5, 16.3, engine, []string{"40"}}, // the band of a grade is that grade
		{11.9, 15.6, engine, []string{"30", "40"}},
		{14.5, 14.5, gear, []string{"90"}},
		{18.5, 18.5, gear, []string{"110"}},
		{13.5, 18.5, gear, []string{"90"}},
		{7.5, 7.5, gear, nil},
		{41, 41, gear, []string{"250"}},
		{1000, 1000, gear, []string{"250"}},
		{30, 45, gear, []string{"140", "190", "250"}},
	} {
		if got := GradesAt(c.low, c.high, c.gear); !slices.Equal(got, c.want) {
			t.Errorf("from %v to %v, gear %v: %v, want %v", c.low, c.high, c.gear, got, c.want)
		}
	}
}

// A figure that came back as 12.4999999999 of the 12.5 that was typed is on the limit,
// and one that is off by more than that is not: of each limit of both standards.
func TestGradesAt_OnALimit(t *testing.T) {
	for _, gear := range []bool{false, true} {
		rows, names := Summers[:], summerNames[1:]
		if gear {
			rows, names = gearSummers[:], summerNames[gearSummer:]
		}
		for n := range rows {
			for _, limit := range []float64{rows[n].Least, rows[n].Below} {
				if limit == 0 {
					continue
				}
				want := GradesAt(limit, limit, gear)
				for _, hair := range []float64{1 - 1e-12, 1 + 1e-12, 1 - 1e-10, 1 + 1e-10} {
					if got := GradesAt(limit*hair, limit*hair, gear); !slices.Equal(got, want) {
						t.Errorf("%v of %s: %v, on the limit %v", limit*hair, names[n], got, want)
					}
				}
				under, over := GradesAt(limit*(1-1e-6), limit*(1-1e-6), gear), GradesAt(limit*(1+1e-6), limit*(1+1e-6), gear)
				begins := limit == rows[n].Least
				if slices.Contains(under, names[n]) == begins || slices.Contains(over, names[n]) != begins {
					t.Errorf("about the limit %v of %s: %v below, %v above", limit, names[n], under, over)
				}
			}
		}
	}
}

func TestReadGrade(t *testing.T) {
	for _, c := range []struct {
		text, want string
		family     Family
		card       bool // also a card may write it so
	}{
		{"10W-40", "10W-40", EngineGrade, true},
		{"10W40", "10W-40", EngineGrade, true},
		{"10w40", "10W-40", EngineGrade, false},
		{"SAE 10W/40", "10W-40", EngineGrade, false},
		{" sae 30 ", "30", EngineGrade, false},
		{"30", "30", EngineGrade, true},
		{"20W-20", "20W-20", EngineGrade, true},
		{"5W", "5W", EngineGrade, true},
		{"75W-90", "75W-90", GearGrade, true},
		{"80", "80", GearGrade, true},
		{"250", "250", GearGrade, true},
	} {
		g, ok := ReadGrade(c.text)
		if !ok || g.String() != c.want || g.Gear() != (c.family == GearGrade) {
			t.Errorf("%q read as %q (%v)", c.text, g.String(), ok)
		}
		if family, ok := ParseGrade(c.text); ok != c.card || ok && family != c.family {
			t.Errorf("%q on a card: %q, %v", c.text, family, ok)
		}
	}
	for _, text := range []string{"", "W", "-", "10", "35", "11W-40", "10W-45", "10W-90", "75W-40", "10W-40W", "SAE", "10W-40-50", "1O W-40"} {
		if g, ok := ReadGrade(text); ok || g != (Grade{}) {
			t.Errorf("%q read as %q", text, g.String())
		}
	}
}

func TestGradeRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Grade{rapid.IntRange(0, gearWinter-1).Draw(t, "winter"), rapid.IntRange(0, gearSummer-1).Draw(t, "summer")}
		if rapid.Bool().Draw(t, "gear") {
			g = Grade{rapid.IntRange(gearWinter, len(winterNames)-1).Draw(t, "winter"), rapid.IntRange(gearSummer, len(summerNames)-1).Draw(t, "summer")}
		}
		if g == (Grade{}) {
			return
		}
		if got, ok := ReadGrade(g.String()); !ok || got != g {
			t.Fatalf("%q read as %q", g.String(), got.String())
		}
		if _, ok := ParseGrade(g.String()); !ok {
			t.Fatalf("%q is none on a card", g.String())
		}
	})
}

func FuzzReadGrade(f *testing.F) {
	for _, seed := range []string{"10W-40", "SAE 30", "75w90", "W", "\xff10W", "20W-20-20"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		g, ok := ReadGrade(text)
		if !ok {
			if g != (Grade{}) {
				t.Fatalf("%q is refused as %q", text, g.String())
			}
			return
		}
		if again, ok := ReadGrade(g.String()); !ok || again != g {
			t.Fatalf("%q gives %q, which gives %q", text, g.String(), again.String())
		}
	})
}
