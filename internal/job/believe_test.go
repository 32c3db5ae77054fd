package job_test

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// told gives events their ids and places in the order given; times[i] is what the clock
// told at each, and its day is the phone's.
func told(times []string, parts ...job.Event) []job.Event {
	for i := range parts {
		parts[i].ID, parts[i].Seq, parts[i].Time, parts[i].Day = "e"+strconv.Itoa(i), i+1, times[i], times[i][:10]
	}
	return parts
}

func at(day string) string { return day + "T10:00:00.000Z" }

// changedBy is an oil change, step by step, at those times.
func changedBy(times ...string) []job.Event {
	return told(times,
		job.Event{Kind: job.Reading, Step: "identify", What: plan.AskOdometer, Value: "12000"},
		job.Event{Kind: job.Note, Text: "the clock of the phone"},
		job.Event{Kind: job.Reading, Step: "pour-engine", What: plan.AskPoured, About: "engine", Value: "2.5 L"},
		job.Event{Kind: job.Finish},
	)
}

func findings(s *job.State) (list []string) {
	for _, f := range s.Findings {
		if f.Code != "finished-without" {
			list = append(list, f.Code+" "+f.Where)
		}
	}
	return list
}

// A clock that jumps changes neither the order nor what counts: one note from 2031
// drags nothing there, and is shown as it was told.
func TestBelieve_ClockJumps(t *testing.T) {
	const day, later = "2026-11-25", "2031-01-01"
	c := plantest.Sample(t, bike)
	for _, f := range []struct {
		name             string
		started          string
		times            []string
		finished, poured string
		want             []string
	}{
		{"no jump", "", []string{at(day), at(day), at(day), at("2026-11-26")}, "2026-11-26", day, nil},
		{"a note from 2031", "", []string{at(day), at(later), at(day), at(day)}, day, day, []string{"clock-jumped /events/1/time"}},
		{"the pouring from 2031", "", []string{at(day), at(day), at(later), at(day)}, day, day, []string{"clock-jumped /events/2/time"}},
		{"the finish from 2031", at(day), []string{at(day), at(day), at(day), at(later)}, later, day, nil}, // nothing after it says otherwise
		{"from 1970 in between", at(day), []string{at(day), at("1970-01-01"), at(day), at(day)}, day, day, []string{"clock-jumped /events/1/time"}},
		{"from 1970, and nobody knows better", "", []string{at("1970-01-01"), at("1970-01-01"), at(day), at(day)}, day, day, nil},
		{"the first, and nothing before it", "", []string{at(later), at(day), at(day), at(day)}, day, day, []string{"clock-jumped /events/0/time"}},
		{"begun in 2031", at(later), []string{at(day), at(day), at(day), at(day)}, day, day, nil},
		{"two stretches", "", []string{at(later), at(day), at(later), at(day)}, day, day, []string{"clock-jumped /events/0/time", "clock-jumped /events/2/time"}},
	} {
		p, _ := plantest.Made(c, plan.Bench{})
		h := job.History{Started: f.started, Events: changedBy(f.times...)}
		s := job.Replay(p, &h, nil)
		if got := findings(s); !slices.Equal(got, f.want) {
			t.Errorf("%s: %v, want %v", f.name, got, f.want)
		}
		if s.Summary.Day != f.finished || s.Finished != at(f.finished) || s.Summary.Finished != s.Finished {
			t.Errorf("%s: finished %s, on %s; want %s", f.name, s.Finished, s.Summary.Day, f.finished)
		}
		if s.Notes[0].Time != f.times[1] {
			t.Errorf("%s: the note shows %s, the clock told %s", f.name, s.Notes[0].Time, f.times[1])
		}
		trace, _ := (&job.Past{Card: *c, History: h}).Recall()
		if got := dayText(trace.Changed["engine"]); got != f.poured {
			t.Errorf("%s: poured on %s, want %s", f.name, got, f.poured)
		}
	}
}

// A stretch of events that the clock told wrongly is told once.
func TestBelieve_Stretch(t *testing.T) {
	const day, later = "2026-11-25", "2031-01-01"
	note := job.Event{Kind: job.Note, Text: "n"}
	events := told([]string{at(day), at(later), at(later), at(day), at(day), at(day), at(later), at(day)}, note, note, note, note, note, note, note, note)
	s, _ := replayed(plantest.Sample(t, bike), plan.Bench{}, events)
	if got := findings(s); !slices.Equal(got, []string{"clock-jumped /events/1/time", "clock-jumped /events/6/time"}) {
		t.Errorf("%v", got)
	}
}

// The phone's own day counts, and one that no clock on Earth shows at that time doesn't.
func TestBelieve_Day(t *testing.T) {
	c := plantest.Sample(t, bike)
	for day, want := range map[string]string{
		"2026-11-24": "2026-11-24", "2026-11-25": "2026-11-25", "2026-11-26": "2026-11-26", "": "2026-11-25",
		"2026-11-27": "2026-11-25", "9999-12-31": "2026-11-25", "2026-02-30": "2026-11-25", "soon": "2026-11-25",
	} {
		events := changedBy(at("2026-11-25"), at("2026-11-25"), at("2026-11-25"), at("2026-11-25"))
		for i := range events {
			events[i].Day = day
		}
		s, _ := replayed(c, plan.Bench{}, events)
		trace, _ := (&job.Past{Card: *c, History: job.History{Events: events}}).Recall()
		if changed, read := dayText(trace.Changed["engine"]), dayText(trace.Read[due.Km].Day); s.Summary.Day != want || changed != want || read != want {
			t.Errorf("day %q: finished on %s, poured on %s, odometer read on %s; want %s", day, s.Summary.Day, changed, read, want)
		}
	}
}

// Whatever the clock did at three events of a job, when it was put right and told three
// more truly, the finish has its own time.
func TestBelieve_TheMost(t *testing.T) {
	p, _ := plantest.Made(plantest.Sample(t, bike), plan.Bench{})
	rapid.Check(t, func(t *rapid.T) {
		var events []job.Event
		want := job.Event{}
		wrong, many := 0, rapid.IntRange(3, 30).Draw(t, "events")
		for i := range many {
			e := job.Event{ID: "e" + strconv.Itoa(i), Seq: i + 1, Kind: job.Note, Text: "n", Time: at("2026-11-" + strconv.Itoa(10+i/2))}
			if wrong < 3 && i < many-3 && rapid.IntRange(0, 3).Draw(t, "jumps") == 0 {
				e.Time = at(rapid.SampledFrom([]string{"1970-01-01", "2026-11-09", "2031-05-05", "9999-12-31"}).Draw(t, "to"))
				wrong++
			} else {
				want = e
			}
			events = append(events, e)
		}
		finish := job.Event{ID: "f", Seq: len(events) + 1, Kind: job.Finish, Time: want.Time}
		s := job.Replay(p, &job.History{Events: append(events, finish)}, nil)
		if s.Finished != want.Time || len(s.Notes) != len(events) {
			t.Fatalf("%d of %d wrong: finished %s, want %s; %d notes", wrong, len(events), s.Finished, want.Time, len(s.Notes))
		}
	})
}

func dayText(day float64) string { return date.DayText(int(day)) }
