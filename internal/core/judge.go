package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/place"
	"tidysump/internal/wire"
)

// judgeInput is what was read on all pages of a manual, and what the person decided about it.
type judgeInput struct {
	readings []place.Reading
	models   []string
}

func (i *judgeInput) Members(m *wire.Members) {
	wire.List(m, "readings", &i.readings, wire.Required)
	wire.Texts(m, "models", &i.models)
}

// judgePages says how the readings of all pages stand to each other.
func judgePages(i *judgeInput, _ []finding.Finding) (*place.Judged, []finding.Finding) {
	return place.Judge(i.readings, i.models), nil
}
