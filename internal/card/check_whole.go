package card

import (
	"strconv"

	"tidysump/internal/finding"
)

// whole doubts what a card leaves out that the job can't do without: a hole for
// each oil to run out of, and what each filter and strainer is held by.
func (c *checker) whole(k *Card) {
	drains, held := map[string]bool{}, map[string]bool{}
	for i := range k.Bolts {
		b := &k.Bolts[i]
		held[b.Of] = true
		drains[b.Circuit] = drains[b.Circuit] || b.Drains
	}
	for i := range k.Circuits {
		if !drains[k.Circuits[i].ID] {
			c.add(finding.Doubt, "no-drain", "/circuits/"+strconv.Itoa(i))
		}
	}
	for i := range k.Filters {
		c.held("/filters/", i, held[k.Filters[i].ID])
	}
	for i := range k.Strain {
		c.held("/strainers/", i, held[k.Strain[i].ID])
	}
}

func (c *checker) held(at string, i int, held bool) {
	if !held {
		c.add(finding.Doubt, "nothing-holds", at+strconv.Itoa(i))
	}
}
