package job_test

import (
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/job"
	"tidysump/internal/outlook"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// What happens on the way home is no oil change: whatever is written down, no interval
// begins anew, nothing is compared with a volume due, and the record says what it was.
func TestReplay_GetHomeIsNoOilChange(t *testing.T) {
	t.Run("whatever is written down", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			c := plantest.Card(t)
			b := plantest.Bench(t, c)
			b.GetHome = true
			p, list := plantest.Made(c, b)
			if p == nil {
				t.Fatal(list)
			}
			noOilChange(t, c, b, p, drawEvents(t, p, "e"))
		})
	})
	topped := 0
	plantest.Samples(t, func(t *testing.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		if !b.GetHome {
			return
		}
		events := poursAll(p)
		if poured := noOilChange(t, c, b, p, events); poured != len(events) {
			t.Fatalf("%d oils were topped up, and the record has %d", len(events), poured)
		}
		topped += len(events)
	})
	if topped == 0 {
		t.Error("no plan of a sample asks what was topped up on the way home")
	}
}

// poursAll answers each question of a plan that asks how much went in.
func poursAll(p *plan.Plan) []job.Event {
	var events []job.Event
	for _, s := range p.Steps {
		for _, a := range s.Asks {
			if a.What == plan.AskPoured {
				events = append(events, job.Event{ID: "e" + strconv.Itoa(len(events)), Time: noon, Kind: job.Reading, Step: s.ID, What: a.What, About: a.About, Value: "150 mL"})
			}
		}
	}
	return events
}

// noOilChange checks that these events of a job on the way home are no oil change, and
// gives how many oils were topped up in them.
func noOilChange(t rapid.TB, c *card.Card, b plan.Bench, p *plan.Plan, events []job.Event) int {
	s := job.Replay(p, &job.History{Events: events}, nil)
	told := 0
	for _, f := range s.Findings {
		if f.Code == "home-only" {
			told++
		}
	}
	if told != 1 || !s.Summary.Home || s.DueAgain != nil || s.Change != (job.NextChange{}) {
		t.Fatalf("%+v: told %d times, due again %+v, next %+v", events, told, s.DueAgain, s.Change)
	}
	poured := 0
	for _, o := range s.Oils {
		if len(o.Poured) > 0 {
			poured++
		}
		if len(o.Due)+len(o.Left)+len(o.Drained) > 0 || o.Verdict+o.Caught != "" || o.Since != nil {
			t.Fatalf("%+v: held against the volume of a change: %+v", events, o)
		}
	}
	past := job.Past{Card: *c, Bench: b, History: job.History{Events: events}}
	trace, list := past.Recall()
	if trace == nil || len(trace.Changed) > 0 {
		t.Fatalf("%+v: changed %+v, %v", events, trace, list)
	}
	return poured
}

// Between two changes somebody topped up on the way home: when the oil is due stays as it
// was, and no use is told for the time in which an unknown lot went in.
func TestForesee_TopUpOnTheWayHome(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	past := func(day, odometer string, b plan.Bench, more ...job.Event) job.Past {
		p := job.Past{Card: *c, Bench: b, History: job.History{Events: append([]job.Event{
			{Kind: job.Reading, Step: "identify", What: plan.AskOdometer, Value: odometer}}, more...)}}
		for n := range p.Events {
			p.Events[n].ID, p.Events[n].Time = "e"+string(rune('a'+n)), day+"T10:00:00.000Z"
		}
		return p
	}
	drained := job.Event{Kind: job.Reading, Step: "measure-engine", What: plan.AskDrained, About: "engine", Value: "2.3 L"}
	full := job.Event{Kind: job.Reading, Step: "pour-engine", What: plan.AskPoured, About: "engine", Value: "2.5 L"}
	some := job.Event{Kind: job.Reading, Step: "top-up-home-engine", What: plan.AskPoured, About: "engine", Value: "300 mL"}
	home := past("2026-05-01", "15000", plan.Bench{GetHome: true, Place: plan.Roadside}, some)
	before, after := past("2026-03-01", "12000", plan.Bench{}, drained, full), past("2026-07-01", "18000", plan.Bench{}, drained, full)
	today, _ := date.ReadDay("2026-07-02")
	with := outlook.Foresee([]job.Past{before, home, after}, nil, today, quantity.Metric)
	without := outlook.Foresee([]job.Past{before, after}, nil, today, quantity.Metric)
	if with.Oils[0].Changed != "2026-07-01" || with.Oils[0].Day != without.Oils[0].Day || len(with.Findings) > 0 {
		t.Errorf("with a top-up changed on %s, due on %s, without on %s", with.Oils[0].Changed, with.Oils[0].Day, without.Oils[0].Day)
	}
	if len(with.Uses) != 0 || len(without.Uses) != 1 {
		t.Errorf("uses told: %d with a top-up between, %d without", len(with.Uses), len(without.Uses))
	}
	still := outlook.Foresee([]job.Past{before, home}, nil, today, quantity.Metric)
	if still.Oils[0].Changed != "2026-03-01" {
		t.Errorf("the way home began an interval: %s", still.Oils[0].Changed)
	}
}
