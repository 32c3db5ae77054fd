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
	"tidysump/specs"
)

// openJob is a job of a few steps about three fasteners of one oil: a level screw that
// is opened twice, the drain plug and a panel.
func openJob(t testing.TB, steps ...plan.Step) *plan.Plan {
	t.Helper()
	c := &card.Card{Format: card.Format, Version: card.Version, ID: "one", Make: "Plainford", Model: "One", Layout: card.WetSump,
		Circuits: []card.Circuit{{ID: "engine", Role: card.EngineOil}},
		Bolts: []card.Bolt{{ID: "screw", Circuit: "engine", Purpose: card.LevelScrew, Place: "left"},
			{ID: "drain", Circuit: "engine", Purpose: card.DrainPlug, Drains: true, Place: "below"},
			{ID: "panel", Circuit: "engine", Purpose: card.Panel, Count: 4}}}
	p, list := plantest.Made(c, plan.Bench{})
	if p == nil {
		t.Fatal(list)
	}
	for i := range steps {
		steps[i].Stage = plan.Ready
	}
	p.Steps = steps
	return p
}

func opens(id string, bolts ...string) plan.Step  { return plan.Step{ID: id, Opens: bolts} }
func closes(id string, bolts ...string) plan.Step { return plan.Step{ID: id, Closes: bolts} }

func whole(t testing.TB) *plan.Plan {
	poured := []plan.Ask{{What: plan.AskPoured, About: "engine", Unit: "L"}}
	return openJob(t, opens("peek-off", "screw"), closes("peek-on", "screw"), plan.Step{ID: "warm", Runs: true},
		opens("panel-off", "panel"), opens("drain-off", "drain"), closes("drain-on", "drain"),
		opens("screw-off", "screw"), plan.Step{ID: "pour", Asks: poured}, closes("screw-on", "screw"),
		plan.Step{ID: "start", Runs: true}, closes("panel-on", "panel"), plan.Step{ID: "ride", Runs: true})
}

// doneAt are events that say in that order that steps were done; "-step" takes it back.
func doneAt(steps ...string) []job.Event {
	var list []job.Event
	for i, s := range steps {
		e := job.Event{ID: s, Seq: i + 1, Time: "2026-11-25T10:" + strconv.Itoa(10+i) + ":00.000Z", Kind: job.Done, Step: s}
		if s[0] == '-' {
			e.Kind, e.Step, e.About = job.Undo, "", s[1:]
		}
		list = append(list, e)
	}
	return list
}

// stepsOf are the steps at which these cautions stand.
func stepsOf(list []job.StepWarn) []string {
	var ids []string
	for _, w := range list {
		ids = append(ids, w.Step)
	}
	return ids
}

// It stands whole at the first step that is met after the opening.
func TestReplay_OpenIsWholeWhereItIsMetFirst(t *testing.T) {
	for opened, want := range map[string]string{"drain-off": "pour", "screw-off": "start", "panel-off": "ride"} {
		s := job.Replay(whole(t), &job.History{Events: doneAt(opened)}, nil)
		for _, w := range s.OpenAt {
			if got := !w.Short; got != (w.Step == want) {
				t.Errorf("%s: whole at %s: %v, want at %s of %v", opened, w.Step, got, want, stepsOf(s.OpenAt))
			}
		}
	}
}

// leads is what is open, each with the step that closes it.
func leads(s *job.State) []string {
	var list []string
	for _, o := range s.Open {
		list = append(list, o.About+" "+o.Step)
	}
	return list
}

func TestReplay_OpenedAndNotClosed(t *testing.T) {
	for _, tt := range []struct {
		name   string
		events []job.Event
		open   []string
		at     []string
	}{
		{"nothing done", nil, nil, nil},
		{"opened", doneAt("drain-off"), []string{"drain drain-on"}, []string{"warm", "pour", "start", "ride"}},
		{"closed", doneAt("drain-off", "drain-on"), nil, nil},
		{"in the order of opening", doneAt("drain-off", "panel-off", "peek-off"),
			[]string{"drain drain-on", "panel panel-on", "screw peek-on"}, []string{"warm", "pour", "start", "ride"}},
		{"taken back", doneAt("drain-off", "-drain-off"), nil, nil},
		{"closing taken back", doneAt("drain-off", "drain-on", "-drain-on"), []string{"drain drain-on"}, []string{"warm", "pour", "start", "ride"}},
		{"brought back", doneAt("drain-off", "-drain-off", "--drain-off"), []string{"drain drain-on"}, []string{"warm", "pour", "start", "ride"}},
		{"closed before it was ticked as opened", doneAt("drain-on", "drain-off"), nil, nil},
		{"oil is poured with a level screw open", doneAt("screw-off"), []string{"screw screw-on"}, []string{"warm", "start", "ride"}},
		{"the first closing was passed over", doneAt("peek-off", "screw-off", "screw-on"), nil, nil},
		{"the first closing is not the second", doneAt("peek-off", "peek-on", "screw-off"), []string{"screw screw-on"}, []string{"warm", "start", "ride"}},
		{"the last closing counts for both", doneAt("peek-off", "screw-off"), []string{"screw screw-on"}, []string{"warm", "start", "ride"}},
		{"the engine may run without its panel, nobody rides so", doneAt("panel-off"), []string{"panel panel-on"}, []string{"ride"}},
	} {
		s := job.Replay(whole(t), &job.History{Events: tt.events}, nil)
		if got := leads(s); !slices.Equal(got, tt.open) || !slices.Equal(stepsOf(s.OpenAt), tt.at) {
			t.Errorf("%s: open %v at %v, want %v at %v", tt.name, got, s.OpenAt, tt.open, tt.at)
		}
		whole := 0
		for _, w := range s.OpenAt {
			if w.Signal != plan.Warning || w.Word != "caution.still-open" {
				t.Errorf("%s: warned with %+v", tt.name, w)
			}
			if !w.Short {
				whole++
			}
		}
		if whole > 1 || (whole > 0) != (tt.at != nil) {
			t.Errorf("%s: whole %d times at %v", tt.name, whole, s.OpenAt)
		}
	}
}

// Pieces and place are those of the card.
func TestReplay_OpenSaysWhat(t *testing.T) {
	s := job.Replay(whole(t), &job.History{Events: doneAt("panel-off", "drain-off")}, nil)
	want := []job.OpenPlace{{About: "panel", Purpose: "purpose.panel", Count: 4, Step: "panel-on"},
		{About: "drain", Purpose: "purpose.drain-plug", Place: "below", Count: 1, Step: "drain-on"}}
	for i, w := range want {
		if got := s.Open[i]; got.About != w.About || got.Purpose != w.Purpose || got.Place != w.Place || got.Count != w.Count || got.Step != w.Step {
			t.Errorf("open %+v, want %+v", got, w)
		}
	}
}

// A job that has no step to close what it opened says so, and leads nowhere.
func TestReplay_OpenWithoutAClosingStep(t *testing.T) {
	p := openJob(t, opens("drain-off", "drain"), plan.Step{ID: "start", Runs: true})
	s := job.Replay(p, &job.History{Events: doneAt("drain-off")}, nil)
	if got := leads(s); !slices.Equal(got, []string{"drain "}) || !slices.Equal(stepsOf(s.OpenAt), []string{"start"}) {
		t.Errorf("open %v at %v", got, s.OpenAt)
	}
}

// What was open when the work was finished is told, each thing once, and its closing
// step not told a second time.
func TestReplay_FinishedOpen(t *testing.T) {
	p := whole(t)
	for i := range p.Steps {
		p.Steps[i].Must = len(p.Steps[i].Closes) > 0
	}
	events := append(doneAt("peek-off", "drain-off", "drain-on"), job.Event{ID: "end", Seq: 4, Time: "2026-11-25T11:00:00.000Z", Kind: job.Finish})
	var got []string
	for _, f := range job.Replay(p, &job.History{Events: events}, nil).Findings {
		if f.Grade != finding.Doubt {
			t.Errorf("%+v", f)
		}
		got = append(got, f.Code+" "+f.Values["place"])
	}
	if want := []string{"finished-open left", "finished-without "}; !slices.Equal(got, want) {
		t.Errorf("told %v, want %v: the panel was never taken off", got, want)
	}
}

// drawOpenings gives the steps of a plan fasteners to open and close, at random.
func drawOpenings(t *rapid.T, p *plan.Plan) {
	var ids []string
	for i := range p.Card().Bolts {
		ids = append(ids, p.Card().Bolts[i].ID)
	}
	if len(ids) == 0 {
		return
	}
	list := rapid.SliceOfNDistinct(rapid.SampledFrom(ids), 0, 2, rapid.ID)
	for i := range p.Steps {
		p.Steps[i].Opens, p.Steps[i].Closes = nil, nil
		switch rapid.IntRange(0, 2).Draw(t, "turns") {
		case 0:
			p.Steps[i].Opens = list.Draw(t, "opens")
		case 1:
			p.Steps[i].Closes = list.Draw(t, "closes")
		}
	}
}

// isOpen says the same by looking at each opening by itself.
func isOpen(p *plan.Plan, done []string, id string) bool {
	was := func(i int) bool { return slices.Contains(done, p.Steps[i].ID) }
	for i := range p.Steps {
		if !was(i) || !slices.Contains(p.Steps[i].Opens, id) {
			continue
		}
		after, any, closed, closedAny := false, false, false, false
		for j := range p.Steps {
			if slices.Contains(p.Steps[j].Closes, id) {
				any, closedAny = true, closedAny || was(j)
				after, closed = after || j > i, closed || j > i && was(j)
			}
		}
		if after && !closed || !after && any && !closedAny || !any {
			return true
		}
	}
	return false
}

// After any events, in whatever order, with undos among them: open is what was opened and
// not closed; each thing once; the step that closes it isn't done; and once all of these
// are done nothing is open that the plan can close. While something is open no step whose
// engine runs is without its warning, but that of a panel before its turn.
func TestReplay_OpenIsOpenedAndNotClosed(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		drawOpenings(t, p)
		events := drawHonest(t, p, "a")
		for i := range rapid.IntRange(0, 12).Draw(t, "more") {
			e := job.Event{ID: "d" + strconv.Itoa(i), Seq: len(events) + 1, Time: drawTime(t), Kind: job.Done, Step: rapid.SampledFrom(p.Steps).Draw(t, "done").ID}
			if len(events) > 0 && rapid.IntRange(0, 3).Draw(t, "undo") == 0 {
				e.Kind, e.Step, e.About = job.Undo, "", rapid.SampledFrom(events).Draw(t, "of").ID
			}
			events = append(events, e)
		}
		for range len(p.Steps) + 1 {
			s := job.Replay(p, &job.History{Events: events}, nil)
			seen := map[string]bool{}
			for _, o := range s.Open {
				if seen[o.About] {
					t.Fatalf("%s is told twice", o.About)
				}
				seen[o.About] = true
				if step := p.Step(o.Step); o.Step != "" && (slices.Contains(s.Done, o.Step) || !slices.Contains(step.Closes, o.About)) {
					t.Fatalf("%s closes %v and not %s, done %v", o.Step, step.Closes, o.About, s.Done)
				}
			}
			for i := range p.Card().Bolts {
				b := &p.Card().Bolts[i]
				if want := isOpen(p, s.Done, b.ID); seen[b.ID] != want {
					t.Fatalf("%s is open: %v, told %v; done %v", b.ID, want, seen[b.ID], s.Done)
				}
				for _, step := range p.Steps {
					if step.Runs && seen[b.ID] && b.Purpose != card.Panel && !slices.Contains(stepsOf(s.OpenAt), step.ID) {
						t.Fatalf("%s runs the engine and doesn't warn of %s", step.ID, b.ID)
					}
				}
			}
			at := slices.IndexFunc(s.Open, func(o job.OpenPlace) bool { return o.Step != "" })
			if at < 0 {
				return
			}
			events = append(events, next(events, job.Done, ""))
			events[len(events)-1].Step = s.Open[at].Step
		}
		t.Fatal("closing what is open comes to no end")
	})
}

// samples runs a check over the plans of the sample cards on every bench, each sequence of
// steps once.
func samples(t *testing.T, check func(t *testing.T, p *plan.Plan)) {
	seen := map[string]bool{}
	for _, text := range specs.Cards() {
		c, _ := card.Read(text)
		for _, b := range plantest.Benches(c) {
			p, list := plantest.Made(c, b)
			if p == nil {
				t.Fatalf("%s: %v", c.ID, list)
			}
			name := c.ID
			for _, s := range p.Steps {
				name += " " + s.ID
			}
			if !seen[name] {
				seen[name] = true
				check(t, p)
			}
		}
	}
}

// On every bike and bench, done in the order of the plan: after each step open is what was
// opened and not closed, something is open at some time, no step that runs the engine is
// met with anything open but a panel, and at the end nothing is.
func TestReplay_OpenThroughTheWholePlan(t *testing.T) {
	samples(t, func(t *testing.T, p *plan.Plan) {
		open := map[string]bool{}
		var events []job.Event
		ever := false
		for i := range p.Steps {
			s := &p.Steps[i]
			events = append(events, doneAt(s.ID)[0])
			events[i].Seq = i + 1
			if s.Runs && len(open) > 0 {
				for id := range open {
					if p.Card().Bolt(id).Purpose != card.Panel {
						t.Errorf("%s: %s runs the engine with %s open", p.CardID, s.ID, id)
					}
				}
			}
			if len(s.Opens)+len(s.Closes) == 0 && i < len(p.Steps)-1 {
				continue
			}
			for _, id := range s.Opens {
				open[id] = true
			}
			for _, id := range s.Closes {
				delete(open, id)
			}
			state := job.Replay(p, &job.History{Events: events}, nil)
			if len(state.Open) != len(open) {
				t.Fatalf("%s: after %s open is %v, want %v", p.CardID, s.ID, leads(state), open)
			}
			barred := false
			for _, o := range state.Open {
				if !open[o.About] || o.Step == "" {
					t.Errorf("%s: after %s open is %s, closed by %q", p.CardID, s.ID, o.About, o.Step)
				}
				barred = barred || p.Card().Bolt(o.About).Purpose != card.Panel
			}
			ever = ever || len(open) > 0
			for _, other := range p.Steps {
				if other.Runs && barred && !slices.Contains(stepsOf(state.OpenAt), other.ID) {
					t.Errorf("%s: after %s nothing warns at %s", p.CardID, s.ID, other.ID)
				}
			}
		}
		if len(open) > 0 {
			t.Errorf("%s: %v is open at the end", p.CardID, open)
		}
		if !ever && !p.GetHome() {
			t.Errorf("%s: nothing was ever open", p.CardID)
		}
	})
}

// A step that the plan doesn't have, done under another version, opens and closes what it
// says: its plug is open until the step here that closes it is done, or one of there.
func TestReplay_OpenedElsewhere(t *testing.T) {
	samples(t, func(t *testing.T, p *plan.Plan) {
		for i := range p.Steps {
			off := p.Steps[i]
			if len(off.Opens) != 1 || strings.HasSuffix(off.ID, "-again") {
				continue
			}
			id := off.Opens[0]
			short := *p
			short.Steps = slices.Delete(slices.Clone(p.Steps), i, i+1)
			s := job.Replay(&short, &job.History{Events: doneAt(off.ID)}, nil)
			if len(s.Open) != 1 || s.Open[0].About != id || s.Open[0].Step == "" || len(s.Elsewhere) != 1 {
				t.Errorf("%s: %s done elsewhere, open is %v", p.CardID, off.ID, leads(s))
				continue
			}
			if s = job.Replay(&short, &job.History{Events: doneAt(off.ID, s.Open[0].Step)}, nil); len(s.Open) > 0 {
				t.Errorf("%s: %s closed, open is %v", p.CardID, off.ID, leads(s))
			}
			none := *p
			none.Steps = slices.DeleteFunc(slices.Clone(p.Steps), func(s plan.Step) bool { return slices.Contains(s.Closes, id) })
			on := p.Steps[slices.IndexFunc(p.Steps, func(s plan.Step) bool { return slices.Contains(s.Closes, id) })]
			if s = job.Replay(&none, &job.History{Events: doneAt(off.ID, on.ID)}, nil); slices.ContainsFunc(s.Open, func(o job.OpenPlace) bool { return o.About == id }) {
				t.Errorf("%s: %s closed elsewhere by %s, open is %v", p.CardID, off.ID, on.ID, leads(s))
			}
		}
	})
}
