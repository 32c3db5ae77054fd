package job_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// Of the gates those that are neither done nor told of are listed; each step that looks
// is a gate, and so is the one at which the last look for drops is taken before the ride.
func TestGates(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		events := drawEvents(t, p, "e")
		s := job.Replay(p, &job.History{Events: events}, nil)
		for i := range p.Steps {
			step := &p.Steps[i]
			if gate := step.Gate(); (len(step.Signs) > 0 || step.ID == "leak-look") && !gate {
				t.Fatalf("%s is no gate", step.ID)
			}
			told := slices.Contains(s.Done, step.ID)
			for _, l := range s.Looks {
				told = told || l.Step == step.ID
			}
			for _, r := range s.Readings {
				told = told || r.Step == step.ID
			}
			for _, pic := range s.Photos {
				told = told || pic.Step == step.ID
			}
			if want := step.Gate() && !told; want != slices.Contains(s.Gates, step.ID) {
				t.Fatalf("%s: listed %v, want %v", step.ID, !want, want)
			}
		}
	})
}

// A gate that was passed without looking is told until something is told there.
func TestGate_Passed(t *testing.T) {
	plantest.Samples(t, func(t *testing.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		at := slices.IndexFunc(p.Steps, func(s plan.Step) bool { return s.Gate() && len(s.Asks) > 0 })
		if at < 0 {
			return
		}
		step := p.Steps[at]
		events := []job.Event{{ID: "a", Time: "2026-11-25T10:00:00.000Z", Seq: 1, Kind: job.Done, Step: step.ID, Manner: job.In(job.Unlooked)}}
		for _, want := range []bool{true, false} {
			s := job.Replay(p, &job.History{Events: events}, nil)
			if passed := slices.Contains(s.Passed, step.ID); passed != want || !slices.Contains(s.Done, step.ID) {
				t.Fatalf("%s with %d events: passed %v, done %v", step.ID, len(events), s.Passed, s.Done)
			}
			events = append(events, job.Event{ID: "b", Time: "2026-11-25T10:01:00.000Z", Seq: 2, Kind: job.Note, Step: step.ID, Text: "looked at now"})
		}
	})
}

// A manner that this version doesn't know is told, and the event counts.
func TestManner_Unknown(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		e := job.Event{ID: "a", Time: "2026-11-25T10:00:00.000Z", Kind: job.Done, Step: p.Steps[0].ID, Manner: job.In("afterwards by-heart")}
		s := job.Replay(p, &job.History{Events: []job.Event{e}}, nil)
		var unknown []string
		for _, f := range s.Findings {
			if f.Code == "unknown-manner" {
				unknown = append(unknown, f.Values["text"])
			}
		}
		if !slices.Equal(unknown, []string{"by-heart"}) || len(s.Done) != 1 || s.Afterwards != 1 {
			t.Fatalf("%v, done %v, afterwards %d", s.Findings, s.Done, s.Afterwards)
		}
	})
}

// A level found before the change and told after it, afterwards, is not the one at the
// end; told as it was read, it is.
func TestAfterwards_NoOrder(t *testing.T) {
	plantest.Samples(t, func(t *testing.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		found := slices.IndexFunc(p.Steps, func(s plan.Step) bool { return s.Finds })
		if found < 0 {
			return
		}
		of := p.Steps[found].Asks[0].About
		end := slices.IndexFunc(p.Steps, func(s plan.Step) bool {
			return !s.Finds && !s.Interim && !s.After && slices.ContainsFunc(s.Asks, func(a plan.Ask) bool { return a.What == plan.AskLevel && a.About == of })
		})
		if end < 0 {
			return
		}
		choice := p.Steps[found].Asks[0].Choice
		for manner, want := range map[string]string{"": choice[len(choice)-1], job.Afterwards: choice[0]} {
			s := job.Replay(p, &job.History{Events: []job.Event{
				{ID: "a", Time: "2026-11-25T10:00:00.000Z", Seq: 1, Kind: job.Reading, Step: p.Steps[end].ID, What: plan.AskLevel, About: of, Value: choice[0]},
				{ID: "b", Time: "2026-11-25T10:01:00.000Z", Seq: 2, Kind: job.Reading, Step: p.Steps[found].ID, What: plan.AskLevel, About: of, Value: choice[len(choice)-1], Manner: job.In(manner)},
			}}, nil)
			for _, o := range s.Oils {
				if o.Circuit == of && o.Level != "level."+want {
					t.Fatalf("told %q: level %s, want %s", manner, o.Level, want)
				}
			}
		}
	})
}
