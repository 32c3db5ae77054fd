package core_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// BenchmarkPlan makes the plan of every sample card once.
func BenchmarkPlan(b *testing.B) {
	var inputs [][]byte
	for _, text := range specs.Cards() {
		inputs = append(inputs, slices.Concat([]byte(`{"card":`), text, []byte(`}`)))
	}
	for b.Loop() {
		for _, in := range inputs {
			if _, outcome := core.Do("plan", in); outcome != core.OK {
				b.Fatal("no plan")
			}
		}
	}
}

// BenchmarkReplay replays one job of 30 events.
func BenchmarkReplay(b *testing.B) {
	name := slices.Sorted(maps.Keys(specs.Cards()))[0]
	in := slices.Concat([]byte(`{"card":`), specs.Cards()[name], []byte(`,"events":`), benchEvents(b, name, 0), []byte(`}`))
	for b.Loop() {
		if _, outcome := core.Do("replay", in); outcome != core.OK {
			b.Fatal("no state")
		}
	}
}

// BenchmarkSurvey asks of jobs of 30 events on a handful of bikes, as many as fit
// into one call of the page; an operation is one job. What it asks is written to the
// file that SURVEY names, so that the same can be asked of the core as WebAssembly.
func BenchmarkSurvey(b *testing.B) {
	const together = 200
	in := benchSurvey(b, together)
	if path := os.Getenv("SURVEY"); path != "" {
		if err := os.WriteFile(path, in, 0o600); err != nil {
			b.Fatal(err)
		}
	}
	b.ResetTimer()
	b.ReportMetric(float64(len(in))/together, "bytes/job")
	for n := 0; n < b.N; n += together {
		if _, outcome := core.Do("survey", in); outcome != core.OK {
			b.Fatal("no survey")
		}
	}
}

// benchSurvey is the input of a survey of so many jobs of 30 events.
func benchSurvey(b testing.TB, jobs int) []byte {
	names := slices.Sorted(maps.Keys(specs.Cards()))[:5]
	in := []byte(`{"cards":[`)
	for n, name := range names {
		if n > 0 {
			in = append(in, ',')
		}
		in = append(in, specs.Cards()[name]...)
	}
	in = append(in, `],"jobs":[`...)
	for n := range jobs {
		if n > 0 {
			in = append(in, ',')
		}
		in = fmt.Appendf(in, `{"card":%d,"bench":{"system":"metric","place":"garage"},"events":%s}`, n%len(names), benchEvents(b, names[n%len(names)], n))
	}
	return append(in, "]}"...)
}

// benchEvents makes 30 events of a job on that bike: most of its steps done, with
// readings, notes, photos, a look and an undo between.
func benchEvents(b testing.TB, card string, job int) []byte {
	const count = 30
	out, _ := core.Do("plan", slices.Concat([]byte(`{"card":`), specs.Cards()[card], []byte(`}`)))
	var plan struct {
		OK struct {
			Steps []struct {
				ID   string
				Asks []struct{ What, Of string }
				Look []string
			}
		}
	}
	if err := json.Unmarshal(out, &plan); err != nil {
		b.Fatal(err)
	}
	var list []map[string]any
	add := func(kind, step string, more ...string) {
		n := len(list)
		e := map[string]any{"id": fmt.Sprintf("01890a5d-ac96-774b-bcce-%06d%06d", job, n), "seq": n + 1, "day": "2026-11-25",
			"time": fmt.Sprintf("2026-11-25T10:%02d:%02d.%03dZ", n, n, job%1000), "kind": kind}
		if step != "" {
			e["step"] = step
		}
		for i := 0; i < len(more); i += 2 {
			e[more[i]] = more[i+1]
		}
		if len(list) < count-1 || kind == "finish" {
			list = append(list, e)
		}
	}
	values := map[string]string{"odometer": "12345", "level": "middle", "drained": "1.8", "poured": "2 L", "torque": "25", "leak": "dry", "temperature": "60", "hours": "40"}
	for i, s := range plan.OK.Steps {
		for _, a := range s.Asks {
			add("reading", s.ID, "what", a.What, "of", a.Of, "value", values[a.What])
		}
		if i == 5 {
			add("note", s.ID, "text", "The plug was tighter than it should be; somebody had used a hammer. Ordered a new one.")
			add("photo", s.ID, "what", "plug")
			add("undo", "", "of", list[len(list)-1]["id"].(string))
		}
		if i%2 == 0 {
			add("done", s.ID)
		}
	}
	add("finish", "")
	text, err := json.Marshal(list)
	if err != nil {
		b.Fatal(err)
	}
	return text
}
