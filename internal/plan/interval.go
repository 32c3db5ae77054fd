package plan

import (
	"tidysump/internal/card"
)

// Interval is how long the oil may stay in, as the bike is used.
func (p *Plan) Interval() card.Span { return p.day.interval() }

// Severe reports whether the bike is used hard.
func (p *Plan) Severe() bool { return p.day.bench.Severe }

// IntervalOf is how long that oil may stay in, and whether it has an interval of its own.
func (p *Plan) IntervalOf(c *card.Circuit) (span card.Span, own bool) {
	if c.Interval != nil {
		span = intervalOf(c.Interval, p.Severe())
		own = span.Distance.Known() || span.Time.Known() || span.Hours.Known()
	}
	if !own {
		span = p.Interval()
	}
	return span, own
}

func (d *day) interval() card.Span { return intervalOf(&d.card.Interval, d.bench.Severe) }

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
