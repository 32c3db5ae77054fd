package plan

import (
	"slices"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
)

// toolsOf says at which steps a tool is used: those whose words stand there, that have
// the caution, or of whose values one is that word. What the fasteners are turned with
// is worked out from them. A test reads the sentences: what they name is here, and
// nothing else is.
var toolsOf = [...]struct{ word, used string }{
	{"tool.filter-bag", " step.waste "},
	{"tool.tray", " step.tray step.tray-unknown "},
	{"tool.jug", " step.measure step.peek-off "},
	{"tool.funnel", " @through.funnel @through.either "},
	{"tool.syringe", " @through.syringe @through.either "},
	{"tool.can", " step.close-can step.waste "},
	{"tool.gloves", " step.guard caution.hot-oil caution.hot-engine caution.used-oil-skin "},
	{"tool.glasses", " step.guard caution.eyes caution.solvent "},
	{"tool.covers", " step.guard "},
	{"tool.foil", " caution.oil-on-exhaust "},
	{"tool.thermometer", " step.key-out step.cool-down "},
	{"tool.brush", " step.wash "},
	{"tool.cleaner", " step.wash step.clean-seats "},
	{"tool.solvent", " caution.solvent "},
	{"tool.scraper", " step.look-rotor step.prepare-centrifugal "},
	{"tool.rags", " step.wash step.clean-seats step.waste step.level-plug-off step.leak-find "},
	{"tool.absorbent", " step.dry-base "},
	{"tool.chalk", " step.name-plugs "},
	{"tool.paint-pen", " step.filter-on-turn step.count "},
	{"tool.white-paper", " step.look-oil step.look-filter step.look-rotor step.dry-base step.leak-look "},
	{"tool.magnet", " step.look-filter step.look-rotor "},
	{"tool.filter-cutter", " @with.cutter @with.either "},
	{"tool.knife", " @with.knife @with.either "},
	{"tool.lamp", " step.look-round step.leak-find step.leak-look step.second-look "},
	{"tool.stand", " step.stand "},
	{"tool.chock", " caution.bike-falls "},
	{"tool.strap", " step.stand "},
}

// tools lists what the steps of the plan use, each once: first what the fasteners are
// turned with.
func (p *planner) tools() {
	drives := p.drives()
	p.plan.Tools = append(drives, p.wrenches()...)
	for n := range toolsOf {
		if used := toolsOf[n].used; p.uses(used) {
			p.plan.Tools = append(p.plan.Tools, p.sized(toolsOf[n].word))
		}
	}
}

// uses reports whether a step of the plan uses what is used there.
func (p *planner) uses(there string) bool {
	for i := range p.plan.Steps {
		s := &p.plan.Steps[i]
		if strings.Contains(there, " "+s.Word+" ") {
			return true
		}
		for _, w := range s.Warns {
			if strings.Contains(there, " "+w.Word+" ") {
				return true
			}
		}
		for _, value := range s.Values {
			if value != "" && value[0] == '@' && strings.Contains(there, " "+value+" ") {
				return true
			}
		}
	}
	return false
}

// sized is a tool with the size that the day asks for.
func (p *planner) sized(word string) Item {
	switch word {
	case "tool.tray":
		if size, ok := p.tray(p.circuits...); ok {
			return NewItem(1, word, "volume", size)
		}
		return NewItem(1, "tool.tray-unknown")
	case "tool.jug":
		if marks := p.jugMarks(); marks != "" {
			return NewItem(1, word, "marks", marks)
		}
		return NewItem(1, "tool.jug-unknown")
	}
	return NewItem(1, word)
}

// turnedWith reports whether a fastener is turned today with a tool that goes on it. On
// the way home anything of its oils may be loose.
func (d *day) turnedWith(b *card.Bolt) bool {
	may := d.bench.GetHome && d.doing(b.Circuit) && b.Purpose != card.Panel
	return (d.turned(b) || may) && wrenched(b) && !(b.Purpose == card.FillerCap && byHand(b))
}

// drives lists each socket, key and bit once, and what turns them.
func (d *day) drives() []Item {
	var list []Item
	ratchet := false
	for i := range d.card.Bolts {
		b := &d.card.Bolts[i]
		if !d.turnedWith(b) {
			continue
		}
		it := d.driver(b)
		ratchet = ratchet || it.Word != "tool.hexagon-key" && it.Word != "tool.filter-grip"
		if !hasItem(list, it) {
			list = append(list, it)
		}
	}
	if ratchet {
		list = append(list, NewItem(1, "tool.ratchet"))
	}
	return list
}

// driver is what a fastener is turned with. A bit for an inside hexagon goes on the
// torque wrench, which a bent key does not; a filter that is tightened to a torque needs
// a cup that does.
func (d *day) driver(b *card.Bolt) Item {
	if b.Purpose == card.FilterCanned {
		switch gripOf(b) {
		case gripCup:
			return NewItem(1, "tool.filter-cup")
		case gripAny:
			return NewItem(1, "tool.filter-grip")
		}
	}
	size, ok := b.Size.Amount()
	switch {
	case b.Drive == card.Strap:
		return NewItem(1, "tool.filter-grip")
	case b.Drive == "" || !ok:
		return NewItem(1, "tool.size-unknown", "of", "@purpose."+string(b.Purpose), "place", orWord(b.Place, "unknown.place"), "drive", idOr("drive.", b.Drive))
	case b.Drive == card.HexagonKey && (b.Torque.Known() || b.Purpose != card.Panel):
		return NewItem(1, "tool.hexagon-bit", "size", size.Print(size.Unit))
	}
	return NewItem(1, "tool."+string(b.Drive), "size", size.Print(size.Unit))
}

// What a spin-on filter is gripped with.
const (
	gripSocket = "@grip.socket" // it has a hexagon
	gripCup    = "@grip.cup"    // on the torque wrench
	gripAny    = "@grip.any"    // cup or strap, to loosen it
)

func gripOf(b *card.Bolt) string {
	switch {
	case b.Drive == card.Hexagon && b.Size.Known():
		return gripSocket
	case measureOf(b) == ByTorque:
		return gripCup
	}
	return gripAny
}

func hasItem(list []Item, want Item) bool {
	for _, i := range list {
		if i.Word == want.Word && sameValues(&i, &want) {
			return true
		}
	}
	return false
}

// wrenches lists the torque wrenches that can set every torque of the day, each from a
// fifth of its scale upward; and one more where a torque has yet to be found.
func (d *day) wrenches() []Item {
	var torques []float64
	unknown := false
	for i := range d.card.Bolts {
		b := &d.card.Bolts[i]
		if !d.turnedWith(b) {
			continue
		}
		a, known := b.Torque.Amount()
		if known {
			torques = append(torques, a.Base)
		}
		if a, ok := b.Torque.Upper(); ok {
			torques = append(torques, a.Base)
		}
		unknown = unknown || !known && b.Purpose != card.Panel && measureOf(b) == ByTorque
	}
	slices.Sort(torques)
	var list []Item
	for _, w := range bolt.Needed(torques) {
		word := "tool.torque-wrench-one"
		if w.High > w.Low {
			word = "tool.torque-wrench"
		}
		list = append(list, NewItem(1, word, "low", d.oneTorque(w.Low), "high", d.oneTorque(w.High), "end", d.print.Texts(bolt.LongestScale(w.Low), "N·m", 2)[0]))
	}
	if unknown {
		list = append(list, NewItem(1, "tool.torque-wrench-unknown"))
	}
	return list
}

func (d *day) oneTorque(nm float64) string {
	return d.print.Exact(nm, "N·m", 3)[0]
}
