package card

import (
	"tidysump/internal/finding"
)

// ownInterval checks the interval of a part that may have one of its own.
func (c *checker) ownInterval(at string, i *Interval) {
	if i != nil {
		c.interval(at, i)
	}
}

func (c *checker) interval(at string, i *Interval) {
	c.span(at, &i.Span)
	for _, part := range [...]struct {
		at   string
		span *Span
	}{{at + "/first", i.First}, {at + "/severe", i.Severe}} {
		if part.span == nil {
			continue
		}
		c.span(part.at, part.span)
		c.shorter(part.at+"/distance", part.span.Distance, i.Distance)
		c.shorter(part.at+"/time", part.span.Time, i.Time)
		c.shorter(part.at+"/hours", part.span.Hours, i.Hours)
	}
}

func (c *checker) span(at string, s *Span) {
	c.figure(at+"/distance", s.Distance, distanceLimit)
	c.figure(at+"/time", s.Time, monthsLimit)
	c.figure(at+"/hours", s.Hours, hoursLimit)
}

// shorter doubts a first or severe interval that is longer than the usual one:
// they are there to be shorter.
func (c *checker) shorter(at string, f, usual *Figure) {
	a, known := f.Amount()
	if b, ok := usual.Amount(); known && ok && a.Kind == b.Kind && a.Base > b.Base {
		c.add(finding.Doubt, "interval-longer", at, "value", a.Print(a.Unit), "usual", b.Print(b.Unit))
	}
}
