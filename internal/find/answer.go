package find

import (
	"slices"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/roadside"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Reply is what a card knows of one thing that was asked: of an oil, of a fastener, or of
// how long the oil lasts. Its figures are those of the plan.
type Reply struct {
	Of      string // word id of what it is told of
	Place   string // of a fastener, in the card's words
	Count   int
	Figures []shown.Figure
	Tool    []string // as in plan.BoltSheet
	Thread  string
	Lines   []roadside.Line // how a level is read
	Lacks   bool            // the card has nothing of that kind
}

// Members names the members of a reply.
func (a *Reply) Members(m *wire.Members) {
	m.String("of", &a.Of, wire.Required)
	m.String("place", &a.Place)
	m.Int("count", &a.Count)
	wire.List(m, "figures", &a.Figures)
	wire.Texts(m, "tool", &a.Tool)
	m.String("thread", &a.Thread)
	wire.List(m, "lines", &a.Lines)
	m.Bool("lacks", &a.Lacks)
}

// purposes are the fasteners of each thing that is opened.
var purposes = [...]struct {
	thing   Thing
	purpose []card.Purpose
}{
	{Drain, []card.Purpose{card.DrainPlug}},
	{Filter, []card.Purpose{card.FilterCanned, card.FilterCover, card.FilterClosed}},
	{Strainer, []card.Purpose{card.StrainerCap}},
	{Filler, []card.Purpose{card.FillerCap}},
	{LevelScrew, []card.Purpose{card.LevelScrew}},
}

// roles are the oils that a thing names.
var roles = [...]struct {
	thing Thing
	role  card.Role
}{{Engine, card.EngineOil}, {Gearbox, card.GearboxOil}, {Primary, card.PrimaryOil}, {FinalDrive, card.FinalDrive}}

// reader answers one question of one card.
type reader struct {
	card  *card.Checked
	plan  *plan.Plan
	ask   []Thing
	roles []card.Role // that are asked of; empty for all
	list  []Reply
}

// Answers says what a card knows of the things that are asked, in the order of the plan: a
// thing that it doesn't have is said to be none, a figure that it doesn't know to be not
// known. The findings are those of the bench.
func Answers(c *card.Checked, ask []Thing, b plan.Bench) ([]Reply, []finding.Finding) {
	p, list := plan.Make(c, b)
	if p == nil {
		return nil, list
	}
	r := &reader{card: c, plan: p, ask: ask}
	for _, of := range roles {
		if r.asks(of.thing) {
			r.roles = append(r.roles, of.role)
		}
	}
	r.oils()
	r.fasteners()
	r.interval()
	return r.list, nil
}

func (r *reader) asks(things ...Thing) bool {
	return slices.ContainsFunc(things, func(t Thing) bool { return slices.Contains(r.ask, t) })
}

// serves reports whether the oil of that circuit is asked of.
func (r *reader) serves(c *card.Circuit) bool {
	return len(r.roles) == 0 || c != nil && slices.Contains(r.roles, c.Role)
}

// oils tells of the oils: of all that is known of one where nothing narrower is asked.
func (r *reader) oils() {
	opened := r.asks(Drain, Filter, Strainer, Filler, LevelScrew, Torque, Tool, Washer)
	whole := r.asks(Oil) || !opened && !r.asks(Volume, Grade, Level, Interval) && len(r.roles) > 0
	if !whole && !r.asks(Volume, Grade, Level) {
		return
	}
	known := 0
	for i := range r.plan.Oils {
		o := &r.plan.Oils[i]
		c := r.circuit(o.Circuit)
		if !r.serves(c) {
			continue
		}
		known++
		a := Reply{Of: o.Role}
		if whole || r.asks(Volume) {
			a.Figures = append(append(a.Figures, o.Due), o.Figures...)
		}
		if whole || r.asks(Grade) {
			a.Figures = append(a.Figures, o.Need)
			if o.Rows != nil {
				a.Figures = append(a.Figures, *o.Rows)
			}
		}
		if r.asks(Level) {
			r.level(&a, c)
		}
		r.list = append(r.list, a)
	}
	if known == 0 {
		r.none()
	}
}

// none says that the card has no oil of those that are asked of.
func (r *reader) none() {
	for _, role := range r.roles {
		r.list = append(r.list, Reply{Of: "role." + string(role), Lacks: true})
	}
}

// level adds how the level of an oil is read, and how much lies between its marks.
func (r *reader) level(a *Reply, c *card.Circuit) {
	for _, l := range roadside.Levels(r.card, r.plan.Printer().System) {
		if l.Circuit == c.ID {
			a.Lines = l.Lines
		}
	}
	if c.Level.Band != nil || c.Level.Device.Stick() || c.Level.Device == card.Window {
		a.Figures = append(a.Figures, r.plan.Printer().Card("band", c.Level.Band, "level"))
	}
}

func (r *reader) circuit(id string) *card.Circuit { return r.card.Card().Circuit(id) }

// fasteners tells of what is opened. What is asked of none of them is told of each that
// is worth reading before a job.
func (r *reader) fasteners() {
	named := false
	for n := range purposes {
		if of := &purposes[n]; r.asks(of.thing) {
			named = true
			some := false
			for i := range r.plan.Bolts {
				if b := &r.plan.Bolts[i]; slices.ContainsFunc(of.purpose, func(p card.Purpose) bool { return b.Purpose == purposeWord(p) }) {
					some = r.fastener(b) || some
				}
			}
			if of.thing == Drain && !some {
				some = r.drains()
			}
			if !some {
				r.list = append(r.list, Reply{Of: purposeWord(of.purpose[0]), Lacks: true})
			}
		}
	}
	if named || !r.asks(Torque, Tool, Washer) {
		return
	}
	for i := range r.plan.Bolts {
		if b := &r.plan.Bolts[i]; b.Listed {
			r.fastener(b)
		}
	}
}

// drains tells of what oil runs out of where no drain plug does: a strainer's cap.
func (r *reader) drains() bool {
	some := false
	for i := range r.plan.Bolts {
		if b := &r.plan.Bolts[i]; r.bolt(b.ID).Drains {
			some = r.fastener(b) || some
		}
	}
	return some
}

func purposeWord(p card.Purpose) string { return "purpose." + string(p) }

// bolt is the fastener of a sheet, as the plan has it: with those that hold what no
// fastener of the card holds.
func (r *reader) bolt(id string) *card.Bolt {
	bolts := r.plan.Card().Bolts
	return &bolts[slices.IndexFunc(bolts, func(b card.Bolt) bool { return b.ID == id })]
}

// fastener tells of one, unless it closes another oil than those that are asked of.
func (r *reader) fastener(s *plan.BoltSheet) bool {
	b := r.bolt(s.ID)
	if !r.serves(r.circuit(b.Circuit)) {
		return false
	}
	a := Reply{Of: s.Purpose, Place: s.Place, Thread: s.Thread}
	if s.Count > 1 {
		a.Count = s.Count
	}
	whole := !r.asks(Torque, Tool, Washer)
	if whole || r.asks(Torque) {
		a.Figures = append(a.Figures, tight(s))
	}
	if whole || r.asks(Tool) {
		a.Tool = s.Tool
		if r.asks(Tool) && b.Drive != card.Hand && b.Drive != card.Strap {
			a.Figures = append(a.Figures, s.Size)
		}
	}
	if whole || r.asks(Washer) {
		a.Figures = append(a.Figures, r.seals(b, r.asks(Washer))...)
	}
	r.list = append(r.list, a)
	return true
}

// tight is how tight a fastener gets: its torque, or what counts in its place.
func tight(s *plan.BoltSheet) shown.Figure {
	if s.By == plan.ByTurn && s.Turn != nil {
		return *s.Turn
	}
	return s.Torque
}

// seals are the washers and rings of a fastener, or of what it holds, each by its kind.
func (r *reader) seals(b *card.Bolt, asked bool) []shown.Figure {
	var list []shown.Figure
	add := func(s *card.Seal) {
		f := shown.Unknown("seal", "seal")
		f.Name = "seal." + string(s.Kind)
		if size := plan.SealSize(s); size != "" {
			known := r.plan.Printer().Card("size", s.Inner, "seal")
			known.Name, known.Texts = f.Name, []string{size}
			f = known
		}
		list = append(list, f)
	}
	if b.Seal != nil {
		add(b.Seal)
	}
	c := r.plan.Card()
	for i := range c.Filters {
		for n := range c.Filters[i].Seals {
			if c.Filters[i].ID == b.Holds {
				add(&c.Filters[i].Seals[n])
			}
		}
	}
	for i := range c.Strain {
		for n := range c.Strain[i].Seals {
			if c.Strain[i].ID == b.Holds {
				add(&c.Strain[i].Seals[n])
			}
		}
	}
	if asked && len(list) == 0 {
		list = append(list, shown.Unknown("seal", "seal"))
	}
	return list
}

// interval tells after what distance and time the oil is due again.
func (r *reader) interval() {
	if !r.asks(Interval) {
		return
	}
	span, print := r.plan.Interval(), r.plan.Printer()
	a := Reply{Of: "asked.interval", Figures: []shown.Figure{
		print.Card("interval-distance", span.Distance, "interval"), print.Card("interval-time", span.Time, "interval")}}
	if span.Hours.Known() {
		a.Figures = append(a.Figures, print.Card("interval-hours", span.Hours, "interval"))
	}
	r.list = append(r.list, a)
}
