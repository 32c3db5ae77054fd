package plan

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/drain"
	"tidysump/internal/fill"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// put fits a recipe to its subject and adds it as a step of the stage being made.
func (p *planner) put(word string, on subject) {
	r := recipeOf(word)
	s := p.fitted(r, on)
	s.ID, s.Stage = p.stepID(r, on), p.stage
	p.plan.Steps = append(p.plan.Steps, s)
}

// fitted fits a recipe to its subject.
func (p *planner) fitted(r *recipe, on subject) Step {
	s := Step{Word: "step." + p.sayable(r.word, on), Subject: on.id(), Must: r.must, After: r.after, Values: p.values(p.sayable(r.word, on), on), Signs: r.look, Sums: r.sums, Photo: r.motif(on),
		Finds: r.finds, Runs: r.runs, Interim: r.interim, at: r.at}
	if r.opens {
		s.Opens = p.openedAt(on)
	}
	if r.closes {
		s.Closes = p.closedAt(on)
	}
	if r.pours {
		s.Pours = on.circuit.ID
	}
	s.Takes = p.takes(&s, on)
	if r.tally {
		s.Tally = p.tally(r.word)
	}
	for _, w := range r.warns {
		if p.warnHolds(w, on) {
			s.Warns = append(s.Warns, CautionOf(w))
		}
	}
	for _, f := range r.figures {
		if p.bench.GetHome && (f == "due" || strings.HasPrefix(f, "interval-")) {
			continue // no oil is changed
		}
		if f == "turn" && measureOf(on.bolt) == ByTorque {
			continue // the torque counts
		}
		if shown := p.figure(f, on); shown.Standing != card.Unknown || !p.needless(f, on) {
			s.Figures = append(s.Figures, shown)
		}
	}
	for _, what := range r.asks {
		for _, a := range p.asksFor(what, on) {
			a.Amends = what == AskLevel && !r.finds && !r.interim
			s.Asks = append(s.Asks, a)
		}
	}
	for _, op := range r.helps {
		if h, ok := p.help(op, on); ok {
			s.Helps = append(s.Helps, h)
		}
	}
	for _, what := range r.timers {
		if t, ok := p.timer(what, on); ok {
			s.Timers = append(s.Timers, t)
		}
	}
	return s
}

// stepID names a step. What a day with one oil says once has no id after it.
// Words and ids can make the same name ("level-found-hot" of "x" and
// "level-found" of "hot-x"), and a cover can come off twice: the second has a
// name of its own, since events name steps by it.
func (p *planner) stepID(r *recipe, on subject) string {
	id := r.word
	if on.id() != "" && !(r.perOil && len(p.circuits) == 1) {
		id += "-" + on.id()
	}
	for p.plan.Step(id) != nil {
		id += "-again"
	}
	return id
}

// needless reports whether a figure that the card doesn't know isn't missed: the size
// of what is turned by hand, the turn of what has a torque and the other way round, the
// torque of a panel, marks and wait at a hole, the wait of a cold engine, how
// long it runs before, how warm the manual wants the oil, and the kind of interval that
// the manual doesn't use.
func (d *day) needless(name string, on subject) bool {
	hours := d.card.Interval.Hours.Known()
	switch name {
	case "run", "warm-card", "warm-card-time":
		return true
	case "size":
		return on.bolt.Drive == card.Hand || on.bolt.Drive == card.Strap
	case "turn":
		return measureOf(on.bolt) != ByHand
	case "torque":
		return measureOf(on.bolt) == ByTurn || on.bolt.Purpose == card.Panel
	case "band":
		return on.circuit.Level.Device == card.Hole
	case "wait":
		return on.circuit.Level.Device == card.Hole || on.circuit.Level.State == card.Cold
	case "interval-hours":
		return !hours
	case "interval-distance", "interval-time":
		return hours
	}
	return false
}

// warnHolds reports whether a caution is called for; most always are.
func (d *day) warnHolds(word string, on subject) bool {
	switch word {
	case "traffic", "it-rolls":
		return d.atRoadside()
	case "bike-falls", "chock-off":
		return !d.atRoadside() // nothing to chock it with
	case "oil-lamp":
		return !d.card.Engine.NoLamp
	case "hot-oil":
		// What is read cold is opened cold, unless it is opened to drain.
		if on.bolt == nil || on.bolt.Purpose != card.LevelScrew || d.opened(on.bolt) {
			return true
		}
		c := d.card.Circuit(on.bolt.Circuit)
		return c == nil || !readStanding(c)
	case "gear-oil-on-tyre":
		c := d.card.Circuit(on.bolt.Circuit)
		return c != nil && c.Role == card.FinalDrive
	case "oil-on-exhaust":
		return on.filter.Mount == card.OpenSideways
	case "wrench-unit":
		return on.bolt.Torque.Known()
	case "filter-box":
		return !on.bolt.Torque.Known() && !on.bolt.Turn.Known()
	case "torque-unknown":
		return !on.bolt.Torque.Known() && measureOf(on.bolt) != ByTurn
	}
	return true
}

// figure finds the figure of that name.
func (d *day) figure(name string, on subject) shown.Figure {
	switch name {
	case "grade":
		return d.need(on.circuit)
	case "due":
		return d.print.Card(name, d.volume(on.circuit), "volume")
	case "run":
		return d.print.Card(name, on.circuit.Level.Run, "level")
	case "wait":
		return d.print.Card(name, on.circuit.Level.Wait, "level")
	case "band":
		return d.print.Card(name, on.circuit.Level.Band, "level")
	case "size":
		return d.print.Card(name, on.bolt.Size, "size")
	case "torque":
		return d.print.Card(name, on.bolt.Torque, "torque")
	case "turn":
		return d.print.Card(name, on.bolt.Turn, "turn")
	case "warm-target":
		return shown.Estimate(name, "warm-target", d.print.Between(drain.WarmLow, drain.WarmHigh, "°C", 2)...)
	case "warm-card":
		return d.print.Card(name, d.warming().Target, "interval")
	case "warm-card-time":
		return d.print.Card(name, d.warming().Time, "interval")
	case "usual-warm":
		return d.practice(name, drain.HabitLow, drain.HabitHigh, "°C")
	case "run-out":
		return d.practice(name, drain.RunOutLow, drain.RunOutHigh, "min")
	case "first-pour":
		return d.firstPour(on.circuit)
	case "keep-back":
		return d.keepBack(on.circuit)
	case "interval-distance":
		return d.print.Card(name, d.interval().Distance, "interval")
	case "interval-time":
		return d.print.Card(name, d.interval().Time, "interval")
	case "interval-hours":
		return d.print.Card(name, d.interval().Hours, "interval")
	}
	return shown.Unknown(name, "interval") // a test holds that no recipe has another
}

// warming is what the card says of how warm the oil is to be that is let out today.
func (d *day) warming() *card.Warming {
	for _, c := range d.circuits {
		if c.Warm != nil {
			return c.Warm
		}
	}
	return &card.Warming{}
}

// practice is a range that is a trade habit.
func (d *day) practice(name string, low, high float64, unit string) shown.Figure {
	return shown.Estimate(name, "practice", d.print.Between(low, high, unit, 2)...)
}

// firstPour is what goes in before the first start.
func (d *day) firstPour(c *card.Circuit) shown.Figure {
	due, known := d.volume(c).Amount()
	if !known {
		return shown.Unknown("first-pour", "volume")
	}
	first, _, unit := d.shares(c, due)
	return shown.Estimate("first-pour", "first-share", d.print.Texts(first, unit, 2)...)
}

// keepBack is what is poured by no means before the level is read as it counts: what
// the first pour leaves or, where the volume isn't known, what lies between the marks.
func (d *day) keepBack(c *card.Circuit) shown.Figure {
	if due, known := d.volume(c).Amount(); known {
		_, rest, unit := d.shares(c, due)
		return shown.Estimate("keep-back", "keep-share", d.print.Texts(rest, unit, 2)...)
	}
	if band, known := c.Level.Band.Amount(); known {
		return shown.Estimate("keep-back", "keep-band", d.print.Texts(band.Base, band.Unit, 2)...)
	}
	return shown.Unknown("keep-back", "volume")
}

// shares splits the volume due into the first pour and the rest, in L, so that the two
// as they are printed are the volume as it is printed, and gives the unit they are
// printed in. The first is rounded down: what is missing is added by the level, what is
// too much has to come out again.
func (d *day) shares(c *card.Circuit, due quantity.Amount) (first, rest float64, unit string) {
	whole := due.Base
	if texts := d.print.Card("due", d.volume(c), "volume").Texts; len(texts) > 0 {
		ask := quantity.Ask{Kind: quantity.Volume, System: d.print.System}
		if printed, _, _, _ := ask.ReadRange(texts[0]); printed.Base > 0 {
			whole = printed.Base
		}
	}
	first, unit = d.print.Down(fill.First(whole), due.Unit, 2)
	return first, whole - first, unit
}

// asksFor gives the readings of that name: of the level, one for each oil with a
// gauge that the step is about.
func (d *day) asksFor(what string, on subject) []Ask {
	if what == AskHours && !d.card.Interval.CountsHours() || what == AskTorque && on.bolt.Purpose != card.FilterCanned && measureOf(on.bolt) == ByTurn {
		return nil
	}
	if what != AskLevel {
		return []Ask{d.ask(what, on)}
	}
	circuits := d.circuits
	if on.circuit != nil {
		circuits = []*card.Circuit{on.circuit}
	}
	var list []Ask
	for _, c := range circuits {
		if hasGauge(c) {
			list = append(list, d.ask(what, subject{circuit: c}))
		}
	}
	return list
}

// ask fits a reading to its subject.
func (d *day) ask(what string, on subject) Ask {
	a := Ask{What: what, About: on.id(), Unit: unitAsked(what, d.print.System)}
	switch {
	case what == AskLeak:
		a.Choice = leaks
	case what == AskLevel && on.circuit.Level.Device == card.Hole:
		a.Choice = holeLevels
	case what == AskLevel:
		a.Choice, a.Gauge = levels, gaugeOf(on.circuit)
	case what == AskTorque:
		a.Card = d.taken("torque", on.bolt.Torque)
	}
	return a
}

// taken is a figure of the card as somebody would type it who takes it over; empty where
// it is not known, is a range, or is an estimate.
func (d *day) taken(name string, f *card.Figure) string {
	shown := d.print.Card(name, f, name)
	if _, ranged := f.Upper(); ranged || len(shown.Texts) == 0 || f.Standing == card.Estimated {
		return ""
	}
	return shown.Texts[0]
}

// asksIn are the units in which a bare number is read, where one is typed.
var asksIn = [...]struct{ what, metric, us, imperial string }{
	{AskOdometer, "km", "mi", "mi"},
	{AskHours, "h", "h", "h"},
	{AskTemperature, "°C", "°F", "°C"},
	{AskTorque, "N·m", "lbf·ft", "N·m"},
	{AskDrained, "L", "US qt", "imp pt"},
	{AskPoured, "L", "US qt", "imp pt"},
}

// unitAsked is the unit that a bare number is in; "" where none is typed.
func unitAsked(what string, system quantity.System) string {
	for _, in := range asksIn {
		switch {
		case in.what != what:
		case system == quantity.US:
			return in.us
		case system == quantity.Imperial:
			return in.imperial
		default:
			return in.metric
		}
	}
	return ""
}
