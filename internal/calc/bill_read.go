package calc

import (
	"math"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/quote"
)

// mostBareHours is the most that a bare number of labour is taken for in hours: nobody
// changes oil for longer, so that more may be minutes, and is asked for. Common practice,
// no source.
const mostBareHours = 10

// mostCount is the most pieces, litres or hours of one line.
const mostCount = 1000

// bill reads a bill and adds it up; what is wrong is said beside its field. The
// units are those of the lines' counts, "" for pieces.
func (f *Form) bill() (b *quote.Bill, units []string) {
	b = &quote.Bill{PerLine: f.of("rounding").text == perLine}
	digits, known := quote.Digits(f.of("currency").text)
	if !known {
		f.reject("unknown-currency", "currency", "text", finding.Clip(f.of("currency").text))
		return b, nil
	}
	if f.has("prices") {
		b.Mode = quote.Mode(f.number("prices") - 1)
	}
	b.Step = f.decimal("cash", digits, quote.Most)
	b.Off = f.discount(digits)
	rows := f.of("lines").rows
	b.Lines, units = make([]quote.Line, len(rows)), make([]string, len(rows))
	labour := f.lines(b, units, digits)
	if f.refused() {
		return b, nil
	}
	for n := range rows {
		if price, share := rows[n].shareOf(labour); share {
			b.Lines[n].Price = price
		}
	}
	b.Compute()
	for n := range rows {
		rows[n].within(b.Lines[n].Off, b.Lines[n].Cut)
	}
	f.within(b.Off, b.Cut)
	return b, units
}

// lines reads the lines of a bill, and gives what its labour comes to.
func (f *Form) lines(b *quote.Bill, units []string, digits int) (labour int) {
	usual, rateless := f.share("tax"), false
	for n := range b.Lines {
		r, l := &f.of("lines").rows[n], &b.Lines[n]
		units[n] = r.line(l, digits)
		l.Rate = usual
		switch {
		case b.Mode == quote.NoTax:
			l.Rate = 0
		case r.has("tax"):
			l.Rate = r.share("tax")
		case !f.has("tax"):
			rateless = true
		}
		if r.of("kind").text == "labour" && !f.refused() {
			l.Compute()
			labour += l.Amount
		}
	}
	if rateless {
		f.reject("no-tax-rate", "tax")
	}
	return labour
}

// line reads count, price and discount of a line, and gives the unit of its count.
func (f *Form) line(l *quote.Line, digits int) (unit string) {
	l.Count, unit = f.count()
	if _, share := percent(f.of("price").text); !share || f.of("kind").text != "materials" {
		l.Price = f.decimal("price", digits, quote.Most)
	}
	if !f.has("price") {
		f.say(finding.Doubt, "no-price", "price")
	}
	l.Off = f.discount(digits)
	return unit
}

// shareOf gives the price of small materials that are charged as a share of the
// labour; share is false for all else.
func (f *Form) shareOf(labour int) (price int, share bool) {
	if _, share = percent(f.of("price").text); !share {
		return 0, false
	}
	return quote.Proportion(labour, f.share("price"), quote.Whole), true
}

// within refuses a discount of which less could be given.
func (f *Form) within(d quote.Discount, given int) {
	if d.Amount > given {
		f.reject("discount-too-large", "discount", "text", finding.Clip(f.of("discount").text))
	}
}

// count reads how much of it, in thousandths, and its unit: oil in the unit typed
// (litres for mL, since prices are by the litre), labour in hours, all else in
// pieces. Nothing typed is one. Labour that is rounded up says so.
func (f *Form) count() (thousandths int, unit string) {
	g, d := given{text: f.of("count").text}, field{name: "count", high: mostCount}
	if g.text == "" {
		return quote.One, ""
	}
	switch f.of("kind").text {
	default:
		return f.decimal("count", 3, mostCount*quote.One), ""
	case "oil":
		d.kind = quantity.Volume
	case "labour":
		d.kind, d.high = quantity.Duration, mostCount*60
		if n, bare := quantity.ParseNumber(g.text); bare {
			if n > mostBareHours {
				f.reject("number-two-ways", "count", "text", finding.Clip(g.text), "small", g.text+" min", "large", g.text+" h")
				return 0, ""
			}
			g.text += " h"
		}
	}
	f.amount(&d, &g)
	if f.refused() {
		return 0, ""
	}
	if d.kind == quantity.Duration {
		n := quote.Tenths(g.number)
		if billed := float64(n) / quote.One * 60; billed-g.number > 1e-3 { // minutes
			f.say(finding.Note, "labour-rounded", "count", "text", finding.Clip(f.of("count").text), "value", quantity.Number(billed/60, 6)+" h")
		}
		return n, "h"
	}
	if g.unit.ID == "mL" {
		g.unit, _ = quantity.Find("L")
	}
	return int(math.Round(g.unit.FromBase(g.number) * quote.One)), g.unit.ID
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
		f.reject(fault, name, "text", text, "value", text, "places", strconv.Itoa(places),
			"small", text+"0", "large", strings.ReplaceAll(strings.ReplaceAll(text, ".", ""), ",", ""))
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
