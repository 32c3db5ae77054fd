package card

import (
	"strconv"

	"tidysump/internal/finding"
)

// whole doubts what a card leaves out that the job can't do without: a hole for
// each oil to run out of, and what each filter and strainer is held by.
func (c *checker) whole(k *Card) {
	for i := range k.Circuits {
		c.needs("no-drain", "/circuits/", i, k.Bolts, func(b *Bolt) bool { return b.Drains && b.Circuit == k.Circuits[i].ID })
	}
	for i := range k.Filters {
		c.needs("nothing-holds", "/filters/", i, k.Bolts, func(b *Bolt) bool { return b.Of == k.Filters[i].ID })
	}
	for i := range k.Strain {
		c.needs("nothing-holds", "/strainers/", i, k.Bolts, func(b *Bolt) bool { return b.Of == k.Strain[i].ID })
	}
}

// needs doubts that no fastener is as wanted.
func (c *checker) needs(code, at string, i int, bolts []Bolt, want func(*Bolt) bool) {
	for n := range bolts {
		if want(&bolts[n]) {
			return
		}
	}
	c.add(finding.Doubt, code, at+strconv.Itoa(i))
}
