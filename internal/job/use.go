package job

import (
	"math"

	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/fill"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Use is the oil used between two changes, or what came in instead.
type Use struct {
	From, To string   // days
	Distance []string // ridden between; empty where that isn't known
	Lost     []string // oil
	Came     []string // what came in; then there is no rate, and nothing lost
	Rate     string   // oil for the distance Per
	Per      string
	Use      string // word id of due.Use
	Trend    string // word id of due.Trend; empty for the first
	Method   string // word id: measured by level or by what was poured and drained
	// Help is the calculation that says what came in; nil where nothing did.
	Help *plan.Help

	PerThousand float64 // L per 1,000 km, of which nothing is written
}

// Members names the members of a use of oil.
func (u *Use) Members(m *wire.Members) {
	m.String("from", &u.From)
	m.String("to", &u.To)
	wire.Texts(m, "distance", &u.Distance)
	wire.Texts(m, "lost", &u.Lost)
	wire.Texts(m, "came", &u.Came)
	m.String("rate", &u.Rate)
	m.String("per", &u.Per)
	m.String("use", &u.Use)
	m.String("trend", &u.Trend)
	m.String("method", &u.Method)
	wire.Optional(m, "help", &u.Help)
}

// jugShows is what measuring with a jug shows at least of what stays in an engine or not,
// in L: a twentieth, common practice, no source.
const jugShows = 0.05

// UseBetween measures what a circuit used between two changes of its oil, or what came
// into it; false where it can't be known, or one of the two is none. Levels read against
// a known band count before volumes, since what stays in engine and filter differs
// (common practice, no source). A rise needs no distance.
func UseBetween(a, b *Trace, circuit string, print *shown.Printer) (*Use, bool) {
	c, left, found := b.Plan.Card().Circuit(circuit), a.ShareLeft[circuit], b.ShareFound[circuit]
	poured, drained := a.Poured[circuit], b.Drained[circuit]
	from, to := a.Read[due.Km].Count, b.Read[due.Km].Count
	if c == nil || a.Plan.GetHome() || b.Plan.GetHome() {
		return nil, false
	}
	u := &Use{Method: "@method.use-volumes"}
	lost, shows, ok := poured-drained, jugShows, poured > 0 && drained > 0
	if band, known := c.Level.Band.Amount(); known && left != nil && found != nil {
		lost, shows, ok = due.Lost(*left, *found, band.Base), band.Base*fill.Reliable, true
		u.Method = "@method.use-levels"
	}
	u.From, u.To = date.DayText(int(a.Changed[circuit])), date.DayText(int(b.Changed[circuit]))
	if from > 0 && to > from {
		u.Distance = print.Kilometres(to-from, 7)
	}
	if rise, came := due.Rise(-lost, shows); ok && came {
		u.Use, u.Came = "use."+string(rise), print.Texts(math.Round(-lost*1000)/1000, "mL", 2)
		u.Help = b.Plan.FuelHelp(c, u.Came[0])
		return u, true
	}
	if !ok || from == 0 || to == 0 {
		return nil, false
	}
	u.PerThousand, ok = due.Consumption(max(lost, 0), to-from)
	u.Lost = print.Litres(max(lost, 0))
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
	digits := 2
	if v < 0.1 {
		digits = 1 // levels and jugs tell no more
	}
	return quantity.Amount{Kind: quantity.Volume, Base: v, Unit: "L", Digits: digits, Rough: true}.Print(unit), per
}
