package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Gap is something the card does not know and the job needs.
type Gap struct {
	Word   string // word id of what is missing
	Values map[string]string
	Lookup string // word id of where to find it
	At     string // its place in the card, a JSON pointer, where it is chosen and not looked up
}

// Members names the gap's members.
func (g *Gap) Members(m *wire.Members) {
	m.String("word", &g.Word, wire.Required)
	m.TextMap("values", &g.Values)
	m.String("lookup", &g.Lookup)
	m.String("at", &g.At)
}

// gap notes that something is not known: what it belongs to is a word id, and the
// place is that of a fastener.
func (p *planner) gap(word, lookup, of, place string) {
	g := Gap{Word: "gap." + word, Lookup: "lookup." + lookup, Values: finding.Values("of", "@"+of)}
	if place != "" {
		g.Values["place"] = place
	}
	p.plan.Gaps = append(p.plan.Gaps, g)
}

// tellGapsApart says in a word of which thing each figure is missing, for a list of lines:
// of what it is; or where it is, where the day has several of the kind; or both.
func (p *planner) tellGapsApart() {
	for i := range p.plan.Gaps {
		g := &p.plan.Gaps[i]
		g.Values["which"] = g.Values["of"]
		if place := g.Values["place"]; place != "" && place != "@unknown.place" && p.severalOf(g) {
			g.Values["which"] = place
		}
	}
	for i := range p.plan.Gaps {
		for j := range p.plan.Gaps[:i] {
			g, o := &p.plan.Gaps[i], &p.plan.Gaps[j]
			if g.Word == o.Word && g.Values["place"] == o.Values["place"] && g.Values["of"] != o.Values["of"] &&
				g.Values["which"] == g.Values["place"] && o.Values["which"] != o.Values["of"] {
				g.Values["which"], o.Values["which"] = "@gap-at", "@gap-at" // two kinds at one place
			}
		}
	}
}

// severalOf reports whether what a gap is of may be taken for another: a fastener of the
// kind that is turned today, or the thing of a gap that is called the same.
func (p *planner) severalOf(g *Gap) bool {
	n := 0
	for i := range p.plan.Bolts {
		if b := &p.plan.Bolts[i]; b.Today && g.Values["of"] == "@"+b.Purpose {
			n++
		}
	}
	for i := range p.plan.Gaps {
		if o := &p.plan.Gaps[i]; o != g && o.Word == g.Word && o.Values["of"] == g.Values["of"] {
			n = 2
		}
	}
	return n > 1
}

// boltGaps notes what is not known of a fastener that is turned with a tool.
func (p *planner) boltGaps(b *card.Bolt, purpose string) {
	place := orWord(b.Place, "unknown.place")
	if b.Purpose == card.FilterCanned {
		if measureOf(b) == ByHand {
			p.gap("turn", "turn", purpose, place)
		}
		return // what grips it goes by the filter that is bought
	}
	if !b.Torque.Known() && measureOf(b) == ByTorque {
		p.gap("torque", "torque", purpose, place)
	}
	if b.Purpose == card.FilterClosed {
		return // and what grips this one by its kind
	}
	if b.Drive != card.Strap && (b.Drive == "" || !b.Size.Known()) {
		p.gap("size", "size", purpose, place)
	}
}

// sealGaps notes each place that is opened today whose seal the card doesn't know.
func (p *planner) sealGaps() {
	for i := range p.card.Bolts {
		b := &p.card.Bolts[i]
		if p.turned(b) && sealed(b) && !p.sealKnown(b) && !(p.isHolder(b) && p.firstHolder(b) != b) {
			p.gap("seal", "seal", "purpose."+string(b.Purpose), orWord(b.Place, "unknown.place"))
		}
	}
}

// sealed reports whether a fastener closes an oil's room and gets a new seal: a cap that
// is closed by hand keeps its ring, and a spin-on filter brings its own.
func sealed(b *card.Bolt) bool {
	switch b.Purpose {
	case card.Panel, card.LeaveAlone, card.FilterCanned:
		return false
	case card.FillerCap:
		return !byHand(b)
	}
	return true
}

// isHolder reports whether a fastener is one of those right at a filter or strainer:
// they share its seals.
func (d *day) isHolder(b *card.Bolt) bool { return b.Holds != "" && !d.outer(b) }

// firstHolder is the first of those that hold the same.
func (d *day) firstHolder(b *card.Bolt) *card.Bolt {
	for i := range d.card.Bolts {
		if other := &d.card.Bolts[i]; other.Holds == b.Holds && sealed(other) && d.turned(other) && d.isHolder(other) {
			return other
		}
	}
	return b
}

// sealKnown reports whether the card knows a seal of that place.
func (d *day) sealKnown(b *card.Bolt) bool {
	if b.Seal != nil || !d.isHolder(b) {
		return b.Seal != nil
	}
	for i := range d.card.Bolts {
		if other := &d.card.Bolts[i]; other.Holds == b.Holds && other.Seal != nil && d.isHolder(other) {
			return true
		}
	}
	for i := range d.card.Filters {
		if f := &d.card.Filters[i]; f.ID == b.Holds && len(f.Seals) > 0 {
			return true
		}
	}
	for i := range d.card.Strain {
		if s := &d.card.Strain[i]; s.ID == b.Holds && len(s.Seals) > 0 {
			return true
		}
	}
	return false
}

// levelGaps notes what is not known of how a level is read. A hole has no marks,
// and where nothing is read nothing is missing.
func (p *planner) levelGaps(c *card.Circuit, role string) {
	l := &c.Level
	if !hasGauge(c) {
		return
	}
	switch {
	case l.Device == "" || l.State == "" && l.Stance == "":
		p.gap("level", "level", role, "")
	case l.State == "":
		p.gap("level-state", "level", role, "")
	case l.Stance == "":
		p.gap("stance", "level", role, "")
	}
	if l.Device != card.Hole && !l.Band.Known() {
		p.gap("band", "level", role, "")
	}
	if (readWarm(c) || readHot(c)) && !l.Wait.Known() {
		p.gap("wait", "level", role, "")
	}
}
