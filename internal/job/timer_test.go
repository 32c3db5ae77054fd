package job_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

const fiveOn = "2026-11-25T10:14:00.000Z"

func timer(id, minute, step, what, until string) job.Event {
	return job.Event{ID: id, Time: "2026-11-25T10:" + minute + ":00.000Z", Kind: job.Timed, Step: step, What: what, Until: until}
}

func TestReplay_Timers(t *testing.T) {
	drain, idle := timer("a", "09", "run-out", "drain", fiveOn), timer("b", "10", "first-start", "idle", fiveOn)
	again := timer("c", "11", "run-out", "drain", "2026-11-25T10:16:00.000Z")
	done := job.Event{ID: "d", Time: "2026-11-25T10:12:00.000Z", Kind: job.Done, Step: "run-out"}
	finish := job.Event{ID: "f", Time: "2026-11-25T10:13:00.000Z", Kind: job.Finish}
	undo := func(of string) job.Event {
		return job.Event{ID: "u" + of, Time: "2026-11-25T10:13:30.000Z", Kind: job.Undo, About: of}
	}
	for name, tt := range map[string]struct {
		events []job.Event
		want   []string // ids of the timers
	}{
		"none":                                {nil, nil},
		"two at once":                         {[]job.Event{drain, idle}, []string{"a", "b"}},
		"started again":                       {[]job.Event{drain, idle, again}, []string{"b", "c"}},
		"in another order":                    {[]job.Event{again, idle, drain}, []string{"b", "c"}},
		"twice the same, from two records":    {[]job.Event{drain, drain}, []string{"a"}},
		"undone":                              {[]job.Event{drain, idle, undo("a")}, []string{"b"}},
		"the second undone: the first counts": {[]job.Event{drain, again, undo("c")}, []string{"a"}},
		"its step done":                       {[]job.Event{drain, idle, done}, []string{"b"}},
		"done, and that undone":               {[]job.Event{drain, done, undo("d")}, []string{"a"}},
		"done before it was started":          {[]job.Event{done, timer("e", "13", "run-out", "drain", fiveOn)}, []string{"e"}},
		"the work finished":                   {[]job.Event{drain, idle, finish}, nil},
		"at another step":                     {[]job.Event{timer("x", "09", "first-start", "drain", fiveOn)}, nil},
		"unknown":                             {[]job.Event{timer("x", "09", "run-out", "egg", fiveOn)}, nil},
		"at no step":                          {[]job.Event{timer("x", "09", "", "drain", fiveOn)}, nil},
		"without an end":                      {[]job.Event{timer("x", "09", "run-out", "drain", "")}, nil},
		"an end that does not sort":           {[]job.Event{timer("x", "09", "run-out", "drain", "2026-11-25T10:14:00Z")}, nil},
		"a wrong one ends no other":           {[]job.Event{drain, timer("x", "10", "run-out", "drain", "soon")}, []string{"a"}},
	} {
		s, _ := replayed(plantest.Sample(t, "tessaly-corda-570"), plan.Bench{}, tt.events)
		var got []string
		for _, r := range s.Timers {
			got = append(got, r.ID)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: timers %v, want %v; findings %v", name, got, tt.want, s.Findings)
		}
	}
}

// What is wrong with a timer is reported at its place, and refuses it.
func TestReplay_TimerFaults(t *testing.T) {
	for want, e := range map[string]job.Event{
		"not-asked /events/0/what":    timer("x", "09", "run-out", "egg", fiveOn),
		"unknown-step /events/0/step": timer("x", "09", "", "drain", fiveOn),
		"bad-time /events/0/until":    timer("x", "09", "run-out", "drain", "soon"),
	} {
		s, _ := replayed(plantest.Sample(t, "tessaly-corda-570"), plan.Bench{}, []job.Event{e})
		if len(s.Findings) != 1 || s.Findings[0].Code+" "+s.Findings[0].Where != want || s.Findings[0].Grade != finding.Refuse || s.LastID != "" {
			text, _ := json.Marshal(s.Findings)
			t.Errorf("got %s, last %q, want %s", text, s.LastID, want)
		}
	}
}

// However timers were started, a step has each at most once, and the last one
// started counts.
func TestReplay_OneTimerOfAName(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		var events []job.Event
		last := map[string]string{}
		for i := range rapid.IntRange(0, 9).Draw(t, "timers") {
			step, id := plantest.Pick(t, "step", "run-out", "leak-look"), "e"+strconv.Itoa(i)
			what := map[string]string{"run-out": "drain", "leak-look": "leak"}[step]
			events = append(events, timer(id, strconv.Itoa(10+i), step, what, fiveOn))
			last[step] = id
		}
		s := replay(t, c, plan.Bench{}, rapid.Permutation(events).Draw(t, "order"))
		got := map[string]string{}
		for _, r := range s.Timers {
			got[r.Step] = r.ID
		}
		if len(s.Timers) != len(last) || got["run-out"] != last["run-out"] || got["leak-look"] != last["leak-look"] {
			t.Fatalf("got %v, want %v", s.Timers, last)
		}
	})
}
