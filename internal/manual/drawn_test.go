package manual_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/manual/pagetest"
)

// Whatever the order of the rows, their leaders, units and heads: what was printed is
// read, and nothing else.
func TestRead_Drawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := pagetest.Draw(t)
		if s := pagetest.ScoreOf(p, answers(p.Text)); s.Right < s.Truths || s.Wrong+s.Misquoted > 0 {
			t.Errorf("%q\n%s", s.Notes, p.Text)
		}
	})
}

// Of a page that was spoilt as a photo is, nothing wrong is sure, and nothing is taken
// from another job.
func TestRead_DrawnAndSpoilt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := pagetest.Photographed(t, pagetest.Draw(t))
		if s := pagetest.ScoreOf(p, answers(p.Text)); s.WrongAndSure+s.Forbidden > 0 {
			t.Errorf("%q\n%s", s.Notes, p.Text)
		}
	})
}

// In each language the reader knows all that its manuals say in their usual words, whatever
// the marks of its numbers; nothing wrong is sure, and nothing is taken from another job.
func TestRead_DrawnTongues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := pagetest.DrawTongue(t)
		if s := pagetest.ScoreOf(p, told(p)); s.WrongAndSure+s.Forbidden > 0 {
			t.Errorf("%q\n%s", s.Notes, p.Text)
		}
	})
}

// mostMissed is how many of a thousand things that drawn pages say may be missed: there are
// pages of one sentence, which show no language.
const mostMissed = 8

func TestRead_DrawnTonguesRecall(t *testing.T) {
	pages := rapid.Custom(pagetest.DrawTongue)
	all := map[string]*pagetest.Score{}
	for seed := range 600 {
		p := pages.Example(seed)
		if all[p.Language] == nil {
			all[p.Language] = &pagetest.Score{}
		}
		all[p.Language].Add(pagetest.ScoreOf(p, told(p)))
	}
	if len(all) != 6 {
		t.Errorf("%d languages", len(all))
	}
	for tag, s := range all {
		if 1000*(s.Truths-s.Right) > mostMissed*s.Truths {
			t.Errorf("%s: %d of %d\n%s", tag, s.Right, s.Truths, strings.Join(s.Notes, "\n"))
		}
	}
}

// told is what the reader says of a drawn page, without what can be argued for: words about
// things of which the page was to say nothing.
func told(p *pagetest.Page) []pagetest.Answer {
	return slices.DeleteFunc(answers(p.Text), func(a pagetest.Answer) bool {
		figure := strings.HasSuffix(a.What, ".torque") || strings.HasPrefix(a.What, "oil.") || strings.HasPrefix(a.What, "interval.")
		return !figure && !slices.ContainsFunc(p.Truth, func(f pagetest.Fact) bool { return f.What == a.What })
	})
}
