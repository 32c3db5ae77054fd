package plan

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/oil"
)

// OilNeed is what the card asks of the oil of a circuit, for the air that the bench
// expects.
func (p *Plan) OilNeed(c *card.Circuit) oil.Need {
	need := oil.Need{Chart: p.day.card.Chart(c.ID), WetClutch: c.WetClutch, Coldest: p.day.coldest, Hottest: p.day.hottest}
	for _, text := range c.Oil.Grades {
		if g, ok := oil.ReadGrade(text); ok {
			need.Grades = append(need.Grades, g)
		}
	}
	for n := range need.Chart {
		need.Grades = appendGrade(need.Grades, need.Chart[n].Grade)
	}
	need.Marks = oil.ReadLabel(strings.Join(c.Oil.Marks, ", ")).Marks
	need.Service = oil.ReadLabel(c.Oil.Service).Service
	return need
}

func appendGrade(list []oil.Grade, g oil.Grade) []oil.Grade {
	for _, have := range list {
		if have == g {
			return list
		}
	}
	return append(list, g)
}
