package job_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// A record says the same after its steps were given other names, but for the steps done:
// those stand elsewhere. Everything that was written down, poured and read counts.
func TestElsewhere_RenamedSteps(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := drawHonest(t, p, "a")
		events = slices.DeleteFunc(events, func(e job.Event) bool { return e.Kind == job.Timed })
		want := replay(t, c, b, events)
		renamed := slices.Clone(events)
		for i := range renamed {
			if renamed[i].Step != "" {
				renamed[i].Step = "old-" + renamed[i].Step
			}
		}
		got := replay(t, c, b, renamed)
		// What a step of another version asked for isn't known here: what isn't answered at it
		// doesn't make a look a partial one.
		look := func(l job.Look) string { return l.ID + strings.Replace(l.Verdict, "partly", "normal", 1) }
		for name, ids := range map[string][2][]string{
			"notes":    {ids(want.Notes, func(n job.Remark) string { return n.ID }), ids(got.Notes, func(n job.Remark) string { return n.ID })},
			"photos":   {ids(want.Photos, func(n job.Picture) string { return n.ID }), ids(got.Photos, func(n job.Picture) string { return n.ID })},
			"readings": {ids(want.Readings, reading), ids(got.Readings, reading)},
			"looks":    {ids(want.Looks, look), ids(got.Looks, look)},
			"oils":     {ids(want.Oils, oil), ids(got.Oils, oil)},
		} {
			if !slices.Equal(ids[0], ids[1]) {
				t.Fatalf("%s were %q, and are %q with other names of steps: %+v", name, ids[0], ids[1], events)
			}
		}
		done := map[string]bool{}
		for _, e := range got.Elsewhere {
			done[strings.TrimPrefix(e.Step, "old-")] = true
		}
		for _, step := range want.Done {
			if !done[step] {
				t.Fatalf("%s was done, and stands nowhere: %+v", step, got.Elsewhere)
			}
		}
		for _, f := range got.Findings {
			if f.Code == "not-in-plan" && f.Grade != finding.Note {
				t.Fatalf("%+v", f)
			}
		}
	})
}

// What was done and written at a step that has another one in its place counts there: a
// filter is not screwed on twice. Where the job's own plan has the step, it stays there.
func TestElsewhere_Heir(t *testing.T) {
	for id, is := range map[string]string{"tessaly-corda-570": "filter-on-turn-", "ondrake-meridano-1130": "filter-on-torque-", "quillane-orsena-720": "filter-on-hand-"} {
		c := plantest.Sample(t, id)
		can := ""
		for _, b := range c.Bolts {
			if b.Purpose == card.FilterCanned {
				can = b.ID
			}
		}
		old := "filter-on-" + can
		events := series(job.Event{Kind: job.Note, Step: old, Text: "by hand"}, job.Event{Kind: job.Done, Step: old})
		s, _ := replayed(c, plan.Bench{}, events)
		if !slices.Equal(s.Done, []string{is + can}) || len(s.Elsewhere) > 0 || len(s.Findings) > 0 || len(s.Notes) != 1 || s.Notes[0].Step != is+can {
			t.Errorf("%s: done %v, elsewhere %v, notes %+v, findings %v", id, s.Done, s.Elsewhere, s.Notes, s.Findings)
		}
		checked, _ := card.Accept(c)
		p, _ := plan.Resume(checked, plan.Bench{}, []string{"identify", old})
		kept := job.Replay(p, &job.History{Events: events}, nil)
		if !slices.Equal(kept.Done, []string{old}) || kept.Notes[0].Step != old {
			t.Errorf("%s, begun with it: done %v, notes %+v", id, kept.Done, kept.Notes)
		}
	}
}

func ids[T any](list []T, id func(T) string) (all []string) {
	for _, e := range list {
		all = append(all, id(e))
	}
	return all
}

func reading(r job.Read) string { return r.ID + " " + strings.Join(r.Texts, ", ") }

func oil(b job.Balance) string {
	return strings.Join(slices.Concat(b.Poured, b.Drained, []string{b.Verdict}), ", ")
}

// What no step asks stands as it was typed, and nothing of it is a word id.
func TestElsewhere_ReadAsTyped(t *testing.T) {
	c := plantest.Sample(t, bike)
	for _, f := range []struct{ what, of, value, name, text string }{
		{"odometer", "", "12 000", "odometer", "12000 km"},
		{"poured", "gearbox", "1 pint", "poured", "1 pint"},
		{"pressure", "front", "2.3 bar", "other", "pressure 2.3 bar"},
		{"pressure", "", "@step.identify", "other", "pressure step.identify"},
		{"@step.identify", "", "1", "other", "step.identify 1"},
		{"poured", "gearbox", "@step.identify", "poured", "step.identify"},
	} {
		s, _ := replayed(c, plan.Bench{}, []job.Event{read("polish-the-tank", f.what, f.of, f.value)})
		if len(s.Readings) != 1 || s.Readings[0].What != f.name || first(s.Readings[0].Texts) != f.text || s.Readings[0].Step != "polish-the-tank" {
			t.Errorf("%+v: %+v", f, s.Readings)
		}
		if !slices.Equal(codes(s), []string{"not-in-plan"}) || s.LastID != "e" {
			t.Errorf("%+v: findings %v, last %s", f, s.Findings, s.LastID)
		}
	}
}

// A level that another version's step asked is the one before draining as long as
// nothing was poured, and the one at the end after that.
func TestElsewhere_Level(t *testing.T) {
	c := plantest.Sample(t, bike)
	h := job.History{Events: series(
		read("oil-stands", plan.AskLevel, "engine", "40 %"),
		read("fill", plan.AskPoured, "engine", "2.4 L"),
		read("oil-stands-now", plan.AskLevel, "engine", "75 %"))}
	trace, _ := (&job.Past{Card: *c, History: h}).Recall()
	found, left := trace.ShareFound["engine"], trace.ShareLeft["engine"]
	if found == nil || left == nil || *found != 0.4 || *left != 0.75 {
		t.Errorf("found %v, left %v", *found, *left)
	}
}

// A full record refuses what is new, lets the job be ended and taken back, and what is
// in it counts.
func TestHistory_Full(t *testing.T) {
	p := samplePlan(t)
	var events []job.Event
	for i := range job.MostBytes / 64000 {
		events = append(events, job.Event{ID: "n" + strconv.Itoa(i), Seq: i + 1, Time: noon, Kind: job.Note, Text: strings.Repeat("x", 64000)})
	}
	for kind, full := range map[job.EventKind]bool{job.Note: true, job.Billed: true, job.Undo: false, job.Finish: false, job.Done: false} {
		e := job.Event{ID: "new", Seq: len(events) + 1, Time: noon, Kind: kind, Text: strings.Repeat("x", 64000), Step: "identify", About: "n0", What: job.Bill}
		h := job.History{Events: append(slices.Clone(events), e), Adding: true}
		s := job.Replay(p, &h, nil)
		refused := slices.ContainsFunc(s.Findings, func(f finding.Finding) bool {
			return f.Code == "record-full" && f.Grade == finding.Refuse && f.Where == "/events/"+strconv.Itoa(len(events))
		})
		if refused != full {
			t.Errorf("a new %s: refused %v, want %v", kind, refused, full)
		}
		h.Adding = false
		if s := job.Replay(p, &h, nil); slices.Contains(codes(s), "record-full") || len(s.Notes) < len(events)-1 {
			t.Errorf("a %s that is there: %v, %d notes", kind, codes(s), len(s.Notes))
		}
	}
}

// Whether it is dry is asked before the work is finished and at the second look: said at
// a step of another version, it is the answer to the one whose turn it is.
func TestElsewhere_Leak(t *testing.T) {
	dry := read("dry-all-round", plan.AskLeak, "", "dry")
	look := job.Event{Kind: job.Done, Step: "second-look"}
	for name, f := range map[string]struct {
		events []job.Event
		want   bool // the job was closed with nothing against it
	}{
		"after the finish":  {series(job.Event{Kind: job.Finish}, dry, look), true},
		"before the finish": {series(dry, job.Event{Kind: job.Finish}, look), false},
	} {
		if s, _ := replayed(plantest.Sample(t, bike), plan.Bench{}, f.events); !slices.Contains(codes(s), "closed-despite-leak") != f.want {
			t.Errorf("%s: closed dry is not %v: %v", name, f.want, codes(s))
		}
	}
}

// What a record holds is shown even where this version can't make sense of it: a reading
// as it was typed, a look without the sign that is not known. Written now, it is refused.
func TestElsewhere_Unclear(t *testing.T) {
	c := plantest.Sample(t, bike)
	for _, value := range []string{"full", "9000 L", "-1 L", "a lot", "@step.identify"} {
		for _, what := range []string{plan.AskPoured, plan.AskLevel} {
			step := map[string]string{plan.AskPoured: "pour-engine", plan.AskLevel: "level-found-engine"}[what]
			good, unclear := read(step, what, "engine", map[string]string{plan.AskPoured: "1 L", plan.AskLevel: "40 %"}[what]), read(step, what, "engine", value)
			events := series(good, unclear)
			s, _ := replayed(c, plan.Bench{}, events)
			if len(s.Readings) != 2 || s.Readings[1].Texts[0] != strings.TrimPrefix(value, "@") || s.Readings[1].Stands || !s.Readings[0].Stands || len(s.Findings) == 0 {
				t.Errorf("%s %q: %+v, findings %v", what, value, s.Readings, s.Findings)
			}
			if s := replayedNew(c, plan.Bench{}, events); len(s.Readings) != 1 || s.Findings[0].Grade != finding.Refuse {
				t.Errorf("%s %q, new: %+v, findings %v", what, value, s.Readings, s.Findings)
			}
		}
	}
	s := after(t, nil, lookAt("a", 1, "look-oil", "found", "flakes", "smell", "burnt", "glow", "green"))
	if len(s.Looks) != 1 || s.Verdict != "debris.watch" || s.Looks[0].Signs["found"] != "flakes" || len(s.Looks[0].Signs) != 1 || len(s.Findings) != 2 {
		t.Errorf("a look with signs of another version: %+v, findings %v", s.Looks, s.Findings)
	}
}
