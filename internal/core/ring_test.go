package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/core"
)

type ringAnswer struct {
	OK struct {
		Verdict string
		Rings   []struct {
			ID, Series, Verdict string
			Texts               []string
			Figures             []struct {
				Name      string
				Texts     []string
				Low, High float64
			}
		}
		Notes []struct{ Code, Grade string }
	}
	Findings []struct{ Code, Where, Grade string }
}

func runRing(t *testing.T, in string) (a ringAnswer) {
	t.Helper()
	if err := json.Unmarshal(core.Call("o-ring", []byte(in)), &a); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestORing(t *testing.T) {
	for _, f := range []struct {
		in, verdict, first, lies string
	}{
		{`{"inside":"0.489 in","section":"0.070 in","accuracy":"0.05 mm"}`, "ring-found.several", "AS568-014", "ring.fits"},
		{`{"inside":"16.4 mm","section":"2.2 mm","accuracy":"0.05 mm"}`, "ring-found.one", "AS568-908", "ring.fits"},
		{`{"outside":"30.6 mm","section":"3.1 mm"}`, "ring-found.several", "G25", "ring.fits"},
		// What lies wrong isn't told where something lies better.
		{`{"inside":"25 mm","section":"3.5 mm","groove":"25.6 mm","depth":"2.8 mm"}`, "ring-found.several", "25×3.5", "ring.suits"},
		{`{"inside":"25 mm","section":"3.5 mm","groove":"40 mm"}`, "ring-found.wrong", "25×3.5", "ring.wrong"},
		{`{"inside":"25 mm","section":"11 mm"}`, "ring-found.none", "", ""},
	} {
		a := runRing(t, f.in)
		first, lies := "", ""
		for _, r := range a.OK.Rings {
			if first == "" {
				first, lies = r.ID, r.Verdict
			}
			if f.verdict != "ring-found.wrong" && r.Verdict == "ring.wrong" {
				t.Errorf("%s: %s lies wrong", f.in, r.ID)
			}
		}
		if a.OK.Verdict != f.verdict || first != f.first || lies != f.lies {
			t.Errorf("%s: %+v", f.in, a)
		}
		said := map[string]bool{}
		for _, n := range a.OK.Notes {
			said[n.Code] = true
		}
		if !said["ring-used"] || !said["ring-material"] || said["ring-none"] != (f.first == "") {
			t.Errorf("%s: %v", f.in, said)
		}
	}
}

// A ring that may hang loose says so by its figure: no range reads "-1–3".
func TestORing_Loose(t *testing.T) {
	a := runRing(t, `{"inside":"25 mm","section":"3.5 mm","groove":"25 mm","accuracy":"0.1 mm"}`)
	if r := a.OK.Rings[0]; r.Verdict != "ring.unsure" || r.Figures[0].Low >= 0 || !strings.Contains(r.Figures[0].Texts[0], "…") {
		t.Errorf("%+v", r)
	}
	if a = runRing(t, `{"inside":"25 mm","section":"3.5 mm","system":"us"}`); !strings.HasSuffix(a.OK.Rings[0].Texts[0], " in") {
		t.Errorf("for the US: %+v", a.OK.Rings[0])
	}
}

func TestORing_Refuses(t *testing.T) {
	for _, f := range []struct{ in, code, where string }{
		{`{"section":"3 mm"}`, "missing", "/inside"},
		{`{"inside":"25 mm"}`, "missing", "/section"},
		{`{"outside":"5 mm","section":"3 mm"}`, "ring-closed", "/outside"},
		{`{"inside":"25 N·m","section":"3 mm"}`, "", "/inside"},
		{`{"inside":"2 m","section":"3 mm"}`, "not-believable", "/inside"},
	} {
		a := runRing(t, f.in)
		if len(a.Findings) != 1 || a.Findings[0].Where != f.where || f.code != "" && a.Findings[0].Code != f.code {
			t.Errorf("%s: %+v", f.in, a.Findings)
		}
	}
	a := runRing(t, `{"inside":"25 mm","outside":"40 mm","section":"3 mm"}`)
	if len(a.OK.Notes) == 0 || a.OK.Notes[0].Code != "ring-measures-differ" || a.OK.Notes[0].Grade != "doubt" {
		t.Errorf("what was measured doesn't agree: %+v", a.OK.Notes)
	}
}
