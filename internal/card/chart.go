package card

import (
	"math"
	"strconv"

	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/wire"
)

// ChartRow is a row of the manual's own chart: a grade, and the air for which it is. An
// end that is absent is open.
type ChartRow struct {
	Circuit  string // id of the oil that it is of
	Grade    string
	From, To *Degrees
}

// Members names the members of a row.
func (r *ChartRow) Members(m *wire.Members) {
	m.String("circuit", &r.Circuit, wire.Required)
	m.String("grade", &r.Grade)
	wire.Optional(m, "from", &r.From)
	wire.Optional(m, "to", &r.To)
}

// Degrees is a figure that may be 0 and is a temperature: it is always written.
type Degrees Figure

// Members names the members of the figure.
func (d *Degrees) Members(m *wire.Members) { d.End().members(m, wire.Required) }

// End is the figure of an end; nil where it is open.
func (d *Degrees) End() *Figure { return (*Figure)(d) }

// celsius gives a temperature in °C; open where there is none.
func (d *Degrees) celsius(open float64) float64 {
	if a, ok := d.End().Amount(); ok {
		return a.Base
	}
	return open
}

// Chart gives the rows of the manual's chart for an oil, as they are compared.
func (c *Card) Chart(circuit string) []oil.ChartRow {
	var list []oil.ChartRow
	for i := range c.Charts {
		r := &c.Charts[i]
		if g, ok := oil.ReadGrade(r.Grade); ok && r.Circuit == circuit {
			list = append(list, oil.ChartRow{Grade: g, From: r.From.celsius(math.Inf(-1)), To: r.To.celsius(math.Inf(1))})
		}
	}
	return list
}

// chart checks the rows of the manual's chart, each by itself and against each other.
func (c *checker) chart(k *Card) {
	seen := map[string]bool{}
	for i := range k.Charts {
		r := &k.Charts[i]
		at := "/chart/" + strconv.Itoa(i)
		c.refers(at+"/circuit", r.Circuit, c.circuits)
		g, ok := oil.ReadGrade(r.Grade)
		if _, exact := oil.ParseGrade(r.Grade); !exact {
			c.add(finding.Refuse, "unknown-grade", at+"/grade", "text", finding.Clip(r.Grade))
			continue
		}
		if r.From == nil && r.To == nil {
			c.add(finding.Refuse, "chart-no-air", at, "grade", g.Designation())
			continue
		}
		sound := c.degrees(at+"/from", r.From)
		sound = c.degrees(at+"/to", r.To) && sound
		switch key := r.Circuit + " " + g.String(); {
		case !ok || !sound:
		case r.From.celsius(math.Inf(-1)) >= r.To.celsius(math.Inf(1)):
			c.add(finding.Refuse, "chart-reversed", at+"/to", "grade", g.Designation())
		case seen[key]:
			c.add(finding.Doubt, "chart-twice", at+"/grade", "grade", g.Designation())
		default:
			seen[key] = true
		}
	}
}

// degrees checks an end of a row, and reports whether it can be compared.
func (c *checker) degrees(at string, d *Degrees) bool {
	if d == nil {
		return true
	}
	before := len(c.list)
	c.figure(at, d.End(), airLimit)
	if d.To != 0 {
		c.add(finding.Refuse, "chart-one-end", at+"/to")
	}
	return !finding.Refused(c.list[before:])
}
