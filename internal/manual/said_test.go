package manual_test

import (
	"strings"
	"testing"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
)

// What a person says that the words of a page are is read there: of all that the example
// pages say, nearly everything, and as it stands.
func TestSaid_Pages(t *testing.T) {
	right, all := 0, 0
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil || len(pages) < 60 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	for _, p := range pages {
		var answers []pagetest.Answer
		read := manual.Read(p.Text, p.Language)
		for _, truth := range p.Truth {
			from := strings.Index(p.Text, truth.Quote)
			if r, list := read.Said(truth.What, manual.Span{From: from, To: from + len(truth.Quote)}); len(list) == 0 {
				answers = append(answers, pagetest.Answer{What: truth.What, Text: r.Text, Quote: truth.Quote})
			}
		}
		s := pagetest.ScoreOf(p, answers)
		right += s.Right
		all += len(p.Truth)
	}
	if 100*right < 92*all {
		t.Errorf("%d of %d", right, all)
	}
	for _, c := range []struct {
		text, what, piece, want string
	}{
		{"Check plug: 25 N·m, filter 12 N·m", "bolt.filter.torque", "12", "12 N·m"},
		{"Torque in N·m\nDrain plug 25", "bolt.drain.torque", "25", "25 N·m"},
		{"Read it through the sight glass, engine cold", "level.device", "sight glass", "window"},
		{"Read it through the sight glass, engine cold", "level.state", "cold", "cold"},
		{"Orrinshaw Pike 300, 2014-2018", "years", "2014-2018", "2014-2018"},
		{"Orrinshaw Pike 300, 2014-2018", "make", "Orrinshaw", "Orrinshaw"},
		{"Four screws, M6", "bolt.filter-cover.count", "Four", "4"},
		{"Four screws, M6", "bolt.drain.torque", "Four", ""},
		{"Drain plug 25 N·m", "interval.distance", "25 N·m", ""},
		{"Drain plug 25 N·m", "interval.months", "25 N·m", ""},
		{"Drain plug 25 N·m", "bolt.drain.torque", "   ", ""},
	} {
		from := strings.Index(c.text, c.piece)
		read := manual.Read(c.text, "")
		r, list := read.Said(c.what, manual.Span{From: from, To: from + len(c.piece)})
		if r.Text != c.want || (len(list) == 0) != (c.want != "") {
			t.Errorf("%q of %q is said to be %s: %q %v, want %q", c.piece, c.text, c.what, r.Text, list, c.want)
		}
	}
}

// A quote that opens a bracket closes it, where it is near.
func TestRead_QuotesCloseTheirBrackets(t *testing.T) {
	text := "Engine oil with filter ..... 1.6 L (1.7 US qt, 1.4 Imp qt)\nOil drain plug ..... 25 N·m (2.5 kgf·m)\n"
	for _, r := range manual.Read(text, "").Readings {
		if q := text[r.Quote.From:r.Quote.To]; strings.Count(q, "(") != strings.Count(q, ")") {
			t.Errorf("%s: %q", r.What, q)
		}
	}
}
