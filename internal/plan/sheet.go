package plan

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Oil is the sheet of one circuit: what goes in and how much.
type Oil struct {
	Circuit string
	Role    string // word id
	Today   bool
	// Due is the volume for today; Figures are the others on the card.
	Due     shown.Figure
	Figures []shown.Figure
	Grades  []string
	Marks   []string
	Service string
	Need    shown.Figure // the standing of grade and mark
	// Chart is the grade that the card's chart gives for the air expected; Rows are all
	// that it says. Only where the card has a chart for the oil.
	Chart *shown.Figure
	Rows  *shown.Figure
	// Read is what the card knows of how its level is read: how long the engine runs
	// before, and the wait.
	Read []shown.Figure
	// Quoted are the words that come from the words of a manual.
	Quoted []shown.Figure
}

// Members names the sheet's members.
func (o *Oil) Members(m *wire.Members) {
	m.String("circuit", &o.Circuit, wire.Required)
	m.String("role", &o.Role, wire.Required)
	m.Bool("today", &o.Today)
	m.Object("due", &o.Due)
	wire.List(m, "figures", &o.Figures)
	wire.Texts(m, "grades", &o.Grades)
	wire.Texts(m, "marks", &o.Marks)
	m.String("service", &o.Service)
	m.Object("need", &o.Need)
	wire.Optional(m, "chart", &o.Chart)
	wire.Optional(m, "rows", &o.Rows)
	wire.List(m, "read", &o.Read)
	wire.List(m, "quoted", &o.Quoted)
}

func (p *planner) oils() {
	for i := range p.card.Circuits {
		c := &p.card.Circuits[i]
		o := Oil{Circuit: c.ID, Role: "role." + string(c.Role), Today: p.doing(c.ID) && !p.bench.GetHome,
			Due:    p.print.Card("due", p.volume(c), "volume"),
			Grades: c.Oil.Grades, Marks: c.Oil.Marks, Service: c.Oil.Service, Need: p.need(c), Quoted: p.quoted(c.ID)}
		o.Chart, o.Rows = p.charted(c)
		switch {
		case p.filterChanged(c.ID):
			o.Figures = append(o.Figures, p.print.Card("oil-only", c.OilOnly, "volume"))
		case p.hasFilter(c.ID):
			o.Figures = append(o.Figures, p.print.Card("with-filter", c.WithFilt, "volume"))
		}
		if c.Dry.Known() {
			dry := p.print.Card("dry", c.Dry, "volume")
			if c.Role != card.EngineOil {
				dry = p.print.Card("dry-other", c.Dry, "volume")
			}
			o.Figures = append(o.Figures, dry)
		}
		for _, name := range []string{"run", "wait"} {
			if f := p.figure(name, subject{circuit: c}); f.Standing != card.Unknown && hasGauge(c) {
				o.Read = append(o.Read, f)
			}
		}
		if o.Today {
			if o.Due.Standing == card.Unknown {
				p.gap("volume", "volume", o.Role, "")
			}
			if o.Need.Standing == card.Unknown {
				p.gap("grade", "grade", o.Role, "")
			}
			p.levelGaps(c, o.Role)
		}
		p.plan.Oils = append(p.plan.Oils, o)
	}
}

func (d *day) hasFilter(circuit string) bool {
	for _, f := range d.card.Filters {
		if f.Circuit == circuit && f.Kind != card.Centrifugal {
			return true
		}
	}
	return false
}

// BoltSheet is the sheet of one fastener.
type BoltSheet struct {
	ID      string
	Purpose string // word id
	Place   string
	Count   int
	Thread  string
	Drive   string // word id
	Size    shown.Figure
	Tool    []string // what it is turned with: a word id after "@", and a size if it has one; empty when not known
	Torque  shown.Figure
	Turn    *shown.Figure
	By      Measure        // which of the two counts
	Seal    string         // word id of the kind
	SealFor string         // its size, "12 × 16 × 1.5 mm"
	Today   bool           // turned today
	Listed  bool           // how tight it gets today is worth reading beforehand
	Leave   bool           // to be left alone today
	Quoted  []shown.Figure // as an oil has them
}

// Members names the sheet's members.
func (b *BoltSheet) Members(m *wire.Members) {
	m.String("id", &b.ID, wire.Required)
	m.String("purpose", &b.Purpose, wire.Required)
	m.String("place", &b.Place)
	m.Int("count", &b.Count)
	m.String("thread", &b.Thread)
	m.String("drive", &b.Drive)
	m.Object("size", &b.Size)
	wire.Texts(m, "tool", &b.Tool)
	m.Object("torque", &b.Torque)
	wire.Optional(m, "turn", &b.Turn)
	wire.Text(m, "by", &b.By)
	m.String("seal", &b.Seal)
	m.String("sealSize", &b.SealFor)
	m.Bool("today", &b.Today)
	m.Bool("listed", &b.Listed)
	m.Bool("leave", &b.Leave)
	wire.List(m, "quoted", &b.Quoted)
}

func (p *planner) bolts() {
	for i := range p.card.Bolts {
		b := &p.card.Bolts[i]
		s := BoltSheet{ID: b.ID, Purpose: "purpose." + string(b.Purpose), Place: b.Place, Count: b.Number(),
			Thread: b.Thread, Size: p.print.Card("size", b.Size, "size"), Torque: p.print.Card("torque", b.Torque, "torque"),
			By: measureOf(b), Today: p.turned(b), Listed: p.listed(b), Leave: p.left(b), Quoted: p.quoted(b.ID)}
		s.Tool = toolOf(b, &s.Size)
		if b.Drive != "" {
			s.Drive = "drive." + string(b.Drive)
		}
		switch s.By {
		case ByHand:
			s.By = ByTurn // the filter or its box says how far
			fallthrough
		case ByTurn:
			turn := p.print.Card("turn", b.Turn, "turn")
			s.Turn = &turn
		}
		if b.Turn.Known() && b.Purpose != card.FilterCanned {
			turn := p.print.Card("turn", b.Turn, "turn")
			s.Turn = &turn
		}
		if b.Seal != nil {
			s.Seal, s.SealFor = "seal."+string(b.Seal.Kind), SealSize(b.Seal)
		}
		if s.Today && p.turnedWith(b) && b.Purpose != card.Panel {
			p.boltGaps(b, s.Purpose)
		}
		p.plan.Bolts = append(p.plan.Bolts, s)
	}
}

// listed reports whether how tight a fastener gets is worth reading before the job:
// what is closed by hand has no figure, and a panel without one is closed by feel.
func (d *day) listed(b *card.Bolt) bool {
	byFeel := b.Purpose == card.Panel && !b.Torque.Known()
	return d.turned(b) && wrenched(b) && !byFeel
}

// toolOf says what a fastener is turned with. A hand and a strap have no size.
func toolOf(b *card.Bolt, size *shown.Figure) []string {
	switch b.Drive {
	case "":
		return nil
	case card.Hand, card.Strap:
		return []string{"@drive." + string(b.Drive)}
	}
	return []string{"@drive." + string(b.Drive), size.First()}
}

// SealSize gives "12 × 16 × 1.5 mm", inner × outer × thickness; "" unless the
// inner diameter and one more are known.
func SealSize(s *card.Seal) string {
	inner, ok := s.Inner.Amount()
	if !ok {
		return ""
	}
	parts := []string{number(inner.Print("mm"))}
	for _, f := range []*card.Figure{s.Outer, s.Thickness} {
		if a, ok := f.Amount(); ok {
			parts = append(parts, number(a.Print("mm")))
		}
	}
	if len(parts) < 2 {
		return ""
	}
	return strings.Join(parts, " × ") + " mm"
}

func number(s string) string {
	n, _, _ := strings.Cut(s, " ")
	return n
}
