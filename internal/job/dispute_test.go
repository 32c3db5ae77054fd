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

func remark(id, text string) job.Event {
	return job.Event{ID: id, Seq: 1, Time: noon, Kind: job.Note, Text: text}
}

// samplePlan is the plan of the sample bike.
func samplePlan(t *testing.T) *plan.Plan {
	p, _ := plantest.Made(plantest.Sample(t, bike), plan.Bench{})
	return p
}

// What is here counts until the person decides, and the last decision counts until it is
// taken back.
func TestDispute_Choose(t *testing.T) {
	mine, theirs := remark("n", "mine"), remark("n", "theirs")
	h := &job.History{Events: []job.Event{mine}, Beside: []job.Event{theirs, theirs}}
	p := samplePlan(t)
	s := job.Replay(p, h, nil)
	if len(s.Disputed) != 1 || s.Disputed[0].ID != "n" || len(s.Disputed[0].Variants) != 2 || s.Summary.Disputed != 1 || s.Summary.Events != 1 {
		t.Fatalf("%s", wire.Write(s))
	}
	v := s.Disputed[0].Variants
	if v[0].Event.Text != "mine" || !v[0].Here || !v[0].Counts || v[1].Event.Text != "theirs" || v[1].Here || v[1].Counts || s.Notes[0].Text != "mine" {
		t.Fatalf("%s", wire.Write(s))
	}
	choose := func(id, digest string) {
		h.Events = append(h.Events, job.Event{ID: id, Seq: len(h.Events) + 1, Time: noon, Kind: job.Choose, About: "n", Value: digest})
	}
	says := func(what, text, last string) {
		t.Helper()
		s := job.Replay(p, h, nil)
		if len(s.Notes) != 1 || s.Notes[0].Text != text || s.LastID != last || len(s.Findings) > 0 {
			t.Errorf("%s: notes %v, last %s, findings %v; want %s, %s", what, s.Notes, s.LastID, s.Findings, text, last)
		}
		for _, v := range s.Disputed[0].Variants {
			if v.Counts != (v.Event.Text == text) || v.Here != (v.Event.Text == "mine") {
				t.Errorf("%s: %+v", what, v)
			}
		}
	}
	choose("c1", v[1].Digest)
	says("theirs is chosen", "theirs", "c1")
	choose("c2", v[0].Digest)
	says("and then mine", "mine", "c2")
	h.Events = append(h.Events, job.Event{ID: "u", Seq: 4, Time: noon, Kind: job.Undo, About: "c2"})
	says("and that taken back", "theirs", "c1")
	h.Events = append(h.Events, job.Event{ID: "u2", Seq: 5, Time: noon, Kind: job.Undo, About: "c1"})
	says("and both", "mine", "n")
}

// A choice among contents that there aren't has no effect, and is told.
func TestDispute_ChooseUnknown(t *testing.T) {
	same := string(wire.Write(&job.Event{}))
	for name, h := range map[string]*job.History{
		"nothing of that id":    {Events: []job.Event{{ID: "c", Time: noon, Kind: job.Choose, About: "n", Value: "0000000000000000"}}},
		"no such content":       {Events: []job.Event{remark("n", "mine"), {ID: "c", Time: noon, Kind: job.Choose, About: "n", Value: same}}, Beside: []job.Event{remark("n", "theirs")}},
		"the same content only": {Events: []job.Event{remark("n", "mine"), {ID: "c", Time: noon, Kind: job.Choose, About: "n"}}, Beside: []job.Event{remark("n", "mine")}},
	} {
		s := job.Replay(samplePlan(t), h, nil)
		if len(s.Findings) != 1 || s.Findings[0].Code != "choose-unknown" || s.LastID == "c" || len(s.Notes) != len(h.Events)-1 {
			t.Errorf("%s: %v, last %s, notes %v", name, s.Findings, s.LastID, s.Notes)
		}
	}
}

// digestsOf names the contents of events, as the core does where each is disputed.
func digestsOf(p *plan.Plan, events []job.Event) map[string]string {
	digests := map[string]string{}
	for _, e := range events {
		other := e
		other.Text += "?"
		s := job.Replay(p, &job.History{Events: []job.Event{e}, Beside: []job.Event{other}}, nil)
		digests[string(wire.Write(&e))] = s.Disputed[0].Variants[0].Digest
	}
	return digests
}

// Two phones that hold the same contents say the same of them, whichever is here on
// each, once the person has decided; before, each counts its own, and they differ in
// nothing but that. Neither order nor repetition matters.
func TestDispute_TwoPhones(t *testing.T) {
	p := samplePlan(t)
	rapid.Check(t, func(t *rapid.T) {
		var here, there, beside, besideThere, choices []job.Event
		var all []job.Event
		for i := range rapid.IntRange(1, 4).Draw(t, "disputed") {
			id := "n" + strconv.Itoa(i)
			var contents []job.Event
			for k := range rapid.IntRange(2, 4).Draw(t, "contents") {
				e := remark(id, "content "+strconv.Itoa(k))
				e.Seq, e.Time = i+1, "2026-11-25T12:0"+strconv.Itoa(rapid.IntRange(0, 9).Draw(t, "minute"))+":00.000Z"
				if rapid.Bool().Draw(t, "done") {
					e.Kind, e.Step = job.Done, "stand"
				}
				contents = append(contents, e)
			}
			a, b := rapid.IntRange(0, len(contents)-1).Draw(t, "here"), rapid.IntRange(0, len(contents)-1).Draw(t, "there")
			here, there = append(here, contents[a]), append(there, contents[b])
			beside = append(beside, slices.Delete(slices.Clone(contents), a, a+1)...)
			besideThere = append(besideThere, slices.Delete(slices.Clone(contents), b, b+1)...)
			chosen := rapid.SampledFrom(contents).Draw(t, "chosen")
			choices = append(choices, job.Event{ID: "c" + id, Seq: 9, Time: noon, Kind: job.Choose, About: id, Value: digestsOf(p, contents)[string(wire.Write(&chosen))]})
			all = append(all, contents...)
		}
		state := func(events, beside []job.Event) string {
			s := job.Replay(p, &job.History{Events: rapid.Permutation(append(slices.Clone(events), someOf(t, events)...)).Draw(t, "events"),
				Beside: rapid.Permutation(append(slices.Clone(beside), someOf(t, beside)...)).Draw(t, "beside")}, nil)
			for i := range s.Disputed {
				v := s.Disputed[i].Variants
				for n := range v {
					v[n].Here = false
				}
				slices.SortFunc(v, func(x, y job.Variant) int {
					if x.Digest < y.Digest {
						return -1
					}
					return 1
				})
			}
			s.Findings = nil // their places are those of the list
			return string(wire.Write(s))
		}
		if x, y := state(here, beside), state(here, beside); x != y {
			t.Fatalf("in one order:\n%s\nin another:\n%s", x, y)
		}
		if x, y := state(append(here, choices...), beside), state(append(there, choices...), besideThere); x != y {
			t.Fatalf("of %+v\nhere:\n%s\nthere:\n%s", all, x, y)
		}
	})
}

// Whatever is disputed, chosen, undone and brought back, by whatever clock and in
// whatever order it comes in: the state is the same, and every event that counts is
// there once.
func TestHistory_OrderDoesNotMatter(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		events := append(drawEvents(t, p, "a"), drawEvents(t, p, "b")...)
		events = append(events, drawUndos(t, events)...)
		events = append(events, drawGarbage(t, p)...)
		for i, e := range someOf(t, events) {
			events = append(events, job.Event{ID: "v" + strconv.Itoa(i), Time: drawTime(t), Kind: job.Undo, About: e.ID},
				job.Event{ID: "w" + strconv.Itoa(i), Time: drawTime(t), Kind: job.Choose, About: e.ID, Value: "0123456789abcdef"})
		}
		for i := range events {
			events[i].Seq = rapid.IntRange(-1, len(events)+3).Draw(t, "seq")
			if rapid.IntRange(0, 9).Draw(t, "clock") == 0 {
				events[i].Time = rapid.SampledFrom([]string{"9999-12-31T23:59:59.999Z", "0000-01-01T00:00:00.000Z"}).Draw(t, "time")
			}
		}
		var beside []job.Event
		for _, e := range someOf(t, events) {
			e.Text, e.Seq, e.Time = "another", rapid.IntRange(-1, 9).Draw(t, "other seq"), drawTime(t)
			beside = append(beside, e)
		}
		// Contents that differ in one member, whichever that is, have an order of their own.
		for _, e := range someOf(t, beside) {
			for _, change := range []func(*job.Event){
				func(e *job.Event) { e.Seq += len(events) + 9 }, func(e *job.Event) { e.Seq++ }, func(e *job.Event) { e.Day += "x" }, func(e *job.Event) { e.Until += "x" },
				func(e *job.Event) { e.Value += "x" }, func(e *job.Event) { e.Signs = map[string]string{"x": "y"} },
				func(e *job.Event) { e.Signs = map[string]string{"x": "z"} },
			} {
				if rapid.Bool().Draw(t, "change") {
					change(&e)
					beside = append(beside, e)
				}
			}
		}
		h := &job.History{Started: drawTime(t), Events: events, Beside: beside}
		other := &job.History{Started: h.Started, Events: rapid.Permutation(append(slices.Clone(events), someOf(t, named(events))...)).Draw(t, "events in another order"),
			Beside: rapid.Permutation(append(slices.Clone(beside), someOf(t, named(beside))...)).Draw(t, "beside in another order")}
		if x, y := canonicalOf(t, job.Replay(p, h, nil), h), canonicalOf(t, job.Replay(p, other, nil), other); x != y {
			t.Fatalf("in order:\n%s\nin another:\n%s", x, y)
		}
	})
}

// named leaves out what has no id: nothing says whether two such events are one.
func named(events []job.Event) []job.Event {
	return slices.DeleteFunc(slices.Clone(events), func(e job.Event) bool { return e.ID == "" })
}

// What stands beside nothing is all there is of an event, and counts; two of it are
// disputed, and none of them is what the list of events holds.
func TestDispute_BesideNothing(t *testing.T) {
	p := samplePlan(t)
	s := job.Replay(p, &job.History{Beside: []job.Event{remark("n", "one")}}, nil)
	if len(s.Notes) != 1 || len(s.Disputed) != 0 {
		t.Errorf("one: %s", wire.Write(s))
	}
	s = job.Replay(p, &job.History{Beside: []job.Event{remark("n", "two"), remark("n", "one")}}, nil)
	if len(s.Notes) != 1 || len(s.Disputed) != 1 || s.Disputed[0].Variants[0].Here || s.Disputed[0].Variants[1].Here {
		t.Errorf("two: %s", wire.Write(s))
	}
}
