package calc

import (
	"math"

	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

var oilCurveFields = []field{
	{name: "grade", front: true, kind: aText},
	{name: "first", front: true, kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "firstAt", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 40},
	{name: "second", front: true, kind: quantity.Viscosity, low: leastThick, high: mostThick},
	{name: "secondAt", kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat, absent: 100},
	{name: "index", kind: aNumber, high: 400},
	{name: "at", front: true, kind: quantity.Temperature, low: oil.LeastHeat, high: oil.MostHeat},
	{name: "want", kind: quantity.Viscosity, low: leastThick, high: mostThick},
}

// shown.Standard is the standing of a limit that a published standard sets: it is
// neither the bike's own figure nor an estimate.
// oilCurve says how thick an oil is over temperature: one curve through two
// viscosities, or the band that a bare grade leaves open.
func oilCurve(f *Form, a *Answer) {
	grade := f.grade("grade")
	switch {
	case f.refused():
	case f.has("first") || f.has("second"):
		f.curveOfPoints(a, grade)
	case f.has("grade"):
		f.curveOfGrade(a, grade)
	default:
		f.reject("oil-points", "")
	}
}

// curveOfPoints takes the line of ASTM D341 through two points.
func (f *Form) curveOfPoints(a *Answer, grade oil.Grade) {
	f.need("first")
	f.need("second")
	if f.refused() {
		return
	}
	line, ok := oil.LineThrough(f.number("firstAt"), f.number("first"), f.number("secondAt"), f.number("second"))
	at40, at100 := line.At(40), line.At(100)
	if !ok || math.IsNaN(at40+at100) {
		f.reject("oil-not-one", "second")
		return
	}
	f.checkGrade(grade, at100)
	const by = "walther"
	s := line.Spread()
	a.viscosityAt(s, 40, by)
	a.viscosityAt(s, 100, by)
	f.curve(a, s, by)
	if index, ok := oil.Index(at40, at100); ok {
		index = math.RoundToEven(index)
		a.figure("figures", "viscosity-index", "index", index, index, "")
	}
	if f.has("index") {
		f.unused("index", "@ask.oil-curve.index", "@ask.oil-curve.second")
	}
	a.list("grades", oil.GradesAt(at100, at100))
}

// curveOfGrade takes the band that a grade leaves open. At 100 °C it is the
// standard's; elsewhere it depends on the index, which is given or assumed.
func (f *Form) curveOfGrade(a *Answer, grade oil.Grade) {
	by := method("given-index")
	least, most := f.number("index"), f.number("index")
	if !f.has("index") {
		by = "assumed-index"
		least, most = oil.AssumedIndex(grade)
		a.figure("assumed", "viscosity-index", by, least, most, "")
	}
	s, ok := oil.SpreadOf(grade, least, most)
	if !ok {
		f.reject("oil-no-limits", "grade")
		return
	}
	a.viscosityAt(s, 40, by)
	f.curve(a, s, by)
	w, hot, _ := grade.Limits()
	if s.Open {
		a.limit("viscosity-least", hot.Least, hot.Least, " mm²/s", 100)
		f.say(finding.Note, "no-upper-limit", "")
	} else {
		a.limit("viscosity-new", hot.Least, hot.Below, " mm²/s", 100)
		a.limit("high-shear-least", hot.HighShear, hot.HighShear, " mPa·s", 150)
		a.list("grades", []string{grade.Summer()})
	}
	if w.Cranking > 0 {
		a.limit("cranking-most", w.Cranking, w.Cranking, " mPa·s", w.CrankingAt)
		a.limit("pumping-most", w.Pumping, w.Pumping, " mPa·s", w.PumpingAt)
	}
}

// limit adds what J300 asks of new oil at a temperature.
func (a *Answer) limit(name string, low, high float64, unit string, celsius float64) {
	a.figureAt(name, "j300", low, high, unit, celsius).Standing = shown.Standard
}

// curve answers for the temperature and the viscosity that are asked for, and
// gives the points to draw.
func (f *Form) curve(a *Answer, s *oil.Spread, by method) {
	if f.has("at") {
		a.viscosityAt(s, f.number("at"), by)
	}
	if f.has("want") {
		a.temperatureFor(s, f.number("want"), by)
	}
	a.draw(s)
	f.say(finding.Note, "cold-is-thicker", "")
}

// draw gives the points to draw, from -10 °C to 120 °C, where the relation
// reaches; high only where it is not low.
func (a *Answer) draw(s *oil.Spread) {
	const most = 27
	temps, thin, thick := make([]float64, most), make([]float64, most), make([]float64, most)
	n, band := 0, false
	for celsius := -10.0; celsius <= 120; celsius += 5 {
		low, high := s.At(celsius)
		if math.IsNaN(low + high) {
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

// viscosityAt adds the viscosity at a temperature, if the relation reaches it.
func (a *Answer) viscosityAt(s *oil.Spread, celsius float64, by method) {
	name := "viscosity"
	if s.Open {
		name = "viscosity-least"
	}
	if low, high := s.At(celsius); math.IsNaN(low + high) {
		a.unknown("figures", name)
	} else {
		a.figureAt(name, by, low, high, " mm²/s", celsius)
	}
}

// temperatureFor adds where the oil has a viscosity, if the relation reaches it.
func (a *Answer) temperatureFor(s *oil.Spread, viscosity float64, by method) {
	low, high := s.Temperature(viscosity)
	if low < oil.LeastHeat || high > oil.MostHeat || math.IsNaN(low+high) {
		a.unknown("figures", "temperature-for")
		return
	}
	a.computed("temperature-for", by, low, high, "°C")
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
