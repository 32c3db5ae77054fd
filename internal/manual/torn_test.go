package manual_test

import (
	"strings"
	"testing"

	"tidysump/internal/manual/pagetest"
)

// narrow sets a text in a column of so many letters, as a phone copies one from a small print; rows of
// tables stay as they are.
func narrow(text string, width int) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if len(line) <= width || strings.Contains(strings.TrimSpace(line), "   ") {
			b.WriteString(line)
			continue
		}
		col := 0
		for i, word := range strings.Fields(line) {
			switch n := len([]rune(word)); {
			case i > 0 && col+1+n > width:
				b.WriteString("\n")
				col = n
			case i > 0:
				b.WriteString(" ")
				col += 1 + n
			default:
				col = n
			}
			b.WriteString(word)
		}
		b.WriteString("\n")
	}
	return b.String()
}

// mostTorn is how many of ten thousand things that clean pages say are read wrongly and for sure where
// their lines are torn. It is only made better.
const mostTorn = 78

// Whatever the width of its column, a page says the same.
func TestRead_TornLines(t *testing.T) {
	var all pagetest.Score
	for _, folder := range []string{"pages", "blind-pages"} {
		pages, err := pagetest.Load("../../testdata/" + folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pages {
			if p.Kind != pagetest.Clean {
				continue
			}
			for width := 30; width < 60; width += 7 {
				q := *p
				q.Text = narrow(p.Text, width)
				all.Add(pagetest.ScoreOf(&q, answers(q.Text)))
			}
		}
	}
	if bad := all.WrongAndSure + all.Forbidden; bad*10_000 > mostTorn*all.Truths {
		t.Errorf("%d of %d\n%s", bad, all.Truths, strings.Join(all.Notes, "\n"))
	}
	t.Logf("%d of %d wrong and sure, %d forbidden, %.1f %% read", all.WrongAndSure, all.Truths, all.Forbidden, 100*all.Recall())
}
