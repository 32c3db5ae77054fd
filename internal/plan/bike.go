package plan

import (
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Bike is a line in the list of bikes: what a plain oil change of it needs.
type Bike struct {
	ID       string // of its card
	Name     string // make and model
	Years    string
	Layout   string // word id
	Invented bool
	Oils     []Oil
	Gaps     int
}

// Members names the members of a line.
func (b *Bike) Members(m *wire.Members) {
	m.String("id", &b.ID, wire.Required)
	m.String("name", &b.Name, wire.Required)
	m.String("years", &b.Years)
	m.String("layout", &b.Layout)
	m.Bool("invented", &b.Invented)
	wire.List(m, "oils", &b.Oils)
	m.Int("gaps", &b.Gaps)
}

// BikeOf makes the line of a card, for a person of that system of units; nil and
// the findings of the bench where there is no such system.
func BikeOf(checked *card.Checked, system quantity.System) (*Bike, []finding.Finding) {
	p, list := Make(checked, Bench{System: system})
	if p == nil {
		return nil, list
	}
	c := checked.Card()
	b := &Bike{ID: c.ID, Name: p.Name, Years: p.Years, Layout: "layout." + string(c.Layout), Invented: c.Invented, Gaps: len(p.Gaps)}
	for _, o := range p.Oils {
		if o.Today {
			b.Oils = append(b.Oils, Oil{Circuit: o.Circuit, Role: o.Role, Today: true, Due: o.Due, Grades: o.Grades, Need: o.Need})
		}
	}
	return b, nil
}

func years(c *card.Card) string {
	switch {
	case c.YearFrom == 0:
		return ""
	case c.YearTo == 0 || c.YearTo == c.YearFrom:
		return strconv.Itoa(c.YearFrom)
	}
	return strconv.Itoa(c.YearFrom) + "–" + strconv.Itoa(c.YearTo)
}
