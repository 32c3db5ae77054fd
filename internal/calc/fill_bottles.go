package calc

import (
	"math"
	"strconv"

	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// bottlesFields: a price is a bare number in anybody's money, to compare and to
// add up.
var bottlesFields = [...]field{
	{name: "need", kind: quantity.Volume, low: 0.01, high: 25, needed: true},
	{name: "bottles", kind: List, front: true, rows: []field{
		{name: "id", kind: Text, kept: true},
		{name: "size", kind: quantity.Volume, low: 0.02, high: 250, needed: true},
		{name: "left", kind: quantity.Volume, high: 250},
		{name: "opened", kind: Yes},
		{name: "price", kind: Number, high: 1e6},
	}},
}

// bottles chooses what to pour from the shelf.
func bottles(f *Form, a *Answer) {
	rows := f.of("bottles").rows
	shelf := make([]fill.Bottle, len(rows))
	for n := range rows {
		shelf[n] = rows[n].bottle()
	}
	if f.refused() {
		return
	}
	c := fill.Choose(microlitres(f.number("need")), shelf)
	verdict := "shelf.opened-suffice"
	if c.Missing > 0 {
		verdict = "shelf.lacks"
	} else if c.New > 0 {
		verdict = "shelf.open-new"
	}
	a.word("verdict", verdict)
	pours := make([]Answer, len(c.Pours))
	for n := range c.Pours {
		p := &c.Pours[n]
		pours[n].system = f.system
		pours[n].pour(p, rows[p.Bottle].of("id").text, shelf[p.Bottle].Opened)
	}
	a.rows("pours", pours)
	a.rows("shelf", shelfAfter(rows, &c, pours))

	left, missing := litres(c.Left), litres(c.Missing)
	a.number("opened", float64(c.New))
	a.number("left", left)
	a.number("missing", missing)
	a.estimate("figures", "left-over", "shelf", a.exact(left, "mL", 3)...)
	if missing > 0 {
		a.estimate("figures", "lacks", "shelf", a.exact(missing, "mL", 3)...)
	}
	f.cost(a, &c, shelf)
}

// microlitres gives a volume in L as package fill counts it, need and bottle alike, and
// litres gives it back to the tenth of a mL.
func microlitres(litres float64) int { return int(math.Round(litres * 1e6)) }
func litres(microlitres int) float64 { return round(float64(microlitres)/1e6, 1e4) }

// bottle reads one bottle. One that isn't full is an opened one.
func (f *Form) bottle() fill.Bottle {
	size, left, opened := f.number("size"), f.number("left"), f.number("opened") > 0
	if !f.has("left") {
		left = size
		if opened {
			f.say(finding.Note, "taken-as-full", "left")
		}
	}
	if left > size {
		f.reject("more-than-size", "left", "value", finding.Clip(f.of("left").text))
	}
	if left < size && !opened {
		opened = true
		f.say(finding.Note, "taken-as-opened", "left")
	}
	return fill.Bottle{Left: microlitres(left), Opened: opened, Price: int(math.Round(f.number("price") * 100))}
}

// pour says what to pour from one bottle; without an id it goes by its place
// on the shelf.
func (a *Answer) pour(p *fill.Pour, id string, opened bool) {
	if id == "" {
		id = strconv.Itoa(p.Bottle + 1)
	}
	a.word("id", id)
	a.number("place", float64(p.Bottle+1))
	a.word("verdict", "shelf.open-it")
	if opened {
		a.word("verdict", "shelf.is-open")
	}
	pour, left := litres(p.Amount), litres(p.Left)
	a.number("pour", pour)
	a.list("pourTexts", a.exact(pour, "mL", 3))
	a.number("left", left)
	a.list("leftTexts", a.exact(left, "mL", 3))
}

// shelfAfter is the shelf once all that was poured, each bottle as a person would
// type it: what was poured from is opened, and what is left in it is known.
func shelfAfter(rows []Form, c *fill.Choice, pours []Answer) []Answer {
	shelf := make([]Answer, len(rows))
	for n := range rows {
		for i := range rows[n].fields {
			name, g := rows[n].fields[i].name, &rows[n].given[i]
			if rows[n].fields[i].kind == Yes {
				shelf[n].yes(name, g.number > 0)
			} else {
				shelf[n].word(name, g.text)
			}
		}
	}
	for n := range c.Pours {
		bottle := &shelf[c.Pours[n].Bottle]
		bottle.yes("opened", true)
		bottle.word("left", pours[n].put("leftTexts", holdsTexts).texts[0])
	}
	return shelf
}

// cost adds up the prices of the bottles to be opened. One without a price
// counts as free, which is noted if another has one.
func (f *Form) cost(a *Answer, c *fill.Choice, shelf []fill.Bottle) {
	rows := f.of("bottles").rows
	priced, unpriced := false, -1
	for n := range c.Pours {
		bottle := c.Pours[n].Bottle
		switch {
		case shelf[bottle].Opened:
		case rows[bottle].has("price"):
			priced = true
		default:
			unpriced = bottle
		}
	}
	if !priced {
		return
	}
	cost := float64(c.Cost) / 100
	a.number("cost", cost)
	a.estimate("figures", "cost", "shelf", strconv.FormatFloat(cost, 'f', 2, 64))
	if unpriced >= 0 {
		rows[unpriced].say(finding.Note, "price-left-out", "price")
	}
}
