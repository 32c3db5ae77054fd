package calc

import (
	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/ring"
)

var ringFields = [...]field{
	{name: "inside", kind: quantity.Length, low: 0.5, high: 200, front: true, by: "section"},
	{name: "section", kind: quantity.Length, low: 0.5, high: 12, needed: true},
	{name: "outside", kind: quantity.Length, low: 1.5, high: 224},
	{name: "used", kind: Yes},
	{name: "accuracy", kind: quantity.Length, low: 0.01, high: 2, absent: 0.1},
	{name: "groove", kind: quantity.Length, low: 0.5, high: 224},
	{name: "depth", kind: quantity.Length, low: 0.1, high: 12},
}

// mostRings are told, the likeliest; more fit only what was measured badly, or used.
const mostRings = 8

// matchRing gives the standard O-rings that a measured one may be.
func matchRing(f *Form, a *Answer) {
	accuracy, outside := f.number("accuracy"), f.number("outside")
	m := ring.Measured{Inside: f.number("inside"), InsideWithin: accuracy, Section: f.number("section"), SectionWithin: accuracy, Used: f.number("used") > 0}
	switch {
	case m.Inside == 0 && outside == 0:
		f.need("inside")
	case m.Inside == 0:
		m.Inside, m.InsideWithin = outside-2*m.Section, 3*accuracy // one measure and twice another
	case outside > 0 && !quantity.AtMost(max(outside-m.Inside-2*m.Section, m.Inside+2*m.Section-outside), 4*accuracy):
		f.say(finding.Doubt, "ring-measures-differ", "outside")
	}
	if m.Inside < 0.5 && !f.refused() {
		f.reject("ring-closed", "outside")
	}
	if f.refused() {
		return
	}
	g := ring.Groove{Diameter: f.number("groove"), Depth: f.number("depth"), Accuracy: accuracy}
	fitting, nearest := m.Fitting(&g)
	lying := 0
	for lying < len(fitting) && fitting[lying].Verdict != ring.Wrong { // those stand last
		lying++
	}
	if lying > 0 {
		fitting = fitting[:lying]
	}
	a.rings(fitting)
	verdict := "one"
	switch {
	case len(fitting) == 0:
		verdict = "none"
		f.say(finding.Doubt, "ring-none", "inside", "nearest", nearest.Name)
	case lying == 0:
		verdict = "wrong"
		f.say(finding.Doubt, "ring-wrong", "groove")
	case lying > 1:
		verdict = "several"
		f.say(finding.Note, "ring-several", "section", "first", fitting[0].Name, "second", fitting[1].Name)
	}
	a.word("verdict", "ring-found."+verdict)
	f.say(finding.Note, "ring-used", "section")
	f.say(finding.Note, "ring-material", "section")
	f.say(finding.Note, "ring-lists", "section")
}

// rings puts the sizes that fit, each with how it would lie.
func (a *Answer) rings(fitting []ring.Match) {
	rows := make([]Answer, min(len(fitting), mostRings))
	for n := range rows {
		m, row := &fitting[n], &rows[n]
		row.system = a.system
		row.word("id", m.Name)
		row.word("series", "ring-series."+ring.SeriesNames[m.Series-1])
		row.word("verdict", "ring."+ring.Verdicts[m.Verdict])
		row.list("texts", sizes(m.Inside, m.Section, a.system))
		if m.HasStretch {
			row.share("stretch", "ring-stretch", m.Stretch)
		}
		if m.HasSqueeze {
			row.share("squeeze", "ring-squeeze", m.Squeeze)
		}
	}
	a.rows("rings", rows)
}

// share puts a range of shares, in percent to a tenth.
func (a *Answer) share(name string, by method, r ring.Range) {
	low, high := round(100*r.Low, 10), round(100*r.High, 10)
	a.ranged(a.estimate("figures", name, by, plain(low, high, " %", 2)), &bolt.Range{Low: r.Low, High: r.High})
}

// sizes prints inside and section, in the person's units first: hundredths of a
// millimetre and thousandths of an inch, as they are listed.
func sizes(inside, section float64, system quantity.System) []string {
	text := func(per, steps float64, unit string) string {
		return quantity.Number(round(inside/per, steps), 5) + " × " + quantity.Number(round(section/per, steps), 5) + unit
	}
	mm, in := text(1, 100, " mm"), text(25.4, 1000, " in")
	if system == quantity.US {
		return []string{in, mm}
	}
	return []string{mm, in}
}
