package calc

import (
	"math"

	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

var oilCurveFields = []field{
	{name: "grade", front: true, kind: Text, says: Grade},
	{name: "first", then: "second", front: true, kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "firstAt", then: "secondAt", beside: "first", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 40},
	{name: "second", front: true, kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "secondAt", beside: "second", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 100},
	{name: "index", kind: Number, high: 400},
	{name: "at", front: true, kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat},
	{name: "want", kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "pour", kind: quantity.Temperature, low: -70, high: 20},
}

// course is an oil whose viscosity is told over temperature, and where that stops.
type course struct {
	*oil.Spread
	cold oil.Cold
	by   method
}

// oilCurve says how thick an oil is over temperature: one curve through two
// viscosities, or the band that a bare grade leaves open.
func oilCurve(f *Form, a *Answer) {
	grade := f.grade("grade")
	pour := math.NaN()
	if f.has("pour") {
		pour = f.number("pour")
	}
	c := &course{cold: oil.ColdOf(grade, pour)}
	switch {
	case f.refused():
	case f.has("first") || f.has("second"):
		f.curveOfPoints(a, c, grade)
	case f.has("grade"):
		f.curveOfGrade(a, c, grade)
	default:
		f.reject("oil-points", "")
	}
}

// curveOfPoints takes the line of ASTM D341 through two points.
func (f *Form) curveOfPoints(a *Answer, c *course, grade oil.Grade) {
	f.need("first")
	f.need("second")
	if f.refused() {
		return
	}
	first, second := f.number("firstAt"), f.number("secondAt")
	if !quantity.AtLeast(math.Abs(first-second), oil.LeastApart) {
		f.reject("oil-too-close", "secondAt", "least", f.degrees(oil.LeastApart))
		return
	}
	s, ok := oil.Measured(first, f.number("first"), second, f.number("second"))
	at40, _ := s.At(40)
	low, high := s.At(100)
	if !ok || math.IsNaN(at40+low+high) {
		f.reject("oil-not-one", "second")
		return
	}
	f.checkGrade(grade, low, high)
	c.Spread, c.by = s, "walther"
	f.viscosityAt(a, c, 40, "")
	f.viscosityAt(a, c, 100, "")
	f.curve(a, c)
	least, most, ok := s.Indexes()
	if ok {
		least, most = math.RoundToEven(least), math.RoundToEven(most)
		a.figure("figures", "viscosity-index", "index", least, most, "")
	}
	if !ok || most < oil.LeastIndex || least > oil.MostIndex {
		f.doubtIndex("second")
	}
	if f.has("index") {
		f.unused("index", "@ask.oil-curve.index", "@ask.oil-curve.second")
	}
	a.list("grades", oil.GradesAt(low, high, grade.Gear()))
}

// doubtIndex says that no oil for engines or gears has such an index.
func (f *Form) doubtIndex(name string) {
	f.say(finding.Doubt, "index-of-no-oil", name, "low", quantity.Number(oil.LeastIndex, 3), "high", quantity.Number(oil.MostIndex, 3))
}

// curveOfGrade takes the band that a grade leaves open. At 100 °C it is the
// standard's; elsewhere it depends on the index, which is given or assumed.
func (f *Form) curveOfGrade(a *Answer, c *course, grade oil.Grade) {
	c.by = "given-index"
	least, most := f.number("index"), f.number("index")
	if !f.has("index") {
		c.by = "assumed-index"
		least, most = oil.AssumedIndex(grade)
		a.figure("assumed", "viscosity-index", c.by, least, most, "")
	} else if most < oil.LeastIndex || least > oil.MostIndex {
		f.doubtIndex("index")
	}
	s, ok := oil.SpreadOf(grade, least, most)
	if !ok {
		f.reject("oil-no-limits", "grade")
		return
	}
	c.Spread = s
	f.viscosityAt(a, c, 40, "")
	f.curve(a, c)
	w, hot, _ := grade.Limits()
	by := method("j300")
	if grade.Gear() {
		by = "j306"
	}
	if s.Open {
		a.limit("viscosity-least", by, hot.Least, hot.Least, " mm²/s", 100)
		f.say(finding.Note, "no-upper-limit", "")
	} else {
		a.limit("viscosity-new", by, hot.Least, hot.Below, " mm²/s", 100)
		a.list("grades", []string{grade.Summer()})
	}
	if hot.HighShear > 0 {
		a.limit("high-shear-least", by, hot.HighShear, hot.HighShear, " mPa·s", 150)
	}
	if w.Cranking > 0 {
		a.limit("cranking-most", by, w.Cranking, w.Cranking, " mPa·s", w.CrankingAt)
	}
	if w.Pumping > 0 {
		name := "pumping-most"
		if grade.Gear() {
			name = "cold-most"
		}
		a.limit(name, by, w.Pumping, w.Pumping, " mPa·s", w.PumpingAt)
	}
}

// limit adds what a standard asks of new oil at a temperature: neither the bike's own
// figure nor an estimate.
func (a *Answer) limit(name string, by method, low, high float64, unit string, celsius float64) {
	a.figureAt(name, by, low, high, unit, celsius, 3).Standing = shown.Standard
}

// curve answers for the temperature and the viscosity that are asked for, and
// gives the points to draw.
func (f *Form) curve(a *Answer, c *course) {
	if f.has("at") {
		f.viscosityAt(a, c, f.number("at"), "at")
	}
	if f.has("want") {
		f.temperatureFor(a, c, f.number("want"))
	}
	a.draw(c)
	f.say(finding.Note, "cold-is-thicker", "")
}

// draw gives the points to draw, from -10 °C to 120 °C, where the relation
// reaches and is told; high only where it is not low.
func (a *Answer) draw(c *course) {
	const most = 27
	temps, thin, thick := make([]float64, most), make([]float64, most), make([]float64, most)
	n, band := 0, false
	for celsius := -10.0; celsius <= 120; celsius += 5 {
		low, high := c.Drawn(celsius)
		if !c.cold.Tells(celsius, high) {
			continue
		}
		temps[n], thin[n], thick[n] = celsius, significant(low, 4), significant(high, 4)
		band = band || high > low
		n++
	}
	if n == 0 {
		return
	}
	a.axis("x", "°C", 3, -10, 20, 60, 100)
	a.powers(thin[n-1], thick[0])
	a.points("temps", temps[:n])
	a.points("low", thin[:n])
	if band {
		a.points("high", thick[:n])
	}
}

// viscosityAt adds the viscosity at a temperature that is asked for in a field, if
// it is told there: with four digits where it is given, three between two of these, two
// beyond.
func (f *Form) viscosityAt(a *Answer, c *course, celsius float64, field string) {
	name := "viscosity"
	if c.Open {
		name = "viscosity-least"
	}
	low, high := c.At(celsius)
	if !c.cold.Tells(celsius, high) {
		a.unknown("figures", name)
		f.stops(a, c, celsius, field)
		return
	}
	digits := 3
	switch {
	case c.Beyond(celsius) > 0:
		digits = 2
	case quantity.Near(celsius, c.From) || quantity.Near(celsius, c.To):
		digits = 4
	}
	a.figureAt(name, c.by, low, high, " mm²/s", celsius, digits)
	f.goesBeyond(a, c, celsius, field)
}

// stops says why nothing is told at a temperature.
func (f *Form) stops(a *Answer, c *course, celsius float64, field string) {
	code, value := string(c.cold.Why), c.cold.At
	if quantity.AtLeast(celsius, c.cold.At) {
		code, value = "too-thick-to-tell", celsius
	}
	f.say(finding.Doubt, code, field, "at", a.between(value, value, "°C", 3)[0])
}

// goesBeyond says how far a temperature lies outside two readings.
func (f *Form) goesBeyond(a *Answer, c *course, celsius float64, field string) {
	if by := c.Beyond(celsius); by > 1e-6 && c.From < c.To {
		f.say(finding.Note, "beyond-readings", field, "at", a.between(celsius, celsius, "°C", 3)[0], "by", f.degrees(by))
	}
}

// degrees tells a difference of temperatures, in K.
func (f *Form) degrees(difference float64) string {
	if f.system == quantity.US {
		return quantity.Number(difference*1.8, 2) + " °F"
	}
	return quantity.Number(difference, 2) + " °C"
}

// temperatureFor adds where the oil has a viscosity, if it is told there.
func (f *Form) temperatureFor(a *Answer, c *course, viscosity float64) {
	low, high := c.Temperature(viscosity)
	switch {
	case low < oil.LeastHeat || high > oil.MostHeat || math.IsNaN(low+high):
		a.unknown("figures", "temperature-for")
	case !c.cold.Tells(low, viscosity):
		a.unknown("figures", "temperature-for")
		f.stops(a, c, low, "want")
	default:
		from, to := low, high
		if low < high {
			from, to = math.Floor(low), math.Ceil(high) // a range has no tenths of a degree
		}
		ends(a.amount("figures", "temperature-for", c.by, from, to, "°C", 3), low, high)
		if f.goesBeyond(a, c, low, "want"); low < high {
			f.goesBeyond(a, c, high, "want")
		}
	}
}

// powers puts an upright axis of the powers of ten between two viscosities.
func (a *Answer) powers(low, high float64) {
	var places []float64
	var texts []string
	for v := math.Pow(10, math.Floor(math.Log10(low))); v <= high; v *= 10 {
		places = append(places, v)
		texts = append(texts, quantity.Number(v, 1))
	}
	a.points("yTicks", places)
	a.list("yTexts", texts)
}
