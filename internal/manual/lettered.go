package manual

// findLettered reads the letter or the number in brackets by which a page has called a part, where
// it stands for the part: "the washer of (A)", behind "Undo the drain plug (A)". What counts
// screws, or the steps of a list, stands behind no small word.
func (p *page) findLettered() {
	called := map[string]mention{}
	var found []mention
	n := 0
	for i := 1; i+2 < len(p.places); i++ {
		for n < len(p.mentions) && p.mentions[n].to < i {
			n++
		}
		name := &p.places[i+1]
		if p.places[i].text != "(" || p.places[i+2].text != ")" || name.taken || len(name.text) > 2 || name.kind == sign || name.gap != glued || p.places[i+2].gap != glued {
			continue
		}
		before := &p.places[i-1]
		switch m, is := called[name.fold]; {
		case n < len(p.mentions) && p.mentions[n].to == i:
			if m := p.mentions[n]; m.part != "" || m.loose != whole || m.foreign {
				called[name.fold] = m
			}
		case is && m.part != "" && before.kind == word && before.function && before.sentence == p.places[i].sentence && !before.taken:
			m.from, m.to = i, i+3
			found = append(found, m)
		}
	}
	if len(found) > 0 {
		p.mentions = append(p.mentions, found...)
		p.mentions = inOrder(p.mentions, func(m *mention) int { return m.from })
	}
}
