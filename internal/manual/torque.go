package manual

import (
	"strings"

	"tidysump/internal/quantity"
)

// torques gives every torque the part that it is of.
func (r *readings) torques() {
	last := -1 // the torque before, by its end
	for i := range r.facts {
		f := &r.facts[i]
		if f.kind != string(quantity.Torque) {
			continue
		}
		m, byContext := r.partFor(f, last)
		if o := r.columnPart(f); o != nil {
			m, byContext = o, false
		}
		last = f.to
		if from, _ := r.sentenceOf(f.from); r.senseAt(from, "both") {
			if r.bothPlugs(f, m, byContext) {
				continue
			}
			byContext = true // the page names one of them only
		}
		if m == nil || m.foreign || m.part == "" {
			continue
		}
		byContext = byContext || m.several
		circuit := m.circuit
		if m.gear {
			circuit = r.gearOil()
		}
		if o := r.paired(m); circuit == "" && o != nil {
			circuit = o.circuit
		}
		if circuit == "" {
			var foreign bool
			circuit, foreign = r.circuitOfPart(m)
			if foreign {
				continue
			}
			byContext = byContext || r.strangeLabel(m)
			if begin, _ := r.clauseOf(m.from); r.nearlyOther(begin, m.from) {
				continue
			}
		}
		r.figure("bolt."+m.bolt(circuit)+".torque", f, m, byContext)
		if o := r.paired(m); o != nil && (!byContext || r.both(f.from)) {
			both := *o
			if both.circuit == "" {
				both.circuit = circuit
			}
			r.figure("bolt."+both.bolt(both.circuit)+".torque", f, o, byContext)
		}
	}
}

// bothPlugs reads a torque of the two plugs that were named last, where its sentence begins so:
// "Both plugs: 25 N·m".
func (r *readings) bothPlugs(f *fact, m *mention, byContext bool) bool {
	from, _ := r.sentenceOf(f.from)
	if m == nil || m.foreign {
		return false
	}
	a, b := r.lastTwo(from)
	if a == nil || a.ofFilter() || b.ofFilter() {
		return false
	}
	for _, o := range [...]*mention{a, b} {
		circuit, foreign := o.circuit, false
		if circuit == "" {
			circuit, foreign = r.circuitOfPart(o)
		}
		if !foreign {
			r.figure("bolt."+o.bolt(circuit)+".torque", f, o, byContext)
		}
	}
	return true
}

// strangeLabel reports whether a row's label has a word before the part that nobody here
// knows: it may say whose the plug is.
func (r *readings) strangeLabel(m *mention) bool {
	n := r.places[m.from].piece
	from, _ := r.pieceTokens(n)
	return r.pieces[n].cells && r.stray(from, m.from)
}

// paired gives the part that is named with another for one figure: "drain plug and filler
// plug: 15 N·m".
func (r *readings) paired(m *mention) *mention {
	n := r.mentionFrom(m.from) - 1
	if n < 0 || m.from < 1 {
		return nil
	}
	o := &r.mentions[n]
	if !r.alsoNamed(o.to, m.from) || o.foreign || o.loose != whole || o.part == "" {
		return nil
	}
	if m.beside && !r.loneNumber(m.to) {
		return o
	}
	if apart := o.circuit != "" && m.circuit != "" && o.circuit != m.circuit; r.senseAt(m.from, "same") != apart || !apart && o.part == m.part {
		return nil
	}
	return o
}

// loneNumber reports whether a number of nothing stands in the clause behind a token: "25 and 20
// N·m" are two figures.
func (r *readings) loneNumber(at int) bool {
	for i := at; i < len(r.places) && i < at+2*mostBetween && r.places[i].sentence == r.places[at-1].sentence; i++ {
		if t := &r.places[i]; t.kind == number && !t.taken {
			return true
		}
	}
	return false
}

// figure adds a reading of an amount, with the doubts that it has.
func (r *readings) figure(what string, f *fact, m *mention, byContext bool) {
	doubts := r.witnesses(f)
	if f.bound && what[:5] != "level" {
		doubts = append(doubts, doubt("manual-is-bound", "text", f.text))
	}
	if byContext {
		doubts = append(doubts, doubt("manual-by-context", "text", f.text))
	}
	text := f.text
	if other := r.inHeadsUnit(f); other != "" { // nobody says which of the two is meant
		doubts, text = append(doubts, doubt("manual-units-differ", "text", f.text, "other", other)), ""
	}
	from := f.from
	if m != nil && m.from < from && r.places[m.from].sentence == r.places[from].sentence {
		from = m.from
	}
	to := f.end()
	if m != nil && m.to > to && r.places[m.from].sentence == r.places[f.from].sentence {
		to = m.to
	}
	f.used = true
	r.sayAt(what, text, from, r.clauseRest(to), f.from, doubts...)
}

// inHeadsUnit gives what a torque of a table would be in the unit that the head says, where its row
// has another unit and no twin: one of them is a slip. "" where they agree.
func (r *readings) inHeadsUnit(f *fact) string {
	if r.places[f.from].gap != wide || f.to-f.from < 2 || len(f.twins) > 0 {
		return ""
	}
	for n := len(r.heads) - 1; n >= 0; n-- {
		h := &r.heads[n]
		if h.kind != f.kind || h.to > f.from {
			continue
		}
		if v, _, ok := r.figureAt(f.from); ok && len(h.units) == 1 && h.units[0] != f.unit && r.places[h.from].section == r.places[f.from].section {
			g := r.amount(f.from, f.from+1, h.units[0], v, v, "")
			return g.text
		}
		break
	}
	return ""
}

// mostRest is how many tokens of a clause are quoted behind a figure.
const mostRest = 5

// clauseRest gives the end of a clause that goes on for a few words behind a figure: they
// are quoted with it.
func (r *readings) clauseRest(to int) int {
	for i := to; i < len(r.places) && i <= to+mostRest; i++ {
		t := &r.places[i]
		if t.clause != r.places[to-1].clause || t.piece != r.places[to-1].piece || t.gap == wide || t.kind == sign && t.text != "'" && t.text != "-" {
			return i
		}
		if t.taken || t.kind == number {
			break
		}
	}
	return to
}

// end is where a fact ends with its twins.
func (f *fact) end() int {
	end := f.to
	for i := range f.twins {
		end = max(end, f.twins[i].to)
	}
	return end
}

// partFor finds the part that a figure is of: named before it in its sentence, but behind
// the figure before it; else behind it in its clause; else the one that was spoken of
// last below the same heading. byContext reports the last.
func (r *readings) partFor(f *fact, last int) (m *mention, byContext bool) {
	from, to := r.sentenceOf(f.from)
	begin := r.unreadIn(max(from, last), f.from)
	end := to
	for k := f.end(); k < to; k++ {
		if r.places[k].unread || r.places[k].clause != r.places[f.end()-1].clause || r.places[k].taken && r.places[k].kind == number {
			end = k
			break
		}
	}
	named := func(m *mention) bool { return m.part != "" || m.foreign || m.loose != whole }
	before, after := r.near(f.from, begin, end, named)
	m = before
	if m != nil && begin > from && r.forIt(begin, m) { // "20 N·m for the drain plug, 10 N·m for the cover's screws"
		m = nil
	}
	if m == nil && after != nil && r.forIt(f.end(), after) {
		m = after
	}
	if m != nil && m.loose == aFastener && after != nil && after != m && after.loose == whole { // "three screws (M6) of the cover"
		behind := f.end()
		if r.at(behind).text == ")" {
			behind++
		}
		if r.linked(behind, after.from) {
			return after, false
		}
	}
	if m != nil && m.loose == aFastener && after != nil && after.part == "filter-cover" && !after.foreign && !r.figureIn(f.end(), after.from) && r.places[after.from].clause == r.places[f.end()-1].clause {
		return after, false // "three bolts (8 mm) that hold the filter cover"
	}
	if o := r.ofOil(f.from, begin, from, before); o != nil {
		return o, false
	}
	if tank, _ := r.near(end, f.end(), end, func(*mention) bool { return true }); tank != nil && tank.tank && tank.part == "" && before == nil && r.linked(f.end(), tank.from) {
		if o := r.ofTank(tank, nil, from); o != nil {
			return o, false // "20 N·m at the tank"
		}
	}
	if m == nil && !r.stray(begin, f.from) || after != nil && (m == nil || r.parted(m.to, f.from)) && r.linked(f.end(), after.from) {
		m = after // "17 mm for the plug; a strap wrench for the filter"
	}
	switch {
	case m != nil && m.loose == whole:
		if m.part == "filter" && m.from < f.from {
			if lid, _ := r.near(m.from, from, m.from, func(o *mention) bool { return o.part == "filter-cover" }); lid != nil {
				return lid, false // "take off the filter's cover, the filter and the ring: 10 N·m"
			}
		}
		return m, false
	case m != nil:
		if r.strayAt(m) {
			return nil, false
		}
		if o := r.resolved(m); o != nil {
			return o, false
		}
		return r.onlyPlug(m), true
	case r.stray(begin, f.from) && !r.ringIn(begin, f.from), r.pieces[r.places[f.from].piece].cells && r.stray(r.starts[r.places[f.from].piece], begin):
		return nil, false
	}
	spoken := r.spokenOf(f.from, begin)
	if spoken != nil && spoken.part == "filter" && r.metalIn(from, f.from) {
		for n := r.mentionFrom(from) - 1; n >= 0 && r.mentions[n].from > from-mostSentence && r.places[r.mentions[n].from].section == r.places[f.from].section; n-- {
			if o := &r.mentions[n]; (o.part == "drain" || o.part == "tank-drain") && !o.foreign {
				return o, true // "fit a new copper ring and tighten to 28 N·m", behind the filter
			}
			if o := &r.mentions[n]; o.loose == aPlug {
				return r.onlyPlug(o), true
			}
		}
	}
	m = r.lid(spoken)
	return m, m == nil || m != spoken || !r.onlySpoken(m, f.from)
}

// forIt reports whether a part is named behind a figure as what that is for, and nothing else is named
// between: "20 N·m is ample for the drain plug".
func (r *readings) forIt(figure int, m *mention) bool {
	at := m.from - 1
	for at > figure && (r.places[at].function || r.senseAt(at, "number.3") || r.senseAt(at, "number.2") || r.senseAt(at, "each") || r.senseAt(at, "when.every")) && !r.senseAt(at, "for") {
		at--
	}
	return at >= figure && figure > 0 && r.senseAt(at, "for") && r.places[figure-1].clause == r.places[m.from].clause && r.mentionFrom(figure) == r.mentionFrom(m.from)
}

// onlySpoken reports whether a part is the only one that is spoken of between the heading over a
// figure and the figure, in sentences: then "Torque: 25 N·m" is of nothing else.
func (r *readings) onlySpoken(m *mention, at int) bool {
	s := r.sections[r.places[at].section]
	if m.foreign || m.part == "" || m.from < s.from+s.heading || at-m.to > mostNext || r.pieces[r.places[m.from].piece].cells || r.pieces[r.places[at].piece].cells {
		return false
	}
	from, to := r.sentenceOf(at)
	if !r.about(from, to, "label.torque") {
		return false
	}
	begin := s.from
	if step := r.stepOf(at); step <= m.from { // a step of a list is of its own part
		begin = max(begin, step)
	}
	for n := r.mentionFrom(begin); n < len(r.mentions) && r.mentions[n].from < at; n++ {
		o := &r.mentions[n]
		if o.foreign && !o.measure || o.part != "" && (o.part != m.part || o.circuit != m.circuit) || o.loose == aCover || o.loose == aFastener && m.part != "drain" {
			return false
		}
	}
	return true
}

// metalIn reports whether a ring of metal, which lies below a plug, stands between two tokens.
func (r *readings) metalIn(from, to int) bool {
	for i := from; i < to; i++ {
		if n := r.places[i].term; n >= 0 {
			if kind := r.sealOf(n); strings.HasPrefix(kind, "flat-") || kind == "folded" || kind == "bonded" {
				return true
			}
		}
	}
	return false
}

// ringIn reports whether a ring is named between two tokens: then a sentence goes on about the
// part that was spoken of, whatever else it says.
func (r *readings) ringIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.termAt(i); t != nil {
			if _, is := t.begin("seal."); is {
				return true
			}
		}
	}
	return false
}

// lid gives the cover of a filter that lies in a housing: that is what has screws, a ring
// and a torque. Every other part is itself.
func (r *readings) lid(m *mention) *mention {
	if m == nil || m.part != "filter" || !r.housed() {
		return m
	}
	cover := *m
	cover.part = "filter-cover"
	return &cover
}

// housed reports whether the filter lies in a housing with a cover.
func (r *readings) housed() bool {
	element, lid := false, false
	for i := range r.terms {
		if r.terms[i].has("part.filter-spin-on") {
			return false
		}
		element = element || r.terms[i].has("part.filter-element") || r.terms[i].has("part.filter-centrifugal")
	}
	for i := range r.mentions {
		lid = lid || r.mentions[i].loose == aCover && !r.mentions[i].foreign
		if r.mentions[i].part == "filter-cover" {
			return true
		}
	}
	return element && lid
}

// parted reports whether a semicolon stands between two tokens.
func (r *readings) parted(from, to int) bool {
	for i := from; i < to; i++ {
		if r.places[i].text == ";" {
			return true
		}
	}
	return false
}

// ofOil gives the part of a figure that only an oil stands beside, where the sentence
// names the part for all of them: "drain plugs: engine 30 N·m, gearbox 25 N·m". named is
// the part between the figure before and this one.
func (r *readings) ofOil(at, begin, from int, named *mention) *mention {
	label, _ := r.near(at, begin, at, func(m *mention) bool {
		return m.part == "" && !m.foreign && m.loose == whole && (m.circuit != "" || m.tank)
	})
	if label != nil && label.tank {
		if begin > from && r.linked(begin, label.from) && r.about(label.to, at, "join.and") {
			return &mention{foreign: true} // "20 N·m at the tank and 25 N·m at": it is the figure's before
		}
		return r.ofTank(label, named, from)
	}
	if label != nil && named != nil && named.loose == aPlug && named.from < label.from && label.circuit == "engine" {
		if o := r.resolved(named); o != nil && o.part == "tank-drain" {
			m := *named // "the drain plug of the frame and the plug below the crankcase"
			m.loose, m.part, m.circuit = whole, "drain", "engine"
			return &m
		}
	}
	if label != nil && named != nil && named.from < label.from && named.part == "tank-drain" && label.circuit == "engine" {
		m := *label // "the plug of the frame 20 N·m, that of the crankcase 25 N·m"
		m.part = "drain"
		return &m
	}
	if label == nil || named != nil && (named.from > label.from || named.circuit != "") {
		return nil
	}
	part := named
	if part == nil {
		part, _ = r.near(begin, from, begin, func(m *mention) bool { return m.foreign || m.part != "" })
	}
	if part == nil || part.foreign {
		return nil
	}
	m := *label
	switch part.part {
	case "drain", "level", "filler":
		m.part = part.part
	case "tank-drain":
		if label.circuit != "engine" {
			return nil
		}
		m.part = "drain" // "drain plug of the frame 20 N·m, of the crankcase 25 N·m"
	default:
		return nil
	}
	return &m
}

// ofTank gives the drain plug of a tank or a frame that a figure stands beside, where drain
// plugs were spoken of: "at the frame 20 N·m are due".
func (r *readings) ofTank(tank, named *mention, from int) *mention {
	if named != nil {
		if plugs := named.part == "drain" && (named.circuit == "" || named.circuit == "engine") || named.part == "tank-drain"; !plugs || named.foreign || r.places[named.from].clause == r.places[tank.from].clause {
			return nil
		}
		m := *tank // "both drain plugs: at the tank 30 N·m"
		m.part, m.circuit = "tank-drain", "engine"
		return &m
	}
	if m := r.spokenOf(tank.from, from); m == nil || m.foreign || m.part != "drain" && m.part != "tank-drain" {
		return nil
	}
	m := *tank
	m.part, m.circuit = "tank-drain", "engine"
	return &m
}

// resolved gives the part that a bare "plug" or "cover" stands for: the last before it,
// below the same heading, that is one. "The bolts" are more than one such part.
func (r *readings) resolved(m *mention) *mention {
	o := r.lastLike(m)
	if o == nil || o.foreign || o.part == "" || o.part == "filter-cover" || o.part == "filter" || o.part == "strainer" || !r.severalIn(m) || r.severalIn(o) || r.paired(o) != nil {
		return o
	}
	one := *o
	one.several = true
	return &one
}

func (r *readings) lastLike(m *mention) *mention {
	here := &r.places[m.from]
	s := r.sections[here.section]
	var gauze *mention // what has a plug too, but less likely than a drain
	for n := r.mentionFrom(m.from) - 1; n >= 0 && r.mentions[n].from >= s.from; n-- {
		o := &r.mentions[n]
		near := r.places[o.from].item == here.item
		if m.loose != aCover && r.pieces[here.piece].cells && r.places[o.from].piece != here.piece && r.pieces[r.places[o.from].piece].cells {
			continue // a table's rows tell nothing of each other
		}
		if gauze != nil && !near && r.places[gauze.from].item == here.item {
			return gauze // the item is of the strainer alone
		}
		switch {
		case o.foreign && near:
			return o
		case m.loose == aFastener && o.loose == aCover && r.places[o.from].sentence == here.sentence:
			return r.resolved(o) // "the filter's cover with its screws"
		case o.loose != whole || o.foreign:
		case o.part == "filter" && (m.loose == aCover || m.loose == aFastener && r.housed()):
			cover := *o
			cover.part = "filter-cover"
			return &cover
		case (m.loose == aPlug && !o.strainer || m.loose == aCover) && o.part == "strainer" && r.places[o.from].sentence != here.sentence:
			if gauze == nil {
				gauze = o
			}
		case m.loose == aPlug && !near && (o.part == "level" || o.part == "filler" || o.part == "drain" && o.circuit != "" && o.circuit != "engine"):
			if gauze == nil {
				gauze = o
			}
		case m.loose == aFastener && (o.part == "filler" || o.part == "level") && !r.shareWord(m, o) && r.places[o.from].paragraph == here.paragraph:
			if gauze == nil { // "the drain bolt and the filler cap … the bolt"
				gauze = o
			}
		case m.loose == aPlug && (o.part == "drain" || o.part == "tank-drain" || o.part == "level" || o.part == "filler" || o.part == "strainer"),
			m.loose == aCover && (o.part == "filter-cover" || o.part == "strainer"),
			m.loose == aFastener && o.part != "" && (near || r.places[o.from].paragraph == here.paragraph):
			if o.part == "strainer" && r.about(m.from, m.to, "nut") && !r.about(o.from, o.to, "nut") {
				continue // its nut may be named before it
			}
			if o.part != "filter-cover" && r.about(m.from, m.to, "nut") && !r.about(o.from, o.to, "nut") {
				return &mention{from: m.from, to: m.to, foreign: true} // nothing is drained at a nut
			}
			return o
		}
	}
	return gauze
}

// shareWord reports whether a word stands in both of two mentions.
func (r *readings) shareWord(m, o *mention) bool {
	for i := m.from; i < m.to; i++ {
		for k := o.from; k < o.to; k++ {
			if r.places[i].fold == r.places[k].fold && r.places[i].kind == word {
				return true
			}
		}
	}
	return false
}

// onlyPlug gives the drain plug that a bare "plug" is where the page names no other plug
// and no other job.
func (r *readings) onlyPlug(m *mention) *mention {
	if m.loose != aPlug || !r.oilIn(0, len(r.places)) {
		return nil
	}
	for i := range r.mentions {
		o := &r.mentions[i]
		drain := o.part == "drain" && (o.circuit == "" || o.circuit == "engine")
		if p := o.part; !drain && p != "" && p != "filter" && p != "filter-cover" && p != "strainer" || o.foreign && o.from < m.from && r.places[o.from].section == r.places[m.from].section {
			return nil
		}
	}
	drain := *m
	drain.loose, drain.part, drain.several = whole, "drain", r.severalIn(m)
	return &drain
}

// stray reports whether a word stands between two tokens that nobody here knows, and that
// may name another thing.
func (r *readings) stray(from, to int) bool {
	for i := from; i < to; i++ {
		if r.unknown(i) {
			return true
		}
	}
	return false
}

// strayAt reports whether a bare "bolt" is of something that nobody here knows.
func (r *readings) strayAt(m *mention) bool {
	if i := m.from - 1; i >= 0 && r.places[i].sentence == r.places[m.from].sentence && r.unknown(i) && r.places[m.from].gap != wide {
		return true
	}
	for i := m.to; i < len(r.places) && i < m.to+4 && r.places[i].sentence == r.places[m.from].sentence; i++ {
		if r.places[i].fold == "of" || r.places[i].kind == word && r.places[i].function {
			continue
		}
		return r.unknown(i) && i > m.to
	}
	return false
}

// spokenOf gives the part that was spoken of last before a token, in its paragraph; nil
// where that was a thing of another job.
func (r *readings) spokenOf(at, before int) *mention {
	here := &r.places[at]
	own := r.ownRow(at)
	var cleaned *mention // a strainer without a plug of its own
	for n := r.mentionFrom(before) - 1; n >= 0; n-- {
		m := &r.mentions[n]
		if r.places[m.from].paragraph != here.paragraph {
			break
		}
		if piece := r.places[m.from].piece; own && piece != here.piece && r.pieces[piece].cells && r.figured(r.places[m.from].item) {
			return nil
		}
		if m.loose != whole {
			if o := r.resolved(m); o != nil {
				return o
			}
			return r.onlyPlug(m)
		}
		if m.part == "strainer" && cleaned == nil && r.onlyCleaned(m) {
			cleaned = m
			continue
		}
		if cleaned != nil && (m.foreign || m.part != "" && m.part != "drain" && m.part != "tank-drain") {
			break
		}
		if m.part != "" || m.foreign {
			return m
		}
	}
	if cleaned != nil {
		return cleaned
	}
	head := r.sections[here.section]
	for n := r.mentionFrom(head.from); n < len(r.mentions) && r.mentions[n].from < head.from+head.heading; n++ {
		if m := &r.mentions[n]; m.part != "" || m.foreign {
			return m
		}
	}
	return nil
}

// onlyCleaned reports whether a strainer is told of as what lies behind another plug: it is
// cleaned, and its own plug or cover is not named.
func (r *readings) onlyCleaned(m *mention) bool {
	from, to := r.clauseOf(m.from)
	return r.about(from, to, "other.action") && !m.strainer && !r.about(from, to, "part.cover") && !r.about(from, to, "part.plug") && !r.about(from, to, "part.drain") && !r.about(from, to, "action.screw")
}

// ownRow reports whether a figure stands in a row of a table that begins with an oil or its
// sump, and no part of ours: rows with figures of their own tell it nothing of its part.
func (r *readings) ownRow(at int) bool {
	n := r.places[at].piece
	from, _ := r.pieceTokens(n)
	label, _ := r.near(at, from, at, func(m *mention) bool { return m.oil || m.circuit != "" || m.gear })
	return r.pieces[n].cells && label != nil && label.part == "" && label.loose == whole
}

// circuitOfPart says whose a plug is that does not say it: of the oil that was spoken of
// before it in its sentence or below its heading.
func (r *readings) circuitOfPart(m *mention) (circuit string, foreign bool) {
	if m.part == "filter" || m.part == "filter-cover" || m.part == "strainer" || m.part == "tank-drain" {
		return "engine", false
	}
	from, _ := r.sentenceOf(m.from)
	for n := r.mentionFrom(m.from) - 1; n >= 0 && r.mentions[n].from >= from; n-- {
		o := &r.mentions[n]
		if o.foreign && !o.measure && r.clauseIsLabel(o, m) && !r.figureIn(o.to, m.from) {
			return "", true // "Front fork: drain plug"
		}
		if o.part == "" && !o.foreign && (o.circuit != "" || o.gear) && r.clauseIsLabel(o, m) {
			if o.gear {
				return r.gearOil(), false
			}
			return o.circuit, false
		}
		if o.part != "" && !o.foreign && o.circuit != "" && !o.ofFilter() && o.part != m.part {
			return o.circuit, false // "the drain plug of the gearbox 28 N·m and the filler plug 30 N·m"
		}
	}
	if n := r.mentionFrom(m.to); n < len(r.mentions) && r.pieces[r.places[m.from].piece].cells { // "drain plug, gearbox    25 N·m"
		o := &r.mentions[n]
		if o.part == "" && !o.foreign && o.loose == whole && o.circuit != "" && o.from-m.to <= 2 && r.places[o.from].gap != wide && r.places[o.from].sentence == r.places[m.from].sentence && r.places[m.to].text == "," {
			return o.circuit, false
		}
	}
	if circuit = r.runIn(m.from); circuit != "" {
		return circuit, false
	}
	if circuit, foreign = r.rowCircuit(m.from); circuit != "" || foreign {
		return circuit, foreign
	}
	if circuit, foreign = r.headCircuit(m.from); circuit != "" || foreign {
		return circuit, foreign
	}
	named := false
	if circuit, foreign, named = r.circuitAt(m.from); named {
		return circuit, foreign
	}
	return r.usualOil(), false
}

// runIn gives the oil that a label with a colon names at the beginning of a token's item:
// "Final drive: 120 cc, SAE 80W-90. Drain screw 15 N·m".
func (r *readings) runIn(at int) string {
	item := r.places[at].item
	n := r.mentionFrom(at) - 1
	for n > 0 && r.places[r.mentions[n-1].from].item == item {
		n--
	}
	if n < 0 || r.places[r.mentions[n].from].item != item || !r.begins(n) {
		return ""
	}
	m := &r.mentions[n]
	if m.part != "" || m.foreign || r.at(m.to).text != ":" {
		return ""
	}
	if m.gear {
		return r.gearOil()
	}
	return m.circuit
}

// figureIn reports whether an amount stands between two tokens.
func (r *readings) figureIn(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && f.unit != "" {
			return true
		}
	}
	return false
}

// clauseIsLabel reports whether a mention stands before a colon, and the other behind it.
func (r *readings) clauseIsLabel(label, m *mention) bool {
	for i := label.to; i < m.from; i++ {
		if r.places[i].text == ":" {
			return true
		}
	}
	return r.places[label.from].clause == r.places[m.from].clause
}
