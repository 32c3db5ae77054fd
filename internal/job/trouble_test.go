package job_test

import (
	"slices"
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

func problem(id, minute, what, outcome string) job.Event {
	return job.Event{ID: id, Time: "2026-11-25T10:" + minute + ":00.000Z", Kind: job.Problem, Step: "pour-engine", What: what, Value: outcome,
		Signs: map[string]string{"lamp": "on"}}
}

// A problem stands until it is judged anew or taken back; taken back, what was
// judged before stands again.
func TestReplay_Problems(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	lamp, open := problem("a", "01", "lamp-start", "do-not-start"), problem("b", "02", "cap-off", "carry-on")
	better := problem("c", "03", "lamp-start", "ride-gently")
	undo := job.Event{ID: "u", Time: "2026-11-25T10:04:00.000Z", Kind: job.Undo, About: "c"}
	finish := job.Event{ID: "f", Time: "2026-11-25T10:05:00.000Z", Kind: job.Finish}
	for _, test := range []struct {
		name     string
		events   []job.Event
		want     []string
		finishes int // findings about closing the job all the same
		useless  int // events that are reported and have no effect
	}{
		{"none", []job.Event{finish}, nil, 0, 0},
		{"one", []job.Event{lamp, finish}, []string{"lamp-start do-not-start stops"}, 1, 0},
		{"two", []job.Event{open, lamp, finish}, []string{"lamp-start do-not-start stops", "cap-off carry-on"}, 1, 0},
		{"judged anew", []job.Event{lamp, open, better, finish}, []string{"cap-off carry-on", "lamp-start ride-gently"}, 0, 0},
		{"and taken back", []job.Event{better, undo, open, lamp, finish}, []string{"lamp-start do-not-start stops", "cap-off carry-on"}, 1, 0},
		{"an outcome that is none", []job.Event{problem("a", "01", "lamp-start", "fine")}, nil, 0, 1},
		{"no outcome", []job.Event{problem("a", "01", "lamp-start", "")}, nil, 0, 1},
		{"no problem", []job.Event{problem("a", "01", "", "carry-on")}, nil, 0, 1},
		{"a word and no id", []job.Event{problem("a", "01", "@nav.back", "carry-on")}, nil, 0, 1},
	} {
		s, _ := replayed(c, plan.Bench{System: quantity.Metric}, test.events)
		var got []string
		for _, p := range s.Problems {
			line := p.What + " " + p.Outcome
			if p.Stops {
				line += " stops"
			}
			if p.Step != "pour-engine" || p.Signs["lamp"] != "on" || p.ID == "" || p.Time == "" {
				t.Errorf("%s: %+v", test.name, p)
			}
			got = append(got, line)
		}
		reported, useless := 0, 0
		for _, f := range s.Findings {
			if f.Code == "finished-with-problem" {
				reported++
			}
			if f.Code == "unknown-word" {
				useless++
			}
		}
		if !slices.Equal(got, test.want) || reported != test.finishes || useless != test.useless {
			t.Errorf("%s: %q, %d reported at the end, %d useless; want %q, %d, %d", test.name, got, reported, useless, test.want, test.finishes, test.useless)
		}
	}
}

// A problem needs no step, but a new one not a step that there isn't; one that stands
// in the record counts whatever its step.
func TestReplay_ProblemOfNoStep(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for step, want := range map[string]int{"": 1, "pour-engine": 1, "polish-the-tank": 0} {
		e := problem("a", "01", "cap-off", "carry-on")
		e.Step = step
		if s := replayedNew(c, plan.Bench{System: quantity.Metric}, []job.Event{e}); len(s.Problems) != want {
			t.Errorf("new at step %q: %d problems, want %d", step, len(s.Problems), want)
		}
		if s, _ := replayed(c, plan.Bench{System: quantity.Metric}, []job.Event{e}); len(s.Problems) != 1 || s.Problems[0].Step != step {
			t.Errorf("at step %q: %+v, want it", step, s.Problems)
		}
	}
}
