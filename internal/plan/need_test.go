package plan_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
)

// bareGrade finds a grade that the name of its standard doesn't stand before.
var bareGrade = regexp.MustCompile(`(^|[^E] |[^ \d])\d+W`)

// What a person reads of a grade says "SAE", and between choices stands a word and no
// slash. What is typed into a calculation, and the bare grades of a list, do not.
func TestMake_EveryGradeSaysSAE(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		var whole any
		if err := json.Unmarshal(wire.Write(p), &whole); err != nil {
			t.Fatal(err)
		}
		texts(whole, func(text string) {
			if bareGrade.MatchString(text) || strings.Contains(text, " / ") {
				t.Errorf("a person reads %q", text)
			}
		})
	})
}

// texts calls with each text in a JSON value, but those that are typed or bare.
func texts(value any, call func(string)) {
	switch v := value.(type) {
	case string:
		call(v)
	case []any:
		for _, one := range v {
			texts(one, call)
		}
	case map[string]any:
		for name, one := range v {
			if name != "grades" && name != "given" {
				texts(one, call)
			}
		}
	}
}

// The oil that is asked for as it is read: the usual grade first, and marked so.
func TestMake_NeedIsReadAsOnABottle(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for _, tt := range []struct {
		need card.OilNeed
		want string
	}{
		{card.OilNeed{Grades: []string{"10W-40"}}, "SAE 10W-40"},
		{card.OilNeed{Grades: []string{"75W90"}, Service: "GL-5"}, "SAE 75W-90 · API GL-5"},
		{card.OilNeed{Grades: []string{"30"}, Marks: []string{"MA"}, Service: "SG"}, "SAE 30 · JASO MA · API SG"},
		{card.OilNeed{Grades: []string{"10W-40", "20W-50"}}, "SAE 10W-40 (the usual one) or SAE 20W-50"},
		{card.OilNeed{Grades: []string{"10W-40", "15W-40", "20W-50"}, Marks: []string{"MA", "MA2"}},
			"SAE 10W-40 (the usual one), SAE 15W-40 or SAE 20W-50 · JASO MA or MA2"},
		{card.OilNeed{Grades: []string{"10W-40"}, Marks: []string{"MA", "MA1", "MA2"}, Service: "SL"}, "SAE 10W-40 · JASO MA, MA1 or MA2 · API SL"},
	} {
		tt.need.Standing, tt.need.Source = card.FromManual, "book"
		c.Circuits[0].Oil = tt.need
		p, list := plantest.Made(c, plan.Bench{})
		if p == nil {
			t.Fatalf("%+v: %v", tt.need, list)
		}
		need := p.Oils[0].Need
		if got := plantest.Text(need.First(), need.Values); got != tt.want {
			t.Errorf("%+v is read %q, want %q", tt.need, got, tt.want)
		}
		oil := p.Parts[0]
		if got := plantest.Text("@"+oil.Word, oil.Values); !strings.HasSuffix(got, ", "+tt.want) {
			t.Errorf("%+v is laid out as %q, want %q at its end", tt.need, got, tt.want)
		}
	}
}
