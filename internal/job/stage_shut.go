package job

import (
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/quantity"
)

// look: what the oil, the plug and the filter say, before anything is wiped.
func (p *planner) look() {
	p.add(step("look-oil", "look-oil"))
	for _, b := range p.allOpenings() {
		if b.Magnet {
			p.add(step("look-"+b.ID, "look-magnet", "place", b.Place))
		}
	}
	for _, f := range p.filters {
		p.add(step("look-"+f.ID, "look-filter", "place", f.Place))
	}
	for _, c := range p.circuits {
		p.add(step("measure-"+c.ID, "measure", "of", "@role."+string(c.Role)).
			figure(p.show("due", p.volume(c), "volume")).ask(AskDrained, c.ID, p.pourUnit()))
	}
	p.add(step("decide", "decide").must())
}

// pourUnit is the unit of a volume typed without one.
func (p *planner) pourUnit() string {
	switch p.bench.System {
	case quantity.US:
		return "US qt"
	case quantity.Imperial:
		return "imp pt"
	}
	return "L"
}

// close: everything that was opened, closed again and tightened once.
func (p *planner) close() {
	p.add(step("clean-seats", "clean-seats"))
	for _, s := range p.strain {
		p.add(step("in-"+s.ID, "strainer-in", "place", s.Place).warn(Caution, "solvent"))
		for _, b := range p.holding(s.ID) {
			p.add(p.tightenStep(b))
		}
	}
	for _, b := range p.allOpenings() {
		if b.Of == "" {
			p.add(p.tightenStep(b))
		}
	}
	for _, f := range p.filters {
		p.filterOn(f)
	}
	p.add(step("dry-base", "dry-base").warn(Warning, "cleaner-fire").warn(Warning, "cleaner-chlorine"))
	p.add(step("count", "count", "count", strconv.Itoa(p.openedCount()), "places", p.namesOf(p.boltsWhere(p.opened))).must())
}

// opened reports whether a fastener was opened in the drain stage.
func (p *planner) opened(b *card.Bolt) bool {
	switch b.Purpose {
	case card.FilterCover, card.FilterCanned:
		return p.turned(b)
	}
	return p.turned(b) && (b.Drains || b.Purpose == card.StrainerCap)
}

func (p *planner) openedCount() int {
	n := 0
	for _, b := range p.boltsWhere(p.opened) {
		n += b.Number()
	}
	return n
}

func (p *planner) tightenStep(b *card.Bolt) *Step {
	seal := "@seal.none"
	if b.Seal != nil {
		seal = "@seal." + b.Seal.Kind
	}
	word := "tighten"
	if b.Number() > 1 {
		word = "tighten-several"
	}
	s := step("tighten-"+b.ID, word, "purpose", "@purpose."+string(b.Purpose), "place", b.Place,
		"seal", seal, "count", strconv.Itoa(b.Number()), "thread", orWord(b.Thread, "not-known"))
	s.figure(p.torque(b)).warn(Notice, "soft-thread").must()
	if b.Torque.Known() {
		s.warn(Notice, "wrench-unit")
	} else {
		s.warn(Notice, "torque-unknown")
	}
	return s.ask(AskTorque, b.ID, p.torqueUnit())
}

// torqueUnit is the unit of a torque typed without one.
func (p *planner) torqueUnit() string {
	if p.bench.System == quantity.US {
		return "lbf·ft"
	}
	return "N·m"
}

func (p *planner) filterOn(f *card.Filter) {
	prepare := step("prepare-"+f.ID, "prepare-"+f.Kind, "place", f.Place, "mount", idOr("mount.", f.Mount))
	if f.Kind == "cartridge" {
		p.add(prepare.warn(Notice, "element-backwards"))
		for _, b := range p.holding(f.ID) {
			p.add(p.tightenStep(b))
		}
		return
	}
	p.add(prepare)
	on := step("on-"+f.ID, "filter-on", "place", f.Place).warn(Warning, "ring-twice").must()
	for _, b := range p.holding(f.ID) {
		on.figure(p.show("turn", b.Turn, "turn"), p.torque(b)).ask(AskTorque, b.ID, p.torqueUnit())
	}
	p.add(on)
}

// fill: most of it before the first start, the rest by the level.
func (p *planner) fill() {
	for _, c := range p.circuits {
		p.pour(c)
	}
	p.add(step("caps-on", "caps-on", "places", p.places(card.FillerCap)).must())
	if p.doesRole(card.EngineOil) {
		p.add(step("first-start", "first-start").warn(Danger, "carbon-monoxide").warn(Notice, "oil-lamp").must())
	}
	for _, c := range p.circuits {
		p.add(p.levelStep("level-"+c.ID, "top-up", c).ask(AskPoured, c.ID, p.pourUnit()).warn(Notice, "never-above").must())
	}
}

func (p *planner) doesRole(role card.Role) bool {
	for _, c := range p.circuits {
		if c.Role == role {
			return true
		}
	}
	return false
}

// pour asks for the first pour of a circuit. Gear and chain cases have no pump
// circuit or filter that fills up later: all of their oil goes in at once.
func (p *planner) pour(c *card.Circuit) {
	all := c.Role != card.EngineOil
	due := p.show("due", p.volume(c), "volume")
	a, known := p.volume(c).Amount()
	if !known {
		p.add(step("pour-"+c.ID, "pour-unknown", "of", "@role."+string(c.Role)).figure(due).ask(AskPoured, c.ID, p.pourUnit()).must())
		return
	}
	first, _ := fill.First(a.Base, all)
	s := step("pour-"+c.ID, "pour", "of", "@role."+string(c.Role), "volume", due.First())
	if all {
		s.Word = "step.pour-all"
		s.figure(due)
	} else {
		pour := p.estimate("first-pour", quantity.Volume, first, a.Unit.ID, 2, "first-share")
		s.Values["first"] = pour.First()
		s.figure(pour, due)
	}
	p.add(s.ask(AskPoured, c.ID, p.pourUnit()).must())
}

// settle: dry, ridden, level right, waste away, written down.
func (p *planner) settle() {
	p.add(step("leak-look", "leak-look").warn(p.hotSignal(), "hot-oil").must())
	p.add(step("ride", "ride").warn(Warning, "oil-on-tyre"))
	p.add(step("waste", "waste").warn(Warning, "children").warn(Notice, "never-ground"))
	p.add(step("write-down", "write-down").figure(
		p.show("interval-distance", p.card.Interval.Distance, "interval"),
		p.show("interval-time", p.card.Interval.Time, "interval")))
}
