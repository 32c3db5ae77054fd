// Package quote adds up an estimate or a bill: lines, discounts, tax, rounding.
//
// All money is in whole minor units of one currency (cents), all shares in
// thousandths of a per cent, all quantities in thousandths; nothing is ever a
// float. Every division rounds half away from zero. What it does not do: decide
// which tax applies, or what a law asks a bill to say.
package quote

import (
	"cmp"
	"math/bits"
	"slices"
)

// The whole of a share, in thousandths of a per cent; and of a quantity, in
// thousandths.
const (
	Whole = 100_000
	One   = 1000
)

// Discount is a share, or an amount in minor units; the zero value is none.
type Discount struct{ Share, Amount int }

// of gives the discount on an amount, which it can't exceed.
func (d Discount) of(amount int) int { return min(Proportion(amount, d.Share, Whole)+d.Amount, amount) }

// Line is one line of a bill.
type Line struct {
	Count int // thousandths of a piece, litre or hour
	Price int // minor units for one
	Off   Discount
	Rate  int // of the tax, as a share

	Cut    int // worked out: the discount
	Amount int // worked out: what is left
}

// Compute works out the line's own discount and amount.
func (l *Line) Compute() {
	full := Proportion(l.Price, l.Count, One)
	l.Cut = l.Off.of(full)
	l.Amount = full - l.Cut
}

// Mode is how the prices of a bill stand to the tax.
type Mode int

// The modes.
const (
	NoTax Mode = iota // none is charged
	Net               // it comes on top of the prices
	Gross             // the prices hold it
)

// Tax is the tax of one rate: Base is the amount without it.
type Tax struct{ Rate, Base, Tax int }

// Bill is a list of lines and how they are added up.
type Bill struct {
	Lines   []Line
	Off     Discount // on all
	Mode    Mode
	PerLine bool // tax is rounded for each line, else for each rate's sum
	Step    int  // to which the total is rounded, in minor units; 0 and 1 for none

	// Worked out. Net + Tax + Rounding = Total, always.
	Sum, Cut, Net, Tax, Rounding, Total int
	Taxes                               []Tax // by rate, the lowest first
}

// Compute adds the bill up. The order of the lines changes nothing but their order.
func (b *Bill) Compute() {
	b.Sum, b.Tax, b.Taxes = 0, 0, nil
	for i := range b.Lines {
		b.Lines[i].Compute()
		b.Sum += b.Lines[i].Amount
	}
	b.Cut = b.Off.of(b.Sum)
	b.spread(b.byRate())
	b.Net = b.Sum - b.Cut
	if b.Mode == Gross {
		b.Net -= b.Tax
	}
	b.Total = b.Net + b.Tax
	if b.Step > 1 {
		b.Total = Proportion(b.Total, 1, b.Step) * b.Step
	}
	b.Rounding = b.Total - b.Net - b.Tax
}

// spread gives each line its part of the discount on all, and sums up the tax by
// rate. The parts are rounded as running sums, so that they add up to the whole.
func (b *Bill) spread(order []*Line) {
	sum, given := 0, 0
	for i, l := range order {
		sum += l.Amount
		part := Proportion(b.Cut, sum, max(b.Sum, 1)) - given
		given += part
		if b.Mode == NoTax {
			continue
		}
		if i == 0 || order[i-1].Rate != l.Rate {
			b.Taxes = append(b.Taxes, Tax{Rate: l.Rate})
		}
		t := &b.Taxes[len(b.Taxes)-1]
		t.Base += l.Amount - part
		if b.PerLine {
			t.Tax += b.taxIn(l.Amount-part, l.Rate)
		}
	}
	for i := range b.Taxes {
		t := &b.Taxes[i]
		if !b.PerLine {
			t.Tax = b.taxIn(t.Base, t.Rate)
		}
		if b.Mode == Gross {
			t.Base -= t.Tax
		}
		b.Tax += t.Tax
	}
}

// taxIn gives the tax on or in an amount.
func (b *Bill) taxIn(amount, rate int) int {
	if b.Mode == Gross {
		return Proportion(amount, rate, Whole+rate)
	}
	return Proportion(amount, rate, Whole)
}

// Proportion gives amount · top / bottom, rounded half away from zero. None of them is
// negative; the product may be larger than an int.
func Proportion(amount, top, bottom int) int {
	high, low := bits.Mul64(uint64(amount), uint64(top))
	whole, rest := bits.Div64(high, low, uint64(bottom))
	if rest >= uint64(bottom)-rest {
		whole++
	}
	return int(whole)
}

// byRate gives the lines by rate and amount, so that the parts of a discount
// don't depend on the order in which they were written.
func (b *Bill) byRate() []*Line {
	order := make([]*Line, len(b.Lines))
	for i := range b.Lines {
		order[i] = &b.Lines[i]
	}
	slices.SortStableFunc(order, func(x, y *Line) int {
		return cmp.Or(cmp.Compare(x.Rate, y.Rate), cmp.Compare(x.Amount, y.Amount))
	})
	return order
}

// Exceeds gives by how much a total lies above an estimate, as a share rounded
// to a tenth of a per cent, and whether that is more than a tenth of it: beyond
// that, laws on repairs in places ask for consent first (for instance the code
// of Prince George's County, Maryland, section 26A-107; elsewhere common
// practice, no source).
func Exceeds(total, estimate int) (share int, ask bool) {
	if total <= estimate {
		return 0, false
	}
	more := total - estimate
	return Proportion(more, 1000, max(estimate, 1)) * (Whole / 1000), more > estimate/10
}
