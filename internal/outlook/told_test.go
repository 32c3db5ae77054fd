package outlook_test

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/job"
	"tidysump/internal/outlook"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// told is what the odometer showed on a day.
func told(day string, km float64) due.OdometerReading {
	return due.OdometerReading{ID: "fact of " + day, Day: day, At: day + "T12:00:00.000Z", Km: km}
}

// withTold foresees from a change on 1 February 2026 at 12 000 km, and what was told since.
// The card has 10 000 km and 12 months.
func withTold(t *testing.T, today string, list ...due.OdometerReading) *outlook.Outlook {
	day, _ := date.ReadDay(today)
	c := plantest.Sample(t, "tessaly-corda-570")
	return outlook.Foresee([]job.Past{changed(c, "2026-02-01", "12000")}, list, day, quantity.Metric)
}

// What the odometer showed between two jobs counts like what was read in one.
func TestForesee_Told(t *testing.T) {
	o := withTold(t, "2026-06-10", told("2026-06-01", 19200))
	d := engine(o)
	if d.Why != "due.use-first" || d.Left[0] != "2800 km" || o.Readings != 2 || o.Last.ID != "fact of 2026-06-01" || o.Last.Texts[0] != "19200 km" {
		t.Errorf("%+v, last %+v", d, o.Last)
	}
	if o := withTold(t, "2026-06-10"); o.Last.ID != "" || o.Last.Day != "2026-02-01" || o.Last.Texts[0] != "12000 km" {
		t.Errorf("read in the job alone: last %+v", o.Last)
	}
}

// A bike on which no job was done has what was told of it, and nothing is due.
func TestForesee_ToldAlone(t *testing.T) {
	day, _ := date.ReadDay("2026-06-10")
	o := outlook.Foresee(nil, []due.OdometerReading{told("2026-06-01", 1000)}, day, quantity.US)
	if o.Last == nil || o.Last.Texts[0] != "621 mi" || len(o.Oils) > 0 || o.First != "" {
		t.Errorf("%+v, last %+v", o, o.Last)
	}
}

// Less than before is told where it was written, and one that is dated ahead, or on no day,
// counts for nothing.
func TestForesee_ToldOdd(t *testing.T) {
	o := withTold(t, "2026-06-10", told("2026-06-01", 1920))
	if list := backs(o); len(list) != 1 || list[0].Where != "/last" || list[0].Values["from"] != "12000 km" || list[0].Values["to"] != "1920 km" {
		t.Errorf("less than before: %+v", o.Findings)
	}
	later := withTold(t, "2026-06-10", told("2026-05-01", 1920), told("2026-06-01", 14000))
	if list := backs(later); len(list) != 1 || list[0].Where != "" {
		t.Errorf("less than before, and read again: %+v", later.Findings)
	}
	o = withTold(t, "2026-06-10", told("2026-07-01", 14000), told("June", 15000), told("2026-05-01", 0))
	if len(o.Findings) != 1 || o.Findings[0].Code != "dated-ahead" || o.Last.Texts[0] != "12000 km" {
		t.Errorf("ahead: %+v, last %+v", o.Findings, o.Last)
	}
}

// Of two readings of one day the later is the last, whichever came first in the list.
func TestForesee_ToldOnTheDayOfTheJob(t *testing.T) {
	before, after := told("2026-02-01", 11990), told("2026-02-01", 12010)
	before.At = "2026-02-01T08:00:00.000Z"
	for _, list := range [][]due.OdometerReading{{before, after}, {after, before}} {
		if o := withTold(t, "2026-02-02", list...); o.Last.Texts[0] != "12010 km" || len(o.Findings) != 0 {
			t.Errorf("last %+v, %+v", o.Last, o.Findings)
		}
	}
}

// Every sample that is due by distance or hours and by time has a picture as soon as it was
// changed; what it says is an estimate only where something is drawn as one, and agrees
// with what is told beside it.
func TestForesee_Plot(t *testing.T) {
	words := map[string]string{"plot.day-first": "due.time-first", "plot.count-first": "due.use-first"}
	seen := map[string]bool{}
	plantest.Samples(t, func(t *testing.T, c *card.Card, _ plan.Bench, _ *plan.Plan) {
		hours := job.Event{Kind: job.Reading, Step: "identify", What: plan.AskHours, Value: "20 h"}
		for _, since := range []int{0, 40, 200, 340, 700} {
			for _, daily := range []float64{2, 20, 60} {
				start := date.Day(2026, 2, 1)
				km := 12000 + daily*float64(since)
				list := []due.OdometerReading{told(date.DayText(start+since/2), (12000+km)/2), told(date.DayText(start+since), km)}
				o := outlook.Foresee([]job.Past{changed(c, "2026-02-01", "12000", hours)}, list, start+since, quantity.Imperial)
				for i := range o.Oils {
					d := &o.Oils[i]
					p := d.Plot
					both := (len(d.At) > 0 || d.Hours != "") && d.Day != "" && d.Changed != ""
					if both != (p != nil) && c.Interval.First == nil {
						t.Fatalf("%s after %d days: %+v", d.Circuit, since, d)
					}
					if p == nil {
						continue
					}
					seen[p.Word] = true
					drawn := len(p.Middle) > 0
					said := p.Word == "plot.day-first" || p.Word == "plot.count-first"
					if drawn != said || said != (len(p.Values) > 0) || (p.Word == "plot.passed") != (d.Grade >= int(due.Now)) {
						t.Fatalf("%d days at %v: %s, values %v, grade %d, drawn %v", since, daily, p.Word, p.Values, d.Grade, p.Middle)
					}
					if want := words[p.Word]; want != "" && d.Why != want && d.Why != "due.either-first" {
						t.Fatalf("%d days at %v: the picture says %s, the text %s", since, daily, p.Word, d.Why)
					}
					if len(p.Marks) == 0 {
						t.Fatalf("no count is marked: %+v", p)
					}
				}
			}
		}
	})
	for _, word := range []string{"plot.day-first", "plot.count-first", "plot.passed", "plot.no-pace"} {
		if !seen[word] {
			t.Errorf("no sample says %s", word)
		}
	}
}

// A reading more never makes an oil less urgent, and never moves where it is due.
func TestForesee_ToldMonotonic(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		start := date.Day(2026, 2, 1)
		wait := rapid.IntRange(1, 900).Draw(t, "days")
		ridden := rapid.IntRange(1, 30000).Draw(t, "ridden")
		jobs := []job.Past{changed(c, "2026-02-01", strconv.Itoa(12000))}
		without := engine(outlook.Foresee(jobs, nil, start+wait, quantity.Metric))
		with := engine(outlook.Foresee(jobs, []due.OdometerReading{told(date.DayText(start+wait), float64(12000+ridden))}, start+wait, quantity.Metric))
		if with.Grade < without.Grade || !slices.Equal(with.At, without.At) || with.Day != without.Day {
			t.Fatalf("after %d days and %d km: %+v, without %+v", wait, ridden, with, without)
		}
	})
}
