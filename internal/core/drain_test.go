package core_test

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

// refusalOf runs an operation that must refuse, and gives the first finding
// that does.
func refusalOf(t *testing.T, op, in string) string {
	t.Helper()
	a, outcome := do(t, op, []byte(in))
	if outcome != core.Refused {
		t.Fatalf("%.200s: not refused: %s", in, a.OK)
	}
	for _, f := range a.Findings {
		if f.Grade == "refuse" {
			return f.Code + " " + f.Where
		}
	}
	t.Fatalf("%.200s: no reason", in)
	return ""
}

// firstText gives the first text of the figure of that name.
func firstText(list []shownFigure, name string) string {
	for _, s := range list {
		if s.Name == "figure."+name && len(s.Texts) > 0 {
			return s.Texts[0]
		}
	}
	return ""
}

func remarkOf(list []finding, code string) *finding {
	for i := range list {
		if list[i].Code == code {
			return &list[i]
		}
	}
	return nil
}

type ranOut struct {
	Viscosity           float64
	Times, Left, Warmer []float64
	Figures, Assumed    []shownFigure
	Notes               []finding
}

func TestRunOut(t *testing.T) {
	var a ranOut
	must(t, "run-out", []byte(`{"volume":"3,0 l","hole":"12 mm","temperature":"65 °C"}`), &a)
	if a.Viscosity != 37.6 {
		t.Errorf("viscosity %v", a.Viscosity)
	}
	if len(a.Times) != len(a.Left) || len(a.Times) != len(a.Warmer) || a.Left[0] != 3000 {
		t.Fatalf("curve %v %v %v", a.Times, a.Left, a.Warmer)
	}
	for i := 1; i < len(a.Times); i++ {
		if a.Left[i] > a.Left[i-1] || a.Warmer[i] > a.Left[i] {
			t.Errorf("at %v min: %v, %v", a.Times[i], a.Left[i], a.Warmer[i])
		}
	}
	if len(a.Assumed) != 7 || firstText(a.Assumed, "less-comes") != "5 mL" || firstText(a.Assumed, "run-out") != "10 min" {
		t.Errorf("assumed %v", a.Assumed)
	}
	for _, s := range slices.Concat(a.Figures, a.Assumed) {
		if s.Standing != "estimated" || s.Method == "" || len(s.Texts) == 0 {
			t.Errorf("%+v is not shown as an estimate", s)
		}
	}
	if n := remarkOf(a.Notes, "touch-burns"); n == nil || n.Values["time"] != "1 s" {
		t.Errorf("65 °C does not burn: %v", a.Notes)
	}
}

// Until when it is left to run: as a range, and later for less. What stands in the
// sump is told apart from what runs off walls, while there is any.
func TestRunOutUntil(t *testing.T) {
	const in = `{"volume":"3 L","hole":"12 mm","temperature":"65 °C"`
	for less, want := range map[string]string{"5 mL": "3.7–8.1 min", "0.2 US fl oz": "3.2–7.2 min", "1 mL": "12–25 min", "0.1 mL": "56–120 min"} {
		var a ranOut
		must(t, "run-out", []byte(in+`,"less":"`+less+`"}`), &a)
		if got := firstText(a.Figures, "until-less"); got != want {
			t.Errorf("until less than %s: %s, want %s", less, got, want)
		}
	}
	var a ranOut
	must(t, "run-out", []byte(in+`,"minutes":"0.5"}`), &a)
	if got := firstText(a.Figures, "in-sump") + ", " + firstText(a.Figures, "on-walls"); got != "0.63 L, 120 mL" {
		t.Errorf("after half a minute: %s", got)
	}
	// Nobody tells less than a millilitre from nothing, in whatever unit.
	for _, system := range []string{"metric", "us", "imperial"} {
		must(t, "run-out", []byte(`{"volume":"0.3 L","hole":"40 mm","temperature":"100 °C","minutes":"600","system":"`+system+`"}`), &a)
		for _, name := range []string{"on-walls", "five-minutes-more", "thirty-degrees-more", "habit-less"} {
			if got := firstText(a.Figures, name); got != "<1 mL" {
				t.Errorf("%s, after hours: %s %q, want <1 mL", system, name, got)
			}
		}
	}
	for in, want := range map[string]string{
		`{"volume":"0.02 L","hole":"3 mm","temperature":"-10 °C","less":"100 mL"}`: "never-comes /less",
		in + `,"less":"0 mL"}`: "not-believable /less",
	} {
		if got := refusalOf(t, "run-out", in); got != want {
			t.Errorf("%s: %s, want %s", in, got, want)
		}
	}
}

// TestRunOutGiven: what is given is not assumed, and counts.
func TestRunOutGiven(t *testing.T) {
	var plain, rough ranOut
	must(t, "run-out", []byte(`{"volume":"3 L","hole":"12 mm","temperature":"20 °C","minutes":"10","less":"5 mL","head":"80 mm","height":"200 mm","walls":"1 m²","at40":"70","at100":"11.1 cSt"}`), &plain)
	must(t, "run-out", []byte(`{"volume":"3 L","hole":"12 mm","temperature":"20 °C","minutes":"10","less":"5 mL","head":"80 mm","height":"200 mm","walls":"3","at40":"70","at100":"11,1"}`), &rough)
	if len(plain.Assumed) != 0 {
		t.Errorf("assumed %v", plain.Assumed)
	}
	if math.Abs(plain.Viscosity-185.95) > 0.06 { // 185.95, worked out from a published pair of points
		t.Errorf("viscosity %v", plain.Viscosity)
	}
	last := len(plain.Left) - 1
	if got := rough.Left[last] / plain.Left[last]; math.Abs(got-3) > 0.02 {
		t.Errorf("three times the walls hold %v times the film", got)
	}
}

// TestRunOutViscosity: ASTM D341 by way of two points. Worked out apart: those
// of 70 and 11.1 for a published pair of an unnamed multigrade, the others for
// the typical 10W-40, which is from memory. Hot thin oil is no reason to refuse.
func TestRunOutViscosity(t *testing.T) {
	for _, row := range []struct {
		points, temperature string
		want                float64
	}{
		{"", "0 °C", 969.7},
		{"", "20 °C", 263.0},
		{"", "65 °C", 37.6}, // 37.65
		{"", "82 °C", 22.7},
		{"", "100 °C", 14.5},
		{`,"at40":"70","at100":"11.1"`, "0 °C", 674.6},
		{`,"at40":"70","at100":"11.1"`, "80 °C", 18.0},
		{`,"at40":"70","at100":"11.1"`, "150 °C", 4.6},
		{`,"at40":"10","at100":"2.63"`, "150 °C", 1.4},
	} {
		var a ranOut
		must(t, "run-out", []byte(`{"volume":"3 L","hole":"12 mm","temperature":"`+row.temperature+`"`+row.points+`}`), &a)
		if a.Viscosity != row.want {
			t.Errorf("%s at %s: %v mm²/s, want %v", row.points, row.temperature, a.Viscosity, row.want)
		}
	}
}

func TestRunOutRefuses(t *testing.T) {
	for _, row := range [][2]string{
		{`{"hole":"12 mm","temperature":"65 °C"}`, "missing /volume"},
		{`{"volume":"","hole":"12 mm","temperature":"65 °C"}`, "missing /volume"},
		{`{"volume":"300 L","hole":"12 mm","temperature":"65 °C"}`, "not-believable /volume"},
		{`{"volume":"3 L","hole":"-12 mm","temperature":"65 °C"}`, "not-believable /hole"},
		{`{"volume":"3 L","hole":"12 N·m","temperature":"65 °C"}`, "unit-of-other-kind /hole"},
		{`{"volume":"3 L","hole":"12 mm","temperature":"650 °C"}`, "not-believable /temperature"},
		{`{"volume":"3 L","hole":"12 mm","temperature":"65","walls":"-1"}`, "not-believable /walls"},
		{`{"volume":"3 L","hole":"12 mm","temperature":"65","at40":"97"}`, "missing /at100"},
		{`{"volume":"3 L","hole":"12 mm","temperature":"65","at40":"10","at100":"14"}`, "viscosity-out-of-range /at40"},
		{`{"volume":"3 L","hole":"12 mm","temperature":"65","system":"furlongs"}`, "unknown-word /system"},
	} {
		if got := refusalOf(t, "run-out", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

type cooled struct {
	Verdict          string
	Times, Low, High []float64
	Figures, Assumed []shownFigure
	Touch            []shownFigure
	Notes            []finding
}

// TestCool: 300 to 200 °F in 10 min in a room of 60 is a published example, 75 °F
// after 51.44 min from the first reading; scaled to a tenth, as Newton's law allows,
// so that a degree matters: 41.4 min from the second, and what a degree more or less
// on each makes of it.
func TestCool(t *testing.T) {
	var a cooled
	must(t, "cool", []byte(`{"first":"30 °C","second":"20 °C","between":"10 min","air":"6 °C","target":"7,5 °C"}`), &a)
	if got := firstText(a.Figures, "time-to-target"); a.Verdict != "cool.cooling" || got != "28–74 min" {
		t.Errorf("%s after %s", a.Verdict, got)
	}
	if firstText(a.Figures, "usual-warm") != "65–82 °C" || firstText(a.Figures, "habit-scald") != "@scald.at-once" ||
		firstText(a.Figures, "warm-target") != "50–60 °C" || firstText(a.Figures, "warm-scald") != "10 s" {
		t.Errorf("what the habit costs is not said: %v", a.Figures)
	}
	if firstText(a.Figures, "scald") != "" || remarkOf(a.Notes, "touch-burns") != nil {
		t.Error("oil at 20 °C is said to burn")
	}
	for i := range a.Times {
		if a.Low[i] > a.High[i] || i > 0 && (a.Low[i] > a.Low[i-1] || a.High[i] > a.High[i-1] || a.Times[i] <= a.Times[i-1]) {
			t.Errorf("curve %v %v %v", a.Times, a.Low, a.High)
		}
	}
}

func TestCoolBurns(t *testing.T) {
	for _, f := range []struct {
		surface string
		touch   []string
		band    []string // of 5 s
		note    string
	}{
		{"", []string{"no-burn", "no-burn", "may-burn", "may-burn", "burns", "burns", "burns"}, []string{"5 s", "56–61 °C", "133–142 °F"}, "5 s"},
		{"metal", []string{"no-burn", "no-burn", "may-burn", "may-burn", "burns", "burns", "burns"}, []string{"5 s", "56–61 °C", "133–142 °F"}, "5 s"},
		{"coated", []string{"no-burn", "no-burn", "may-burn", "may-burn", "burns", "burns", "burns"}, []string{"5 s", "56–61 °C", "133–142 °F"}, "5 s"},
		{"plastic", []string{"no-burn", "no-burn", "no-burn", "no-burn", "no-burn", "burns", "burns"}, []string{"5 s", "74–82 °C", "165–180 °F"}, "10 min"},
	} {
		var a cooled
		must(t, "cool", []byte(`{"first":"70","second":"57","between":"20 min","air":"20","surface":"`+f.surface+`"}`), &a)
		var verdicts []string
		for _, b := range a.Touch {
			verdicts = append(verdicts, strings.TrimPrefix(b.Name, "touch."))
		}
		if n := remarkOf(a.Notes, "touch-burns"); !slices.Equal(verdicts, f.touch) || !slices.Equal(a.Touch[2].Texts, f.band) || n == nil || n.Values["time"] != f.note {
			t.Errorf("%q at 57 °C: %v, band %v, %+v", f.surface, verdicts, a.Touch[2].Texts, n)
		}
		if got := firstText(a.Figures, "scald"); got != "10 s" {
			t.Errorf("57 °C scalds in %s", got)
		}
		if got := firstText(a.Assumed, "target"); got != "50–60 °C" {
			t.Errorf("without a target: %s", got)
		}
	}
	var a cooled
	must(t, "cool", []byte(`{"first":"180 F","second":"170 F","between":"5 min","air":"60 F","system":"us"}`), &a)
	if got := firstText(a.Figures, "scald"); got != "@scald.at-once" {
		t.Errorf("170 °F scalds in %s", got)
	}
}

// What the readings' signs say is said: none is hidden, and no wait stands where none
// leads there. The default is what is drained at.
func TestCoolTellsTheCourse(t *testing.T) {
	for _, f := range []struct{ in, verdict, wait string }{
		{`{"first":"60","second":"70","between":"3","air":"18"}`, "above-rising", ""},
		{`{"first":"60","second":"70","between":"3","air":"18","target":"50"}`, "above-rising", ""},
		{`{"first":"40","second":"30","between":"10","air":"18","target":"50"}`, "below-falling", ""},
		{`{"first":"40","second":"30","between":"10","air":"18"}`, "below-falling", ""},
		{`{"first":"95","second":"80","between":"10","air":"18","target":"90"}`, "below-falling", ""},
		{`{"first":"60","second":"18","between":"3","air":"18"}`, "below-falling", ""},
		{`{"first":"60","second":"57","between":"30","air":"18"}`, "already", ""},
		{`{"first":"60","second":"57","between":"30","air":"18","target":"57.5"}`, "already", ""},
		{`{"first":"55","second":"55","between":"3","air":"18"}`, "already", ""},
		{`{"first":"20","second":"35","between":"3","air":"18","target":"60"}`, "warming", "4.2–6 min"},
		{`{"first":"20","second":"35","between":"3","air":"18"}`, "warming", "2.5–3.7 min"},
		{`{"first":"95","second":"80","between":"10","air":"18"}`, "cooling", "15–22 min"},
		{`{"first":"60","second":"55","between":"3","air":"18","target":"18"}`, "cooling", "@wait.or-never"},
		{`{"first":"60","second":"55","between":"3","air":"19.1","target":"18"}`, "air-too-warm", ""},
		{`{"first":"85","second":"84","between":"3","air":"18"}`, "cooling", "@wait.or-never"},
		{`{"first":"62","second":"60.2","between":"10","air":"18"}`, "cooling", "@wait.not-known"},
		{`{"first":"5","second":"8","between":"30","air":"15"}`, "room-too-cold", ""},
	} {
		var a cooled
		must(t, "cool", []byte(f.in), &a)
		if got := firstText(a.Figures, "time-to-target"); a.Verdict != "cool."+f.verdict || got != f.wait {
			t.Errorf("%s: %s, %q; want %s, %q", f.in, a.Verdict, got, f.verdict, f.wait)
		}
	}
	var a cooled
	must(t, "cool", []byte(`{"first":"60","second":"58","between":"3","air":"18"}`), &a)
	if remarkOf(a.Notes, "readings-close") == nil {
		t.Errorf("readings 2 K apart are not doubted: %v", a.Notes)
	}
	for _, row := range [][2]string{
		{`{"first":"70","second":"70","between":"3","air":"18"}`, "readings-equal /second"},
		{`{"first":"60","second":"15","between":"3","air":"18"}`, "below-air /second"},
		{`{"first":"60","second":"55","between":"0","air":"18"}`, "not-believable /between"},
		{`{"first":"72","second":"69.9","between":"24 h","air":"18","target":"19"}`, "too-slow /second"},
		{`{"first":"60","second":"55","between":"5 L","air":"18"}`, "unit-of-other-kind /between"},
	} {
		if got := refusalOf(t, "cool", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

// No estimate of time has more than two digits, and none that is something is 0,
// whatever was read.
func TestCool_TwoDigits(t *testing.T) {
	digits := regexp.MustCompile(`^[0.]*[1-9]?\d?\.?\d?0*$`)
	rapid.Check(t, func(t *rapid.T) {
		tenth := func(low, high int, name string) string {
			return strconv.FormatFloat(float64(rapid.IntRange(10*low, 10*high).Draw(t, name))/10, 'f', -1, 64)
		}
		in := `{"first":"` + tenth(0, 130, "first") + `","second":"` + tenth(0, 130, "second") + `","between":"` + tenth(1, 200, "minutes") +
			`","air":"` + tenth(-10, 40, "air") + `","target":"` + tenth(20, 100, "target") + `"}`
		text, _ := core.Do("cool", []byte(in))
		var a struct{ OK *cooled }
		if err := json.Unmarshal(text, &a); err != nil {
			t.Fatalf("%s: %s", in, text)
		}
		if a.OK == nil {
			return
		}
		said := firstText(a.OK.Figures, "time-to-target")
		if said == "" || strings.HasPrefix(said, "@wait.") {
			return
		}
		number, _, _ := strings.Cut(said, " ")
		low, high, ranged := strings.Cut(number, "–")
		if !ranged {
			high = low
		}
		if !digits.MatchString(strings.TrimPrefix(low, "<")) || !digits.MatchString(high) || high == "0" {
			t.Fatalf("%s: %s", in, said)
		}
	})
}
