package job_test

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
)

// next is the event after those of a job, as a phone writes it.
func next(events []job.Event, kind job.EventKind, about string) job.Event {
	n := len(events) + 1
	return job.Event{ID: "n" + strconv.Itoa(n), Seq: n, Time: "2026-11-25T11:" + strconv.Itoa(10+n%50) + ":00.000Z", Kind: kind, About: about}
}

// drawHonest draws a job as one phone writes it: places and times rise.
func drawHonest(t *rapid.T, p *plan.Plan, prefix string) []job.Event {
	events := drawEvents(t, p, prefix)
	for i := range events {
		events[i].Seq, events[i].Time = i+1, "2026-11-25T10:"+strconv.Itoa(10+i)+":00.000Z"
	}
	return events
}

// said is what a state says but for how many events there were.
func said(t *rapid.T, s *job.State, events []job.Event) string {
	s.Summary.Events = 0
	return canonical(t, s, events)
}

// What is taken back can be brought back, and taken back again, as often as one likes:
// the state is the one before and the one after, in turn.
func TestUndo_Undone(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawHonest(t, p, "a")
		before := replay(t, c, b, events)
		if before.LastID == "" {
			return
		}
		last := before.LastID
		whole := said(t, before, events)
		events = append(events, next(events, job.Undo, last))
		taken := replay(t, c, b, events)
		if taken.LastID == last || taken.Redo != events[len(events)-1].ID {
			t.Fatalf("%s taken back: last %s, to bring back %q", last, taken.LastID, taken.Redo)
		}
		for range rapid.IntRange(1, 3).Draw(t, "times") {
			events = append(events, next(events, job.Undo, taken.Redo))
			back := replay(t, c, b, events)
			if back.Redo != "" {
				t.Fatalf("nothing is left to bring back, and %q is", back.Redo)
			}
			if got := said(t, back, events); got != whole {
				t.Fatalf("before:\n%s\nbrought back:\n%s", whole, got)
			}
			events = append(events, next(events, job.Undo, back.LastID))
			again := replay(t, c, b, events)
			again.Redo, taken.Redo = "", ""
			if got, want := said(t, again, events), said(t, taken, events); got != want {
				t.Fatalf("taken back:\n%s\nand again:\n%s", want, got)
			}
			taken = replay(t, c, b, events)
		}
	})
}

// An undo that came in with a place that no event of this job can have isn't what the
// person at the bench did last, however much is written after it.
func TestUndo_FromBeyond(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawHonest(t, p, "a")
		note := job.Event{ID: "away", Kind: job.Note, Text: "taken back elsewhere", Time: "2026-11-25T10:00:00.000Z"}
		events = append(events, note, job.Event{ID: "beyond", Seq: 1_000_000_000, Kind: job.Undo, About: note.ID, Time: "9999-12-31T23:59:59.999Z"})
		for range rapid.IntRange(0, 3).Draw(t, "rounds") {
			events = append(events, next(events, job.Note, ""))
			events[len(events)-1].Text = "goes on"
			taken := replay(t, c, b, events).LastID
			events = append(events, next(events, job.Undo, taken))
			events = append(events, next(events, job.Undo, replay(t, c, b, events).Redo))
		}
		if s := replay(t, c, b, events); s.Redo != "" {
			t.Fatalf("%v\nto bring back is %q, which nobody took back here", events, s.Redo)
		}
	})
}

// As many steps as were taken back, one after the other, come back in turn.
func TestUndo_Several(t *testing.T) {
	c := plantest.Sample(t, bike)
	p, _ := plantest.Made(c, plan.Bench{})
	rapid.Check(t, func(t *rapid.T) {
		var events []job.Event
		for i := range rapid.IntRange(1, 6).Draw(t, "steps") {
			e := next(events, job.Done, "")
			e.Step = p.Steps[i].ID
			events = append(events, e)
		}
		var states []string
		for range rapid.IntRange(1, len(events)).Draw(t, "taken back") {
			s := replay(t, c, plan.Bench{}, events)
			states = append(states, string(wire.Write(&job.State{Done: s.Done, LastID: s.LastID})))
			events = append(events, next(events, job.Undo, s.LastID))
		}
		for _, want := range slices.Backward(states) {
			events = append(events, next(events, job.Undo, replay(t, c, plan.Bench{}, events).Redo))
			s := replay(t, c, plan.Bench{}, events)
			if got := string(wire.Write(&job.State{Done: s.Done, LastID: s.LastID})); got != want {
				t.Fatalf("brought back:\n%s\nwant\n%s", got, want)
			}
		}
		if s := replay(t, c, plan.Bench{}, events); s.Redo != "" {
			t.Fatalf("all is back, and %s is to be brought back", s.Redo)
		}
	})
}

// Two records of one step done are one: the second changes nothing, and taking back
// either takes the step back.
func TestUndo_DoneTwice(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawHonest(t, p, "a")
		before := replay(t, c, b, events)
		if len(before.Done) == 0 {
			return
		}
		step := rapid.SampledFrom(before.Done).Draw(t, "step")
		twice := next(events, job.Done, "")
		twice.Step = step
		events = append(events, twice)
		s := replay(t, c, b, events)
		if got, want := said(t, s, events), said(t, before, events); got != want {
			t.Fatalf("%s done once:\n%s\ntwice:\n%s", step, want, got)
		}
		var ids []string
		for _, e := range events {
			if e.Kind == job.Done && e.Step == step {
				ids = append(ids, e.ID)
			}
		}
		events = append(events, next(events, job.Undo, rapid.SampledFrom(ids).Draw(t, "taken back")))
		if s := replay(t, c, b, events); slices.Contains(s.Done, step) {
			t.Fatalf("%s is done, and was taken back: %+v", step, events)
		}
		again := next(events, job.Done, "")
		again.Step = step
		events = append(events, again)
		if s := replay(t, c, b, events); !p.Step(step).After && !slices.Contains(s.Done, step) {
			t.Fatalf("%s is not done, and was done after it was taken back", step)
		}
	})
}

// Undos that take each other back in a circle take back nothing else, are told, and
// one outside of the circle opens it.
func TestUndo_Circle(t *testing.T) {
	done := event("d", 1, job.Done, "identify", "")
	circle := []job.Event{done, event("x", 2, job.Undo, "", "z"), event("y", 3, job.Undo, "", "x"), event("z", 4, job.Undo, "", "y")}
	s := after(t, nil, circle...)
	if !slices.Equal(codes(s), []string{"undo-of-undo", "undo-of-undo", "undo-of-undo"}) || !slices.Equal(s.Done, []string{"identify"}) {
		t.Errorf("a circle: done %v, findings %v", s.Done, s.Findings)
	}
	if s := after(t, nil, append(circle, event("w", 5, job.Undo, "", "x"))...); len(s.Findings) > 0 {
		t.Errorf("opened: %v", s.Findings)
	}
	for of, want := range map[string]string{"d": "", "u": "identify", "v": ""} {
		events := []job.Event{done, event("u", 2, job.Undo, "", "d"), event("v", 3, job.Undo, "", "u"), event("w", 4, job.Undo, "", of)}
		if s := after(t, nil, events...); first(s.Done) != want && of != "u" || len(s.Findings) > 0 {
			t.Errorf("taken back, brought back, and %s taken back: done %v, findings %v", of, s.Done, s.Findings)
		}
	}
}

// An undo of an undo holds wherever the two stand.
func TestUndo_AnyOrder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		minutes := rapid.Permutation([]int{1, 2, 3}).Draw(rt, "minutes")
		s := after(t, nil, event("d", minutes[0], job.Done, "identify", ""), event("u", minutes[1], job.Undo, "", "d"), event("v", minutes[2], job.Undo, "", "u"))
		if !slices.Equal(s.Done, []string{"identify"}) || len(s.Findings) > 0 {
			rt.Fatalf("at %v: done %v, findings %v", minutes, s.Done, s.Findings)
		}
	})
}

// However undos name each other: an event is taken back when one of the undos that name it
// holds, and an undo holds when none of those that name it does.
func TestUndo_AnyTree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		events := []job.Event{event("d", 0, job.Done, "identify", "")}
		for i := range rapid.IntRange(1, 12).Draw(rt, "undos") {
			of := rapid.SampledFrom(events).Draw(rt, "of")
			events = append(events, event("u"+strconv.Itoa(i), i+1, job.Undo, "", of.ID))
		}
		var taken func(id string) bool
		taken = func(id string) bool {
			return slices.ContainsFunc(events, func(e job.Event) bool { return e.About == id && !taken(e.ID) })
		}
		s := after(t, nil, rapid.Permutation(events).Draw(rt, "order")...)
		if done := slices.Contains(s.Done, "identify"); done == taken("d") || len(s.Findings) > 0 {
			rt.Fatalf("done %v, and taken back %v: %+v; findings %v", done, taken("d"), events, s.Findings)
		}
	})
}
