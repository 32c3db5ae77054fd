package job_test

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/debris"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/wire"
)

const bike = "tessaly-corda-570"

// lookAt is a look in that minute.
func lookAt(id string, minute int, step string, signs ...string) job.Event {
	e := job.Event{ID: id, Time: "2026-11-25T10:" + strconv.Itoa(10+minute) + ":00.000Z", Kind: job.Saw, Step: step, Signs: map[string]string{}}
	for i := 0; i < len(signs); i += 2 {
		e.Signs[signs[i]] = signs[i+1]
	}
	return e
}

func event(id string, minute int, kind job.EventKind, step, of string) job.Event {
	e := lookAt(id, minute, step)
	e.Kind, e.About, e.Signs = kind, of, nil
	return e
}

func after(t *testing.T, last *job.Past, events ...job.Event) *job.State {
	t.Helper()
	s, list := replayedAfter(last, plantest.Sample(t, bike), plan.Bench{}, events)
	if s == nil {
		t.Fatalf("no state: %v", list)
	}
	return s
}

func codes(s *job.State) []string {
	var list []string
	for _, f := range s.Findings {
		list = append(list, f.Code)
	}
	return list
}

func TestLook_Verdict(t *testing.T) {
	paste := lookAt("a", 1, "look-oil", "found", "nothing", "oil", "dark")
	flakes := lookAt("b", 2, "look-filter-filter", "found", "flakes", "size", "two", "amount", "few")
	silent := lookAt("c", 3, "look-magnet-drain")
	thin := lookAt("f", 3, "look-magnet-drain", "found", "fuzz", "depth", "two")
	clean := lookAt("g", 4, "look-filter-filter", "found", "nothing")
	for _, c := range []struct {
		what   string
		events []job.Event
		want   string
	}{
		{"nobody looked", nil, ""},
		{"all looked at, and nothing seen", []job.Event{paste, thin, clean}, "debris.normal"},
		{"not looked at is not normal", []job.Event{paste, thin}, "debris.partly"},
		{"a thin coat, nobody said how thin", []job.Event{paste, clean, lookAt("h", 5, "look-magnet-drain", "found", "fuzz")}, "debris.partly"},
		{"the oil, and not what was in it", []job.Event{thin, clean, lookAt("h", 5, "look-oil", "oil", "dark")}, "debris.partly"},
		{"the worst counts", []job.Event{paste, flakes}, "debris.watch"},
		{"a look that tells nothing is none", []job.Event{silent}, "debris.unsaid"},
		{"nor is it normal with others", []job.Event{paste, clean, silent}, "debris.partly"},
		{"but it hides nothing", []job.Event{flakes, silent}, "debris.watch"},
		{"a noise told with the oil counts for the filter too", []job.Event{flakes, lookAt("d", 4, "look-oil", "found", "paste", "noise", "fades")}, "debris.stop"},
		{"as it was told before", []job.Event{flakes, lookAt("d", 4, "look-oil", "found", "paste", "noise", "yes")}, "debris.stop"},
		{"the lamp alone", []job.Event{paste, thin, lookAt("d", 4, "look-filter-filter", "found", "nothing", "lamp", "yes")}, "debris.stop"},
		{"the same step again replaces it", []job.Event{flakes, lookAt("e", 5, "look-filter-filter", "found", "nothing")}, "debris.partly"},
		{"and undone, it counts again", []job.Event{flakes, lookAt("e", 5, "look-filter-filter", "found", "paste"), event("u", 6, job.Undo, "", "e")}, "debris.watch"},
		{"undone", []job.Event{flakes, event("u", 6, job.Undo, "", "b")}, ""},
	} {
		if s := after(t, nil, c.events...); s.Verdict != c.want {
			t.Errorf("%s: %q, want %q; looks %+v", c.what, s.Verdict, c.want, s.Looks)
		}
	}
}

// Where one look says stop, no other advises what the engine must run for, and the
// job's own list is that of its verdict.
func TestLook_Actions(t *testing.T) {
	glitter := lookAt("a", 1, "look-filter-filter", "found", "glitter")
	milky := lookAt("b", 2, "look-oil", "oil", "milky")
	if s := after(t, nil, glitter); !slices.Contains(s.Actions, "next.soon") || !slices.Contains(s.Looks[0].Next, "next.soon") {
		t.Errorf("glitter: %v, %v", s.Actions, s.Looks[0].Next)
	}
	if s := after(t, nil, glitter); !slices.Contains(s.Actions, "next.tell") {
		t.Errorf("the oil and the magnet are not told of, and what to do is %v", s.Actions)
	}
	if s := after(t, nil, glitter, event("f", 9, job.Finish, "", "")); slices.Contains(s.Actions, "next.tell") {
		t.Errorf("finished, what to do is %v", s.Actions)
	}
	s := after(t, nil, glitter, milky)
	if !slices.Contains(s.Actions, "next.no-start") || !slices.Contains(s.Actions, "next.sample") || slices.Contains(s.Actions, "next.soon") {
		t.Errorf("glitter and milky oil: %v", s.Actions)
	}
	for _, l := range s.Looks {
		if slices.Contains(l.Next, "next.soon") {
			t.Errorf("%s: %v, and another look says stop", l.Step, l.Next)
		}
	}
}

// What a problem that was met forbids, no look advises, and lists say it.
func TestLook_BesideAProblem(t *testing.T) {
	glitter := lookAt("a", 1, "look-filter-filter", "found", "glitter")
	leak := event("p", 2, job.Problem, "", "")
	leak.What, leak.Value = "drop-plug", "do-not-ride"
	s := after(t, nil, glitter, leak)
	if !s.Summary.Stop || !slices.Contains(s.Actions, "next.no-start") || slices.Contains(s.Actions, "next.soon") || slices.Contains(s.Looks[0].Next, "next.soon") {
		t.Errorf("glitter beside a leak: stops %v, %v, %v", s.Summary.Stop, s.Actions, s.Looks[0].Next)
	}
	if s := after(t, nil, leak); !s.Summary.Stop || !slices.Equal(s.Actions, []string{"next.no-start"}) {
		t.Errorf("a leak alone: stops %v, %v", s.Summary.Stop, s.Actions)
	}
	if s := after(t, nil, glitter); s.Summary.Stop {
		t.Errorf("glitter alone stops: %v", s.Actions)
	}
	if s := after(t, nil); s.Summary.Stop || len(s.Actions) > 0 {
		t.Errorf("nothing told: stops %v, %v", s.Summary.Stop, s.Actions)
	}
	if s := after(t, nil, lookAt("a", 1, "look-oil", "oil", "milky")); !s.Summary.Stop {
		t.Error("milky oil doesn't stop")
	}
}

// Each wrong sign is one finding, and the look that holds it doesn't count.
func TestLook_Refused(t *testing.T) {
	for _, c := range []struct {
		event job.Event
		want  []string
	}{
		{lookAt("a", 1, "look-oil", "found", "cheese", "oil", "dark", "noise", "maybe", "smell", "sweet"), []string{"unknown-sign", "unknown-sign", "unknown-sign"}},
		{lookAt("a", 1, "measure-engine", "found", "paste"), []string{"not-asked"}},
		{lookAt("a", 1, "", "found", "paste"), []string{"unknown-step"}},
		{lookAt("a", 1, "look-nowhere", "found", "paste"), []string{"unknown-step"}},
	} {
		s := replayedNew(plantest.Sample(t, bike), plan.Bench{}, []job.Event{c.event})
		if !slices.Equal(codes(s), c.want) || len(s.Looks) > 0 || s.Verdict != "" || s.LastID != "" {
			t.Errorf("%+v: %v, want %v; state %s", c.event, s.Findings, c.want, wire.Write(s))
		}
	}
}

// A stop warns at every step that fills, starts or rides and at no other; done all
// the same, it is reported; done before anybody saw it, it is not.
func TestLook_Stop(t *testing.T) {
	milky := lookAt("a", 5, "look-oil", "oil", "milky")
	s := after(t, nil, milky)
	if s.Verdict != "debris.stop" || len(s.Warns) == 0 || s.Warns[0].Signal != plan.Warning || s.Warns[0].Short || len(codes(s)) > 0 {
		t.Fatalf("milky oil: %s", wire.Write(s))
	}
	made, _ := plantest.Made(plantest.Sample(t, bike), plan.Bench{})
	for _, step := range made.Steps {
		want := step.Stage == plan.Fill || step.ID == "ride" || step.ID == "second-look"
		if got := slices.Contains(stepsOf(s.Warns), step.ID); got != want {
			t.Errorf("%s: warned %v, want %v", step.ID, got, want)
		}
	}
	if s := after(t, nil, milky, event("b", 6, job.Done, "first-start", "")); !slices.Equal(codes(s), []string{"run-despite-stop"}) {
		t.Errorf("started all the same: %v", s.Findings)
	}
	if s := after(t, nil, milky, event("b", 4, job.Done, "first-start", "")); len(s.Findings) > 0 {
		t.Errorf("started before: %v", s.Findings)
	}
	if s := after(t, nil, milky, event("u", 6, job.Undo, "", "a")); len(s.Warns) > 0 {
		t.Errorf("undone: %s", wire.Write(s))
	}
}

func past(t *testing.T, events ...job.Event) *job.Past {
	return &job.Past{Card: *plantest.Sample(t, bike), History: job.History{Events: events}}
}

func TestLook_Compared(t *testing.T) {
	const step = "look-magnet-drain"
	odometer := event("o", 0, job.Reading, "identify", "")
	odometer.What, odometer.Value = plan.AskOdometer, "12 340 km"
	fuzz := past(t, odometer, lookAt("a", 1, step, "found", "fuzz"))
	for _, c := range []struct {
		what    string
		last    *job.Past
		now     job.Event
		verdict string
		code    string
	}{
		{"more", fuzz, lookAt("n", 1, step, "found", "glitter"), "debris.stop", "look-more"},
		{"the person says it isn't", fuzz, lookAt("n", 1, step, "found", "glitter", "more", "no"), "debris.watch", "look-more"},
		{"less", fuzz, lookAt("n", 1, step, "found", "paste", "depth", "half"), "debris.partly", "look-less"},
		{"the person says it is more", fuzz, lookAt("n", 1, step, "found", "paste", "more", "yes"), "debris.watch", "look-less"},
		{"the same", fuzz, lookAt("n", 1, step, "found", "fuzz"), "debris.partly", "look-same"},
		{"another thing", fuzz, lookAt("n", 1, step, "found", "clutch"), "debris.watch", "look-apart"},
		{"another place", fuzz, lookAt("n", 1, "look-oil", "found", "glitter"), "debris.watch", ""},
		{"no last job", nil, lookAt("n", 1, step, "found", "glitter"), "debris.watch", ""},
		{"the last one undone", past(t, lookAt("a", 1, step, "found", "fuzz"), event("u", 2, job.Undo, "", "a")), lookAt("n", 1, step, "found", "glitter"), "debris.watch", ""},
	} {
		s := after(t, c.last, c.now)
		code := ""
		for _, f := range s.Looks[0].Compared {
			code = f.Code
			if f.Values["at"] != "12340 km" || f.Values["found"] != "@bit.fuzz" || f.Values["verdict"] != "@debris.partly" {
				t.Errorf("%s: %v", c.what, f.Values)
			}
		}
		if s.Verdict != c.verdict || code != c.code {
			t.Errorf("%s: %s %q, want %s %q", c.what, s.Verdict, code, c.verdict, c.code)
		}
		if may := s.Looks[0].MayDeny; may != (c.code == "look-more") {
			t.Errorf("%s: may be denied %v", c.what, may)
		}
	}
}

// What was to be watched and is there again is a step worse, unless the person says
// why not; what was mended, is less or is something else is not.
func TestLook_Recurs(t *testing.T) {
	const step = "look-magnet-drain"
	few := []string{"found", "flakes", "size", "two", "amount", "few", "colour", "bright"}
	watched := past(t, lookAt("a", 1, step, few...))
	for _, c := range []struct {
		what          string
		last          *job.Past
		now           job.Event
		verdict, code string
		may           bool
	}{
		{"again", watched, lookAt("n", 1, step, few...), "debris.stop", "look-same", true},
		{"again, and the person says it was mended", watched, lookAt("n", 1, step, append([]string{"more", "no"}, few...)...), "debris.watch", "look-same", true},
		{"again, not measured", watched, lookAt("n", 1, step, "found", "flakes"), "debris.stop", "look-same", true},
		{"smaller ones", watched, lookAt("n", 1, step, "found", "flakes", "size", "half", "amount", "few"), "debris.watch", "look-less", false},
		{"something else", watched, lookAt("n", 1, step, "found", "clutch"), "debris.watch", "look-apart", false},
		{"after those of the first service", past(t, lookAt("a", 1, step, append([]string{"firstService", "yes"}, few...)...)), lookAt("n", 1, step, few...), "debris.watch", "look-same", false},
		{"foam, once more", past(t, lookAt("a", 1, "look-oil", "oil", "foam")), lookAt("n", 1, "look-oil", "oil", "foam"), "debris.stop", "look-same", true},
		{"fuel, as it was told before, once more", past(t, lookAt("a", 1, "look-oil", "oil", "fuel")), lookAt("n", 1, "look-oil", "oil", "fuel-smell"), "debris.stop", "look-same", true},
	} {
		s := after(t, c.last, c.now)
		l := s.Looks[0]
		if s.Verdict != c.verdict || l.Compared[0].Code != c.code || l.MayDeny != c.may || l.Recurs != c.may {
			t.Errorf("%s: %s %v, may be denied %v, recurs %v; want %s %s %v", c.what, s.Verdict, l.Compared, l.MayDeny, l.Recurs, c.verdict, c.code, c.may)
		}
	}
}

// What is wrong with the last job is not reported, and changes nothing.
func TestReplayAfter_NothingLeaks(t *testing.T) {
	now := lookAt("n", 1, "look-magnet-drain", "found", "glitter")
	want := string(wire.Write(after(t, nil, now)))
	bad := past(t, job.Event{ID: "x"}, lookAt("y", 1, "look-nowhere"), event("z", 2, job.Undo, "", "none"))
	if got := string(wire.Write(after(t, bad, now))); got != want {
		t.Errorf("after a bad job:\n%s\nwant\n%s", got, want)
	}
	bad.Bench.Place = "the moon"
	if got := string(wire.Write(after(t, bad, now))); got != want {
		t.Errorf("after a job without a plan:\n%s\nwant\n%s", got, want)
	}
}

// Whatever was seen and in whatever order it comes in: the verdict is never better
// than the worst look, and every word is in the catalogue.
func TestLook_Everything(t *testing.T) {
	c := plantest.Sample(t, bike)
	rapid.Check(t, func(t *rapid.T) {
		last, events := drawLooks(t, "a"), drawLooks(t, "b")
		merged := rapid.Permutation(append(slices.Clone(events), someOf(t, events)...)).Draw(t, "merged")
		s, _ := replayedAfter(&job.Past{Card: *c, History: job.History{Events: last}}, c, plan.Bench{}, events)
		other, _ := replayedAfter(&job.Past{Card: *c, History: job.History{Events: last}}, c, plan.Bench{}, merged)
		if got, want := canonical(t, other, merged), canonical(t, s, events); got != want {
			t.Fatalf("in order:\n%s\nmerged:\n%s", want, got)
		}
		seen := map[string]bool{}
		for _, l := range s.Looks {
			if seen[l.Step] {
				t.Fatalf("two looks at %s", l.Step)
			}
			seen[l.Step] = true
			if rank(s.Verdict) < rank(l.Verdict) {
				t.Fatalf("%s of all, and %s of %+v", s.Verdict, l.Verdict, l)
			}
			for _, f := range append(l.Compared, l.Reasons...) {
				plantest.Say(t, "finding."+f.Code, f.Values)
			}
			for _, id := range append(append(l.Told, l.Next...), l.Verdict) {
				plantest.Say(t, id, nil)
			}
		}
		if (len(s.Warns) > 0) != (s.Verdict == "debris.stop") {
			t.Fatalf("%s, and warned %v", s.Verdict, s.Warns)
		}
	})
}

// rank orders the verdicts of a job: not to know is worse than normal, and partly says
// so of a job of which something is known.
func rank(verdict string) int {
	return slices.Index([]string{"", "debris.normal", "debris.unsaid", "debris.partly", "debris.watch", "debris.stop"}, verdict)
}

func drawLooks(t *rapid.T, prefix string) []job.Event {
	var list []job.Event
	for i := range rapid.IntRange(0, 6).Draw(t, "looks") {
		e := job.Event{ID: prefix + strconv.Itoa(i), Time: drawTime(t), Kind: job.Saw,
			Step: plantest.Pick(t, "step", "look-oil", "look-magnet-drain", "look-filter-filter"), Signs: drawSigns(t)}
		list = append(list, e)
		if rapid.IntRange(0, 4).Draw(t, "undone") == 0 {
			list = append(list, job.Event{ID: "u" + e.ID, Time: drawTime(t), Kind: job.Undo, About: e.ID})
		}
	}
	return list
}

// drawSigns draws the answers of a look; now and then one that isn't any.
func drawSigns(t *rapid.T) map[string]string {
	signs := map[string]string{}
	for _, a := range debris.Asks {
		words := a.Words
		if len(words) == 0 {
			words = []string{debris.Yes, debris.No}
		}
		if rapid.Bool().Draw(t, a.Name+" told") {
			signs[a.Name] = rapid.SampledFrom(words).Draw(t, a.Name)
		}
	}
	if rapid.IntRange(0, 9).Draw(t, "wrong") == 0 {
		signs["found"] = "cheese"
	}
	return signs
}
