package place

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
)

// parter finds the parts of a card that readings are of, and makes those that it lacks.
type parter struct {
	card *card.Card
	bare map[string]bool // ids of parts of which the card says nothing
	said map[string]bool // of which things the page says something: "strainer", "filter.kind"
}

// partsOf looks at a card as it is handed in.
func partsOf(c *card.Card) *parter {
	p := &parter{card: c, bare: map[string]bool{}, said: map[string]bool{}}
	for i := range c.Circuits {
		r := &c.Circuits[i]
		p.bare[r.ID] = len(r.Oil.Grades) == 0 && len(r.Oil.Marks) == 0 && r.Oil.Service == "" && !r.OilOnly.Known() &&
			!r.WithFilt.Known() && !r.Dry.Known() && r.Level == (card.Level{}) && r.Interval == nil
	}
	for i := range c.Bolts {
		p.bare[c.Bolts[i].ID] = bareBolt(&c.Bolts[i])
	}
	for i := range c.Filters {
		f := &c.Filters[i]
		p.bare[f.ID] = f.Thread == "" && !f.Ring.Known() && !f.Height.Known() && f.OwnNumber == "" && f.Place == "" && f.Behind == "" &&
			f.Mount == "" && f.RingWith == "" && len(f.Seals) == 0 && f.Interval == nil && p.holdersBare(f.ID)
	}
	for i := range c.Strain {
		s := &c.Strain[i]
		p.bare[s.ID] = s.Place == "" && s.Behind == "" && len(s.Seals) == 0 && s.Interval == nil && p.holdersBare(s.ID)
	}
	// What a page said goes without saying no more.
	for i := range c.Quotes {
		for _, of := range c.Quotes[i].Of {
			id, _, _ := strings.Cut(of.At, "/")
			p.bare[id] = false
		}
	}
	return p
}

// bareBolt reports whether a card says of a fastener no more than that there is one. With
// what a cap and a filter are turned goes without saying.
func bareBolt(b *card.Bolt) bool {
	usual := b.Drive == "" || b.Purpose == card.FillerCap && b.Drive == card.Hand || b.Purpose == card.FilterCanned && b.Drive == card.Strap
	return usual && b.Thread == "" && !b.Size.Known() && !b.Torque.Known() && !b.Turn.Known() && b.Seal == nil && b.Place == "" &&
		b.Behind == "" && b.Order == "" && b.Count <= 1 && !b.Magnet
}

func (p *parter) holdersBare(id string) bool {
	for i := range p.card.Bolts {
		if b := &p.card.Bolts[i]; b.Holds == id && !p.bare[b.ID] {
			return false
		}
	}
	return true
}

// name gives the name of the place that an entry of the list is of, as card.Slot has it.
func (p *parter) name(e *entry) string {
	switch e.of {
	case ofOil:
		return p.circuit(e.role) + "/" + e.at
	case ofFilter:
		return p.filter(card.KindUnknown).ID + "/" + e.at
	case ofStrainer:
		return p.strainer() + "/" + e.at
	case ofBolt:
		return p.bolt(e.part).ID + "/" + e.at
	}
	return "/" + e.at
}

// freeID is an id that nothing in the card has yet.
func (p *parter) freeID(stem string) string {
	for n, id := 1, stem; ; n++ {
		if n > 1 {
			id = stem + "-" + strconv.Itoa(n)
		}
		if !p.taken(id) {
			p.bare[id] = true
			return id
		}
	}
}

func (p *parter) taken(id string) bool {
	c := p.card
	if c.Circuit(id) != nil || c.Bolt(id) != nil {
		return true
	}
	for i := range c.Filters {
		if c.Filters[i].ID == id {
			return true
		}
	}
	for i := range c.Strain {
		if c.Strain[i].ID == id {
			return true
		}
	}
	for i := range c.Sources {
		if c.Sources[i].ID == id {
			return true
		}
	}
	return false
}

// circuit gives the id of the oil of that role.
func (p *parter) circuit(role card.Role) string {
	for i := range p.card.Circuits {
		if p.card.Circuits[i].Role == role {
			return p.card.Circuits[i].ID
		}
	}
	stem := string(role)
	if role == card.FinalDrive {
		stem = "final"
	}
	id := p.freeID(stem)
	p.card.Circuits = append(p.card.Circuits, card.Circuit{ID: id, Role: role})
	return id
}

// filter gives the filter of the card, one that is changed before one that is cleaned; one
// of that kind where there is none.
func (p *parter) filter(kind card.FilterKind) *card.Filter {
	c := p.card
	for i := range c.Filters {
		if c.Filters[i].Kind != card.Centrifugal {
			return &c.Filters[i]
		}
	}
	if len(c.Filters) > 0 {
		return &c.Filters[0]
	}
	c.Filters = append(c.Filters, card.Filter{ID: p.freeID("filter"), Kind: kind, Circuit: p.circuit(card.EngineOil)})
	f := &c.Filters[len(c.Filters)-1]
	p.holder(f)
	return f
}

// holder gives the fastener that a filter is held by: itself, or what is over it; where
// nobody said of what kind it is, what is either.
func (p *parter) holder(f *card.Filter) *card.Bolt {
	purpose, stem, drive := f.Kind.HeldBy(), "cover-screw", card.Drive("")
	switch purpose {
	case card.FilterCanned:
		stem, drive = "filter-can", card.Strap
	case card.FilterClosed:
		stem = "filter-or-cover"
	}
	return p.fastener(purpose, f.ID, func() card.Bolt {
		return card.Bolt{ID: p.freeID(stem), Purpose: purpose, Circuit: f.Circuit, Holds: f.ID, Drive: drive}
	})
}

// fastener gives the first one of a purpose that holds a part, or makes it.
func (p *parter) fastener(purpose card.Purpose, holds string, made func() card.Bolt) *card.Bolt {
	c := p.card
	for i := range c.Bolts {
		if b := &c.Bolts[i]; b.Purpose == purpose && b.Holds == holds {
			return b
		}
	}
	c.Bolts = append(c.Bolts, made())
	return &c.Bolts[len(c.Bolts)-1]
}

// become makes a filter one of another kind, with what holds it. What is said of a filter
// before its kind is known is true of it afterwards; what is said of one kind is true of no
// other.
func (p *parter) become(f *card.Filter, kind card.FilterKind) {
	was := f.Kind
	f.Kind = kind
	if was.HeldBy() == kind.HeldBy() {
		return
	}
	c := p.card
	if was == card.KindUnknown || kind == card.KindUnknown {
		for i := range c.Bolts {
			if b := &c.Bolts[i]; b.Holds == f.ID && b.Purpose == was.HeldBy() {
				b.Purpose = kind.HeldBy()
				switch {
				case kind == card.SpinOn && b.Drive == "" && !b.Size.Known():
					b.Drive = card.Strap
				case was == card.SpinOn && b.Drive == card.Strap:
					b.Drive = ""
				}
			}
		}
		if kind == card.Cartridge {
			f.Thread = ""
		}
		p.holder(f)
		return
	}
	kept := c.Bolts[:0]
	for _, b := range c.Bolts {
		if b.Holds != f.ID || b.Purpose != was.HeldBy() {
			kept = append(kept, b)
		}
	}
	c.Bolts = kept
	f.Thread = ""
	p.holder(f)
	p.unfront()
}

// unfront takes away what is said to be behind something that is gone.
func (p *parter) unfront() {
	c := p.card
	for i := range c.Bolts {
		p.inFront(&c.Bolts[i].Behind)
	}
	for i := range c.Filters {
		p.inFront(&c.Filters[i].Behind)
	}
	for i := range c.Strain {
		p.inFront(&c.Strain[i].Behind)
	}
}

func (p *parter) inFront(behind *string) {
	if *behind != "" && !p.taken(*behind) {
		*behind = ""
	}
}

// strainer gives the id of the engine's strainer.
func (p *parter) strainer() string {
	c := p.card
	if len(c.Strain) == 0 {
		c.Strain = append(c.Strain, card.Strainer{ID: p.freeID("strainer"), Circuit: p.circuit(card.EngineOil)})
		p.cap(c.Strain[0].ID)
	}
	return c.Strain[0].ID
}

// cap gives what holds a strainer. Oil runs out there when it comes out.
func (p *parter) cap(strainer string) *card.Bolt {
	return p.fastener(card.StrainerCap, strainer, func() card.Bolt {
		return card.Bolt{ID: p.freeID("strainer-cap"), Purpose: card.StrainerCap, Circuit: p.circuit(card.EngineOil), Holds: strainer, Drains: true}
	})
}

// bolt gives a fastener of the list.
func (p *parter) bolt(of *part) *card.Bolt {
	circuit := p.circuit(of.role)
	switch of.purpose {
	case card.StrainerCap:
		return p.cap(p.strainer())
	case card.FilterCanned:
		kind := card.KindUnknown
		if p.said["bolt."+filterBolt+".turn"] {
			kind = card.SpinOn // what is turned on from where its gasket touches screws on itself
		}
		f := p.filter(kind)
		if f.Kind == card.KindUnknown {
			p.become(f, kind)
		}
		return p.filterBolt(f)
	case card.FilterCover:
		f := p.filter(card.Cartridge)
		if f.Kind == card.SpinOn && p.bare[f.ID] && !p.said["filter.kind"] && !p.said[filterBolt] {
			p.become(f, card.Cartridge)
		}
		if f.Kind == card.KindUnknown {
			p.covered(f)
		}
		return p.fastener(card.FilterCover, f.ID, func() card.Bolt {
			return card.Bolt{ID: p.freeID("cover-screw"), Purpose: card.FilterCover, Circuit: f.Circuit, Holds: f.ID}
		})
	case card.DrainPlug:
		return p.drain(of, circuit)
	}
	return p.opening(of, circuit)
}

// covered makes a filter whose kind nobody said one under a cover, since a page tells of
// that. What was said to close the filter is then the bolt through it, beside the cover.
func (p *parter) covered(f *card.Filter) {
	said := !p.holdersBare(f.ID)
	p.become(f, card.Cartridge)
	if said {
		cover := card.Bolt{ID: p.freeID("cover-screw"), Purpose: card.FilterCover, Circuit: f.Circuit, Holds: f.ID}
		p.card.Bolts = append([]card.Bolt{cover}, p.card.Bolts...)
	}
}

// filterBolt gives the fastener that is a filter itself, or the one bolt through its
// housing: that is none of several, nor the cover's, where the page tells of both.
func (p *parter) filterBolt(f *card.Filter) *card.Bolt {
	c, covers := p.card, 0
	for i := range c.Bolts {
		b := &c.Bolts[i]
		if f.Kind == card.SpinOn || b.Purpose != card.FilterCover || b.Holds != f.ID {
			continue
		}
		if covers++; b.Number() == 1 && !(covers == 1 && p.said["filter-cover"]) {
			return b
		}
	}
	if covers == 0 {
		return p.holder(f)
	}
	return p.add(card.Bolt{ID: p.freeID("filter-bolt"), Purpose: card.FilterCover, Circuit: f.Circuit, Holds: f.ID})
}

// at lists the fasteners of a purpose that close an oil; what names no oil closes the
// engine's.
func (p *parter) at(purpose card.Purpose, circuit string) (list []*card.Bolt) {
	for i := range p.card.Bolts {
		b := &p.card.Bolts[i]
		of := b.Circuit
		if of == "" {
			of = p.circuit(card.EngineOil)
		}
		if b.Purpose == purpose && of == circuit {
			list = append(list, b)
		}
	}
	return list
}

// drain gives the plug that drains an oil, or its tank. Where the engine has none but a
// strainer's cap out of which the oil runs, that is meant, unless the page tells of both.
func (p *parter) drain(of *part, circuit string) *card.Bolt {
	list := p.at(card.DrainPlug, circuit)
	for _, b := range list {
		if b.Tank == of.tank {
			return b
		}
	}
	if of.tank && len(list) > 1 && p.bare[list[1].ID] {
		list[1].Tank = true // of two plugs the card doesn't say which is the tank's
		return list[1]
	}
	if of.role == card.EngineOil && !of.tank && !p.said["strainer"] {
		for _, b := range p.at(card.StrainerCap, circuit) {
			if b.Drains {
				return b
			}
		}
	}
	return p.add(card.Bolt{ID: p.freeID("drain-plug"), Purpose: card.DrainPlug, Circuit: circuit, Drains: true, Tank: of.tank})
}

// opening gives what an oil's level is read at or what it is filled through. One that the
// card says nothing of may be the other of the two.
func (p *parter) opening(of *part, circuit string) *card.Bolt {
	if list := p.at(of.purpose, circuit); len(list) > 0 {
		return list[0]
	}
	other, stem := card.LevelScrew, "filler-cap"
	if of.purpose == card.LevelScrew {
		other, stem = card.FillerCap, "level-screw"
	}
	for _, b := range p.at(other, circuit) {
		if p.bare[b.ID] && of.role != card.EngineOil && bareBolt(b) {
			b.Purpose, b.Drive = of.purpose, ""
			return b
		}
	}
	return p.add(card.Bolt{ID: p.freeID(stem), Purpose: of.purpose, Circuit: circuit})
}

func (p *parter) add(b card.Bolt) *card.Bolt {
	p.card.Bolts = append(p.card.Bolts, b)
	return &p.card.Bolts[len(p.card.Bolts)-1]
}
