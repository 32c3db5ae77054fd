package pagetest

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// Answer is one thing that a reader says of a page: a figure with the words that it
// comes from, a doubt, or both.
type Answer struct {
	What, Text, Quote string
	Doubt             bool
}

// Score is what a reader reached, on one page or on several.
type Score struct {
	Pages, Truths int
	Right         int
	Misquoted     int // right, but with words from elsewhere: counts as wrong
	Wrong         int
	WrongAndSure  int // wrong or misquoted without a doubt
	Forbidden     int // taken from another job, or from an empty engine
	Due, Doubted  int
	Needless      int // doubts of what the page says plainly; none are counted of a photo's
	Notes         []string
}

// Add counts another score in.
func (s *Score) Add(o Score) {
	s.Pages += o.Pages
	s.Truths += o.Truths
	s.Right += o.Right
	s.Misquoted += o.Misquoted
	s.Wrong += o.Wrong
	s.WrongAndSure += o.WrongAndSure
	s.Forbidden += o.Forbidden
	s.Due += o.Due
	s.Doubted += o.Doubted
	s.Needless += o.Needless
	s.Notes = append(s.Notes, o.Notes...)
}

// Recall is the share of what the pages say that was read, 0 to 1.
func (s *Score) Recall() float64 {
	if s.Truths == 0 {
		return 1
	}
	return float64(s.Right) / float64(s.Truths)
}

// Whole reports whether nothing was missed, wrong, or doubted in vain.
func (s *Score) Whole() bool {
	return s.Right == s.Truths && s.Wrong+s.Misquoted+s.Needless == 0 && s.Doubted == s.Due
}

// ScoreOf scores what a reader answers of a page.
func ScoreOf(p *Page, answers []Answer) Score {
	s := Score{Pages: 1, Truths: len(p.Truth), Due: len(p.Doubt)}
	note := func(format string, args ...any) {
		s.Notes = append(s.Notes, p.Name+": "+fmt.Sprintf(format, args...))
	}
	text := flat(p.Text)
	taken := make([]bool, len(p.Truth))
	for _, a := range answers {
		if a.Text == "" {
			continue
		}
		fits, quoted, fresh := false, false, -1
		for i := range p.Truth {
			if f := &p.Truth[i]; p.matches(f, &a) {
				fits = true
				if points(text, a.Quote, append([]string{f.Quote}, f.Also...)) {
					quoted = true
					if !taken[i] && fresh < 0 {
						fresh = i
					}
				}
			}
		}
		if fresh >= 0 {
			taken[fresh] = true
			s.Right++
			continue
		}
		if quoted || slices.ContainsFunc(p.May, func(f Fact) bool { return p.matches(&f, &a) }) {
			continue
		}
		word := "wrong"
		if fits {
			word = "misquoted"
			s.Misquoted++
		} else {
			s.Wrong++
		}
		if p.forbids(text, &a) {
			word = "FORBIDDEN"
			s.Forbidden++
		}
		if !a.Doubt {
			word += " and sure"
			s.WrongAndSure++
		}
		note("%s: %s = %s « %s »", word, a.What, a.Text, flat(a.Quote))
	}
	for i, f := range p.Truth {
		if !taken[i] {
			note("missed: %s = %s « %s »", f.What, f.Value, flat(f.Quote))
		}
	}
	s.doubts(p, answers, note)
	return s
}

func (s *Score) doubts(p *Page, answers []Answer, note func(string, ...any)) {
	doubted := map[string]bool{}
	for _, a := range answers {
		if a.Doubt {
			doubted[a.What] = true
		}
	}
	for _, d := range p.Doubt {
		if slices.ContainsFunc(append([]string{d.What}, d.Also...), func(what string) bool { return doubted[what] }) {
			s.Doubted++
		} else {
			note("no doubt: %s: %s", d.What, d.Why)
		}
	}
	if p.Kind == Photo {
		return
	}
	for _, d := range p.Doubt {
		for _, what := range append([]string{d.What}, d.Also...) {
			delete(doubted, what)
		}
	}
	s.Needless += len(doubted)
	for what := range doubted {
		note("needless doubt: %s", what)
	}
}

func (p *Page) matches(f *Fact, a *Answer) bool {
	if a.What != f.What && !slices.Contains(f.Or, a.What) {
		return false
	}
	for _, value := range append([]string{f.Value}, f.Alt...) {
		if same(f.What, value, a.Text) {
			return true
		}
		if f.What == "model" && slices.ContainsFunc(p.Truth, func(m Fact) bool {
			return m.What == "make" && bare(m.Value+value) == bare(a.Text)
		}) {
			return true
		}
	}
	return false
}

// flat makes any run of blanks one, and takes out what is not seen.
func flat(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(text, "\u00ad", "")), " ")
}

// places are where a piece stands in a text; both are flat.
func places(text, piece string) (found [][2]int) {
	for at := 0; piece != ""; at++ {
		next := strings.Index(text[at:], piece)
		if next < 0 {
			break
		}
		at += next
		found = append(found, [2]int{at, at + len(piece)})
	}
	return found
}

func shared(a, b [2]int) int { return min(a[1], b[1]) - max(a[0], b[0]) }

func length(a [2]int) int { return a[1] - a[0] }

// longest is how many bytes a quote may have; it shows a figure's place, and no page.
const longest = 300

// points reports whether a quote shares at least half of the shorter one with a place.
func points(text, quote string, wanted []string) bool {
	q, bound := flat(quote), longest
	var there [][2]int
	for _, w := range wanted {
		for _, place := range places(text, flat(w)) {
			there = append(there, place)
			bound = max(bound, 2*length(place))
		}
	}
	if len(q) > bound {
		return false
	}
	for _, a := range places(text, q) {
		for _, b := range there {
			if 2*shared(a, b) >= min(length(a), length(b)) {
				return true
			}
		}
	}
	return false
}

var empty = regexp.MustCompile(`^(oil\.\w+)\.(with-filter|oil-only|volume)$`)

// forbids reports whether a wrong answer is one that harms: it takes the figure of
// another job, takes the amount of an empty engine for that of a change, or reads
// where nothing is to be read.
func (p *Page) forbids(text string, a *Answer) bool {
	if len(p.Truth) == 0 {
		return true
	}
	if m := empty.FindStringSubmatch(a.What); m != nil {
		dry := &Answer{What: m[1] + ".dry", Text: a.Text}
		if slices.ContainsFunc(p.Truth, func(f Fact) bool { return f.What == dry.What && p.matches(&f, dry) }) {
			return true
		}
	}
	at := places(text, flat(a.Quote))
	within := len(at) > 0
	for _, q := range at {
		inside := false
		for _, not := range p.Not {
			for _, n := range places(text, flat(not)) {
				if shared(q, n) > length(q)/2 {
					inside = true
				}
				if (shared(q, n) > 0) && holdsFigure(not, a.Text) {
					return true
				}
			}
		}
		within = within && inside
	}
	return within || len(at) == 0 && slices.ContainsFunc(p.Not, func(not string) bool { return holdsFigure(not, a.Text) })
}

// holdsFigure reports whether the first number of an answer is printed in a place.
func holdsFigure(place, answer string) bool {
	n := printed.FindString(answer)
	return n != "" && slices.Contains(printed.FindAllString(strings.ReplaceAll(place, ",", "."), -1), strings.ReplaceAll(n, ",", "."))
}
