package fill

import (
	"math"

	"tidysump/internal/oil"
)

// caseExpansion is that of an aluminium case by volume, in 1/K: from memory.
const caseExpansion = 0.00007

// Rise gives by how much the oil's volume grows from one temperature in °C to
// another, in the unit of volume, as oil.Growth has it; negative when it shrinks.
func Rise(volume, from, to float64) float64 { return volume * oil.Growth(from, to) }

// RiseInCase is Rise less the growth of the case: what a level shows.
func RiseInCase(volume, from, to float64) float64 {
	return Rise(volume, from, to) - volume*caseExpansion*(to-from)
}

// Tilt gives by how much a level is read too high or too low when the bike
// leans by so many degrees and the gauge is off the middle of the oil by a
// distance: distance·tan(lean), in the unit of the distance. Exact for a flat
// surface that reaches both walls.
func Tilt(distance, lean float64) float64 { return distance * math.Tan(lean*math.Pi/180) }

// Upright gives the height between two marks that are so far apart along a
// stick that slants by so many degrees from upright, along·cos(slant).
func Upright(along, slant float64) float64 { return along * math.Cos(slant*math.Pi/180) }
