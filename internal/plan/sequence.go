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
	stages := []func(){p.ready, p.warm, p.drain, p.look, p.close, p.fill, p.settle}
	if p.bench.GetHome {
		stages = []func(){p.readyHome, p.warmHome, nil, p.lookHome, nil, p.fillHome, p.settleHome}
	}
	for i, put := range stages {
		if p.stage = Stages[i]; put != nil {
			put()
		}
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

// Nothing is covered, chocked or opened while the engine still has to run or the bike
// has to be moved: that comes with the drain stage.
func (p *planner) ready() {
	if p.atRoadside() {
		p.plain("traffic")
	}
	p.plain("identify", "lay-out")
	p.each("check-oil", always)
	p.plain("look-round", "free-filler")
}

func (d *day) atRoadside() bool { return d.bench.Place == Roadside }

// warm brings the oil to the temperature to drain at. At the roadside the engine was
// ridden just now: nothing is read that is read cold, and it has to cool.
func (p *planner) warm() {
	if p.atRoadside() {
		p.found("level-found", func(c *card.Circuit) bool { return !readHot(c) && c.Level.State != card.Cold })
		p.found("level-found-hot", readHot)
		p.plain("cool-down")
		return
	}
	p.found("level-found", readStanding)
	p.plain("warm-up")
	p.found("level-found", readWarm)
	p.found("level-found-hot", readHot)
	p.plain("key-out")
}

// secure makes bike, skin and tyre safe, once the engine has stopped for good. What
// can't be done at the roadside isn't asked there.
func (p *planner) secure() {
	if !p.atRoadside() {
		p.plain("stand")
	}
	p.plain("guard")
	p.panelsOff()
	if !p.atRoadside() {
		p.plain("wash")
	}
	p.plain("name-plugs")
}

// panelsOff puts a step for each panel that is in the way, the foremost first.
func (p *planner) panelsOff() {
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Purpose == card.Panel && p.turned(b) {
			p.panelOff(b)
		}
	}
}

func (p *planner) panelOff(b *card.Bolt) {
	if !first(p.off, "bolt "+b.ID) {
		return
	}
	if front := p.card.Bolt(b.Behind); front != nil && front.Purpose == card.Panel && p.turned(front) {
		p.panelOff(front)
	}
	p.onBolt("panel-off", b)
	p.panels = append(p.panels, b)
}

// panelsOn puts them back, the last one off first: before the ride, or after it what
// hides a level that is read then.
func (p *planner) panelsOn(after bool) {
	for i := len(p.panels) - 1; i >= 0; i-- {
		if b := p.panels[i]; p.hidesLevel(b) == after {
			p.onBolt("panel-on", b)
		}
	}
}

// hidesLevel reports whether a panel is in front of what a hot level is read through,
// or in front of a panel that is.
func (d *day) hidesLevel(b *card.Bolt) bool {
	for i := range d.card.Bolts {
		inner := &d.card.Bolts[i]
		if c := d.card.Circuit(inner.Circuit); inner.Behind == b.ID && inner != b && d.turned(inner) &&
			(inner.Purpose == card.LevelScrew && c != nil && readHot(c) || inner.Purpose == card.Panel && d.hidesLevel(inner)) {
			return true
		}
	}
	return false
}

// found puts the reading of the levels before anything is drained. A level cover
// goes back on at once: the engine runs and the bike is moved before it comes
// off for good. One with a paper gasket stays on: it is opened once, to be filled.
func (p *planner) found(word string, holds func(*card.Circuit) bool) {
	for _, c := range p.circuits {
		covers := p.levelCovers(c)
		if !holds(c) || !hasGauge(c) || onPaper(covers) {
			continue
		}
		for _, b := range covers {
			p.onBolt("peek-off", b)
		}
		p.onCircuit(word, c)
		for _, b := range covers {
			p.onBolt("peek-on", b)
		}
	}
}

// onPaper reports whether one of some covers seals with a paper gasket.
func onPaper(covers []*card.Bolt) bool {
	for _, b := range covers {
		if b.Seal != nil && b.Seal.Kind == card.Paper {
			return true
		}
	}
	return false
}

// fill pours, and looks at the levels that can be read now. Everything is closed and
// every cover off the wheel before the engine runs; what is read hot is only looked at,
// so that it isn't ridden dry.
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
	p.plain("covers-off")
	if p.doesEngineOil() {
		p.plain("first-start")
	} else if p.any(readAfterRun) {
		p.plain("second-start")
	}
	for _, c := range p.circuits {
		if readHot(c) && hasGauge(c) && !onPaper(p.levelCovers(c)) {
			p.withCoverOff(c, "level-interim")
		}
	}
	p.levels(func(c *card.Circuit) bool { return readAfterRun(c) && readStanding(c) })
	if p.doesEngineOil() {
		p.plain("second-start")
	}
	p.levels(readWarm)
}

// levels reads the levels that count, after the engine has run.
func (p *planner) levels(holds func(*card.Circuit) bool) {
	for _, c := range p.circuits {
		if holds(c) && hasGauge(c) {
			p.withCoverOff(c, topUp(c)...)
		}
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
		return b.Purpose == card.LevelScrew && b.Circuit == c.ID && d.turned(b) && !d.opened(b)
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

// settle looks for leaks before anybody rides, and reads after the ride what is read
// hot.
func (p *planner) settle() {
	p.plain("leak-look")
	p.panelsOn(false)
	p.plain("ride")
	p.levels(readHot)
	p.panelsOn(true)
	p.plain("waste", "write-down", "second-look")
}
