// Package drain knows how oil runs out: how warm it should be, how long it takes,
// how much stays in, and when hot metal burns.
//
// Engines and films are in m, m², m³, m²/s and s; temperatures are in °C.
package drain

// The temperature of oil to be drained, in °C: thin enough to run and to carry
// the dirt. Common practice, no source. It already burns skin.
const (
	WarmLow  = 65
	WarmHigh = 82
)

// Minutes that warm oil is left to run: common practice, no source.
const (
	RunOutLow  = 5
	RunOutHigh = 10
)
