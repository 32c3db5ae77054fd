package card

import (
	"strconv"

	"tidysump/internal/finding"
)

// whole doubts what a card leaves out that the job can't do without: a hole for
// each oil to run out of, and what each filter and strainer is held by.
func (c *checker) whole(k *Card) {
	for i := range k.Circuits {
		c.needs(k, "no-drain", "/circuits/", i, k.Circuits[i].ID)
	}
	for i := range k.Filters {
		c.needs(k, "nothing-holds", "/filters/", i, k.Filters[i].ID)
	}
	for i := range k.Strain {
		c.needs(k, "nothing-holds", "/strainers/", i, k.Strain[i].ID)
	}
}

// needs doubts that no fastener drains a circuit, or holds a filter or strainer.
func (c *checker) needs(k *Card, code, at string, i int, id string) {
	for n := range k.Bolts {
		if b := &k.Bolts[n]; b.Holds == id || b.Drains && b.Circuit == id {
			return
		}
	}
	c.add(finding.Doubt, code, at+strconv.Itoa(i))
}
