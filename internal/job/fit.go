package job

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/drain"
	"tidysump/internal/fill"
	"tidysump/internal/quantity"
)

// put fits a recipe to its subject and adds it as a step.
func (p *planner) put(word string, on subject) {
	r := recipeOf(word)
	s := Step{ID: word, Stage: p.stage, Word: "step." + word, Must: r.must, Values: p.values(word, on)}
	if id := on.id(); id != "" {
		s.ID += "-" + id
	}
	for _, w := range r.warns {
		if p.warnHolds(w, on) {
			s.Warns = append(s.Warns, Warn{p.signal(w), "caution." + w})
		}
	}
	for _, f := range r.figures {
		if f == "torque" && on.bolt.Turn.Known() && !on.bolt.Torque.Known() {
			continue // tightened by the turn: there is no torque to look for
		}
		s.Figures = append(s.Figures, p.figure(f, on))
	}
	for _, what := range r.asks {
		s.Asks = append(s.Asks, p.ask(what, on))
	}
	for _, op := range r.helps {
		if h, ok := p.help(op, on); ok {
			s.Helps = append(s.Helps, h)
		}
	}
	p.plan.Steps = append(p.plan.Steps, s)
}

// signal is a caution's signal word today: oil that is read hot is at 80 °C
// and more and could injure seriously; warm oil burns less deep.
func (p *planner) signal(word string) Signal {
	if word == "hot-oil" && p.anythingIsHot() {
		return Warning
	}
	return signalOf(word)
}

// warnHolds reports whether a caution is called for; most always are.
func (p *planner) warnHolds(word string, on subject) bool {
	switch word {
	case "traffic":
		return p.bench.Place == Roadside
	case "oil-on-exhaust":
		return on.filter.Mount == "sideways"
	case "wrench-unit":
		return on.bolt.Torque.Known()
	case "torque-unknown":
		return !on.bolt.Torque.Known()
	}
	return true
}

// figure finds the figure of that name.
func (p *planner) figure(name string, on subject) Shown {
	switch name {
	case "grade":
		return p.need(on.circuit)
	case "due":
		return p.show(name, p.volume(on.circuit), "volume")
	case "wait":
		return p.show(name, on.circuit.Level.Wait, "level")
	case "band":
		return p.show(name, on.circuit.Level.Band, "level")
	case "size":
		return p.show(name, on.bolt.Size, "size")
	case "torque":
		return p.show(name, on.bolt.Torque, "torque")
	case "turn":
		return p.show(name, on.bolt.Turn, "turn")
	case "warm-target":
		return p.practice(name, quantity.Temperature, drain.WarmLow, drain.WarmHigh, "°C")
	case "run-out":
		return p.practice(name, quantity.Duration, drain.RunOutLow, drain.RunOutHigh, "min")
	case "first-pour":
		return p.firstPour(on.circuit)
	case "interval-distance":
		return p.show(name, p.card.Interval.Distance, "interval")
	}
	return p.show(name, p.card.Interval.Time, "interval")
}

// practice is a range that is a trade habit.
func (p *planner) practice(name string, kind quantity.Kind, low, high float64, unit string) Shown {
	return Shown{Name: "figure." + name, Standing: card.Estimated, Method: "@method.practice",
		Texts: quantity.Join(texts(kind, low, unit, 2, p.bench.System), texts(kind, high, unit, 2, p.bench.System))}
}

// firstPour is what goes in before the first start.
func (p *planner) firstPour(c *card.Circuit) Shown {
	due, _ := p.volume(c).Amount()
	return Shown{Name: "figure.first-pour", Standing: card.Estimated, Method: "@method.first-share",
		Texts: texts(quantity.Volume, fill.First(due.Base), due.Unit, 2, p.bench.System)}
}

// ask fits a reading to its subject.
func (p *planner) ask(what string, on subject) Ask {
	a := Ask{What: what, Of: on.id()}
	us, metric := p.bench.System == quantity.US, p.bench.System == quantity.Metric
	switch {
	case what == AskLevel:
		a.Choice = levels
	case what == AskOdometer && metric:
		a.Unit = "km"
	case what == AskOdometer:
		a.Unit = "mi"
	case what == AskTorque && us:
		a.Unit = "lbf·ft"
	case what == AskTorque:
		a.Unit = "N·m"
	case metric:
		a.Unit = "L"
	case us:
		a.Unit = "US qt"
	default:
		a.Unit = "imp pt"
	}
	return a
}

// values fills the placeholders that a step's sentences may have.
func (p *planner) values(word string, on subject) map[string]string {
	switch {
	case on.circuit != nil:
		return p.circuitValues(on.circuit)
	case on.bolt != nil:
		return p.boltValues(on.bolt)
	case on.filter != nil:
		return p.filterValues(on.filter)
	case on.strain != nil:
		return map[string]string{"place": on.strain.Place}
	}
	return p.plainValues(word)
}

func (p *planner) circuitValues(c *card.Circuit) map[string]string {
	v := map[string]string{
		"of":     "@role." + string(c.Role),
		"where":  orWord(c.Level.Where, "not-known"),
		"device": idOr("device.", c.Level.Device),
		"state":  idOr("state.", c.Level.State),
		"stance": idOr("stance.", c.Level.Stance),
	}
	if due := p.show("due", p.volume(c), "volume"); len(due.Texts) > 0 {
		v["volume"], v["first"] = due.First(), p.firstPour(c).First()
	}
	return v
}

func (p *planner) boltValues(b *card.Bolt) map[string]string {
	v := map[string]string{
		"of":      "@not-known",
		"purpose": "@purpose." + string(b.Purpose),
		"place":   b.Place,
		"drive":   idOr("drive.", b.Drive),
		"thread":  orWord(b.Thread, "not-known"),
		"seal":    "@seal.none",
		"count":   strconv.Itoa(b.Number()),
	}
	if b.Seal != nil {
		v["seal"] = "@seal." + b.Seal.Kind
	}
	if c := circuitOf(p.card, b.Circuit); c != nil {
		v["of"] = "@role." + string(c.Role)
	}
	return v
}

func (p *planner) filterValues(f *card.Filter) map[string]string {
	screws := 0
	for _, b := range p.holding(f.ID) {
		if b.Purpose == card.FilterCover {
			screws += b.Number()
		}
	}
	return map[string]string{"place": f.Place, "mount": idOr("mount.", f.Mount), "screws": strconv.Itoa(screws)}
}

// plainValues are those of the steps that are about no single thing.
func (p *planner) plainValues(word string) map[string]string {
	switch word {
	case "identify":
		return map[string]string{"bike": p.plan.Name}
	case "free-filler", "caps-on":
		return map[string]string{"places": p.namesOf(func(b *card.Bolt) bool {
			return b.Purpose == card.FillerCap && p.doing(b.Circuit)
		})}
	case "name-plugs":
		return map[string]string{"places": p.namesOf(p.opens), "leave": p.namesOf(p.left)}
	case "tray":
		size, _ := p.tray()
		return map[string]string{"volume": size}
	case "count":
		n := 0
		for _, b := range p.boltsWhere(p.opened) {
			n += b.Number()
		}
		return map[string]string{"count": strconv.Itoa(n), "places": p.namesOf(p.opened)}
	}
	return nil
}

// namesOf names the places of fasteners, for a sentence.
func (p *planner) namesOf(want func(*card.Bolt) bool) string {
	var names []string
	for _, b := range p.boltsWhere(want) {
		if b.Place != "" {
			names = append(names, b.Place)
		}
	}
	if len(names) == 0 {
		return "@none-on-card"
	}
	return strings.Join(names, "; ")
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
