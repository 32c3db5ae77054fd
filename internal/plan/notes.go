package plan

import "tidysump/internal/card"

// notes puts the card's notes at the steps: one that belongs to a moment at each step of
// that moment or, where the job has none, at the last step of an earlier one; any other
// at the first step.
func (p *planner) notes() {
	steps := p.plan.Steps
	if len(steps) == 0 {
		return
	}
	steps[0].Notes = append([]string(nil), p.card.Notes...)
	for i := range p.card.NotesAt {
		n := &p.card.NotesAt[i]
		before, found := 0, false
		for k := range steps {
			s := &steps[k]
			switch {
			case s.at == n.At:
				found = true
				s.Notes = append(s.Notes, n.Text)
			case s.at != "" && momentOf(s.at) < momentOf(n.At):
				before = k
			}
		}
		if !found {
			steps[before].Notes = append(steps[before].Notes, n.Text)
		}
	}
}

// momentOf is the place of a moment in the order of the job.
func momentOf(at card.NotePlace) int {
	n := 0
	for n < len(card.NotePlaces) && card.NotePlaces[n] != at {
		n++
	}
	return n
}
