package job

import (
	"tidysump/internal/card"
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
	g := Gap{Word: "gap." + word, Lookup: s.Lookup, Values: map[string]string{"of": "@" + of}}
	for i := 0; i+1 < len(values); i += 2 {
		g.Values[values[i]] = values[i+1]
	}
	p.plan.Gaps = append(p.plan.Gaps, g)
}
