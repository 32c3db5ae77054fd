package plan

import (
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/specs"
)

// A step that was ever released stays understood: it has a recipe, today's or a retired
// one, or another name that has one.
func TestReleasedSteps_AreUnderstood(t *testing.T) {
	text, err := os.ReadFile("../../testdata/steps-released.txt")
	if err != nil {
		t.Fatal(err)
	}
	understood := map[string]bool{}
	for _, r := range slices.Concat(recipes, retired) {
		understood[r.word] = true
	}
	for _, r := range renames {
		if !understood[r.is] || understood[r.was] {
			t.Errorf("%s is renamed to %s, which is no step or both are", r.was, r.is)
		}
	}
	for _, r := range renames {
		understood[r.was] = true
	}
	for _, b := range became {
		for _, is := range b.is {
			if !understood[is] || !slices.ContainsFunc(retired, func(r recipe) bool { return r.word == b.was }) {
				t.Errorf("%s became %s, which is no step, or it isn't retired", b.was, is)
			}
		}
	}
	released := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		if word := strings.TrimSpace(line); !strings.HasPrefix(word, "#") {
			released[word] = true
			if !understood[word] {
				t.Errorf("jobs have begun with the step %s: rename it or retire its recipe (resume.go)", word)
			}
		}
	}
	for word := range understood {
		if !released[word] {
			t.Errorf("add the step %s to testdata/steps-released.txt: jobs will begin with it", word)
		}
	}
	if len(released) < 50 {
		t.Errorf("only %d released steps", len(released))
	}
}

// A step that is called otherwise now is the same to a job that began before, and keeps
// the id that the job's events name.
func TestResume_Renamed(t *testing.T) {
	for name, text := range specs.Cards() {
		c, _ := card.Read(text)
		checked, _ := card.Accept(c)
		for _, changed := range []rename{{"undo-plug", "open-drain-plug"}, {"who-is-it", "identify"}, {"fill-up", "pour"}, {"fill", "fill-up"}} {
			p, _ := begin(checked, Bench{})
			today := p.plan.Steps
			var ids []string
			for _, s := range today {
				id := s.ID
				if rest, ok := cutWord(id, changed.is); ok && s.Word == "step."+changed.is {
					id = changed.was + rest
				}
				ids = append(ids, id)
			}
			p.resume(ids, []rename{{"other", "pour"}, changed})
			for i, s := range p.plan.Steps {
				want := today[i]
				want.ID = ids[i]
				if !reflect.DeepEqual(s, want) {
					t.Errorf("%s, %s -> %s: %+v, want %+v", name, changed.was, changed.is, s, want)
				}
			}
		}
	}
}
