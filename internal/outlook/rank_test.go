package outlook_test

import (
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// Of a bike with three oils only the engine's was ever changed: nothing is known of
// the others, and it is the most urgent.
func TestForesee_Rank(t *testing.T) {
	c := plantest.Sample(t, "brunnveld-halvar-940")
	c.Interval.First = nil
	o := foresee(t, "2027-12-01", changed(c, "2026-06-01", "12000"))
	if o.First != "engine" || o.Severe {
		t.Errorf("first is %q, severe %v", o.First, o.Severe)
	}
	for i := range o.Oils {
		d := &o.Oils[i]
		if d.Known != (d.Circuit == "engine") {
			t.Errorf("%s: known %v, changed %q, at %v, day %q", d.Circuit, d.Known, d.Changed, d.At, d.Day)
		}
		if d.Circuit != "engine" && d.Order <= engine(o).Order {
			t.Errorf("%s %q stands before the engine's oil %q", d.Circuit, d.Order, engine(o).Order)
		}
	}
	// The gearbox's oil was changed with the one before.
	gearbox := job.Event{Kind: job.Done, Step: "pour-all-gearbox"}
	all := changed(c, "2025-06-01", "9000", gearbox)
	all.Bench = plan.Bench{Circuits: []string{"engine", "gearbox"}}
	o = foresee(t, "2026-06-15", all, changed(c, "2026-06-01", "12000"))
	for i := range o.Oils {
		if d := &o.Oils[i]; d.Known != (d.Circuit != "final") {
			t.Errorf("%s: known %v", d.Circuit, d.Known)
		}
	}
}

// The more urgent comes first, and of equals what is to be looked at earlier.
func TestForesee_Order(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	c.Interval.First = nil
	over := engine(foresee(t, "2027-12-01", changed(c, "2026-06-01", "12000")))
	fresh := engine(foresee(t, "2026-06-02", changed(c, "2026-06-01", "12000")))
	later := engine(foresee(t, "2026-06-03", changed(c, "2026-06-02", "12000")))
	never := engine(foresee(t, "2026-06-03", job.Past{Card: *c}))
	list := []string{over.Order, fresh.Order, later.Order, never.Order}
	for i := 1; i < len(list); i++ {
		if list[i-1] >= list[i] {
			t.Errorf("%q does not stand before %q", list[i-1], list[i])
		}
	}
}

// How the bike is used is what its newest job says.
func TestForesee_UsedHard(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	before, newest := changed(c, "2025-06-01", "9000"), changed(c, "2026-06-01", "12000")
	before.Bench.Severe = true
	if o := foresee(t, "2026-06-02", before, newest); o.Severe {
		t.Error("used hard once, and no more")
	}
	newest.Bench.Severe = true
	if o := foresee(t, "2026-06-02", before, newest); !o.Severe {
		t.Error("used hard, and not said")
	}
}
