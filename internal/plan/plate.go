package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// PlateFigure is a figure on the plate of a plan: what somebody who has done the job
// before reads first. Its name and texts are filled from its values.
type PlateFigure struct {
	shown.Figure
	About  string   // id of the circuit or fastener
	Words  bool     // its text is words, and no number that is drawn large
	Count  int      // how many of them, where more than one is tightened so
	Beside []string // what is read with it: texts, or word ids after "@"
}

// Members names the members of a figure on the plate.
func (f *PlateFigure) Members(m *wire.Members) {
	f.Figure.Members(m)
	m.String("of", &f.About, wire.Required)
	m.Bool("words", &f.Words)
	m.Int("count", &f.Count)
	wire.Texts(m, "beside", &f.Beside)
}

// OnPlate puts a figure on a plate. More values are names and texts in turn.
func OnPlate(figure shown.Figure, about string, values ...string) PlateFigure {
	f := PlateFigure{Figure: figure, About: about}
	f.Values = map[string]string{}
	for name, text := range figure.Values {
		f.Values[name] = text
	}
	for i := 0; i+1 < len(values); i += 2 {
		f.Values[values[i]] = values[i+1]
	}
	return f
}

// LayPlate lays out the plate, for who reads the plan: each oil of the day with what is
// poured first and its kind, then how tight its fasteners get; last those that belong to
// none. A replay needs none of it, and so Make doesn't.
func (p *Plan) LayPlate() {
	p.Plate = nil
	(&planner{day: p.day, plan: p}).plate()
}

func (p *planner) plate() {
	onPlate := make([]bool, len(p.plan.Bolts))
	fasteners := func(circuit string) {
		for i := range p.plan.Bolts {
			if onPlate[i] || circuit != "" && p.home(&p.card.Bolts[i]) != circuit || !p.tightened(i) {
				continue
			}
			onPlate[i] = true
			p.plan.Plate = append(p.plan.Plate, p.tight(i))
		}
	}
	for i := range p.plan.Oils {
		if o := &p.plan.Oils[i]; o.Today {
			p.poured(o)
			fasteners(o.Circuit)
		}
	}
	fasteners("")
}

// poured is how much of which oil goes in.
func (p *planner) poured(o *Oil) {
	c := p.card.Circuit(o.Circuit)
	due := OnPlate(o.Due, c.ID, "of", "@"+o.Role)
	due.Name = "plate.oil"
	switch {
	case p.filterChanged(c.ID):
		due.Name = "plate.oil.with-filter"
	case p.hasFilter(c.ID):
		due.Name = "plate.oil.filter-stays"
	}
	p.plan.Plate = append(p.plan.Plate, due)
	if p.pourWord(c) == "pour" {
		first := OnPlate(p.firstPour(c), c.ID, "rest", p.keepBack(c).First())
		first.Beside = []string{"@plate.rest"}
		p.plan.Plate = append(p.plan.Plate, first)
	}
	need := OnPlate(o.Need, c.ID)
	need.Words = true
	p.plan.Plate = append(p.plan.Plate, need)
}

// tight is how tight a fastener gets, by its number, and with what it is turned. Where
// several are of one kind, it is called by its place.
func (p *planner) tight(i int) PlateFigure {
	b, s := &p.card.Bolts[i], &p.plan.Bolts[i]
	figure := s.Torque
	if s.By == ByTurn {
		figure = *s.Turn
	}
	tool := p.driver(b)
	f := OnPlate(figure, b.ID, "size", tool.Values["size"])
	f.Name = s.Purpose
	for n := range p.plan.Bolts {
		if other := &p.plan.Bolts[n]; n != i && other.Purpose == s.Purpose && b.Place != "" && p.tightened(n) {
			f.Values["place"], f.Name = b.Place, "plate.place"
		}
	}
	if b.Number() > 1 {
		f.Count = b.Number()
	}
	if s.By == ByTurn {
		f.Beside = append(f.Beside, "@plate.touches")
	}
	word := "plate." + tool.Word
	if b.Drive == card.Hand {
		word = "drive.hand"
	}
	f.Beside = append(f.Beside, "@"+word)
	return f
}

// tightened reports whether a step says how tight a fastener gets, by its number.
func (p *planner) tightened(i int) bool {
	for n := range p.plan.Steps {
		s := &p.plan.Steps[n]
		for k := range s.Figures {
			if f := s.Figures[k].Name; s.Subject == p.plan.Bolts[i].ID && (f == "figure.torque" || f == "figure.turn") {
				return true
			}
		}
	}
	return false
}
