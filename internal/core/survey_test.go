package core_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/specs"
)

// surveyedJob is a job as its replay takes it, without the card.
type surveyedJob struct {
	Bench  map[string]any    `json:"bench,omitempty"`
	Steps  []string          `json:"steps,omitempty"`
	Events []json.RawMessage `json:"events"`
}

// drawJob draws a job on a bike: events in any order, some of them odd, on some bench,
// with the steps of today, of another day, or none.
func drawJob(t *rapid.T, tb testing.TB, card string) surveyedJob {
	var events []json.RawMessage
	if err := json.Unmarshal(benchEvents(tb, card, rapid.IntRange(0, 9).Draw(t, "job")), &events); err != nil {
		t.Fatal(err)
	}
	events = rapid.Permutation(events).Draw(t, "events")[:rapid.IntRange(0, len(events)).Draw(t, "count")]
	for range rapid.IntRange(0, 8).Draw(t, "odd events") {
		events = append(events, json.RawMessage(rapid.SampledFrom([]string{`7`, `{}`, `{"id":3}`, `{"id":"a","kind":"note","text":["x"]}`, `{"id":"b","id":"b"}`}).Draw(t, "odd")))
	}
	j := surveyedJob{Events: events}
	if rapid.Bool().Draw(t, "has a bench") {
		j.Bench = map[string]any{"system": rapid.SampledFrom([]string{"metric", "us", "imperial", "old"}).Draw(t, "system"),
			"keepFilter": rapid.Bool().Draw(t, "keep")}
	}
	if rapid.Bool().Draw(t, "has steps") {
		j.Steps = rapid.SliceOfN(rapid.SampledFrom([]string{"identify", "lay-out", "stand", "wash", "of-another-version"}), 1, 5).Draw(t, "steps")
	}
	return j
}

// What many jobs in one call are said to be is what the replay of each by itself says,
// whatever stands beside it.
func TestSurvey_AsEachReplay(t *testing.T) {
	cards := []string{"quillane-vastro-1010.json", "tessaly-corda-570.json"}
	var texts []string
	for _, name := range cards {
		texts = append(texts, string(specs.Cards()[name]))
	}
	type answer struct {
		Summary  json.RawMessage
		Row      struct{ Done int }
		Findings []finding
	}
	rapid.Check(t, func(r *rapid.T) {
		var jobs []string
		var want []answer
		for range rapid.IntRange(1, 6).Draw(r, "jobs") {
			n := rapid.IntRange(0, len(cards)-1).Draw(r, "card")
			j := drawJob(r, t, cards[n])
			text, err := json.Marshal(j)
			if err != nil {
				r.Fatal(err)
			}
			jobs = append(jobs, fmt.Sprintf(`{"card":%d,%s`, n, text[1:]))
			var state struct {
				OK struct {
					Summary  json.RawMessage
					Done     []string
					Findings []finding
				}
				Findings []finding
			}
			out := decodeDo(r, "replay", fmt.Sprintf(`{"card":%s,%s`, texts[n], text[1:]))
			if err := json.Unmarshal(out, &state); err != nil {
				r.Fatal(err)
			}
			w := answer{Summary: state.OK.Summary, Findings: state.Findings}
			w.Row.Done = len(state.OK.Done)
			for _, f := range state.OK.Findings {
				if f.Code == "event-unread" && len(w.Findings) < 5 {
					w.Findings = append(w.Findings, f)
				}
			}
			want = append(want, w)
		}
		var got struct{ Jobs []answer }
		mustRapid(r, "survey", `{"rows":true,"cards":[`+strings.Join(texts, ",")+`],"jobs":[`+strings.Join(jobs, ",")+`]}`, &got)
		if len(got.Jobs) != len(want) {
			r.Fatalf("%d jobs of %d", len(got.Jobs), len(want))
		}
		for n, w := range want {
			g := got.Jobs[n]
			for i := range w.Findings {
				w.Findings[i].Where = fmt.Sprintf("/jobs/%d%s", n, w.Findings[i].Where)
			}
			same := slices.EqualFunc(g.Findings, w.Findings, func(x, y finding) bool { return x.Code == y.Code && x.Where == y.Where && x.Grade == y.Grade })
			if string(g.Summary) != string(w.Summary) || g.Row.Done != w.Row.Done || !same {
				r.Fatalf("job %d, %s:\n%s %+v\nalone it is\n%s %+v", n, jobs[n], g.Summary, g, w.Summary, w)
			}
		}
	})
}

// A table shows of a job what its replay says, amounts in base units and texts in the
// units that were asked for, whatever the bench's are.
func TestSurvey_Rows(t *testing.T) {
	card := string(rootFile(t, "testdata/card-minimal.json"))
	const at = `"time":"2026-11-25T10:00:00.000Z","kind":`
	events := `[{"id":"a",` + at + `"reading","step":"identify","what":"odometer","value":"100"},{"id":"b",` + at + `"reading","step":"pour","what":"poured","of":"engine","value":"2"},{"id":"c",` + at + `"note","text":"loose"},{"id":"d",` + at + `"done","step":"identify"}]`
	var got struct {
		Jobs []struct {
			Row struct {
				Odometer float64
				Done     int
				Notes    []string
				Oils     []struct {
					Poured string
					In     float64
				}
			}
		}
	}
	must(t, "survey", []byte(`{"rows":true,"system":"imperial","cards":[`+card+`],"jobs":[{"bench":{"system":"us"},"events":`+events+`}]}`), &got)
	row := got.Jobs[0].Row
	if row.Odometer != 160.9344 || row.Done != 1 || len(row.Notes) != 1 || row.Notes[0] != "loose" || len(row.Oils) != 1 || row.Oils[0].In != 1.892705892 || row.Oils[0].Poured != "1.89 L" {
		t.Errorf("got %+v", row)
	}
}

// A heap of jobs is refused, however little each of them says.
func TestSurvey_TooMany(t *testing.T) {
	var limits struct{ Survey int }
	must(t, "limits", []byte(`{}`), &limits)
	card := string(rootFile(t, "testdata/card-minimal.json"))
	for jobs, want := range map[int]core.Outcome{limits.Survey: core.OK, limits.Survey + 1: core.Refused, 300_000: core.Refused} {
		in := `{"cards":[` + card + `],"jobs":[{}` + strings.Repeat(",{}", jobs-1) + `]}`
		if out, outcome := core.Do("survey", []byte(in)); outcome != want {
			t.Errorf("%d jobs: %v %.200s", jobs, outcome, out)
		}
	}
}
