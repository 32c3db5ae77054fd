package job_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// Two records of one job merge by putting their events together: neither the
// order nor repetition changes the state.
func TestReplay_OrderAndRepetitionDoNotMatter(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := append(drawEvents(t, p, "a"), drawEvents(t, p, "b")...)
		events = append(events, drawUndos(t, events)...)
		want := canonical(t, replay(t, c, b, events), events)
		merged := rapid.Permutation(append(slices.Clone(events), someOf(t, events)...)).Draw(t, "merged")
		if got := canonical(t, replay(t, c, b, merged), merged); got != want {
			t.Fatalf("in order:\n%s\nmerged:\n%s", want, got)
		}
	})
}

func drawUndos(t *rapid.T, events []job.Event) []job.Event {
	var list []job.Event
	for i, e := range someOf(t, events) {
		list = append(list, job.Event{ID: "u" + strconv.Itoa(i), Time: drawTime(t), Kind: job.Undo, About: e.ID})
	}
	return list
}

func someOf(t *rapid.T, events []job.Event) []job.Event {
	var list []job.Event
	for _, e := range events {
		if rapid.Bool().Draw(t, "take") {
			list = append(list, e)
		}
	}
	return list
}

// An undo cancels wherever it stands, also before what it cancels: the state is
// as if neither had been there.
func TestReplay_UndoCancels(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawEvents(t, p, "a")
		undone := slices.DeleteFunc(drawEvents(t, p, "b"), func(e job.Event) bool { // taken back, it takes the others back too
			return e.Kind == job.Done && slices.ContainsFunc(events, func(o job.Event) bool { return o.Kind == job.Done && o.Step == e.Step })
		})
		if len(undone) == 0 {
			return
		}
		want := canonical(t, replay(t, c, b, events), events)
		all := append(slices.Clone(events), undone...)
		for i, e := range undone {
			all = append(all, job.Event{ID: "u" + strconv.Itoa(i), Time: drawTime(t), Kind: job.Undo, About: e.ID})
		}
		undid := replay(t, c, b, all)
		undid.Redo, undid.Summary.Events = "", len(events) // what says that there was something
		if got := canonical(t, undid, all); got != want {
			t.Fatalf("without:\n%s\nundone:\n%s", want, got)
		}
	})
}

// What was poured is the sum of the readings that were not undone.
func TestReplay_PouredIsTheSum(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		var events []job.Event
		millilitres, any := 0, false
		for i := range rapid.IntRange(0, 8).Draw(t, "readings") {
			ml := 10 * rapid.IntRange(0, 99).Draw(t, "10 mL")
			id := "e" + strconv.Itoa(i)
			events = append(events, job.Event{ID: id, Time: drawTime(t), Kind: job.Reading, Step: plantest.Pick(t, "step", "pour-engine", "top-up-engine"),
				What: plan.AskPoured, About: "engine", Value: strconv.Itoa(ml) + " mL"})
			if rapid.Bool().Draw(t, "undone") {
				events = append(events, job.Event{ID: "u" + id, Time: drawTime(t), Kind: job.Undo, About: id})
				continue
			}
			millilitres, any = millilitres+ml, true
		}
		want := ""
		if any {
			want = strconv.FormatFloat(float64(millilitres)/1000, 'f', -1, 64) + " L"
		}
		oil := replay(t, c, plan.Bench{System: quantity.Metric}, events).Oils[0]
		if got := first(oil.Poured); got != want {
			t.Fatalf("poured %q, want %q", got, want)
		}
		if any != (oil.Verdict != "") {
			t.Fatalf("poured %q, verdict %q", want, oil.Verdict)
		}
	})
}

func first(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[0]
}

// Garbage among the events changes nothing that the good ones say: what it tells of
// steps that the plan doesn't have stands beside it.
func TestReplay_GarbageLosesNothing(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawEvents(t, p, "a")
		want := replay(t, c, b, events)
		garbage := drawGarbage(t, p)
		mixed := rapid.Permutation(append(slices.Clone(events), garbage...)).Draw(t, "mixed")
		got := replay(t, c, b, mixed)
		if !slices.Equal(got.Done, want.Done) || got.Next != want.Next || got.Finished != want.Finished ||
			!slices.EqualFunc(honest(got.Readings), want.Readings, func(x, y job.Read) bool { return x.ID == y.ID && slices.Equal(x.Texts, y.Texts) }) {
			t.Fatalf("without garbage %+v\nwith it %+v\ngarbage %+v", want, got, garbage)
		}
		for _, f := range got.Findings {
			if f.Code == "" || f.Where == "" || f.Grade == "" {
				t.Fatalf("finding %+v", f)
			}
		}
	})
}

// Every sentence that a state needs is in the catalogue.
func TestReplay_EveryWordIsInTheCatalogue(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := append(drawEvents(t, p, "a"), drawGarbage(t, p)...)
		s := replay(t, c, b, events)
		for _, f := range s.Findings {
			plantest.Say(t, "finding."+f.Code, f.Values)
			plantest.Say(t, "finding."+f.Code+".do", f.Values)
		}
		for _, o := range s.Oils {
			plantest.Say(t, o.Role, nil)
			for _, id := range []string{o.Level, o.Verdict} {
				if id != "" {
					plantest.Say(t, id, nil)
				}
			}
		}
		for _, r := range s.Readings {
			plantest.Say(t, "ask."+r.What, nil)
		}
		if s.DueAgain != nil {
			plantest.SayFigure(t, *s.DueAgain)
		}
	})
}

// honest leaves out the readings that drawGarbage made.
func honest(list []job.Read) []job.Read {
	return slices.DeleteFunc(slices.Clone(list), func(r job.Read) bool { return !strings.HasPrefix(r.ID, "a") })
}
