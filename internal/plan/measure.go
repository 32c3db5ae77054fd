package plan

import "tidysump/internal/card"

// Measure says how a fastener is known to be tight.
type Measure string

// The measures. The first two are named as the members of a sheet that hold them.
const (
	ByTorque Measure = "torque"
	ByTurn   Measure = "turn"
	ByHand   Measure = "hand" // a filter can of which neither is known
)

// measureOf picks one of them: a torque counts before a turn, and the hand where neither is
// known of a filter can, whose box says how far.
func measureOf(b *card.Bolt) Measure {
	switch {
	case b.Torque.Known():
		return ByTorque
	case b.Turn.Known() && b.Purpose != card.Panel:
		return ByTurn
	case b.Purpose == card.FilterCanned:
		return ByHand
	}
	return ByTorque
}
