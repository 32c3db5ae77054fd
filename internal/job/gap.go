package job

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
	m.String("word", &g.Word)
	m.TextMap("values", &g.Values)
	m.String("lookup", &g.Lookup)
}

// gap notes that a figure is not known. of is the word id of what it belongs
// to; values are further placeholders.
func (p *planner) gap(s Shown, word, of string, values ...string) {
	if s.Standing != card.Unknown {
		return
	}
	p.plan.Gaps = append(p.plan.Gaps, Gap{Word: "gap." + word, Lookup: s.Lookup, Values: finding.Values(append(values, "of", "@"+of)...)})
}

// boltGaps notes what is not known of a fastener that is turned with a tool.
func (p *planner) boltGaps(b *card.Bolt, s BoltSheet) {
	if !b.Turn.Known() {
		p.gap(s.Torque, "torque", s.Purpose, "place", b.Place)
	}
	if b.Drive != "strap" {
		p.gap(s.Size, "size", s.Purpose, "place", b.Place)
	}
}

// levelGaps notes what is not known of how a level is read. A hole has no marks,
// and where nothing is read nothing is missing.
func (p *planner) levelGaps(c *card.Circuit, role string) {
	l := &c.Level
	if l.Device == "measured" {
		return
	}
	if l.Device == "" || l.State == "" || l.Stance == "" {
		p.gap(p.show("band", nil, "level"), "level", role)
	}
	if l.Device != "hole" {
		p.gap(p.show("band", l.Band, "level"), "band", role)
	}
	if l.State == "warm" || l.State == "hot" {
		p.gap(p.show("wait", l.Wait, "level"), "wait", role)
	}
}
