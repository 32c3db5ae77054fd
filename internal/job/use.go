package job

import (
	"math"

	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Use is the oil used between two changes.
type Use struct {
	From, To string   // days
	Distance []string // ridden between
	Lost     []string // oil
	Rate     string   // oil for the distance Per
	Per      string
	Use      string // word id of due.Use
	Trend    string // word id of due.Trend; empty for the first
	Method   string // word id: measured by level or by what was poured and drained

	PerThousand float64 // L per 1,000 km, of which nothing is written
}

// Members names the members of a use of oil.
func (u *Use) Members(m *wire.Members) {
	m.String("from", &u.From)
	m.String("to", &u.To)
	wire.Texts(m, "distance", &u.Distance)
	wire.Texts(m, "lost", &u.Lost)
	m.String("rate", &u.Rate)
	m.String("per", &u.Per)
	m.String("use", &u.Use)
	m.String("trend", &u.Trend)
	m.String("method", &u.Method)
}

// UseBetween measures what a circuit used between two changes of its oil; false
// where it can't be known, or one of the two is none. Levels read against a known band count before volumes:
// a jug shows no less than a twentieth of a litre, and what stays in engine and
// filter differs (common practice, no source).
func UseBetween(a, b *Trace, circuit string, print *shown.Printer) (*Use, bool) {
	c, left, found := b.Plan.Card().Circuit(circuit), a.ShareLeft[circuit], b.ShareFound[circuit]
	poured, drained := a.Poured[circuit], b.Drained[circuit]
	from, to := a.Read[due.Km].Count, b.Read[due.Km].Count
	if c == nil || from == 0 || to == 0 || a.Plan.GetHome() || b.Plan.GetHome() {
		return nil, false
	}
	u := &Use{Method: "@method.use-volumes"}
	lost, ok := poured-drained, poured > 0 && drained > 0
	if band, known := c.Level.Band.Amount(); known && left != nil && found != nil {
		lost, ok = due.Lost(*left, *found, band.Base), true
		u.Method = "@method.use-levels"
	}
	if !ok {
		return nil, false
	}
	u.PerThousand, ok = due.Consumption(lost, to-from)
	u.From, u.To = date.DayText(int(a.Changed[circuit])), date.DayText(int(b.Changed[circuit]))
	u.Distance, u.Lost = print.Kilometres(to-from, 7), print.Litres(lost)
	u.Rate, u.Per = rateOf(u.PerThousand, print.System)
	u.Use = "use." + string(due.Judge(u.PerThousand))
	return u, ok
}

// rateOf prints L per 1,000 km in the person's units: an amount, and the distance
// that it is for.
func rateOf(v float64, system quantity.System) (amount, per string) {
	unit := "L"
	per = "1000 km"
	if system != quantity.Metric {
		mile, _ := quantity.Find("mi")
		v, per, unit = v*mile.Scale, "1000 mi", "imp pt"
	}
	if system == quantity.US {
		unit = "US qt"
	}
	return quantity.Amount{Kind: quantity.Volume, Base: math.Round(v*100) / 100, Unit: "L", Digits: 2}.Print(unit), per
}
