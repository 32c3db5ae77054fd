package manual_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
)

// job is a passage of a manual about another job than a change of oil.
type job struct{ title, body string }

// jobs gives the passages of a language in testdata/other-jobs.
func jobs(t *testing.T, language string) (list []job) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/other-jobs/" + language + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	for part := range strings.SplitSeq(string(data), "# ") {
		if title, body, ok := strings.Cut(part, "\n"); ok {
			list = append(list, job{title, strings.TrimSpace(body)})
		}
	}
	return list
}

// printed gives a passage with its heading in one of the ways in which manuals print it, its
// lines as long as those of the page it is to stand in.
func (j job) printed(n, width int) string {
	body := strings.Join(lines(j.body, width), "\n")
	switch n % 4 {
	case 0:
		return strings.ToUpper(j.title) + "\n" + body
	case 1:
		return "7.3 " + j.title + "\n" + body
	case 2:
		return j.title + "\n\n" + body
	}
	return j.title + "\n" + body
}

// lines breaks a text at blanks into lines of so many bytes at most.
func lines(text string, most int) (list []string) {
	line := ""
	for w := range strings.FieldsSeq(text) {
		if len(line)+len(w) >= most {
			list, line = append(list, line), ""
		}
		line = strings.TrimSpace(line + " " + w)
	}
	return append(list, line)
}

// places gives where a passage may stand in a page: before it, behind it, and before each of
// its headings in capitals.
func places(text string) []int {
	list := []int{0}
	for at := 0; ; {
		n := strings.Index(text[at:], "\n\n")
		if n < 0 {
			return append(list, len(text))
		}
		at += n + 2
		line, _, _ := strings.Cut(text[at:], "\n")
		if line = strings.TrimSpace(line); len(line) > 5 && len(line) < 60 && line == strings.ToUpper(line) && !strings.ContainsAny(line, "0123456789…") && !strings.Contains(line, "  ") && !strings.Contains(line, "..") {
			list = append(list, at)
		}
	}
}

// A passage about another job, before, between and behind what a page says, takes nothing of that
// away and adds nothing.
func TestRead_OtherJobs(t *testing.T) {
	said := func(list []manual.Reading, r manual.Reading) bool {
		return slices.ContainsFunc(list, func(o manual.Reading) bool { return o.What == r.What && o.Text == r.Text })
	}
	for _, folder := range []string{"pages", "blind-pages"} {
		pages, err := pagetest.Load("../../testdata/" + folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pages {
			if p.Kind != pagetest.Clean {
				continue
			}
			width := 0
			for line := range strings.Lines(p.Text) {
				width = max(width, len(line))
			}
			before := manual.Read(p.Text, "").Readings
			for k, at := range places(p.Text) {
				for n, j := range jobs(t, p.Language) {
					if (n+k+len(p.Text))%3 > 0 { // each place has a third of them
						continue
					}
					passage := j.printed(n+len(p.Text)/3, width)
					text := p.Text[:at] + "\n\n" + passage + "\n\n" + p.Text[at:]
					from := at + 2
					to := from + len(passage)
					after := manual.Read(text, "").Readings
					for _, r := range after {
						if within := r.Quote.From < to && r.Quote.To > from; r.Text != "" && (within || r.Sure) && !said(before, r) {
							t.Errorf("%s and %q: %s %s", p.Name, j.title, r.What, r.Text)
						}
					}
					for _, r := range before {
						if r.Sure && at > 0 && strings.Contains(r.What, ".") && !said(after, r) {
							t.Errorf("%s and %q: no %s %s", p.Name, j.title, r.What, r.Text)
						}
					}
				}
			}
		}
	}
}
