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
}

// Members names the gap's members.
func (g *Gap) Members(m *wire.Members) {
	m.String("word", &g.Word, wire.Required)
	m.TextMap("values", &g.Values)
	m.String("lookup", &g.Lookup)
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

// boltGaps notes what is not known of a fastener that is turned with a tool.
func (p *planner) boltGaps(b *card.Bolt, purpose string) {
	if !b.Torque.Known() && measureOf(b) != ByTurn {
		p.gap("torque", "torque", purpose, orWord(b.Place, "not-known"))
	}
	if b.Drive != card.Strap && !b.Size.Known() {
		p.gap("size", "size", purpose, orWord(b.Place, "not-known"))
	}
}

// levelGaps notes what is not known of how a level is read. A hole has no marks,
// and where nothing is read nothing is missing.
func (p *planner) levelGaps(c *card.Circuit, role string) {
	l := &c.Level
	if !hasGauge(c) {
		return
	}
	if l.Device == "" || l.State == "" || l.Stance == "" {
		p.gap("level", "level", role, "")
	}
	if l.Device != card.Hole && !l.Band.Known() {
		p.gap("band", "level", role, "")
	}
	if (readWarm(c) || readHot(c)) && !l.Wait.Known() {
		p.gap("wait", "level", role, "")
	}
}
