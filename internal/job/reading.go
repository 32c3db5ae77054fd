package job

import (
	"math"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// believable gives the bounds of what may be read, in base units: wide enough
// for any bike, narrow enough to catch a slip of the unit or the key (common
// practice, no source).
func believable(what string) (kind quantity.Kind, low, high float64) {
	switch what {
	case AskOdometer:
		return quantity.Distance, 0, 2e6
	case AskHours:
		return quantity.Duration, 0, 1e5 * 60
	case AskTorque:
		return quantity.Torque, 0.5, 400
	case AskTemperature:
		return quantity.Temperature, -40, 200
	}
	return quantity.Volume, 0, 25 // what is drained and poured
}

// reading takes a reading in, and reports whether it counts.
func (r *replayer) reading(e placed) bool {
	ask := r.asked(e)
	if ask == nil {
		r.fault(e, "not-asked", "/what", finding.Refuse, "text", shorten(e.What))
		return false
	}
	read := Read{ID: e.ID, Time: e.Time, Step: e.Step, What: e.What, Of: e.Of, Name: r.nameOf(e)}
	take := r.amount
	switch e.What {
	case AskLevel:
		take = r.levelRead
	case AskLeak:
		take = r.leakRead
	}
	if !take(e, ask, &read) {
		return false
	}
	r.state.Readings = append(r.state.Readings, read)
	return true
}

func (r *replayer) asked(e placed) *Ask {
	s := r.stepOf(e.Step)
	for i := range s.Asks {
		if s.Asks[i].What == e.What && s.Asks[i].Of == e.Of {
			return &s.Asks[i]
		}
	}
	return nil
}

// nameOf is what a reading belongs to: a circuit's role or a fastener's place.
func (r *replayer) nameOf(e placed) string {
	if c := circuitOf(r.card, e.Of); c != nil {
		return "@role." + string(c.Role)
	}
	if b := r.boltOf(e.Of); b != nil {
		return orWord(b.Place, "purpose."+string(b.Purpose))
	}
	return ""
}

func (r *replayer) boltOf(id string) *card.Bolt {
	for i := range r.card.Bolts {
		if r.card.Bolts[i].ID == id {
			return &r.card.Bolts[i]
		}
	}
	return nil
}

// amount takes in a reading that is a quantity.
func (r *replayer) amount(e placed, ask *Ask, read *Read) bool {
	kind, low, high := believable(e.What)
	a, list := quantity.Parse(kind, e.Value, ask.Unit, r.bench.System)
	for _, f := range list {
		values := make([]string, 0, 2*len(f.Values))
		for k, v := range f.Values {
			values = append(values, k, v)
		}
		r.fault(e, f.Code, "/value", f.Grade, values...)
	}
	switch {
	case math.IsNaN(a.Base):
		return false
	case a.Base < 0 && low >= 0:
		r.fault(e, "negative", "/value", finding.Refuse, "value", a.Print(a.Unit))
		return false
	case a.Base < low || a.Base > high:
		r.fault(e, "not-believable", "/value", finding.Refuse, "value", a.Print(a.Unit),
			"low", r.bound(kind, low), "high", r.bound(kind, high))
		return false
	}
	read.Texts = a.Show(r.bench.System)
	r.take(e, a, read)
	return true
}

func (r *replayer) bound(kind quantity.Kind, base float64) string {
	return texts(kind, base, quantity.Base(kind), 7, r.bench.System)[0]
}

func (r *replayer) take(e placed, a quantity.Amount, read *Read) {
	switch e.What {
	case AskOdometer:
		r.state.odometer = a.Base
		r.read[due.Km] = due.Reading{Day: float64(date.DayOf(e.Time)), Count: a.Base}
	case AskHours:
		r.read[due.Hours] = due.Reading{Day: float64(date.DayOf(e.Time)), Count: a.Base / 60}
	case AskDrained:
		r.drained[e.Of] += a.Base
	case AskPoured:
		r.poured[e.Of] += a.Base
		r.changedAt(e.Of, e.Time)
	case AskTorque:
		r.torqueUsed(e, a, read)
	case AskTemperature:
		r.warmIs(e, a.Base)
	}
}

// torqueUsed compares the torque used with the card's: more than the wrench's
// own deviation off is told.
func (r *replayer) torqueUsed(e placed, a quantity.Amount, read *Read) {
	b := r.boltOf(e.Of)
	low, ok := b.Torque.Amount()
	if !ok {
		return
	}
	high := low.Base
	if upper, ranged := b.Torque.Upper(); ranged {
		high = upper.Base
	}
	read.Card = r.show("torque", b.Torque, "torque").Texts
	off := bolt.Deviation(high)
	if a.Base > high*(1+off) || a.Base < low.Base*(1-off) {
		r.fault(e, "torque-off", "/value", finding.Doubt, "value", read.Texts[0], "card", read.Card[0], "place", read.Name)
	}
}

// balance sums up each circuit's oil and judges what was poured.
func (r *replayer) balance() {
	for _, c := range r.circuits {
		b := Balance{Circuit: c.ID, Role: "role." + string(c.Role),
			Due: r.show("due", r.volume(c), "volume").Texts}
		due, known := r.volume(c).Amount()
		if sum, ok := r.drained[c.ID]; ok {
			b.Drained, b.Out = r.litres(sum), sum
			b.Caught = "caught." + string(fill.CompareCaught(sum, due.Base))
		}
		sum, poured := r.poured[c.ID]
		if poured {
			b.Poured, b.In = r.litres(sum), sum
			b.Verdict = "poured." + string(fill.Compare(sum, due.Base))
		}
		if known && sum < due.Base {
			b.Left = r.litres(due.Base - sum)
		}
		r.amend(c, &b)
		if u := (UseRow{}); r.last != nil && (&reckoner{planner: *r.planner, engine: c.ID}).use(&u, r.last, r) {
			u.From, u.To = "", "" // the oil is not changed yet
			b.Since = &u
		}
		if l := r.level[c.ID]; l != "" {
			b.Level = "level." + l
		}
		r.state.Oils = append(r.state.Oils, b)
	}
}

// litres prints a sum to the 10 mL that a jug can show.
func (p *planner) litres(sum float64) []string {
	return texts(quantity.Volume, math.Round(sum*100)/100, "L", 6, p.bench.System)
}

// distance prints kilometres of an odometer.
func (r *replayer) distance(km float64) []string {
	return texts(quantity.Distance, math.Round(km), "km", 7, r.bench.System)
}

// dueAgain adds the card's interval to the odometer reading.
func (r *replayer) dueAgain() {
	distance := r.interval().Distance
	interval, ok := distance.Amount()
	if !ok || r.state.odometer == 0 {
		return
	}
	s := r.show("due-again", distance, "interval")
	s.Texts = r.distance(r.state.odometer + interval.Base)
	r.state.DueAgain = &s
}
