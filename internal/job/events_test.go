package job_test

import (
	"fmt"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
)

// drawEvents draws what a person may do to a job with that plan; readings are
// written the way a phone's keyboard writes them. No event is an undo.
func drawEvents(t *rapid.T, p *plan.Plan, prefix string) []job.Event {
	var list []job.Event
	for i := range rapid.IntRange(0, 12).Draw(t, "events") {
		e := job.Event{ID: prefix + strconv.Itoa(i), Time: drawTime(t)}
		s := rapid.SampledFrom(p.Steps).Draw(t, "step")
		switch kind := rapid.IntRange(0, 9).Draw(t, "kind"); {
		case kind == 0:
			e.Kind, e.Text = job.Note, "seen"
		case kind == 1:
			e.Kind = job.Finish
		case kind == 2:
			e.Kind, e.Step, e.What = job.Photo, s.ID, string(plantest.Pick(t, "picture", plan.Motifs...))
		case kind >= 5 && len(s.Signs) > 0:
			e.Kind, e.Step, e.Signs = job.Saw, s.ID, drawSigns(t)
		case kind < 5 || len(s.Asks) == 0:
			e.Kind, e.Step = job.Done, s.ID
			if len(s.Timers) > 0 && kind < 4 {
				e.Kind, e.What, e.Until = job.Timed, s.Timers[0].What, drawTime(t)
			}
		default:
			a := rapid.SampledFrom(s.Asks).Draw(t, "ask")
			e.Kind, e.Step, e.What, e.About, e.Value = job.Reading, s.ID, a.What, a.About, drawValue(t, a)
		}
		list = append(list, e)
	}
	return list
}

func drawTime(t *rapid.T) string {
	return fmt.Sprintf("2026-11-25T10:%02d:00.000Z", rapid.IntRange(0, 5).Draw(t, "minute"))
}

// drawValue draws an answer to a question; some of them can't be right.
func drawValue(t *rapid.T, a plan.Ask) string {
	switch a.What {
	case plan.AskLevel:
		return plantest.Pick(t, "level", "above", "high", "middle", "low", "below", "all over the floor")
	case plan.AskTorque:
		return plantest.Pick(t, "torque", "25 N·m", "18 lbf·ft", "9000 N·m")
	case plan.AskOdometer:
		return plantest.Pick(t, "odometer", "12400", "12,400 km", "7000 mi", "-3")
	}
	return plantest.Pick(t, "volume", "1.4", "0.25 L", "150 mL", "1 US qt", "400 L", "a lot")
}

// drawGarbage draws events of any content, at times in the form of good ones. It
// has no "@", which marks a value as a word of the catalogue.
func drawGarbage(t *rapid.T, p *plan.Plan) []job.Event {
	word := func(label string, words ...string) string {
		if rapid.Bool().Draw(t, label+" is a word") {
			return plantest.Pick(t, label, words...)
		}
		return strings.ReplaceAll(rapid.String().Draw(t, label), "@", "")
	}
	var steps []string
	for _, s := range p.Steps {
		steps = append(steps, "not-"+s.ID)
	}
	var list []job.Event
	for i := range rapid.IntRange(1, 12).Draw(t, "garbage") {
		list = append(list, job.Event{
			ID:   garbageID(word("id", "", "garbage", "garbage"+strconv.Itoa(i))),
			Time: word("time", "", "2026-11-25T10:02:00.000Z", "2026-13-25T10:02:00.000Z", "yesterday"),
			Kind: job.EventKind(word("kind", "", "done", "reading", "note", "photo", "undo", "timer")),
			Step: word("step", steps...), What: word("what", "level", "poured", "odometer"),
			About: word("of", "oil0", "garbage", ""), Value: word("value", "1 L", "NaN"), Text: word("text", "", " "),
		})
	}
	return list
}

// garbageID keeps an id from being that of a good event.
func garbageID(id string) string {
	if strings.HasPrefix(id, "a") {
		return "not-" + id
	}
	return id
}

// replayed plans and replays a job.
func replayed(c *card.Card, b plan.Bench, events []job.Event) (*job.State, []finding.Finding) {
	return replayedAfter(nil, c, b, events)
}

// replayedAfter is replayed that also compares with the last job on the bike.
func replayedAfter(last *job.Past, c *card.Card, b plan.Bench, events []job.Event) (*job.State, []finding.Finding) {
	p, list := plantest.Made(c, b)
	if p == nil {
		return nil, list
	}
	var left *job.Trace
	if last != nil {
		left, _ = last.Recall()
	}
	return job.Replay(p, &job.History{Events: events}, left), nil
}

// replayedNew is replayed of a job whose last event is about to be written.
func replayedNew(c *card.Card, b plan.Bench, events []job.Event) *job.State {
	p, _ := plantest.Made(c, b)
	return job.Replay(p, &job.History{Events: events, Adding: true}, nil)
}

func replay(t *rapid.T, c *card.Card, b plan.Bench, events []job.Event) *job.State {
	s, list := replayed(c, b, events)
	if s == nil {
		t.Fatalf("no state: %v", list)
	}
	return s
}

// canonical gives a state's text, the places of its findings named by the ids of
// the events and not by their numbers, which depend on the order.
func canonical(t *rapid.T, s *job.State, events []job.Event) string {
	return canonicalOf(t, s, &job.History{Events: events})
}

// canonicalOf is canonical of a job with contents beside.
func canonicalOf(t *rapid.T, s *job.State, h *job.History) string {
	for i, f := range s.Findings {
		if strings.HasPrefix(f.Where, "/bench/") {
			continue // of the job, and of no event
		}
		parts := strings.SplitN(f.Where, "/", 4)
		if len(parts) < 3 {
			continue // of all of them, such as that there are more
		}
		list := map[string][]job.Event{"events": h.Events, "beside": h.Beside}[parts[1]]
		n, err := strconv.Atoi(parts[2])
		if err != nil || n >= len(list) {
			t.Fatalf("finding at %q", f.Where)
		}
		parts[2] = list[n].ID
		s.Findings[i].Where = strings.Join(parts, "/")
	}
	return string(wire.Write(s))
}
