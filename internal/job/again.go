package job

import (
	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// NextChange is when the oil is due again by the card, whichever comes first: at a
// reading of the odometer, or after a distance where that is not known, and after a
// time, whose day counts from the finish. What is not known is empty.
type NextChange struct{ At, After, Day string }

// Members names the members of a next change.
func (n *NextChange) Members(m *wire.Members) {
	m.String("at", &n.At)
	m.String("after", &n.After)
	m.String("day", &n.Day)
}

// dueAgain adds the card's interval to the odometer reading. A job that was only to get
// home begins none, and says so.
func (r *replayer) dueAgain() {
	if r.plan.GetHome() {
		r.state.Findings = append(r.state.Findings, finding.Finding{Code: "home-only", Grade: finding.Note, Where: "/bench/getHome"})
		return
	}
	interval := r.plan.Interval()
	s := r.print.Card("due-again", interval.Distance, "interval")
	r.state.Change = NextChange{At: first(s.Texts), After: first(r.print.Card("interval-time", interval.Time, "interval").Texts)}
	if span := SpanFrom(interval); r.finished > 0 && span[due.Time] > 0 {
		next := span.After(&due.Mark{due.Time: float64(r.finished)}, 1)
		r.state.Change.Day = date.DayText(int(next[due.Time]))
	}
	distance, ok := interval.Distance.Amount()
	if !ok || r.state.Odometer == 0 {
		return
	}
	s.Texts = r.print.Kilometres(r.state.Odometer+distance.Base, 7)
	r.state.DueAgain, r.state.Change.At = &s, s.Texts[0]
}

// month is one in the base unit of durations.
const month = 365.25 / 12 * 24 * 60

// SpanFrom gives a card's span in the units of package due, in what is earliest
// where a figure is a range.
func SpanFrom(s card.Span) due.Span {
	base := func(f *card.Figure) float64 {
		a, _ := f.Amount()
		return a.Base
	}
	return due.Span{base(s.Distance), base(s.Hours) / 60, base(s.Time) / month}
}
