package oil

import (
	"math"
	"slices"

	"tidysump/internal/quantity"
)

// advised are the lowest air temperatures in °C at which an oil of a W grade is
// advised, in the order of Winters. Published as general advice for cars: 10W
// (0 °F) and 20W (20 °F). Common practice, no source: 15W and 25W. For 0W and
// 5W nothing warmer than the cranking test is said. J300 itself sets no air
// temperature.
var advised = [...]float64{-35, -30, -160.0 / 9, -15, -60.0 / 9, -5}

// The same for a single 30 (40 °F) and 40 (60 °F). What is said of the one holds the
// better for a thinner grade, and what keeps the other out keeps a thicker one out.
const (
	summer30  = 5
	advised30 = 40.0 / 9
	advised40 = 140.0 / 9
)

// testedAt gives the °C of the tests of J300 in which an oil of the grade may still be
// cranked, and still be pumped. A grade without W was tested in no cold at all: it is
// trusted no further than the mildest W grade.
func testedAt(g Grade) (cranked, pumped float64) {
	w := &Winters[len(Winters)-1]
	if g.winter > 0 {
		w = &Winters[g.winter-1]
	}
	return w.CrankingAt, w.PumpingAt
}

// advice gives the °C from which an oil of the grade is advised, and below which it is
// not; between them, or where either is NaN, nothing is said.
func advice(g Grade) (from, below float64) {
	switch {
	case g.winter > 0:
		return advised[g.winter-1], advised[g.winter-1]
	case g.summer == summer30:
		return advised30, advised30
	case g.summer == summer40:
		return advised40, advised40
	case g.summer < summer30:
		return advised30, math.NaN()
	}
	return math.NaN(), advised40
}

// season judges the oil against the air expected. The manual's own chart rules, where it
// has the grade. Else, below the cranking test of J300 an oil may be thicker than that
// test allows, and below the pumping test it may not reach the bearings; the advice is
// warmer and rules above both.
func (j *judge) season(g Grade, asked bool) (Weight, string) {
	air, hottest := j.need.Coldest, j.need.Hottest
	cranked, pumped := testedAt(g)
	from, below := advice(g)
	cold := "season-too-cold"
	if g.winter == 0 {
		cold = "season-untested"
	}
	switch {
	case math.IsNaN(air) && (math.IsNaN(hottest) || !charts(j.need.Chart, g)):
		return Noted, "season-not-given"
	case charts(j.need.Chart, g):
		return j.charted(g)
	case !quantity.AtLeast(air, pumped), !quantity.AtLeast(air, cranked) && !asked:
		return Unfit, cold
	case !quantity.AtLeast(air, cranked):
		return Limited, cold
	case quantity.AtLeast(air, from):
		return Suits, "season-fits"
	case !math.IsNaN(below) && !quantity.AtLeast(air, below):
		return Limited, "season-cold"
	}
	return Open, "season-unknown"
}

// gearSeason judges a gear oil: below the temperature at which J306 measures its W grade it
// may be too thick to reach the gears. One without W was measured in no cold at all, and is
// trusted no further than the mildest W grade. Warmer, nothing is said of it.
func (j *judge) gearSeason(g Grade, asked bool) (Weight, string) {
	air := j.need.Coldest
	measuredAt, cold := gearWinters[len(gearWinters)-1].PumpingAt, "gear-untested"
	if w, _, _ := g.Limits(); w.Pumping > 0 {
		measuredAt, cold = w.PumpingAt, "gear-too-cold"
	}
	switch {
	case charts(j.need.Chart, g):
		return j.season(g, asked)
	case math.IsNaN(air) || quantity.AtLeast(air, measuredAt):
		return Suits, ""
	case asked:
		return Limited, cold
	}
	return Unfit, cold
}

// charted judges a grade of the manual's chart.
func (j *judge) charted(g Grade) (Weight, string) {
	switch {
	case len(j.given) == 0:
		return Unfit, "chart-none"
	case slices.Contains(j.given, g):
		return Suits, "chart-fits"
	}
	return Unfit, "chart-other"
}
