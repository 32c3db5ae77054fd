package core_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// oilAnswer is what the calculations on oils answer, read here without the
// program's own reader.
type oilAnswer struct {
	Verdict          string
	Figures, Assumed []shownFigure
	Grades           []string
	Temps, Low, High []float64
	Notes            []finding
}

// named gives the figures of that name.
func (a *oilAnswer) named(name string) []shownFigure {
	var list []shownFigure
	for _, f := range slices.Concat(a.Figures, a.Assumed) {
		if f.Name == "figure."+name {
			list = append(list, f)
		}
	}
	return list
}

// shown gives the figures of that name as they are read.
func (a *oilAnswer) shown(name string) []string {
	var list []string
	for _, f := range a.named(name) {
		list = append(list, strings.Join(f.Texts, " / ")+" "+f.Standing)
	}
	return list
}

// last gives the last figure of that name; zeros when there is none.
func (a *oilAnswer) last(name string) (f shownFigure) {
	if list := a.named(name); len(list) > 0 {
		return list[len(list)-1]
	}
	return f
}

// found gives the codes of the notes.
func (a *oilAnswer) found() []string {
	var list []string
	for _, f := range a.Notes {
		list = append(list, f.Code)
	}
	return list
}

func calculated(t testing.TB, op, in string) *oilAnswer {
	t.Helper()
	a := &oilAnswer{}
	must(t, op, []byte(in), a)
	return a
}

func TestOilCurve_ThroughTwoPoints(t *testing.T) {
	a := calculated(t, "oil-curve", `{"first":"97","second":"14,5 cSt","at":"60 °C","grade":"10w-40"}`)
	if f := a.last("viscosity"); math.Abs(f.Low-44.53) > 0.005 || f.High != f.Low {
		t.Errorf("at 60 °C %v to %v, want 44.53 (computed by ASTM D341)", f.Low, f.High)
	}
	if got := a.last("viscosity-index").Low; got != 155 || !slices.Equal(a.Grades, []string{"40"}) || len(a.Notes) != 1 {
		t.Errorf("index %v, grades %v, notes %v", got, a.Grades, a.Notes)
	}
	if len(a.Low) != 27 || len(a.Temps) != 27 || a.High != nil || a.Temps[2] != 0 || a.Low[2] != 969.7 || a.Low[10] != 97 || a.Low[22] != 14.5 {
		t.Errorf("drawn at %v: %v, %v", a.Temps, a.Low, a.High)
	}
	if got := a.shown("viscosity"); !slices.Equal(got, []string{
		"97 mm²/s (40 °C) estimated", "14.5 mm²/s (100 °C) estimated", "44.5 mm²/s (60 °C) estimated"}) {
		t.Errorf("shown: %v", got)
	}
	a = calculated(t, "oil-curve", `{"first":"14.5","firstAt":"212 F","second":"97","secondAt":"104","system":"us","want":"44.53","grade":"5W-30"}`)
	if f := a.last("temperature-for"); math.Abs(f.Low-60) > 0.01 || a.Notes[0].Code != "oil-not-the-grade" || a.Notes[0].Grade != "doubt" {
		t.Errorf("44.53 mm²/s at %v °C, notes %v", f.Low, a.Notes)
	}
	if got := a.shown("temperature-for"); !slices.Equal(got, []string{"140 °F / 60 °C estimated"}) {
		t.Errorf("shown: %v", got)
	}
}

// The relation ends somewhere; what it reaches is drawn all the same.
func TestOilCurve_BeyondTheRelation(t *testing.T) {
	a := calculated(t, "oil-curve", `{"first":"100000","second":"200"}`)
	if len(a.Temps) < 10 || len(a.Temps) > 26 || a.Temps[0] <= -10 || a.Temps[len(a.Temps)-1] != 120 || len(a.Low) != len(a.Temps) {
		t.Errorf("drawn at %v: %v", a.Temps, a.Low)
	}
	a = calculated(t, "oil-curve", `{"first":"97","second":"14.5","want":"5000","pour":"-33 °C"}`)
	if f := a.last("temperature-for"); !(f.Low < -10) {
		t.Errorf("5000 mm²/s at %v °C", f.Low)
	}
	a = calculated(t, "oil-curve", `{"first":"4","second":"1.1","want":"90000","pour":"-60"}`)
	if got := a.shown("temperature-for"); !slices.Equal(got, []string{" unknown"}) {
		t.Errorf("where a thin oil has 90000 mm²/s: %v", got)
	}
}

func TestOilCurve_OfABareGrade(t *testing.T) {
	a := calculated(t, "oil-curve", `{"grade":"SAE 10w40","at":"100 °C"}`)
	if f := a.last("viscosity"); f.Low != 12.5 || f.High != 16.3 {
		t.Errorf("at 100 °C %v to %v, want the band of SAE J300", f.Low, f.High)
	}
	for name, want := range map[string]string{
		"viscosity-new":    "12.5–16.3 mm²/s (100 °C) standard",
		"cranking-most":    "7000 mPa·s (-25 °C) standard",
		"pumping-most":     "60000 mPa·s (-30 °C) standard",
		"high-shear-least": "3.5 mPa·s (150 °C) standard",
		"viscosity-index":  "110–185 estimated",
	} {
		if got := a.shown(name); !slices.Equal(got, []string{want}) {
			t.Errorf("%s: %v, want %s", name, got, want)
		}
	}
	if len(a.Low) != 27 || len(a.High) != 27 || !(a.Low[0] < a.High[0]/2) || len(a.Assumed) != 1 {
		t.Errorf("low %v, high %v, assumed %v", a.Low, a.High, a.Assumed)
	}
	given := calculated(t, "oil-curve", `{"grade":"10W-40","index":"150"}`)
	if !(given.Low[2] > a.Low[2] && given.High[2] < a.High[2]) || given.Assumed != nil {
		t.Errorf("with an index the band at 0 °C is %v to %v, without %v to %v", given.Low[2], given.High[2], a.Low[2], a.High[2])
	}
	bare := calculated(t, "oil-curve", `{"grade":"10W"}`)
	if bare.High != nil || bare.Grades != nil || !slices.Contains(bare.found(), "no-upper-limit") || len(bare.named("viscosity-least")) != 2 {
		t.Errorf("a bare 10W is bounded above: %v, %v, %v", bare.High, bare.Figures, bare.Notes)
	}
}

// Every engine oil's grade has a curve, whatever index the form takes.
func TestOilCurve_AnyIndex(t *testing.T) {
	for _, grade := range []string{"0W", "25W", "8", "16", "60", "0W-8", "25W-60", "5W-30"} {
		for _, index := range []string{"0", "1", "99", "100", "101", "250", "400"} {
			calculated(t, "oil-curve", `{"grade":"`+grade+`","index":"`+index+`","at":"40"}`)
		}
	}
}

func TestOilMix(t *testing.T) {
	a := calculated(t, "oil-mix", `{"firstVolume":"3 L","firstViscosity":"14.5","secondVolume":"1000 ml","secondViscosity":"10.9"}`)
	f := a.last("viscosity-mix")
	if math.Abs(f.Low-13.4689) > 5e-5 || f.High != f.Low || a.last("second-share").Low != 0.25 || !slices.Equal(a.Grades, []string{"40"}) {
		t.Errorf("%v, grades %v", a.Figures, a.Grades)
	}
	if !slices.Contains(a.found(), "winter-not-known") {
		t.Errorf("that the W part is not known is not told: %v", a.Notes)
	}
	a = calculated(t, "oil-mix", `{"firstVolume":"1 qt","firstGrade":"10W-40","secondVolume":"1 qt","secondGrade":"15W-40","system":"us"}`)
	if f = a.last("viscosity-mix"); f.Low != 12.5 || f.High != 16.3 || !slices.Equal(a.Grades, []string{"40"}) {
		t.Errorf("two 40s: %v to %v, grades %v, notes %v", f.Low, f.High, a.Grades, a.Notes)
	}
	a = calculated(t, "oil-mix", `{"firstVolume":"9 L","firstViscosity":"97","secondVolume":"1 L","secondViscosity":"66","temperature":"40"}`)
	if f = a.last("viscosity-mix"); math.Abs(f.Low-93.199) > 5e-4 || a.Grades != nil {
		t.Errorf("at 40 °C: %v, grades %v", f.Low, a.Grades)
	}
	a = calculated(t, "oil-mix", `{"firstVolume":"1 L","firstViscosity":"14.5","firstGrade":"5W-30","secondVolume":"1 L","secondGrade":"5W-30"}`)
	if !slices.Contains(a.found(), "oil-not-the-grade") {
		t.Errorf("14.5 mm²/s of a 5W-30 is not doubted: %v", a.Notes)
	}
}

func TestOilVolume(t *testing.T) {
	for _, c := range []struct {
		in   string
		want float64
	}{
		{`{"volume":"3 L","from":"20 °C","to":"90 °C","density":"880"}`, 3.1608}, // computed, table 54D
		{`{"volume":"3 L","from":"20 °C","to":"90 °C","density":"0.88 g/cm³"}`, 3.1608},
		{`{"mass":"2.6306 kg","to":"90 °C","density":"880 kg/m3"}`, 3.1608},
		{`{"volume":"3.1608 L","from":"194 F","to":"68 F","density":"838.68","densityAt":"80 °C"}`, 3},
	} {
		if a := calculated(t, "oil-volume", c.in); math.Abs(a.last("volume-at").Low-c.want) > 2e-4 || a.Assumed != nil {
			t.Errorf("%s: %v, want %v L", c.in, a.Figures, c.want)
		}
	}
	a := calculated(t, "oil-volume", `{"volume":"3 L","from":"20 °C","to":"90 °C"}`)
	if math.Abs(a.last("volume-at").Low-3.16) > 0.005 || len(a.Assumed) != 1 || a.Assumed[0].Method != "@method.usual-density" {
		t.Errorf("without a density: %v, assumed %v", a.Figures, a.Assumed)
	}
	a = calculated(t, "oil-volume", `{"volume":"3 L","mass":"3 kg","to":"90 °C"}`)
	if !slices.Equal(a.found(), []string{"not-used"}) || a.Notes[0].Where != "/volume" {
		t.Errorf("that the volume is not used beside the mass is not told: %v", a.Notes)
	}
}

// There and back a volume is the same.
func TestOilVolume_ThereAndBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		draw := func(name string, low, high int) string {
			return strconv.Itoa(rapid.IntRange(low, high).Draw(r, name))
		}
		density, there, here := draw("density", 820, 950), draw("there", -40, 140), draw("here", -40, 140)
		out := calculated(t, "oil-volume", `{"volume":"1 L","from":"`+here+`","to":"`+there+`","density":"`+density+`"}`).last("volume-at").Low
		again := `{"volume":"` + strconv.FormatFloat(out, 'f', -1, 64) + ` L","from":"` + there + `","to":"` + here + `","density":"` + density + `"}`
		if back := calculated(t, "oil-volume", again).last("volume-at").Low; math.Abs(back-1) > 1e-5 {
			r.Fatalf("1 L at %s °C is %v L at %s °C and back %v L", here, out, there, back)
		}
	})
}
