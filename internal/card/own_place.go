package card

import "tidysump/internal/wire"

// OwnPlace is a figure that a machine may have of its own by its card.
type OwnPlace struct {
	What string // as Own has it
	Word string // word id of the figure
	Of   string // what it is of: a word id, or a place in the card's own words
}

// Members names the members.
func (p *OwnPlace) Members(m *wire.Members) {
	m.String("what", &p.What, wire.Required)
	m.String("word", &p.Word, wire.Required)
	m.String("of", &p.Of, wire.Required)
}

// OwnPlaces lists the figures that a machine may have of its own, in the order of the
// card. What must be left alone has none.
func OwnPlaces(c *Card) []OwnPlace {
	var list []OwnPlace
	add := func(id, of, word string, figures ...OwnFigure) {
		if of == "" {
			of = word
		}
		for _, f := range figures {
			list = append(list, OwnPlace{string(f) + "." + id, "own." + string(f), of})
		}
	}
	for i := range c.Circuits {
		o := &c.Circuits[i]
		figures := []OwnFigure{OwnVolume}
		for j := range c.Filters {
			if c.Filters[j].Circuit == o.ID {
				figures = append(figures, OwnVolumeFilter)
				break
			}
		}
		add(o.ID, "", "@role."+string(o.Role), append(figures, OwnGrade)...)
	}
	for i := range c.Bolts {
		b := &c.Bolts[i]
		if b.Purpose == LeaveAlone {
			continue
		}
		add(b.ID, b.Place, "@purpose."+string(b.Purpose), OwnThread, OwnTorque, OwnSize)
		if b.Seal != nil {
			add(b.ID, b.Place, "@purpose."+string(b.Purpose), OwnInner, OwnOuter, OwnThickness)
		}
	}
	for i := range c.Filters {
		add(c.Filters[i].ID, c.Filters[i].Place, "@plan.filter", OwnNumber)
	}
	return list
}
