package job_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

const toldAt = "2026-11-25T12:00:00.000Z"

// all fills in a whole page: each tick, what can be taken over from the card, and of each
// choice the first that tells nothing bad.
func all(p *job.Page) []job.Told {
	var told []job.Told
	for _, l := range p.Lines {
		if len(l.Steps) > 0 {
			told = append(told, job.Told{Line: l.ID, Value: "yes"})
		}
		for _, a := range l.Asks {
			t := job.Told{Line: l.ID, What: a.What, About: a.About}
			switch {
			case a.Card != "":
				t.Manner = job.AsCard
			case a.What == job.AskSeen:
				t.Value = job.AnswerNothing
			case a.What == plan.AskLevel:
				t.Value = a.Choice[len(a.Choice)/2]
			case len(a.Choice) > 0:
				t.Value = a.Choice[0]
			case a.What == plan.AskOdometer:
				t.Value = "12400"
			case a.What == plan.AskPoured:
				t.Value = "2 L"
			default:
				continue
			}
			told = append(told, t)
		}
	}
	return told
}

// written are the events of a telling as a phone keeps them after those before.
func written(before []job.Event, t *job.Telling, id string) []job.Event {
	list := slices.Clone(before)
	for _, e := range t.Events {
		e.ID, e.Time, e.Seq = id+e.Step+e.What+e.About+string(e.Kind), toldAt, len(list)+1
		list = append(list, e)
	}
	return list
}

// Each step that must be done stands on one line of the page, which tells of it; filled in
// whole, the page leaves nothing missing, nothing open, nothing refused, and no question
// of order.
func TestPage_TellsTheWholeJob(t *testing.T) {
	check := func(fatal func(string, ...any), p *plan.Plan) {
		h := &job.History{}
		page := job.PageOf(p, h, nil, "")
		told := append(all(page), job.Told{Line: job.TellFinish})
		telling := job.Tell(p, h, nil, "", told, toldAt)
		for _, f := range telling.Findings {
			if f.Grade == finding.Refuse || f.Code == "torque-off" {
				fatal("%v", f)
			}
		}
		s := job.Replay(p, &job.History{Events: written(nil, telling, "")}, nil)
		var missing []string
		for _, id := range s.Missing {
			if !p.Step(id).After {
				missing = append(missing, id)
			}
		}
		if len(missing) > 0 || len(s.Open) > 0 || s.Finished != toldAt {
			fatal("missing %v, open %v, finished %q", missing, s.Open, s.Finished)
		}
		for _, f := range s.Findings {
			if f.Code == "finished-without" || f.Code == "run-despite-stop" || f.Code == "unknown-manner" {
				fatal("%v", f)
			}
		}
		again := job.PageOf(p, &job.History{Events: written(nil, telling, "")}, nil, "")
		for _, l := range again.Lines {
			if l.Done != len(l.Steps) && !slices.ContainsFunc(l.Steps, func(id string) bool { return p.Step(id).After }) {
				fatal("%s: %d of %v told", l.ID, l.Done, l.Steps)
			}
		}
	}
	plantest.Samples(t, func(t *testing.T, c *card.Card, _ plan.Bench, p *plan.Plan) {
		check(func(f string, v ...any) { t.Fatalf(c.ID+": "+f, v...) }, p)
	})
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) { check(t.Fatalf, p) })
}

// No two lines have one id, and a step stands on one line's tick at most; stage by stage
// each step has a line of its own.
func TestPage_EachStepOnce(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		ids, steps := map[string]bool{}, map[string]bool{}
		for _, l := range job.PageOf(p, &job.History{}, nil, "").Lines {
			if ids[l.ID] {
				t.Fatalf("two lines %s", l.ID)
			}
			ids[l.ID] = true
			for _, id := range l.Steps {
				if steps[id] {
					t.Fatalf("%s stands on two lines", id)
				}
				steps[id] = true
			}
		}
		var list []string
		for _, stage := range plan.Stages {
			for _, l := range job.PageOf(p, &job.History{}, nil, stage).Lines {
				list = append(list, l.ID)
			}
		}
		for _, s := range p.Steps {
			if slices.Contains(list, s.ID) == s.After {
				t.Fatalf("%s, after %v: %v", s.ID, s.After, list)
			}
		}
	})
}

// What was told on a page can be taken back there, whatever was told before: then the job
// is where it was.
func TestTell_TakenBack(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		stage := rapid.SampledFrom(append([]plan.Stage{""}, plan.Stages...)).Draw(t, "stage")
		h := &job.History{}
		told := all(job.PageOf(p, h, nil, stage))
		first := job.Tell(p, h, nil, stage, told, toldAt)
		h = &job.History{Events: written(nil, first, "a")}
		for i := range told {
			told[i].Manner, told[i].Value = "", ""
			if told[i].What == "" {
				told[i].Value = "no"
			}
		}
		back := job.Tell(p, h, nil, stage, told, toldAt)
		if finding.Refused(back.Findings) {
			t.Fatalf("%v", back.Findings)
		}
		for i := range back.Events {
			if back.Events[i].Kind != job.Undo {
				t.Fatalf("%+v", back.Events[i])
			}
		}
		s := job.Replay(p, &job.History{Events: written(h.Events, back, "b")}, nil)
		if len(s.Readings) > 0 || len(s.Looks) > 0 {
			t.Fatalf("%v, %v", s.Readings, s.Looks)
		}
	})
}

// On any events, and on anything that is filled in, the page comes to events or to one
// finding at least at the place of what refuses.
func TestTell_Anything(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		h := &job.History{Events: drawEvents(t, p, "e")}
		stage := rapid.SampledFrom(append([]plan.Stage{"", "elsewhere"}, plan.Stages...)).Draw(t, "stage")
		page := job.PageOf(p, h, nil, stage)
		told := []job.Told{{Line: "nowhere"}}
		for _, l := range page.Lines {
			for _, a := range l.Asks {
				told = append(told, job.Told{Line: l.ID, What: a.What, About: a.About, Value: drawValue(t, a.Ask), Manner: plantest.Pick(t, "manner", "", "as-card", "by-heart")})
			}
			told = append(told, job.Told{Line: l.ID, Value: plantest.Pick(t, "tick", "yes", "no", "", "maybe")})
		}
		from := rapid.IntRange(0, len(told)).Draw(t, "from")
		told = told[from:]
		got := job.Tell(p, h, nil, stage, told, toldAt)
		for _, f := range got.Findings {
			if !strings.HasPrefix(f.Where, "/told/") {
				t.Fatalf("%v", f)
			}
		}
		if finding.Refused(got.Findings) && len(got.Events) > 0 || from == 0 && !finding.Refused(got.Findings) {
			t.Fatalf("%v, %v", got.Events, got.Findings)
		}
	})
}
