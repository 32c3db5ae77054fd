package plan

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// values fills the placeholders that a step's sentences may have.
func (p *planner) values(word string, on subject) map[string]string {
	switch {
	case on.circuit != nil:
		return p.circuitValues(word, on.circuit)
	case on.bolt != nil:
		return p.boltValues(on.bolt)
	case on.filter != nil:
		return p.filterValues(word, on.filter)
	case on.strain != nil:
		return finding.Values("place", orWord(on.strain.Place, "not-known"))
	}
	return p.plainValues(word)
}

func (d *day) circuitValues(word string, c *card.Circuit) map[string]string {
	v := finding.Values(
		"of", "@role."+string(c.Role),
		"state", idOr("state.", c.Level.State),
		"engine", "@not-known",
		"stance", idOr("stance.", c.Level.Stance),
	)
	readAt(v, &c.Level)
	if c.Level.State != "" {
		v["engine"] = "@engine.stopped"
	}
	switch word {
	case "pour", "pour-all", "pour-unknown", "top-up-home":
		v["through"] = d.through(c)
	}
	if c.Level.Run.Known() && c.Level.State != "" && (word == "top-up" || word == "level-found") {
		v["state"] = "@ran." + string(c.Level.State)
	}
	switch {
	case word == "run-out":
		v["air"] = "@air.none"
		if d.hasFillerCap(c.ID) || len(d.levelCovers(c)) == 0 {
			v["air"] = "@air.filler"
		}
	case c.Level.State != card.Cold || c.Level.Run.Known():
	case readAfterRun(c):
		v["state"] = "@top-up.cool"
	case word == "top-up":
		v["state"] = "@top-up.fresh"
	}
	if due := d.print.Card("due", d.volume(c), "volume"); len(due.Texts) > 0 {
		v["volume"], v["first"] = due.First(), d.firstPour(c).First()
	}
	if word == "tray" {
		v["volume"], _ = d.tray(c)
	}
	return v
}

// readAt says what a level is read on, and where that is, as far as the card knows.
func readAt(v map[string]string, l *card.Level) {
	v["gauge"] = orWord(l.Where, "not-known")
	if l.Device != "" {
		v["gauge"] = "@device." + string(l.Device)
		if l.Where != "" {
			v["device"], v["where"], v["gauge"] = v["gauge"], l.Where, "@gauge.at"
		}
	}
}

// ofUnknown are the steps that stand where the volume of an oil isn't known, for those
// that name it: a job may have begun when it was known.
var ofUnknown = [...]struct{ known, unknown string }{{"tray", "tray-unknown"}, {"pour", "pour-unknown"}, {"pour-all", "pour-unknown"}}

// sayable is the step whose sentences can be said of an oil: its own, unless they would
// name a volume that isn't known.
func (d *day) sayable(word string, on subject) string {
	for _, of := range ofUnknown {
		if of.known == word && on.circuit != nil && !d.volume(on.circuit).Known() {
			return of.unknown
		}
	}
	return word
}

func (d *day) boltValues(b *card.Bolt) map[string]string {
	v := finding.Values(
		"of", "@not-known",
		"purpose", "@purpose."+string(b.Purpose),
		"place", orWord(b.Place, "not-known"),
		"drive", idOr("drive.", b.Drive),
		"thread", orWord(b.Thread, "not-known"),
		"seal", "@seal.none",
		"count", strconv.Itoa(b.Number()),
		"to", "@tight-to.torque",
	)
	switch {
	case measureOf(b) == ByTurn:
		v["to"] = "@tight-to.turn"
	case b.Purpose == card.FilterClosed && !b.Torque.Known():
		v["to"] = "@tight-to.box"
	}
	if b.Order != "" {
		v["order"] = b.Order
	}
	if b.Seal != nil {
		v["seal"] = "@seal." + string(b.Seal.Kind)
	}
	if c := d.card.Circuit(b.Circuit); c != nil {
		v["of"] = "@role." + string(c.Role)
	}
	return v
}

func (d *day) filterValues(word string, f *card.Filter) map[string]string {
	v := finding.Values("place", orWord(f.Place, "not-known"), "mount", idOr("mount.", f.Mount), "screws", strconv.Itoa(d.coverScrews(f)))
	switch word {
	case "look-filter":
		v["with"] = "@with.knife"
		switch f.Kind {
		case card.SpinOn:
			v["with"] = "@with.cutter"
		case card.KindUnknown:
			v["with"] = "@with.either"
		}
	case "prepare-spin-on", "prepare-unknown":
		v["coat"] = "@coat." + coatOf(f)
	case "prepare-cartridge":
		v["coat"] = "@coat-rings." + coatOf(f)
	case "filter-off-cartridge", "filter-off-cap", "filter-off-unknown":
		d.oftenNew(v, f)
	case "filter-off-spin-on":
		d.oftenNew(v, f)
		v["grip"] = gripAny
		for _, b := range d.boltsWhere(func(b *card.Bolt) bool { return b.Holds == f.ID && b.Purpose == card.FilterCanned }) {
			v["grip"] = gripOf(b)
		}
	}
	return v
}

// oftenNew says how often the card asks for a new filter, where it isn't each time.
func (d *day) oftenNew(v map[string]string, f *card.Filter) {
	v["often"] = "@often.new"
	if nth := d.card.Nth(f.EveryNth, f.Interval); nth > 1 {
		v["often"], v["nth"] = "@often.nth", strconv.Itoa(nth)
	}
}

// coatOf is what a new ring gets; where the card doesn't say, what is common practice.
func coatOf(f *card.Filter) string {
	if f.RingWith == "" {
		return "unknown"
	}
	return string(f.RingWith)
}

// plainValues are those of the steps that are about no single thing.
func (p *planner) plainValues(word string) map[string]string {
	switch word {
	case "warm-up":
		return p.habit()
	case "identify":
		return finding.Values("bike", p.plan.Name)
	case "first-start", "second-start":
		return p.startValues()
	case "free-filler":
		return finding.Values("places", p.namesOf("unknown.filler", func(b *card.Bolt) bool { return p.fills(b) && b.Number() == 1 && !onPaper([]*card.Bolt{b}) }))
	case "wash":
		return finding.Values("places", p.namesOf("unknown.opened", func(b *card.Bolt) bool { return (p.opened(b) || p.fills(b)) && !p.covered(b) }))
	case "caps-on":
		return finding.Values("places", p.namesOf("unknown.filler", func(b *card.Bolt) bool {
			return b.Purpose == card.FillerCap && p.fills(b) && byHand(b)
		}))
	case "name-plugs":
		return finding.Values("leave", p.namesOf("none-on-card", p.left))
	case "count":
		n := 0
		for _, b := range p.boltsWhere(p.opened) {
			n += b.Number()
		}
		return finding.Values("count", strconv.Itoa(n))
	}
	return nil
}

// covered reports whether something that comes off later is in front of a fastener; a
// panel is off by then.
func (p *planner) covered(b *card.Bolt) bool {
	for _, id := range p.inFrontOf(b.ID) {
		front := p.card.Bolt(id)
		if id != "" && (front == nil && (p.changing(id) || p.cleaning(id)) || front != nil && p.opened(front)) {
			return true
		}
	}
	return false
}

// startValues say how the engine is held while it runs, and what shows that oil comes.
func (d *day) startValues() map[string]string {
	e := &d.card.Engine
	held, watch := "@start.neutral", "@start.lamp"
	if e.NoNeutral {
		held = "@start.no-neutral"
	}
	if e.ReturnSeen {
		watch = "@start.return"
	} else if e.NoLamp {
		watch = "@start.no-lamp"
	}
	return finding.Values("held", held, "watch", watch)
}

// namesOf names the places of fasteners, for a sentence; none is what it says where the
// card has no place of any.
func (d *day) namesOf(none string, want func(*card.Bolt) bool) string {
	var names []string
	for _, b := range d.boltsWhere(want) {
		if b.Place != "" && (len(names) == 0 || names[len(names)-1] != b.Place) {
			names = append(names, b.Place)
		}
	}
	return JoinPlaces(names, none)
}

// JoinPlaces names several places in one text, or says a word where there are none. A place
// that is a word itself is said alone, and gives way to those in the card's words.
func JoinPlaces(places []string, none string) string {
	var told []string
	for _, place := range places {
		if place[0] != '@' {
			told = append(told, place)
		}
	}
	switch {
	case len(places) == 0:
		return "@" + none
	case len(told) == 0:
		return places[0]
	}
	return strings.Join(told, "; ")
}

func orWord(text, word string) string {
	if text == "" {
		return "@" + word
	}
	return text
}

func idOr[T ~string](prefix string, id T) string {
	if id == "" {
		return "@not-known"
	}
	return "@" + prefix + string(id)
}
