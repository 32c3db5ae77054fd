// Package drain knows how oil runs out: how warm, how long.
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
