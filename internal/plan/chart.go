package plan

import (
	"math"
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// air reads the air expected. What can't be read is told and is not known: it keeps no
// job from its plan.
func (p *planner) air() {
	p.coldest, p.hottest = math.NaN(), math.NaN()
	if strings.TrimSpace(p.bench.Outside) == "" {
		return
	}
	low, high, list := card.ReadAir(p.bench.Outside, p.bench.System)
	p.coldest, p.hottest = low, high
	for _, f := range finding.At("/bench/outside", list) {
		f.Grade = finding.Doubt
		p.plan.Findings = append(slices.Clip(p.plan.Findings), f)
	}
}

// given lists the grades, as the standards call them, that the card's chart gives for the
// air expected.
func (d *day) given(c *card.Circuit) (list []string) {
	for _, g := range oil.Charted(d.card.Chart(c.ID), d.coldest, d.hottest) {
		list = append(list, g.Designation())
	}
	return list
}

// charted says what the card's chart gives for the air expected, and all that it says; nil
// where the card has none for the oil.
func (d *day) charted(c *card.Circuit) (today, rows *shown.Figure) {
	var lines []string
	for _, r := range d.rows(c) {
		lines = append(lines, r.designation+": "+d.span(r.from, r.to))
	}
	if len(lines) == 0 {
		return nil, nil
	}
	today, rows = &shown.Figure{}, &shown.Figure{}
	*today, *rows = shown.Unknown("chart", "chart"), shown.Unknown("chart-rows", "grade")
	d.from(rows, c)
	rows.Texts, rows.Lookup = []string{strings.Join(lines, "; ")}, ""
	if math.IsNaN(d.coldest) {
		return today, rows
	}
	d.from(today, c)
	today.Texts, today.Lookup, today.Values = []string{"@chart.none"}, "", map[string]string{}
	if given := d.given(c); len(given) > 0 {
		today.Texts[0] = shown.Choice("either", given, today.Values)
	}
	return today, rows
}

// row is a row of the chart: the ends are nil where they are open.
type row struct {
	designation string
	from, to    *card.Figure
}

func (d *day) rows(c *card.Circuit) []row {
	var list []row
	for i := range d.card.Charts {
		r := &d.card.Charts[i]
		if g, ok := oil.ReadGrade(r.Grade); ok && r.Circuit == c.ID {
			list = append(list, row{g.Designation(), r.From.End(), r.To.End()})
		}
	}
	return list
}

// span prints the air of a row, in the person's unit.
func (d *day) span(from, to *card.Figure) string {
	low, lowKnown := from.Amount()
	high, highKnown := to.Amount()
	switch {
	case lowKnown && highKnown:
		return quantity.Between(low, high, d.print.System)[0]
	case lowKnown:
		return "≥ " + low.Show(d.print.System)[0]
	case highKnown:
		return "≤ " + high.Show(d.print.System)[0]
	}
	return ""
}

// from says where the chart of an oil stands: where its first end does.
func (d *day) from(s *shown.Figure, c *card.Circuit) {
	for _, r := range d.rows(c) {
		for _, f := range []*card.Figure{r.from, r.to} {
			if f.Known() {
				s.Standing, s.Source, s.Page, s.Method = f.Standing, d.print.Title(f.Source), f.Page, f.Method
				return
			}
		}
	}
}

// airOf puts the chart and the air expected, as a person would type them.
func (d *day) airOf(h *Help, c *card.Circuit) {
	var lines []string
	for _, r := range d.rows(c) {
		low, lowKnown := r.from.Amount()
		high, highKnown := r.to.Amount()
		line := r.designation + ": "
		switch {
		case lowKnown && highKnown:
			line += low.Print(low.Unit) + " to " + high.Print(high.Unit)
		case lowKnown:
			line += "from " + low.Print(low.Unit)
		default:
			line += "to " + high.Print(high.Unit)
		}
		lines = append(lines, line)
	}
	h.put("chart", strings.Join(lines, "; "))
	put := func(name string, celsius float64) {
		if !math.IsNaN(celsius) && !math.IsInf(celsius, 0) {
			h.put(name, quantity.Number(celsius, 4)+" °C")
		}
	}
	put("coldest", d.coldest)
	if d.hottest > d.coldest {
		put("hottest", d.hottest)
	}
}
