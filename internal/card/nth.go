package card

// mostNth is the most changes of the engine's oil that may lie between two of a part.
const mostNth = 20

// Nth is at each how many changes of the engine's oil something is due: what the card says,
// or else the last one before an interval of its own is over; 1 where neither says more.
func (c *Card) Nth(nth int, own *Interval) int {
	if nth > 0 || own == nil {
		return max(nth, 1)
	}
	usual := &c.Interval
	for _, f := range [...]struct{ own, usual *Figure }{
		{own.Distance, usual.Distance}, {own.Time, usual.Time}, {own.Hours, usual.Hours}} {
		a, known := f.own.Amount()
		b, ok := f.usual.Amount()
		if known && ok && b.Base > 0 {
			// 12,000 km beside 4,000 mi is each second one: both are rounded, by a tenth at most.
			return min(max(int(a.Base/b.Base+0.1), 1), mostNth)
		}
	}
	return 1
}
