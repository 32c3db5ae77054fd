package core_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/shown"
	"tidysump/specs"
)

// A job that began under an earlier order goes on in it: each step is there under its
// id and in its place, is the same step, asks for what it asked for and shows what it
// showed, and every sentence of it is in the catalogue. Only a filter shows one figure
// alone where it showed two.
func TestPlan_OfAReleasedVersion(t *testing.T) {
	text, err := os.ReadFile("../../testdata/plans-2026.11.3.txt")
	if err != nil {
		t.Fatal(err)
	}
	plans := strings.Split("\n"+string(text), "\nplan ")[1:]
	if len(plans) < 30 {
		t.Errorf("only %d plans", len(plans))
	}
	for _, p := range plans {
		lines := strings.Split(strings.TrimSpace(p), "\n")
		name, bench, _ := strings.Cut(lines[0], ".")
		t.Run(lines[0], func(t *testing.T) { checkReleased(t, name, bench, lines[1:]) })
	}
}

func checkReleased(t *testing.T, name, bench string, lines []string) {
	c, _ := card.Read(specs.Cards()[name+".json"])
	var b plan.Bench
	if err := json.Unmarshal([]byte(benches(t, c)[bench]), &b); err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, line := range lines {
		id, _, _ := strings.Cut(line, " ")
		ids = append(ids, id)
	}
	checked, _ := card.Accept(c)
	p, list := plan.Resume(checked, b, ids)
	if p == nil || len(p.Steps) != len(lines) {
		t.Fatalf("resumed from %v: %v", ids, list)
	}
	notes := 0
	for i := range p.Steps {
		s := &p.Steps[i]
		part := strings.Split(lines[i]+"|||", "|")
		word, asks, figures := strings.TrimSpace(part[1]), strings.Fields(part[2]), strings.Fields(part[3])
		if s.ID != ids[i] || s.Word != "step."+word {
			t.Errorf("step %d is %s, %s; it was %s", i, s.ID, s.Word, lines[i])
		}
		for _, a := range asks {
			if !slices.ContainsFunc(s.Asks, func(ask plan.Ask) bool { return a == strings.TrimSuffix(ask.What+":"+ask.About, ":") }) {
				t.Errorf("%s asked for %s, and asks for %+v", s.ID, a, s.Asks)
			}
		}
		for _, f := range figures {
			if !slices.ContainsFunc(s.Figures, func(of shown.Figure) bool { return of.Name == "figure."+f }) && !(f == "turn" && word == "filter-on") {
				t.Errorf("%s showed %s, and shows %+v", s.ID, f, s.Figures)
			}
		}
		for _, text := range []string{"", ".do", ".why"} {
			plantest.Say(t, s.Word+text, s.Values)
		}
		notes += len(s.Notes)
	}
	if want := len(c.Notes) + len(c.NotesAt); notes < want {
		t.Errorf("%d of %d notes of the card are there", notes, want)
	}
}

// The jobs in the backups of released versions, done and half done, go on with the steps
// that they began with, none of them unknown, and each that was done is done.
func TestPlan_OfAReleasedBackup(t *testing.T) {
	files, err := filepath.Glob("../../testdata/backups/*.jsonl.gz")
	if err != nil || len(files) < 3 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		jobs := map[string]*backedUp{}
		for _, line := range linesOf(t, file) {
			var l struct {
				Job   *backedUp
				Event *struct{ ID, Job, Kind, Step string }
			}
			if err := json.Unmarshal(line, &l); err != nil {
				t.Fatalf("%s: %v", file, err)
			}
			if l.Job != nil {
				jobs[l.Job.ID] = l.Job
			}
			if e := l.Event; e != nil && e.Kind == "done" {
				jobs[e.Job].done = append(jobs[e.Job].done, e.Step)
			}
		}
		if len(jobs) == 0 {
			t.Errorf("%s has no jobs", file)
		}
		for id, j := range jobs {
			c, _ := card.Read(j.Card)
			checked, list := card.Accept(c)
			if checked == nil {
				t.Fatalf("%s, %s: %v", file, id, list)
			}
			p, _ := plan.Resume(checked, j.Bench, j.Steps)
			for i := range p.Steps {
				if s := &p.Steps[i]; len(j.Steps) > 0 && s.ID != j.Steps[i] || s.Word == "step."+plan.OtherVersion {
					t.Errorf("%s, %s: step %d is %s, %s; it began with %v", file, id, i, s.ID, s.Word, j.Steps)
				}
			}
			for _, step := range j.done {
				if len(j.Steps) > 0 && p.Step(step) == nil {
					t.Errorf("%s, %s: %s was done and is no step any more", file, id, step)
				}
			}
		}
	}
}

type backedUp struct {
	ID    string
	Card  json.RawMessage
	Bench plan.Bench
	Steps []string
	done  []string
}

func linesOf(t *testing.T, file string) [][]byte {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Split(bytes.TrimSpace(text), []byte("\n"))
}
