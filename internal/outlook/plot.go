package outlook

import (
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Plot is the picture of a counter between a change and both limits, with what it says.
// Places are thousandths of its width and height (due.Plot).
type Plot struct {
	Read           []Place
	Limit          Place
	Today          int
	Middle, Spread []Place
	Ticks          []Tick // on the side of time
	Marks          []Mark // on the side of the counter
	// Word says what the picture says: which limit comes first by what is ridden, that
	// nobody can tell yet, or that one is passed. Only the first is an estimate: about what
	// it will have come to on the day, or that the limit of the counter comes before.
	Word   string
	Values map[string]string
}

// Members names the members.
func (p *Plot) Members(m *wire.Members) {
	wire.List(m, "read", &p.Read, wire.Required)
	m.Object("limit", &p.Limit, wire.Required)
	m.Int("today", &p.Today, wire.Required)
	wire.List(m, "middle", &p.Middle)
	wire.List(m, "spread", &p.Spread)
	wire.List(m, "ticks", &p.Ticks)
	wire.List(m, "marks", &p.Marks)
	m.String("word", &p.Word, wire.Required)
	m.TextMap("values", &p.Values)
}

// Place is a place in the picture.
type Place due.PlotPoint

// Members names the members.
func (p *Place) Members(m *wire.Members) {
	m.Int("x", &p.X, wire.Required)
	m.Int("y", &p.Y, wire.Required)
}

// Tick is a day that is marked.
type Tick due.DayTick

// Members names the members.
func (t *Tick) Members(m *wire.Members) {
	m.Int("x", &t.X, wire.Required)
	m.String("day", &t.Day, wire.Required)
}

// Mark is a round count that is marked.
type Mark struct {
	Y     int
	Texts []string
}

// Members names the members.
func (k *Mark) Members(m *wire.Members) {
	m.Int("y", &k.Y, wire.Required)
	wire.Texts(m, "texts", &k.Texts, wire.Required)
}

// plot draws what was ridden since an oil was changed, by the odometer or else by the
// counter of hours.
func (r *reckoner) plot(d *DueOil, last, at *due.Mark) {
	n, per := due.Km, 1.0
	if at[due.Km] == 0 {
		n = due.Hours
	} else if u, ok := quantity.Find(quantity.Usual(quantity.Distance, r.print.System)); ok {
		per = u.ToBase(1)
	}
	c := &r.counters[n]
	drawn, ok := due.PlotOf(c.list, c.pace, c.known, n, last, at, r.now[due.Time], per)
	if !ok {
		return
	}
	text := func(count float64) []string {
		if n == due.Hours {
			return []string{hoursText(count)}
		}
		return r.print.Kilometres(count, 7)
	}
	p := &Plot{Read: places(drawn.Read), Limit: Place(drawn.Limit), Today: drawn.Today, Middle: places(drawn.Middle), Spread: places(drawn.Spread)}
	for _, t := range drawn.Days {
		p.Ticks = append(p.Ticks, Tick(t))
	}
	for _, t := range drawn.Counts {
		p.Marks = append(p.Marks, Mark{t.Y, text(t.Count)})
	}
	read := c.read(last[due.Time])
	switch {
	case read.Count >= at[n] || r.now[due.Time] >= at[due.Time]:
		p.Word = "plot.passed"
	case len(p.Middle) == 0:
		p.Word = "plot.no-pace"
	case drawn.Middle[1].X < drawn.Limit.X:
		p.Word, p.Values = "plot.count-first", finding.Values("limit", text(at[n])[0])
	default:
		p.Word = "plot.day-first"
		on := read.Count + c.pace.Middle*(at[due.Time]-read.Day)
		if n == due.Hours {
			p.Values = finding.Values("about", quantity.Number(on, 2)+" h")
		} else {
			p.Values = finding.Values("about", r.print.Texts(on, "km", 2)[0])
		}
	}
	d.Plot = p
}

func places(list []due.PlotPoint) []Place {
	var made []Place
	for _, p := range list {
		made = append(made, Place(p))
	}
	return made
}
