package plan_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// chartOf gives the chart's figure of the engine oil of a sample card, and what is needed,
// in air of that temperature.
func chartOf(t *testing.T, name, air string) (*plan.Plan, plan.Oil) {
	t.Helper()
	c, found := card.Read(specs.Cards()[name])
	checked, list := card.Accept(c)
	if checked == nil {
		t.Fatalf("%s: %v %v", name, found, list)
	}
	p, list := plan.Make(checked, plan.Bench{System: quantity.Metric, Outside: air})
	if p == nil {
		t.Fatalf("%s in %q: %v", name, air, list)
	}
	return p, p.Oils[0]
}

// The card's chart says which grade goes in for the air expected, it is the manual's, and
// what is needed is that grade.
func TestChart_ForTheAir(t *testing.T) {
	const name = "quillane-orsena-720.json"
	for air, want := range map[string]string{
		"10 to 40 °C": "SAE 15W-50",
		"-12 °C":      "SAE 10W-40",
		"-12–25":      "SAE 10W-40",
		"0 to 25":     "SAE 15W-50 or SAE 10W-40",
		"14 to 40":    "SAE 15W-50",
		"-10 to 40":   "none for all of this air",
		"-30":         "none for all of this air",
	} {
		p, o := chartOf(t, name, air)
		if o.Chart == nil || len(o.Chart.Texts) != 1 || o.Chart.Standing != card.FromManual || o.Chart.Source == "" || o.Chart.Page != "39" {
			t.Fatalf("%s: %+v", air, o.Chart)
		}
		got := plantest.Text(o.Chart.Texts[0], o.Chart.Values)
		if got != want || len(p.Findings) > 0 {
			t.Errorf("air of %s: %q, want %q; %v", air, got, want, p.Findings)
		}
		needed := plantest.Text(o.Need.Texts[0], o.Need.Values)
		if none := strings.HasPrefix(want, "none"); none == strings.HasPrefix(needed, want) {
			t.Errorf("air of %s: %q is needed, and the chart gives %q", air, needed, want)
		}
	}
	_, o := chartOf(t, name, "")
	if o.Chart == nil || o.Chart.Standing != card.Unknown || o.Chart.Lookup == "" || o.Rows == nil || o.Rows.Texts[0] != "SAE 15W-50: ≥ -5 °C; SAE 10W-40: -15…30 °C" {
		t.Errorf("air that is not known: %+v %+v", o.Chart, o.Rows)
	}
}

// Air that can't be read is told, and keeps no job from its plan.
func TestChart_UnreadAir(t *testing.T) {
	for _, air := range []string{"warm", "40 to -5", "900 °C"} {
		p, o := chartOf(t, "quillane-orsena-720.json", air)
		if len(p.Findings) != 1 || p.Findings[0].Code != "air-unread" || p.Findings[0].Where != "/bench/outside" || o.Chart.Standing != card.Unknown {
			t.Errorf("%s: %v %+v", air, p.Findings, o.Chart)
		}
	}
}

// A card without a chart has none in its plan, whatever the air.
func TestChart_None(t *testing.T) {
	for name, text := range specs.Cards() {
		if strings.Contains(string(text), `"chart"`) {
			continue
		}
		p, _ := chartOf(t, name, "5")
		if slices.ContainsFunc(p.Oils, func(o plan.Oil) bool { return o.Chart != nil || o.Rows != nil }) {
			t.Errorf("%s has no chart, and its plan one", name)
		}
	}
}
