package core_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

// hostileJob is a job with honest events among others of any content.
type hostileJob struct {
	card    json.RawMessage
	honest  []map[string]any
	hostile []any
	beside  []any
}

// drawAny draws any JSON value: what stands where something else is meant.
func drawAny(t *rapid.T, depth int) any {
	switch n := rapid.IntRange(0, 12).Draw(t, "any"); {
	case n == 0:
		return nil
	case n == 1:
		return rapid.Bool().Draw(t, "bool")
	case n == 2:
		return json.Number(rapid.SampledFrom([]string{"0", "-1", "1e308", "99999999999999999999", "1.5", "9223372036854775807", "-9223372036854775808"}).Draw(t, "number"))
	case n == 3 && depth > 0:
		return []any{drawAny(t, depth-1), drawAny(t, depth-1)}
	case n == 4 && depth > 0:
		return map[string]any{rapid.String().Draw(t, "name"): drawAny(t, depth-1)}
	}
	return rapid.String().Draw(t, "text")
}

// drawHostile draws an event of any content, at times near to a good one.
func drawHostile(t *rapid.T, honest []string) any {
	if rapid.IntRange(0, 9).Draw(t, "no event") == 0 {
		return drawAny(t, 2)
	}
	ids := []string{"h0", "h1", "h2"}
	word := map[string][]string{
		"id": ids, "time": {"9999-12-31T23:59:59.999Z", "0000-01-01T00:00:00.000Z", "2026-11-25T10:00:30.000Z", "2026-13-77T10:00:00.000Z"},
		"kind": {"done", "reading", "note", "photo", "undo", "finish", "timer", "problem", "look", "bill", "choose"},
		"step": {"identify", "stand", "polish-the-tank", "second-look", "look-oil", ""}, "what": {"poured", "level", "odometer", "leak", "pan", "sunset", "drain", "bill"},
		"of": append(slices.Clone(ids), "engine", "drain"), "value": {"1 L", "drop", "above", "cbf29ce484222325", "carry-on", "-3"},
		"text": {"hostile", "", "@step.identify"}, "until": {"2026-11-25T11:00:00.000Z"}, "day": {"9999-12-31", "2026-11-25", "no day"},
	}
	if rapid.IntRange(0, 3).Draw(t, "of an honest event") == 0 {
		word["id"] = honest
	}
	e := map[string]any{}
	for _, name := range []string{"id", "time", "kind", "step", "what", "of", "value", "text", "until", "day"} {
		switch n := rapid.IntRange(0, 12).Draw(t, name); {
		case n == 0:
			e[name] = drawAny(t, 2)
		case n > 2:
			e[name] = rapid.SampledFrom(word[name]).Draw(t, name)
		}
	}
	switch n := rapid.IntRange(0, 5).Draw(t, "seq"); {
	case n == 0:
		e["seq"] = drawAny(t, 1)
	case n < 4:
		e["seq"] = json.Number(rapid.SampledFrom([]string{"1", "3", "-5", "0", "1000000000", "9223372036854775807", "-9223372036854775808"}).Draw(t, "place"))
	}
	if rapid.IntRange(0, 5).Draw(t, "signs") == 0 {
		e["signs"] = drawAny(t, 2)
	}
	return e
}

func drawHostileJob(t *rapid.T, card []byte) *hostileJob {
	j := &hostileJob{card: card}
	var ids []string
	for i := range rapid.IntRange(1, 6).Draw(t, "honest") {
		id := "mine" + strconv.Itoa(i)
		ids = append(ids, id)
		e := map[string]any{"id": id, "seq": i + 1, "time": "2026-11-25T10:0" + strconv.Itoa(i) + ":00.000Z", "day": "2026-11-25"}
		switch rapid.SampledFrom([]string{"note", "photo", "reading"}).Draw(t, "kind") {
		case "note":
			e["kind"], e["text"], e["step"] = "note", "mine", rapid.SampledFrom([]string{"identify", "a-step-of-old", ""}).Draw(t, "step")
		case "photo":
			e["kind"], e["what"] = "photo", "pan"
		default:
			e["kind"], e["step"], e["what"], e["value"] = "reading", rapid.SampledFrom([]string{"identify", "a-step-of-old"}).Draw(t, "step"), "odometer", "12000"
		}
		j.honest = append(j.honest, e)
	}
	for range rapid.IntRange(0, 8).Draw(t, "hostile") {
		if e := drawHostile(t, ids); hostileID(e, ids) {
			j.hostile = append(j.hostile, e)
		} else {
			j.beside = append(j.beside, e)
		}
	}
	return j
}

// hostileID reports whether an event doesn't have the id of an honest one: the store
// holds one content under an id, and keeps others beside it.
func hostileID(e any, honest []string) bool {
	m, ok := e.(map[string]any)
	id, isText := m["id"].(string)
	return !ok || !isText || !slices.Contains(honest, id)
}

func (j *hostileJob) call(t *rapid.T, events []any, adding bool) ([]byte, hostileState) {
	in, err := json.Marshal(map[string]any{"card": j.card, "events": events, "beside": j.beside, "adding": adding})
	if err != nil {
		t.Fatal(err)
	}
	out, outcome := core.Do("replay", in)
	var a struct{ OK hostileState }
	if err := json.Unmarshal(out, &a); err != nil || outcome != core.OK {
		t.Fatalf("%s\nis refused: %v, %s", in, outcome, out)
	}
	return in, a.OK
}

type hostileState struct {
	Notes, Photos, Readings []struct{ ID string }
	Findings                []finding
	LastID, Redo            string
	Unread                  int
	Summary                 struct{ Events, Unread, Disputed int }
	Disputed                []struct{ ID string }
}

func (s *hostileState) holds(id string) bool {
	for _, list := range [][]struct{ ID string }{s.Notes, s.Photos, s.Readings} {
		if slices.ContainsFunc(list, func(e struct{ ID string }) bool { return e.ID == id }) {
			return true
		}
	}
	return false
}

// No event, whatever stands in it, closes the job or hides what an honest one says; what
// can't be read is told; and the job goes on: what is added after all that counts, can be
// taken back, and brought back.
func TestReplay_Hostile(t *testing.T) {
	card := rootFile(t, "testdata/card-minimal.json")
	rapid.Check(t, func(t *rapid.T) {
		j := drawHostileJob(t, card)
		var events []any
		for _, e := range j.honest {
			events = append(events, e)
		}
		events = rapid.Permutation(append(events, j.hostile...)).Draw(t, "order")
		in, s := j.call(t, events, false)
		check := func(in []byte, s *hostileState) {
			for _, e := range j.honest {
				if id := e["id"].(string); !s.holds(id) {
					t.Fatalf("%s\nhides %s: %+v", in, id, s)
				}
			}
			if s.Summary.Unread != s.Unread || s.Summary.Disputed != len(s.Disputed) {
				t.Fatalf("%s\ncounts %+v, of %d and %d", in, s.Summary, s.Unread, len(s.Disputed))
			}
		}
		check(in, &s)
		for _, step := range []struct {
			what string
			e    map[string]any
		}{
			{"a note", map[string]any{"id": "new1", "kind": "note", "text": "goes on"}},
			{"a reading", map[string]any{"id": "new2", "kind": "reading", "step": "identify", "what": "odometer", "value": "12001"}},
			{"taken back", map[string]any{"id": "new3", "kind": "undo", "of": "new2"}},
			{"brought back", map[string]any{"id": "new4", "kind": "undo", "of": "new3"}},
		} {
			step.e["seq"], step.e["time"], step.e["day"] = s.Summary.Events+1, "2026-11-25T10:30:00.000Z", "2026-11-25"
			events = append(events, step.e)
			in, s = j.call(t, events, true)
			check(in, &s)
			at := "/events/" + strconv.Itoa(len(events)-1) + "/"
			for _, f := range s.Findings {
				if f.Grade == "refuse" && strings.HasPrefix(f.Where+"/", at) {
					t.Fatalf("%s\n%s is refused: %+v", in, step.what, f)
				}
			}
			if held := s.holds("new2"); !s.holds("new1") || held != (step.what == "a reading" || step.what == "brought back") {
				t.Fatalf("%s\n%s: the reading counts: %v, %+v", in, step.what, held, s)
			}
			if want := map[string]string{"taken back": "new3"}[step.what]; s.Redo != want {
				t.Fatalf("%s\n%s: to bring back is %q, want %q", in, step.what, s.Redo, want)
			}
		}
	})
}
