package calc

import (
	"math"
	"strconv"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/quote"
)

// mostCount is the most pieces, litres or hours of one line.
const mostCount = 1000

// bill reads a bill and adds it up; what is wrong is told beside its field.
func (f *Form) bill() *quote.Bill {
	b := &quote.Bill{PerLine: f.of("rounding").text == perLine}
	digits, known := quote.Digits(f.of("currency").text)
	if !known {
		f.reject("unknown-currency", "currency", "text", finding.Clip(f.of("currency").text))
		return b
	}
	if f.has("prices") {
		b.Mode = quote.Mode(f.number("prices") - 1)
	}
	b.Step = f.decimal("cash", digits, quote.Most)
	b.Off = f.discount(digits)
	usual := f.share("tax")
	rows := f.of("lines").rows
	b.Lines = make([]quote.Line, len(rows))
	labour, rateless := 0, false
	for n := range rows {
		r, l := &rows[n], &b.Lines[n]
		r.line(l, digits)
		if l.Rate = usual; b.Mode == quote.NoTax {
			l.Rate = 0
		} else if r.has("tax") {
			l.Rate = r.share("tax")
		} else if !f.has("tax") {
			rateless = true
		}
		if r.of("kind").text == "labour" && !f.refused() {
			l.Work()
			labour += l.Amount
		}
	}
	if rateless {
		f.reject("no-tax-rate", "tax")
	}
	if f.refused() {
		return b
	}
	for n := range rows {
		rows[n].priced(&b.Lines[n], labour)
	}
	b.Work()
	f.within(b.Off, b.Cut)
	return b
}

// line reads count, price and discount of a line.
func (f *Form) line(l *quote.Line, digits int) {
	l.Count = f.count()
	if _, share := percent(f.of("price").text); !share || f.of("kind").text != "materials" {
		l.Price = f.decimal("price", digits, quote.Most)
	}
	if !f.has("price") {
		f.say(finding.Doubt, "no-price", "price")
	}
	l.Off = f.discount(digits)
}

// priced gives small materials that are charged as a share of the labour their
// price, and refuses a discount that exceeds its line.
func (f *Form) priced(l *quote.Line, labour int) {
	if _, share := percent(f.of("price").text); share {
		l.Price = quote.Part(labour, f.share("price"), quote.Whole)
	}
	l.Work()
	f.within(l.Off, l.Cut)
}

// within refuses a discount of which less could be given.
func (f *Form) within(d quote.Discount, given int) {
	if d.Amount > given {
		f.reject("discount-too-large", "discount", "text", finding.Clip(f.of("discount").text))
	}
}

// count reads how much of it, in thousandths: oil in the unit typed (litres for
// mL, since prices are by the litre), labour in hours, all else in pieces.
func (f *Form) count() int {
	g, d := f.of("count"), field{name: "count", high: mostCount}
	typed := g.text
	switch f.of("kind").text {
	default:
		if typed == "" {
			return quote.One
		}
		return f.decimal("count", 3, mostCount*quote.One)
	case "oil":
		d.kind = quantity.Volume
	case "labour":
		d.kind, d.high = quantity.Duration, mostCount*60
		if _, bare := quantity.ParseNumber(typed); bare {
			g.text += " h"
		}
	}
	if typed == "" {
		return quote.One
	}
	f.amount(&d, g)
	if f.refused() {
		return 0
	}
	if d.kind == quantity.Duration {
		g.unit, _ = quantity.Find("h")
		return quote.Tenths(g.number)
	}
	if g.unit.ID == "mL" {
		g.unit, _ = quantity.Find("L")
	}
	return int(math.Round(g.unit.FromBase(g.number) * quote.One))
}

// decimal reads a number of at most that many decimals, nothing as zero.
func (f *Form) decimal(name string, places, most int) int {
	return f.decimalOf(name, f.of(name).text, places, most)
}

func (f *Form) decimalOf(name, text string, places, most int) int {
	if text == "" {
		return 0
	}
	n, fault := quote.Decimal(text, places, most)
	if fault != "" {
		text = finding.Clip(text)
		f.reject(fault, name, "text", text, "value", text, "places", strconv.Itoa(places))
	}
	return n
}

// share reads a share of the whole, with its sign or without.
func (f *Form) share(name string) int {
	text, _ := percent(f.of(name).text)
	return f.decimalOf(name, text, 3, quote.Whole)
}

// discount reads a discount: a share when it has a per-cent sign, else an amount.
func (f *Form) discount(digits int) quote.Discount {
	if _, share := percent(f.of("discount").text); share {
		return quote.Discount{Share: f.share("discount")}
	}
	return quote.Discount{Amount: f.decimal("discount", digits, quote.Most)}
}
