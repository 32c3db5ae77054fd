package card

import (
	"strconv"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
)

// whole doubts what a card leaves out that the job can't do without: a hole for
// each oil to run out of, and what each filter and strainer is held by; and what it says
// that can't be true of the bike as a whole.
func (c *checker) whole(k *Card) {
	for i := range k.Circuits {
		c.needs(k, "no-drain", "/circuits/", i, k.Circuits[i].ID)
	}
	for i := range k.Filters {
		c.needs(k, "nothing-holds", "/filters/", i, k.Filters[i].ID)
		c.fits(k, i)
	}
	if k.Engine.ReturnSeen && !k.Layout.InTank() {
		c.add(finding.Doubt, "return-without-tank", "/engine/returnSeen")
	}
	for i := range k.Strain {
		c.needs(k, "nothing-holds", "/strainers/", i, k.Strain[i].ID)
	}
}

// fits doubts a filter whose thread is another than that of the can that it is, or no
// smaller than its ring, which seals round it.
func (c *checker) fits(k *Card, i int) {
	f := &k.Filters[i]
	at := "/filters/" + strconv.Itoa(i)
	is, ok := bolt.ParseThread(f.Thread)
	if ring, known := f.Ring.Amount(); ok && known && ring.Base <= is.Diameter {
		c.add(finding.Doubt, "filter-ring-small", at+"/ring", "value", ring.Print(ring.Unit), "thread", is.Name)
	}
	for n := range k.Bolts {
		b := &k.Bolts[n]
		of, known := bolt.ParseThread(b.Thread)
		if ok && known && b.Purpose == FilterCanned && b.Holds == f.ID && (is.Diameter != of.Diameter || is.Pitch != of.Pitch) {
			c.add(finding.Doubt, "filter-thread-other", at+"/thread", "thread", is.Name, "other", of.Name)
		}
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
