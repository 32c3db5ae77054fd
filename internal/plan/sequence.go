package plan

import "tidysump/internal/card"

// subject is what a step is about: one of these, or nothing.
type subject struct {
	circuit *card.Circuit
	bolt    *card.Bolt
	filter  *card.Filter
	strain  *card.Strainer
}

// about is what kind of thing a step is about.
type about byte

const (
	nothing about = iota // the bike, or the day's oils together
	aCircuit
	aBolt
	aFilter
	aStrainer
)

func (p *planner) onCircuit(word string, c *card.Circuit)   { p.put(word, subject{circuit: c}) }
func (p *planner) onBolt(word string, b *card.Bolt)         { p.put(word, subject{bolt: b}) }
func (p *planner) onFilter(word string, f *card.Filter)     { p.put(word, subject{filter: f}) }
func (p *planner) onStrainer(word string, s *card.Strainer) { p.put(word, subject{strain: s}) }

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
			p.onCircuit(word, c)
		}
	}
}

func always(*card.Circuit) bool     { return true }
func hasGauge(c *card.Circuit) bool { return c.Level.Device != card.Gaugeless }
func readHot(c *card.Circuit) bool  { return c.Level.State == card.Hot }
func readWarm(c *card.Circuit) bool { return c.Level.State == card.Warm }

// readStanding: read cold, or the card does not say how.
func readStanding(c *card.Circuit) bool { return !readWarm(c) && !readHot(c) }

// readAfterRun: the engine oil, and any other that the card reads warm or hot.
func readAfterRun(c *card.Circuit) bool { return isEngineOil(c) || !readStanding(c) }
func isEngineOil(c *card.Circuit) bool  { return c.Role == card.EngineOil }
func (d *day) doesEngineOil() bool      { return d.any(isEngineOil) }
func (p *planner) plain(words ...string) {
	for _, w := range words {
		p.put(w, subject{})
	}
}

func (d *day) any(holds func(*card.Circuit) bool) bool {
	for _, c := range d.circuits {
		if holds(c) {
			return true
		}
	}
	return false
}

func (p *planner) ready() {
	p.plain("identify", "lay-out")
	p.each("check-oil", always)
	p.plain("stand", "look-round")
	p.panels("panel-off")
	p.plain("wash", "free-filler", "name-plugs", "guard")
}

// panels puts a step for each fastener of a panel that is in the way.
func (p *planner) panels(word string) {
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Purpose == card.Panel && p.turned(b) {
			p.onBolt(word, b)
		}
	}
}

func (p *planner) warm() {
	p.found("level-found", readStanding)
	p.plain("warm-up")
	p.found("level-found", readWarm)
	p.found("level-found-hot", readHot)
	p.plain("key-out")
}

// found puts the reading of the levels before anything is drained. A level cover
// goes back on at once: the engine runs and the bike is moved before it comes
// off for good.
func (p *planner) found(word string, holds func(*card.Circuit) bool) {
	for _, c := range p.circuits {
		if !holds(c) || !hasGauge(c) {
			continue
		}
		covers := p.levelCovers(c)
		for _, b := range covers {
			p.onBolt("peek-off", b)
		}
		p.onCircuit(word, c)
		for _, b := range covers {
			p.onBolt("peek-on", b)
		}
	}
}

func (p *planner) fill() {
	for _, c := range p.circuits {
		switch {
		case !readAfterRun(c):
			// Gear and chain cases are filled and read before the engine
			// runs: through the level cover, where there is one.
			p.withCoverOff(c, append([]string{p.pourWord(c)}, topUp(c)...)...)
		case p.hasFillerCap(c.ID) || len(p.levelCovers(c)) == 0:
			p.onCircuit(p.pourWord(c), c)
		default:
			p.withCoverOff(c, p.pourWord(c))
		}
	}
	p.fillersOn()
	if p.doesEngineOil() {
		p.plain("first-start")
	}
	for _, c := range p.circuits {
		if readAfterRun(c) && hasGauge(c) {
			p.withCoverOff(c, topUp(c)...)
		}
	}
	if p.doesEngineOil() {
		p.plain("second-start")
	}
}

// topUp is the step that fills by the level, where there is one to be read.
func topUp(c *card.Circuit) []string {
	if !hasGauge(c) {
		return nil
	}
	return []string{"top-up"}
}

// fillersOn closes the filler caps: by hand together, by tool one by one.
func (p *planner) fillersOn() {
	caps := p.boltsWhere(p.isFiller)
	hand := p.doesEngineOil() && len(caps) == 0 // poured through what the card doesn't name
	for _, b := range caps {
		hand = hand || byHand(b)
	}
	if hand {
		p.plain("caps-on")
	}
	for _, b := range caps {
		if !byHand(b) {
			p.onBolt("filler-on", b)
		}
	}
}

// levelCovers lists the level covers and screws of a circuit that are opened for
// nothing else.
func (d *day) levelCovers(c *card.Circuit) []*card.Bolt {
	return d.boltsWhere(func(b *card.Bolt) bool {
		return b.Purpose == card.LevelScrew && b.Circuit == c.ID && !d.opened(b)
	})
}

// withCoverOff puts steps of a circuit between taking its level cover or level
// screw off and putting it back on.
func (p *planner) withCoverOff(c *card.Circuit, words ...string) {
	covers, word := p.levelCovers(c), "level-plug"
	for _, b := range covers {
		if b.Number() > 1 {
			word = "level-cover"
		}
		p.onBolt(word+"-off", b)
	}
	for _, w := range words {
		p.onCircuit(w, c)
	}
	for _, b := range covers {
		p.onBolt(word+"-on", b)
	}
}

// pourWord picks the step of a circuit's first pour. Gear and chain cases have
// no pump circuit or filter that fills up later: all their oil goes in at once,
// as it does where no gauge could show how much is missing.
func (d *day) pourWord(c *card.Circuit) string {
	if _, known := d.volume(c).Amount(); !known {
		return "pour-unknown"
	}
	if isEngineOil(c) && hasGauge(c) {
		return "pour"
	}
	return "pour-all"
}

func (p *planner) settle() {
	p.plain("leak-look", "ride")
	p.panels("panel-on")
	p.plain("waste", "write-down", "second-look")
}
