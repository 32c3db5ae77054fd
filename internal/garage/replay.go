package garage

import (
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
)

// garage is a replay under way.
type garage struct {
	*ledger.Reading
	bikes map[string]*Bike
	order []string
}

// Replay gives the bikes that facts tell of, in the order of their ids, and what is to
// be said of the facts. A bike of which nothing stands isn't among them.
func Replay(in *ledger.Input) ([]Bike, []finding.Finding) {
	g := &garage{Reading: in.Read(), bikes: map[string]*Bike{}}
	var joined, jobs []*ledger.Fact
	for _, f := range g.Standing {
		if f.Book != ledger.BikeBook {
			continue
		}
		if f.Of == "" {
			g.Fault(f, "missing", "/of", finding.Refuse, "name", "of")
			continue
		}
		b := g.bike(f.Of)
		switch f.Kind {
		case Joined:
			joined = append(joined, f)
		case Job:
			if f.What == "" {
				g.Fault(f, "missing", "/what", finding.Refuse, "name", "what")
				continue
			}
			jobs = append(jobs, f)
		default:
			g.take(b, f)
		}
	}
	into, moved := g.join(joined), g.claims(jobs)
	for _, f := range jobs {
		if moved[f.What] == f.Of {
			g.bikes[f.Of].Jobs = append(g.bikes[f.Of].Jobs, f.What)
			delete(moved, f.What)
		}
	}
	slices.Sort(g.order)
	list := make([]Bike, 0, len(g.order))
	for _, id := range g.order {
		b := g.bikes[id]
		if b.Card == "" {
			b.Card = id
		}
		b.Figures = slices.DeleteFunc(b.Figures, func(o card.Own) bool { return o.Value == "" })
		if root := into.root(id); root != id {
			b.Into = root
		}
		list = append(list, *b)
	}
	return list, g.Findings
}

func (g *garage) bike(id string) *Bike {
	b := g.bikes[id]
	if b == nil {
		b = &Bike{ID: id}
		g.bikes[id] = b
		g.order = append(g.order, id)
	}
	return b
}

// take takes in what one bike is told to be by itself.
func (g *garage) take(b *Bike, f *ledger.Fact) {
	switch f.Kind {
	case Follows:
		if g.Told(f, "/value", f.Value, "@told.card") {
			b.Card = f.Value
		}
	case Told:
		g.telling(b, f)
	case Own:
		g.figure(b, f)
	case Aside:
		if !slices.Contains(Reasons, Reason(f.What)) {
			g.Fault(f, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(f.What))
			return
		}
		b.Aside = Reason(f.What)
	case Back:
		b.Aside = ""
	case Read:
		g.odometer(b, f)
	case Picture:
		b.Photos = append(b.Photos, Photo{f.ID, f.What})
	default:
		g.Unknown(f)
	}
}

// telling takes in a word about a bike.
func (g *garage) telling(b *Bike, f *ledger.Fact) {
	now := b.telling(Telling(f.What))
	value := strings.TrimSpace(f.Value)
	switch {
	case now == nil:
		g.Fault(f, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(f.What))
	case value == "" && *now == "" && f == g.New:
		g.Told(f, "/value", value, "@told."+f.What)
	case g.Short(f, "/value", value, ledger.ValueLetters):
		*now = value
	}
}

// figure takes in a figure of the machine. What stands already is kept as it was typed:
// whether it is believed is told where it lies over a card.
func (g *garage) figure(b *Bike, f *ledger.Fact) {
	o := card.Own{What: f.What, Value: strings.TrimSpace(f.Value), Standing: card.Standing(f.Signs[standingSign]), Why: f.Text, System: systemIn(f)}
	switch {
	case !g.Short(f, "/value", o.Value, ledger.ValueLetters):
		return
	case o.Value == "" && b.own(o.What).Value != "":
	case f == g.New:
		for _, found := range o.Check() {
			where := "/value"
			if found.Code == "unknown-word" {
				where = "/what"
			}
			g.Findings = append(g.Findings, finding.Finding{Code: found.Code, Where: f.Where(where), Grade: found.Grade, Values: found.Values})
		}
		if g.Refused() {
			return
		}
	}
	*b.own(o.What) = o
}
