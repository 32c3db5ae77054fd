package plan

import (
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Item is a part or a tool to lay out.
type Item struct {
	Word   string // word id
	Values map[string]string
	Count  int
	// Against is what a part is held against before it is fitted: texts, or word ids
	// after "@" that the values fill.
	Against []string
	// Oil is the circuit whose oil it is, "" for anything else: for who charges for
	// it, and not written.
	Oil string
}

// Members names the item's members.
func (i *Item) Members(m *wire.Members) {
	m.String("word", &i.Word, wire.Required)
	m.TextMap("values", &i.Values)
	m.Int("count", &i.Count)
	wire.Texts(m, "against", &i.Against)
}

// NewItem makes an item; values are names and texts in turn.
func NewItem(count int, word string, values ...string) Item {
	return Item{Word: word, Count: count, Values: finding.Values(values...)}
}

// parts lists what must lie on the bench before the first bolt turns: the oil
// of each circuit, the filter, and a new seal for everything that is opened.
func (p *planner) parts() {
	for _, o := range p.plan.Oils {
		if p.doing(o.Circuit) {
			need := p.need(p.card.Circuit(o.Circuit))
			i := Item{Word: "part.oil", Values: need.Values, Oil: o.Circuit}
			if p.bench.GetHome {
				i.Word = "part.oil-some" // nobody knows how much is missing
			}
			i.Values["of"], i.Values["volume"], i.Values["need"] = "@"+o.Role, firstOr(o.Due, "unknown.volume"), firstOr(need, "unknown.oil")
			p.plan.Parts = append(p.plan.Parts, i)
		}
	}
	for _, f := range p.filters {
		if f.Kind != card.Centrifugal { // that one is cleaned and put back
			p.filter(f)
			if f.RingWith == card.RingGrease {
				p.plan.Parts = append(p.plan.Parts, NewItem(1, "part.ring-grease", "circuit", p.roleOf(f.Circuit), "place", orWord(f.Place, "unknown.place")))
			}
		}
		p.seals(f.Seals, "part.filter", f.Circuit, f.Place)
	}
	for _, s := range p.strainers {
		p.seals(s.Seals, "part.strainer", s.Circuit, s.Place)
	}
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Seal != nil && p.turned(b) && !(b.Purpose == card.FillerCap && byHand(b)) {
			p.seal(b.Seal, sealsOf(b), "purpose."+string(b.Purpose), b.Circuit, b.Place)
		}
	}
}

// firstOr is the first text of a figure, or the word for one that is not known.
func firstOr(f shown.Figure, word string) string {
	if len(f.Texts) == 0 {
		return "@" + word
	}
	return f.Texts[0]
}

// filter adds a new filter, and what its box is held against, as far as the card knows.
func (p *planner) filter(f *card.Filter) {
	i := NewItem(1, "part.filter-"+string(f.Kind), "circuit", p.roleOf(f.Circuit), "place", orWord(f.Place, "unknown.place"))
	hold := func(name, word, text string) {
		if text != "" {
			i.Values[name] = text
			i.Against = append(i.Against, word)
		}
	}
	ring := "@against.across"
	if f.Kind == card.SpinOn {
		ring = "@against.ring"
		hold("thread", "@against.thread", p.filterThread(f))
	}
	hold("ring", ring, p.printed(f.Ring))
	hold("height", "@against.height", p.printed(f.Height))
	hold("own", "@against.own", f.OwnNumber)
	if f.Kind == card.KindUnknown {
		p.gap("filter-kind", "filter-kind", i.Values["circuit"][1:], i.Values["place"])
		p.plan.Gaps[len(p.plan.Gaps)-1].At = p.kindAt(f)
	}
	if len(i.Against) == 0 {
		p.gap("filter", "filter", i.Values["circuit"][1:], i.Values["place"])
	}
	if f.Kind == card.SpinOn && f.Mount == "" {
		p.gap("mount", "mount", i.Values["circuit"][1:], i.Values["place"])
	}
	p.plan.Parts = append(p.plan.Parts, i)
}

// kindAt is the place in the card at which the kind of a filter stands.
func (d *day) kindAt(f *card.Filter) string {
	for n := range d.card.Filters {
		if &d.card.Filters[n] == f {
			return "/filters/" + strconv.Itoa(n) + "/kind"
		}
	}
	return ""
}

// filterThread is the thread of a spin-on filter: the filter's, or that of the fastener
// that stands for it.
func (d *day) filterThread(f *card.Filter) string {
	for i := range d.card.Bolts {
		if b := &d.card.Bolts[i]; f.Thread == "" && b.Holds == f.ID && b.Purpose == card.FilterCanned {
			return b.Thread
		}
	}
	return f.Thread
}

// printed is a length in the person's units, "" where it is not known.
func (d *day) printed(f *card.Figure) string {
	if !f.Known() {
		return ""
	}
	return d.print.Card("size", f, "size").First()
}

// roleOf is the word for what the oil of a circuit serves.
func (d *day) roleOf(circuit string) string {
	if c := d.card.Circuit(circuit); c != nil {
		return "@role." + string(c.Role)
	}
	return "@unknown.circuit"
}

// sealsOf is one for each fastener; but a gasket or ring of a cover lies under
// the cover and not under its screws.
func sealsOf(b *card.Bolt) int {
	cover := b.Purpose == card.FilterCover || b.Purpose == card.FilterClosed || b.Purpose == card.StrainerCap || b.Purpose == card.LevelScrew
	switch b.Seal.Kind {
	case card.Paper:
		return 1
	case card.ORing, card.SquareRing:
		if cover {
			return 1
		}
	}
	return b.Number()
}

func (p *planner) seals(list []card.Seal, of, circuit, place string) {
	for i := range list {
		p.seal(&list[i], 1, of, circuit, place)
	}
}

// seal adds a seal, or raises the count of one that is alike and lies there too.
func (p *planner) seal(s *card.Seal, times int, of, circuit, place string) {
	i := NewItem(times*max(s.Count, 1), "part.seal", "kind", "@seal."+string(s.Kind), "size", SealSize(s), "of", "@"+of,
		"circuit", p.roleOf(circuit), "place", orWord(place, "unknown.place"))
	if i.Values["size"] == "" {
		i.Word = "part.seal-size-unknown"
		if s.Kind == card.Paper {
			i.Word = "part.gasket" // one goes by the place that it is cut for
		} else {
			p.gap("seal-size", "seal", of, i.Values["place"])
		}
	}
	for n := range p.plan.Parts {
		have := &p.plan.Parts[n]
		if have.Word == i.Word && sameValues(have, &i) {
			have.Count += i.Count
			return
		}
	}
	p.plan.Parts = append(p.plan.Parts, i)
}

func sameValues(one, other *Item) bool {
	for name, value := range one.Values {
		if other.Values[name] != value {
			return false
		}
	}
	return true
}

// tray gives the size of the tray: the oils run out one after the other, so it
// holds the most of them with room to spare. False when a volume isn't known.
func (d *day) tray(circuits ...*card.Circuit) (string, bool) {
	most := 0.0
	for _, c := range circuits {
		a, ok := d.volume(c).Amount()
		if !ok {
			return "", false
		}
		most = max(most, a.Base)
	}
	// Trays are sold by the litre: the next whole one, at least two.
	litres := max(ceil(fill.TrayFor(most)), 2)
	return d.print.Exact(float64(litres), "L", len(strconv.Itoa(litres)))[0], true
}

func ceil(x float64) int {
	n := int(x)
	if float64(n) < x {
		n++
	}
	return n
}
