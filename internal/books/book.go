// Package books keeps the books of a workshop, each a replay of facts: its old oil, its
// shelf, its torque wrenches.
//
//	OldOil(facts) Shelve(facts) Wrenches(facts)    pure
//
// A quantity stands in a fact as it was typed, and the fact's sign "system" says for a
// person of which units. Volumes add up in whole µL, so that their order changes no sum.
package books

import (
	"math"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// Gone is the kind of a fact in every book that says its subject is no more. What it
// was stays in the book.
const Gone ledger.FactKind = "gone"

// perLitre is how many of the µL in which volumes are counted a litre has.
const perLitre = 1e6

// book reads the facts of one book.
type book struct {
	*ledger.Reading
	print shown.Printer
	today int // day of the person's calendar; 0 where nobody says
}

// open reads the facts of a book, and leaves out those of others. today is a day,
// "2026-11-30", or empty.
func open(in *ledger.Input, which ledger.Book, system quantity.System, today string) *book {
	b := &book{Reading: in.Read(), print: shown.Printer{System: system}}
	b.today, _ = date.ReadDay(today)
	var own []*ledger.Fact
	for _, f := range b.Standing {
		if f.Book == which {
			own = append(own, f)
		} else {
			b.Fault(f, "fact-of-other-book", "/book", finding.Refuse, "text", finding.Clip(string(f.Book)))
		}
	}
	b.Standing = own
	return b
}

// refuse says why a fact can't be written; of one that stands, what is wrong with it.
func (b *book) refuse(f *ledger.Fact, code, where string, values ...string) {
	b.Fault(f, code, where, finding.Refuse, values...)
}

// pass tells what reading a text of a fact found: all of one that is about to be
// written, of others what kept them from being read.
func (b *book) pass(f *ledger.Fact, where string, list []finding.Finding) {
	for _, found := range list {
		if f != b.New && found.Grade != finding.Refuse {
			continue
		}
		var values []string
		for name, text := range found.Values {
			values = append(values, name, text)
		}
		b.Fault(f, found.Code, where, found.Grade, values...)
	}
}

// ask reads a quantity as a person of the fact's units typed it, and refuses what lies
// outside its bounds, which are in its base unit.
func (b *book) ask(f *ledger.Fact, where, text string, q quantity.Ask) (quantity.Amount, bool) {
	q.System = quantity.System(f.Signs["system"])
	if q.System == "" {
		q.System = quantity.Metric
	}
	q.Unit = quantity.Usual(q.Kind, q.System)
	a, list := q.Read(quantity.Typed(text))
	b.pass(f, where, list)
	if finding.Refused(list) || math.IsNaN(a.Base) {
		return a, false
	}
	if !quantity.AtLeast(a.Base, q.Low) || !quantity.AtMost(a.Base, q.High) {
		low, high := a, a
		low.Base, low.Digits, high.Base, high.Digits = q.Low, 3, q.High, 3
		b.refuse(f, "not-believable", where, "value", a.Print(a.Unit), "low", low.Print(a.Unit), "high", high.Print(a.Unit))
		return a, false
	}
	return a, true
}

// volume reads a volume of a fact, in µL.
func (b *book) volume(f *ledger.Fact, where, text string, low, high float64) (int, bool) {
	a, ok := b.ask(f, where, text, quantity.Ask{Kind: quantity.Volume, Low: low, High: high})
	return micro(a.Base), ok
}

// named reads what a thing is called.
func (b *book) named(f *ledger.Fact) string {
	b.Told(f, "/text", f.Text, "@books.name")
	b.Short(f, "/text", f.Text, ledger.ValueLetters)
	return strings.TrimSpace(f.Text)
}

// dayOf gives the day that a fact is of: the one that it names, or the phone's own when
// it was told. What names a day that there is none of, or that is to come, is refused.
func (b *book) dayOf(f *ledger.Fact, where, named string) int {
	if named != "" {
		day, ok := date.ReadDay(named)
		switch {
		case !ok:
			b.refuse(f, "bad-day", where, "text", finding.Clip(named))
		case f == b.New && b.today > 0 && day > b.today:
			b.refuse(f, "day-to-come", where)
		}
		if ok {
			return day
		}
	}
	if day, ok := date.ReadDay(f.Day); ok {
		return day
	}
	return date.DayOf(f.Time)
}

// litres prints a volume in µL.
func (b *book) litres(volume int) []string { return b.print.Litres(float64(volume) / perLitre) }

// micro counts a volume in L in µL; what is no volume is none.
func micro(litres float64) int {
	if math.IsNaN(litres) {
		return 0
	}
	return int(math.Round(litres * perLitre))
}
