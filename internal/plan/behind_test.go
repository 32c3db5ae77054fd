package plan_test

import (
	"slices"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// moment is when a thing comes off and goes on again: places among the steps.
type moment struct{ off, on int }

// moments gives those of the fasteners, filters and strainers that come off for an oil
// of the day, by their ids. A panel, a filler and what a level is read through come off
// at other times.
func moments(c *card.Card, p *plan.Plan) map[string]moment {
	list := map[string]moment{}
	for i := range c.Bolts {
		id := c.Bolts[i].ID
		off := slices.IndexFunc(p.Steps, func(s plan.Step) bool { return slices.Contains(s.Opens, id) && s.Stage == plan.Drain })
		on := slices.IndexFunc(p.Steps, func(s plan.Step) bool { return slices.Contains(s.Closes, id) && s.Stage == plan.Close })
		if off >= 0 && on >= 0 {
			list[id] = moment{off, on}
		}
	}
	step := func(words ...string) int {
		return slices.IndexFunc(p.Steps, func(s plan.Step) bool { return slices.Contains(words, s.ID) })
	}
	for i := range c.Filters {
		id := c.Filters[i].ID
		off, on := step("filter-off-spin-on-"+id, "filter-off-cartridge-"+id, "filter-off-cap-"+id, "filter-off-centrifugal-"+id), step("prepare-spin-on-"+id, "prepare-cartridge-"+id, "prepare-centrifugal-"+id)
		if off >= 0 {
			list[id] = moment{off, on}
		}
	}
	for i := range c.Strain {
		id := c.Strain[i].ID
		if off := step("strainer-out-" + id); off >= 0 {
			list[id] = moment{off, step("strainer-in-" + id)}
		}
	}
	return list
}

// What is behind something comes off after it and goes on before it, whatever the two
// are and however long the chain is.
func TestMake_WhatIsInFrontComesOffFirst(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		of := moments(c, p)
		check := func(id, front string) {
			inner, comesOff := of[id]
			outer, also := of[front]
			if comesOff && also && (outer.off > inner.off || outer.on < inner.on || outer.off == inner.off && id != front && p.Card().Bolt(front) != nil && p.Card().Bolt(id) != nil) {
				t.Errorf("%s: %s is behind %s; they come off at steps %d and %d and go on at %d and %d of %v", c.ID, id, front, inner.off, outer.off, inner.on, outer.on, idsOf(p))
			}
		}
		for i := range c.Bolts {
			check(c.Bolts[i].ID, c.Bolts[i].Behind)
		}
		// What is in front of a filter or strainer is in front of all that holds it.
		held := func(id, front string) {
			check(id, front)
			for i := range c.Bolts {
				if b := &c.Bolts[i]; b.Holds == id && b.Purpose != card.LeaveAlone && b.Purpose != card.Panel {
					check(b.ID, front)
				}
			}
		}
		for i := range c.Filters {
			held(c.Filters[i].ID, c.Filters[i].Behind)
		}
		for i := range c.Strain {
			held(c.Strain[i].ID, c.Strain[i].Behind)
		}
	})
}

// What is in front of a strainer that is cleaned today comes off today, though the bench
// keeps the filter, and the volume due is the one with the filter.
func TestMake_WhatIsInFrontIsReached(t *testing.T) {
	c := plantest.Sample(t, "quillane-vastro-1010")
	for i := range c.Bolts {
		c.Bolts[i].Behind = map[string]string{"pan-plate": "can", "can": "guard"}[c.Bolts[i].ID]
	}
	c.Bolts = append(c.Bolts, card.Bolt{ID: "guard", Purpose: card.Panel, Circuit: "gearbox", Place: "plate under the pan"})
	kept := plan.Bench{KeepFilter: true, Circuits: []string{"engine"}}
	cleaned := kept
	cleaned.Also = []string{"mesh"}
	for _, tt := range []struct {
		bench plan.Bench
		off   bool
	}{{kept, false}, {cleaned, true}} {
		p, _ := plantest.Made(c, tt.bench)
		guard, filter, plate := at(p, "panel-off"), at(p, "filter-off-spin-on"), at(p, "open-strainer-cover")
		if tt.off && (guard < 0 || filter < guard || plate < filter) || !tt.off && (guard >= 0 || filter >= 0) {
			t.Errorf("%+v: %v", tt.bench, idsOf(p))
		}
		if due := p.Volume(c.Circuit("engine")); due.Known() && (due.Value == c.Circuit("engine").WithFilt.Value) != tt.off {
			t.Errorf("%+v: %+v is due", tt.bench, due)
		}
	}
}
