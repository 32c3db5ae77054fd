package shown

import (
	"math"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/quantity"
)

// Printer prints figures for a person of that system of units. Sources are those
// of the card whose figures it prints.
type Printer struct {
	System  quantity.System
	Sources []card.Source
}

// Card prepares a card's figure; nil is one that is not known. lookup is the word
// id, without "lookup.", of the place in a manual where such a figure stands.
func (p *Printer) Card(name string, f *card.Figure, lookup string) Figure {
	s := Unknown(name, lookup)
	if f == nil {
		return s
	}
	s.Source, s.Page, s.Method, s.Kept, s.Quote = p.Title(f.Source), f.Page, f.Method, f.Kept, f.Quote
	low, ok := f.Amount()
	if !ok {
		return s
	}
	s.Standing, s.Lookup = f.Standing, ""
	high, ranged := f.Upper()
	if !ranged {
		high = low
	}
	low.Rough = f.Standing == card.Estimated
	high.Rough = low.Rough
	s.Texts = quantity.Between(low, high, p.System)
	return s
}

// Exact prints a value that is given in that unit's base and is no estimate, with so
// many digits.
func (p *Printer) Exact(base float64, unit string, digits int) []string {
	a := amount(base, unit, digits)
	a.Rough = false
	return a.Show(p.System)
}

// Texts prints an estimate that is given in that unit's base, with so many digits.
func (p *Printer) Texts(base float64, unit string, digits int) []string {
	return amount(base, unit, digits).Show(p.System)
}

// Down rounds an estimate down, to so many digits in the unit that Texts prints first,
// and gives that unit: Texts of both prints it as it is.
func (p *Printer) Down(base float64, unit string, digits int) (down float64, in string) {
	texts := p.Texts(base, unit, digits)
	if len(texts) == 0 {
		return base, unit
	}
	_, in, _ = strings.Cut(texts[0], " ")
	u, known := quantity.Find(in)
	if !known {
		return base, unit
	}
	return u.ToBase(quantity.Down(u.FromBase(base), digits)), in
}

// Between is Texts of a range, or of one value where its ends look the same.
func (p *Printer) Between(low, high float64, unit string, digits int) []string {
	return quantity.Between(amount(low, unit, digits), amount(high, unit, digits), p.System)
}

func amount(base float64, unit string, digits int) quantity.Amount {
	u, _ := quantity.Find(unit)
	return quantity.Amount{Kind: u.Kind, Base: base, Unit: u.ID, Digits: digits, Rough: true}
}

// Title gives the title of a source by its id; "" when the card has none of it.
func (p *Printer) Title(source string) string {
	for _, s := range p.Sources {
		if s.ID == source {
			return s.Title
		}
	}
	return ""
}

// Litres prints a sum in L to the 10 mL that a jug can show.
func (p *Printer) Litres(sum float64) []string {
	return p.Exact(whole(sum*100)/100, "L", 6)
}

// Kilometres prints a distance in km with so many digits, whole ones at most.
func (p *Printer) Kilometres(km float64, digits int) []string {
	return p.Exact(whole(km), "km", digits)
}

// whole rounds, but what is not nothing never becomes nothing: of that it keeps a
// digit.
func whole(v float64) float64 {
	if r := math.Round(v); r != 0 || v == 0 {
		return r
	}
	few, _ := quantity.ParseNumber(quantity.Number(v, 1))
	return few
}
