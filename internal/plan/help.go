package plan

import (
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Help is a calculation that answers what a step raises: an operation of the
// core, and what the card knows of its input.
type Help struct {
	Op    string
	Given map[string]string
}

// Members names the members of a help.
func (h *Help) Members(m *wire.Members) {
	m.String("op", &h.Op, wire.Required)
	m.TextMap("given", &h.Given)
}

// help fills in what the card knows for a calculation; ok is false where the
// step doesn't raise the question.
func (d *day) help(op string, on subject) (h Help, ok bool) {
	h = Help{op, map[string]string{}}
	switch op {
	case "torque-check", "wrench":
		ok = wrenched(on.bolt) && on.bolt.Torque.Known()
		h.torque(on.bolt)
	case "torque-guess":
		ok = wrenched(on.bolt) && !on.bolt.Torque.Known() && measureOf(on.bolt) != ByTurn
		h.fastener(on.bolt)
	case "o-ring":
		ok = h.oRing(on)
	case "oil-suits":
		ok = isEngineOil(on.circuit)
		h.oil(on.circuit, d.volume(on.circuit))
		d.airOf(&h, on.circuit)
	case "bottles":
		ok = h.figure("need", d.volume(on.circuit)) && !d.bench.GetHome
	case "first-fill":
		ok = h.figure("volume", d.volume(on.circuit))
		d.filling(&h, on.circuit)
	case "level":
		ok = h.figure("band", on.circuit.Level.Band)
		h.put("gauge", string(on.circuit.Level.Device))
	case "fuel":
		ok = isEngineOil(on.circuit)
		h.holds(on.circuit, d.volume(on.circuit))
		h.figure("band", on.circuit.Level.Band)
	case "run-out":
		ok = d.runningOut(&h, on.circuit)
	case "leak":
		ok = true
		d.lasting(&h)
	case "wrench-check":
		ok = wrenched(on.bolt)
	case "cool", "debris", "oil-pressure":
		ok = true // the card knows nothing of it
	}
	return h, ok
}

// FuelHelp is the calculation of what came into a circuit that became more by so much.
func (p *Plan) FuelHelp(c *card.Circuit, rise string) *Help {
	h := &Help{Op: "fuel", Given: map[string]string{"rise": rise}}
	h.holds(c, p.Volume(c))
	return h
}

// holds puts how much of which oil a circuit holds.
func (h *Help) holds(c *card.Circuit, volume *card.Figure) {
	h.figure("volume", volume)
	if len(c.Oil.Grades) > 0 {
		h.put("grade", c.Oil.Grades[0])
	}
}

// put puts what is known; "" is not.
func (h *Help) put(name, text string) {
	if text != "" {
		h.Given[name] = text
	}
}

// figure puts a figure as a person would type it, and reports whether it is
// known.
func (h *Help) figure(name string, f *card.Figure) bool {
	a, ok := f.Amount()
	if ok {
		h.put(name, a.Print(a.Unit))
	}
	return ok
}

func (h *Help) torque(b *card.Bolt) {
	ok := h.figure("torque", b.Torque)
	if h.Op == "wrench" {
		if upper, ranged := b.Torque.Upper(); ok && ranged {
			low, _ := b.Torque.Amount()
			unit, _ := quantity.Find(upper.Unit)
			h.put("torque", quantity.Range(low, upper, unit))
		}
		return
	}
	h.fastener(b)
	if b.Seal != nil && b.Seal.Inner.Known() && b.Seal.Outer.Known() {
		h.figure("inner", b.Seal.Inner)
		h.figure("outer", b.Seal.Outer)
	}
}

// fastener puts what is known of a fastener. A card doesn't say of what its
// thread is cut in, nor the class of a screw.
func (h *Help) fastener(b *card.Bolt) {
	what := bolt.Whats[bolt.Plug-1]
	switch b.Purpose {
	case card.FilterClosed:
		what = "" // a filter, or a screw
	case card.FilterCanned:
		what = bolt.Whats[bolt.Filter-1]
	case card.FilterCover, card.LevelScrew, card.Panel:
		what = bolt.Whats[bolt.Screw-1]
	}
	h.put("what", what)
	h.put("thread", b.Thread)
	if b.Seal != nil {
		h.put("seal", string(b.Seal.Kind))
	}
}

// oRing puts what is known of the first O-ring of a step's subject, and reports whether
// it has one.
func (h *Help) oRing(on subject) bool {
	var seals []card.Seal
	switch {
	case on.filter != nil:
		seals = on.filter.Seals
	case on.strain != nil:
		seals = on.strain.Seals
	case on.bolt != nil && on.bolt.Seal != nil:
		seals = []card.Seal{*on.bolt.Seal}
	}
	for n := range seals {
		if s := &seals[n]; s.Kind == card.ORing {
			h.figure("inside", s.Inner)
			h.figure("outside", s.Outer)
			h.figure("section", s.Thickness)
			return true
		}
	}
	return false
}

func (h *Help) oil(c *card.Circuit, due *card.Figure) {
	h.put("grades", strings.Join(c.Oil.Grades, ", "))
	h.put("marks", strings.Join(c.Oil.Marks, ", "))
	h.put("service", c.Oil.Service)
	if c.WetClutch {
		h.put("clutch", string(card.WetClutch))
	}
	h.figure("due", due)
}

// filling puts how the filter of a circuit is mounted and where its oil lies.
func (d *day) filling(h *Help, c *card.Circuit) {
	h.put("layout", string(card.WetSump))
	if d.card.Layout.InTank() {
		h.put("layout", string(card.DrySump))
	}
	h.put("filter", string(fill.Mesh))
	for i := range d.card.Filters {
		f := &d.card.Filters[i]
		if f.Circuit != c.ID || f.Kind == card.Centrifugal {
			continue
		}
		h.put("filter", string(fill.Stays))
		if d.filterChanged(c.ID) {
			delete(h.Given, "filter")
			if f.Kind != card.KindUnknown {
				h.put("filter", string(f.Kind))
			}
			h.put("mount", string(f.Mount))
		}
	}
}

// runningOut puts the oil of a circuit and the hole of its first drain plug, as
// wide as the thread at its root. A gear oil is too thick for the calculation.
func (d *day) runningOut(h *Help, c *card.Circuit) bool {
	hole := d.drainHole(c)
	if hole == 0 || !h.figure("volume", d.volume(c)) {
		return false
	}
	h.put("hole", quantity.Number(hole, 3)+" mm")
	return true
}

// lasting puts what lies between the marks of the engine's oil, and all that is in it:
// what leaks is that, where nobody says otherwise.
func (d *day) lasting(h *Help) {
	for _, c := range d.circuits {
		if isEngineOil(c) {
			h.figure("band", c.Level.Band)
			h.figure("oil", d.volume(c))
			return
		}
	}
}

// drainHole gives the bore in mm of the first drain hole of an engine oil; 0 where
// it is not known, and for gear oils.
func (d *day) drainHole(c *card.Circuit) float64 {
	for _, b := range d.openings() {
		if t, known := bolt.ParseThread(b.Thread); known && !t.PitchOpen() && b.Circuit == c.ID && isEngineOil(c) {
			return t.BoreDiameter()
		}
	}
	return 0
}
