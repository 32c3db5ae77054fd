// Package drain knows how oil runs out: how warm it should be, how long it takes,
// how much stays in, and when hot metal burns.
//
// Engines and films are in m, m², m³, m²/s and s; temperatures are in °C.
package drain

import "tidysump/internal/quantity"

// The temperature of oil to be drained, in °C. Worked out: with FilmDepth and a
// typical 10W-40 its low end brings about 70 % of what 82 °C brings; its high end
// is the last at which metal may be touched for a second (Bands) and water
// doesn't scald within two (Scald). It scalds all the same.
const (
	WarmLow  = 50
	WarmHigh = 60
)

// The temperature at which many drain, in °C, which is 150 to 180 °F: common
// practice, no source. Metal of it may burn within a second.
const (
	HabitLow  = 65
	HabitHigh = 82
)

// What the habit is compared at, in °C: the middle of the one range, and near the
// top of the other, which gives the habit nearly all that it can gain.
const (
	ComparedWarm  = 55
	ComparedHabit = 80
)

// Warmth is what the temperature of the oil means before it is drained.
type Warmth string

// The verdicts on a temperature.
const (
	Cold   Warmth = "cold"    // below WarmLow: warm it, or it takes longer
	Good   Warmth = "good"    // from WarmLow to WarmHigh
	TooHot Warmth = "too-hot" // above WarmHigh, for bare skin: wait, or gloves and sleeves
)

// Warmths lists the verdicts, from cold to hot.
var Warmths = []Warmth{Cold, Good, TooHot}

// Judge judges the temperature of oil in °C. Every room that speaks of one asks
// here.
func Judge(celsius float64) Warmth {
	switch {
	case !quantity.AtLeast(celsius, WarmLow):
		return Cold
	case quantity.AtMost(celsius, WarmHigh):
		return Good
	}
	return TooHot
}

// Minutes that warm oil is left to run: common practice, no source.
const (
	RunOutLow  = 5
	RunOutHigh = 10
)
