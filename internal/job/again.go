package job

import (
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// NextChange is when the oil is due again by the card, whichever comes first: at a
// reading of the odometer, or after a distance where that is not known, and after a
// time. What is not known is empty.
type NextChange struct{ At, After string }

// Members names the members of a next change.
func (n *NextChange) Members(m *wire.Members) {
	m.String("at", &n.At)
	m.String("after", &n.After)
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
	distance, ok := interval.Distance.Amount()
	if !ok || r.state.Odometer == 0 {
		return
	}
	s.Texts = r.print.Kilometres(r.state.Odometer+distance.Base, 7)
	r.state.DueAgain, r.state.Change.At = &s, s.Texts[0]
}
