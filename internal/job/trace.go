package job

import (
	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/finding"
)

// trace is what a job leaves for later ones; what was drained and poured lies
// beside it.
type trace struct {
	read                  [due.Time]due.Reading // km and hours; a count of zero was not read
	changed               map[string]float64    // day of the change of a circuit's oil, counted from 1970-01-01
	shareFound, shareLeft map[string]*float64   // levels as shares of the band, before and after
}

// recall replays a job for what it leaves. It gives nil and the findings of a card
// or bench that can't be used.
func recall(e *Past) (*replayer, []finding.Finding) {
	if list := cardRefused(&e.Card); list != nil {
		return nil, list
	}
	return run(&e.Card, e.Bench, e.Events)
}

func cardRefused(c *card.Card) []finding.Finding {
	list := card.Check(c)
	if !finding.Refused(list) {
		return nil
	}
	for n := range list {
		list[n].Where = "/card" + list[n].Where
	}
	return list
}

// changedAt notes that oil was poured into a circuit that is done today. Only then
// does its interval begin anew, however the job ended.
func (r *replayer) changedAt(circuit, time string) {
	r.changed[circuit] = float64(date.DayOf(time))
}

// pouredAt does the same for a step of pouring that is done and has no reading.
func (r *replayer) pouredAt(step, time string) {
	for _, c := range r.circuits {
		if step == r.pourWord(c)+"-"+c.ID {
			r.changedAt(c.ID, time)
		}
	}
}

// interval is how long the oil may stay in, as the bike is used.
func (p *planner) interval() card.Span { return intervalOf(&p.card.Interval, p.bench.Severe) }

// intervalOf gives the card's interval. In severe use, where the manual has nothing
// for it, that is half of the usual one: common practice, no source; several
// reasons don't halve it again.
func intervalOf(i *card.Interval, severe bool) card.Span {
	s := i.Span
	switch {
	case !severe:
	case i.Severe == nil:
		s = card.Span{Distance: half(s.Distance), Time: half(s.Time), Hours: half(s.Hours)}
	default:
		s = card.Span{Distance: orElse(i.Severe.Distance, s.Distance), Time: orElse(i.Severe.Time, s.Time),
			Hours: orElse(i.Severe.Hours, s.Hours)}
	}
	return s
}

func orElse(f, other *card.Figure) *card.Figure {
	if f.Known() {
		return f
	}
	return other
}

func half(f *card.Figure) *card.Figure {
	if !f.Known() {
		return f
	}
	return &card.Figure{Value: f.Value / 2, To: f.To / 2, Unit: f.Unit, Standing: card.Estimated, Method: "@method.severe-half"}
}

// month is one in the base unit of durations.
const month = 365.25 / 12 * 24 * 60

// spanFrom gives a card's span in the units of package due, in what is earliest
// where a figure is a range.
func spanFrom(s card.Span) due.Span {
	base := func(f *card.Figure) float64 {
		a, _ := f.Amount()
		return a.Base
	}
	return due.Span{base(s.Distance), base(s.Hours) / 60, base(s.Time) / month}
}
