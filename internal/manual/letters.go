package manual

import "slices"

// bindLetters gives the letters and numbers by which a page calls a part in its picture that part:
// behind "the drain screw (A)" a bare "(A)" is the drain screw, and so is "the screw (A)". One that
// stands behind two parts is neither's.
func (p *page) bindLetters() {
	bound := map[string]mention{}
	named := func(at int) int { // the mention that ends at a token, -1 for none
		if n := p.mentionFrom(at) - 1; n >= 0 && p.mentions[n].to == at {
			return n
		}
		return -1
	}
	var marks []int
	for i := 1; i+1 < len(p.places); i++ {
		t := &p.places[i]
		if p.places[i-1].text != "(" || p.places[i+1].text != ")" || len(t.text) != 1 || t.taken || t.kind == sign || t.kind == word && !capital(t.text) {
			continue
		}
		marks = append(marks, i)
		if n := named(i - 1); n >= 0 && p.mentions[n].part != "" && p.mentions[n].loose == whole {
			m := p.mentions[n]
			if o, twice := bound[t.fold]; twice && (o.part != m.part || o.circuit != m.circuit && m.circuit != "") {
				m.part = ""
			} else if twice {
				continue
			}
			bound[t.fold] = m
		}
	}
	if len(bound) == 0 {
		return
	}
	for _, i := range marks {
		m, is := bound[p.places[i].fold]
		if from, _ := p.pieceTokens(p.places[i].piece); !is || m.part == "" || from == i-1 {
			continue
		}
		switch n := named(i - 1); {
		case n < 0:
			m.from, m.to = i-1, i+2
			p.mentions = slices.Insert(p.mentions, p.mentionFrom(i), m)
		case p.mentions[n].loose != whole:
			m.from, m.to = p.mentions[n].from, p.mentions[n].to
			p.mentions[n] = m
		}
	}
}
