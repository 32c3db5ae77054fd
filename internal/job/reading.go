package job

import (
	"math"
	"slices"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
	"tidysump/internal/due"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
)

// believable gives the bounds of what may be read, in base units: wide enough
// for any bike, narrow enough to catch a slip of the unit or the key (common
// practice, no source). ok is false for what is no quantity.
func believable(what string) (kind quantity.Kind, low, high float64, ok bool) {
	switch what {
	case plan.AskOdometer:
		return quantity.Distance, 0, due.MostOdometer, true
	case plan.AskHours:
		return quantity.Duration, 0, 1e5 * 60, true
	case plan.AskTorque:
		return quantity.Torque, 0.5, 400, true
	case plan.AskTemperature:
		return quantity.Temperature, -40, 200, true
	case plan.AskDrained, plan.AskPoured:
		return quantity.Volume, 0, 25, true
	}
	return "", 0, 0, false
}

// AskOther is what a reading is of that another version asked and this one knows
// nothing of.
const AskOther = "other"

// reading takes a reading in, and reports whether it counts.
func (r *replayer) reading(e *placed) bool {
	step, ask := r.asked(e)
	read := Read{ID: e.ID, Time: e.Time, Step: e.Step, What: e.What, About: e.About, Name: r.nameOf(e), Manners: mannersOf(e)}
	thing := read.What + " " + read.About
	before := r.earlier(e, thing)
	counts := false
	switch {
	case ask == nil:
		return false
	case step == nil:
		counts = readAsTyped(e, &read)
	case e.What == plan.AskLevel:
		level, share := r.level[e.About], r.share[e.About]
		if counts = r.levelRead(e, step, ask, &read); before {
			r.level[e.About], r.share[e.About] = level, share
		}
	case e.What == plan.AskLeak:
		counts = r.leakRead(e, step, ask, &read)
	default:
		counts = r.amount(e, ask, &read)
	}
	if !counts {
		return r.readUnclear(e, &read)
	}
	if before {
		r.state.Readings = append(r.state.Readings, read)
		return true
	}
	if n, again := r.stands[thing]; again && read.What != AskOther {
		r.state.Readings[n].Stands = false
	}
	r.stands[thing] = len(r.state.Readings)
	read.Stands = true
	r.state.Readings = append(r.state.Readings, read)
	return true
}

// asked gives the question that a reading answers, and the step that asks it. What the
// record holds and its own step doesn't ask is the answer to another step's, so that
// what was poured counts whatever the step is called; where no step asks it there is no
// step, and what was typed stands. There is no question where the reading is refused.
func (r *replayer) asked(e *placed) (*plan.Step, *plan.Ask) {
	if own := e.step; own != nil {
		for i := range own.Asks {
			if a := &own.Asks[i]; a.What == e.What && a.About == e.About {
				return own, a
			}
		}
		if r.unasked(e, "not-asked", "/what", e.What) {
			return nil, nil
		}
	}
	asked := r.asking(e.What + " " + e.About)
	if len(asked) == 0 {
		return nil, &plan.Ask{}
	}
	_, poured := r.trace.Poured[e.About]
	for _, a := range asked {
		if a.step.After == (r.state.Finished != "") && !a.step.Interim && (e.What != plan.AskLevel || a.step.Finds != poured) {
			return a.step, a.ask
		}
	}
	return asked[0].step, asked[0].ask
}

// asking is a question with the step that asks it.
type asking struct {
	step *plan.Step
	ask  *plan.Ask
}

// asking gives the questions about a thing, in the order of the steps.
func (r *replayer) asking(thing string) []asking {
	if r.asks == nil {
		r.asks = map[string][]asking{}
		for i := range r.plan.Steps {
			s := &r.plan.Steps[i]
			for k := range s.Asks {
				a := &s.Asks[k]
				of := a.What + " " + a.About
				r.asks[of] = append(r.asks[of], asking{s, a})
			}
		}
	}
	return r.asks[thing]
}

// readUnclear takes in a reading of the record that says nothing here: another version
// took it. Nothing that was read before stands less for it.
func (r *replayer) readUnclear(e *placed, read *Read) bool {
	if r.isNew(e) || !readAsTyped(e, read) {
		return false
	}
	r.state.Readings = append(r.state.Readings, *read)
	return true
}

// readAsTyped takes in what no step asks: it says what somebody wrote, and nothing
// follows from it.
func readAsTyped(e *placed, read *Read) bool {
	text := strings.TrimLeft(finding.Clip(e.Value), "@ ") // nobody's words are a word id
	if !slices.Contains(plan.Readings, e.What) {
		read.What = AskOther
		text = strings.TrimLeft(finding.Clip(e.What)+" "+text, "@ ")
	}
	read.Texts = []string{text}
	return text != ""
}

// nameOf is what a reading belongs to: a circuit's role or a fastener's place.
func (r *replayer) nameOf(e *placed) string {
	if c := r.plan.Card().Circuit(e.About); c != nil {
		return "@role." + string(c.Role)
	}
	if b := r.plan.Card().Bolt(e.About); b != nil {
		if b.Place == "" {
			return "@purpose." + string(b.Purpose)
		}
		return b.Place
	}
	return ""
}

// amount takes in a reading that is a quantity.
func (r *replayer) amount(e *placed, ask *plan.Ask, read *Read) bool {
	kind, low, high, ok := believable(e.What)
	if !ok {
		return readAsTyped(e, read)
	}
	q := quantity.Ask{Kind: kind, Unit: ask.Unit, System: r.print.System, Low: low, High: high}
	a, list := q.Read(e.Value)
	r.tell(e, list)
	switch {
	case math.IsNaN(a.Base):
		return false
	case a.Base < 0 && low >= 0:
		r.fault(e, "negative", "/value", finding.Refuse, "value", a.Print(a.Unit))
		return false
	case !quantity.AtLeast(a.Base, low) || !quantity.AtMost(a.Base, high):
		r.fault(e, "not-believable", "/value", finding.Refuse, "value", a.Print(a.Unit),
			"low", r.bound(kind, low), "high", r.bound(kind, high))
		return false
	}
	read.Texts = a.Show(r.print.System)
	r.take(e, a, read)
	return true
}

// tell takes over what reading a quantity found.
func (r *replayer) tell(e *placed, list []finding.Finding) {
	for _, f := range list {
		values := make([]string, 0, 2*len(f.Values))
		for k, v := range f.Values {
			values = append(values, k, v)
		}
		r.fault(e, f.Code, "/value", f.Grade, values...)
	}
}

func (r *replayer) bound(kind quantity.Kind, base float64) string {
	return r.print.Exact(base, quantity.Base(kind), 7)[0]
}

func (r *replayer) take(e *placed, a quantity.Amount, read *Read) {
	switch e.What {
	case plan.AskOdometer:
		r.state.Odometer = a.Base
		r.trace.Read[due.Km] = due.Reading{Day: float64(e.day), Count: a.Base, At: e.Time}
	case plan.AskHours:
		r.trace.Read[due.Hours] = due.Reading{Day: float64(e.day), Count: a.Base / 60, At: e.Time}
	case plan.AskDrained:
		r.trace.Drained[e.About] += a.Base
	case plan.AskPoured:
		r.trace.Poured[e.About] += a.Base
		r.changedAt(e.About, e.day)
	case plan.AskTorque:
		r.torqueUsed(e, a, read)
	case plan.AskTemperature:
		r.warmIs(e, a.Base, read)
	}
}

// torqueUsed compares the torque used with the card's: more than the wrench's
// own deviation off is reported.
func (r *replayer) torqueUsed(e *placed, a quantity.Amount, read *Read) {
	b := r.plan.Card().Bolt(e.About)
	low, ok := b.Torque.Amount()
	if !ok {
		return
	}
	high := low.Base
	if upper, ranged := b.Torque.Upper(); ranged {
		high = upper.Base
	}
	read.Card = r.print.Card("torque", b.Torque, "torque").Texts
	off := bolt.Deviation(high)
	if a.Base > high*(1+off) || a.Base < low.Base*(1-off) {
		r.fault(e, "torque-off", "/value", finding.Doubt, "value", read.Texts[0], "card", read.Card[0], "place", read.Name)
	}
}

// balance sums up each circuit's oil and judges what was poured. What is topped up to
// get home is held against no volume.
func (r *replayer) balance() {
	for _, c := range r.plan.Circuits() {
		b := Balance{Circuit: c.ID, Role: "role." + string(c.Role), Full: 1}
		if r.plan.GetHome() {
			r.toppedUp(c, &b)
			continue
		}
		b.Full = r.fullness(c)
		b.Due = r.print.Card("due", r.plan.Volume(c), "volume").Texts
		due, known := r.plan.Volume(c).Amount()
		if sum, ok := r.trace.Drained[c.ID]; ok {
			b.Drained, b.Out, b.Waste = r.print.Litres(sum), sum, r.waste(c)
			b.Caught = "caught." + string(fill.CompareCaught(sum, due.Base))
		}
		sum, poured := r.trace.Poured[c.ID]
		if poured {
			b.Poured, b.In = r.print.Litres(sum), sum
			b.Verdict = "poured." + string(fill.Compare(sum, due.Base))
		}
		if known && sum < due.Base {
			b.Left = r.print.Litres(due.Base - sum)
		}
		switch {
		case !poured:
		case !known:
			b.Pouring = "job.poured"
		case len(b.Left) > 0:
			b.Pouring = "job.poured.left"
		default:
			b.Pouring = "job.poured.all"
		}
		r.amend(c, &b)
		if r.last != nil {
			if u, ok := UseBetween(r.last, &r.trace, c.ID, r.print); ok {
				u.From, u.To = "", "" // the oil is not changed yet
				b.Since = u
			}
		}
		r.levelled(c, &b)
	}
}

// wentBack says so where the odometer shows less than in the last job.
func (r *replayer) wentBack() {
	n, read := r.stands[plan.AskOdometer+" "]
	if r.last == nil || !read {
		return
	}
	before, now := r.last.Read[due.Km].Count, &r.state.Readings[n]
	for _, e := range r.list {
		if e.ID == now.ID && r.state.Odometer < before {
			r.fault(e, "counter-back", "/value", finding.Doubt, "from", r.print.Kilometres(before, 7)[0], "to", now.Texts[0])
			return
		}
	}
}

// toppedUp says what went in on the way home.
func (r *replayer) toppedUp(c *card.Circuit, b *Balance) {
	if sum, poured := r.trace.Poured[c.ID]; poured {
		b.Poured, b.In, b.Pouring = r.print.Litres(sum), sum, "job.poured"
	}
	r.amend(c, b)
	r.levelled(c, b)
}

// levelled adds a balance with the level that was read last.
func (r *replayer) levelled(c *card.Circuit, b *Balance) {
	if l := r.level[c.ID]; l != "" {
		b.Level = "level." + l
	}
	r.state.Oils = append(r.state.Oils, *b)
}
