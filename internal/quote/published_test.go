package quote_test

import (
	"testing"

	"tidysump/internal/quote"
)

// The rates in shares.
const (
	five   = 5_000
	twenty = 20_000
)

func bill(mode quote.Mode, perLine bool, step, rate int, prices ...int) *quote.Bill {
	b := &quote.Bill{Mode: mode, PerLine: perLine, Step: step}
	for _, p := range prices {
		b.Lines = append(b.Lines, quote.Line{Count: quote.One, Price: p, Rate: rate})
	}
	b.Compute()
	return b
}

// Worked examples that authorities have published.
func TestBill_Published(t *testing.T) {
	for _, c := range []struct {
		source            string
		got               *quote.Bill
		tax, round, total int
	}{
		// HM Revenue & Customs, "Calculating VAT for VAT-inclusive and VAT-exclusive
		// prices" (hmrc.gov.uk/vat/forms-rates/rates/calculating.htm, read): £100 at
		// 20 % is £20 and £120; at 5 % it is £5 and £105.
		{"HMRC, 20 %", bill(quote.Net, false, 0, twenty, 10000), 2000, 0, 12000},
		{"HMRC, 5 %", bill(quote.Net, false, 0, five, 10000), 500, 0, 10500},
		// The same the other way round: ours, not the page's.
		{"HMRC, in £120", bill(quote.Gross, false, 0, twenty, 12000), 2000, 0, 12000},
		{"HMRC, in £105", bill(quote.Gross, false, 0, five, 10500), 500, 0, 10500},
		// Government of Canada, Budget 2012, "Rounding" (budget.canada.ca/2012/themes/
		// rounding-arrondissement-eng.html, read): a coffee at 1.83 and a sandwich at
		// 2.86 are 4.92 with 5 % tax, and 4.90 in cash; 4.92 by card.
		{"Canada, cash", bill(quote.Net, false, 5, five, 183, 286), 23, -2, 490},
		{"Canada, card", bill(quote.Net, false, 0, five, 183, 286), 23, 0, 492},
		// Office de la protection du consommateur, Québec, "Phasing out the penny"
		// (opc.gouv.qc.ca, read): 5.98 is 6.00 and 5.97 is 5.95, taxes included.
		{"Québec, 5.98", bill(quote.NoTax, false, 5, 0, 598), 0, 2, 600},
		{"Québec, 5.97", bill(quote.NoTax, false, 5, 0, 597), 0, -2, 595},
		// A Malaysian adviser's page on the two methods that the tax authority of
		// Singapore allows (mrp.com.my/2016/08/05/calculating-gst-on-tax-invoices,
		// read; the authority's own page has the two methods, its figures were not to
		// be had): three pens at 1.77 and 6 %.
		{"pens, per line", bill(quote.Net, true, 0, 6000, 177, 177, 177), 33, 0, 564},
		{"pens, on the total", bill(quote.Net, false, 0, 6000, 177, 177, 177), 32, 0, 563},
	} {
		if b := c.got; b.Tax != c.tax || b.Rounding != c.round || b.Total != c.total {
			t.Errorf("%s: tax %d rounding %d total %d, want %d %d %d", c.source, b.Tax, b.Rounding, b.Total, c.tax, c.round, c.total)
		}
	}
}

// The ends of Canada's table of cash rounding (Budget 2012, "Rounding", read): 1
// and 2 down, 3 and 4 up to 5; 6 and 7 down to 5, 8 and 9 up; 0 and 5 stay.
func TestBill_CashEndings(t *testing.T) {
	for end, want := range []int{100, 100, 100, 105, 105, 105, 105, 105, 110, 110} {
		if got := bill(quote.NoTax, false, 5, 0, 100+end).Total; got != want {
			t.Errorf("1.0%d in cash is %d, want %d", end, got, want)
		}
	}
}

// Half a cent goes up: HM Revenue & Customs, manual VATREC12030 ("less than 0.5
// of one penny … down; 0.5 of one penny or more … up", read), A New Tax System
// (Goods and Services Tax) Act 1999 (Australia), section 9-90 ("rounding 0.5
// cents upwards", read), and half a step of five: the Act's Regulations 2019,
// 168-5.11 ("up if the amount is an exact multiple of 2.5 cents", read).
func TestBill_Halves(t *testing.T) {
	for _, c := range []struct{ price, rate, want int }{
		{10, five, 1},  // 0.5
		{9, five, 0},   // 0.45
		{30, five, 2},  // 1.5
		{250, 200, 1},  // 0.5
		{29, five, 1},  // 1.45
		{50, 1000, 1},  // 0.5 of 1 %
		{49, 1000, 0},  // 0.49
		{150, 1000, 2}, // 1.5
	} {
		if got := bill(quote.Net, false, 0, c.rate, c.price).Tax; got != c.want {
			t.Errorf("%d at %d thousandths: tax %d, want %d", c.price, c.rate, got, c.want)
		}
	}
	if got := quote.Proportion(5, 1, 2); got != 3 {
		t.Errorf("half of 5 is %d, want 3", got)
	}
}

// Section 9-90 again, by its two rules: the total invoice rule adds before it
// rounds, the taxable supply rule rounds each supply to what the accounts hold.
// The figures are ours: four supplies with 1.4 cents of tax each.
func TestBill_TwoRules(t *testing.T) {
	if got := bill(quote.Net, false, 0, 10000, 14, 14, 14, 14).Tax; got != 6 {
		t.Errorf("total invoice rule: %d, want 6", got)
	}
	if got := bill(quote.Net, true, 0, 10000, 14, 14, 14, 14).Tax; got != 4 {
		t.Errorf("taxable supply rule: %d, want 4", got)
	}
}
