package job

import "tidysump/internal/card"

// subject is what a step is about: one of these, or nothing.
type subject struct {
	circuit *card.Circuit
	bolt    *card.Bolt
	filter  *card.Filter
	strain  *card.Strainer
}

// id names the subject within the card; "" for nothing.
func (s subject) id() string {
	switch {
	case s.circuit != nil:
		return s.circuit.ID
	case s.bolt != nil:
		return s.bolt.ID
	case s.filter != nil:
		return s.filter.ID
	case s.strain != nil:
		return s.strain.ID
	}
	return ""
}

// sequence puts the steps of the day together, stage by stage.
func (p *planner) sequence() {
	for _, s := range []struct {
		stage Stage
		make  func()
	}{{Ready, p.ready}, {Warm, p.warm}, {Drain, p.drain}, {Look, p.look}, {Close, p.close}, {Fill, p.fill}, {Settle, p.settle}} {
		p.stage = s.stage
		s.make()
	}
}

// each puts a step for every circuit of the day for which it holds.
func (p *planner) each(word string, holds func(*card.Circuit) bool) {
	for _, c := range p.circuits {
		if holds(c) {
			p.put(word, subject{circuit: c})
		}
	}
}

func always(*card.Circuit) bool     { return true }
func readHot(c *card.Circuit) bool  { return c.Level.State == "hot" }
func readWarm(c *card.Circuit) bool { return c.Level.State == "warm" }

// readStanding: read cold, or the card does not say how.
func readStanding(c *card.Circuit) bool { return !readWarm(c) && !readHot(c) }
func isEngineOil(c *card.Circuit) bool  { return c.Role == card.EngineOil }
func (p *planner) doesEngineOil() bool  { return p.any(isEngineOil) }
func (p *planner) anythingIsHot() bool  { return p.any(readHot) }
func (p *planner) plain(words ...string) {
	for _, w := range words {
		p.put(w, subject{})
	}
}

func (p *planner) any(holds func(*card.Circuit) bool) bool {
	for _, c := range p.circuits {
		if holds(c) {
			return true
		}
	}
	return false
}

func (p *planner) ready() {
	p.plain("identify", "lay-out")
	p.each("check-oil", always)
	p.plain("stand", "free-filler", "name-plugs", "guard")
}

func (p *planner) warm() {
	p.each("level-found", readStanding)
	p.plain("warm-up")
	p.each("level-found", readWarm)
	p.each("level-found-hot", readHot)
	p.plain("key-out")
}

func (p *planner) drain() {
	if _, known := p.tray(); known {
		p.plain("tray")
	} else {
		p.plain("tray-unknown")
	}
	for _, b := range p.openings() {
		p.open(b)
	}
	p.plain("run-out")
	for _, s := range p.strain {
		for _, b := range p.holding(s.ID) {
			if !b.Drains {
				p.open(b)
			}
		}
		p.put("strainer-out", subject{strain: s})
	}
	for _, f := range p.filters {
		p.put("filter-off-"+f.Kind, subject{filter: f})
		p.put("old-ring", subject{filter: f})
	}
}

func (p *planner) open(b *card.Bolt) {
	word := "open-drain-plug"
	if b.Purpose == card.StrainerCap {
		word = "open-strainer-cap"
	}
	p.put(word, subject{bolt: b})
}

func (p *planner) look() {
	p.plain("look-oil")
	for _, b := range p.openings() {
		if b.Magnet {
			p.put("look-magnet", subject{bolt: b})
		}
	}
	for _, f := range p.filters {
		p.put("look-filter", subject{filter: f})
	}
	p.each("measure", always)
	p.plain("decide")
}

func (p *planner) close() {
	p.plain("clean-seats")
	for _, s := range p.strain {
		p.put("strainer-in", subject{strain: s})
		p.tighten(p.holding(s.ID))
	}
	for _, b := range p.openings() {
		if !p.holds(b) {
			p.tighten([]*card.Bolt{b})
		}
	}
	for _, f := range p.filters {
		p.put("prepare-"+f.Kind, subject{filter: f})
		p.tighten(p.holding(f.ID))
	}
	p.plain("dry-base", "count")
}

func (p *planner) tighten(list []*card.Bolt) {
	for _, b := range list {
		switch {
		case b.Purpose == card.FilterCanned:
			p.put("filter-on", subject{bolt: b})
		case b.Number() > 1:
			p.put("tighten-several", subject{bolt: b})
		default:
			p.put("tighten", subject{bolt: b})
		}
	}
}

func (p *planner) fill() {
	for _, c := range p.circuits {
		if isEngineOil(c) {
			p.put(p.pourWord(c), subject{circuit: c})
			continue
		}
		// Gear and chain cases are filled and read before the engine runs:
		// through the level cover, where there is one.
		p.withCoverOff(c, p.pourWord(c), "top-up")
	}
	p.plain("caps-on")
	if p.doesEngineOil() {
		p.plain("first-start")
	}
	for _, c := range p.circuits {
		if isEngineOil(c) {
			p.withCoverOff(c, "top-up")
		}
	}
}

// withCoverOff puts steps of a circuit between taking its level cover or level
// screw off and putting it back on.
func (p *planner) withCoverOff(c *card.Circuit, words ...string) {
	covers := p.boltsWhere(func(b *card.Bolt) bool {
		return b.Purpose == card.LevelScrew && b.Circuit == c.ID && !p.opened(b)
	})
	for _, b := range covers {
		p.put("level-cover-off", subject{bolt: b})
	}
	for _, w := range words {
		p.put(w, subject{circuit: c})
	}
	for _, b := range covers {
		p.put("level-cover-on", subject{bolt: b})
	}
}

// pourWord picks the step of a circuit's first pour. Gear and chain cases have
// no pump circuit or filter that fills up later: all their oil goes in at once.
func (p *planner) pourWord(c *card.Circuit) string {
	if _, known := p.volume(c).Amount(); !known {
		return "pour-unknown"
	}
	if isEngineOil(c) {
		return "pour"
	}
	return "pour-all"
}

func (p *planner) settle() { p.plain("leak-look", "ride", "waste", "write-down") }
