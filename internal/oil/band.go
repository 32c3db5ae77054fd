package oil

// Spread is what may be said of an oil's viscosity over temperature: one line,
// or, when only the grade is known, what lies between a thin and a thick oil.
type Spread struct {
	lines [4]Line // thin and thick up to 100 °C, thin and thick above
	Open  bool    // nothing bounds it above: what is given is the least
}

// AssumedIndex is the range of viscosity index that is assumed of an oil of
// which only the grade is known: an estimate around measured oils (a 20W-40 of
// 112, a 10W-60 of 182; a single grade of 104), the ends from memory.
func AssumedIndex(g Grade) (low, high float64) {
	if g.winter == 0 || g.summer == 0 {
		return 90, 110
	}
	return 110, 185
}

// SpreadOf gives the spread of a grade for a range of viscosity index. At 100
// °C it is what J300 leaves open, elsewhere what the index leaves open besides.
// It reports false for a gear oil and for an index that no oil has.
func SpreadOf(g Grade, indexLow, indexHigh float64) (*Spread, bool) {
	_, limits, ok := g.Limits()
	low, high := limits.Least, limits.Below
	s := &Spread{Open: high == 0}
	if s.Open {
		high = low
	}
	// A higher index is thinner when colder than 100 °C, thicker when hotter.
	for n := range s.lines {
		at100, index := low, indexHigh
		if n&1 == 1 {
			at100 = high
		}
		if n == 1 || n == 2 {
			index = indexLow
		}
		line, fits := FromIndex(at100, index)
		s.lines[n], ok = line, ok && fits
	}
	return s, ok
}

// Spread is the line alone: its thinnest is its thickest.
func (l Line) Spread() *Spread { return &Spread{lines: [4]Line{l, l, l, l}} }

// At gives the thinnest and the thickest that the oil may be, in mm²/s, at a
// temperature in °C; the same for a single line or where nothing bounds it. NaN
// outside the relation of ASTM D341.
func (s *Spread) At(celsius float64) (low, high float64) {
	n := 0
	if celsius > 100 {
		n = 2
	}
	low, high = s.lines[n].At(celsius), s.lines[n+1].At(celsius)
	if s.Open {
		high = low
	}
	return low, high
}

// Temperature is the inverse of At: the °C at which the thinnest and at which the
// thickest oil has that viscosity.
func (s *Spread) Temperature(viscosity float64) (low, high float64) {
	low, high = s.lines[0].Temperature(viscosity), s.lines[1].Temperature(viscosity)
	if low > 100 {
		low = s.lines[2].Temperature(viscosity)
	}
	if high > 100 {
		high = s.lines[3].Temperature(viscosity)
	}
	if s.Open {
		high = low
	}
	return low, high
}
