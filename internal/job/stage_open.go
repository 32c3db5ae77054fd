package job

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/drain"
	"tidysump/internal/quantity"
)

// ready: the bike known, everything laid out, nothing that can fall or burn.
func (p *planner) ready() {
	odometer := "km"
	if p.bench.System != quantity.Metric {
		odometer = "mi"
	}
	p.add(step("identify", "identify", "bike", p.plan.Name).ask(AskOdometer, "", odometer))
	p.add(step("lay-out", "lay-out"))
	for _, o := range p.plan.Oils {
		if o.Today {
			p.add(step("oil-"+o.Circuit, "check-oil", "of", "@"+o.Role).figure(o.Need, o.Due).must())
		}
	}
	stand := step("stand", "stand").warn(Warning, "bike-falls")
	if p.bench.Place == Roadside {
		stand.warn(Danger, "traffic")
	}
	p.add(stand)
	p.add(step("free-filler", "free-filler", "places", p.places(card.FillerCap)).must())
	p.add(step("name-plugs", "name-plugs", "places", p.namesOf(p.allOpenings()), "leave", p.leaveNames()).must())
	p.add(step("guard", "guard").warn(Warning, "oil-on-tyre").warn(Caution, "used-oil-skin").warn(Caution, "eyes"))
}

// warm: thin oil that carries the dirt, without gassing or burning anybody.
func (p *planner) warm() {
	for _, c := range p.circuits {
		if c.Level.State != "hot" {
			p.add(p.levelStep("level-found-"+c.ID, "level-found", c))
		}
	}
	target := p.estimate("warm-target", quantity.Temperature, drain.WarmLow, "°C", 2, "practice")
	target.Texts = span(target.Texts, texts(quantity.Temperature, drain.WarmHigh, "°C", 2, p.bench.System))
	p.add(step("warm-up", "warm-up").figure(target).warn(Danger, "carbon-monoxide").warn(p.hotSignal(), "hot-oil"))
	for _, c := range p.circuits {
		if c.Level.State == "hot" {
			p.add(p.levelStep("level-found-"+c.ID, "level-found-hot", c))
		}
	}
	p.add(step("key-out", "key-out").warn(p.hotSignal(), "hot-oil").must())
}

// hotSignal: oil of a bike that is read hot is at 80 °C and more, which could
// injure seriously; warm oil burns less deep.
func (p *planner) hotSignal() Signal {
	for _, c := range p.circuits {
		if c.Level.State == "hot" {
			return Warning
		}
	}
	return Caution
}

// levelStep asks for the level as the card says it is read.
func (p *planner) levelStep(id, word string, c *card.Circuit) *Step {
	l := &c.Level
	s := step(id, word, "of", "@role."+string(c.Role), "where", orWord(l.Where, "not-known"),
		"device", idOr("device.", l.Device), "state", idOr("state.", l.State), "stance", idOr("stance.", l.Stance))
	s.figure(p.show("wait", l.Wait, "level"), p.show("band", l.Band, "level"))
	return s.ask(AskLevel, c.ID, "")
}

func orWord(text, word string) string {
	if text == "" {
		return "@" + word
	}
	return text
}

func idOr(prefix, id string) string {
	if id == "" {
		return "@not-known"
	}
	return "@" + prefix + id
}

// drain: every opening of the circuits of the day, and no other.
func (p *planner) drain() {
	if size, ok := p.tray(); ok {
		p.add(step("tray", "tray", "volume", size))
	} else {
		p.add(step("tray", "tray-unknown"))
	}
	for _, c := range p.circuits {
		for _, b := range p.openings(c.ID) {
			p.add(p.openStep(b))
		}
	}
	run := p.estimate("run-out", quantity.Duration, drain.RunOutLow, "min", 2, "practice")
	run.Texts = span(run.Texts, texts(quantity.Duration, drain.RunOutHigh, "min", 2, p.bench.System))
	p.add(step("run-out", "run-out").figure(run).warn(Warning, "bike-falls"))
	for _, s := range p.strain {
		p.strainerOut(s)
	}
	for _, f := range p.filters {
		p.filterOff(f)
	}
}

func (p *planner) openStep(b *card.Bolt) *Step {
	s := step("open-"+b.ID, "open-"+string(b.Purpose), "place", b.Place, "drive", p.driveText(b), "of", p.roleOf(b.Circuit))
	s.figure(p.show("size", b.Size, "size"))
	return s.warn(p.hotSignal(), "hot-oil").warn(Caution, "eyes").must()
}

// driveText names the tool of a fastener: the word id of its drive.
func (p *planner) driveText(b *card.Bolt) string { return idOr("drive.", b.Drive) }

func (p *planner) roleOf(circuit string) string {
	if c := circuitOf(p.card, circuit); c != nil {
		return "@role." + string(c.Role)
	}
	return "@not-known"
}

func (p *planner) strainerOut(s *card.Strainer) {
	for _, b := range p.holding(s.ID) {
		if !b.Drains {
			p.add(p.openStep(b))
		}
	}
	p.add(step("out-"+s.ID, "strainer-out", "place", s.Place).must())
}

func (p *planner) filterOff(f *card.Filter) {
	screws := 0
	for _, b := range p.holding(f.ID) {
		if b.Purpose == card.FilterCover {
			screws += b.Number()
		}
	}
	s := step("off-"+f.ID, "filter-off-"+f.Kind, "place", f.Place, "screws", strconv.Itoa(screws))
	if f.Mount == "sideways" {
		s.warn(Warning, "oil-on-exhaust")
	}
	p.add(s.warn(p.hotSignal(), "hot-oil"))
	p.add(step("old-ring-"+f.ID, "old-ring", "place", f.Place, "count", strconv.Itoa(sealCount(f.Seals))).
		warn(Warning, "ring-twice").must())
}

func sealCount(list []card.Seal) int {
	n := 0
	for _, s := range list {
		n += max(s.Count, 1)
	}
	return n
}

func (p *planner) allOpenings() []*card.Bolt {
	return p.boltsWhere(func(b *card.Bolt) bool { return b.Drains && p.doing(b.Circuit) })
}

func (p *planner) places(purpose card.Purpose) string {
	return p.namesOf(p.boltsWhere(func(b *card.Bolt) bool { return b.Purpose == purpose && p.doing(b.Circuit) }))
}

// leaveNames names what must not be opened today.
func (p *planner) leaveNames() string { return p.namesOf(p.boltsWhere(p.left)) }

func (p *planner) namesOf(list []*card.Bolt) string {
	names := make([]string, 0, len(list))
	for _, b := range list {
		if b.Place != "" {
			names = append(names, b.Place)
		}
	}
	if len(names) == 0 {
		return "@none-on-card"
	}
	return strings.Join(names, "; ")
}
