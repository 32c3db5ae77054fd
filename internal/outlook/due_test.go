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

// changed is a job of a bike in which its first oil was poured, at that odometer.
func changed(c *card.Card, day, odometer string, more ...job.Event) job.Past {
	id := c.Circuits[0].ID
	e := job.Past{Card: *c, History: job.History{Events: append([]job.Event{
		{Kind: job.Reading, Step: "identify", What: plan.AskOdometer, Value: odometer},
		{Kind: job.Reading, Step: "pour-" + id, What: plan.AskPoured, About: id, Value: "2.5 L"},
	}, more...)}}
	for n := range e.Events {
		e.Events[n].ID, e.Events[n].Time = strconv.Itoa(n), day+"T10:00:0"+strconv.Itoa(n)+".000Z"
	}
	return e
}

func foresee(t interface{ Fatalf(string, ...any) }, today string, jobs ...job.Past) *outlook.Outlook {
	day, ok := date.ReadDay(today)
	o := outlook.Foresee(jobs, nil, day, quantity.Metric)
	if !ok || len(o.Findings) > 0 {
		t.Fatalf("%s: findings %+v", today, o.Findings)
	}
	return o
}

func engine(o *outlook.Outlook) *outlook.DueOil { return &o.Oils[0] }

// The card has 10 000 km and 12 months. At 8 km a day the date comes first; at 60 km
// a day the odometer does, after 167 days, or 111 to 333 at half as much more or less.
func TestForesee_WhatComesFirst(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	slow := engine(foresee(t, "2026-06-10", changed(c, "2025-06-01", "12000"), changed(c, "2026-06-01", "15000")))
	if slow.Why != "due.time-first" || slow.Day != "2027-06-01" || slow.From != "" || slow.At[0] != "25000 km" || slow.Remind != "2027-06-01" {
		t.Errorf("slow: %+v", slow)
	}
	fast := engine(foresee(t, "2026-06-10", changed(c, "2026-02-01", "12000"), changed(c, "2026-06-01", "19200")))
	if fast.Why != "due.use-first" || fast.From != "2026-09" || fast.To != "2027-04" || fast.Remind != "2026-11-14" {
		t.Errorf("fast: %+v", fast)
	}
	unread := changed(c, "2026-06-01", "15000")
	unread.Events = unread.Events[1:]
	if d := engine(foresee(t, "2026-06-10", changed(c, "2025-06-01", "12000"), unread)); d.Why != "due.no-odometer" || d.At != nil {
		t.Errorf("odometer not read: %+v", d)
	}
	one := engine(foresee(t, "2026-06-10", changed(c, "2026-06-01", "15000")))
	if one.Why != "due.pace-unknown" || one.From != "" || one.At[0] != "25000 km" {
		t.Errorf("one reading: %+v", one)
	}
}

// Overdue by distance, by time, and what is said of it.
func TestForesee_Verdicts(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	look := func(odometer string) job.Past {
		e := changed(c, "2026-06-10", odometer)
		e.Events = e.Events[:1] // read, and nothing poured
		return e
	}
	for _, f := range []struct{ odometer, today, verdict, by string }{
		{"13000", "2026-06-11", "due.not-yet", ""},
		{"21100", "2026-06-11", "due.soon", ""},
		{"22000", "2026-06-11", "due.now", "0 km"},
		{"23500", "2026-06-11", "due.over", "1500 km"},
		{"28000", "2026-06-11", "due.far-over", "6000 km"},
		{"33000", "2026-06-11", "due.twice-over", "11000 km"},
		{"13000", "2027-05-03", "due.soon", ""},
		{"13000", "2027-06-02", "due.now", "@due.days"},
		{"13000", "2027-09-01", "due.over", "@due.days"},
	} {
		d := engine(foresee(t, f.today, changed(c, "2026-06-01", "12000"), look(f.odometer)))
		if d.Verdict != f.verdict || d.Values["by"] != f.by {
			t.Errorf("%s km on %s: %s by %q, want %s by %q", f.odometer, f.today, d.Verdict, d.Values["by"], f.verdict, f.by)
		}
		if d.ChangedAt[0] != "12000 km" {
			t.Errorf("a look without pouring began the interval anew: %v", d.ChangedAt)
		}
	}
}

// By what is ridden it is due before anybody reads the odometer again.
func TestForesee_Likely(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	d := engine(foresee(t, "2026-12-20", changed(c, "2026-02-01", "12000"), changed(c, "2026-06-01", "19200")))
	if d.Verdict != "due.likely" || d.From != "2026-12" {
		t.Errorf("%+v", d)
	}
}

// An oil with an interval of its own is due by that alone, whatever the engine's oil was
// changed for since; its first service may be its own too.
func TestForesee_OwnInterval(t *testing.T) {
	c := *plantest.Sample(t, "quillane-vastro-1010")
	c.Circuits = slices.Clone(c.Circuits)
	at := slices.IndexFunc(c.Circuits, func(r card.Circuit) bool { return r.EveryNth > 1 })
	oil := &c.Circuits[at]
	km := func(v float64) *card.Figure {
		return &card.Figure{Value: v, Unit: "km", Standing: card.FromManual, Source: "book"}
	}
	oil.Interval = &card.Interval{Span: card.Span{Distance: km(40000)}}
	both := func(day, odometer string) job.Past {
		all := changed(&c, day, odometer, job.Event{Kind: job.Reading, Step: "pour-all-" + oil.ID, What: plan.AskPoured, About: oil.ID, Value: "0.5 L"})
		all.Bench.Circuits = []string{c.Circuits[0].ID, oil.ID}
		return all
	}
	due := func(jobs ...job.Past) *outlook.DueOil { return &foresee(t, "2026-06-10", jobs...).Oils[at] }
	d := due(both("2025-06-01", "12000"), changed(&c, "2026-06-01", "19000"))
	if len(d.At) == 0 || d.At[0] != "52000 km" || d.Day != "" || len(d.Intervals) != 1 || d.Intervals[0].Texts[0] != "40000 km" {
		t.Errorf("%+v", d)
	}
	oil.Interval.First = &card.Span{Distance: km(1000)}
	if d := due(both("2026-06-01", "40")); len(d.At) == 0 || d.At[0] != "1000 km" {
		t.Errorf("first: %+v", d)
	}
}

// An oil that is due at each second change of the engine's, changed once together
// with it and once left out, is due with the next.
func TestForesee_EveryNth(t *testing.T) {
	c := *plantest.Sample(t, "quillane-vastro-1010")
	c.Circuits = slices.Clone(c.Circuits)
	at := slices.IndexFunc(c.Circuits, func(r card.Circuit) bool { return r.EveryNth > 1 })
	other, each := c.Circuits[at].ID, c.Circuits[at].EveryNth
	if each < 2 {
		t.Fatalf("the card has no oil of every nth change: %+v", c.Circuits)
	}
	all := changed(&c, "2025-06-01", "12000", job.Event{Kind: job.Reading, Step: "pour-all-" + other, What: plan.AskPoured, About: other, Value: "0.5 L"})
	all.Bench.Circuits = []string{c.Circuits[0].ID, other}
	oil := func(o *outlook.Outlook) *outlook.DueOil {
		return &o.Oils[slices.IndexFunc(o.Oils, func(d outlook.DueOil) bool { return d.Circuit == other })]
	}
	interval, _ := c.Interval.Distance.Amount()
	km := func(v float64) string { return quantity.Number(v, 7) + " km" }
	if got := oil(foresee(t, "2025-06-02", all)); got.At[0] != km(12000+float64(each)*interval.Base) {
		t.Errorf("at first due at %v", got.At)
	}
	if got := oil(foresee(t, "2026-06-02", all, changed(&c, "2026-06-01", "16000"))); got.At[0] != km(16000+float64(each-1)*interval.Base) {
		t.Errorf("after one change of the engine's due at %v", got.At)
	}
	never := oil(foresee(t, "2026-06-02", changed(&c, "2026-06-01", "16000")))
	if never.Verdict != "due.no-record" || never.At != nil {
		t.Errorf("without a record %+v", never)
	}
}

// Severe use takes the card's own interval, else half of the usual.
func TestForesee_Severe(t *testing.T) {
	for id, want := range map[string][]string{"tessaly-corda-570": {"17000 km", "2026-12-01", "@method.severe-half"}, "marrowick-tamber-95": {"13000 km", "2026-09-01", ""}} {
		e := changed(plantest.Sample(t, id), "2026-06-01", "12000")
		e.Bench.Severe = true
		d := engine(foresee(t, "2026-06-02", e))
		if d.At[0] != want[0] || d.Day != want[1] || d.Intervals[0].Method != want[2] {
			t.Errorf("%s: %+v, want %v", id, d, want)
		}
	}
}

// A new bike of which the first entry is at 40 km has its first service at 500 km.
func TestForesee_FirstService(t *testing.T) {
	c := plantest.Sample(t, "marrowick-tamber-95")
	d := engine(foresee(t, "2026-06-02", changed(c, "2026-06-01", "40")))
	if d.At[0] != "500 km" || d.Day != "2026-07-01" {
		t.Errorf("first service at %v, by %s", d.At, d.Day)
	}
	d = engine(foresee(t, "2026-06-12", changed(c, "2026-06-01", "40"), changed(c, "2026-06-11", "490")))
	if d.At[0] != "2490 km" {
		t.Errorf("after the first service due at %v", d.At)
	}
}

// By hours where the card counts them.
func TestForesee_Hours(t *testing.T) {
	c := plantest.Sample(t, "skarvald-kettra-290")
	e := changed(c, "2026-06-01", "900", job.Event{Kind: job.Reading, Step: "identify", What: plan.AskHours, Value: "31.5 h"})
	d := engine(foresee(t, "2026-06-02", e))
	if d.Hours != "46.5 h" || d.Day != "2026-12-01" || d.At != nil {
		t.Errorf("%+v", d)
	}
}

// From 90 % down to 50 % of a band of 0.5 L in 4 000 km: 0.05 L per 1 000 km. The
// next time 0.6 of the band: three times that.
func TestForesee_Uses(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	band, _ := c.Circuits[0].Level.Band.Amount()
	level := func(step, value string) job.Event {
		return job.Event{Kind: job.Reading, Step: step, What: plan.AskLevel, About: "engine", Value: value}
	}
	full := level("top-up-engine", "90 %")
	o := foresee(t, "2026-06-02", changed(c, "2025-01-01", "12000", full),
		changed(c, "2025-08-01", "16000", level("level-found-engine", "50 %"), full),
		changed(c, "2026-06-01", "18000", level("level-found-engine", "0 %"), full))
	if len(o.Uses) != 2 || o.Uses[1].Trend != "use-trend.doubled" || o.Uses[0].Trend != "" || o.Uses[1].Method != "@method.use-levels" {
		t.Fatalf("uses %+v", o.Uses)
	}
	for n, want := range []float64{0.4 * band.Base / 4, 0.9 * band.Base / 2} {
		if got := o.Uses[n].Rate; got != quantity.Number(float64(int(want*100+0.5))/100, 2)+" L" {
			t.Errorf("use %d is %s, want %v", n, got, want)
		}
	}
	drained := job.Event{Kind: job.Reading, Step: "measure-engine", What: plan.AskDrained, About: "engine", Value: "1.3 L"}
	o = foresee(t, "2026-06-02", changed(c, "2025-01-01", "12000"), changed(c, "2026-06-01", "16000", drained))
	if len(o.Uses) != 1 || o.Uses[0].Rate != "0.3 L" || o.Uses[0].Use != "use.usual" || o.Uses[0].Method != "@method.use-volumes" {
		t.Errorf("2.5 L in, 1.3 L out after 4000 km: %+v", o.Uses)
	}
}

// The same record is never less urgent on a later day, nor with more on the odometer
// of the same day; a later change is never due earlier.
func TestForesee_Monotonic(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		start := date.Day(2025, 1, 1)
		first := rapid.IntRange(100, 90000).Draw(t, "odometer")
		ridden := rapid.IntRange(0, 30000).Draw(t, "ridden")
		days := rapid.IntRange(0, 900).Draw(t, "days")
		wait := rapid.IntRange(0, 900).Draw(t, "wait")
		entry := func(day, km int) job.Past { return changed(c, date.DayText(day), strconv.Itoa(km)+" km") }
		jobs := []job.Past{entry(start, first), entry(start+days, first+ridden)}
		now, later := start+days, start+days+wait
		a := engine(foresee(t, date.DayText(now), jobs...))
		b := engine(foresee(t, date.DayText(later), jobs...))
		if b.Grade < a.Grade {
			t.Fatalf("grade %d, and %d days later %d", a.Grade, wait, b.Grade)
		}
		if a.Day > date.DayText(date.AddMonths(now, 12)) || a.Grade > int(due.Likely) {
			t.Fatalf("changed today and %+v", a)
		}
		c := engine(foresee(t, date.DayText(later), jobs[0], entry(later, first+ridden)))
		if c.Day < a.Day || c.At[0] != a.At[0] {
			t.Fatalf("the later change is due %s %v, the earlier %s %v", c.Day, c.At, a.Day, a.At)
		}
	})
}

// A job whose card can't be used is reported, and the others count.
func TestForesee_BadJob(t *testing.T) {
	good := changed(plantest.Sample(t, "tessaly-corda-570"), "2026-06-01", "12000")
	bad := good
	bad.Card.Version = 9
	day, _ := date.ReadDay("2026-06-02")
	o := outlook.Foresee([]job.Past{bad, good}, nil, day, quantity.Metric)
	if len(o.Findings) != 1 || o.Findings[0].Where != "/jobs/0/card/version" || engine(o).Changed != "2026-06-01" {
		t.Errorf("%+v", o)
	}
}
