package fill

// Gauge is where on a gauge with marks a level can stand, as shares of the band
// between the marks (0 the lower, 1 the upper): at its lowest and its highest
// point.
type Gauge struct{ Low, High float64 }

// Window is a round glass of that width and distance of its marks, in one unit.
func Window(glass, marks float64) Gauge {
	return Gauge{ShareAt(0, glass, marks), ShareAt(glass, glass, marks)}
}

// Stick shows half a band beyond either mark.
var Stick = Gauge{-0.5, 1.5}

// Height is where a share lies, as a share of the way from the lowest to the
// highest point, 0 to 1.
func (g Gauge) Height(share float64) float64 { return clamp((share - g.Low) / (g.High - g.Low)) }

// Level is where a level stands, in a word.
type Level string

// The levels, from the top. Near a mark is the quarter of the band next to it:
// common practice, no source.
const (
	Above  Level = "above"
	High   Level = "high"
	Middle Level = "middle"
	Low    Level = "low"
	Below  Level = "below"
)

// LevelAt gives the word for a share of the band.
func LevelAt(share float64) Level {
	switch {
	case share > 1:
		return Above
	case share > 0.75:
		return High
	case share >= 0.25:
		return Middle
	case share >= 0:
		return Low
	}
	return Below
}
