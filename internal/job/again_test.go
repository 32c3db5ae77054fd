package job_test

import (
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// The next change is at a reading of the odometer where one was taken, else after a
// distance; a time goes with either, or stands alone.
func TestReplay_NextChange(t *testing.T) {
	distance := &card.Figure{Value: 6000, Unit: "km", Standing: card.Measured, Method: "habit"}
	time := &card.Figure{Value: 12, Unit: "months", Standing: card.Measured, Method: "habit"}
	odometer := []job.Event{read("identify", plan.AskOdometer, "", "12340 km")}
	for _, f := range []struct {
		name   string
		span   card.Span
		events []job.Event
		want   job.NextChange
	}{
		{"nothing known", card.Span{}, odometer, job.NextChange{}},
		{"no odometer", card.Span{Distance: distance, Time: time}, nil, job.NextChange{At: "6000 km", After: "12 months"}},
		{"both", card.Span{Distance: distance, Time: time}, odometer, job.NextChange{At: "18340 km", After: "12 months"}},
		{"distance alone", card.Span{Distance: distance}, odometer, job.NextChange{At: "18340 km"}},
		{"time alone", card.Span{Time: time}, odometer, job.NextChange{After: "12 months"}},
	} {
		c := plantest.Sample(t, bike)
		c.Interval = card.Interval{Span: f.span}
		s, list := replayed(c, plan.Bench{}, f.events)
		if s == nil {
			t.Fatalf("%s: %v", f.name, list)
		}
		if s.Change != f.want {
			t.Errorf("%s: %+v, want %+v", f.name, s.Change, f.want)
		}
	}
	// Finished, the time has its day: twelve months after the finish, by the calendar.
	finished := plantest.Sample(t, bike)
	finished.Interval = card.Interval{Span: card.Span{Time: time}}
	end := job.Event{ID: "end", Seq: 1, Kind: job.Finish, Time: "2026-02-28T10:00:00.000Z"}
	if s, _ := replayed(finished, plan.Bench{}, []job.Event{end}); s.Change.Day != "2027-02-28" {
		t.Errorf("finished: %+v", s.Change)
	}
	// In severe use it is half of that, as everywhere.
	c := plantest.Sample(t, bike)
	c.Interval = card.Interval{Span: card.Span{Distance: distance}}
	if s, _ := replayed(c, plan.Bench{Severe: true}, odometer); s.Change.At != "15340 km" {
		t.Errorf("severe use: at %s", s.Change.At)
	}
}
