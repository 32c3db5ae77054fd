package job

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Choice is something that is cleaned at some changes only, and may be today.
type Choice struct {
	ID     string
	Word   string // word id
	Values map[string]string
	Today  bool
}

// Members names the members of a choice.
func (c *Choice) Members(m *wire.Members) {
	m.String("id", &c.ID)
	m.String("word", &c.Word)
	m.TextMap("values", &c.Values)
	m.Bool("today", &c.Today)
}

// alsos lists what the circuits of the day offer to be cleaned as well.
func (p *planner) alsos() {
	for i := range p.card.Filters {
		if f := &p.card.Filters[i]; rareFilter(f) && p.doing(f.Circuit) {
			p.also(f.ID, "also.centrifugal", f.Place)
		}
	}
	for i := range p.card.Strain {
		if s := &p.card.Strain[i]; rareStrainer(p.card, s) && p.doing(s.Circuit) {
			p.also(s.ID, "also.strainer", s.Place)
		}
	}
}

func (p *planner) also(id, word, place string) {
	p.plan.Also = append(p.plan.Also, Choice{id, word, finding.Values("place", orWord(place, "not-known")), p.bench.also(id)})
}

func (b *Bench) also(id string) bool {
	for _, a := range b.Also {
		if a == id {
			return true
		}
	}
	return false
}

// rare reports whether that id is of something not cleaned at each change.
func rare(c *card.Card, id string) bool {
	for i := range c.Filters {
		if f := &c.Filters[i]; f.ID == id {
			return rareFilter(f)
		}
	}
	for i := range c.Strain {
		if s := &c.Strain[i]; s.ID == id {
			return rareStrainer(c, s)
		}
	}
	return false
}

// A paper filter is not rare: whether it is changed is the bench's to say.
func rareFilter(f *card.Filter) bool { return f.Kind == card.Centrifugal && f.EveryNth > 1 }

// A strainer that sits in a drain comes out with it, whatever the card says.
func rareStrainer(c *card.Card, s *card.Strainer) bool {
	for i := range c.Bolts {
		if c.Bolts[i].Of == s.ID && c.Bolts[i].Drains {
			return false
		}
	}
	return s.EveryNth > 1
}
