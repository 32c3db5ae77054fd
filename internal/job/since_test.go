package job_test

import (
	"slices"
	"testing"

	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What was used since the last job, by what went in then and comes out now: 0.6 L
// within 6,000 km is 0.1 L per 1,000 km.
func TestReplay_UseSince(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
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
	// More came out than went in: that needs no odometer.
	for drained, use := range map[string]string{"2.6 L": "use.gained", "2.54 L": "use.risen", "2.501 L": "use.risen"} {
		s, _ := replayedAfter(last, c, plan.Bench{}, series(read("measure-engine", "drained", "engine", drained)))
		if since := s.Oils[0].Since; since == nil || since.Use != use || since.Rate != "" || since.Help == nil || since.Help.Given["volume"] != "2.5 L" {
			t.Errorf("%s out of 2.5 L: %+v", drained, since)
		}
	}
	// An odometer that shows less than in the last job is told where it is typed.
	for odometer, told := range map[string]bool{"9999": true, "10000": false, "1200 km": true} {
		s, _ := replayedAfter(last, c, plan.Bench{}, series(read("identify", "odometer", "", odometer)))
		if back := slices.ContainsFunc(s.Findings, func(f finding.Finding) bool { return f.Code == "counter-back" && f.Grade == finding.Doubt }); back != told {
			t.Errorf("%s after 10000 km: %+v", odometer, s.Findings)
		}
	}
	if s, _ := replayed(c, plan.Bench{}, series(read("measure-engine", "drained", "engine", "1.9 L"))); s.Oils[0].Since != nil {
		t.Errorf("without a last job: %+v", s.Oils[0].Since)
	}
}
