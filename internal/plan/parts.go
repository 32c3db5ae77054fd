package plan

import (
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Item is a part or a tool to lay out.
type Item struct {
	Word   string // word id
	Values map[string]string
	Count  int
	// Oil is the circuit whose oil it is, "" for anything else: for who charges for
	// it, and not written.
	Oil string
}

// Members names the item's members.
func (i *Item) Members(m *wire.Members) {
	m.String("word", &i.Word, wire.Required)
	m.TextMap("values", &i.Values)
	m.Int("count", &i.Count)
}

// NewItem makes an item; values are names and texts in turn.
func NewItem(count int, word string, values ...string) Item {
	return Item{Word: word, Count: count, Values: finding.Values(values...)}
}

// parts lists what must lie on the bench before the first bolt turns: the oil
// of each circuit, the filter, and a new seal for everything that is opened.
func (p *planner) parts() {
	add := func(i Item) { p.plan.Parts = append(p.plan.Parts, i) }
	for _, o := range p.plan.Oils {
		if o.Today {
			need := p.need(p.card.Circuit(o.Circuit))
			i := Item{Word: "part.oil", Values: need.Values, Oil: o.Circuit}
			i.Values["of"], i.Values["volume"], i.Values["need"] = "@"+o.Role, o.Due.First(), need.First()
			add(i)
		}
	}
	for _, f := range p.filters {
		if f.Kind != card.Centrifugal { // that one is cleaned and put back
			add(NewItem(1, "part.filter-"+string(f.Kind), "place", f.Place))
		}
		p.seals(f.Seals, "part.filter")
	}
	for _, s := range p.strainers {
		p.seals(s.Seals, "part.strainer")
	}
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Seal != nil && p.turned(b) && !(b.Purpose == card.FillerCap && byHand(b)) {
			p.seal(b.Seal, sealsOf(b), "purpose."+string(b.Purpose))
		}
	}
}

// sealsOf is one for each fastener; but a gasket or ring of a cover lies under
// the cover and not under its screws.
func sealsOf(b *card.Bolt) int {
	cover := b.Purpose == card.FilterCover || b.Purpose == card.StrainerCap || b.Purpose == card.LevelScrew
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

func (p *planner) seals(list []card.Seal, of string) {
	for i := range list {
		p.seal(&list[i], 1, of)
	}
}

// seal adds a seal, or raises the count of one that is alike.
func (p *planner) seal(s *card.Seal, times int, of string) {
	count := times * max(s.Count, 1)
	word, kind, size := "part.seal", "@seal."+string(s.Kind), sealSize(s)
	if size == "" {
		word = "part.seal-size-unknown"
	}
	for i := range p.plan.Parts {
		have := &p.plan.Parts[i]
		if have.Word == word && have.Values["kind"] == kind && have.Values["size"] == size && have.Values["of"] == "@"+of {
			have.Count += count
			return
		}
	}
	p.plan.Parts = append(p.plan.Parts, NewItem(count, word, "kind", kind, "size", size, "of", "@"+of))
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
	return d.print.Texts(float64(litres), "L", len(strconv.Itoa(litres)))[0], true
}

func ceil(x float64) int {
	n := int(x)
	if float64(n) < x {
		n++
	}
	return n
}
