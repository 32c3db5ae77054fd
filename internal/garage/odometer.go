package garage

import (
	"slices"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
)

// leastOdometer is the least that is told of an odometer, in km: one that shows nothing
// was never looked at.
const leastOdometer = 1

// odometer takes in what the odometer showed on a day. Whether it shows less than before
// is told where it is held against the jobs.
func (g *garage) odometer(b *Bike, f *ledger.Fact) {
	value := strings.TrimSpace(f.Value)
	if !g.Told(f, "/value", value, "@told.odometer") || !g.Short(f, "/value", value, ledger.ValueLetters) {
		return
	}
	system := systemIn(f)
	ask := quantity.Ask{Kind: quantity.Distance, Unit: quantity.Usual(quantity.Distance, system), System: system, Low: leastOdometer, High: due.MostOdometer}
	a, list := ask.Read(value)
	for _, found := range list {
		if found.Grade == finding.Refuse || f == g.New {
			found.Where = f.Where("/value")
			if f != g.New {
				found.Grade = finding.Doubt
			}
			g.Findings = append(g.Findings, found)
		}
	}
	if finding.Refused(list) {
		return
	}
	if !quantity.AtLeast(a.Base, leastOdometer) || !quantity.AtMost(a.Base, due.MostOdometer) {
		bound := func(km float64) string {
			return quantity.Amount{Kind: quantity.Distance, Base: km, Unit: a.Unit, Digits: 7}.Print(a.Unit)
		}
		g.Fault(f, "not-believable", "/value", finding.Refuse, "value", a.Print(a.Unit), "low", bound(leastOdometer), "high", bound(due.MostOdometer))
		return
	}
	read := due.OdometerReading{ID: f.ID, Day: f.Day, At: f.Time, Km: a.Base}
	if _, ok := date.ReadDay(read.Day); !ok {
		read.Day = date.DayText(date.DayOf(f.Time))
	}
	b.Odometer = slices.DeleteFunc(b.Odometer, func(t due.OdometerReading) bool { return t.Day == read.Day })
	b.Odometer = append(b.Odometer, read)
	if more := len(b.Odometer) - due.MostRecent; more > 0 {
		b.Odometer = slices.Delete(b.Odometer, 0, more)
	}
}

// systemIn gives the units of the person who told a fact.
func systemIn(f *ledger.Fact) quantity.System {
	if s := quantity.System(f.Signs[systemSign]); slices.Contains(quantity.Systems, s) {
		return s
	}
	return quantity.Metric
}
