package job

import (
	"tidysump/internal/card"
	"tidysump/internal/oil"
)

// waste says to which old oil that of a circuit goes: by what it served, and apart if a
// look at it saw coolant, water or fuel in it.
func (r *replayer) waste(c *card.Circuit) oil.Waste {
	for i := range r.state.Looks {
		l := &r.state.Looks[i]
		if step := r.plan.Step(l.Step); l.sign.Spoils() && step != nil && step.Values["of"] == "@role."+string(c.Role) {
			return oil.SpoiledWaste
		}
	}
	if c.Role == card.EngineOil {
		return oil.EngineWaste
	}
	return oil.GearWaste
}
