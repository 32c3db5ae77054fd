package job

import (
	"slices"
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/shown"
)

// drafter lays out lines.
type drafter struct {
	*replayer
	list  []PageLine
	taken map[string]bool // steps that stand on a line
}

func (d *drafter) add(l PageLine) {
	for _, id := range l.Steps {
		d.taken[id] = true
	}
	d.list = append(d.list, l)
}

// asked reports whether a step has its turn: what comes after the job only once it is
// finished.
func (d *drafter) asked(s *plan.Step) bool { return !s.After || d.state.Finished != "" }

// stage gives each step of a stage a line.
func (d *drafter) stage(stage plan.Stage) {
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		if s.Stage != stage || !d.asked(s) {
			continue
		}
		l := PageLine{ID: s.ID, Part: PageSteps, Word: s.Word, Values: s.Values, Steps: []string{s.ID}, Figures: s.Figures}
		for _, a := range s.Asks {
			l.Asks = append(l.Asks, PageAsk{Ask: a, Step: s.ID})
		}
		if len(s.Signs) > 0 {
			l.Looks = []string{s.ID}
			l.Asks = append(l.Asks, seen())
		}
		d.add(l)
	}
}

func seen() PageAsk { return PageAsk{Ask: plan.Ask{What: AskSeen, Choice: []string{AnswerNothing}}} }

// whole lays out the page of the whole job.
func (d *drafter) whole() {
	d.openings()
	for _, c := range d.plan.Circuits() {
		d.oil(c)
	}
	var looks, rest []string
	for i := range d.plan.Steps {
		if s := &d.plan.Steps[i]; len(s.Signs) > 0 && d.asked(s) {
			looks = append(looks, s.ID)
			d.taken[s.ID] = true
		}
	}
	if len(looks) > 0 {
		d.list = append(d.list, PageLine{ID: "seen", Part: PageSeen, Word: "page.seen", Asks: []PageAsk{seen()}, Looks: looks})
	}
	for _, what := range [...]string{plan.AskLeak, plan.AskOdometer} {
		d.once(what)
	}
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		switch {
		case d.taken[s.ID] || !d.asked(s):
		case s.Must:
			d.add(PageLine{ID: s.ID, Part: PageGates, Word: s.Word, Values: s.Values, Steps: []string{s.ID}})
		case len(s.Asks) == 0:
			rest = append(rest, s.ID)
		}
	}
	if len(rest) > 0 {
		d.add(PageLine{ID: "rest", Part: PageRest, Word: "page.rest", Values: map[string]string{"count": strconv.Itoa(len(rest))}, Steps: rest})
	}
}

// once puts a line for the first step that asks for something of the bike as a whole,
// with whatever else is asked there.
func (d *drafter) once(what string) {
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		if d.taken[s.ID] || !d.asked(s) || !slices.ContainsFunc(s.Asks, func(a plan.Ask) bool { return a.What == what }) {
			continue
		}
		l := PageLine{ID: s.ID, Part: PageSeen, Word: "ask." + what, implied: []string{s.ID}}
		for _, a := range s.Asks {
			l.Asks = append(l.Asks, PageAsk{Ask: a, Step: s.ID})
		}
		d.taken[s.ID] = true
		d.list = append(d.list, l)
		if what != plan.AskLeak {
			return
		}
	}
}

// oil puts the lines of a circuit: out, in, and where it stands at the end.
func (d *drafter) oil(c *card.Circuit) {
	role := map[string]string{"of": "@role." + string(c.Role)}
	line := func(what string, s *plan.Step, a plan.Ask, further ...string) {
		l := PageLine{ID: what + "." + c.ID, Part: PageOil, Word: "page." + what, Values: role, Asks: []PageAsk{{Ask: a, Step: s.ID}}}
		for _, id := range append([]string{s.ID}, further...) {
			if !d.taken[id] {
				l.implied = append(l.implied, id)
				d.taken[id] = true
			}
		}
		d.list = append(d.list, l)
	}
	if s, a, found := d.askingOf(c.ID, plan.AskDrained, nil); found {
		line("out", s, a)
	}
	s, a, found := d.askingOf(c.ID, plan.AskPoured, func(s *plan.Step) bool { return s.Pours == c.ID })
	if !found {
		s, a, found = d.askingOf(c.ID, plan.AskPoured, func(s *plan.Step) bool { return !s.Interim })
	}
	level, where, read := d.askingOf(c.ID, plan.AskLevel, func(s *plan.Step) bool { return !s.Finds && !s.Interim && d.asked(s) && !s.After })
	if found {
		if a.Card = d.plan.Taken(c); read && s.ID == level.ID {
			d.list = append(d.list, PageLine{ID: "in." + c.ID, Part: PageOil, Word: "page.in", Values: role, Asks: []PageAsk{{Ask: a, Step: s.ID}}})
		} else {
			line("in", s, a)
		}
	}
	if read {
		line("level", level, where)
	}
}

// askingOf gives the first step that asks for something of a circuit and for which it
// holds, with the question.
func (d *drafter) askingOf(circuit, what string, holds func(*plan.Step) bool) (*plan.Step, plan.Ask, bool) {
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		if holds != nil && !holds(s) {
			continue
		}
		for _, a := range s.Asks {
			if a.What == what && a.About == circuit {
				return s, a, true
			}
		}
	}
	return nil, plan.Ask{}, false
}

// openings puts a line for each thing that is opened: all steps about a fastener, about
// what it holds, and about fasteners that one of these steps opens or closes with it.
func (d *drafter) openings() {
	bolts := d.plan.Card().Bolts
	group := map[string]string{} // of fasteners, filters and strainers: the one that stands for its group
	root := func(id string) string {
		for group[id] != "" && group[id] != id {
			id = group[id]
		}
		return id
	}
	join := func(x, y string) {
		if x, y = root(x), root(y); x != y && x != "" && y != "" {
			group[y] = x
		}
	}
	for i := range bolts {
		join(bolts[i].ID, bolts[i].Holds)
	}
	for i := range d.plan.Steps {
		for _, list := range [...][]string{d.plan.Steps[i].Opens, d.plan.Steps[i].Closes} {
			for k := 1; k < len(list) && !d.ofOil(&d.plan.Steps[i]); k++ {
				join(list[0], list[k])
			}
		}
	}
	places := map[string]int{} // of lines, by what stands for their groups
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		of := d.thing(s)
		if of == "" || !d.asked(s) {
			continue
		}
		of = root(of)
		n, begun := places[of]
		if !begun {
			n = len(d.list)
			places[of] = n
			d.list = append(d.list, PageLine{ID: "opened." + of, Part: PageOpened, Word: "page.opened"})
		}
		l := &d.list[n]
		l.Steps = append(l.Steps, s.ID)
		d.taken[s.ID] = true
		if len(s.Closes) > 0 {
			for _, f := range s.Figures {
				if len(f.Texts) > 0 && !slices.ContainsFunc(l.Figures, func(have shown.Figure) bool { return have.Name == f.Name && have.First() == f.First() }) {
					l.Figures = append(l.Figures, f)
				}
			}
			for _, a := range s.Asks {
				have := slices.IndexFunc(l.Asks, func(have PageAsk) bool { return have.What == a.What && have.About == a.About })
				if have >= 0 {
					l.Asks[have].Step = s.ID // the last time it was closed counts
				} else {
					l.Asks = append(l.Asks, PageAsk{Ask: a, Step: s.ID})
				}
			}
		}
	}
	for _, n := range places {
		d.title(&d.list[n], root)
	}
}

// ofOil reports whether a step is about an oil: that its filler is opened for the air is
// no reason to take two fillers for one thing.
func (d *drafter) ofOil(s *plan.Step) bool { return d.plan.Card().Circuit(s.Subject) != nil }

// thing gives the id of the fastener, filter or strainer that a step opens, closes or
// handles; empty for one that looks, or that is about an oil.
func (d *drafter) thing(s *plan.Step) string {
	switch {
	case len(s.Signs) > 0 || d.ofOil(s):
	case s.Subject != "":
		return s.Subject
	case len(s.Closes) > 0:
		return s.Closes[0]
	case len(s.Opens) > 0:
		return s.Opens[0]
	}
	return ""
}

// title says what a line about fasteners is about: the first of them that its steps open
// or close, and the places of all.
func (d *drafter) title(l *PageLine, root func(string) string) {
	var ids, places []string
	for _, id := range l.Steps {
		s := d.plan.Step(id)
		for _, bolt := range append(slices.Clone(s.Opens), s.Closes...) {
			if !slices.Contains(ids, bolt) {
				ids = append(ids, bolt)
			}
		}
	}
	purpose, count := "", 0
	for _, id := range ids {
		b := d.plan.Card().Bolt(id)
		if b == nil {
			continue
		}
		if purpose == "" {
			purpose = "@purpose." + string(b.Purpose)
		}
		if count += b.Number(); b.Place != "" && !slices.Contains(places, b.Place) {
			places = append(places, b.Place)
		}
	}
	if purpose == "" { // nothing is opened at it: what the first step says stands
		first := d.plan.Step(l.Steps[0])
		l.Word, l.Values = first.Word, first.Values
		return
	}
	l.Values = map[string]string{"purpose": purpose, "count": strconv.Itoa(count), "place": plan.JoinPlaces(places, "unknown.place")}
	if count > 1 {
		l.Word = "page.opened.several"
	}
}
