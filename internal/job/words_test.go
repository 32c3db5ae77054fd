package job_test

import (
	"maps"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/specs"
)

var catalogue = specs.EN()

var placeholder = regexp.MustCompile(`\{(\w+)\}`)

// reporter is what a check of words needs of a test.
type reporter interface {
	Helper()
	Errorf(format string, args ...any)
}

// say checks that a sentence exists and that the values fill its placeholders;
// a value that is itself a word is filled from the others.
func say(t reporter, id string, values map[string]string) {
	t.Helper()
	sentence, ok := catalogue[id]
	if !ok {
		t.Errorf("the catalogue has no %q", id)
	}
	for _, m := range placeholder.FindAllStringSubmatch(sentence, -1) {
		value, filled := values[m[1]]
		if !filled {
			t.Errorf("%q: nothing fills {%s}, values %v", id, m[1], values)
		}
		if word, isWord := strings.CutPrefix(value, "@"); isWord {
			others := maps.Clone(values)
			delete(others, m[1])
			say(t, word, others)
		}
	}
}

func sayShown(t reporter, s job.Shown) {
	t.Helper()
	say(t, s.Name, nil)
	say(t, "standing."+string(s.Standing), nil)
	if word, isWord := strings.CutPrefix(s.Method, "@"); isWord {
		say(t, word, nil)
	}
	if unknown := s.Standing == card.Unknown; unknown != (s.Lookup != "") || unknown != (len(s.Texts) == 0) {
		t.Errorf("figure %+v is known and unknown at once", s)
	}
	if s.Lookup != "" {
		say(t, s.Lookup, nil)
	}
}

// Every word that a plan uses is in the catalogue, with all that belongs to it.
func TestMake_EveryWordIsInTheCatalogue(t *testing.T) {
	forPlans(t, func(t *rapid.T, _ *card.Card, _ job.Bench, p *job.Plan) {
		for _, s := range p.Steps {
			sayStep(t, s)
		}
		for _, i := range append(p.Parts, p.Tools...) {
			say(t, i.Word, i.Values)
		}
		for _, g := range p.Gaps {
			say(t, g.Word, g.Values)
			say(t, g.Lookup, nil)
		}
		for _, o := range p.Oils {
			say(t, o.Role, nil)
			for _, f := range append(o.Figures, o.Due, o.Need) {
				sayShown(t, f)
			}
		}
		for _, b := range p.Bolts {
			say(t, b.Purpose, nil)
			for _, id := range []string{b.Drive, b.Seal} {
				if id != "" {
					say(t, id, nil)
				}
			}
			sayShown(t, b.Size)
			sayShown(t, b.Torque)
		}
	})
}

func sayStep(t reporter, s job.Step) {
	t.Helper()
	for _, part := range []string{"", ".do", ".why"} {
		say(t, s.Word+part, s.Values)
	}
	say(t, "stage."+string(s.Stage), nil)
	for _, w := range s.Warns {
		say(t, "signal."+string(w.Signal), nil)
		say(t, w.Word, nil)
	}
	for _, f := range s.Figures {
		sayShown(t, f)
	}
	for _, timer := range s.Timers {
		sayShown(t, timer.Shown)
	}
	for _, a := range s.Asks {
		say(t, "ask."+a.What, nil)
		for _, c := range a.Choice {
			say(t, a.What+"."+c, nil)
		}
	}
}
