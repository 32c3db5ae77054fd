package card

import (
	"slices"
	"strconv"

	"tidysump/internal/finding"
)

// parts are the fasteners, filters and strainers of a card, as far as they stand behind
// something: their ids, their places in the card, and by the same numbers what they are
// said to be behind and what they hold.
type parts struct{ id, at, behind, holds []string }

func (p *parts) take(list string, i int, id, behind, holds string) {
	p.id = append(p.id, id)
	p.at = append(p.at, list+strconv.Itoa(i)+"/behind")
	p.behind = append(p.behind, behind)
	p.holds = append(p.holds, holds)
}

// of gives the number of the part of that id, -1 when there is none.
func (p *parts) of(id string) int {
	if id == "" {
		return -1
	}
	return slices.Index(p.id, id)
}

// behind refuses what stands behind nothing on the card, behind itself, or in a circle,
// in which nothing could come off first; and doubts what stands behind something that
// nobody is to touch.
func (c *checker) behind(k *Card) {
	p := &parts{}
	for i := range k.Bolts {
		b := &k.Bolts[i]
		p.take("/bolts/", i, b.ID, b.Behind, b.Holds)
	}
	for i := range k.Filters {
		f := &k.Filters[i]
		p.take("/filters/", i, f.ID, f.Behind, "")
	}
	for i := range k.Strain {
		s := &k.Strain[i]
		p.take("/strainers/", i, s.ID, s.Behind, "")
	}
	sound := true
	for i, id := range p.behind {
		switch {
		case id == "":
		case id == p.id[i]:
			c.add(finding.Refuse, "behind-itself", p.at[i])
			sound = false
		case p.of(id) < 0:
			c.add(finding.Refuse, "unknown-id", p.at[i], "text", finding.Clip(id))
			sound = false
		default:
			if b := k.Bolt(id); b != nil && b.Purpose == LeaveAlone {
				c.add(finding.Doubt, "behind-left-alone", p.at[i])
			}
		}
	}
	if !sound {
		return
	}
	if at := p.circle(); at >= 0 {
		c.add(finding.Refuse, "behind-circle", p.at[at])
	}
}

// front is that one part, by its number, comes off before another. That is so because of
// what the card says of the part `said`, -1 where one holds the other.
type front struct{ of, first, said int }

// fronts lists what comes off before what: what a part is behind; before a filter or
// strainer the fasteners that hold it; and before these what it is behind itself, but
// for another of them, which goes without saying.
func (p *parts) fronts() (list []front) {
	for i := range p.id {
		if first := p.of(p.behind[i]); first >= 0 {
			list = append(list, front{i, first, i})
		}
		held := p.of(p.holds[i])
		if held < 0 {
			continue
		}
		list = append(list, front{held, i, -1})
		if first := p.of(p.behind[held]); first >= 0 && p.holds[first] != p.id[held] {
			list = append(list, front{i, first, held})
		}
	}
	return list
}

// circle gives a part that is said to be behind another of its circle, -1 when there is
// none: what is behind nothing comes off, again and again; what stays is in a circle or
// behind one.
func (p *parts) circle() int {
	fronts := p.fronts()
	for range p.id {
		blocked := make([]bool, len(p.id))
		for _, f := range fronts {
			blocked[f.of] = true
		}
		left := fronts[:0]
		for _, f := range fronts {
			if blocked[f.first] {
				left = append(left, f)
			}
		}
		fronts = left
	}
	if len(fronts) == 0 {
		return -1
	}
	// Followed long enough, what stays leads into the circle; once round that, something
	// is said.
	at, said := fronts[0].of, -1
	for range 2 * len(p.id) {
		for _, f := range fronts {
			if f.of == at {
				at = f.first
				if f.said >= 0 {
					said = f.said
				}
				break
			}
		}
	}
	return said
}
