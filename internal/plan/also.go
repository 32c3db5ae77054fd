package plan

// also reports whether a strainer or centrifugal filter of a circuit is cleaned
// today. What is not due at each change is offered, and done if the bench says so.
func (p *planner) also(nth int, circuit, id, word, place string) bool {
	if !p.doing(circuit) || nth <= 1 {
		return p.doing(circuit)
	}
	i := NewItem(0, word, "id", id, "place", orWord(place, "not-known"))
	for _, a := range p.bench.Also {
		if a == id {
			i.Count = 1
		}
	}
	p.plan.Also = append(p.plan.Also, i)
	return i.Count > 0
}
