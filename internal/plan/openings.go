package plan

import (
	"tidysump/internal/card"
)

// turned reports whether a fastener is opened and closed today.
func (d *day) turned(b *card.Bolt) bool {
	if d.inFront[b.ID] {
		return true
	}
	if d.bench.GetHome {
		return d.doing(b.Circuit) && !b.Drains && (b.Purpose == card.FillerCap || b.Purpose == card.LevelScrew)
	}
	switch b.Purpose {
	case card.LeaveAlone:
		return false
	case card.FilterCover, card.FilterCanned, card.FilterClosed:
		return d.changing(b.Holds)
	case card.Panel:
		return b.Circuit == "" || d.doing(b.Circuit)
	case card.StrainerCap:
		if b.Holds != "" && !b.Drains {
			return d.holds(b)
		}
	}
	return d.doing(b.Circuit) || d.holds(b)
}

// left reports whether a fastener must be left alone today: it never belongs
// to an oil change, or it lets out an oil that is not done today.
func (d *day) left(b *card.Bolt) bool {
	return b.Purpose == card.LeaveAlone || b.Purpose != card.Panel && b.Drains && !d.turned(b)
}

// opens reports whether a fastener lets out an oil that is done today.
func (d *day) opens(b *card.Bolt) bool {
	return b.Drains && b.Purpose != card.Panel && d.turned(b)
}

// opened reports whether a fastener was opened in the drain stage.
func (d *day) opened(b *card.Bolt) bool {
	return d.turned(b) && b.Purpose != card.Panel && (b.Drains || d.holds(b) || d.inFront[b.ID])
}

// home is the circuit as part of which a fastener is opened: its own, or else that of
// what it holds.
func (d *day) home(b *card.Bolt) string {
	if d.doing(b.Circuit) {
		return b.Circuit
	}
	for _, s := range d.strainers {
		if s.ID == b.Holds {
			return s.Circuit
		}
	}
	for _, f := range d.filters {
		if f.ID == b.Holds {
			return f.Circuit
		}
	}
	return ""
}

// holds reports whether a fastener holds a filter or strainer that comes out
// today; it is then closed together with it.
func (d *day) holds(b *card.Bolt) bool { return d.cleaning(b.Holds) || d.changing(b.Holds) }

// cleaning reports whether the strainer of that id comes out today.
func (d *day) cleaning(strainer string) bool {
	for _, s := range d.strainers {
		if s.ID == strainer {
			return true
		}
	}
	return false
}

// wrenched reports whether a fastener is tightened with a tool at all.
func wrenched(b *card.Bolt) bool { return b.Drive != card.Hand && b.Purpose != card.LeaveAlone }

// changing reports whether the filter of that id is changed today.
func (d *day) changing(filter string) bool {
	for _, f := range d.filters {
		if f.ID == filter {
			return true
		}
	}
	return false
}

// openings lists the fasteners that let out the oils of the day.
func (d *day) openings() []*card.Bolt { return d.boltsWhere(d.opens) }

// holding lists the fasteners of the day that hold a filter or strainer.
func (d *day) holding(id string) []*card.Bolt {
	return d.boltsWhere(func(b *card.Bolt) bool { return b.Holds == id && d.opened(b) })
}

// fills reports whether an oil of the day is poured in here: through its filler
// cap, or else through the level screw.
func (d *day) fills(b *card.Bolt) bool {
	if !d.doing(b.Circuit) {
		return false
	}
	return b.Purpose == card.FillerCap || b.Purpose == card.LevelScrew && !d.hasFillerCap(b.Circuit)
}

func (d *day) hasFillerCap(circuit string) bool {
	for i := range d.card.Bolts {
		if b := &d.card.Bolts[i]; b.Purpose == card.FillerCap && b.Circuit == circuit {
			return true
		}
	}
	return false
}

// byHand reports whether a filler cap is closed without a tool: those of which the card
// says nothing are taken so too. What has a torque, or a size, wants one.
func byHand(b *card.Bolt) bool {
	return b.Drive == card.Hand || b.Drive == card.Strap || b.Drive == "" && !b.Torque.Known() && !b.Size.Known()
}

func (d *day) boltsWhere(want func(*card.Bolt) bool) []*card.Bolt {
	var list []*card.Bolt
	for i := range d.card.Bolts {
		if b := &d.card.Bolts[i]; want(b) {
			list = append(list, b)
		}
	}
	return list
}

// named reports whether a fastener has to be named before the job:
// what lets oil out, what holds a strainer, and what the level is read through.
func (d *day) named(b *card.Bolt) bool {
	return d.opens(b) || d.turned(b) && (b.Purpose == card.StrainerCap || b.Purpose == card.LevelScrew)
}
