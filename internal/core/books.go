package core

import (
	"tidysump/internal/books"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// oldOil says what is in the cans of old oil, and what was handed in.
func oldOil(i *books.OldOilInput, _ []finding.Finding) (*books.OldOilAnswer, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	a := books.OldOil(i)
	if finding.Refused(a.Findings) {
		return nil, a.Findings
	}
	return a, nil
}

// wrenches says what the checks of the torque wrenches mean.
func wrenches(i *books.WrenchInput, _ []finding.Finding) (*books.WrenchBook, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	a := books.Wrenches(i)
	if finding.Refused(a.Findings) {
		return nil, a.Findings
	}
	return a, nil
}

// shelfInput is the book of the shelf, and jobs that would take from it.
type shelfInput struct {
	books.ShelfInput
	wants []wantInput
}

func (i *shelfInput) Members(m *wire.Members) {
	i.ShelfInput.Members(m)
	wire.List(m, "wants", &i.wants)
}

// wantInput is a job by what it is planned from, with what was poured.
type wantInput struct {
	planInput
	id, name string
	poured   []pouredOil

	unread bool
}

func (w *wantInput) Members(m *wire.Members) {
	m.String("id", &w.id, wire.Required)
	m.String("name", &w.name)
	w.planInput.Members(m)
	wire.List(m, "poured", &w.poured)
}

// Unread notes that the job couldn't be read: it has an empty list.
func (w *wantInput) Unread([]finding.Finding) { w.unread = true }

// pouredOil is what a job's balance says was poured of an oil.
type pouredOil struct {
	circuit string
	in      float64
}

func (p *pouredOil) Members(m *wire.Members) {
	m.String("circuit", &p.circuit, wire.Required)
	m.Float("in", &p.in)
}

// shelf says what is on the shelf and what of it jobs would use. A job that can't be
// planned has an empty list.
func shelf(i *shelfInput, _ []finding.Finding) (*books.ShelfAnswer, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	wants := make([]books.Want, len(i.wants))
	for n := range i.wants {
		w := &i.wants[n]
		wants[n] = books.Want{ID: w.id, Name: w.name, Poured: map[string]float64{}}
		for _, p := range w.poured {
			wants[n].Poured[p.circuit] = p.in
		}
		if !w.unread {
			wants[n].Plan, _ = makePlan(&w.planInput, nil)
		}
	}
	a := books.Shelve(&i.ShelfInput, wants)
	if finding.Refused(a.Findings) {
		return nil, a.Findings
	}
	return a, nil
}
