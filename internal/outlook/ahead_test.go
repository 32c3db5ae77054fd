package outlook_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/outlook"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// Whatever the clocks of the phones told: what is dated after today is not believed and
// told, no due date is counted from it, and the order of the jobs decides nothing of
// which change was the last.
func TestForesee_DatedAhead(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	const today = "2026-11-29"
	now, _ := date.ReadDay(today)
	rapid.Check(t, func(t *rapid.T) {
		var jobs []job.Past
		last, ahead := "", 0
		for range rapid.IntRange(1, 5).Draw(t, "jobs") {
			day := rapid.SampledFrom([]string{"2024-03-01", "2025-05-01", "2026-07-01", "2026-11-28", today, "2026-11-30", "2031-01-01", "9999-12-31"}).Draw(t, "day")
			odometer := "12000"
			if day > today {
				odometer = "90000" // nobody has read that yet
				ahead++
			} else if day > last {
				last = day
			}
			jobs = append(jobs, changed(c, day, odometer))
		}
		o := outlook.Foresee(jobs, nil, now, quantity.Metric)
		told := 0
		for _, f := range o.Findings {
			if f.Code == "dated-ahead" && f.Grade == finding.Doubt && f.Values["day"] > today {
				told++
			}
		}
		if told != ahead || len(o.Findings) != ahead {
			t.Fatalf("%d jobs are dated ahead, findings %+v", ahead, o.Findings)
		}
		oil := engine(o)
		if oil.Changed != last {
			t.Fatalf("changed on %q, want %q", oil.Changed, last)
		}
		// The card has 12 months.
		if day, _ := date.ReadDay(last); last != "" && oil.Day != date.DayText(date.AddMonths(day, 12)) {
			t.Fatalf("changed on %s, and due on %s", last, oil.Day)
		}
		if last != "" && (len(oil.Left) == 0 || oil.Left[0] != "10000 km") {
			t.Fatalf("at 12,000 km since %s, and left are %q", last, oil.Left)
		}
	})
}

// One note of 2031 in the midst of a change moves nothing.
func TestForesee_ClockJumped(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	p := changed(c, "2026-06-01", "12000", job.Event{Kind: job.Note, Text: "n"}, job.Event{Kind: job.Finish})
	for n := range p.Events {
		p.Events[n].Seq = n + 1
	}
	want := engine(foresee(t, "2026-11-29", p)).Day
	for n := range p.Events {
		jumped := p
		jumped.Events = slices.Clone(p.Events)
		jumped.Events[n].Time = "2031-01-01T10:00:00.000Z"
		day, _ := date.ReadDay("2026-11-29")
		if got := engine(outlook.Foresee([]job.Past{jumped}, nil, day, quantity.Metric)).Day; got != want || !strings.HasPrefix(want, "2027-0") {
			t.Errorf("event %d of 2031: due on %s, want %s", n, got, want)
		}
	}
}
