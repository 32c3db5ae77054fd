package core_test

import (
	"encoding/json"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// laidFigure is a figure of a plan, as far as the tests read it.
type laidFigure struct {
	Name, Standing, Method string
	Texts                  []string
}

// A plan made from a card with figures over it says what they are, and that they were
// decided or measured for this machine: of every sample card.
func TestLayOver_PlanOfEverySample(t *testing.T) {
	for name, text := range specs.Cards() {
		var c struct {
			Circuits []struct{ ID string }
			Bolts    []struct{ ID, Purpose, Circuit string }
		}
		if err := json.Unmarshal(text, &c); err != nil {
			t.Fatal(err)
		}
		engine := c.Circuits[0].ID
		figures := `{"what":"volume.` + engine + `","value":"1.9 L","standing":"measured","why":"poured from a jug"},
			{"what":"volume-filter.` + engine + `","value":"1.9 L","standing":"measured","why":"poured from a jug"},
			{"what":"grade.` + engine + `","value":"15W-50","standing":"decided","why":"the owner wants it"}`
		var plug string
		for _, b := range c.Bolts {
			if b.Purpose == "drain-plug" && b.Circuit == engine && plug == "" {
				plug = b.ID
				figures += `,{"what":"thread.` + plug + `","value":"M15x1.25","standing":"decided","why":"repair insert"},
					{"what":"torque.` + plug + `","value":"23 N·m","standing":"decided","why":"as the insert's maker says"}`
			}
		}
		var laid struct {
			Card     json.RawMessage
			Findings []struct{ Code, Where, Grade string }
		}
		must(t, "lay-over", slices.Concat([]byte(`{"figures":[`+figures+`],"card":`), text, []byte(`}`)), &laid)
		var p struct {
			Oils []struct {
				Circuit string
				Due     laidFigure
				Grade   laidFigure `json:"need"`
			}
			Bolts []struct {
				ID, Thread string
				Torque     laidFigure
				Size       laidFigure
			}
		}
		must(t, "plan", cardInput(laid.Card, `{}`), &p)
		due, grade := p.Oils[0].Due, p.Oils[0].Grade
		if due.Standing != "measured" || due.Method != "poured from a jug" || len(due.Texts) == 0 || due.Texts[0] != "1.9 L" {
			t.Errorf("%s: due is %v", name, due)
		}
		if grade.Standing != "decided" || grade.Method != "the owner wants it" {
			t.Errorf("%s: the grade is %v", name, grade)
		}
		for _, b := range p.Bolts {
			if b.ID == plug && (b.Thread != "M15x1.25" || b.Torque.Standing != "decided" || b.Torque.Texts[0] != "23 N·m" || b.Size.Standing != "unknown") {
				t.Errorf("%s: the plug is %+v", name, b)
			}
		}
	}
}

// A figure in another form than a figure's is told and keeps no other from lying over; a
// card that is refused is refused as it is for a plan.
func TestLayOver_Hostile(t *testing.T) {
	text := specs.Cards()["tessaly-corda-570.json"]
	var laid struct {
		Card     struct{ Bolts []struct{ Thread string } }
		Findings []struct{ Code, Where, Grade string }
	}
	must(t, "lay-over", slices.Concat([]byte(`{"figures":[5,{"what":7,"value":"x"},{"what":"thread.drain","value":"M15x1.5","standing":"decided","why":"insert"},{}],"card":`), text, []byte(`}`)), &laid)
	if laid.Card.Bolts[0].Thread != "M15x1.5" || len(laid.Findings) < 3 {
		t.Errorf("%+v", laid)
	}
	for _, f := range laid.Findings {
		if f.Grade == "refuse" {
			t.Errorf("%+v refuses", f)
		}
	}
	if out, outcome := core.Do("lay-over", []byte(`{"card":{"format":"x"},"figures":[]}`)); outcome != core.Refused {
		t.Errorf("%s", out)
	}
}
