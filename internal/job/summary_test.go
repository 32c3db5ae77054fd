package job_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// finishedWith is a job that is finished, with what else happened.
func finishedWith(parts ...job.Event) []job.Event {
	return series(append(parts, job.Event{Kind: job.Finish})...)
}

var dryAndDone = []job.Event{
	{Kind: job.Finish},
	{Kind: job.Reading, Step: "second-look", What: plan.AskLeak, Value: "dry"},
	{Kind: job.Done, Step: "second-look"},
}

// A job is open until it is finished, then waits for the second look; a leak keeps
// that from closing it.
func TestReplay_Phase(t *testing.T) {
	c := plantest.Sample(t, bike)
	leaks := slices.Clone(dryAndDone)
	leaks[1].Value = plan.Leaking
	for _, f := range []struct {
		name   string
		events []job.Event
		want   job.Phase
		next   string
	}{
		{"nothing done", nil, job.PhaseOpen, "identify"},
		{"one step done", []job.Event{{Kind: job.Done, Step: "identify"}}, job.PhaseOpen, "lay-out"},
		{"finished", dryAndDone[:1], job.PhaseWaiting, "identify"},
		{"finished and dry, the step not done", dryAndDone[:2], job.PhaseWaiting, "identify"},
		{"looked again", dryAndDone, job.PhaseClosed, "identify"},
		{"it drips", leaks, job.PhaseWaiting, "identify"},
	} {
		s := replayedNew(c, plan.Bench{}, series(slices.Clone(f.events)...))
		if s.Phase != f.want || s.Summary.Phase != f.want || s.Next != f.next {
			t.Errorf("%s: %s (in lists %s), next %s; want %s, %s", f.name, s.Phase, s.Summary.Phase, s.Next, f.want, f.next)
		}
	}
}

// The second look has its turn once the work is finished, and not before: what is
// open and what is done are the whole plan, but for that.
func TestReplay_ToDo(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		s := replay(t, c, b, drawEvents(t, p, "a"))
		for i := range p.Steps {
			step := &p.Steps[i]
			want := !slices.Contains(s.Done, step.ID) && (!step.After || s.Phase != job.PhaseOpen)
			if slices.Contains(s.ToDo, step.ID) != want {
				t.Fatalf("%s is open %v, want %v, in a job that is %s", step.ID, !want, want, s.Phase)
			}
		}
		if len(s.ToDo) > 0 && s.Next != s.ToDo[0] || len(s.ToDo) == 0 && s.Next != "" {
			t.Fatalf("next is %q, open are %q", s.Next, s.ToDo)
		}
	})
}

// What lists show of a job: of a reading the last, of an oil what was poured.
func TestReplay_Summary(t *testing.T) {
	c := plantest.Sample(t, bike)
	s, _ := replayed(c, plan.Bench{}, finishedWith(
		read("identify", plan.AskOdometer, "", "12300 km"),
		read("identify", plan.AskOdometer, "", "12340 km"),
		read("pour-engine", plan.AskPoured, "engine", "2.3 L"),
		read("top-up-engine", plan.AskPoured, "engine", "200 mL"),
		job.Event{Kind: job.Note, Text: "Smells of fuel"},
		job.Event{Kind: job.Note, Text: "Café wash"},
		job.Event{Kind: job.Photo, What: string(plan.PhotoPan)},
		job.Event{Kind: job.Done, Step: "identify"},
	))
	got := s.Summary
	oils := []job.SummaryOil{{Role: "role.engine", Poured: "2.5 L", Grade: c.Circuits[0].Oil.Grades[0]}}
	if got.Odometer != "12340 km" || !slices.Equal(got.Oils, oils) || got.Said != "Smells of fuel Café wash" {
		t.Errorf("%+v", got)
	}
	if got.Done != 1 || got.Steps != s.Steps || got.Notes != 2 || got.Photos != 1 || got.Finished != s.Finished || got.Finished == "" {
		t.Errorf("counted %+v", got)
	}
	if got.Verdict != "" || got.Watch {
		t.Errorf("nobody looked, and it says %q, watch %v", got.Verdict, got.Watch)
	}
}

func TestReplay_SummaryWatches(t *testing.T) {
	for found, want := range map[string]bool{"paste": false, "": false, "flakes": true, "sand": true} {
		signs := []string{}
		if found != "" {
			signs = []string{"found", found}
		}
		s := after(t, nil, lookAt("a", 1, "look-filter-filter", signs...))
		if s.Summary.Watch != want || s.Summary.Verdict != s.Verdict || s.Verdict == "" {
			t.Errorf("%q: watch %v, verdict %q; want %v, %q", found, s.Summary.Watch, s.Summary.Verdict, want, s.Verdict)
		}
	}
}

// Of long notes a search sees the beginning, cut between two letters, and that it is.
func TestReplay_SummaryOfLongNotes(t *testing.T) {
	c := plantest.Sample(t, bike)
	for _, letter := range []string{"a", "é", "油", "🛢"} {
		s, _ := replayed(c, plan.Bench{}, series(job.Event{Kind: job.Note, Text: strings.Repeat(letter, 1000)}))
		said := s.Summary.Said
		if !utf8.ValidString(said) || said != strings.Repeat(letter, 400)+"…" {
			t.Errorf("%s: %d letters, valid %v", letter, utf8.RuneCountInString(said), utf8.ValidString(said))
		}
	}
}

// What other screens show of an open job is where it is: the step that has its turn, the
// stage of that, and what runs; of one that is finished nothing has its turn.
func TestReplay_WhereItIs(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		s := replay(t, c, b, drawEvents(t, p, "a"))
		sum := &s.Summary
		if !slices.Equal(sum.Timers, s.Timers) {
			t.Fatalf("timers in lists %v, of the job %v", sum.Timers, s.Timers)
		}
		if s.Phase != job.PhaseOpen {
			if sum.Next != "" || sum.Stage != "" {
				t.Fatalf("%s, and next is %q of %q", s.Phase, sum.Next, sum.Stage)
			}
			return
		}
		want := plan.Stage("")
		if next := p.Step(s.Next); next != nil {
			want = next.Stage
		}
		if sum.Next != s.Next || sum.Stage != want {
			t.Fatalf("next is %q of %q, want %q of %q", sum.Next, sum.Stage, s.Next, want)
		}
	})
}
