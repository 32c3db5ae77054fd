package card

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Lay gives a card with a machine's own figures over its own, and what is to be said of
// them, at /N/value for the figure of that number. What can't be used, or leads to a
// card that is refused, is left out and told: the rest lies over all the same. Of two
// figures of one thing the later lies over. The card itself is not changed.
func Lay(c *Checked, own []Own) (*Checked, []finding.Finding) {
	l := layer{laid: c}
	last := map[string]int{}
	for n := range own {
		last[own[n].What] = n
	}
	var order []int
	for n := range own {
		if last[own[n].What] == n || own[n].unread {
			order = append(order, n)
		}
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(own[x].rank(), own[y].rank()) })
	for _, n := range order {
		l.over("/"+strconv.Itoa(n)+"/value", &own[n])
	}
	l.doubts(c)
	return l.laid, l.list
}

// rank is the place of an own figure in the order in which they are laid over.
func (o *Own) rank() int {
	word, _, _ := o.about()
	return slices.Index(OwnFigures, word)
}

// layer lays figures over a card.
type layer struct {
	laid *Checked
	list []finding.Finding
	at   []laidAt
}

// laidAt says where in the card a figure lies, and where it stands among those that were
// given.
type laidAt struct{ card, figure string }

// over lays one figure over.
func (l *layer) over(at string, o *Own) {
	if o.unread {
		l.tell(at, finding.Refusal("fact-unread", "", "member", "@event.whole"))
		return
	}
	e, list := o.read()
	if l.tell(at, list) {
		return
	}
	next := copyOf(l.laid.card)
	place := o.put(next, &e)
	if place == "" {
		l.tell(at, finding.Refusal("own-elsewhere", "", "what", "@own."+string(OwnFigures[o.rank()])))
		return
	}
	checked, list := Accept(next)
	if checked == nil {
		list = slices.DeleteFunc(list, func(f finding.Finding) bool { return f.Grade != finding.Refuse })
		l.tell(at, list[:1])
		return
	}
	l.laid = checked
	l.at = append(l.at, laidAt{place, at})
}

// tell adds what was found about a figure, and reports whether it is left out for it.
// That is a doubt about the figures together, and refuses none.
func (l *layer) tell(at string, list []finding.Finding) bool {
	refused := finding.Refused(list)
	for _, f := range list {
		if f.Where = at; f.Grade == finding.Refuse {
			f.Grade = finding.Doubt
		}
		l.list = append(l.list, f)
	}
	return refused
}

// doubts tells what is doubted of the card as it lies now and wasn't before, at the
// figure that lies there.
func (l *layer) doubts(before *Checked) {
	known := map[string]bool{}
	for _, f := range before.doubts {
		known[f.Code+" "+f.Where] = true
	}
	for _, f := range l.laid.doubts {
		if known[f.Code+" "+f.Where] {
			continue
		}
		for _, at := range l.at {
			if strings.HasPrefix(f.Where, at.card) {
				f.Where = at.figure
				l.list = append(l.list, f)
				break
			}
		}
	}
}

// copyOf gives a card that shares nothing with another.
func copyOf(c *Card) *Card {
	next := &Card{}
	wire.Read(wire.Write(c), next)
	return next
}

// put puts what was read into a card, and gives the place of the part that it belongs
// to, "" where the card has none.
func (o *Own) put(c *Card, e *Entry) string {
	word, id, _ := o.about()
	switch word {
	case OwnVolume, OwnVolumeFilter, OwnGrade:
		for i := range c.Circuits {
			if c.Circuits[i].ID == id {
				o.intoCircuit(c, &c.Circuits[i], word, e)
				return "/circuits/" + strconv.Itoa(i)
			}
		}
	case OwnNumber:
		for i := range c.Filters {
			if c.Filters[i].ID == id {
				c.Filters[i].OwnNumber = e.Words[0]
				return "/filters/" + strconv.Itoa(i)
			}
		}
	default:
		for i := range c.Bolts {
			if c.Bolts[i].ID == id && intoBolt(c, &c.Bolts[i], word, e) {
				return "/bolts/" + strconv.Itoa(i)
			}
		}
	}
	return ""
}

// intoCircuit puts a figure into an oil. Where the owner decided for a grade, the
// manual's chart over the air gives none of this oil any more: it knows only its own.
func (o *Own) intoCircuit(c *Card, r *Circuit, word OwnFigure, e *Entry) {
	switch word {
	case OwnVolume:
		r.OilOnly = &e.Figure
	case OwnVolumeFilter:
		r.WithFilt = &e.Figure
	case OwnGrade:
		r.Oil.Grades = e.Words
		r.Oil.Standing, r.Oil.Source, r.Oil.Page, r.Oil.Method = o.Standing, "", "", o.why()
		c.Charts = slices.DeleteFunc(c.Charts, func(row ChartRow) bool { return row.Circuit == r.ID })
	}
}

// intoBolt puts a figure into a fastener, and reports whether that has such a part.
func intoBolt(c *Card, b *Bolt, word OwnFigure, e *Entry) bool {
	switch word {
	case OwnThread:
		threadTo(c, b, e.Words[0])
	case OwnTorque:
		b.Torque = &e.Figure
	case OwnSize:
		b.Size = &e.Figure
	default:
		if b.Seal == nil {
			return false
		}
		switch word {
		case OwnInner:
			b.Seal.Inner = &e.Figure
		case OwnOuter:
			b.Seal.Outer = &e.Figure
		case OwnThickness:
			b.Seal.Thickness = &e.Figure
		}
	}
	return true
}

// threadTo gives a fastener another thread. What the card says of the old one says
// nothing of the new: how tight it is, the size of the tool and of the seal, and of a
// can the size of the filter itself. A thread that the card didn't know, or the same one
// in other signs, changes nothing.
func threadTo(c *Card, b *Bolt, text string) {
	before, known := bolt.ParseThread(b.Thread)
	now, _ := bolt.ParseThread(text)
	b.Thread = text
	if !known || before.MayBe(&now) {
		return
	}
	b.Torque, b.Size = nil, nil
	if s := b.Seal; s != nil {
		s.Inner, s.Outer, s.Thickness = nil, nil, nil
	}
	for i := range c.Filters {
		if f := &c.Filters[i]; b.Purpose == FilterCanned && f.ID == b.Holds {
			f.Thread, f.Ring, f.Height, f.OwnNumber = text, nil, nil, ""
		}
	}
}
