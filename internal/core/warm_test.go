package core_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/internal/drain"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// said is what each place of the program says of a temperature of the oil, by its
// name: the step that asks for it, the record, and the two calculations.
func said(t interface {
	Helper()
	Fatalf(string, ...any)
}, typed, system string) map[string]string {
	t.Helper()
	ok := func(op, in string, out any) {
		t.Helper()
		text, _ := core.Do(op, []byte(in))
		var a answer
		if err := json.Unmarshal(text, &a); err != nil || len(a.OK) == 0 {
			t.Fatalf("%s of %q: %s", op, typed, text)
		}
		if err := json.Unmarshal(a.OK, out); err != nil {
			t.Fatalf("%s of %q: %v", op, typed, err)
		}
	}
	text, _ := json.Marshal(typed)
	var job struct {
		Warmth   struct{ Word string }
		Readings []struct{ What, Verdict string }
	}
	ok("replay", `{"card":`+string(specs.Cards()["tessaly-corda-570.json"])+`,"bench":{"system":"`+system+`"},"events":[{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"reading","step":"key-out","what":"temperature","value":`+string(text)+`}]}`, &job)
	if len(job.Readings) != 1 || job.Readings[0].What != "temperature" {
		t.Fatalf("%q is not read: %+v", typed, job.Readings)
	}
	var cool, runOut struct{ Warmth string }
	// The reading before is 10 K higher: hot enough to have cooled to any of these.
	a, _ := quantity.Parse(quantity.Temperature, typed, map[bool]string{true: "°F", false: "°C"}[system == "us"], quantity.System(system))
	ok("cool", `{"first":"`+strconv.FormatFloat(a.Base+10, 'f', 6, 64)+` °C","second":`+string(text)+`,"between":"10 min","air":"-40 °C","target":"0 °C","system":"`+system+`"}`, &cool)
	ok("run-out", `{"volume":"3 L","hole":"12 mm","temperature":`+string(text)+`,"system":"`+system+`"}`, &runOut)
	return map[string]string{"the step": job.Warmth.Word, "the record": job.Readings[0].Verdict, "cool": cool.Warmth, "run-out": runOut.Warmth}
}

// One rule: whatever is typed, in whatever unit, each place says the same of it, and
// what the rule says of the temperature that was typed.
func TestWarmth_EveryPlaceSaysTheSame(t *testing.T) {
	for _, f := range []struct{ typed, system, want string }{
		{"49.9 °C", "metric", "cold"}, {"49,9", "metric", "cold"}, {"50 °C", "metric", "good"}, {"60", "metric", "good"}, {"60.0 °C", "us", "good"},
		{"60.1 °C", "metric", "too-hot"}, {"60,1", "metric", "too-hot"}, {"82 °C", "metric", "too-hot"},
		{"121.9 °F", "metric", "cold"}, {"122 °F", "metric", "good"}, {"122", "us", "good"}, {"140", "us", "good"}, {"140 F", "imperial", "good"},
		{"140.1", "us", "too-hot"}, {"121", "us", "cold"}, {"20 °C", "us", "cold"},
	} {
		for place, got := range said(t, f.typed, f.system) {
			if got != "warmth."+f.want {
				t.Errorf("%q (%s): %s says %q, want %q", f.typed, f.system, place, got, f.want)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		tenths := rapid.OneOf(rapid.IntRange(-200, 1390), rapid.IntRange(480, 620)).Draw(t, "tenths of a degree")
		system := rapid.SampledFrom([]string{"metric", "us", "imperial"}).Draw(t, "system")
		celsius, typed := float64(tenths)/10, strconv.FormatFloat(float64(tenths)/10, 'f', 1, 64)
		switch unit := rapid.SampledFrom([]string{" °C", " °F", ""}).Draw(t, "unit"); {
		case unit == " °F" || unit == "" && system == "us":
			// In whole tenths of °F: the edges are 122 and 140.
			typed = strconv.FormatFloat(math.Round(celsius*18+320)/10, 'f', 1, 64) + unit
			f, _ := strconv.ParseFloat(strings.TrimSuffix(typed, unit), 64)
			celsius = math.Round((f-32)/1.8*1e6) / 1e6
		default:
			typed += unit
		}
		for place, got := range said(t, typed, system) {
			if want := "warmth." + string(drain.Judge(celsius)); got != want {
				t.Errorf("%q (%s), %v °C: %s says %q, want %q", typed, system, celsius, place, got, want)
			}
		}
	})
}
