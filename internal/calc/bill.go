package calc

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/quote"
	"tidysump/internal/wire"
)

// billing is made like a calculation and stands at no bench: who doesn't charge
// doesn't meet it.
var billing = Calculation{"bill", billFields[:], addUp, billShape}

// perLine: tax is rounded for each line.
const perLine = "line"

// Letters that are offered for what a line is for, and for what is written in several
// lines.
const (
	lineLetters    = 200
	writtenLetters = 4000
)

// theBill is asked for what an estimate may go without.
const theBill = "bill"

// billFields: money, shares and counts are texts, since how many decimals they
// may have follows from the currency and the kind of line. The prices' words
// stand in the order of quote.Mode.
var billFields = [...]field{
	{name: "what", kind: Choice, words: []string{"estimate", theBill}, family: "bill.what."},
	{name: "number", kind: Text, kept: true},
	{name: "seller", kind: Text, letters: writtenLetters, lines: true, kept: true},
	{name: "customer", kind: Text, letters: writtenLetters, lines: true, kept: true},
	{name: "remark", kind: Text, letters: writtenLetters, lines: true, kept: true},
	{name: "currency", kind: Text, needed: true},
	{name: "prices", kind: Choice, words: []string{"none", "net", "gross"}, family: "bill.prices."},
	{name: "tax", kind: Text},
	{name: "rounding", kind: Choice, words: []string{"total", perLine}, family: "bill.rounding."},
	{name: "cash", kind: Choice, words: []string{"0.05", "0.10", "0.20", "0.50", "1", "5", "10"}},
	{name: "discount", kind: Text},
	{name: "estimate", kind: Text, kept: true}, // the estimate's input, as it was stored
	{name: "lines", kind: List, needed: true, rows: []field{
		{name: "kind", kind: Choice, needed: true, family: "bill.kind.",
			words: []string{"part", "oil", "bottle", "labour", "flat", "waste", "materials", "free"}},
		{name: "text", kind: Text, letters: lineLetters, kept: true},
		{name: "count", kind: Text},
		{name: "price", kind: Text},
		{name: "discount", kind: Text},
		{name: "tax", kind: Text},
		{name: "of", kind: Text, kept: true}, // what its price is remembered by
	}},
}

// addUp adds up an estimate or a bill.
func addUp(f *Form, a *Answer) {
	b, units := f.bill()
	if f.refused() {
		return
	}
	digits, _ := quote.Digits(f.of("currency").text)
	a.word("currency", f.of("currency").text)
	a.word("prices", f.of("prices").text)
	a.whole("digits", digits)
	a.whole("sum", b.Sum)
	a.whole("discount", b.Cut)
	a.whole("net", b.Net)
	a.whole("tax", b.Tax)
	a.whole("rounding", b.Rounding)
	a.whole("total", b.Total)
	lines := make([]Answer, len(b.Lines))
	for n := range lines {
		r, l := &lines[n], &b.Lines[n]
		r.word("unit", units[n])
		r.word("count", thousandths(l.Count))
		r.word("rate", thousandths(l.Rate))
		r.whole("price", l.Price)
		r.whole("discount", l.Cut)
		r.whole("amount", l.Amount)
	}
	a.rows("lines", lines)
	taxes := make([]Answer, len(b.Taxes))
	for n := range taxes {
		t := &b.Taxes[n]
		taxes[n].word("rate", thousandths(t.Rate))
		taxes[n].whole("base", t.Base)
		taxes[n].whole("tax", t.Tax)
	}
	a.rows("taxes", taxes)
	if f.has("estimate") {
		f.compare(a, b.Total)
	}
	f.lacks(b.Mode)
}

// lacks says what a paper has to show and does not, before it is printed: Article 226 of
// Directive 2006/112/EC lists it for invoices (from memory). The law decides of which
// bills all of it is asked.
func (f *Form) lacks(mode quote.Mode) {
	lack := func(name, code string) {
		if f.of(name).text == "" {
			f.say(finding.Note, code, name)
		}
	}
	lack("seller", "bill-no-seller")
	lack("customer", "bill-no-customer")
	if f.of("what").text != theBill {
		return
	}
	lack("number", "bill-no-number")
	if mode == quote.NoTax {
		lack("remark", "bill-no-tax")
	}
}

// compare says by how much a bill differs from its estimate, and that the
// customer is to be asked first when it is too much.
func (f *Form) compare(a *Answer, total int) {
	e := newForm(billFields[:])
	before := 0
	if e.settle(wire.Read([]byte(f.of("estimate").text), e)) {
		bill, _ := e.bill()
		before = bill.Total
	}
	if e.refused() || e.of("currency").text != f.of("currency").text {
		f.say(finding.Doubt, "estimate-unreadable", "estimate")
		return
	}
	a.whole("estimate", before)
	a.whole("more", max(total-before, 0))
	a.whole("less", max(before-total, 0))
	if share, ask := quote.Exceeds(total, before); ask {
		f.say(finding.Doubt, "over-estimate", "estimate", "share", thousandths(share))
	}
}

// thousandths writes a count or a share as a number.
func thousandths(n int) string { return quantity.Number(float64(n)/quote.One, 7) }

// percent gives what stands before a per-cent sign.
func percent(text string) (string, bool) {
	return strings.CutSuffix(quantity.Typed(text), "%")
}
