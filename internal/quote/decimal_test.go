package quote_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quote"
)

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		text   string
		places int
		want   int
		fault  string
	}{
		{"14.00", 2, 1400, ""}, {"14,00", 2, 1400, ""}, {" 14 ", 2, 1400, ""}, {"14.5", 2, 1450, ""}, {".5", 2, 50, ""},
		{"1 400,50", 2, 140050, ""}, {"1'400.50", 2, 140050, ""}, {"1\u202f400", 0, 1400, ""}, {"0", 2, 0, ""},
		{"1,400", 3, 0, "number-two-ways"}, {"1.40", 3, 1400, ""}, {"1,4000", 3, 1400, ""}, {"1400", 3, 1400000, ""}, {"0,400", 3, 400, ""},
		{"1.234", 3, 0, "number-two-ways"}, {"1.2340", 3, 1234, ""}, {"14.500", 2, 0, "number-two-ways"}, {"14.5000", 2, 1450, ""}, {"500,000", 0, 500000, ""},
		{"1,400", 2, 0, "number-two-ways"}, {"1,234", 2, 0, "too-many-decimals"}, // thousands, or a slip: not ours to guess
		{"1,500", 0, 1500, ""}, {"0,500", 0, 0, "too-many-decimals"}, {"1500,000", 0, 1500, ""},
		{"14.5", 0, 0, "too-many-decimals"},
		{"1,400.50", 2, 0, "no-plain-number"}, {"1.400.500", 2, 0, "no-plain-number"},
		{"", 2, 0, "no-plain-number"}, {".", 2, 0, "no-plain-number"}, {"-", 2, 0, "no-plain-number"}, {"12 €", 2, 0, "no-plain-number"}, {"1e3", 2, 0, "no-plain-number"},
		{"-3", 2, 0, "negative"}, {"−3", 2, 0, "negative"},
		{"100000000.01", 2, 0, "more-than-can-be"}, {"99999999999999999999999", 2, 0, "more-than-can-be"},
	} {
		if got, fault := quote.Decimal(c.text, c.places, quote.Most); got != c.want || fault != c.fault {
			t.Errorf("Decimal(%q, %d) = %d %q, want %d %q", c.text, c.places, got, fault, c.want, c.fault)
		}
	}
}

// A number that is written out is read as it was.
func TestDecimal_ReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.IntRange(0, quote.Most).Draw(t, "thousandths")
		text := fmt.Sprintf("%d.%03d0", units/1000, units%1000)
		if got, fault := quote.Decimal(text, 3, quote.Most); got != units || fault != "" {
			t.Fatalf("%q is %d %q", text, got, fault)
		}
	})
}

func TestTenths(t *testing.T) {
	for minutes, want := range map[float64]int{0: 0, 1: 100, 6: 100, 6.1: 200, 42: 700, 43: 800, 42.6: 800, 60: 1000} {
		if got := quote.Tenths(minutes); got != want {
			t.Errorf("%v min is %d, want %d", minutes, got, want)
		}
	}
}

// The minor units of ISO 4217 where they are not two, and a few where they are
// (list one in the data set datasets/currency-codes, read).
func TestDigits(t *testing.T) {
	for code, want := range map[string]int{"JPY": 0, "KRW": 0, "ISK": 0, "VND": 0, "UGX": 0, "KWD": 3, "BHD": 3, "TND": 3,
		"EUR": 2, "USD": 2, "GBP": 2, "CHF": 2, "HUF": 2, "SEK": 2, "INR": 2, "ZAR": 2} {
		if got, ok := quote.Digits(code); !ok || got != want {
			t.Errorf("%s has %d decimals (%v), want %d", code, got, ok, want)
		}
	}
	for _, code := range []string{"", "EU", "ERU", "eur", "XAU", "XXX", "D,A", "AED,AFN", "€"} {
		if got, ok := quote.Digits(code); ok {
			t.Errorf("%q is no currency, and has %d decimals", code, got)
		}
	}
}
