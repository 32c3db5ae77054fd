package oil

import "tidysump/internal/quantity"

// Spread is what may be said of an oil's viscosity over temperature: what it is at
// one or two temperatures, a line between those, and beyond them what lies between a
// thin and a thick oil.
type Spread struct {
	From, To float64 // °C: from the coldest to the warmest at which the viscosity is given
	Open     bool    // nothing bounds it above: what is given is the least

	from, to       Band // what is given there
	between        Line
	colder, hotter [2]Line // the thin and the thick oil, below From and above To
}

// LeastApart is how far apart, in K, two temperatures are whose viscosities make a line
// (common practice, no source; data sheets have 40 and 100 °C). Readings at 40 and 60 °C
// that are 1 % wrong move what is told at 100 °C by 2 %; at 40 and 50 °C by 6 %, a fifth
// of a grade each way.
const LeastApart = 20

// misread is how wrong a viscosity on a data sheet may be. By ISO 3104 (ASTM D445) two
// laboratories differ by up to 0.65 % for base oils in 19 of 20 cases; three digits
// round away up to 0.5 % more.
const misread = 0.01

// Measured gives the spread of an oil of which two viscosities are known, at
// temperatures in °C: at these what was given, between them the line of ASTM D341,
// beyond them what is left open by readings that are each 1 % wrong. It reports false
// where LineThrough does, or where so little more would turn the line.
func Measured(at1, viscosity1, at2, viscosity2 float64) (*Spread, bool) {
	if at1 > at2 {
		at1, viscosity1, at2, viscosity2 = at2, viscosity2, at1, viscosity1
	}
	line, ok := LineThrough(at1, viscosity1, at2, viscosity2)
	s := &Spread{From: at1, To: at2, from: Band{viscosity1, viscosity1}, to: Band{viscosity2, viscosity2}, between: line}
	for n, share := range [...]float64{1 + 2*misread, 1 - 2*misread} {
		var cold, hot bool
		s.colder[n], cold = LineThrough(at1, viscosity1, at2, viscosity2*share)
		s.hotter[n], hot = LineThrough(at1, viscosity1*share, at2, viscosity2)
		ok = ok && cold && hot
	}
	return s, ok
}

// AssumedIndex is the range of viscosity index that is assumed of an oil of
// which only the grade is known: an estimate around measured oils (a 20W-40 of
// 112, a 10W-60 of 182; a single grade of 104), the ends from memory, as those of a
// gear oil are.
func AssumedIndex(g Grade) (low, high float64) {
	switch {
	case g.winter == 0 || g.summer == 0:
		return 90, 110
	case g.Gear():
		return 90, 185
	}
	return 110, 185
}

// The viscosity index of what is sold for engines and gears. The least is that of the
// base oils of API's groups I and II; of the most, common practice, no source.
const (
	LeastIndex = 80
	MostIndex  = 250
)

// SpreadOf gives the spread of a grade for a range of viscosity index. At 100
// °C it is what J300 or J306 leaves open, elsewhere what the index leaves open besides.
// It reports false for a grade without limits and for an index that no oil has.
func SpreadOf(g Grade, indexLow, indexHigh float64) (*Spread, bool) {
	_, limits, ok := g.Limits()
	low, high := limits.Least, limits.Below
	s := &Spread{From: 100, To: 100, Open: high == 0}
	if s.Open {
		high = low
	}
	s.from = Band{low, high}
	s.to = s.from
	// A higher index is thinner when colder than 100 °C, thicker when hotter.
	var fits [4]bool
	s.colder[0], fits[0] = FromIndex(low, indexHigh)
	s.colder[1], fits[1] = FromIndex(high, indexLow)
	s.hotter[0], fits[2] = FromIndex(low, indexLow)
	s.hotter[1], fits[3] = FromIndex(high, indexHigh)
	return s, ok && fits == [4]bool{true, true, true, true}
}

// At gives the thinnest and the thickest that the oil may be, in mm²/s, at a
// temperature in °C; the same between two readings or where nothing bounds it. NaN
// outside the relation of ASTM D341.
func (s *Spread) At(celsius float64) (low, high float64) {
	switch {
	case quantity.Near(celsius, s.From):
		low, high = s.from.Low, s.from.High
	case quantity.Near(celsius, s.To):
		low, high = s.to.Low, s.to.High
	case celsius < s.From:
		low, high = s.colder[0].At(celsius), s.colder[1].At(celsius)
	case celsius > s.To:
		low, high = s.hotter[0].At(celsius), s.hotter[1].At(celsius)
	default:
		low = s.between.At(celsius)
		high = low
	}
	if s.Open {
		high = low
	}
	return low, high
}

// Drawn is At for a picture: of two readings it is the line through both all the way.
func (s *Spread) Drawn(celsius float64) (low, high float64) {
	if s.From < s.To {
		low = s.between.At(celsius)
		return low, low
	}
	return s.At(celsius)
}

// Temperature is the inverse of At: the °C at which the thinnest and at which the
// thickest oil has that viscosity.
func (s *Spread) Temperature(viscosity float64) (low, high float64) {
	low = s.where(0, viscosity, s.from.Low, s.to.Low)
	if s.Open {
		return low, low
	}
	return low, s.where(1, viscosity, s.from.High, s.to.High)
}

// where finds a viscosity on the side of the thin oil (0) or of the thick one (1).
func (s *Spread) where(side int, viscosity, from, to float64) float64 {
	line := s.between
	switch {
	case viscosity >= from:
		line = s.colder[side]
	case viscosity <= to:
		line = s.hotter[side]
	}
	return line.Temperature(viscosity)
}

// Beyond gives by how many K a temperature in °C lies outside those at which the
// viscosity is given.
func (s *Spread) Beyond(celsius float64) float64 { return max(s.From-celsius, celsius-s.To, 0) }

// Indexes gives the least and the most viscosity index, ASTM D2270, that the readings
// leave open: the same where they lie on both sides of, or at, 40 and 100 °C. It reports
// false where the index is not defined.
func (s *Spread) Indexes() (low, high float64, ok bool) {
	var flat, steep Line
	switch {
	case s.To < 100 && !quantity.Near(s.To, 100):
		flat, steep = s.hotter[1], s.hotter[0]
	case s.From > 40 && !quantity.Near(s.From, 40):
		flat, steep = s.colder[0], s.colder[1]
	default:
		at40, _ := s.At(40)
		at100, _ := s.At(100)
		low, ok = Index(at40, at100)
		return low, low, ok
	}
	low, ok = Index(steep.At(40), steep.At(100))
	high, sure := Index(flat.At(40), flat.At(100))
	return low, high, ok && sure
}
