package job_test

import (
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// The sample takes 2.5 L. Once some of it is poured, the bottles are asked for the
// rest at the step that pours; the bottles looked at beforehand are asked for all.
func TestReplay_HelpsAskForTheRest(t *testing.T) {
	c := plantest.Sample(t, bike)
	for _, f := range []struct {
		poured, left, pouring string
	}{
		{"", "", ""},
		{"1.4 L", "1.1 L", "job.poured.left"},
		{"2.5 L", "", "job.poured.all"},
		{"2.6 L", "", "job.poured.all"},
	} {
		var events []job.Event
		if f.poured != "" {
			events = series(read("pour-engine", plan.AskPoured, "engine", f.poured))
		}
		s, _ := replayed(c, plan.Bench{}, events)
		if s.Oils[0].Pouring != f.pouring {
			t.Errorf("%s poured: %q, want %q", f.poured, s.Oils[0].Pouring, f.pouring)
		}
		if f.left == "" {
			if len(s.Helps) > 0 {
				t.Errorf("%s poured: helps %+v, want none", f.poured, s.Helps)
			}
			continue
		}
		if len(s.Helps) != 1 || s.Helps[0].Step != "pour-engine" || s.Helps[0].Op != "bottles" || s.Helps[0].Given["need"] != f.left {
			t.Errorf("%s poured: helps %+v, want %s", f.poured, s.Helps, f.left)
		}
	}
	// What is due is not known: then nothing says what is left.
	c.Circuits[0].WithFilt = nil
	s, _ := replayed(c, plan.Bench{}, series(read("pour-unknown-engine", plan.AskPoured, "engine", "1 L")))
	if s.Oils[0].Pouring != "job.poured" || len(s.Helps) > 0 {
		t.Errorf("due is not known: %q, helps %+v", s.Oils[0].Pouring, s.Helps)
	}
}

// The plan's own figures are not changed by what the job knows.
func TestReplay_HelpsLeaveThePlan(t *testing.T) {
	c := plantest.Sample(t, bike)
	p, _ := plantest.Made(c, plan.Bench{})
	job.Replay(p, &job.History{Events: series(read("pour-engine", plan.AskPoured, "engine", "1.4 L"))}, nil)
	for _, h := range p.Step("pour-engine").Helps {
		if h.Op == "bottles" && h.Given["need"] != "2.5 L" {
			t.Errorf("the plan asks for %s", h.Given["need"])
		}
	}
}
