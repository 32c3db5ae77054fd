package manual_test

import (
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
