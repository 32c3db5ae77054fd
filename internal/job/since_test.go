package job_test

import (
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What was used since the last job, by what went in then and comes out now: 0.6 L
// within 6,000 km is 0.1 L per 1,000 km.
func TestReplay_UseSince(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-650")
	last := &job.Past{Card: *c, History: job.History{Events: series(
		read("identify", "odometer", "", "10000"), read("pour-engine", "poured", "engine", "2.5 L"))}}
	for _, f := range []struct{ odometer, drained, rate, use string }{
		{"16000", "1.9 L", "0.1 L", "use.little"},
		{"12000", "1.9 L", "0.3 L", "use.usual"},
		{"11000", "1.9 L", "0.6 L", "use.undue"},
		{"10400", "1.9 L", "", ""}, // too short a way
		{"16000", "", "", ""},
		{"", "1.9 L", "", ""},
	} {
		var now []job.Event
		if f.odometer != "" {
			now = append(now, read("identify", "odometer", "", f.odometer))
		}
		if f.drained != "" {
			now = append(now, read("measure-engine", "drained", "engine", f.drained))
		}
		s, _ := replayedAfter(last, c, plan.Bench{}, series(now...))
		since := s.Oils[0].Since
		if (since != nil) != (f.rate != "") || since != nil && (since.Rate != f.rate || since.Use != f.use) {
			t.Errorf("%+v: %+v", f, since)
		}
	}
	if s, _ := replayed(c, plan.Bench{}, series(read("measure-engine", "drained", "engine", "1.9 L"))); s.Oils[0].Since != nil {
		t.Errorf("without a last job: %+v", s.Oils[0].Since)
	}
}
