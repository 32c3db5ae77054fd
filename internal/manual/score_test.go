package manual_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
)

// answers is what the reader says of a text, as it is scored.
func answers(text string) []pagetest.Answer {
	var list []pagetest.Answer
	for _, r := range manual.Read(text, "").Readings {
		list = append(list, pagetest.Answer{What: r.What, Text: r.Text, Quote: text[r.Quote.From:r.Quote.To], Doubt: !r.Sure})
	}
	return list
}

// The reader reaches what reached.txt beside the pages says, row by row. A number there is
// only ever made better. What each page lacks is told by -v.
func TestPages(t *testing.T) {
	for _, folder := range []string{"pages", "blind-pages"} {
		t.Run(folder, func(t *testing.T) { reaches(t, "../../testdata/"+folder) })
	}
}

func reaches(t *testing.T, folder string) {
	pages, err := pagetest.Load(folder)
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]*pagetest.Score{}
	for _, p := range pages {
		if rows[p.Row()] == nil {
			rows[p.Row()] = &pagetest.Score{}
		}
		rows[p.Row()].Add(pagetest.ScoreOf(p, answers(p.Text)))
	}
	data, err := os.ReadFile(folder + "/reached.txt")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		var kind, language string
		var recall float64
		var sure, forbidden, undoubted int
		if strings.HasPrefix(line, "#") {
			continue
		}
		if _, err := fmt.Sscan(line, &kind, &language, &recall, &sure, &forbidden, &undoubted); err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		s := rows[kind+" "+language]
		if s == nil {
			t.Errorf("no page is %s %s", kind, language)
			continue
		}
		if 100*s.Recall() < recall || s.WrongAndSure > sure || s.Forbidden > forbidden || s.Due-s.Doubted > undoubted {
			t.Errorf("%s %s: reached was at least %v %%, %d wrong and sure, %d forbidden, %d not doubted", kind, language, recall, sure, forbidden, undoubted)
		}
	}
	for _, row := range slices.Sorted(maps.Keys(rows)) {
		s := rows[row]
		t.Logf("%-9s %3d pages  %5.1f %% of %4d  wrong and sure %d  forbidden %d  wrong %d  misquoted %d  doubts %d of %d  needless %d",
			row, s.Pages, 100*s.Recall(), s.Truths, s.WrongAndSure, s.Forbidden, s.Wrong, s.Misquoted, s.Doubted, s.Due, s.Needless)
		if testing.Verbose() {
			for _, note := range s.Notes {
				t.Log("  ", note)
			}
		}
		if !strings.Contains(string(data), row+" ") {
			t.Errorf("reached.txt has no row %s", row)
		}
	}
}
