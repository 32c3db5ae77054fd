package plan

import (
	"slices"
	"tidysump/internal/bolt"
	"tidysump/internal/card"
)

// tools lists the tools that the fasteners of the day ask for, and what every
// oil change needs.
func (p *planner) tools() {
	p.plan.Tools = append(append(p.plan.Tools, p.drives()...), p.wrenches()...)
	for _, f := range p.filters {
		if f.Kind == card.SpinOn {
			p.plan.Tools = append(p.plan.Tools, NewItem(1, "tool.filter-grip"), NewItem(1, "tool.filter-bag"))
			break
		}
	}
	if size, ok := p.tray(p.circuits...); ok {
		p.plan.Tools = append(p.plan.Tools, NewItem(1, "tool.tray", "volume", size))
	} else {
		p.plan.Tools = append(p.plan.Tools, NewItem(1, "tool.tray-unknown"))
	}
	for _, word := range []string{"tool.funnel", "tool.jug", "tool.gloves", "tool.rags", "tool.cleaner", "tool.absorbent", "tool.white-paper", "tool.lamp", "tool.can"} {
		p.plan.Tools = append(p.plan.Tools, NewItem(1, word))
	}
	if p.bench.Place == Garage {
		p.plan.Tools = append(p.plan.Tools, NewItem(1, "tool.stand"))
	}
}

// drives lists each socket, key and bit once.
func (d *day) drives() []Item {
	var list []Item
	for i := range d.card.Bolts {
		b := &d.card.Bolts[i]
		if !d.turned(b) || b.Drive == card.Hand || b.Drive == card.Strap {
			continue
		}
		it := NewItem(1, "tool.size-unknown", "of", "@purpose."+string(b.Purpose), "place", b.Place)
		if size, ok := b.Size.Amount(); ok && b.Drive != "" {
			it = NewItem(1, "tool."+string(b.Drive), "size", size.Print(size.Unit))
		}
		if !hasItem(list, it) {
			list = append(list, it)
		}
	}
	return list
}

func hasItem(list []Item, want Item) bool {
	for _, i := range list {
		if i.Word == want.Word && i.Values["size"] == want.Values["size"] && i.Values["place"] == want.Values["place"] {
			return true
		}
	}
	return false
}

// wrenches lists the torque wrenches that can set every torque of the day,
// each from a fifth of its scale upward.
func (d *day) wrenches() []Item {
	var torques []float64
	for i := range d.card.Bolts {
		b := &d.card.Bolts[i]
		if !d.turned(b) || !wrenched(b) {
			continue
		}
		if a, ok := b.Torque.Amount(); ok {
			torques = append(torques, a.Base)
		}
		if a, ok := b.Torque.Upper(); ok {
			torques = append(torques, a.Base)
		}
	}
	slices.Sort(torques)
	var list []Item
	for _, w := range bolt.Needed(torques) {
		word := "tool.torque-wrench-one"
		if w.High > w.Low {
			word = "tool.torque-wrench"
		}
		list = append(list, NewItem(1, word, "low", d.oneTorque(w.Low), "high", d.oneTorque(w.High), "end", d.oneTorque(bolt.LongestScale(w.Low))))
	}
	return list
}

func (d *day) oneTorque(nm float64) string {
	return d.print.Texts(nm, "N·m", 2)[0]
}
