package job

import (
	"math"

	"tidysump/internal/due"
	"tidysump/internal/quantity"
)

// uses tells what the engine used between each two changes of its oil, the oldest
// first.
func (r *reckoner) uses() {
	var before *replayer
	rate, compared := 0.0, false
	for _, p := range r.past {
		if p.changed[r.engine] == 0 {
			continue
		}
		if u := new(UseRow); before != nil && r.use(u, before, p) {
			if compared {
				u.Trend = "use-trend." + string(due.Compare(rate, u.perThousand))
			}
			rate, compared = u.perThousand, true
			r.outlook.Uses = append(r.outlook.Uses, *u)
		}
		before = p
	}
}

// use measures what was used between two changes. Levels read against a known band
// count before volumes: a jug shows no less than a twentieth of a litre, and what
// stays in engine and filter differs (common practice, no source).
func (r *reckoner) use(u *UseRow, a, b *replayer) bool {
	c, left, found := circuitOf(b.card, r.engine), a.shareLeft[r.engine], b.shareFound[r.engine]
	poured, drained := a.poured[r.engine], b.drained[r.engine]
	from, to := a.state.odometer, b.state.odometer
	if c == nil || from == 0 || to == 0 {
		return false
	}
	lost, ok := poured-drained, poured > 0 && drained > 0
	u.Method = "@method.use-volumes"
	if band, known := c.Level.Band.Amount(); known && left != nil && found != nil {
		lost, ok = due.Lost(*left, *found, band.Base), true
		u.Method = "@method.use-levels"
	}
	if !ok {
		return false
	}
	u.perThousand, ok = due.Consumption(lost, to-from)
	u.From, u.To = dayText(a.changed[r.engine]), dayText(b.changed[r.engine])
	u.Distance, u.Lost = r.kilometres(to-from, 7), r.litres(lost)
	u.Rate, u.Per = r.rate(u.perThousand)
	u.Use = "use." + string(due.Judge(u.perThousand))
	return ok
}

// rate prints L per 1,000 km in the person's units: an amount, and the distance
// that it is for.
func (r *reckoner) rate(v float64) (amount, per string) {
	unit := "L"
	per = "1000 km"
	if r.bench.System != quantity.Metric {
		mile, _ := quantity.Find("mi")
		v, per, unit = v*mile.Scale, "1000 mi", "imp pt"
	}
	if r.bench.System == quantity.US {
		unit = "US qt"
	}
	return quantity.Amount{Kind: quantity.Volume, Base: math.Round(v*100) / 100, Unit: "L", Digits: 2}.Print(unit), per
}
