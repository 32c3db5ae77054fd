package plan_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

func TestMake_StepsAreUniqueAndInOrder(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		seen := map[string]bool{}
		last := 0
		for _, s := range p.Steps {
			if seen[s.ID] {
				t.Fatalf("two steps %q", s.ID)
			}
			seen[s.ID] = true
			at := slices.Index(plan.Stages, s.Stage)
			if at < last {
				t.Fatalf("step %q of stage %s stands behind stage %s", s.ID, s.Stage, plan.Stages[last])
			}
			last = at
		}
	})
}

// tightened are the words of the steps that tighten a fastener.
var tightened = map[string]bool{"step.tighten": true, "step.tighten-several": true, "step.tighten-in-order": true,
	"step.filter-on-torque": true, "step.filter-on-turn": true, "step.filter-on-hand": true, "step.filter-close": true}

// What is opened is closed: every fastener with a step that opens it has one
// step that tightens it, and the number that the person is asked to count is
// the number of those tightened.
func TestMake_WhatIsOpenedIsTightened(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		if p.GetHome() {
			return // nothing is opened to drain
		}
		times := map[string]int{}
		pieces, count, counted := 0, "", 0
		for _, s := range p.Steps {
			switch {
			case tightened[s.Word]:
				id := boltID(c, s.ID)
				times[id]++
				if b := boltOf(c, id); b != nil {
					pieces += b.Number()
				} else {
					pieces++ // one that the card doesn't name
				}
			case s.Word == "step.count":
				count = s.Values["count"]
				counted++
			}
		}
		for _, s := range p.Steps {
			if id := boltID(c, s.ID); strings.HasPrefix(s.Word, "step.open-") && times[id] != 1 {
				t.Fatalf("%s is opened and tightened %d times", id, times[id])
			}
		}
		for id, n := range times {
			if n != 1 {
				t.Fatalf("%s is tightened %d times", id, n)
			}
		}
		if counted != 1 || count != strconv.Itoa(pieces) {
			t.Fatalf("the step says %q were opened (%d times); %d are tightened", count, counted, pieces)
		}
	})
}

// What must be left alone is never opened, and what lets out an oil of the day
// is.
func TestMake_OpensTheRightPlugs(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		opened := map[string]bool{}
		for _, s := range p.Steps {
			if strings.HasPrefix(s.Word, "step.open-") {
				opened[boltID(c, s.ID)] = true
			}
		}
		today := map[string]bool{}
		for _, o := range p.Oils {
			today[o.Circuit] = o.Today
		}
		for i, b := range c.Bolts {
			if p.Bolts[i].Leave && opened[b.ID] {
				t.Fatalf("%s is to be left alone and is opened", b.ID)
			}
			if b.Purpose == card.LeaveAlone && (opened[b.ID] || p.Bolts[i].Today) {
				t.Fatalf("%s is never for an oil change, and is opened", b.ID)
			}
			if b.Purpose == card.DrainPlug && b.Drains && today[b.Circuit] && !opened[b.ID] {
				t.Fatalf("%s lets out an oil of the day and is not opened", b.ID)
			}
		}
	})
}

// An oil has its steps just when it is done today.
func TestMake_EveryOilOfTheDayIsPoured(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, b plan.Bench, p *plan.Plan) {
		for _, o := range p.Oils {
			poured := 0
			for _, s := range p.Steps {
				if strings.HasPrefix(s.Word, "step.pour") && len(s.Asks) == 1 && s.Asks[0].About == o.Circuit {
					poured++
				}
			}
			want := 0
			if o.Today {
				want = 1
			}
			if poured != want {
				t.Fatalf("oil %q, today %v, has %d steps that pour it", o.Circuit, o.Today, poured)
			}
			if len(b.Circuits) > 0 && !b.GetHome && o.Today != slices.Contains(b.Circuits, o.Circuit) {
				t.Fatalf("oil %q, today %v, on the bench %v", o.Circuit, o.Today, b.Circuits)
			}
		}
	})
}

// The volume due today follows the filter: changed, it is the larger figure.
func TestMake_VolumeFollowsTheFilter(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for keep, want := range map[bool]string{false: "2.5 L", true: "2.3 L"} {
		p, _ := plantest.Made(c, plan.Bench{KeepFilter: keep})
		if got := p.Oils[0].Due.First(); got != want {
			t.Errorf("filter kept %v: due %s, want %s", keep, got, want)
		}
		if got := slices.ContainsFunc(p.Parts, func(i plan.Item) bool { return i.Word == "part.filter-spin-on" }); got == keep {
			t.Errorf("filter kept %v, and on the list of parts: %v", keep, got)
		}
	}
}

// A circuit whose figure for the filter is not known has no volume due: the
// other figure must not stand in for it.
func TestMake_NoFigureStandsInForAnother(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	c.Circuits[0].WithFilt = nil
	p, _ := plantest.Made(c, plan.Bench{})
	if due := p.Oils[0].Due; due.Standing != card.Unknown || len(due.Texts) > 0 || due.Lookup == "" {
		t.Errorf("due %+v, want unknown and where to look it up", due)
	}
	words := map[string]bool{}
	for _, s := range p.Steps {
		words[s.Word] = true
	}
	if !words["step.pour-unknown"] || words["step.pour"] || !words["step.tray-unknown"] {
		t.Errorf("steps %v, want to pour by the level and an unknown tray", words)
	}
	if len(p.Gaps) == 0 || p.Gaps[0].Word != "gap.volume" {
		t.Errorf("gaps %+v, want the volume", p.Gaps)
	}
}

func TestMake_BenchOfAnotherCard(t *testing.T) {
	c := plantest.Sample(t, "marrowick-pip-130")
	for _, f := range []struct {
		bench plan.Bench
		code  string
		where string
	}{
		{plan.Bench{System: "cubits"}, "unknown-word", "/bench/system"},
		{plan.Bench{Place: "moon"}, "unknown-word", "/bench/place"},
		{plan.Bench{Circuits: []string{"engine", "gearbox"}}, "unknown-id", "/bench/circuits/1"},
	} {
		p, list := plantest.Made(c, f.bench)
		if p != nil || len(list) != 1 || list[0].Code != f.code || list[0].Where != f.where {
			t.Errorf("bench %+v: plan %v, findings %v, want %s at %s", f.bench, p != nil, list, f.code, f.where)
		}
	}
}

// boltID is the id of the fastener that a step is about, or of the filter or
// strainer that nothing on the card holds; "" for none.
func boltID(c *card.Card, step string) string {
	var ids []string
	for _, b := range c.Bolts {
		ids = append(ids, b.ID)
	}
	for _, f := range c.Filters {
		ids = append(ids, f.ID)
	}
	for _, s := range c.Strain {
		ids = append(ids, s.ID)
	}
	for _, id := range ids {
		if strings.HasSuffix(step, "-"+id) {
			return id
		}
	}
	return ""
}

func boltOf(c *card.Card, id string) *card.Bolt {
	for i := range c.Bolts {
		if c.Bolts[i].ID == id {
			return &c.Bolts[i]
		}
	}
	return nil
}
