package plan

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/oil"
	"tidysump/internal/shown"
)

// need is the oil that the card asks for, as it stands on a bottle: its grades, the
// usual one first, or those that its chart gives for the air expected; its JASO marks and
// its API category.
func (d *day) need(c *card.Circuit) shown.Figure {
	o := &c.Oil
	s := shown.Unknown("grade", "grade")
	s.Values = map[string]string{}
	given := d.given(c)
	var facts []string
	switch {
	case len(given) > 0:
		facts = []string{shown.Choice("either", given, s.Values)}
	case len(o.Grades) == 0 || o.Standing == card.Unknown:
		return s
	default:
		facts = []string{shown.Choice("grade", designations(o.Grades), s.Values)}
	}
	if len(o.Marks) > 0 {
		facts = append(facts, shown.Choice("mark", o.Marks, s.Values))
		if len(o.Marks) == 1 {
			facts[1] = "JASO " + facts[1]
		}
	}
	if o.Service != "" {
		facts = append(facts, "API "+o.Service)
	}
	text := strings.Join(facts, " · ")
	if len(s.Values) > 0 && len(facts) > 1 {
		text = "@facts." + strconv.Itoa(len(facts))
		s.Values["one"], s.Values["two"], s.Values["three"] = facts[0], facts[1], facts[len(facts)-1]
	}
	s.Texts, s.Standing, s.Lookup = []string{text}, o.Standing, ""
	s.Source, s.Page, s.Method = d.print.Title(o.Source), o.Page, o.Method
	s.Quote = o.Quote
	if len(given) > 0 && (len(o.Grades) == 0 || o.Standing == card.Unknown) {
		d.from(&s, c)
	}
	return s
}

// designations are grades as the standards call them.
func designations(grades []string) []string {
	var list []string
	for _, text := range grades {
		g, _ := oil.ReadGrade(text) // the card was checked
		list = append(list, g.Designation())
	}
	return list
}
