package pagetest

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Every page says what is written beside it, and a reader who errs in nothing gets
// all of it.
func TestPages(t *testing.T) {
	pages, err := Load("../../../testdata/pages")
	blind, blindErr := Load("../../../testdata/blind-pages")
	if err != nil || blindErr != nil || len(pages) < 10 || len(blind) < 10 {
		t.Fatalf("%d and %d pages, %v, %v", len(pages), len(blind), err, blindErr)
	}
	var names []string
	for _, p := range append(pages, blind...) {
		if slices.Contains(names, p.Name) {
			t.Errorf("two pages are called %s", p.Name)
		}
		names = append(names, p.Name)
		for _, f := range p.Faults() {
			t.Errorf("%s: %s", p.Name, f)
		}
	}
}

func TestSame(t *testing.T) {
	for _, c := range []struct {
		what, want, got string
		same            bool
	}{
		{"bolt.drain.torque", "30 N·m", "30 N·m", true},
		{"bolt.drain.torque", "30 N·m", "31 N·m", false},
		{"bolt.drain.torque", "30 N·m", "22 lbf·ft", true},
		{"bolt.drain.torque", "30 N·m", "30 lbf·ft", false},
		{"bolt.drain.torque", "26–34 N·m", "30 N·m", false},
		{"bolt.drain.torque", "30 ± 4 N·m", "30 N·m", true},
		{"bolt.drain.torque", "30 ± 4 N·m", "26–34 N·m", true},
		{"oil.engine.dry", "2.5 L", "2.6 US qt", true},
		{"oil.engine.dry", "2.5 L", "2.7 US qt", false},
		{"oil.engine.dry", "2,500 cm³", "2.5 L", true},
		{"oil.engine.dry", "2.5 L", "2500", false},
		{"interval.distance", "6,000 km", "6000 km", true},
		{"interval.distance", "6,000 km", "600 km", false},
		{"interval.months", "12 months", "1 years", true},
		{"bolt.filter.turn", "1/2–3/4 turn", "180–270 °", true},
		{"bolt.filter.turn", "1 1/2 turn", "540 °", true},
		{"warm.target", "50–60 °C", "122–140 °F", true},
		{"bolt.drain.thread", "M12x1.5", "M12 × 1,50", true},
		{"bolt.drain.thread", "M10", "M1", false},
		{"oil.engine.grades", "10W-40", "SAE 10W/40", true},
		{"years", "2014-", "2014–", true},
		{"years", "2014", "2014-", false},
	} {
		if got := same(c.what, c.want, c.got); got != c.same {
			t.Errorf("%s: %s and %s are the same: %v", c.what, c.want, c.got, got)
		}
	}
}

func TestScoreOf(t *testing.T) {
	p := &Page{Name: "one", Kind: Clean,
		Text: "Oil drain bolt ..... 25 N·m\nSpark plug ......... 16 N·m\nWith filter 2.0 L, overhaul 2.4 L",
		Truth: []Fact{
			{What: "bolt.drain.torque", Value: "25 N·m", Quote: "Oil drain bolt ..... 25 N·m"},
			{What: "oil.engine.with-filter", Value: "2.0 L", Quote: "With filter 2.0 L"},
			{What: "oil.engine.dry", Value: "2.4 L", Quote: "overhaul 2.4 L"},
		},
		Doubt: []Doubt{{What: "oil.engine.dry", Why: "for the test"}},
		Not:   []string{"Spark plug ......... 16 N·m"},
	}
	plug := "Spark plug ......... 16 N·m"
	for _, c := range []struct {
		name   string
		answer Answer
		want   Score
	}{
		{"right", Answer{"bolt.drain.torque", "25 N·m", "drain bolt ..... 25 N·m", false}, Score{Right: 1}},
		{"quoted from elsewhere", Answer{"bolt.drain.torque", "25 N·m", "With filter 2.0 L", false}, Score{Misquoted: 1, WrongAndSure: 1}},
		{"quoted from nowhere", Answer{"bolt.drain.torque", "25 N·m", "25 Nm", false}, Score{Misquoted: 1, WrongAndSure: 1}},
		{"misread", Answer{"bolt.drain.torque", "26 N·m", "25 N·m", true}, Score{Wrong: 1, Needless: 1}},
		{"another job's", Answer{"bolt.drain.torque", "16 N·m", plug, true}, Score{Wrong: 1, Forbidden: 1, Needless: 1}},
		{"another job's figure", Answer{"bolt.filter.torque", "16 N·m", "25 N·m\n" + plug, false}, Score{Wrong: 1, Forbidden: 1, WrongAndSure: 1}},
		{"an empty engine's", Answer{"oil.engine.with-filter", "2.4 L", "overhaul 2.4 L", false}, Score{Wrong: 1, Forbidden: 1, WrongAndSure: 1}},
		{"a doubt alone", Answer{"oil.engine.dry", "", "", true}, Score{Doubted: 1}},
		{"a doubt in vain", Answer{"oil.engine.with-filter", "", "", true}, Score{Needless: 1}},
	} {
		got := ScoreOf(p, []Answer{c.answer})
		c.want.Pages, c.want.Truths, c.want.Due, c.want.Notes = 1, 3, 1, got.Notes
		if got.Pages != 1 || got.Right != c.want.Right || got.Misquoted != c.want.Misquoted || got.Wrong != c.want.Wrong ||
			got.WrongAndSure != c.want.WrongAndSure || got.Forbidden != c.want.Forbidden || got.Doubted != c.want.Doubted || got.Needless != c.want.Needless {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

// What is drawn is sound too, also once it is spoilt as a photo is.
func TestDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Draw(t)
		for _, f := range p.Faults() {
			t.Errorf("%s\n%s", f, p.Text)
		}
		for _, f := range Photographed(t, p).Faults() {
			t.Errorf("spoilt: %s\n%s", f, p.Text)
		}
	})
}
