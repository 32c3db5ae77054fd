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
		for k := p.mentionFrom(from); engine && k < len(p.mentions) && p.mentions[k].from < to; k++ {
			if m := &p.mentions[k]; m.part == "" && (m.gear || m.circuit == "gearbox" || m.circuit == "primary") {
				m.circuit, m.gear, m.foreign = "engine", false, false
			}
		}
	}
}
