package outlook_test

import (
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/outlook"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// on foresees what may be found fault with.
func on(today string, jobs ...job.Past) *outlook.Outlook {
	day, _ := date.ReadDay(today)
	return outlook.Foresee(jobs, nil, day, quantity.Metric)
}

func backs(o *outlook.Outlook) (list []finding.Finding) {
	for _, f := range o.Findings {
		if f.Code == "counter-back" {
			list = append(list, f)
		}
	}
	return list
}

// An odometer that goes backwards is told. What was ridden before it went back counts,
// and where it went below what stood at the change, nothing is told by distance. The
// card has 10 000 km and 12 months.
func TestForesee_OdometerBack(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	look := func(day, odometer string) job.Past {
		e := changed(c, day, odometer)
		e.Events = e.Events[:1] // read, and nothing poured
		return e
	}
	for _, f := range []struct {
		name     string
		jobs     []job.Past
		from, to string
		at, left string
		why      string
	}{
		{"a slip between", []job.Past{changed(c, "2026-01-01", "12000"), look("2026-03-01", "15000"), look("2026-04-01", "1600"), look("2026-05-01", "17000")},
			"15000 km", "1600 km", "22000 km", "5000 km", ""},
		{"a slip at the end, above the change", []job.Past{changed(c, "2026-01-01", "12000"), look("2026-04-01", "16000"), look("2026-05-01", "15000")},
			"16000 km", "15000 km", "22000 km", "6000 km", ""},
		{"a new instrument", []job.Past{changed(c, "2026-01-01", "12000"), look("2026-05-01", "300")},
			"12000 km", "300 km", "", "", "due.counter-back"},
		{"at the change itself", []job.Past{changed(c, "2025-01-01", "12000"), changed(c, "2026-01-01", "300"), look("2026-05-01", "1300")},
			"12000 km", "300 km", "10300 km", "9000 km", ""},
	} {
		o := on("2026-05-02", f.jobs...)
		d, list := engine(o), backs(o)
		if len(list) != 1 || list[0].Values["from"] != f.from || list[0].Values["to"] != f.to || list[0].Grade != finding.Doubt {
			t.Errorf("%s: told %+v", f.name, o.Findings)
		}
		first := func(texts []string) string { return append(texts, "")[0] }
		if first(d.At) != f.at || first(d.Left) != f.left || f.why != "" && d.Why != f.why {
			t.Errorf("%s: at %v, %v left, %s", f.name, d.At, d.Left, d.Why)
		}
		if d.Day == "" {
			t.Errorf("%s: no day", f.name)
		}
	}
}

// Whatever is read: each step backwards is told, and no reading makes the oil less due
// than it is without it, but one below what stood at the change, which says nothing.
func TestForesee_NeverMilder(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		start := date.Day(2025, 1, 1)
		counts := []int{rapid.IntRange(100, 50000).Draw(t, "at the change")}
		jobs := []job.Past{changed(c, date.DayText(start), strconv.Itoa(counts[0])+" km")}
		want, most := 0, counts[0]
		for n := range rapid.IntRange(1, 5).Draw(t, "readings") {
			count := rapid.IntRange(10, 80000).Draw(t, "odometer")
			e := changed(c, date.DayText(start+10*(n+1)), strconv.Itoa(count)+" km")
			e.Events = e.Events[:1]
			jobs = append(jobs, e)
			if count < counts[n] {
				want++
			}
			counts, most = append(counts, count), max(most, count)
		}
		o := on(date.DayText(start+100), jobs...)
		if got := len(backs(o)); got != want {
			t.Fatalf("%v: %d told", counts, got)
		}
		d := engine(o)
		if counts[len(counts)-1] < counts[0] {
			if d.At != nil || d.Why != "due.counter-back" {
				t.Fatalf("%v: at %v, %s", counts, d.At, d.Why)
			}
			return
		}
		if over := most - counts[0] - 10000; over >= 0 != (len(d.Left) == 0) || over > 1000 && d.Verdict != "due.over" && d.Verdict != "due.far-over" && d.Verdict != "due.twice-over" {
			t.Fatalf("%v: %s, %v left", counts, d.Verdict, d.Left)
		}
	})
}

// A level that rises is never little use, over whatever distance or none: it is fuel or
// water, and the way to the calculation stands beside it.
func TestForesee_Risen(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	band, _ := c.Circuits[0].Level.Band.Amount()
	rapid.Check(t, func(t *rapid.T) {
		left, found := rapid.IntRange(0, 100).Draw(t, "left"), rapid.IntRange(0, 150).Draw(t, "found")
		ridden := rapid.SampledFrom([]int{-1000, 0, 100, 499, 500, 4000, 20000}).Draw(t, "ridden")
		before := changed(c, "2025-01-01", "12000", job.Event{Kind: job.Reading, Step: "top-up-engine", What: "level", About: "engine", Value: strconv.Itoa(left) + " %"})
		after := changed(c, "2025-08-01", strconv.Itoa(12000+ridden), job.Event{Kind: job.Reading, Step: "level-found-engine", What: "level", About: "engine", Value: strconv.Itoa(found) + " %"})
		o := on("2025-08-02", before, after)
		rose := found > left
		if !rose {
			if len(o.Uses) > 0 && (o.Uses[0].Help != nil || o.Uses[0].Came != nil) {
				t.Fatalf("from %d to %d %%: %+v", left, found, o.Uses)
			}
			return
		}
		want := "use.risen"
		if found-left >= 13 { // an eighth of the band is what a reading shows
			want = "use.gained"
		}
		if len(o.Uses) != 1 || o.Uses[0].Use != want || o.Uses[0].Rate != "" || o.Uses[0].Trend != "" {
			t.Fatalf("from %d to %d %% of %v L: %+v", left, found, band.Base, o.Uses)
		}
		u := o.Uses[0]
		came, _ := quantity.Parse(quantity.Volume, u.Came[0], "L", quantity.Metric)
		if is := float64(found-left) / 100 * band.Base; came.Base < is*0.94 || came.Base > is*1.06 {
			t.Fatalf("%v came in, and %v is told", is, u.Came)
		}
		if u.Help == nil || u.Help.Op != "fuel" || u.Help.Given["rise"] != u.Came[0] || u.Help.Given["volume"] == "" {
			t.Fatalf("help %+v", u.Help)
		}
	})
}
