package core_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

type leaked struct {
	Verdict          string
	Figures, Assumed []shownFigure
	Notes            []finding
}

// Each way to measure comes to the same where the same is lost; a drop of 0.04 mL
// every 10 s is 14 mL in an hour, the trade's round figures, and lies in the range.
func TestLeak(t *testing.T) {
	const looked, level = `{"tyre":"no","lamp":"out","side":"pan",`, `,"share":"60 %","band":"400 mL","oil":"3 L"}`
	for _, f := range []struct{ in, every, hour, low, dry, farLow, farDry string }{
		{`"way":"drops","drops":"60","time":"10 min","engine":"running"`, "9.8–10 s", "6–27 mL", "7.4–47 h", "4.3–20 days", "370–2300 km", "@wait.or-more"},
		{`"way":"drops","taps":"0 10 20 30 40 50 60","engine":"running"`, "9.9–10 s", "6–27 mL", "", "", "", ""},
		{`"way":"drops","drops":"60","time":"10 min","engine":"running","edge":"5 mm"`, "9.8–10 s", "", "", "", "", ""},
		{`"way":"cap","caught":"14 mL","time":"1 h","engine":"running"`, "", "11–17 mL", "", "", "", ""},
		{`"way":"trail","drops":"10","stretch":"1400 m","hour":"50 km"`, "9.2–11 s", "", "", "", "", ""},
	} {
		var a leaked
		must(t, "leak", []byte(looked+f.in+level), &a)
		for name, want := range map[string]string{"drop-every": f.every, "leak-hour": f.hour, "until-low": f.low, "until-dry": f.dry, "far-low": f.farLow, "far-dry": f.farDry} {
			if got := firstText(a.Figures, name); want != "" && got != want {
				t.Errorf("%s: %s %q, want %q", f.in, name, got, want)
			}
		}
		if a.Verdict != "leak-says.lasts" || firstText(a.Figures, "far-dry") == "" {
			t.Errorf("%s: %s, %+v", f.in, a.Verdict, a.Figures)
		}
	}
}

// What keeps the bike where it is comes before any distance: none is said then, nor
// where the engine was off; and what isn't known is said to be unknown.
func TestLeak_NoDistance(t *testing.T) {
	const drops = `"way":"drops","drops":"6","time":"1 min","engine":"running","band":"400 mL","oil":"3 L"`
	for in, want := range map[string]string{
		`{"tyre":"yes","lamp":"out","side":"pan",` + drops + `,"share":"60 %"}`:                                                                             "tyre",
		`{"tyre":"other","lamp":"out","side":"pan",` + drops + `,"share":"60 %"}`:                                                                           "unseen",
		`{"tyre":"no","lamp":"flickers","side":"pan",` + drops + `,"share":"60 %"}`:                                                                         "lamp",
		`{"tyre":"no","lamp":"on","side":"pan",` + drops + `,"share":"60 %"}`:                                                                               "lamp",
		`{"tyre":"no","lamp":"out","side":"pressed",` + drops + `,"share":"60 %"}`:                                                                          "side",
		`{"tyre":"no","lamp":"out","side":"pan",` + drops + `,"share":"5 %"}`:                                                                               "level", // as far as it can be read
		`{"tyre":"no","lamp":"out","side":"pan",` + drops + `,"share":"0 %"}`:                                                                               "level",
		`{"tyre":"no","lamp":"out","side":"pan","way":"stream","share":"60 %"}`:                                                                             "stream",
		`{"tyre":"no","lamp":"out","side":"pan","way":"drops","drops":"1000","time":"1 min","engine":"running","share":"60 %","band":"400 mL","oil":"3 L"}`: "stream",
		`{"tyre":"no","lamp":"out","side":"pan","way":"trail","drops":"1000","stretch":"1 m","share":"60 %","band":"400 mL","oil":"3 L"}`:                   "stream",
		`{"tyre":"no","lamp":"out","side":"pan","way":"cap","caught":"0.5 L","time":"1 min","engine":"running","share":"60 %","band":"400 mL","oil":"3 L"}`: "stream",
		`{"tyre":"yes","lamp":"out","side":"pan","way":"cap","caught":"0.5 L","time":"1 min","engine":"running","share":"60 %"}`:                            "tyre",
		`{"tyre":"other","lamp":"on","side":"pan","way":"stream"}`:                                                                                          "lamp",
		`{"tyre":"yes","lamp":"on","side":"pan","way":"stream"}`:                                                                                            "tyre",
		`{"tyre":"no","lamp":"out","side":"pan","way":"cap","caught":"2 mL","time":"1 h","engine":"off","share":"60 %","band":"400 mL"}`:                    "lasts",
	} {
		var a leaked
		must(t, "leak", []byte(in), &a)
		if a.Verdict != "leak-says."+want {
			t.Errorf("%s: %s, want %s", in, a.Verdict, want)
		}
		for _, s := range a.Figures {
			if strings.HasPrefix(s.Name, "figure.far-") {
				t.Errorf("%s: %s %v", in, s.Name, s.Texts)
			}
		}
	}
	var a leaked
	must(t, "leak", []byte(`{"tyre":"no","lamp":"out","side":"pan",`+drops+`}`), &a)
	for _, name := range []string{"until-low", "until-dry"} {
		known := true
		for _, s := range a.Figures {
			if s.Name == "figure."+name {
				known = s.Standing != "unknown" || s.Lookup != "lookup."+name
			}
		}
		if known {
			t.Errorf("without a level %s is not said to be unknown: %+v", name, a.Figures)
		}
	}
	for _, row := range [][2]string{
		{`{"lamp":"out","side":"pan","way":"drops"}`, "missing /tyre"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"drops","engine":"off"}`, "missing /drops"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"drops","drops":"5","time":"1 min"}`, "missing /engine"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"trail","drops":"5"}`, "missing /stretch"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"cap","time":"1 h","engine":"off"}`, "missing /caught"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"drops","drops":"1","time":"1 min","engine":"off"}`, "not-believable /drops"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"drops","taps":"0 NaN 2 3 4","engine":"off"}`, "taps-few /taps"},
		{`{"tyre":"no","lamp":"out","side":"pan","way":"drops","drops":"5","time":"1 min","engine":"off","edge":"20 mm"}`, "not-believable /edge"},
	} {
		if got := refusalOf(t, "leak", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

// More drops never last longer, and nothing that is said of them has more than two
// digits or is 0 where something is left.
func TestLeak_MoreIsSooner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drops := rapid.IntRange(2, 500).Draw(t, "drops")
		minutes := rapid.IntRange(1, 600).Draw(t, "minutes")
		hours := func(drops int) float64 {
			in := `{"tyre":"no","lamp":"out","side":"pan","way":"drops","drops":"` + strconv.Itoa(drops) + `","time":"` + strconv.Itoa(minutes) +
				` min","engine":"running","share":"60 %","band":"400 mL","oil":"3 L"}`
			text, _ := core.Do("leak", []byte(in))
			var a struct{ OK *leaked }
			if err := json.Unmarshal(text, &a); err != nil || a.OK == nil {
				t.Fatalf("%s: %s", in, text)
			}
			said := firstText(a.OK.Figures, "leak-hour")
			low, _, _ := strings.Cut(said, "–")
			number, _, _ := strings.Cut(low, " ")
			v, err := strconv.ParseFloat(strings.TrimPrefix(number, "<"), 64)
			if err != nil || strings.HasPrefix(number, "0 ") || number == "0" || strings.HasPrefix(firstText(a.OK.Figures, "far-dry"), "0–") {
				t.Fatalf("%s: %s, %+v", in, said, a.OK.Figures)
			}
			if strings.HasSuffix(said, " L") && !strings.HasSuffix(said, " mL") {
				v *= 1000
			}
			return v
		}
		if less, more := hours(drops), hours(2*drops); more < less {
			t.Fatalf("%d drops: %v mL in an hour, twice as many: %v", drops, less, more)
		}
	})
}
