package card

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/quantity"
)

// Slot is a place of a card that holds one thing that a manual may say: a figure, a word,
// a number, or a list of words. One of its pointers is set.
type Slot struct {
	At     string        // JSON pointer into the card
	Kind   quantity.Kind // of a figure
	Figure **Figure
	Text   *string
	Words  *[]string
	Split  bool // Text is several words, parted by strokes
	Number *int
	Amount *float64 // the displacement in cm³
}

// Slot gives the place of a card that is called by the id of a part and the members below
// it, "drain-plug/seal/kind", or where it is of no part by the members alone,
// "/interval/first/distance"; false where the card has none. Nothing is to be written
// there: see MakeSlot.
func (c *Card) Slot(name string) (Slot, bool) { return (&finder{card: c}).slot(name) }

// MakeSlot is Slot for a place that is written to: what a part lacks on the way, such as
// its seal, is made.
func (c *Card) MakeSlot(name string) (Slot, bool) { return (&finder{card: c, makes: true}).slot(name) }

// finder finds places, and makes what leads to them if it is to.
type finder struct {
	card  *Card
	makes bool
}

// made gives what a pointer leads to; where that is nothing, something to read from.
func made[T any](n *finder, p **T) *T {
	to := *p
	if to == nil {
		to = new(T)
		if n.makes {
			*p = to
		}
	}
	return to
}

func (n *finder) slot(name string) (s Slot, ok bool) {
	c := n.card
	id, member, _ := strings.Cut(name, "/")
	if id == "" {
		s, ok = n.whole(member)
		s.At = "/" + member
		return s, ok
	}
	for i := range c.Circuits {
		if r := &c.Circuits[i]; r.ID == id {
			s, ok = n.circuit(r, member)
			return s.in("/circuits/", i, member), ok
		}
	}
	for i := range c.Bolts {
		if b := &c.Bolts[i]; b.ID == id {
			s, ok = n.bolt(b, member)
			return s.in("/bolts/", i, member), ok
		}
	}
	for i := range c.Filters {
		if f := &c.Filters[i]; f.ID == id {
			s, ok = n.filter(f, member)
			return s.in("/filters/", i, member), ok
		}
	}
	for i := range c.Strain {
		if f := &c.Strain[i]; f.ID == id {
			s, ok = n.due(&f.EveryNth, &f.Interval, member)
			return s.in("/strainers/", i, member), ok
		}
	}
	return s, false
}

func (s Slot) in(list string, i int, member string) Slot {
	s.At = list + strconv.Itoa(i) + "/" + member
	return s
}

func figureSlot(f **Figure, kind quantity.Kind) (Slot, bool) {
	return Slot{Figure: f, Kind: kind}, true
}
func textSlot(text *string) (Slot, bool) { return Slot{Text: text}, true }

func (n *finder) whole(member string) (Slot, bool) {
	c := n.card
	switch member {
	case "make":
		return textSlot(&c.Make)
	case "model":
		return textSlot(&c.Model)
	case "yearFrom":
		return Slot{Number: &c.YearFrom}, true
	case "yearTo":
		return Slot{Number: &c.YearTo}, true
	case "engine/displacement":
		return Slot{Amount: &c.Engine.Displacement}, true
	case "engine/cooling":
		return textSlot((*string)(&c.Engine.Cooling))
	}
	if rest, ok := strings.CutPrefix(member, "interval/"); ok {
		return n.interval(&c.Interval, rest)
	}
	return Slot{}, false
}

func (n *finder) interval(i *Interval, member string) (Slot, bool) {
	span := &i.Span
	switch of, rest, _ := strings.Cut(member, "/"); of {
	case "first":
		span, member = made(n, &i.First), rest
	case "severe":
		span, member = made(n, &i.Severe), rest
	}
	switch member {
	case "distance":
		return figureSlot(&span.Distance, quantity.Distance)
	case "time":
		return figureSlot(&span.Time, quantity.Duration)
	case "hours":
		return figureSlot(&span.Hours, quantity.Duration)
	}
	return Slot{}, false
}

// due are the places that say when a part is due.
func (n *finder) due(nth *int, interval **Interval, member string) (Slot, bool) {
	if member == "everyNth" {
		return Slot{Number: nth}, true
	}
	if rest, ok := strings.CutPrefix(member, "interval/"); ok {
		return n.interval(made(n, interval), rest)
	}
	return Slot{}, false
}

func (n *finder) circuit(r *Circuit, member string) (Slot, bool) {
	switch member {
	case "oilOnly":
		return figureSlot(&r.OilOnly, quantity.Volume)
	case "withFilter":
		return figureSlot(&r.WithFilt, quantity.Volume)
	case "dry":
		return figureSlot(&r.Dry, quantity.Volume)
	case "oil/grades":
		return Slot{Words: &r.Oil.Grades}, true
	case "oil/marks":
		return Slot{Words: &r.Oil.Marks}, true
	case "oil/service":
		return Slot{Text: &r.Oil.Service, Split: true}, true
	case "level/device":
		return textSlot((*string)(&r.Level.Device))
	case "level/state":
		return textSlot((*string)(&r.Level.State))
	case "level/stance":
		return textSlot((*string)(&r.Level.Stance))
	case "level/run":
		return figureSlot(&r.Level.Run, quantity.Duration)
	case "level/wait":
		return figureSlot(&r.Level.Wait, quantity.Duration)
	case "level/band":
		return figureSlot(&r.Level.Band, quantity.Volume)
	case "warm/target":
		return figureSlot(&made(n, &r.Warm).Target, quantity.Temperature)
	case "warm/time":
		return figureSlot(&made(n, &r.Warm).Time, quantity.Duration)
	}
	return n.due(&r.EveryNth, &r.Interval, member)
}

func (n *finder) bolt(b *Bolt, member string) (Slot, bool) {
	switch member {
	case "thread":
		return textSlot(&b.Thread)
	case "drive":
		return textSlot((*string)(&b.Drive))
	case "size":
		return figureSlot(&b.Size, quantity.Length)
	case "torque":
		return figureSlot(&b.Torque, quantity.Torque)
	case "turn":
		return figureSlot(&b.Turn, quantity.Angle)
	case "seal/kind":
		return textSlot((*string)(&made(n, &b.Seal).Kind))
	case "count":
		return Slot{Number: &b.Count}, true
	}
	return Slot{}, false
}

func (n *finder) filter(f *Filter, member string) (Slot, bool) {
	if member == "kind" {
		return textSlot((*string)(&f.Kind))
	}
	return n.due(&f.EveryNth, &f.Interval, member)
}

// Says gives what stands at a place, as it is written there; nothing where it is not
// known.
func (s *Slot) Says() []string {
	switch {
	case s.Figure != nil:
		return (*s.Figure).Exactly()
	case s.Split && *s.Text != "":
		return strings.Split(*s.Text, "/")
	case s.Text != nil && *s.Text != "":
		return []string{*s.Text}
	case s.Words != nil:
		return slices.Clone(*s.Words)
	case s.Number != nil && *s.Number != 0:
		return []string{strconv.Itoa(*s.Number)}
	case s.Amount != nil && *s.Amount != 0:
		return []string{quantity.Number(*s.Amount, 15) + " cm³"}
	}
	return nil
}

// Exactly gives a figure as it stands in the card; nothing where it is not known. It is
// safe on nil.
func (f *Figure) Exactly() []string {
	if !f.Known() {
		return nil
	}
	text := quantity.Number(f.Value, 15)
	if f.To != 0 {
		text = quantity.Span(text, quantity.Number(f.To, 15))
	}
	return []string{text + " " + f.Unit}
}
