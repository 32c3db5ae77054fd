package core_test

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

type pouredOut struct {
	Verdict string
	Pours   []struct {
		ID, Verdict string
		Pour, Left  float64
		PourTexts   []string
	}
	Opened              int
	Cost, Left, Missing float64
	Figures             []shownFigure
	Notes               []finding
}

func TestBottles(t *testing.T) {
	var a pouredOut
	must(t, "bottles", []byte(`{"need":"2.6 L","bottles":[{"id":"a","size":"1 L","price":"12.50"},{"id":"b","size":"4 L","left":"0,7 L","opened":true},{"size":"1 L","price":"11"},{"size":"2 L","price":"25,5"}]}`), &a)
	if len(a.Pours) != 2 || a.Pours[0].ID != "b" || a.Pours[0].Verdict != "shelf.is-open" || a.Pours[1].ID != "4" || a.Pours[1].Verdict != "shelf.open-it" {
		t.Fatalf("%+v", a)
	}
	if a.Verdict != "shelf.open-new" || a.Opened != 1 || firstText(a.Figures, "cost") != "25.50" || a.Left != 0.1 || a.Missing != 0 || a.Pours[1].Pour != 1.9 || len(a.Notes) != 0 {
		t.Errorf("%+v", a)
	}
	// 3.1 L from a 4 L and 1 L bottles: 0.9 L left (worked out apart).
	a = pouredOut{}
	must(t, "bottles", []byte(`{"need":"3.1 L","bottles":[{"size":"1 L"},{"size":"1 L"},{"size":"1 L"},{"size":"1 L"},{"size":"4 L"}]}`), &a)
	if a.Opened != 1 || a.Left != 0.9 || firstText(a.Figures, "cost") != "" {
		t.Errorf("%+v", a)
	}
	// Five US quarts are wanted, one is there.
	a = pouredOut{}
	must(t, "bottles", []byte(`{"need":"5 qt","system":"us","bottles":[{"size":"1 qt"}]}`), &a)
	if a.Verdict != "shelf.lacks" || math.Abs(a.Missing-4*0.946352946) > 0.002 || remarkOf(a.Notes, "unit-read-as") == nil {
		t.Errorf("%+v", a)
	}
	a = pouredOut{}
	must(t, "bottles", []byte(`{"need":"1 L"}`), &a)
	if a.Verdict != "shelf.lacks" || a.Missing != 1 || len(a.Pours) != 0 {
		t.Errorf("an empty shelf: %+v", a)
	}
}

// What was poured from is opened and holds what is left; all else stays as it was
// typed, in its place.
func TestBottles_ShelfAfter(t *testing.T) {
	var a struct{ Shelf []map[string]any }
	must(t, "bottles", []byte(`{"need":"2.6 L","bottles":[{"id":"a","size":"1 L","price":"12.50"},{"id":"b","size":"4 L","left":"0,7 L","opened":true},{"size":"2 L","price":"25,5"},{"size":"1 l","opened":true,"left":"0 L"}]}`), &a)
	want := []map[string]any{
		{"id": "a", "size": "1 L", "price": "12.50"},
		{"id": "b", "size": "4 L", "left": "0 mL", "opened": true},
		{"size": "2 L", "price": "25,5", "left": "100 mL", "opened": true},
		{"size": "1 l", "left": "0 L", "opened": true},
	}
	if !reflect.DeepEqual(a.Shelf, want) {
		t.Errorf("got %v,\nwant %v", a.Shelf, want)
	}
	// The shelf that is left can be asked again: it holds 0.1 L and a new litre.
	rest, err := json.Marshal(a.Shelf)
	if err != nil {
		t.Fatal(err)
	}
	var again pouredOut
	must(t, "bottles", []byte(`{"need":"1.2 L","bottles":`+string(rest)+`}`), &again)
	if again.Verdict != "shelf.lacks" || again.Missing != 0.1 || len(again.Pours) != 2 || again.Pours[0].Pour != 0.1 {
		t.Errorf("%+v", again)
	}
}

// TestBottlesAssumed: what is taken for granted is noted.
func TestBottlesAssumed(t *testing.T) {
	for _, row := range []struct{ in, verdict, code, where, cost string }{
		// A bottle that isn't full is an opened one, whatever is said.
		{`{"need":"1 L","bottles":[{"size":"1 L"},{"size":"4 L","left":"3 L"}]}`, "shelf.opened-suffice", "taken-as-opened", "/bottles/1/left", ""},
		{`{"need":"1 L","bottles":[{"size":"1 L","opened":true}]}`, "shelf.opened-suffice", "taken-as-full", "/bottles/0/left", ""},
		{`{"need":"2 L","bottles":[{"size":"1 L","price":"3"},{"size":"1 L"}]}`, "shelf.open-new", "price-left-out", "/bottles/1/price", "3.00"},
		{`{"need":"1 L","bottles":[{"size":"1 L","price":"0"}]}`, "shelf.open-new", "", "", "0.00"},
	} {
		var a pouredOut
		must(t, "bottles", []byte(row.in), &a)
		if a.Verdict != row.verdict || firstText(a.Figures, "cost") != row.cost {
			t.Errorf("%s: %+v", row.in, a)
		}
		if n := remarkOf(a.Notes, row.code); row.code == "" && len(a.Notes) > 0 || row.code != "" && (n == nil || n.Where != row.where) {
			t.Errorf("%s: told %+v, want %s", row.in, a.Notes, row.code)
		}
	}
}

func TestBottlesRefuses(t *testing.T) {
	many := `{"need":"1 L","bottles":[{"size":"1 L"}`
	for range 200 {
		many += `,{"size":"1 L"}`
	}
	for _, row := range [][2]string{
		{many + `]}`, "too-many-rows /bottles"},
		{`{"need":"1 L","bottles":[{"size":"1 L","left":"2 L"}]}`, "more-than-size /bottles/0/left"},
		{`{"need":"1 L","bottles":[{"size":"1 L"},{"size":"1 L","price":"-1"}]}`, "not-believable /bottles/1/price"},
		{`{"need":"1 L","bottles":[{"size":"1 L","price":"cheap"}]}`, "not-a-number /bottles/0/price"},
		{`{"need":"1 L","bottles":[{"size":"1 kg"}]}`, "unit-of-other-kind /bottles/0/size"},
		{`{"need":"1 L","bottles":[{"left":"1 L"}]}`, "missing /bottles/0/size"},
		{`{"need":"0 L"}`, "not-believable /need"},
	} {
		if got := refusalOf(t, "bottles", row[0]); got != row[1] {
			t.Errorf("%.80s: %s, want %s", row[0], got, row[1])
		}
	}
}

type levelled struct {
	Verdict                  string
	Share, Corrected, Change float64
	Figures, Assumed         []shownFigure
	Line, LowMark, HighMark  float64
	AimLow, AimHigh          float64
	Half, Covered            float64
	Notes                    []finding
}

func TestLevel(t *testing.T) {
	for _, row := range []struct {
		in, verdict string
		change      float64
		note        string
	}{
		{`{"gauge":"window","band":"400 mL","share":"20 %"}`, "amend.pour", 0.07, ""},
		{`{"gauge":"window","band":"0,4 l","marks":"10 mm","above":"2 mm"}`, "amend.pour", 0.07, ""},
		{`{"gauge":"window","band":"400 mL","covered":"50 %"}`, "amend.right", 0, ""},
		{`{"gauge":"window","band":"400 mL","share":"100 %"}`, "amend.full", 0, ""},
		{`{"gauge":"window","band":"400 mL","covered":"100 %"}`, "amend.take-out", -0.3, "no-line"},
		{`{"gauge":"window","band":"400 mL","covered":"0 %"}`, "amend.pour", 0.2, "no-line"},
		{`{"gauge":"stick-pushed","band":"500 mL","share":"195 %"}`, "amend.take-out", -0.6, ""},
		{`{"gauge":"stick-resting","band":"400 mL","share":"-10 %"}`, "amend.pour", 0.05, "below-marks"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","lean":"12°","offset":"110 mm"}`, "amend.unsure", 0, "leans-too-much"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","lean":"1°","offset":"60 mm"}`, "amend.pour", 0.07, ""},
		{`{"gauge":"stick-resting","band":"400 mL","share":"25 %","temperature":"20 °C","meantAt":"80 °C","volume":"3 L"}`, "amend.unsure", 0, "heat-decides"},
		{`{"gauge":"stick-resting","band":"400 mL","share":"90 %","temperature":"20 °C","meantAt":"80 °C","volume":"3 L"}`, "amend.unsure", 0, "heat-decides"},
		{`{"gauge":"stick-resting","band":"400 mL","share":"60 %","temperature":"20 °C","meantAt":"40 °C","volume":"3 L"}`, "amend.right", 0, "state-first"},
		{`{"gauge":"stick-resting","band":"400 mL","share":"98 %","lean":"2°","offset":"60 mm","marks":"30 mm"}`, "amend.unsure", 0, "leans-at-mark"},
		{`{"gauge":"stick-resting","band":"400 mL","share":"49 %"}`, "amend.right", 0, ""},
	} {
		var a levelled
		must(t, "level", []byte(row.in), &a)
		if a.Verdict != row.verdict || a.Change != row.change {
			t.Errorf("%s: %s %v, want %s %v", row.in, a.Verdict, a.Change, row.verdict, row.change)
		}
		if row.note != "" && remarkOf(a.Notes, row.note) == nil {
			t.Errorf("%s: not noted: %s", row.in, row.note)
		}
	}
}

// Whatever is read, at whatever temperatures: within its marks nothing is ordered out,
// level and oil-volume let the oil grow alike (an aluminium case takes 0.00007 per K of
// it), and a job says the same of the same reading.
func TestLevelHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.IntRange(-50, 150).Draw(t, "share")
		band := rapid.IntRange(20, 1500).Draw(t, "band")
		volume := rapid.IntRange(2, 60).Draw(t, "decilitres")
		from, to := rapid.IntRange(-30, 150).Draw(t, "now"), rapid.IntRange(-30, 150).Draw(t, "meant at")
		var a levelled
		in := fmt.Sprintf(`{"gauge":"stick-pushed","band":"%d mL","share":"%d %%","temperature":"%d °C","meantAt":"%d °C","volume":"0.1 L"}`, band, share, from, to)
		in = strings.Replace(in, "0.1 L", fmt.Sprintf("%d00 mL", volume), 1)
		answered(t, "level", []byte(in), &a)
		if a.Verdict == "amend.take-out" && (share <= 100 || a.Corrected <= 1) || a.Verdict == "amend.pour" && (share >= 50 || a.Corrected >= 0.5) ||
			(a.Verdict == "amend.right" || a.Verdict == "amend.full") && (share > 100 || a.Corrected > 1) {
			t.Fatalf("%s: %s, %v at the marks' temperature", in, a.Verdict, a.Corrected)
		}
		var v struct{ Figures []shownFigure }
		answered(t, "oil-volume", []byte(fmt.Sprintf(`{"volume":"%d00 mL","from":"%d °C","to":"%d °C"}`, volume, from, to)), &v)
		whole := float64(volume) * 0.1
		grown := (v.Figures[0].Low - whole - whole*0.00007*float64(to-from)) * 1000 / float64(band)
		if got := a.Corrected - a.Share; math.Abs(got-grown) > 1e-4+1e-5*1000/float64(band) {
			t.Fatalf("%s: grows by %v of the band, and by oil-volume %v", in, got, grown)
		}
	})
}

// One rule: a job says of a reading what the calculation says of it.
func TestLevelInAJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.OneOf(rapid.IntRange(-500_000, 1_500_000), rapid.IntRange(999_900, 1_000_100)).Draw(t, "ten-thousandths of a percent")
		share := strconv.FormatFloat(float64(steps)/1e4, 'f', 4, 64)
		system := rapid.SampledFrom(quantity.Systems).Draw(t, "system")
		var calculated levelled
		answered(t, "level", []byte(fmt.Sprintf(`{"gauge":"window","glass":"40 mm","band":"0.4 L","share":"%s %%","system":"%s"}`, share, system)), &calculated)
		var state struct {
			Oils []struct {
				Level, Amend string
				Change       []string
			}
		}
		answered(t, "replay", []byte(fmt.Sprintf(`{"card":%s,"bench":{"system":"%s"},"events":[{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"reading","step":"top-up-engine","what":"level","of":"engine","value":"%s %%"}]}`,
			specs.Cards()["tessaly-corda-570.json"], system, share)), &state)
		var change []string
		for _, f := range calculated.Figures {
			if f.Name == "figure.pour-now" || f.Name == "figure.take-out" {
				change = f.Texts
			}
		}
		if got := state.Oils[0]; (got.Level == "level.above") != (got.Amend == "amend.take-out") {
			t.Fatalf("%s %%: the job says %s and %s", share, got.Level, got.Amend)
		} else if got.Amend != calculated.Verdict || !slices.Equal(got.Change, change) {
			t.Fatalf("%s %%: the job says %s %v, the calculation %s %v", share, got.Amend, got.Change, calculated.Verdict, change)
		}
	})
}

// TestLevelTilt: side stand, 110 mm off the middle, 12°, marks 10 mm apart:
// 23.38 mm or 2.34 bands (worked out apart). A stick slanted by 60° has its
// marks half as far apart upright.
func TestLevelTilt(t *testing.T) {
	var a levelled
	must(t, "level", []byte(`{"gauge":"window","band":"400 mL","share":"20 %","marks":"10 mm","lean":"12°","offset":"110 mm"}`), &a)
	if firstText(a.Figures, "tilt-error") != "23 mm" || firstText(a.Figures, "tilt-share") != "230 %" {
		t.Errorf("%+v", a.Figures)
	}
	a = levelled{}
	must(t, "level", []byte(`{"gauge":"stick-pushed","band":"400 mL","share":"20 %","marks":"20 mm","slant":"60","lean":"12°","offset":"110 mm"}`), &a)
	if firstText(a.Figures, "tilt-share") != "230 %" {
		t.Errorf("%+v", a.Figures)
	}
}

// TestLevelCoveredAgrees: the glass's covered share and the height give the same
// answer, and the drawing shows what was read.
func TestLevelCoveredAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		covered := rapid.Float64Range(0.5, 99.5).Draw(t, "covered")
		var by levelled
		answered(t, "level", []byte(`{"gauge":"window","band":"400 mL","covered":"`+strconv.FormatFloat(covered, 'f', 6, 64)+` %"}`), &by)
		// What is read off by less than a hair's breadth may lie on either side of a limit.
		verdicts := map[string]bool{}
		for _, off := range []float64{-1e-4, 0, 1e-4} {
			var again levelled
			answered(t, "level", []byte(`{"gauge":"window","band":"400 mL","share":"`+strconv.FormatFloat((by.Share+off)*100, 'f', 6, 64)+` %"}`), &again)
			if math.Abs(by.Share+off-again.Share) > 1e-4 {
				t.Fatalf("%+v and %+v", by, again)
			}
			verdicts[again.Verdict] = true
		}
		if !verdicts[by.Verdict] {
			t.Fatalf("%+v, and by its share %v", by, verdicts)
		}
		if math.Abs(by.Covered*100-covered) > 0.02 || by.LowMark != 0.25 || by.HighMark != 0.75 {
			t.Fatalf("drawn %+v", by)
		}
		if line := by.LowMark + by.Share*(by.HighMark-by.LowMark); math.Abs(line-by.Line) > 2e-4 {
			t.Fatalf("the line is drawn at %v, not at %v", by.Line, line)
		}
	})
}

func TestLevelRefuses(t *testing.T) {
	for _, row := range [][2]string{
		{`{"gauge":"hole","band":"400 mL"}`, "gauge-without-marks /gauge"},
		{`{"gauge":"guess","band":"400 mL","share":"20 %"}`, "unknown-word /gauge"},
		{`{"gauge":"window","band":"400 mL"}`, "missing /share"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","covered":"20 %"}`, "one-reading /covered"},
		{`{"gauge":"stick-pushed","band":"400 mL","covered":"20 %"}`, "no-glass /covered"},
		{`{"gauge":"stick-pushed","band":"400 mL","above":"4 mm"}`, "missing /marks"},
		{`{"gauge":"window","band":"400 mL","above":"30 mm"}`, "off-gauge /above"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","glass":"10 mm","marks":"12 mm"}`, "marks-beyond-glass /marks"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","lean":"3"}`, "missing /offset"},
		{`{"gauge":"window","band":"400 mL","share":"20 %","temperature":"20"}`, "missing /meantAt"},
		{`{"gauge":"window","band":"400 mL","share":"20 turn %"}`, "unknown-unit /share"},
	} {
		if got := refusalOf(t, "level", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

type begun struct {
	Prefill, Read string
	Before, After []shownFigure
	Notes         []finding
}

func TestFirstFill(t *testing.T) {
	for _, row := range []struct {
		in, prefill, read, pour, fills, drop, note string
	}{
		{`{"volume":"3 L","filter":"spin-on","mount":"up","layout":"wet-sump"}`, "prefill.up", "read-level.as-card", "2.55–2.7 L", "80–260 mL", "0–330 mL", ""},
		{`{"volume":"3 L","filter":"spin-on","mount":"sideways","layout":"wet-sump"}`, "prefill.sideways", "read-level.as-card", "2.55–2.7 L", "30–60 mL", "140–370 mL", "no-drop"},
		{`{"volume":"3 L","filter":"spin-on","mount":"down","layout":"wet-sump"}`, "prefill.down", "read-level.as-card", "2.55–2.7 L", "", "200–400 mL", "no-drop"},
		{`{"volume":"3 L","filter":"spin-on","layout":"wet-sump"}`, "prefill.not-known", "read-level.as-card", "2.55–2.7 L", "", "200–400 mL", "mount-unknown"},
		{`{"volume":"1.6 L","filter":"cartridge","layout":"wet-sump"}`, "prefill.wet-paper", "read-level.as-card", "1.36–1.44 L", "", "50–150 mL", "no-drop"},
		{`{"volume":"3 L","filter":"cartridge","layout":"dry-sump","tankOnly":true}`, "prefill.wet-paper", "read-level.hot", "2.04–2.16 L", "", "50–150 mL", "old-oil-stays"},
		{`{"volume":"3 L","filter":"cartridge","layout":"wet-sump","cooler":true}`, "prefill.wet-paper", "read-level.as-card", "2.55–2.7 L", "", "0.3–0.8 L", "no-drop"},
		{`{"volume":"50 mL","filter":"spin-on","mount":"up","layout":"wet-sump"}`, "prefill.unfit", "read-level.as-card", "50 mL", "", "", "filter-too-large"},
		{`{"volume":"50 mL","filter":"strainer","layout":"wet-sump"}`, "prefill.none", "read-level.as-card", "50 mL", "", "", "all-at-once"},
		{`{"volume":"0.9 L","filter":"strainer","layout":"small-strainer"}`, "prefill.none", "read-level.as-card", "0.77–0.81 L", "", "", ""},
	} {
		var a begun
		must(t, "first-fill", []byte(row.in), &a)
		if a.Prefill != row.prefill || a.Read != row.read || firstText(a.Before, "first-pour") != row.pour ||
			firstText(a.Before, "prefill") != row.fills || firstText(a.After, "drop") != row.drop {
			t.Errorf("%s: %+v", row.in, a)
		}
		if row.note != "" && remarkOf(a.Notes, row.note) == nil {
			t.Errorf("%s: not noted: %s", row.in, row.note)
		}
		for _, s := range a.After {
			if len(s.Texts) == 0 && (s.Standing != "unknown" || s.Lookup == "") {
				t.Errorf("%s: %+v has neither text nor a place to look", row.in, s)
			}
		}
	}
	for _, row := range [][2]string{
		{`{"volume":"3 L","filter":"sock","layout":"wet-sump"}`, "unknown-word /filter"},
		{`{"volume":"3 L","filter":"spin-on","mount":"inside","layout":"wet-sump"}`, "unknown-word /mount"},
		{`{"volume":"3 L","filter":"spin-on","layout":"wet-sump","tankOnly":true}`, "no-tank /tankOnly"},
		{`{"volume":"1 L","filter":"spin-on","layout":"dry-sump","tankOnly":true}`, "old-oil-unknown /volume"},
	} {
		if got := refusalOf(t, "first-fill", row[0]); got != row[1] {
			t.Errorf("%s: %s, want %s", row[0], got, row[1])
		}
	}
}

// Whatever volume it is: no part is more than the whole, nothing that a jug doesn't show
// is told, and before and after are the volume.
func TestFirstFill_Small(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		millilitres := rapid.OneOf(rapid.IntRange(50, 800), rapid.IntRange(50, 25000)).Draw(t, "mL")
		filter := rapid.SampledFrom([]string{"spin-on", "cartridge", "strainer", "stays"}).Draw(t, "filter")
		mount := rapid.SampledFrom([]string{"", "up", "sideways", "down"}).Draw(t, "mount")
		in := fmt.Sprintf(`{"volume":"%d mL","filter":"%s","mount":"%s","layout":"wet-sump","cooler":%v}`, millilitres, filter, mount, rapid.Bool().Draw(t, "cooler"))
		var a begun
		answered(t, "first-fill", []byte(in), &a)
		all := map[string]float64{}
		for _, f := range append(a.Before, a.After...) {
			if len(f.Texts) == 0 {
				continue
			}
			number, unit, _ := strings.Cut(f.Texts[0], " ")
			low, high, ranged := strings.Cut(number, "–")
			if !ranged {
				high = low
			}
			top, err := strconv.ParseFloat(high, 64)
			if unit == "L" {
				top *= 1000
			}
			if err != nil || top < 20 || top > float64(millilitres)+5 {
				t.Fatalf("%s: %s is %s", in, f.Name, f.Texts[0])
			}
			all[f.Name] = top
		}
		if sum := all["figure.first-pour"] + all["figure.kept-back"]; sum < float64(millilitres)*0.99-10 || sum > float64(millilitres)*1.06+15 {
			t.Fatalf("%s: %v mL in all", in, sum)
		}
		if all["figure.prefill"] > 0.85*float64(millilitres) {
			t.Fatalf("%s: %v mL into the filter", in, all["figure.prefill"])
		}
	})
}

// BenchmarkBottles200 has 200 sealed bottles, no two alike.
func BenchmarkBottles200(b *testing.B) {
	in := `{"need":"9.7 L","bottles":[`
	for n := range 200 {
		in += fmt.Sprintf(`{"size":"%d mL","price":"%d"},`, 400+7*n, 5+n%13)
	}
	in = strings.TrimSuffix(in, ",") + "]}"
	for b.Loop() {
		if _, outcome := core.Do("bottles", []byte(in)); outcome != core.OK {
			b.Fatal("refused")
		}
	}
}
