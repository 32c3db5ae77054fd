package place

import (
	"strings"

	"tidysump/internal/card"
)

// Hints are words of a page, besides its readings, that tell how a bike keeps its oil.
type Hints struct {
	Tank    bool // the engine's oil is in a tank
	Frame   bool // or in the frame
	Scooter bool // or a belt drives the wheel
	Shaft   bool // or a shaft
	Flat    bool // the cylinders are opposed
}

// Layout is how a bike keeps its oil, as far as a page tells.
type Layout struct {
	Word card.Layout
	Sure bool // else it is the likeliest one, and the person says
}

// LayoutOf guesses the layout from what a page tells. It is sure only where the page names
// what no other layout has. Common practice, no source.
func LayoutOf(list []Reading, hints Hints) Layout {
	said := func(names ...string) bool {
		for i := range list {
			for _, name := range names {
				if strings.HasPrefix(string(list[i].What), name) {
					return true
				}
			}
		}
		return false
	}
	mark := func(word string) bool {
		for i := range list {
			if list[i].What == "oil.engine.marks" && strings.HasPrefix(list[i].Text, word) {
				return true
			}
		}
		return false
	}
	primary := said("oil.primary.", "bolt.primary-", "level.primary.", "interval.primary")
	gearbox := said("oil.gearbox.", "bolt.gearbox-", "level.gearbox.", "interval.gearbox")
	final := said("oil.final.", "bolt.final-", "level.final.", "interval.final")
	strainer := said("bolt.strainer.", "strainer.", "interval.strainer")
	filter := said("bolt.filter", "filter.", "interval.filter", "oil.engine.with-filter")
	tank := hints.Tank || hints.Frame || said("bolt.tank-drain.")
	switch {
	case primary:
		return Layout{card.SeparateOils, gearbox}
	case gearbox && final && hints.Flat:
		return Layout{card.FlatTwin, true}
	case gearbox && final:
		return Layout{card.SeparateGearbox, false}
	case final && hints.Scooter || final && mark("MB"):
		return Layout{card.Scooter, hints.Scooter}
	case final:
		return Layout{card.WetSumpShaft, hints.Shaft || mark("MA")}
	case hints.Scooter:
		return Layout{card.Scooter, true}
	case gearbox:
		return Layout{card.TwoCompartments, false}
	case hints.Frame:
		return Layout{card.DrySumpFrame, true}
	case tank:
		return Layout{card.DrySump, hints.Tank}
	case strainer && !filter:
		return Layout{card.SmallStrainer, false}
	}
	return Layout{card.WetSump, mark("MA")}
}
