package core_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
)

// One card that can't be read keeps no other from being listed, whatever is
// wrong with it.
func TestCards_OneBadCard(t *testing.T) {
	good := rootFile(t, "testdata/card-minimal.json")
	for bad, want := range map[string]string{
		`{}`: "missing", `3`: "wrong-type", `{"version":"1"}`: "wrong-type",
		string(rootFile(t, "testdata/cards-wrong/version-2.json")):   "card-version",
		string(rootFile(t, "testdata/cards-wrong/torque-4000.json")): "not-believable",
	} {
		var a struct {
			Bikes    []struct{ ID string }
			Findings []finding
		}
		must(t, "cards", slices.Concat([]byte(`{"cards":[`), []byte(bad), []byte(","), good, []byte("]}")), &a)
		if len(a.Bikes) != 1 || a.Bikes[0].ID != "minimal" {
			t.Errorf("beside %.60s: bikes %v, want the good one", bad, a.Bikes)
		}
		reported := slices.ContainsFunc(a.Findings, func(f finding) bool { return f.Code == want && len(f.Where) >= 8 && f.Where[:8] == "/cards/0" })
		if !reported {
			t.Errorf("%.60s: findings %+v, want %s below /cards/0", bad, a.Findings, want)
		}
	}
	if a, outcome := do(t, "cards", []byte(`{"cards":{}}`)); outcome != core.Refused {
		t.Errorf("no list of cards: %v %+v", outcome, a.Findings)
	}
}

// An event without its members, or with one that a newer version has added,
// keeps no other from being used.
func TestReplay_OneBadEvent(t *testing.T) {
	card := rootFile(t, "testdata/card-minimal.json")
	for _, bad := range []string{`{}`, `{"id":"b"}`, `{"id":"b","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"stand","mood":"good"}`} {
		in := slices.Concat([]byte(`{"card":`), card, []byte(`,"bench":{"weather":"rain"},"events":[`+bad+
			`,{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"identify"}]}`))
		var s struct{ Done []string }
		must(t, "replay", in, &s)
		if !slices.Contains(s.Done, "identify") {
			t.Errorf("beside %s: done %v, want identify", bad, s.Done)
		}
	}
}

// The name of an operation may be anything; the answer is JSON all the same.
func TestDo_UnknownOp(t *testing.T) {
	for _, op := range []string{"", "Plan", "plan ", "\xff\xfe", string(make([]byte, 1000)), "ÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿÿ"} {
		a, outcome := do(t, op, []byte(`{}`))
		if outcome != core.UnknownOp || len(a.Findings) != 1 || a.Findings[0].Code != "unknown-op" || len(a.Findings[0].Values["op"]) > 200 {
			t.Errorf("op %q: %v, %+v", op, outcome, a.Findings)
		}
	}
}

// A last job that can't be read keeps the one under way from nothing, and what is
// wrong with it is not reported.
func TestReplay_BadLastJob(t *testing.T) {
	card := rootFile(t, "testdata/card-minimal.json")
	head := slices.Concat([]byte(`{"card":`), card, []byte(`,"events":[{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"identify"}]`))
	want, _ := core.Do("replay", append(slices.Clone(head), '}'))
	wrong := rootFile(t, "testdata/cards-wrong/torque-4000.json")
	for _, last := range []string{`null`, `3`, `{}`, `{"card":3}`, `{"card":` + string(wrong) + `}`,
		`{"card":` + string(card) + `,"bench":{"place":"moon"},"events":[{}]}`, `{"card":` + string(card) + `,"events":7}`,
		`{"card":` + string(card) + `,"mood":"good","last":{"card":` + string(card) + `}}`} {
		got, outcome := core.Do("replay", slices.Concat(head, []byte(`,"last":`+last+`}`)))
		if outcome != core.OK || string(got) != string(want) {
			t.Errorf("last %.80s: %s\nwant %s", last, got, want)
		}
	}
}

// What can't be read in one of a bike's jobs spoils that and no more: an event, or the
// job where its card or bench is wrong.
func TestDue_BadJob(t *testing.T) {
	card := string(rootFile(t, "testdata/card-minimal.json"))
	poured := `{"id":"p","time":"2026-06-01T10:00:00.000Z","kind":"reading","step":"pour-engine","what":"poured","of":"engine","value":"1.5 L"}`
	good := `{"card":` + card + `,"events":[` + poured + `]}`
	wrong := string(rootFile(t, "testdata/cards-wrong/torque-4000.json"))
	for bad, want := range map[string]string{
		`{"card":` + card + `,"events":[{"id":7},3,[],"x",null,{"signs":[]}]}`: "",
		`{"card":` + card + `,"events":7}`:                                     "wrong-type /jobs/0/events",
		`{"card":` + card + `,"bench":{"place":"moon"},"events":[]}`:           "unknown-word /jobs/0/bench/place",
		`{"card":3,"events":[]}`:                                               "wrong-type /jobs/0/card",
		`{"events":[]}`:                                                        "missing /jobs/0/card",
		`3`:                                                                    "wrong-type /jobs/0",
		`{"card":` + wrong + `}`:                                               "not-believable /jobs/0/card/bolts/0/torque/value",
	} {
		var a struct {
			Oils     []struct{ Changed string }
			Findings []finding
		}
		must(t, "due", []byte(`{"today":"2026-11-29","jobs":[`+bad+`,`+good+`]}`), &a)
		found := ""
		for _, f := range a.Findings {
			if f.Grade == "refuse" && found == "" {
				found = f.Code + " " + f.Where
			}
		}
		if len(a.Oils) != 1 || a.Oils[0].Changed != "2026-06-01" || found != want {
			t.Errorf("beside %.80s: %+v, found %q, want %q", bad, a, found, want)
		}
	}
}

// Each event that can't be read is told with its place, and what could be read of it.
func TestReplay_Unread(t *testing.T) {
	card := string(rootFile(t, "testdata/card-minimal.json"))
	for bad, want := range map[string]finding{
		`{"id":"b","time":"2026-11-25T10:00:00.000Z","kind":"note","text":7}`: {Values: map[string]string{"id": "b", "time": "2026-11-25T10:00:00.000Z", "kind": "note", "member": "text"}},
		`{"id":"b","kind":"note","seq":1.5}`:                                  {Values: map[string]string{"id": "b", "time": "", "kind": "note", "member": "seq"}},
		`{"id":["b"],"kind":"note"}`:                                          {Values: map[string]string{"id": "", "time": "", "kind": "note", "member": "id"}},
		`{"id":"b","signs":{"a":1}}`:                                          {Values: map[string]string{"id": "b", "time": "", "kind": "", "member": "signs"}},
		`"b"`:                                                                 {Values: map[string]string{"id": "", "time": "", "kind": "", "member": "@event.whole"}},
	} {
		var s struct {
			Done     []string
			Unread   int
			Findings []finding
			Summary  struct{ Events, Unread int }
		}
		must(t, "replay", []byte(`{"card":`+card+`,"events":[{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"identify"},`+bad+`]}`), &s)
		want.Code, want.Where, want.Grade = "event-unread", "/events/1", "doubt"
		if len(s.Findings) != 1 || !reflect.DeepEqual(s.Findings[0], want) || s.Unread != 1 || s.Summary.Unread != 1 || s.Summary.Events != 2 || !slices.Contains(s.Done, "identify") {
			t.Errorf("beside %s: %+v, want %+v", bad, s, want)
		}
	}
}

// Of a hostile heap of events so much is told as somebody may read; all are counted, the
// honest ones count, and of the one about to be written everything is told.
func TestReplay_Heaps(t *testing.T) {
	card := string(rootFile(t, "testdata/card-minimal.json"))
	const heap = 20000
	for bad, unread := range map[string]int{
		`0`: heap, `{}`: 0, `{"id":7}`: heap, `{"id":"x","kind":"hoped"}`: 0, `{"kind":"undo","of":"nothing"}`: 0,
		`{"id":"x","text":7}`: heap, `{"id":"x","kind":"note","text":"n"}`: 0,
	} {
		in := `{"card":` + card + `,"adding":true,"events":[{"id":"a","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"identify"}` + strings.Repeat(","+bad, heap) +
			`,{"id":"z","time":"2026-11-25T10:00:00.000Z","kind":"done","step":"polish-the-tank"}]}`
		var s struct {
			Done     []string
			Unread   int
			Findings []finding
		}
		must(t, "replay", []byte(in), &s)
		own := slices.ContainsFunc(s.Findings, func(f finding) bool { return f.Code == "unknown-step" && f.Where == "/events/20001/step" })
		if s.Unread != unread || len(s.Findings) > 203 || !own || !slices.Equal(s.Done, []string{"identify"}) {
			t.Errorf("a heap of %s: %d unread, want %d; %d findings, of the new one %v; done %v", bad, s.Unread, unread, len(s.Findings), own, s.Done)
		}
	}
}
