package plan

import "tidysump/internal/card"

// notes puts the card's notes at the steps: one that belongs to a moment at each step of
// that moment or, where the job has none, at the last step before it; any other at the
// first step. A step that goes on with what the one before it began doesn't say it again.
func (p *planner) notes() {
	steps := p.plan.Steps
	if len(steps) == 0 {
		return
	}
	steps[0].Notes = append([]string(nil), p.card.Notes...)
	for i := range p.card.NotesAt {
		n := &p.card.NotesAt[i]
		before, found, goesOn := 0, false, false
		for k := range steps {
			s := &steps[k]
			is := p.isAt(s, n.At)
			goesOn = is && k > 0 && (goesOn || s.Word != steps[k-1].Word) && p.isAt(&steps[k-1], n.At)
			switch {
			case goesOn:
			case is:
				found = true
				s.Notes = append(s.Notes, n.Text)
			case s.at != "" && momentOf(s.at) <= momentOf(n.At):
				before = k
			}
		}
		if !found {
			steps[before].Notes = append(steps[before].Notes, n.Text)
		}
	}
}

// isAt reports whether a step is of a moment. What the oil runs out of is opened and
// closed by steps that may also be of a strainer or filter.
func (p *planner) isAt(s *Step, at card.NotePlace) bool {
	ids := s.Opens
	switch at {
	case card.AtClose:
		ids = s.Closes
	case card.AtDrain:
	default:
		return s.at == at
	}
	for _, id := range ids {
		if b := p.card.Bolt(id); b != nil && p.opens(b) {
			return true
		}
	}
	return false
}

// momentOf is the place of a moment in the order of the job.
func momentOf(at card.NotePlace) int {
	n := 0
	for n < len(card.NotePlaces) && card.NotePlaces[n] != at {
		n++
	}
	return n
}
