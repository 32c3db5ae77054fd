package changes

import (
	"tidysump/internal/card"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// Between says what a card says otherwise than an earlier text of it, for a person of
// that system of units. What both have comes first, in the order of the newer one; then
// what only the earlier one has.
func Between(from, to *card.Card, system quantity.System) []Change {
	c := &comparer{from: side{from, shown.Printer{System: system, Sources: from.Sources}}, to: side{to, shown.Printer{System: system, Sources: to.Sources}}}
	c.bike(from, to)
	match(c, from.Sources, to.Sources, func(s *card.Source) string { return s.ID }, (*comparer).source)
	match(c, from.Circuits, to.Circuits, func(r *card.Circuit) string { return r.ID }, (*comparer).circuit)
	match(c, from.Charts, to.Charts, func(r *card.ChartRow) string { return r.Circuit + " " + r.Grade }, (*comparer).row)
	match(c, from.Bolts, to.Bolts, func(b *card.Bolt) string { return b.ID }, (*comparer).bolt)
	match(c, from.Filters, to.Filters, func(f *card.Filter) string { return f.ID }, (*comparer).filter)
	match(c, from.Strain, to.Strain, func(s *card.Strainer) string { return s.ID }, (*comparer).strainer)
	c.interval(&from.Interval, &to.Interval)
	c.notes(from, to)
	match(c, from.Quotes, to.Quotes, quoteKey, (*comparer).quote)
	return c.list
}

// match compares the things of two lists that have one key, and gives those that only
// one list has to the comparison with nil for the other. Of several with one key the
// first is compared with the first.
func match[T any](c *comparer, from, to []T, key func(*T) string, compare func(c *comparer, a, b *T)) {
	left := map[string][]int{}
	for i := range from {
		k := key(&from[i])
		left[k] = append(left[k], i)
	}
	last, ordered := -1, true
	for i := range to {
		k := key(&to[i])
		same := left[k]
		if len(same) == 0 {
			compare(c, nil, &to[i])
			continue
		}
		left[k] = same[1:]
		ordered = ordered && same[0] > last
		last = same[0]
		compare(c, &from[same[0]], &to[i])
	}
	for i := range from {
		if k := key(&from[i]); len(left[k]) > 0 && left[k][0] == i {
			left[k] = left[k][1:]
			compare(c, &from[i], nil)
		}
	}
	if !ordered {
		c.of("", "")
		c.add(Sequence, nil, nil)
	}
}

func (c *comparer) bike(a, b *card.Card) {
	c.of("", "")
	c.text(Key, a.ID, b.ID)
	c.flag(Invented, a.Invented, b.Invented)
	c.text(Make, a.Make, b.Make)
	c.text(Model, a.Model, b.Model)
	c.number(YearFrom, a.YearFrom, b.YearFrom)
	c.number(YearTo, a.YearTo, b.YearTo)
	c.word(Layout, "layout.", string(a.Layout), string(b.Layout))
	c.number(Cylinders, a.Engine.Cylinders, b.Engine.Cylinders)
	c.text(Displacement, displacement(a), displacement(b))
	c.word(Cooling, "differs-cooling.", string(a.Engine.Cooling), string(b.Engine.Cooling))
	c.word(Clutch, "differs-clutch.", string(a.Engine.Clutch), string(b.Engine.Clutch))
	c.flag(NoLamp, a.Engine.NoLamp, b.Engine.NoLamp)
	c.flag(ReturnSeen, a.Engine.ReturnSeen, b.Engine.ReturnSeen)
	c.flag(NoNeutral, a.Engine.NoNeutral, b.Engine.NoNeutral)
}

func displacement(c *card.Card) string {
	if c.Engine.Displacement == 0 {
		return ""
	}
	return quantity.Number(c.Engine.Displacement, 15) + " cm³"
}

func (c *comparer) source(a, b *card.Source) {
	c.of("", "")
	none := card.Source{}
	if a == nil {
		a = &none
	}
	if b == nil {
		b = &none
	}
	if a.Title != b.Title || a.ID != b.ID {
		c.add(Manual, text(a.Title), text(b.Title))
	}
}

func (c *comparer) circuit(a, b *card.Circuit) {
	if c.one(a == nil, b == nil, func() { c.of("role."+string(b.Role), "") }, func() { c.of("role."+string(a.Role), "") }) {
		return
	}
	c.word(Role, "role.", string(a.Role), string(b.Role))
	c.flag(WetClutch, a.WetClutch, b.WetClutch)
	c.oil(&a.Oil, &b.Oil)
	c.figure(OilOnly, a.OilOnly, b.OilOnly)
	c.figure(WithFilter, a.WithFilt, b.WithFilt)
	c.figure(Dry, a.Dry, b.Dry)
	c.nth(a.EveryNth, b.EveryNth)
	c.ownInterval(a.Interval, b.Interval)
	c.warm(a.Warm, b.Warm)
	c.word(Device, "device.", string(a.Level.Device), string(b.Level.Device))
	c.word(State, "state.", string(a.Level.State), string(b.Level.State))
	c.word(Stance, "stance.", string(a.Level.Stance), string(b.Level.Stance))
	c.figure(Run, a.Level.Run, b.Level.Run)
	c.figure(Wait, a.Level.Wait, b.Level.Wait)
	c.figure(Band, a.Level.Band, b.Level.Band)
	c.text(Where, a.Level.Where, b.Level.Where)
}

func (c *comparer) row(a, b *card.ChartRow) {
	of := func(s *side, r *card.ChartRow) func() {
		return func() {
			word, _ := s.part(r.Circuit)
			c.of(word, r.Grade)
		}
	}
	if c.one(a == nil, b == nil, of(&c.to, b), of(&c.from, a)) {
		return
	}
	c.figure(AirFrom, a.From.End(), b.From.End())
	c.figure(AirTo, a.To.End(), b.To.End())
}

func (c *comparer) bolt(a, b *card.Bolt) {
	if c.one(a == nil, b == nil, func() { c.of("purpose."+string(b.Purpose), b.Place) }, func() { c.of("purpose."+string(a.Purpose), a.Place) }) {
		return
	}
	c.word(Purpose, "purpose.", string(a.Purpose), string(b.Purpose))
	c.part(Circuit, a.Circuit, b.Circuit)
	c.part(Holds, a.Holds, b.Holds)
	c.part(Behind, a.Behind, b.Behind)
	c.text(Place, a.Place, b.Place)
	c.number(Count, a.Number(), b.Number())
	c.text(Order, a.Order, b.Order)
	c.flag(Drains, a.Drains, b.Drains)
	c.flag(Tank, a.Tank, b.Tank)
	c.flag(Magnet, a.Magnet, b.Magnet)
	c.text(Thread, a.Thread, b.Thread)
	c.word(Drive, "drive.", string(a.Drive), string(b.Drive))
	c.figure(Size, a.Size, b.Size)
	c.figure(Torque, a.Torque, b.Torque)
	c.figure(Turn, a.Turn, b.Turn)
	c.seal(a.Seal, b.Seal)
}

func (c *comparer) filter(a, b *card.Filter) {
	of := func(f *card.Filter) func() { return func() { c.of("differs-of."+string(f.Kind), f.Place) } }
	if c.one(a == nil, b == nil, of(b), of(a)) {
		return
	}
	c.word(Kind, "differs-of.", string(a.Kind), string(b.Kind))
	c.part(Circuit, a.Circuit, b.Circuit)
	c.word(Mount, "mount.", string(a.Mount), string(b.Mount))
	c.nth(a.EveryNth, b.EveryNth)
	c.ownInterval(a.Interval, b.Interval)
	c.text(Place, a.Place, b.Place)
	c.part(Behind, a.Behind, b.Behind)
	c.text(Thread, a.Thread, b.Thread)
	c.figure(Ring, a.Ring, b.Ring)
	c.figure(Height, a.Height, b.Height)
	c.word(RingsWith, "ring-with.", string(a.RingWith), string(b.RingWith))
	c.text(Number, a.OwnNumber, b.OwnNumber)
	c.seals(a.Seals, b.Seals)
}

func (c *comparer) strainer(a, b *card.Strainer) {
	of := func(s *card.Strainer) func() { return func() { c.of("differs-of.strainer", s.Place) } }
	if c.one(a == nil, b == nil, of(b), of(a)) {
		return
	}
	c.part(Circuit, a.Circuit, b.Circuit)
	c.nth(a.EveryNth, b.EveryNth)
	c.ownInterval(a.Interval, b.Interval)
	c.text(Place, a.Place, b.Place)
	c.part(Behind, a.Behind, b.Behind)
	c.seals(a.Seals, b.Seals)
}

func (c *comparer) seals(a, b []card.Seal) {
	if len(a) != len(b) {
		c.number(Seals, len(a), len(b))
	}
	for i := range max(len(a), len(b)) {
		var x, y *card.Seal
		if i < len(a) {
			x = &a[i]
		}
		if i < len(b) {
			y = &b[i]
		}
		c.seal(x, y)
	}
}

func (c *comparer) seal(a, b *card.Seal) {
	if a == nil {
		a = &card.Seal{}
	}
	if b == nil {
		b = &card.Seal{}
	}
	c.word(Seal, "seal.", string(a.Kind), string(b.Kind))
	c.figure(Inner, a.Inner, b.Inner)
	c.figure(Outer, a.Outer, b.Outer)
	c.figure(Thickness, a.Thickness, b.Thickness)
	c.number(Count, max(a.Count, 1), max(b.Count, 1))
}

func (c *comparer) interval(a, b *card.Interval) {
	c.of("differs-of.interval", "")
	c.span(&a.Span, &b.Span, Distance, Time, Hours)
	c.of("differs-of.interval-first", "")
	c.span(a.First, b.First, Distance, Time, Hours)
	c.of("differs-of.interval-severe", "")
	c.span(a.Severe, b.Severe, Distance, Time, Hours)
}

// ownInterval compares the intervals that a part has of its own, under its name.
func (c *comparer) ownInterval(a, b *card.Interval) {
	if a == nil {
		a = &card.Interval{}
	}
	if b == nil {
		b = &card.Interval{}
	}
	c.span(&a.Span, &b.Span, OwnDistance, OwnTime, OwnHours)
	c.span(a.First, b.First, FirstDistance, FirstTime, FirstHours)
	c.span(a.Severe, b.Severe, SevereDistance, SevereTime, SevereHours)
}

func (c *comparer) span(a, b *card.Span, distance, time, hours Word) {
	if a == nil {
		a = &card.Span{}
	}
	if b == nil {
		b = &card.Span{}
	}
	c.figure(distance, a.Distance, b.Distance)
	c.figure(time, a.Time, b.Time)
	c.figure(hours, a.Hours, b.Hours)
}

func (c *comparer) warm(a, b *card.Warming) {
	if a == nil {
		a = &card.Warming{}
	}
	if b == nil {
		b = &card.Warming{}
	}
	c.figure(WarmTarget, a.Target, b.Target)
	c.figure(WarmTime, a.Time, b.Time)
}

// quoteKey is what a quote says, of what, and where it stands.
func quoteKey(q *card.Quote) string {
	key := q.Words + "\n" + q.Source + "\n" + q.Page
	for _, of := range q.Of {
		key += "\n" + of.At + "\n" + of.Says
	}
	return key
}

// quote tells of a quote that only one card has.
func (c *comparer) quote(a, b *card.Quote) {
	c.of("", "")
	switch {
	case a == nil:
		c.add(Quote, nil, c.to.quoted(b))
	case b == nil:
		c.add(Quote, c.from.quoted(a), nil)
	}
}

func (s *side) quoted(q *card.Quote) *shown.Figure {
	f := text(q.Words)
	if f != nil {
		f.Source, f.Page = s.print.Title(q.Source), q.Page
	}
	return f
}

func (c *comparer) notes(a, b *card.Card) {
	match(c, a.Notes, b.Notes, func(s *string) string { return *s }, func(c *comparer, a, b *string) { c.note("", a, b) })
	match(c, a.NotesAt, b.NotesAt, func(n *card.NoteAt) string { return string(n.At) + " " + n.Text }, func(c *comparer, a, b *card.NoteAt) {
		switch {
		case a == nil:
			c.note("note-at."+string(b.At), nil, &b.Text)
		case b == nil:
			c.note("note-at."+string(a.At), &a.Text, nil)
		}
	})
}

// note tells of a note that only one card has.
func (c *comparer) note(part string, a, b *string) {
	c.of(part, "")
	switch {
	case a == nil:
		c.add(Note, nil, text(*b))
	case b == nil:
		c.add(Note, text(*a), nil)
	}
}
