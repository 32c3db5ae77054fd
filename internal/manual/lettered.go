package manual

import "slices"

// findLettered gives the letters and numbers in brackets by which a page calls a part in its picture
// that part: behind "the drain plug (A)" a bare "(A)" is the drain plug.
// One that stands behind two parts is neither's; what counts screws, or the steps of a list, is none.
func (p *page) findLettered() {
	called, open := map[string]mention{}, map[string]bool{}
	named := func(at int) int { // the mention that ends at a token, -1 for none
		if n := p.mentionFrom(at) - 1; n >= 0 && p.mentions[n].to == at {
			return n
		}
		return -1
	}
	var marks []int
	for i := 1; i+2 < len(p.places); i++ {
		name := &p.places[i+1]
		if p.places[i].text != "(" || p.places[i+2].text != ")" || name.taken || len(name.text) > 2 || name.kind == sign || name.kind == word && !capital(name.text) || name.gap != glued || p.places[i+2].gap != glued {
			continue
		}
		marks = append(marks, i)
		n := named(i)
		if n < 0 || p.mentions[n].part == "" && !p.mentions[n].foreign || p.mentions[n].loose != whole {
			continue
		}
		m, o := &p.mentions[n], called[name.fold]
		open[name.fold] = open[name.fold] || o.to > 0 && (o.part != m.part || o.foreign != m.foreign || m.circuit != "" && o.circuit != m.circuit)
		if o.to == 0 {
			called[name.fold] = *m
		}
	}
	for _, i := range marks {
		name, before := &p.places[i+1], &p.places[i-1]
		m, is := called[name.fold]
		if !is || open[name.fold] || m.from > i || before.sentence != p.places[i].sentence {
			continue
		}
		if begin, _ := p.sentenceOf(i); named(i) < 0 && before.kind == word && !before.taken && (before.function || name.kind == word || begin == i-1) { // "tighten (2)"
			m.from, m.to = i, i+3
			p.mentions = slices.Insert(p.mentions, p.mentionFrom(i), m)
		}
	}
}

// tag is what a page calls a part by, and which part that is: "undo plug B below the crankcase",
// and in the table "Plug B .... 26 N·m".
type tag struct {
	name string
	is   mention
}

// settleTags gives bare plugs, covers and screws with a tag the part that the page has called so.
func (p *page) settleTags() {
	var tags []tag
	known := func(name string) *tag {
		for i := range tags {
			if tags[i].name == name {
				return &tags[i]
			}
		}
		return nil
	}
	for n := 0; n < len(p.mentions); n++ {
		m := &p.mentions[n]
		name, end := p.tagBehind(m)
		if name == "" || m.foreign && !m.measure {
			continue
		}
		if t := known(name); t == nil {
			is, ok := p.taggedAs(n)
			if !ok {
				continue
			}
			tags = append(tags, tag{name, is})
		}
		if t := known(name); m.loose != whole || m.part == "drain" && m.circuit == "" {
			m.part, m.circuit, m.gear, m.foreign, m.loose = t.is.part, t.is.circuit, t.is.gear, t.is.foreign, whole
		}
		m.to = end
		if !p.senseAt(end, "join.and") { // "on the plugs A and B"
			continue
		}
		if name, end := p.tagAt(end + 1); name != "" {
			if t := known(name); t != nil {
				also := t.is
				also.from, also.to = end-1, end
				p.mentions = slices.Insert(p.mentions, n+1, also)
				n++
			}
		}
	}
}

// tagBehind gives the tag right behind a bare part or a drain plug, and where it ends; "" for none.
func (p *page) tagBehind(m *mention) (name string, end int) {
	if m.loose == whole && m.part == "" {
		return "", 0
	}
	name, end = p.tagAt(m.to)
	for i := m.from + 1; i < m.to && name == ""; i++ { // "the plug B of the strainer"
		if p.termAt(i) == nil && p.termAt(i-1) != nil {
			name, _ = p.tagAt(i)
			end = m.to
		}
	}
	if name == "" || p.places[end-1].piece != p.places[m.from].piece || p.places[m.from].upper && len(p.places[m.from].text) > 1 {
		return "", 0
	}
	if name[0] <= '9' && (m.loose == aCover || m.loose == aFastener || m.part == "filter-cover") {
		return "", 0 // "cover screws (3)" are so many
	}
	return name, end
}

// tagAt gives the tag that begins at a token: a capital letter, also in brackets, or a number of one
// figure in brackets.
func (p *page) tagAt(at int) (name string, end int) {
	t := p.at(at)
	if t.text == "(" && t.gap != wide && p.at(at+2).text == ")" {
		t, end = p.at(at+1), at+3
	} else if end = at + 1; t.kind == number || t.gap != blank || p.at(end).kind == number && p.at(end).gap != wide || p.at(end).gap == glued && p.at(end).kind == word {
		return "", 0
	}
	if len(t.text) != 1 || t.taken || t.kind == sign || t.kind == word && (t.text[0] < 'A' || t.text[0] > 'Z') {
		return "", 0
	}
	return t.text, end
}

// taggedAs gives the part that a page calls by a tag where it tells it first: what it is by its own
// words, else by what is named behind it in its sentence.
func (p *page) taggedAs(n int) (m mention, ok bool) {
	m = p.mentions[n]
	if m.loose == whole {
		return m, m.part != ""
	}
	_, to := p.sentenceOf(m.from)
	loose := m.loose
	m.loose = whole
	for k := n + 1; k < len(p.mentions) && p.mentions[k].from < to; k++ {
		o := &p.mentions[k]
		switch {
		case o.loose == aCover && loose == aFastener:
		case o.loose != whole:
			return m, false
		case o.foreign && !o.measure:
			m.foreign = true
			return m, true
		case o.part == "strainer" && loose != aFastener:
			m.part, m.circuit = "strainer", "engine"
			return m, true
		case (o.part == "filter" || o.part == "filter-cover") && loose != aPlug:
			m.part, m.circuit = "filter-cover", "engine"
			return m, true
		case o.tank && o.part == "" && loose != aCover:
			m.part, m.circuit = "tank-drain", "engine"
			return m, true
		case o.part == "" && (o.circuit != "" || o.gear) && !p.saysOil(o) && loose != aCover:
			m.part, m.circuit, m.gear = "drain", o.circuit, o.gear
			return m, true
		case o.part != "":
			return m, false
		}
	}
	return m, false
}
