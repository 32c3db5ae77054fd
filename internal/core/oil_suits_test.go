package core_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
)

// wetEngine is what a bike with its clutch in the oil asks for.
const wetEngine = `"grades":"10W-40","marks":"MA2","service":"SL","clutch":"wet","due":"2.5 L"`

func TestOilSuits(t *testing.T) {
	a := calculated(t, "oil-suits", `{`+wetEngine+`,"bottleGrade":"10W40","bottleMark":"JASO MA2","bottleService":"API SM/CF","coldest":"-5","purpose":"change"}`)
	if a.Verdict != "oil-verdict.suits" || a.Figures != nil || slices.ContainsFunc(a.Notes, func(f finding) bool { return f.Grade != "note" }) {
		t.Errorf("the oil asked for: %s %v", a.Verdict, a.Notes)
	}
	a = calculated(t, "oil-suits", `{`+wetEngine+`,"bottleGrade":"5W-30","bottleMark":"none","bottleService":"SP-RC"}`)
	if a.Verdict != "oil-verdict.no" || !slices.Contains(a.found(), "conserving-wet") || !slices.Contains(a.found(), "change-assumed") {
		t.Errorf("a conserving car oil: %s %v", a.Verdict, a.Notes)
	}
	a = calculated(t, "oil-suits", `{`+wetEngine+`,"bottleGrade":"5W-30","bottleMark":"none","conserving":true,"purpose":"top-up","add":"0,5 L"}`)
	mix := a.last("viscosity-mix")
	if a.Verdict != "oil-verdict.limit" || a.last("second-share").Low != 0.2 || !slices.Equal(a.Grades, []string{"30", "40"}) || !(mix.Low > 9.3 && mix.High < 16.3) {
		t.Errorf("a fifth of a conserving car oil in need: %s, %v, grades %v", a.Verdict, a.Figures, a.Grades)
	}
	a = calculated(t, "oil-suits", `{`+wetEngine+`,"purpose":"top-up"}`)
	if a.Verdict != "oil-verdict.unknown" || !slices.Equal(a.shown("second-share"), []string{" unknown"}) {
		t.Errorf("nothing read of the bottle in need: %s %v", a.Verdict, a.Figures)
	}
	if a = calculated(t, "oil-suits", `{`+wetEngine+`}`); a.Verdict != "oil-verdict.unknown" {
		t.Errorf("nothing known of the bottle: %s %v", a.Verdict, a.Notes)
	}
	if a = calculated(t, "oil-suits", `{}`); a.Verdict != "oil-verdict.unknown" {
		t.Errorf("nothing known at all: %s %v", a.Verdict, a.Notes)
	}
}

// An engine's clutch is taken to run in its oil until it is said that it
// doesn't, and that is noted; a gear oil has none.
func TestOilSuits_Clutch(t *testing.T) {
	for in, want := range map[string]string{
		`{"grades":"10W-40","bottleGrade":"10W-40","bottleMark":"none"`:                "oil-verdict.limit clutch-assumed",
		`{"grades":"10W-40","bottleGrade":"10W-40","bottleMark":"MA"`:                  "oil-verdict.suits clutch-assumed",
		`{"grades":"10W-40","clutch":"wet","bottleGrade":"10W-40","bottleMark":"none"`: "oil-verdict.limit",
		`{"grades":"10W-40","clutch":"dry","bottleGrade":"10W-40","bottleMark":"none"`: "oil-verdict.suits",
		`{"grades":"SAE 80W-90, 75W-90","bottleGrade":"75W-90"`:                        "oil-verdict.suits",
		`{"grades":"80W-90","clutch":"wet","bottleGrade":"80W-90"`:                     "oil-verdict.unknown",
	} {
		a := calculated(t, "oil-suits", in+`,"purpose":"change","coldest":"5"}`)
		got := a.Verdict
		if slices.Contains(a.found(), "clutch-assumed") {
			got += " clutch-assumed"
		}
		if got != want {
			t.Errorf("%s: %s, want %s (%v)", in, got, want, a.Notes)
		}
	}
}

// By its share an oil that is added is a top-up, or a change with another word for it.
func TestOilSuits_Share(t *testing.T) {
	const car = `,"bottleGrade":"5W-30","bottleMark":"none","bottleService":"API SP Resource Conserving","purpose":"top-up","add":`
	for add, want := range map[string]string{"0.2 L": "oil-verdict.limit", "0.625 L": "oil-verdict.limit", "0.65 L": "oil-verdict.no", "2.3 L": "oil-verdict.no", "2.5 L": "oil-verdict.no"} {
		a := calculated(t, "oil-suits", `{`+wetEngine+car+`"`+add+`"}`)
		if a.Verdict != want || slices.Contains(a.found(), "no-top-up") != (want == "oil-verdict.no") {
			t.Errorf("%s of 2.5 L: %s %v, want %s", add, a.Verdict, a.Notes, want)
		}
	}
	a := calculated(t, "oil-suits", `{`+wetEngine+`,"bottleGrade":"5W-30","bottleMark":"none","purpose":"top-up"}`)
	if a.Verdict != "oil-verdict.limit" || !slices.Contains(a.found(), "share-assumed") {
		t.Errorf("a share that was not given: %s %v", a.Verdict, a.Notes)
	}
}

// A label is read as it is printed, in whichever field it stands.
func TestOilSuits_Label(t *testing.T) {
	for in, want := range map[string]string{
		`"bottleGrade":"SAE 10W–40","bottleMark":"JASO T903:2016 MA/MA2","bottleService":"API SP Resource Conserving"`: "oil-verdict.suits conserving-marked service-newer-wet",
		`"bottleGrade":"10 w 40, API SN, JASO MA2"`:                                             "oil-verdict.suits mark-fits service-newer-wet",
		`"bottleGrade":"10w40","bottleMark":"none","bottleService":"ILSAC GF-6A"`:               "oil-verdict.no conserving-wet service-newer-wet",
		`"bottleGrade":"10w40","bottleMark":"JASO MA2","bottleService":"API SN/CF, ACEA A3/B4"`: "oil-verdict.suits mark-fits not-compared",
		`"bottleGrade":"30","bottleMark":"JASO FD"`:                                             "oil-verdict.no two-stroke",
		`"bottleGrade":"30","bottleService":"API TC"`:                                           "oil-verdict.no two-stroke",
		`"bottleGrade":"10W-40","bottleMark":"none","bottleService":"GL5"`:                      "oil-verdict.no gear-oil-in-engine",
	} {
		a := calculated(t, "oil-suits", `{`+wetEngine+`,"purpose":"change","coldest":"5",`+in+`}`)
		for code := range strings.FieldsSeq(want) {
			if code != a.Verdict && !slices.Contains(a.found(), code) {
				t.Errorf("%s: %s %v, lacks %s", in, a.Verdict, a.found(), code)
			}
		}
	}
}

// The manual's own chart wins over what is generally advised.
func TestOilSuits_Chart(t *testing.T) {
	const chart = `"grades":"10W-40","clutch":"dry","chart":"SAE 10W-40: -10 to 35 °C; 20w50: from 10; 5W-30: to 50 °F\n 30: -20–0 °C",`
	for in, want := range map[string]string{
		`"bottleGrade":"10W-40","coldest":"-15"`:                   "oil-verdict.no chart-other",
		`"bottleGrade":"10W-40","coldest":"14 °F"`:                 "oil-verdict.suits chart-fits",
		`"bottleGrade":"10W-40","coldest":"5","hottest":"40"`:      "oil-verdict.no chart-none",
		`"bottleGrade":"20W-50","coldest":"12","hottest":"45"`:     "oil-verdict.suits chart-fits",
		`"bottleGrade":"5W-30","coldest":"-40","hottest":"50 °F"`:  "oil-verdict.suits chart-fits",
		`"bottleGrade":"5W-30","coldest":"-40","hottest":"10.5"`:   "oil-verdict.no chart-none",
		`"bottleGrade":"SAE 30","coldest":"-20","hottest":"0"`:     "oil-verdict.suits chart-fits",
		`"bottleGrade":"10W-60","coldest":"36","purpose":"change"`: "oil-verdict.limit grade-thicker",
		`"bottleGrade":"10W-40","purpose":"change"`:                "oil-verdict.suits season-not-given",
	} {
		a := calculated(t, "oil-suits", `{`+chart+in+`}`)
		for code := range strings.FieldsSeq(want) {
			if code != a.Verdict && !slices.Contains(a.found(), code) {
				t.Errorf("%s: %s %v, lacks %s", in, a.Verdict, a.found(), code)
			}
		}
	}
}

// Lists are read as people write them.
func TestOilSuits_Lists(t *testing.T) {
	for _, in := range []string{
		`{"grades":"sae 20W50,10W-40","marks":"JASO MB, ma","service":"SE, SF/SG"`,
		`{"grades":"10W–40 / 20w50","marks":"JASO MA1/MA","service":"API SE or SF/SG"`,
		`{"grades":"10w/40 20W-50","marks":"none MA1 MA","service":"api sf sg"`,
	} {
		a := calculated(t, "oil-suits", in+`,"bottleGrade":"10W-40","bottleMark":"MA2","bottleService":"SG","clutch":"wet","coldest":"5 °C"}`)
		if a.Verdict != "oil-verdict.suits" || !slices.Contains(a.found(), "service-same") {
			t.Errorf("%s: %s %v", in, a.Verdict, a.Notes)
		}
	}
}

func TestOil_Refusals(t *testing.T) {
	for _, c := range []struct{ op, in, code, where string }{
		{"oil-curve", `{}`, "oil-points", "/"},
		{"oil-curve", `{"first":"97"}`, "missing", "/second"},
		{"oil-curve", `{"second":"97","grade":"10W-40"}`, "missing", "/first"},
		{"oil-curve", `{"first":"14","second":"97"}`, "oil-not-one", "/second"},
		{"oil-curve", `{"first":"97","second":"14.5","at":"500"}`, "not-believable", "/at"},
		{"oil-curve", `{"first":"97 L","second":"14.5"}`, "unit-of-other-kind", "/first"},
		{"oil-curve", `{"grade":"85W-80"}`, "oil-no-limits", "/grade"},
		{"oil-curve", `{"first":"97","second":"95","secondAt":"41 °C"}`, "oil-too-close", "/secondAt"},
		{"oil-curve", `{"first":"97","second":"14.5","firstAt":"100"}`, "oil-too-close", "/secondAt"},
		{"oil-curve", `{"first":"97","second":"51","secondAt":"59.9"}`, "oil-too-close", "/secondAt"},
		{"oil-curve", `{"grade":"25W-20"}`, "oil-no-limits", "/grade"},
		{"oil-curve", `{"grade":"10W-41"}`, "unknown-grade", "/grade"},
		{"oil-curve", `{"first":"97","second":"14.5","grade":"q"}`, "unknown-grade", "/grade"},
		{"oil-curve", `{"grade":"10W-40","index":"4000"}`, "not-believable", "/index"},
		{"oil-curve", `{"grade":"10W-40","index":"high"}`, "not-a-number", "/index"},
		{"oil-mix", `{}`, "missing", "/firstVolume"},
		{"oil-mix", `{"firstVolume":"1 L","firstGrade":"10W","secondVolume":"1 L","secondViscosity":"9"}`, "oil-no-viscosity", "/firstViscosity"},
		{"oil-mix", `{"firstVolume":"1 L","firstGrade":"10W-40","secondVolume":"1 L","secondViscosity":"9","temperature":"40"}`, "oil-no-viscosity", "/firstViscosity"},
		{"oil-mix", `{"firstVolume":"0 L","firstViscosity":"9","secondVolume":"1 L","secondViscosity":"9"}`, "not-believable", "/firstVolume"},
		{"oil-volume", `{"volume":"3 L","to":"20"}`, "missing", "/from"},
		{"oil-volume", `{"to":"20","from":"20"}`, "missing", "/volume"},
		{"oil-volume", `{"volume":"3 kg","from":"20","to":"20"}`, "unit-of-other-kind", "/volume"},
		{"oil-volume", `{"volume":"3 L","from":"20","to":"20","density":"0.88"}`, "not-believable", "/density"},
		{"oil-volume", `{"mass":"3 kg","to":"20","density":"1160","densityAt":"100"}`, "oil-density", "/density"},
		{"oil-suits", `{"bottleGrade":"q"}`, "unknown-grade", "/bottleGrade"},
		{"oil-suits", `{"grades":"10W-40 q"}`, "unknown-grade", "/grades"},
		{"oil-suits", `{"bottleMark":"MC"}`, "unknown-mark", "/bottleMark"},
		{"oil-suits", `{"marks":"MA, MC"}`, "unknown-mark", "/marks"},
		{"oil-suits", `{"bottleService":"SK"}`, "unknown-service", "/bottleService"},
		{"oil-suits", `{"service":"SK"}`, "unknown-service", "/service"},
		{"oil-suits", `{"bottleGrade":"10W-40 / 15W-50"}`, "several-grades", "/bottleGrade"},
		{"oil-suits", `{"chart":"10W-40 -10 to 40"}`, "chart-unread", "/chart"},
		{"oil-suits", `{"chart":"10W-40: 40 to -10 °C"}`, "chart-unread", "/chart"},
		{"oil-suits", `{"chart":"10W-41: -10 to 40 °C"}`, "chart-unread", "/chart"},
		{"oil-suits", `{"clutch":"damp"}`, "unknown-word", "/clutch"},
		{"oil-suits", `{"purpose":"flush"}`, "unknown-word", "/purpose"},
		{"oil-suits", `{"purpose":"top-up","add":"3 L","due":"2.5 L"}`, "add-beyond-due", "/add"},
		{"oil-suits", `{"grades":"10W-40","coldest":"30 °C","hottest":"-10 °C"}`, "range-reversed", "/hottest"},
		{"oil-suits", `{"system":"nautical"}`, "unknown-word", "/system"},
	} {
		a, outcome := do(t, c.op, []byte(c.in))
		if outcome != core.Refused || a.Findings[0].Code != c.code || a.Findings[0].Where != c.where || a.Findings[0].Grade != "refuse" {
			t.Errorf("%s %s: %v %v, want %s at %s", c.op, c.in, outcome, a.Findings, c.code, c.where)
		}
	}
}
