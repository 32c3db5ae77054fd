package core_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/oil"
)

// typedNumber is a number as a person types it.
func typedNumber(v float64) string { return strconv.FormatFloat(math.Round(v*1e9)/1e9, 'f', -1, 64) }

// What was typed at 100 °C is what is judged, and not what comes back from a curve: on
// each limit of SAE J300 and J306, a digit below it and a digit above, as the first
// reading or the second, in °C or °F, with any other reading. Which grade begins at a
// limit is read from the standards' tables.
func TestOilCurve_TypedOnALimit(t *testing.T) {
	type limit struct {
		at    float64
		grade string // that begins there
		ends  string // that ends there
	}
	for grade, limits := range map[string][]limit{
		"10W": {
			{4, "8", ""}, {5, "12", ""}, {6.1, "16", "8"}, {6.9, "20", ""}, {7.1, "", "12"}, {8.2, "", "16"}, {9.3, "30", "20"},
			{12.5, "40", "30"}, {16.3, "50", "40"}, {21.9, "60", "50"}, {26.1, "", "60"},
		},
		"75W": {{8.5, "80", ""}, {11, "85", "80"}, {13.5, "90", "85"}, {18.5, "110", "90"}, {24, "140", "110"}, {32.5, "190", "140"}, {41, "250", "190"}},
	} {
		for _, c := range limits {
			for _, at100 := range []string{"100", "100 °C", "212 °F", "212 F"} {
				for _, index := range []float64{85, 104, 131, 187} {
					line, _ := oil.FromIndex(c.at, index)
					for _, other := range []float64{40, 37.8, 20, 60} {
						for _, typed := range []float64{c.at, c.at - 0.01, c.at + 0.01} {
							v := typedNumber(math.Round(line.At(other)*100) / 100)
							in := `{"grade":"` + grade + `","first":"` + v + `","firstAt":"` + typedNumber(other) + ` °C","second":"` + typedNumber(typed) + ` cSt","secondAt":"` + at100 + `"}`
							if index > 120 {
								in = `{"grade":"` + grade + `","second":"` + v + `","secondAt":"` + typedNumber(other) + ` °C","first":"` + typedNumber(typed) + `","firstAt":"` + at100 + `"}`
							}
							a := calculated(t, "oil-curve", in)
							begun, ended := typed >= c.at, typed >= c.at
							if c.grade != "" && slices.Contains(a.Grades, c.grade) != begun || c.ends != "" && slices.Contains(a.Grades, c.ends) == ended {
								t.Fatalf("%s: %v, want %s from %v on, and %s no more", in, a.Grades, c.grade, c.at, c.ends)
							}
						}
					}
				}
			}
		}
	}
}

// A grade that was typed beside a reading on its lower limit isn't doubted, and one
// beside its upper limit is.
func TestOilCurve_GradeOnItsLimit(t *testing.T) {
	for grade, band := range map[string][2]float64{
		"0W-8": {4, 6.1}, "0W-12": {5, 7.1}, "5W-16": {6.1, 8.2}, "5W-20": {6.9, 9.3}, "5W-30": {9.3, 12.5}, "10W-40": {12.5, 16.3},
		"15W-50": {16.3, 21.9}, "10W-60": {21.9, 26.1}, "80W-80": {8.5, 11}, "85": {11, 13.5}, "75W-90": {13.5, 18.5}, "75W-110": {18.5, 24},
		"85W-140": {24, 32.5}, "190": {32.5, 41},
	} {
		for n, typed := range band {
			line, _ := oil.FromIndex(typed, 140)
			v := typedNumber(math.Round(line.At(40)*10) / 10)
			for _, in := range []string{
				`{"grade":"` + grade + `","first":"` + v + `","second":"` + typedNumber(typed) + `"}`,
				`{"grade":"` + grade + `","first":"` + v + `","firstAt":"104 F","second":"` + typedNumber(typed) + `","secondAt":"212","system":"us"}`,
			} {
				if doubted := slices.Contains(calculated(t, "oil-curve", in).found(), "oil-not-the-grade"); doubted != (n == 1) {
					t.Errorf("%s: doubted %v", in, doubted)
				}
			}
			for _, heat := range []string{"100", "212 °F"} {
				in := `{"firstVolume":"1 L","firstGrade":"` + grade + `","firstViscosity":"` + typedNumber(typed) + `","secondVolume":"1 L","secondViscosity":"` + typedNumber(typed) + `","temperature":"` + heat + `"}`
				if doubted := slices.Contains(calculated(t, "oil-mix", in).found(), "oil-not-the-grade"); doubted != (n == 1) {
					t.Errorf("%s: doubted %v", in, doubted)
				}
			}
		}
	}
}

// A reading is told as it was typed, at its own temperature.
func TestOilCurve_TypedIsTold(t *testing.T) {
	a := calculated(t, "oil-curve", `{"first":"101.3","second":"14.58","at":"40"}`)
	if got := a.shown("viscosity"); !slices.Equal(got, []string{
		"101.3 mm²/s (40 °C) estimated", "14.58 mm²/s (100 °C) estimated", "101.3 mm²/s (40 °C) estimated"}) {
		t.Errorf("shown: %v", got)
	}
}

// An index that no oil has is doubted, whether it comes from two readings or was typed.
func TestOilCurve_IndexOfNoOil(t *testing.T) {
	for in, want := range map[string]bool{
		`{"first":"97","second":"14.5"}`:                    false, // 155
		`{"first":"145","second":"15"}`:                     false, // 104, measured
		`{"first":"160","second":"24"}`:                     false, // 182
		`{"first":"68","second":"8.5"}`:                     false, // 95
		`{"first":"30","second":"4.24"}`:                    true,  // -26
		`{"first":"40","second":"14.5"}`:                    true,  // 388
		`{"first":"97","second":"40"}`:                      true,
		`{"first":"400","second":"14.5"}`:                   true,
		`{"first":"8","second":"1.5"}`:                      true, // none is defined
		`{"first":"97","second":"14.5","firstAt":"20"}`:     true, // the readings of 40 °C, typed for 20
		`{"grade":"10W-40","index":"155"}`:                  false,
		`{"grade":"10W-40","index":"79"}`:                   true,
		`{"grade":"10W-40","index":"80"}`:                   false,
		`{"grade":"10W-40","index":"250"}`:                  false,
		`{"grade":"10W-40","index":"251"}`:                  true,
		`{"grade":"10W-40","index":"0"}`:                    true,
		`{"first":"97","second":"14.5","grade":"10W-40"}`:   false,
		`{"first":"97","second":"24","secondAt":"80"}`:      false, // 14.5 at 100 °C
		`{"first":"44.5","firstAt":"60","second":"14.5"}`:   false,
		`{"first":"263","firstAt":"20","second":"14.5"}`:    false,
		`{"first":"263","firstAt":"68 °F","second":"14.5"}`: false,
		`{"first":"1000","firstAt":"20","second":"14.5"}`:   true,
	} {
		if got := slices.Contains(calculated(t, "oil-curve", in).found(), "index-of-no-oil"); got != want {
			t.Errorf("%s: doubted %v", in, got)
		}
	}
}

// Nothing is told below the pour point nor below the temperature at which the standard
// has the oil pumped, nor of what is thicker than it may be there: a viscosity is an
// unknown figure with its reason, and no temperature is told that lies there. What is
// told beyond the readings says how far that goes.
func TestOilCurve_WhereItStops(t *testing.T) {
	pumped := map[string]float64{
		"0W-20": -40, "5W-30": -35, "10W-40": -30, "15W-50": -25, "20W-50": -20, "25W-60": -15, "10W": -30, "40": -15, "": -15,
		"75W-90": -40, "80W-90": -26, "85W-140": -12,
	}
	rapid.Check(t, func(r *rapid.T) {
		grade := rapid.SampledFrom([]string{"0W-20", "5W-30", "10W-40", "15W-50", "20W-50", "25W-60", "10W", "40", "", "75W-90", "80W-90", "85W-140"}).Draw(r, "grade")
		at := rapid.IntRange(-50, 150).Draw(r, "at")
		want := rapid.SampledFrom([]string{"5", "50", "500", "5000", "20000", "60000", "90000"}).Draw(r, "want")
		in := `{"grade":"` + grade + `","at":"` + strconv.Itoa(at) + ` °C","want":"` + want + `"`
		readings := grade == "" || rapid.Bool().Draw(r, "readings")
		if readings {
			in += `,"first":"97","second":"14.5"`
		}
		stops := pumped[grade]
		if rapid.Bool().Draw(r, "pour point known") {
			pour := rapid.IntRange(-55, 5).Draw(r, "pour")
			in += `,"pour":"` + strconv.Itoa(pour) + ` °C"`
			stops = max(stops, float64(pour))
			if grade == "" || grade == "40" {
				stops = float64(pour)
			}
		}
		a := calculated(t, "oil-curve", in+"}")
		told := a.last("viscosity")
		if told.Name == "" {
			told = a.last("viscosity-least")
		}
		for _, f := range a.named("viscosity") {
			if f.Standing != "unknown" {
				told = f
			}
		}
		reasons := []string{"below-pumping", "below-pour", "below-known", "too-thick-to-tell"}
		stopped := slices.ContainsFunc(a.Notes, func(f finding) bool { return f.Where == "/at" && slices.Contains(reasons, f.Code) })
		if cold := float64(at) < stops; cold && !stopped {
			r.Fatalf("%s: it stops at %v °C, and %v is told, notes %v", in, stops, a.Figures, a.Notes)
		}
		most := 60000 / 0.8
		if grade == "75W-90" || grade == "80W-90" || grade == "85W-140" {
			most = 150000 / 0.8
		}
		if told.High > most {
			r.Fatalf("%s: %v mm²/s is told", in, told.High)
		}
		if f := a.last("temperature-for"); f.Standing != "unknown" && f.Low < stops {
			r.Fatalf("%s: it stops at %v °C, and has %s mm²/s at %v", in, stops, want, f.Low)
		}
		for n, celsius := range a.Temps {
			if celsius < stops || a.Low[n] > most {
				r.Fatalf("%s: drawn at %v °C, where it stops at %v: %v", in, celsius, stops, a.Low[n])
			}
		}
		beyond := slices.ContainsFunc(a.Notes, func(f finding) bool { return f.Where == "/at" && f.Code == "beyond-readings" })
		if outside := readings && (at < 40 || at > 100); beyond != (outside && !stopped) {
			r.Fatalf("%s: beyond the readings %v, told %v, stopped %v", in, outside, beyond, stopped)
		}
	})
}

// How far it goes is told in degrees of the person's own.
func TestOilCurve_HowFar(t *testing.T) {
	for in, want := range map[string]string{
		`{"first":"97","second":"14.5","at":"0 °C"}`:                 "40 °C",
		`{"first":"97","second":"14.5","at":"150 °C"}`:               "50 °C",
		`{"first":"97","second":"14.5","at":"32 °F","system":"us"}`:  "72 °F",
		`{"first":"97","second":"14.5","at":"104 °F","system":"us"}`: "",
	} {
		got := ""
		for _, f := range calculated(t, "oil-curve", in).Notes {
			if f.Code == "beyond-readings" {
				got = f.Values["by"]
			}
		}
		if got != want {
			t.Errorf("%s: goes %q beyond, want %q", in, got, want)
		}
	}
}
