package job_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
)

// set gives texts in their alphabet, without one of them.
func set(list []string, but string) []string {
	list = slices.DeleteFunc(slices.Clone(list), func(s string) bool { return s == but })
	slices.Sort(list)
	return list
}

// Over the steps that a job began with, in whatever order, with one among them that this
// version knows nothing of, all rules hold as over today's: what must be done, what was
// poured and read, what came out, how far the job is. The step of another version is done
// and written at like any other.
func TestReplay_OverTheStepsOfTheJob(t *testing.T) {
	const other = "of-another-version"
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawEvents(t, p, "e")
		want := job.Replay(p, &job.History{Events: events}, nil)
		ids := []string{other}
		for _, s := range p.Steps {
			ids = append(ids, s.ID)
		}
		checked, _ := card.Accept(c)
		began, _ := plan.Resume(checked, b, rapid.Permutation(ids).Draw(t, "steps"))
		const at = "2026-11-25T10:59:00.000Z"
		events = append(events, job.Event{ID: "x", Time: at, Kind: job.Done, Step: other}, job.Event{ID: "y", Time: at, Kind: job.Note, Step: other, Text: "tight"},
			job.Event{ID: "z", Time: at, Kind: job.Reading, Step: other, What: plan.AskTorque, Value: "25 N·m"})
		got := job.Replay(began, &job.History{Events: events}, nil)

		if !slices.Contains(got.Done, other) || len(got.Elsewhere) > 0 || got.Notes[len(got.Notes)-1].Step != other || got.Readings[len(got.Readings)-1].ID != "z" {
			t.Fatalf("done %v, elsewhere %v, notes %v, readings %v", got.Done, got.Elsewhere, got.Notes, got.Readings)
		}
		if got.Steps != want.Steps+1 || !slices.Equal(set(got.Done, other), set(want.Done, "")) || !slices.Equal(set(got.Missing, ""), set(want.Missing, "")) || !slices.Equal(set(got.ToDo, ""), set(want.ToDo, "")) {
			t.Fatalf("done %v, missing %v, open %v; over today's %v, %v, %v", got.Done, got.Missing, got.ToDo, want.Done, want.Missing, want.ToDo)
		}
		if got.Phase != want.Phase || got.Finished != want.Finished || got.Verdict != want.Verdict || got.Odometer != want.Odometer || len(got.Looks) != len(want.Looks) {
			t.Fatalf("%s %q %q %v, over today's %s %q %q %v", got.Phase, got.Finished, got.Verdict, got.Odometer, want.Phase, want.Finished, want.Verdict, want.Odometer)
		}
		for i := range want.Oils {
			if x, y := string(wire.Write(&got.Oils[i])), string(wire.Write(&want.Oils[i])); x != y {
				t.Fatalf("%s, over today's %s", x, y)
			}
		}
	})
}

// What a job began without is not missed in it.
func TestReplay_StepsAddedSinceAreNotMissing(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		var ids []string
		for _, s := range p.Steps {
			ids = append(ids, s.ID)
		}
		ids = ids[:rapid.IntRange(1, len(ids)).Draw(t, "steps")]
		checked, _ := card.Accept(c)
		began, _ := plan.Resume(checked, b, ids)
		s := job.Replay(began, &job.History{Events: drawEvents(t, p, "e")}, nil)
		for _, list := range [][]string{s.Done, s.Missing, s.ToDo} {
			for _, id := range list {
				if !slices.Contains(ids, id) {
					t.Fatalf("%s is asked of a job that began with %v", id, ids)
				}
			}
		}
		for _, e := range s.Elsewhere {
			if slices.Contains(ids, e.Step) || p.Step(e.Step) == nil {
				t.Fatalf("%s is told as elsewhere of a job that began with %v", e.Step, ids)
			}
		}
	})
}
