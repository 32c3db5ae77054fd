package manual

// settleShared takes the gears of an engine that lie in its own oil for the engine: "oil of
// engine, gearbox and clutch together"; and a primary drive that shares the gearbox's for that.
func (p *page) settleShared() {
	for n := range p.terms {
		t := &p.terms[n]
		if !t.has("shared") {
			continue
		}
		from, to := p.sentenceOf(t.from)
		engine, gearbox := false, false
		for k := p.mentionFrom(from); k < len(p.mentions) && p.mentions[k].from < to; k++ {
			m := &p.mentions[k]
			engine = engine || m.circuit == "engine" && m.part == "" && !m.foreign
			gearbox = gearbox || m.circuit == "gearbox" && m.part == "" && !m.foreign
		}
		for k := p.mentionFrom(from); gearbox && !engine && k < len(p.mentions) && p.mentions[k].from < to; k++ {
			if m := &p.mentions[k]; m.part == "" && m.circuit == "primary" {
				m.circuit = "gearbox" // "gearbox and primary drive: one oil"
			}
		}
		if !engine {
			p.sharedGears(from, to)
		}
		for k := p.mentionFrom(from); engine && k < len(p.mentions) && p.mentions[k].from < to; k++ {
			if m := &p.mentions[k]; m.part == "" && (m.gear || m.circuit == "gearbox" || m.circuit == "primary") {
				m.circuit, m.gear, m.foreign = "engine", false, false
			}
		}
	}
}

// sharedGears takes a thing of another job that shares an oil with the gears for no such thing: "the
// gearbox and the clutch share their oil".
func (p *page) sharedGears(from, to int) {
	for k := p.mentionFrom(from); k+1 < len(p.mentions) && p.mentions[k+1].from < to; k++ {
		a, b := &p.mentions[k], &p.mentions[k+1]
		if a.foreign {
			a, b = b, a
		}
		if own := a.gear || a.circuit == "gearbox" || a.circuit == "primary"; own && a.part == "" && !a.foreign && b.foreign && !p.figureIn(min(a.to, b.to), max(a.from, b.from)) && !p.fluid(b) {
			b.foreign, b.circuit, b.gear = false, a.circuit, a.gear
		}
	}
}

// fluid reports whether a mention of another job is of a fluid.
func (p *page) fluid(m *mention) bool { return p.about(m.from, m.to, "other.fluid") }
