package manual

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// fasteners reads threads, sizes, drives, seals, counts and turns of the plugs and screws.
func (r *readings) fasteners() {
	for i := range r.facts {
		f := &r.facts[i]
		switch f.kind {
		case "thread":
			r.bolt(f, "thread", f.text, f.from)
		case string(quantity.Length):
			if tool := r.toolAt(f); tool != nil {
				g := *f
				g.from, g.to = min(f.from, tool.from), max(f.to, tool.to)
				r.bolt(&g, "size", f.text, f.from)
			} else if r.bracketSize(f) {
				r.bolt(f, "size", f.text, f.from)
				r.bolt(f, "drive", "hexagon", f.from)
			}
		case string(quantity.Angle):
			r.turn(f)
		}
	}
	for n := range r.terms { // where it is to be new is quoted before where it is only named
		if t := &r.terms[n]; r.senseAt(t.from-1, "new") || t.from > 1 && r.places[t.from-1].function && r.senseAt(t.from-2, "new") {
			if kind := r.sealOf(n); kind != "" {
				r.sealed(t, kind)
			}
		}
	}
	var byHand []*fact       // of the filter
	for n := range r.terms { // and a head as such before the key for it
		if t := &r.terms[n]; t.to-t.from > 1 && t.has("drive.hexagon") && !t.has("tool.wrench") && r.headed(t) {
			r.bolt(&fact{kind: "drive", from: t.from, to: t.to}, "drive", "hexagon", t.from)
		}
	}
	for n := range r.terms {
		t := &r.terms[n]
		if kind := r.sealOf(n); kind != "" {
			r.sealed(t, kind)
		}
		if drive, size := r.driveOf(t); drive != "" {
			f := &fact{kind: "drive", from: t.from, to: t.to}
			if size != nil {
				f.from, f.to = min(f.from, size.from), max(f.to, size.to)
			}
			m, _ := r.partFor(f, -1)
			if drive == "hand" && is(m, "filter") && !r.hasCover() {
				byHand = append(byHand, f)
			}
			if drive == "strap" && !is(m, "filter") || drive == "hand" && !is(m, "filler") {
				continue
			}
			at := t.from
			if size != nil && !r.adjoining(&r.places[t.from], &r.places[t.to-1]) && t.to-t.from > 1 {
				at = size.from // its words are torn
			}
			if size != nil && t.from >= size.to && r.broken(size.from, t.from) {
				at = size.from // a column's line ends between the size and its key
			}
			if w := &r.places[at]; size != nil && len(w.text) > w.to-w.from {
				at = size.from // the word is torn at the line's end
			}
			if t.has("drive.hexagon-key") && t.has("drive.hexagon") { // the word is that of both
				if size != nil && size.low > largestKey {
					drive = "hexagon"
				}
				f.open = true
			}
			r.bolt(f, "drive", drive, at)
		}
	}
	if len(byHand) > 0 && !r.says("bolt.filter.drive") && !r.says("bolt.filter.torque") { // what loosens it, or a torque, says more
		r.bolt(byHand[0], "drive", "hand", byHand[0].from)
	}
	r.sameKeys()
	r.counts()
}

// sameKeys reads that a plug has the key of the one before it: "the plugs of gearbox and final drive
// have the same spanner".
func (r *readings) sameKeys() {
	for n := range r.terms {
		t := &r.terms[n]
		if !t.has("tool.wrench") || !r.senseAt(t.from-1, "alike") {
			continue
		}
		for i := t.from - 1; i >= 0 && i > t.from-mostNext; i-- {
			f := r.factAt(i)
			if f == nil || f.kind != string(quantity.Length) || r.toolAt(f) == nil {
				continue
			}
			r.bolt(&fact{kind: f.kind, from: t.from, to: t.to}, "size", f.text, t.from)
			break
		}
	}
}

// headed reports whether a plug or a bolt that is named before in a term's sentence is said to have
// such a head: "the drain plug, which has a hexagon head".
func (r *readings) headed(t *term) bool {
	drive, size := r.driveOf(t)
	from, _ := r.sentenceOf(t.from)
	m, _ := r.near(t.from, from, t.from, func(m *mention) bool { return true })
	return drive == "" && size == nil && m != nil && !m.foreign && m.part != "" && m.loose == whole && !m.ofFilter() && !r.row(t.from)
}

// largestKey is the size in mm of the largest key for a hexagon inside a bolt that most have; a
// larger one is a spanner's more likely. From memory.
const largestKey = 12.5

// says reports whether a reading of a thing is there.
func (r *readings) says(what string) bool {
	return slices.ContainsFunc(r.list, func(o Reading) bool { return o.What == what })
}

// broken reports whether something else of the page stands between two tokens.
func (r *readings) broken(from, to int) bool {
	for i := from; i < to; i++ {
		if !r.adjoining(&r.places[i], &r.places[i+1]) {
			return true
		}
	}
	return false
}

// is reports whether a mention is of a part.
func is(m *mention, part string) bool { return m != nil && !m.foreign && m.part == part }

// bolt adds a reading of the part that a figure is of, whose own words stand at a token.
func (r *readings) bolt(f *fact, member, text string, at int) {
	m, byContext := r.partFor(f, -1)
	if o := r.columnPart(f); o != nil {
		m, byContext = o, false
	}
	if o := r.toolFor(f); o != nil && (m == nil || byContext || m.from < f.from) && (member == "size" || member == "drive") {
		m, byContext = o, false
	}
	r.boltOf(m, f, member, text, byContext && m != nil && r.places[m.from].item != r.places[f.from].item, at)
	if m == nil || byContext || m.foreign || m.from > f.from || (member == "size" || member == "drive") && !r.both(f.from) && !m.beside { // a key fits what stands beside it
		return
	}
	if o := r.paired(m); o != nil { // "drain plug and filler plug have M12"
		both := *o
		if both.circuit == "" {
			both.circuit = m.circuit
		}
		r.boltOf(&both, f, member, text, false, at)
	}
}

// toolFor gives the part that a key is for which a sentence names first: "using a 17 mm
// socket, remove the drain plug". nil for none.
func (r *readings) toolFor(f *fact) *mention {
	from, to := r.sentenceOf(f.from)
	before, after := r.near(f.from, from, to, func(m *mention) bool { return m.part != "" || m.foreign || m.loose != whole })
	if after == nil || after.foreign || after.loose != whole || before != nil && !r.nextPart(before, f, after) {
		return nil
	}
	return after
}

// nextPart reports whether a sentence has gone on to its next part where it names a key: "take off
// the filler cap and, with a 19 mm spanner, the drain plug", "… then undo with a spanner the plug".
func (r *readings) nextPart(before *mention, f *fact, after *mention) bool {
	at := -1 // behind the last "and" or "then" before the key
	for i := before.to; i < f.from; i++ {
		if r.senseAt(i, "join.and") || r.senseAt(i, "when.then") {
			at = i + 1
		} else if text := r.places[i].text; text == ";" || text == "(" {
			return false
		}
	}
	if at < 0 {
		return false
	}
	for i := f.to; i < after.from; i++ {
		if t := &r.places[i]; t.kind != word && (t.text != "," || i > f.to) || r.senseAt(i, "join.and") || r.senseAt(i, "when.then") || r.unknown(i) {
			return false
		}
	}
	if r.places[f.to].text != "," || r.places[at].text == "," {
		return true
	}
	for ; at < f.from; at++ { // "refit it with a 17 mm spanner, the filler cap by hand"
		if !r.places[at].function && !r.senseAt(at, "with") {
			return false
		}
	}
	return true
}

// mostBetween is how many tokens may stand between a part and its ring that are quoted
// together.
const mostBetween = 8

func (r *readings) boltOf(m *mention, f *fact, member, text string, byContext bool, at int) {
	if m == nil || m.foreign || m.part == "" {
		return
	}
	circuit := m.circuit
	if m.gear {
		circuit = r.gearOil()
	}
	if circuit == "" {
		var foreign bool
		if circuit, foreign = r.circuitOfPart(m); foreign {
			return
		}
	}
	part := m.bolt(circuit)
	from := f.from
	if m.from < from && r.places[m.from].sentence == r.places[from].sentence && (from-m.to <= mostBetween || member != "seal" || r.row(from)) {
		from = m.from
	}
	var doubts []finding.Finding
	if byContext || m.several || f.open {
		doubts = append(doubts, doubt("manual-by-context", "text", text))
	}
	r.sayAt("bolt."+part+"."+member, text, from, r.clauseRest(f.to), at, doubts...)
}

// toolAt gives the key or head that a length stands beside, nil for none.
func (r *readings) toolAt(f *fact) *term {
	if t := r.toolNear(f.to, f.to+3); t != nil {
		return t
	}
	return r.toolNear(f.from-4, f.from)
}

func (r *readings) toolNear(from, to int) *term {
	for i := max(from, 0); i < min(to, len(r.places)); i++ {
		if t := r.termAt(i); t != nil && (t.has("tool.wrench") || t.has("drive.hexagon") || t.has("drive.hexagon-key") || t.has("drive.six-lobe")) {
			return t
		}
	}
	return nil
}

// driveOf gives the drive that a term names, and the size beside it: a plain spanner says
// a drive only with its size.
func (r *readings) driveOf(t *term) (drive string, size *fact) {
	for i := max(t.from-4, 0); i < min(t.to+4, len(r.places)) && size == nil; i++ {
		if f := r.factAt(i); f != nil && f.kind == string(quantity.Length) && r.places[f.from].sentence == r.places[t.from].sentence {
			size = f
		}
	}
	switch {
	case t.has("drive.hexagon-key"):
		return "hexagon-key", size
	case t.has("drive.six-lobe"):
		return "six-lobe", size
	case t.has("drive.hexagon") && (size != nil || !t.has("tool.wrench") && r.fastener(t.to)) && !r.otherDrive(t):
		return "hexagon", size
	case t.has("drive.strap"):
		return "strap", nil
	case t.has("drive.hand"):
		return "hand", nil
	}
	return "", nil
}

// fastener reports whether a plug, a cap or a bolt begins at a token: "the hexagon cap".
func (r *readings) fastener(at int) bool {
	n := r.mentionFrom(at)
	return n < len(r.mentions) && r.mentions[n].from == at && !r.mentions[n].foreign && (r.mentions[n].loose != whole || r.mentions[n].part != "")
}

// sealOf gives the kind of seal that a term names, also by its material beside it.
func (r *readings) sealOf(n int) string {
	t := &r.terms[n]
	kind, ok := t.begin("seal.")
	if !ok {
		return ""
	}
	for _, s := range t.senses {
		if s != "seal.washer" && len(s) > 5 && s[:5] == "seal." {
			return s[5:]
		}
	}
	if kind != "washer" {
		return kind
	}
	next := n + 1                                                                                      // "washer of the drain plug of aluminium"
	if next+1 < len(r.terms) && r.terms[next].has("all") && r.terms[next+1].from == r.terms[next].to { // "of all drain plugs"
		next++
	}
	if next < len(r.terms) && r.linked(t.to, r.terms[next].from) {
		if _, is := r.terms[next].begin("part."); is {
			next++
		}
	}
	if next < len(r.terms) && (r.terms[next].has("new") && r.terms[next].from == t.to || next > n+1 && r.terms[next].has("known") && r.terms[next].from == r.terms[next-1].to) { // "are of copper"
		next++
	}
	for _, k := range [...]int{n - 1, next} {
		if k < 0 || k >= len(r.terms) {
			continue
		}
		o := &r.terms[k]
		near := k < n && t.from-o.to <= 3 || k > n && o.from-r.terms[k-1].to <= 3
		if r.places[o.from].sentence != r.places[t.from].sentence || !near {
			continue
		}
		switch m, is := o.begin("material."); {
		case !is:
		case m == "folded":
			return m
		case k == next && next+1 < len(r.terms) && r.terms[next+1].has("material.folded") && r.terms[next+1].from-o.to <= 1: // "(copper, folded)"
			return "folded"
		case m == "paper" || m == "fibre":
			return m
		default:
			return "flat-" + m
		}
	}
	return ""
}

// sealed gives a seal the part that it is of: the last one before it in its sentence that
// has such a seal, else the first behind it, else the one that was spoken of.
func (r *readings) sealed(t *term, kind string) {
	f := &fact{kind: "seal", from: t.from, to: t.to}
	if n := r.places[t.from].term; n > 0 && t.from-r.terms[n-1].to <= 1 && r.places[r.terms[n-1].from].sentence == r.places[t.from].sentence && t.has("seal.washer") { // "fibre washer"
		if _, is := r.terms[n-1].begin("material."); is {
			f.from = r.terms[n-1].from
		}
	}
	from, to := r.sentenceOf(t.from)
	first := r.mentionFrom(t.from)
	for n := first; n < len(r.mentions) && n < first+2 && r.linked(t.to, r.mentions[n].from); n++ { // "the ring of the cover"
		if r.mentions[n].from >= t.to && r.sealOn(&r.mentions[n], r.withMaterial(f, r.mentions[n].to), kind) {
			if n+1 < len(r.mentions) && r.alsoNamed(r.mentions[n].to, r.mentions[n+1].from) { // "the rings of the cover and of the strainer"
				r.sealOn(&r.mentions[n+1], f, kind)
			}
			return
		}
	}
	both := r.both(t.from) || r.about(from, t.from, "both") && !r.namesPart(from, t.from) // "clean both, fit them with new copper rings"
	several := r.severalIn(&mention{from: t.from, to: t.to})                              // "the two plugs and their rings"
	for n := first - 1; n >= 0 && r.mentions[n].from >= from; n-- {
		if m := &r.mentions[n]; r.sealOn(m, f, kind) {
			if several && !both {
				r.sealOnOther(m, f, kind)
			}
			if !both || m.foreign {
				return
			}
			both = false // and the part before it
		}
	}
	for n := first; n < len(r.mentions) && r.mentions[n].from < to && !r.row(t.from); n++ {
		if r.mentions[n].from >= t.to && r.sealOn(&r.mentions[n], f, kind) {
			return
		}
	}
	for n := r.mentionFrom(from) - 1; n >= 0 && r.places[r.mentions[n].from].section == r.places[t.from].section; n-- {
		if r.sealOn(&r.mentions[n], f, kind) {
			if several && !both {
				r.sealOnOther(&r.mentions[n], f, kind)
			}
			if !both || r.mentions[n].foreign {
				return
			}
			both = false
		}
	}
}

// sealOnOther takes a seal for that of the part that is named with another, of the same oil where
// nothing else is said.
func (r *readings) sealOnOther(m *mention, f *fact, kind string) {
	if o := r.paired(m); o != nil && !m.foreign && m.part != "" {
		other := *o
		if other.circuit == "" {
			other.circuit = r.circuitOf(m)
		}
		r.sealOn(&other, f, kind)
	}
}

// withMaterial gives a seal with the words behind its part that say what it is made of: "the rings
// of the plugs are of copper".
func (r *readings) withMaterial(f *fact, from int) *fact {
	for i := from; i < len(r.places) && i < from+mostLabel; i++ {
		if t := r.termAt(i); t != nil && r.places[i].sentence == r.places[f.from].sentence {
			if _, is := t.begin("material."); is {
				g := *f
				g.to = t.to
				return &g
			}
		}
	}
	return f
}

// both reports whether a clause says "both" before a token.
func (r *readings) both(at int) bool {
	for i := max(at-2*mostBetween, 0); i < at; i++ {
		if t := r.termAt(i); t != nil && t.has("both") && r.places[i].clause == r.places[at].clause {
			return true
		}
	}
	return false
}

// factIn reports whether a figure stands between two tokens.
func (r *readings) factIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.factAt(i) != nil {
			return true
		}
	}
	return false
}

// alsoNamed reports whether a word for "and", with small words, is all that stands
// between two tokens.
func (r *readings) alsoNamed(from, to int) bool {
	return from < to && to-from <= 4 && r.senseAt(from, "join.and") && r.linked(from+1, to) || from+1 == to && r.senseAt(from, "join.and")
}

// sealOn takes a seal for that of a mention, if it may be: a flat ring of metal lies below
// a plug and never in a filter's cover. It reports whether the search is over.
func (r *readings) sealOn(m *mention, f *fact, kind string) (done bool) {
	if m.loose != whole {
		from, _ := r.sentenceOf(f.from)
		o := r.ofOil(f.from, m.from, from, m) // "the plug below the crankcase (copper ring)"
		if o == nil {
			o = r.resolved(m)
		}
		if o == nil {
			o = r.onlyPlug(m)
		}
		if o == nil {
			return false
		}
		if m.from >= f.to { // "the ring of the cover" is said there, and not where the filter was named
			there := *o
			there.from, there.to = m.from, m.to
			o = &there
		}
		if r.severalIn(m) { // "the drain plug and the level plug … the plugs with new rings"
			r.sealOnOther(o, f, kind)
		}
		m = o
	}
	metal := strings.HasPrefix(kind, "flat-") || kind == "folded" || kind == "bonded"
	switch {
	case m.foreign:
		return true
	case m.part == "", metal && (m.part == "filter" || m.part == "filter-cover" || m.part == "strainer" && m.from < f.from && r.onlyCleaned(m)):
		return false
	case m.part != "filter" || r.about(m.from, m.to, "part.filter-bolt"):
		r.boltOf(m, f, "seal", kind, false, r.materialIn(f))
		if m.part == "drain" && (r.about(max(m.from-2, 0), m.from, "all") || r.about(max(m.from-2, 0), m.from, "when.every")) { // "all drain plugs"
			for n := range r.mentions {
				if o := &r.mentions[n]; (o.part == "drain" || o.part == "tank-drain") && !o.foreign {
					r.boltOf(&mention{from: m.from, to: m.to, part: o.part, circuit: r.circuitOf(o)}, f, "seal", kind, false, f.from)
				}
			}
			return true
		}
		if from, to := r.sentenceOf(f.from); (m.part == "drain" || m.part == "tank-drain") && metal && (!r.factIn(from, to) || r.senseAt(m.from-1, "both")) {
			other := map[string]string{"drain": "tank-drain", "tank-drain": "drain"}[m.part]
			said := r.senseAt(m.from-1, "both") // "refit both drain plugs with new copper rings"
			both := m.part == "tank-drain" && r.about(from, to, "number.2")
			for n := range r.mentions { // a sentence on the rings of all drain plugs
				o := &r.mentions[n]
				same := o.part == other && !o.foreign && (o.circuit == "" || o.circuit == "engine")
				if same && o.from >= from && o.from < to {
					both = false // it has its own word in the sentence
					break
				}
				both = both || same
			}
			if both {
				r.boltOf(&mention{from: m.from, to: m.to, part: other, circuit: "engine"}, f, "seal", kind, !said, f.from)
			}
		}
	case r.housed():
		r.boltOf(r.lid(m), f, "seal", kind, false, f.from)
	case (kind == "o-ring" || kind == "square-ring") && (r.linked(f.to, m.from) || r.ownTorque(m, f)): // "the O-ring of the new filter"
		r.boltOf(m, f, "seal", kind, false, f.from)
	}
	return true
}

// ownTorque reports whether a seal stands in the row of a filter behind a torque of the filter's own:
// "Oil filter    17 N·m    O-ring".
func (r *readings) ownTorque(m *mention, f *fact) bool {
	n := r.places[m.from].piece
	if !r.pieces[n].cells || r.places[f.from].piece != n {
		return false
	}
	for i := m.to; i < f.from; i++ {
		if g := r.factAt(i); g != nil && g.kind == string(quantity.Torque) {
			return true
		}
	}
	return false
}

// materialIn gives the token of a seal's words that says what it is made of, its first where
// none does: words that are torn are quoted there.
func (r *readings) materialIn(f *fact) int {
	for i := f.from; i < f.to; i++ {
		if e, _ := r.words.match(r.tokens[:i+1], i); e != nil {
			for _, s := range e.senses {
				if strings.HasPrefix(s, "material.") {
					return i
				}
			}
		}
	}
	return f.from
}

// circuitOf gives the oil that a part is of, "engine" also where that is not said.
func (r *readings) circuitOf(m *mention) string {
	switch {
	case m.gear:
		return r.gearOil()
	case m.circuit != "":
		return m.circuit
	}
	c, _ := r.circuitOfPart(m)
	return c
}

// turn reads how far a filter is turned after its gasket touches.
func (r *readings) turn(f *fact) {
	m, _ := r.partFor(f, -1)
	if m == nil {
		m = r.spokenOf(f.from, f.from)
	}
	if at, to := r.sentenceOf(f.from); (m == nil || m.from < at) && r.about(at, to, "amount.with-filter") {
		m = &mention{from: at, to: at, part: "filter", circuit: "engine"} // "if you change the filter, …"
	}
	if m == nil || m.foreign || m.part == "" || m.part == "filter-cover" {
		return
	}
	if f.unit == "°" && !r.about(max(f.from-6, 0), f.from, "label.torque") {
		return
	}
	from, end := r.clauseOf(f.from)
	to := f.to
	for to < end && to < f.to+mostTouch && !r.figureIn(to, to+1) && r.adjoining(&r.places[to-1], &r.places[to]) { // "after the gasket touches the mount"
		to++
	}
	if to == f.to+mostTouch {
		to = f.to
	}
	r.boltOf(m, &fact{from: from, to: to}, "turn", f.text, false, f.from)
}

// mostTouch is how many tokens of a clause are quoted behind a turn, which say from when it counts.
const mostTouch = 12

// counts reads how many screws hold a filter's cover.
func (r *readings) counts() {
	for n := range r.mentions {
		m := &r.mentions[n]
		if m.loose == aCover || m.loose == aFastener {
			o := r.resolved(m)
			if next := n + 1; m.loose == aFastener && (o == nil || o.part != "filter-cover") && next < len(r.mentions) && r.places[r.mentions[next].from].item == r.places[m.from].item {
				o = &r.mentions[next] // "remove the two screws and take off the filter cover"
			} else if m.loose == aCover && o == nil && next < len(r.mentions) && r.mentions[next].part == "filter" && r.places[r.mentions[next].from].sentence == r.places[m.from].sentence && r.housed() {
				o = &mention{part: "filter-cover"} // "undo the two cover screws and take out the element"
			}
			if o != nil && o.part == "filter-cover" && !o.foreign {
				m = &mention{from: m.from, to: m.to, part: o.part}
			}
		}
		if m.part != "filter-cover" || m.foreign {
			continue
		}
		from, to := r.sentenceOf(m.from)
		for i := from; i < to; i++ {
			if f := r.factAt(i); f != nil && f.kind == "count" && f.from == i {
				r.sayAt("bolt.filter-cover.count", f.text, m.from, f.to, i)
				break
			}
			v, next, ok := r.countAt(i, m)
			if v.v == 1 && m.loose == whole && &r.mentions[n] != m && r.places[i].kind == word { // "a bolt" counts nothing
				continue
			}
			if ok && v.v >= 1 && v.v <= 12 && v.step == 1 && !v.fraction {
				if t := r.termAt(next); t != nil && t.has("part.fastener") {
					next = t.to
				}
				r.sayAt("bolt.filter-cover.count", v.text1(), min(m.from, i), max(m.to, next), i)
				break
			}
		}
	}
}

func (v *value) text1() string {
	for word, text := range numberWords {
		if word == v.text {
			return text
		}
	}
	return v.text
}

// countAt reads a count: before a word for screws, in brackets behind the part or its
// thread, before a thread with a times sign.
func (r *readings) countAt(i int, m *mention) (v value, next int, ok bool) {
	v, next, ok = r.valueAt(i)
	if !ok {
		return v, next, false
	}
	behind, before := r.at(next), r.at(i-1)
	if r.senseAt(next, "label.count") && behind.gap != wide && i >= m.to && i <= m.to+8 {
		return v, next, true // "M5, 3 pieces"
	}
	if t := r.termAt(next); t != nil && t.from == next && (t.has("part.fastener") || next == m.from && v.v > 1) { // "a cover" counts nothing
		return v, next, r.fastens(next, m)
	}
	if to := r.screwsAt(next); to > next { // "four M6 screws", "two hexagon bolts"
		return v, to, r.fastens(to, m)
	}
	if r.senseAt(next, "label.count") { // "4 pcs"
		return v, r.termAt(next).to, i >= m.to && r.row(i)
	}
	if behind.fold == "x" || behind.text == "×" {
		f := r.factAt(next + 1)
		return v, next, f != nil && f.kind == "thread" || r.senseAt(next+1, "part.fastener") || before.text == "(" && r.at(next+1).text == ")"
	}
	pieces := next
	if r.senseAt(next, "known") { // "(2 pieces)"
		pieces = r.termAt(next).to
	}
	if before.text == "(" && behind.text == ")" && r.senseAt(i-2, "part.fastener") && !r.callouts() { // "screws (4), filter cover"
		return v, next, r.fastens(i, m)
	}
	if end := r.at(pieces).text; before.text == "(" && (end == ")" || end == "," || r.senseAt(next, "part.fastener")) && i >= m.to {
		return v, next, !r.places[i].taken && !(end == ")" && r.callouts())
	}
	if (before.fold == "x" || before.text == "×") && r.at(i-2).text == "(" {
		return v, next, true
	}
	return v, next, false
}

// callouts reports whether the numbers in brackets of a page call the parts of its picture, and count
// nothing: in its sentences stand a "(1)", or three of them.
func (r *readings) callouts() bool {
	if r.called == notAsked {
		r.called = no
		seen := map[string]bool{}
		for i := 1; i+2 < len(r.places); i++ {
			t := &r.places[i+1]
			if r.places[i].text == "(" && r.places[i+2].text == ")" && t.kind == number && !t.taken && len(t.text) <= 2 && r.places[i-1].kind == word && r.places[i-1].sentence == t.sentence && (!r.pieces[t.piece].cells || bullet(r.pieces[t.piece].tokens) > 0) {
				seen[t.text] = true
			}
		}
		if seen["1"] || len(seen) > 2 {
			r.called = yes
		}
	}
	return r.called == yes
}

// screwsAt gives where a word for screws begins behind their thread, size or drive; the
// token itself where there is none.
func (r *readings) screwsAt(at int) int {
	for i := at; i < len(r.places) && i < at+mostBetween; {
		t, f := r.termAt(i), r.factAt(i)
		switch {
		case t != nil && t.has("part.fastener"):
			return i
		case f != nil && (f.kind == "thread" || f.kind == string(quantity.Length)):
			i = f.to
		case t != nil && (t.has("drive.hexagon") || t.has("drive.hexagon-key") || t.has("drive.six-lobe")):
			i = t.to
		default:
			return at
		}
	}
	return at
}

// fastens reports whether a word for screws behind a count is near its part.
func (r *readings) fastens(at int, m *mention) bool {
	return abs(at-m.from) <= 8 || abs(at-m.to) <= 4
}

// linked reports whether nothing but small words stands between two things, and one such
// at least: "of the".
func (r *readings) linked(from, to int) bool {
	if to <= from || to-from > 3 || from < 1 || r.places[from-1].sentence != r.places[to].sentence {
		return false
	}
	for i := from; i < to; i++ {
		t := &r.places[i]
		if t.kind == sign && t.text != "'" || t.kind == number || t.gap == wide || r.senseAt(i, "join.and") || r.senseAt(i, "join.or") || r.senseAt(i, "with") ||
			t.kind == word && !t.function && len(t.fold) > 3 && !r.senseAt(i, "new") && !r.senseAt(i, "known") && !r.senseAt(i, "all") {
			return false
		}
	}
	return true
}
