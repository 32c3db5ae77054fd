package plan_test

import (
	"slices"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What says how tight a fastener gets, whether that is worth reading beforehand, and
// what it is turned with.
func TestMake_SheetOfAFastener(t *testing.T) {
	of := func(value float64, unit string) *card.Figure {
		return &card.Figure{Value: value, Unit: unit, Standing: card.Measured, Method: "by hand"}
	}
	torque, turn, size, unknown := of(25, "N·m"), of(0.75, "turn"), of(17, "mm"), &card.Figure{Standing: card.Unknown}
	for _, tt := range []struct {
		name   string
		bolt   card.Bolt
		by     plan.Measure
		listed bool
		tool   []string
	}{
		{"torque", card.Bolt{Purpose: card.DrainPlug, Drains: true, Drive: card.Hexagon, Size: size, Torque: torque}, plan.ByTorque, true, []string{"@drive.hexagon", "17 mm"}},
		{"nothing known", card.Bolt{Purpose: card.DrainPlug}, plan.ByTorque, true, nil},
		{"size not known", card.Bolt{Purpose: card.DrainPlug, Drive: card.SixLobe, Torque: torque}, plan.ByTorque, true, []string{"@drive.six-lobe", "@not-known"}},
		{"turn alone", card.Bolt{Purpose: card.FilterCanned, Holds: "filter", Drive: card.Strap, Turn: turn}, plan.ByTurn, true, []string{"@drive.strap"}},
		{"turn, torque said to be unknown", card.Bolt{Purpose: card.FilterCanned, Holds: "filter", Torque: unknown, Turn: turn}, plan.ByTurn, true, nil},
		{"both", card.Bolt{Purpose: card.FilterCanned, Holds: "filter", Torque: torque, Turn: turn}, plan.ByTorque, true, nil},
		{"by hand", card.Bolt{Purpose: card.FillerCap, Drive: card.Hand, Size: size}, plan.ByTorque, false, []string{"@drive.hand"}},
		{"panel by feel", card.Bolt{Purpose: card.Panel, Drive: card.Hexagon, Size: size}, plan.ByTorque, false, []string{"@drive.hexagon", "17 mm"}},
		{"panel with a torque", card.Bolt{Purpose: card.Panel, Drive: card.Hexagon, Torque: torque}, plan.ByTorque, true, []string{"@drive.hexagon", "@not-known"}},
		{"never touched", card.Bolt{Purpose: card.LeaveAlone, Torque: torque}, plan.ByTorque, false, nil},
		{"of an oil that stays", card.Bolt{Purpose: card.DrainPlug, Circuit: "gearbox", Torque: torque}, plan.ByTorque, false, nil},
	} {
		c := plantest.Sample(t, "tessaly-corda-570")
		c.Circuits = append(c.Circuits, card.Circuit{ID: "gearbox", Role: card.GearboxOil, EveryNth: 2})
		c.Filters[0].ID = "filter"
		if tt.bolt.ID = "one"; tt.bolt.Circuit == "" {
			tt.bolt.Circuit = "engine"
		}
		c.Bolts = []card.Bolt{tt.bolt}
		p, list := plantest.Made(c, plan.Bench{})
		if p == nil {
			t.Fatalf("%s: %v", tt.name, list)
		}
		b := p.Bolts[0]
		if b.By != tt.by || b.Listed != tt.listed || !slices.Equal(b.Tool, tt.tool) {
			t.Errorf("%s: by %s, listed %v, tool %q; want %s, %v, %q", tt.name, b.By, b.Listed, b.Tool, tt.by, tt.listed, tt.tool)
		}
	}
}

// A filter that is changed may be kept; one that is only cleaned is no filter to
// keep. It doesn't matter which oils are done today, nor that it is kept.
func TestMake_MayKeepFilter(t *testing.T) {
	for name, want := range map[string]bool{"tessaly-corda-570": true, "marrowick-lirro-140": false, "marrowick-pip-130": false, "brunnveld-halvar-940": true} {
		c := plantest.Sample(t, name)
		for _, b := range []plan.Bench{{}, {KeepFilter: true}, {Circuits: []string{c.Circuits[len(c.Circuits)-1].ID}}} {
			p, _ := plantest.Made(c, b)
			if p.MayKeepFilter != want {
				t.Errorf("%s, bench %+v: may keep a filter %v, want %v", name, b, p.MayKeepFilter, want)
			}
		}
	}
}
