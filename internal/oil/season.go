package oil

import "math"

// advised are the lowest air temperatures in °C at which an oil of a W grade is
// advised, in the order of Winters. Published as general advice for cars: 10W
// (0 °F) and 20W (20 °F). Common practice, no source: 15W and 25W. For 0W and
// 5W nothing warmer than the cranking test is said. J300 itself sets no air
// temperature.
var advised = [...]float64{-35, -30, -160.0 / 9, -15, -60.0 / 9, -5}

// The same for a single 30 (40 °F) and 40 (60 °F); for others nothing is said.
const (
	advised30 = 40.0 / 9
	advised40 = 140.0 / 9
)

// season judges the oil against the coldest air expected. Below the
// temperature of the cranking test of J300 an oil may be thicker than that
// test allows; the advice is warmer and rules above it.
func (j *judge) season(g Grade, asked bool) (Weight, string) {
	air := j.need.Coldest
	advice, cranking := math.NaN(), math.Inf(-1)
	switch {
	case g.winter > 0:
		advice, cranking = advised[g.winter-1], Winters[g.winter-1].CrankingAt
	case g.summer == summer40:
		advice = advised40
	case g.summer == summer40-1:
		advice = advised30
	}
	switch {
	case math.IsNaN(air):
		return Noted, "season-not-given"
	case air < cranking && asked:
		return Limited, "season-too-cold"
	case air < cranking:
		return Unfit, "season-too-cold"
	case air >= advice:
		return Suits, "season-fits"
	case air < advice:
		return Limited, "season-cold"
	}
	return Open, "season-unknown"
}
