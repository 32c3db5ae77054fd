package quote_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quote"
)

// The trade sheet's own case: 3.4 L at 14.00, a filter at 12.00, a ring at 1.50,
// 0.7 h at 70.00, waste 3.00: 113.10, with 20 % 135.72.
func TestBill_OilChange(t *testing.T) {
	b := quote.Bill{Mode: quote.Net, Lines: []quote.Line{
		{Count: 3400, Price: 1400, Rate: 20000}, {Count: 1000, Price: 1200, Rate: 20000}, {Count: 1000, Price: 150, Rate: 20000},
		{Count: 700, Price: 7000, Rate: 20000}, {Count: 1000, Price: 300, Rate: 20000}}}
	b.Compute()
	if b.Net != 11310 || b.Tax != 2262 || b.Total != 13572 {
		t.Errorf("net %d tax %d total %d, want 11310 2262 13572", b.Net, b.Tax, b.Total)
	}
}

func drawDiscount(t *rapid.T, name string) quote.Discount {
	switch rapid.IntRange(0, 2).Draw(t, name) {
	case 1:
		return quote.Discount{Share: rapid.IntRange(0, quote.Whole).Draw(t, name+" share")}
	case 2:
		return quote.Discount{Amount: rapid.IntRange(0, 5000).Draw(t, name+" amount")}
	}
	return quote.Discount{}
}

func drawBill(t *rapid.T) quote.Bill {
	b := quote.Bill{
		Mode:    quote.Mode(rapid.IntRange(0, 2).Draw(t, "mode")),
		PerLine: rapid.Bool().Draw(t, "per line"),
		Step:    rapid.SampledFrom([]int{0, 1, 5, 10, 50, 100}).Draw(t, "step"),
		Off:     drawDiscount(t, "on all"),
	}
	price := rapid.OneOf(rapid.IntRange(0, 300), rapid.IntRange(0, quote.Most))
	for range rapid.IntRange(0, 12).Draw(t, "lines") {
		b.Lines = append(b.Lines, quote.Line{
			Count: rapid.IntRange(0, 1000*quote.One).Draw(t, "count"),
			Price: price.Draw(t, "price"),
			Off:   drawDiscount(t, "off"),
			Rate:  rapid.SampledFrom([]int{0, 5000, 7000, 8875, 20000, 100000}).Draw(t, "rate"),
		})
	}
	return b
}

// What is added up adds up, to the unit.
func TestBill_AddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBill(t)
		b.Compute()
		lines, base, tax := 0, 0, 0
		for _, l := range b.Lines {
			if l.Amount < 0 || l.Cut < 0 {
				t.Fatalf("a line of %d after a discount of %d", l.Amount, l.Cut)
			}
			lines += l.Amount
		}
		for _, x := range b.Taxes {
			base, tax = base+x.Base, tax+x.Tax
			if x.Base < 0 || x.Tax < 0 {
				t.Fatalf("rate %d: base %d, tax %d", x.Rate, x.Base, x.Tax)
			}
		}
		in := 0 // the tax that the prices hold
		if b.Mode == quote.Gross {
			in = b.Tax
		}
		switch {
		case lines != b.Sum:
			t.Fatalf("lines %d, sum %d", lines, b.Sum)
		case b.Sum-b.Cut-in != b.Net:
			t.Fatalf("sum %d, discount %d, tax in it %d, net %d", b.Sum, b.Cut, in, b.Net)
		case b.Net+b.Tax+b.Rounding != b.Total:
			t.Fatalf("net %d tax %d rounding %d total %d", b.Net, b.Tax, b.Rounding, b.Total)
		case tax != b.Tax || b.Mode != quote.NoTax && base != b.Net:
			t.Fatalf("by rate: %d and %d of tax; in all: %d and %d", base, tax, b.Net, b.Tax)
		case b.Step > 1 && (b.Total%b.Step != 0 || 2*max(b.Rounding, -b.Rounding) > b.Step):
			t.Fatalf("total %d rounded by %d to %d", b.Total, b.Rounding, b.Step)
		case b.Step <= 1 && b.Rounding != 0:
			t.Fatalf("rounded by %d for nothing", b.Rounding)
		}
	})
}

// In whatever order the lines are written, the totals are the same.
func TestBill_OrderOfLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := drawBill(t)
		other := one
		other.Lines = rapid.Permutation(one.Lines).Draw(t, "order")
		one.Compute()
		other.Compute()
		if one.Total != other.Total || one.Tax != other.Tax || one.Net != other.Net || one.Cut != other.Cut {
			t.Fatalf("total %d tax %d, in another order %d %d", one.Total, one.Tax, other.Total, other.Tax)
		}
	})
}

// From a price without tax to one with it and back is the same within one unit,
// and so the other way round.
func TestBill_NetAndGross(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		price := rapid.IntRange(0, quote.Most).Draw(t, "price")
		rate := rapid.IntRange(0, quote.Whole).Draw(t, "rate")
		there := bill(quote.Net, false, 0, rate, price).Total
		if back := bill(quote.Gross, false, 0, rate, there).Net; back < price-1 || back > price+1 {
			t.Fatalf("net %d, gross %d, net again %d", price, there, back)
		}
		net := bill(quote.Gross, false, 0, rate, price).Net
		if again := bill(quote.Net, false, 0, rate, net).Total; again < price-1 || again > price+1 {
			t.Fatalf("gross %d, net %d, gross again %d", price, net, again)
		}
	})
}

func TestExceeds(t *testing.T) {
	for _, c := range []struct {
		total, estimate, share int
		ask                    bool
	}{
		{10000, 10000, 0, false},
		{9000, 10000, 0, false},
		{11000, 10000, 10000, false}, // a tenth to the cent
		{11001, 10000, 10000, true},
		{12345, 10000, 23500, true}, // 23.45 %
		{109, 99, 10100, true},      // 9.9 would be a tenth
		{1, 0, 100000, true},
	} {
		if share, ask := quote.Exceeds(c.total, c.estimate); share != c.share || ask != c.ask {
			t.Errorf("%d for %d: %d %v, want %d %v", c.total, c.estimate, share, ask, c.share, c.ask)
		}
	}
}
