package manual

import (
	"slices"
	"strings"

	"tidysump/internal/quantity"
)

// mention is where the page names a part, an oil or a thing of another job.
type mention struct {
	from, to int    // tokens
	part     string // of the what-list, without its oil; "" for an oil alone
	circuit  string // engine, gearbox, primary, final; "" where it is not said
	gear     bool   // gear oil of which the word does not say whose
	foreign  bool   // of another job
	measure  bool   // foreign as a measure is, which tells of no job
	strainer bool   // a drain plug that also holds the strainer
	loose    looseness
	tank     bool   // an oil tank or a frame is named
	alike    string // the oil that serves here too: "Gearbox   the same as engine"
	beside   bool   // its part is that of the mention before it: "the drain plugs of gearbox and final drive"
	oil      bool   // oil is named
	several  bool   // a word for several things stands for it: "the bolts"
}

// looseness says what a bare word names that stands for a part that was spoken of.
type looseness uint8

const (
	whole     looseness = iota // it names its part
	aPlug                      // "the plug"
	aCover                     // "the cover", "cover screws"
	aFastener                  // "the bolt"
)

// partOf are the parts that a sense names.
var partOf = map[string]string{
	"drain": "drain", "filter": "filter", "filter-element": "filter", "filter-spin-on": "filter", "filter-centrifugal": "filter",
	"filter-cover": "filter-cover", "filter-bolt": "filter", "strainer": "strainer", "level": "level", "filler": "filler",
}

// findMentions gathers terms that stand together into what they name.
func (p *page) findMentions() {
	for n := 0; n < len(p.terms); {
		if !p.names(n) {
			n++
			continue
		}
		last := n
		for next := p.nextName(last); next < len(p.terms) && p.close(last, next); next = p.nextName(last) {
			last = next
		}
		p.mentions = append(p.mentions, p.mentionOf(n, last))
		n = last + 1
	}
}

// names reports whether a term names a thing, and not a figure's role.
func (p *page) names(n int) bool {
	t := &p.terms[n]
	for _, s := range t.senses {
		if strings.HasPrefix(s, "oil.") || strings.HasPrefix(s, "part.") || s == "other.part" || s == "other.fluid" || s == "other.measure" {
			return true
		}
	}
	return false
}

// settleMentions decides what mentions are by what stands around them: a drain plug at the
// end of a frame's tube is the tank's; below a heading of another job a bare cover or plug
// is of that job.
func (p *page) settleMentions() {
	defer func() { p.usual, p.geared, p.several = "", "", notAsked }() // asked for before all was named
	p.settleScooter()
	p.settleShared()
	p.settleProducts()
	p.settleCompanions()
	p.settleTwoStroke()
	p.mentions = slices.DeleteFunc(p.mentions, p.onlyWhere)
	own := -1 // the last paragraph in which one of ours is named in full
	for n := range p.mentions {
		m := &p.mentions[n]
		p.meansSame(n)
		here := &p.places[m.from]
		if m.part == "drain" && n+1 < len(p.mentions) {
			o := &p.mentions[n+1]
			if o.tank && o.part == "" && !o.foreign && (p.places[o.from].clause == here.clause || o.from-m.to <= 2 && p.places[o.from].sentence == here.sentence) && !p.figureIn(m.to, o.from) {
				m.part, m.circuit = "tank-drain", "engine"
			}
		}
		p.plugOf(n)
		p.drainedBy(n)
		p.ofTank(n)
		p.changedAfterDry(n)
		if m.foreign && !m.measure && m.to-m.from == 1 && p.shortPart(m.from) == "filter" {
			m.foreign, m.part, m.circuit = false, "filter", "engine"
		}
		if p.holdsGauze(n) {
			m.part, m.circuit, m.loose = "strainer", "engine", whole
		}
		if (m.loose == aCover || m.loose == aPlug) && n+1 < len(p.mentions) && !p.figureIn(m.to, p.mentions[n+1].from) {
			next := &p.mentions[n+1] // "the cap below the engine carries the gauze"
			if bare := *next; bare.circuit == "engine" && bare.part == "" && n+2 < len(p.mentions) {
				next = &p.mentions[n+2]
			}
			if next.part == "strainer" && p.places[next.from].clause == here.clause && next.from-m.to <= mostBetween && !p.joined(m.to, next.from) {
				m.part, m.circuit, m.loose = "strainer", "engine", whole
			}
		}
		if n > 0 && m.part == "drain" && m.circuit == "" { // "oil strainer, closing plug": a row's label
			if o := &p.mentions[n-1]; o.part == "strainer" && !o.foreign && o.to+1 == m.from && p.places[o.to].text == "," && p.places[o.from].piece == here.piece {
				m.part, m.circuit, m.strainer = "strainer", "engine", true
			}
		}
		if m.loose == aCover && m.from > 0 && p.at(m.from-1).piece == here.piece && p.unknown(m.from-1) && (m.from == 1 || p.places[m.from-2].piece != here.piece) {
			m.foreign = true // a row of a cover that nobody here knows
		}
		if p.coverOfCase(n) {
			m.foreign, m.loose = true, whole
		}
		if m.circuit == "" && !m.foreign && (m.part != "" && !m.ofFilter() || m.loose != whole) && p.foreignItem(here.item, n) {
			m.foreign = true // "FORK OIL. Undo the drain screw"
		}
		p.strainersPlug(n)
		bare := m.circuit == "engine" && m.part == "" && m.to-m.from == 1 // "engine cold"
		switch {
		case m.foreign:
		case p.named(m) && !bare, m.oil && p.at(m.to).text == ":" && (m.from == 0 || p.places[m.from-1].sentence != here.sentence):
			own = here.paragraph
		case own != here.paragraph:
			if head, foreign := p.headCircuit(m.from); foreign && head == "" {
				m.foreign = true
			} else if bare {
				own = here.paragraph
			}
		}
	}
}

// plugOf takes a bare plug for the drain plug of what it is said to be at: "the plug at the foot
// of the tank", and beside such a one "the larger plug beneath the crankcase".
func (p *page) plugOf(n int) {
	m := &p.mentions[n]
	if m.loose == aPlug && m.circuit == "engine" { // "the plug of the crankcase"
		if m.loose = whole; p.besideTanks(n) {
			m.part = "drain"
		} else {
			m.foreign = true
		}
		return
	}
	if m.loose != aPlug || m.foreign || n+1 == len(p.mentions) {
		return
	}
	o := &p.mentions[n+1]
	if o.foreign || o.part != "" || o.loose != whole || o.from-m.to > mostPlace || p.places[o.from].clause != p.places[m.from].clause || p.figureIn(m.to, o.from) {
		return
	}
	for i := m.to; i < o.from; i++ {
		if p.places[i].kind != word || p.senseAt(i, "join.and") || p.senseAt(i, "with") || p.senseAt(i, "put.in") {
			return
		}
	}
	switch {
	case o.tank && p.oilTank():
		m.part, m.circuit, m.loose = "tank-drain", "engine", whole
	case o.circuit == "engine" && !p.saysOil(o) && p.besideTanks(n):
		m.part, m.circuit, m.loose = "drain", "engine", whole
	}
}

// ofTank takes a drain plug of which a sentence does not say whose for the oil tank's where that is the
// only drain plug named below its heading.
func (p *page) ofTank(n int) {
	m := &p.mentions[n]
	if m.part != "drain" || m.circuit != "" || m.foreign || p.pieces[p.places[m.from].piece].cells {
		return
	}
	s := p.sections[p.places[m.from].section]
	tank := false
	for k := p.mentionFrom(s.from); k < len(p.mentions) && p.mentions[k].from < s.to; k++ {
		o := &p.mentions[k]
		switch {
		case o.foreign:
		case o.part == "tank-drain":
			tank = tank || k < n
		case o.part == "drain" && o.circuit != "", o.part == "" && o.circuit != "" && !p.saysOil(o) && p.drainIn(o.from):
			return // the crankcase has one too
		}
	}
	if tank {
		m.part, m.circuit = "tank-drain", "engine"
	}
}

// drainIn reports whether a drain plug, or a bare plug, is named in the sentence of a token.
func (p *page) drainIn(at int) bool {
	from, to := p.sentenceOf(at)
	for n := p.mentionFrom(from); n < len(p.mentions) && p.mentions[n].from < to; n++ {
		if o := &p.mentions[n]; o.part == "drain" || o.loose == aPlug {
			return true
		}
	}
	return false
}

// besideTanks reports whether the drain plug of an oil tank is named a little before a mention,
// below the same heading: then a plug of the crankcase is the other one.
func (p *page) besideTanks(n int) bool {
	for k := n - 1; k >= max(0, n-mostPlugs) && p.places[p.mentions[k].from].section == p.places[p.mentions[n].from].section; k-- {
		if p.mentions[k].part == "tank-drain" {
			return true
		}
	}
	return false
}

// drainedBy takes a bare plug or bolt for the drain plug of what a sentence is about to drain: "to
// drain the gearbox, undo the lower bolt".
func (p *page) drainedBy(n int) {
	m := &p.mentions[n]
	if m.loose != aPlug && m.loose != aFastener || m.foreign || n == 0 {
		return
	}
	o := &p.mentions[n-1]
	from, _ := p.sentenceOf(m.from)
	if o.from < from || o.foreign || o.tank || o.part != "" || o.loose != whole || o.circuit == "" && !o.gear || p.figureIn(o.to, m.from) {
		return
	}
	for i := max(from, o.from-mostPlace); i < o.from; i++ {
		if p.senseAt(i, "warm.drain") {
			m.part, m.circuit, m.gear, m.loose, m.several = "drain", o.circuit, o.gear, whole, p.severalIn(m)
			return
		}
	}
}

// severalIn reports whether a mention's words name several things: by their form, or by a number
// before them.
func (p *page) severalIn(m *mention) bool {
	for i := m.from; i < m.to; i++ {
		if p.senseAt(i, "several") {
			return true
		}
		if e, _ := p.words.match(p.tokens[:i+1], i); e != nil && slices.Contains(e.senses, "several") {
			return true
		}
	}
	if m.from == 0 || p.places[m.from].gap == wide {
		return false
	}
	v, next, ok := p.valueAt(m.from - 1)
	return ok && next == m.from && v.v > 1 && v.step == 1
}

// changedAfterDry takes a bare oil for the engine's where its sentence begins with it, or with its
// change, and the paragraph tells before it of nothing but things that hold none: "Drive chain: slack
// 30 mm. Change the oil".
func (p *page) changedAfterDry(n int) {
	m, here := &p.mentions[n], &p.places[p.mentions[n].from]
	if m.foreign || m.circuit != "" || m.gear || m.part != "" && m.part != "drain" || m.loose != whole || !m.oil || n == 0 {
		return
	}
	for i := m.from - 1; i >= 0 && p.places[i].sentence == here.sentence; i-- {
		if t := &p.places[i]; !t.function && !p.senseAt(i, "when.change") && !p.senseAt(i, "warm.drain") && !p.senseAt(i, "known") && t.kind != sign {
			return
		}
	}
	dry := false
	for k := n - 1; k >= 0 && p.places[p.mentions[k].from].paragraph == here.paragraph; k-- {
		o := &p.mentions[k]
		if o.measure {
			continue
		}
		if !o.foreign || !p.about(o.from, o.to, "other.dry") || p.places[o.from].sentence == here.sentence {
			return
		}
		dry = true
	}
	if dry && p.usualOil() == "engine" && !p.severalOils() {
		m.circuit = "engine"
	}
}

// mostPlugs is how many mentions are looked back for the plug beside which another stands.
const mostPlugs = 8

// mostPlace is how many words stand at most between a plug and what it is at.
const mostPlace = 5

// onlyWhere reports whether a mention of another job's part says no more than where something is
// that the sentence names before it: "the oil is carried in a tank below the seat".
func (p *page) onlyWhere(m mention) bool {
	if !m.foreign || m.measure || m.oil || p.places[m.from].paragraph == 0 && m.from < mostPlace {
		return false
	}
	for i := m.from; i < m.to; i++ {
		if p.senseAt(i, "other.fluid") {
			return false
		}
	}
	at := m.from - 1
	for at > 0 && at > m.from-mostLabel && p.places[at].function && !p.senseAt(at, "where") {
		at--
	}
	if at < 1 || !p.senseAt(at, "where") || p.figureIn(at, m.from) || p.pieces[p.places[at].piece].cells {
		return false
	}
	from, _ := p.sentenceOf(at)
	n := p.mentionFrom(at) - 1
	return n >= 0 && p.mentions[n].from >= from && !p.mentions[n].foreign && (p.places[p.mentions[n].from].clause == p.places[at].clause || p.goesOnBehind(p.mentions[n].to, at))
}

// goesOnBehind reports whether nothing ends a clause between two tokens but what stands in brackets, or
// between commas: "the plug (14 mm key) is below the".
func (p *page) goesOnBehind(from, to int) bool {
	end := map[string]string{"(": ")", ",": ","}[p.at(from).text]
	for i := from + 1; i < to && end != ""; i++ {
		if p.places[i].text == end {
			return p.places[i+1].clause == p.places[to].clause && p.mentionFrom(i) == p.mentionFrom(to)
		}
	}
	return false
}

// shortPart gives what is changed where a word is one of a filter's or a strainer's name
// elsewhere on the page: "the rotor" of "the oil filter's rotor". "" for none.
func (p *page) shortPart(at int) string {
	if p.inNames == nil {
		p.inNames = p.filterNames()
	}
	return p.inNames[p.places[at].fold]
}

// filterNames gives of each word in a filter's or a strainer's name on the page which it is.
func (p *page) filterNames() map[string]string {
	names := map[string]string{}
	for n := range p.terms {
		t := &p.terms[n]
		name, is := t.begin("part.")
		part := partOf[name]
		if !is || part != "filter" && part != "strainer" || t.to-t.from < 2 {
			continue
		}
		for i := t.from; i < t.to; i++ {
			if w := p.places[i].fold; names[w] == "" && !p.saysOil(&mention{from: i, to: i + 1}) {
				names[w] = part
			}
		}
	}
	return names
}

// coverOfCase reports whether a bare cover or its screws stand in one cell with the oil whose
// case they close, on either side: "Transmission side cover screws", "vis du couvercle de la
// boîte".
func (p *page) coverOfCase(n int) bool {
	m := &p.mentions[n]
	if m.loose != aCover && m.loose != aFastener || !p.pieces[p.places[m.from].piece].cells {
		return false
	}
	for _, k := range [...]int{n - 1, n + 1} {
		if k < 0 || k >= len(p.mentions) {
			continue
		}
		o := &p.mentions[k]
		if o.part == "" && !o.tank && o.loose == whole && (o.circuit != "" || o.gear || o.foreign && !o.measure) && p.oneCell(min(o.to, m.to), max(o.from, m.from)) {
			return true
		}
	}
	return false
}

// oneCell reports whether nothing but words stands between two tokens of a cell.
func (p *page) oneCell(from, to int) bool {
	for i := from; i <= to; i++ {
		if t := &p.places[i]; t.gap == wide || t.piece != p.places[from].piece || i < to && t.kind != word {
			return false
		}
	}
	return true
}

// foreignItem reports whether an item, of which mention n is one, begins with a heading in its
// line that names another job and nothing else: "B  COOLANT. Drain bolt …".
func (p *page) foreignItem(item, n int) bool {
	first := n
	for first > 0 && first > n-mostBackMentions && p.places[p.mentions[first-1].from].item == item {
		first--
	}
	m := &p.mentions[first]
	if first == n || !m.foreign || m.measure || !p.begins(first) {
		return false
	}
	from, to := p.sentenceOf(m.from)
	return to-from <= mostRunIn && !p.figureIn(from, to) && (p.places[to-1].text == "." || p.at(m.to).text == ":")
}

// mostRunIn is how many tokens a heading has at most that stands in the line of its text.
const mostRunIn = 8

// besidePart takes what holds an oil for its drain plug too where it is named with such a plug:
// "the drain plugs of the oil tank and of the crankcase".
func (p *page) besidePart(o, m *mention) bool {
	if o.part != "drain" && o.part != "tank-drain" || o.foreign || !m.tank && p.saysOil(m) || m.from-o.to > mostPhrase || !p.senseAt(o.to, "join.and") || o.circuit == m.circuit && o.part == "drain" && !m.tank {
		return false
	}
	for i := o.to + 1; i < m.from; i++ {
		if !p.places[i].function || p.places[i].gap == wide || p.senseAt(i, "same") {
			return false
		}
	}
	for i := m.to; i < min(m.to+2, len(p.places)); i++ {
		if f := p.factAt(i); f != nil && f.kind == string(quantity.Volume) {
			return false
		}
	}
	if m.part = "drain"; m.tank {
		m.part, m.circuit = "tank-drain", "engine"
	}
	m.beside = true
	return true
}

// meansSame gives an oil's name, or that of what holds it, the part that was named last where
// a word stands before it that repeats it: "the drain plug of the tank and that of the sump".
func (p *page) meansSame(n int) {
	m := &p.mentions[n]
	if m.foreign || m.part != "" || m.loose != whole || !m.tank && m.circuit == "" {
		return
	}
	if n > 0 && p.besidePart(&p.mentions[n-1], m) {
		return
	}
	at := m.from - 1
	for at > m.from-3 && at > 0 && p.places[at].kind == word && p.places[at].term < 0 && p.places[at].function {
		at--
	}
	if !p.senseAt(at, "same") || p.places[at].sentence != p.places[m.from].sentence {
		return
	}
	if n == 0 || p.places[p.mentions[n-1].from].paragraph != p.places[m.from].paragraph {
		return
	}
	switch o := &p.mentions[n-1]; {
	case o.foreign:
	case o.loose == aPlug && p.places[o.from].sentence == p.places[m.from].sentence && (m.tank || m.circuit == "engine"), o.part == "drain" || o.part == "tank-drain" || (o.part == "level" || o.part == "filler") && !m.tank:
		if m.part = o.part; m.tank {
			m.part, m.circuit = "tank-drain", "engine"
		} else if o.loose == aPlug { // "two plugs: that of the frame and that of the sump"
			m.part = "drain"
		} else if o.part == "tank-drain" {
			m.part = "drain"
		}
		m.from = p.termAt(at).from
	}
}

// strainersPlug takes a bare plug or cover for the strainer's where that is the label before it:
// "Strainer: plug M20, 15 N·m".
func (p *page) strainersPlug(n int) {
	m := &p.mentions[n]
	if n == 0 || m.foreign || m.circuit != "" || m.part != "drain" && m.loose != aPlug && m.loose != aCover || p.saysOil(m) {
		return
	}
	if o := &p.mentions[n-1]; o.part == "strainer" && !o.foreign && m.from == o.to+1 && p.places[o.to].text == ":" {
		m.part, m.loose, m.circuit = "strainer", whole, "engine"
	}
}

// holdsGauze reports whether a fastener is unscrewed before the strainer is taken out in the same
// sentence: "unscrew the hexagon nut under the tank, withdraw the gauze".
func (p *page) holdsGauze(n int) bool {
	m := &p.mentions[n]
	from, to := p.sentenceOf(m.from)
	if m.loose != aFastener || !p.about(from, m.from, "action.screw") || p.about(from, m.from, "part.cover") {
		return false
	}
	if last := p.places[m.to-1].fold; p.about(m.from, m.to, "part.fastener") && !p.about(m.from, m.to, "nut") && strings.HasSuffix(last, "s") {
		return false
	}
	for k := n + 1; k < len(p.mentions) && p.mentions[k].from < to && p.mentions[k].from-m.to <= mostBetween; k++ {
		switch o := &p.mentions[k]; {
		case o.part == "strainer" && !o.foreign:
			return !p.figureIn(m.to, o.from)
		case o.part != "" || o.foreign || o.loose != whole:
			return false
		}
	}
	return false
}

// settleCompanions takes an oil that is named behind "with" for that of the oil with whose name a
// sentence of its paragraph begins: "GEARBOX. Holds 0.5 litre. Change it with the engine oil", "… is
// filled with engine oil".
func (p *page) settleCompanions() {
	governs := -1
	for n := range p.mentions {
		m := &p.mentions[n]
		if governs >= 0 && p.places[m.from].paragraph != p.places[p.mentions[governs].from].paragraph {
			governs = -1
		}
		switch {
		case m.foreign || m.part != "" || m.circuit == "" && !m.gear:
		case p.begins(n):
			governs = n
		case governs >= 0 && p.saysOil(m) && p.withBefore(m.from):
			g := &p.mentions[governs]
			m.circuit, m.gear = g.circuit, g.gear
		}
	}
}

// withBefore reports whether a word for "with" stands before a token, with no more than small words
// between.
func (p *page) withBefore(at int) bool {
	for i := at - 1; i >= 0 && i >= at-mostLabel && p.places[i].sentence == p.places[at].sentence; i-- {
		if t := p.termAt(i); t != nil && t.has("with") {
			return !t.has("join.and")
		}
		if t := &p.places[i]; !t.function || t.taken {
			return false
		}
	}
	return false
}

// settleProducts takes the oil that a row of a table names behind the thing it is for as that
// thing's: "Gearbox   engine oil SAE 40   0.9 l", "Air filter   engine oil".
func (p *page) settleProducts() {
	for n := 1; n < len(p.mentions); n++ {
		m, label := &p.mentions[n], &p.mentions[n-1]
		at := &p.places[m.from]
		if m.part == "" && !m.foreign && !m.gear && m.oil && p.saysOil(m) {
			p.settleProduct(n)
		}
		if label.foreign && !label.measure && m.part == "" && p.places[label.from].sentence == at.sentence && p.alikeBefore(m) && !p.figureIn(label.to, m.from) {
			m.foreign = true // "the fork takes the same as the engine"
			continue
		}
		if p.alikeBefore(m) && label.circuit != "" && !label.foreign && label.part == "" && m.part == "" && !m.foreign && m.circuit != "" && label.circuit != m.circuit && p.places[label.from].sentence == at.sentence && !p.figureIn(label.to, m.from) {
			m.alike, m.circuit = m.circuit, label.circuit
			continue
		}
		if m.part != "" || m.foreign || m.loose != whole || m.tank || !m.oil || !p.pieces[at.piece].cells || p.places[p.cellStart(m.from)].gap != wide || !p.saysOil(m) {
			continue
		}
		if from, _ := p.pieceTokens(at.piece); p.mentionFrom(from) != n-1 || p.places[label.from].piece != at.piece || label.part != "" && !label.foreign || label.loose != whole || p.figureIn(label.to, m.from) && !(m.gear && m.circuit == "" && p.gradedBehind(m)) && !p.filledWith(label, m) { // "Gearbox   0.8 l   hypoid gear oil SAE 90"
			continue
		}
		switch {
		case label.foreign && !label.measure:
			m.foreign = true
		case label.circuit != "" && label.circuit != "engine" && (!p.saysOil(label) || p.gradedBehind(m)):
			m.circuit, m.gear = label.circuit, false
		case label.gear && p.gradedBehind(m):
			m.circuit, m.gear = "", true
		}
	}
}

// alikeBefore reports whether words for "the same as" stand right before a mention, or before its
// article.
func (p *page) alikeBefore(m *mention) bool {
	at := m.from - 1
	for at > 0 && at > m.from-mostLabel && p.places[at].function && !p.senseAt(at, "alike") {
		at--
	}
	return at >= 0 && p.senseAt(at, "alike") && p.places[at].sentence == p.places[m.from].sentence
}

// filledWith reports whether a row says behind the amount of its own oil with which that is filled, and
// has no amount of another: "Gearbox oil   0.7 l   Engine oil (SAE 15W-50)".
func (p *page) filledWith(label, m *mention) bool {
	volumes := 0
	for i := label.to; i < m.from; i++ {
		f := p.factAt(i)
		if f == nil || f.from != i {
			continue
		}
		if f.kind != string(quantity.Volume) {
			return false
		}
		volumes++
	}
	return volumes == 1 && p.at(m.to).gap != wide && p.gradedBehind(m) && !p.volumeBehind(m)
}

// cellStart gives where the cell begins in which nothing but words of no sense stands before a
// token, which say of what kind an oil is: "Hypoid-Getriebeöl"; else the token.
func (p *page) cellStart(at int) int {
	for i := at; i > 0 && i > at-mostPlace; i-- {
		switch t := &p.places[i-1]; {
		case p.places[i].gap == wide:
			return i
		case t.taken || t.term >= 0 || t.kind == number || t.kind == sign && t.text != "-":
			return at
		}
	}
	return at
}

// settleProduct takes an engine's oil for that of the gears that a sentence fills with it: "the
// gearbox holds 800 c.c. of engine oil"; one that a sentence warns of, "never use engine oil SAE
// 10W-40", is nobody's.
func (p *page) settleProduct(n int) {
	m := &p.mentions[n]
	if m.circuit != "engine" {
		return
	}
	from, _ := p.sentenceOf(m.from)
	if p.gradedBehind(m) && p.about(from, m.from, "not") && !p.about(from, m.from, "without") && !p.figureIn(from, m.from) {
		m.circuit, m.oil = "", false
		return
	}
	if p.pieces[p.places[m.from].piece].cells && p.volumeBehind(m) {
		return // it has an amount of its own
	}
	label := &p.mentions[n-1]
	filled := p.factAt(m.from - 1)
	if filled == nil && p.places[m.from-1].function {
		filled = p.factAt(m.from - 2)
	}
	if filled == nil || filled.kind != string(quantity.Volume) || label.from < from || label.foreign || label.part != "" || label.loose != whole {
		return
	}
	if c := label.circuit; c != "" && c != "engine" {
		m.circuit = c
	}
}

// volumeBehind reports whether an amount stands behind a mention in its row.
func (p *page) volumeBehind(m *mention) bool {
	_, end := p.pieceTokens(p.places[m.from].piece)
	for i := m.to; i < end; i++ {
		if f := p.factAt(i); f != nil && f.kind == string(quantity.Volume) {
			return true
		}
	}
	return false
}

// gradedBehind reports whether a grade, a mark or a category stands right behind a mention: then
// it says what the oil is, "engine oil SAE 15W-50", and is no head of a column.
func (p *page) gradedBehind(m *mention) bool {
	for n := range p.facts {
		f := &p.facts[n]
		if f.from >= m.to && f.from <= m.to+2 && ofOil(f) && p.places[f.from].piece == p.places[m.from].piece {
			return true
		}
	}
	return false
}

// settleScooter takes a scooter's transmission oil for that of its final drive, unless the
// page names both; and a gear case for the final drive's where that is the end of the final
// drive's name, and the page calls no other thing so: "rear gear case", "gear case".
func (p *page) settleScooter() {
	scooter, final, short := false, false, true
	for i := range p.terms {
		t := &p.terms[i]
		final = final || t.has("oil.final")
		scooter = scooter || t.has("bike.scooter")
		short = short && (!t.has("oil.gearbox") || p.shortFinal(t))
	}
	if final && !short || !final && !scooter {
		return
	}
	for n := range p.mentions {
		if p.mentions[n].circuit == "gearbox" {
			p.mentions[n].circuit = "final"
		}
	}
}

// shortFinal reports whether a term of two words or more stands in the name of a final drive.
func (p *page) shortFinal(t *term) bool {
	size := t.to - t.from
	for i := range p.terms {
		o := &p.terms[i]
		if !o.has("oil.final") || o.to-o.from <= size || size < 2 {
			continue
		}
		for at := o.from; at+size <= o.to; at++ {
			k := 0
			for k < size && p.places[at+k].fold == p.places[t.from+k].fold {
				k++
			}
			if k == size {
				return true
			}
		}
	}
	return false
}

// settleTwoStroke takes a two-stroke's plain oil for its gears': what its engine burns is no
// oil that is changed. Its engine, sump and motor name no oil then, and its oil tank is of
// another job. A page that names engine oil by that name is not decided here.
func (p *page) settleTwoStroke() {
	if !slices.ContainsFunc(p.terms, func(t term) bool { return t.has("bike.two-stroke") }) {
		return
	}
	for n := range p.mentions {
		if m := &p.mentions[n]; m.circuit == "engine" && m.part == "" && !m.tank && !m.foreign && p.saysOil(m) {
			return
		}
	}
	p.twoStroke = "gearbox"
	if p.scooter() {
		p.twoStroke = "final"
	}
	for n := range p.mentions {
		m := &p.mentions[n]
		switch {
		case m.circuit != "engine" || m.foreign || m.ofFilter() && m.part != "tank-drain":
		case m.tank:
			m.foreign = true
		case m.part != "":
			m.circuit = p.twoStroke
		default:
			m.circuit, m.oil = "", false
		}
	}
}

// saysOil reports whether a word for oil stands in a mention.
func (p *page) saysOil(m *mention) bool {
	for i := m.from; i < m.to; i++ {
		for _, w := range p.words.oils() {
			if strings.Contains(p.places[i].fold, w) {
				return true
			}
		}
	}
	return false
}

// named reports whether a mention says of itself that it is of an oil: it names its oil, or
// the oil's filter.
func (p *page) named(m *mention) bool {
	for i := m.from; i < m.to; i++ {
		if p.places[i].function && (m.circuit == "" || m.ofFilter()) && p.senseAt(m.from, "oil.any") {
			return false // "oil the element"
		}
	}
	first := p.termAt(m.from)
	if first == nil {
		return false // a letter alone
	}
	_, oil := first.begin("oil.")
	if m.ofFilter() {
		return oil && m.part != "" || first.to-first.from > 1 && first.has("part.filter") // "filter oil" is none
	}
	return m.oil && (m.part != "" || m.circuit != "") || m.circuit != "" && m.part == ""
}

// figureIn reports whether a figure stands between two tokens.
func (p *page) figureIn(from, to int) bool {
	for i := from; i < to; i++ {
		if p.places[i].taken && p.places[i].kind == number {
			return true
		}
	}
	return false
}

// nextName gives the next term that names a thing, past small words that are terms too, as
// "de" and "una" are.
func (p *page) nextName(n int) int {
	for n++; n < len(p.terms) && !p.names(n); n++ {
		if !p.small(&p.terms[n]) {
			return len(p.terms)
		}
	}
	return n
}

// close reports whether two terms stand so near that they name one thing: nothing between
// them but small words, a hyphen or an opening bracket.
func (p *page) close(a, b int) bool {
	from, to := p.terms[a].to, p.terms[b].from
	if p.places[from-1].sentence != p.places[to].sentence || to-from > 4 {
		return false
	}
	if e, _ := p.words.match(p.tokens[:to+1], to); e != nil && slices.Contains(e.senses, "with") && p.terms[b].to > to+1 {
		return false // "the bowl, with the element"
	}
	for i := from; i <= to; i++ {
		t := &p.places[i]
		if t.gap == wide {
			return false
		}
		if i == to {
			break
		}
		switch {
		case t.taken, t.kind == number, t.kind == sign && !strings.Contains("-'(", t.text):
			return false
		case t.kind == word && !t.function && len(t.fold) > 2, p.senseAt(i, "join.and"), p.senseAt(i, "join.or"), p.senseAt(i, "with"), p.senseAt(i, "without"):
			return false
		}
	}
	return true
}

func (p *page) mentionOf(first, last int) mention {
	m := mention{from: p.terms[first].from, to: p.terms[last].to}
	cover, drain, strainer, tank, fastener, plug := false, false, false, false, false, false
	for n := first; n <= last; n++ {
		t := &p.terms[n]
		where := n > first && (m.circuit != "" || m.gear) && m.part == "" && t.has("other.part") && !t.has("other.fluid") && t.from > p.terms[n-1].to
		if where || t.has("other.fluid") && p.washing(t) {
			continue // "the bevel box at the rear wheel", "wash it in petrol"
		}
		if t.has("other.part") || t.has("other.fluid") {
			m.foreign, m.measure = true, false
		} else if t.has("other.measure") && !m.foreign {
			m.foreign, m.measure = true, true
		}
		if c, ok := t.begin("oil."); ok {
			m.oil = true
			if c == "any" {
				continue
			}
			if c == "gearbox" && p.scooter() {
				c = "final"
			}
			if c == "gear" {
				m.gear = true
			} else if m.circuit == "" || m.circuit == "engine" || m.circuit == "gearbox" && c != "engine" { // "box of the primary"
				m.circuit = c
			}
		}
		if name, ok := t.begin("part."); ok {
			switch name {
			case "tank":
				tank, m.tank = true, true
				m.oil = m.oil || t.to-t.from > 1 // "oil tank", and no bare "tank"
			case "rotor-cover": // of the filter that spins, or of the generator
				if p.spins() {
					m.part = "filter-cover"
				} else {
					m.foreign = true
				}
			case "cover":
				cover = true
			case "fastener":
				fastener = true
			case "plug":
				plug = true
			case "drain":
				drain = true
				m.foreign = m.foreign || m.part == "filter" // the filter's own drain
			case "strainer":
				strainer = true
			}
			if part := partOf[name]; part != "" && (m.part == "" || m.part == "filter") {
				m.part = part
			}
		}
	}
	switch {
	case strainer:
		m.part, m.strainer = "strainer", drain
	case plug && m.part == "filter" && p.gauzed():
		m.part = "strainer" // "filter plug", of a page that speaks of its gauze
	case m.part == "filter-cover" && p.onlyGauze():
		m.part = "strainer" // "filter plate nuts", of a page whose only filter is its gauze
	case cover && m.part == "filter":
		m.part = "filter-cover"
	case tank && m.part == "drain":
		m.part, m.circuit = "tank-drain", "engine"
	case m.part != "" || m.foreign:
	case tank && m.part == "" && !m.foreign && p.saysOil(&m):
		m.circuit, m.oil = "engine", true // what the oil tank holds
	case tank && (plug || fastener):
		m.part, m.circuit = "tank-drain", "engine"
	case fastener || cover || plug:
		switch {
		case plug && m.circuit == "engine" && !p.saysOil(&m):
			m.loose = aPlug // "the plug of the crankcase"
		case m.circuit != "" || m.gear:
			m.foreign = true // a bolt of the gearbox, of which nobody knows what it holds
		case cover:
			m.loose = aCover
		case plug:
			m.loose = aPlug
		default:
			m.loose = aFastener
		}
	}
	if m.part == "filter" || m.part == "filter-cover" || m.part == "strainer" || tank && m.oil && m.part == "" && m.loose == whole && !m.foreign {
		m.circuit = "engine"
	}
	if m.part != "" && m.to+1 < len(p.places) && p.unknown(m.to) && p.places[m.to].gap == blank && p.places[m.to+1].gap == wide && p.places[m.to].piece == p.places[m.to+1].piece {
		m.foreign = true // "Oil filter boss ...... 18": a thing of its own
	}
	return m
}

// joined reports whether a word for "and", or a figure, stands between two tokens.
func (p *page) joined(from, to int) bool {
	for i := from; i < to; i++ {
		if p.senseAt(i, "join.and") {
			return true
		}
	}
	return p.figureIn(from, to)
}

// gauzed reports whether a page speaks of a strainer.
func (p *page) gauzed() bool {
	return slices.ContainsFunc(p.terms, func(t term) bool { return t.has("part.strainer") })
}

// onlyGauze reports whether a page calls its strainer a filter, as "filter gauze", and speaks of no
// other filter, and of no cap or plug that is the strainer's.
func (p *page) onlyGauze() bool {
	called := false
	for n := range p.terms {
		s := p.sections[p.places[p.terms[n].from].section]
		switch t := &p.terms[n]; {
		case p.about(s.from, s.from+s.heading, "other.part"), p.about(s.from, s.from+s.heading, "other.fluid"): // the fuel's, the air's
		case t.has("part.strainer"):
			for i := t.from; i < min(t.to+1, len(p.places)); i++ {
				e, _ := p.words.match(p.tokens[i:i+1], 0)
				if e != nil && (slices.Contains(e.senses, "part.cover") || slices.Contains(e.senses, "part.plug") || slices.Contains(e.senses, "part.fastener")) {
					return false // it has a cap of its own
				}
				called = called || e != nil && i < t.to && slices.Contains(e.senses, "part.filter")
			}
		case t.has("part.filter"):
			if n+1 == len(p.terms) || p.terms[n+1].from != t.to || !p.terms[n+1].has("part.strainer") {
				return false
			}
			called = true
		case t.has("part.filter-element"), t.has("part.filter-spin-on"), t.has("part.filter-centrifugal"), t.has("amount.with-filter"), t.has("amount.oil-only"), t.has("change.filter"):
			return false
		}
	}
	return called
}

// spins reports whether a page speaks of a centrifugal filter.
func (p *page) spins() bool {
	return slices.ContainsFunc(p.terms, func(t term) bool { return t.has("part.filter-centrifugal") })
}

// washing reports whether a fluid is what something is washed in: cleaning is spoken of right
// before it, and no figure.
func (p *page) washing(t *term) bool {
	for i := t.from - 1; i >= 0 && i >= t.from-mostBetween && p.places[i].clause == p.places[t.from].clause && p.places[i].kind == word; i-- {
		if p.senseAt(i, "action.wash") {
			return true
		}
	}
	return false
}

// bolt gives the part's name in the what-list.
func (m *mention) bolt(circuit string) string {
	switch m.part {
	case "drain", "level", "filler":
		if circuit != "" && circuit != "engine" {
			return circuit + "-" + m.part
		}
	}
	return m.part
}

// near gives the mentions around a token in its sentence: the last before it, not before
// the token from, and the first after it, before the token to. nil for none.
func (p *page) near(at, from, to int, want func(*mention) bool) (before, after *mention) {
	for n := p.mentionFrom(from); n < len(p.mentions); n++ {
		m := &p.mentions[n]
		if m.from >= to {
			break
		}
		if !want(m) {
			continue
		}
		if m.from < at {
			before = m
		} else if after == nil {
			after = m
		}
	}
	return before, after
}

// mentionFrom gives the first mention that begins at a token or behind it.
func (p *page) mentionFrom(at int) int {
	low, high := 0, len(p.mentions)
	for low < high {
		mid := (low + high) / 2
		if p.mentions[mid].from < at {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

// sentenceOf gives the tokens of the sentence that a token stands in.
func (p *page) sentenceOf(at int) (from, to int) {
	if p.sentences == nil { // they are counted in the order of the tokens
		p.sentences = make([]int32, p.places[len(p.places)-1].sentence+2)
		for i := len(p.places) - 1; i >= 0; i-- {
			p.sentences[p.places[i].sentence] = int32(i)
		}
		p.sentences[len(p.sentences)-1] = int32(len(p.places))
		for n := len(p.sentences) - 2; n > p.places[0].sentence; n-- {
			if p.sentences[n] == 0 { // of no token
				p.sentences[n] = p.sentences[n+1]
			}
		}
	}
	n := p.places[at].sentence
	return int(p.sentences[n]), int(p.sentences[n+1])
}

// clauseOf gives the tokens of the clause that a token stands in.
func (p *page) clauseOf(at int) (from, to int) {
	from, to = at, at+1
	for from > 0 && p.places[from-1].clause == p.places[at].clause {
		from--
	}
	for to < len(p.places) && p.places[to].clause == p.places[at].clause {
		to++
	}
	return from, to
}

// circuitAt says which oil is spoken of at a token. Its sentence comes first. Then what
// governs the place: the last sentence of its paragraph that begins with the name of an oil
// or of another job's thing, as "Gearbox:" and "The final drive holds" do, all behind it
// being of that; what is named within a sentence counts where none begins so. Rows with
// figures of their own say nothing of the next row. Then the line that it stands further in
// than, then the heading. foreign is another job's. named says that the page says it at
// all, and not two things.
func (p *page) circuitAt(at int) (circuit string, foreign, named bool) {
	here := &p.places[at]
	s := p.sections[here.section]
	own, shaky, looked := false, false, false
	weak, weakForeign := "", false
	first := p.mentionFrom(at) - 1
	for n := first; n >= 0 && n > first-mostBackMentions && p.mentions[n].from >= s.from+s.heading; n-- {
		m := &p.mentions[n]
		there := &p.places[m.from]
		if there.paragraph != here.paragraph {
			break
		}
		c := m.circuit
		if m.gear {
			c = p.gearOil()
		}
		same := there.sentence == here.sentence
		if !same && !looked {
			if row, other := p.cellsBelow(at); row != "" || other {
				return row, other, true
			}
			looked = true
		}
		switch {
		case m.measure && !same, there.item != here.item && (p.rowLike(m.from) || p.inValue(m) || m.foreign && p.entry(here.item, at)):
			continue
		case same && m.foreign && !own:
			return "", true, true
		case same && c != "" && !m.foreign && (m.part == "" || m.circuit != "" && !m.ofFilter()):
			return c, false, true
		case same:
			own = own || m.oil
			continue
		}
		switch begins := p.begins(n); {
		case begins && m.foreign && (!own || there.item == here.item):
			return "", true, weak == ""
		case begins && c != "" && !m.foreign && m.part == "":
			if weak != "" && weak != c {
				shaky = true
			}
			return c, false, !shaky
		case m.foreign:
			weakForeign = weakForeign || there.item == here.item && weak == "" && !own
		case c != "" && !m.ofFilter() && weak == "" && (m.part == "" || there.item == here.item):
			weak = c
		}
	}
	if weak != "" {
		return weak, false, !weakForeign
	}
	if row, other := p.rowCircuit(at); row != "" || other && !own {
		return row, other, true
	}
	if head, other := p.headCircuit(at); head != "" || other && !own {
		return head, other, true
	}
	if weakForeign && !own {
		return "", true, true
	}
	return p.usualOil(), false, own
}

// governedBeyond reports whether a sentence before a token's own, in its item, begins with
// another job's thing and none since with one of ours.
func (p *page) governedBeyond(at int) bool {
	here := &p.places[at]
	first := p.mentionFrom(at) - 1
	for n := first; n >= 0 && n > first-mostBackMentions && p.places[p.mentions[n].from].item == here.item; n-- {
		if p.mentions[n].measure || p.places[p.mentions[n].from].sentence == here.sentence || !p.begins(n) {
			continue
		}
		return p.mentions[n].foreign
	}
	return false
}

// ofFilter reports whether a mention names a filter or a strainer, which are the engine's
// wherever they are spoken of.
func (m *mention) ofFilter() bool {
	return m.part == "filter" || m.part == "filter-cover" || m.part == "strainer" || m.part == "tank-drain"
}

// begins reports whether a mention begins its sentence: nothing stands before it but small
// words and the mark of a list's item.
func (p *page) begins(n int) bool {
	m := &p.mentions[n]
	for i := m.from - 1; i >= 0 && p.places[i].sentence == p.places[m.from].sentence; i-- {
		t := &p.places[i]
		step := len(t.text) <= 2 && i == p.starts[t.piece] // "9 Cooling system – check."
		if t.kind == word && !t.function && len(t.fold) > 3 || t.kind == number && !t.taken && !step {
			return false
		}
	}
	return true
}

// rowLike reports whether a token stands in a row of a table or a short line that has its
// own figure.
func (p *page) rowLike(at int) bool {
	t := &p.places[at]
	if !p.figured(t.item) {
		return false
	}
	if p.pieces[t.piece].cells {
		return true
	}
	from, to := p.pieceTokens(t.piece)
	last := p.places[to-1].text
	return last != "." && to-from < 30 && (to == len(p.places) || p.places[to].item != t.item) && p.places[from].item == t.item && !p.pieces[t.piece].joined
}

// inValue reports whether a thing is named within what a row says of its label, and so is not what is
// spoken of below it: "Type   air-cooled V-twin, shaft drive".
func (p *page) inValue(m *mention) bool {
	n := p.places[m.from].piece
	if !p.pieces[n].cells || p.places[m.from].gap == wide {
		return false
	}
	for i := p.starts[n] + 1; i < m.from; i++ {
		if p.places[i].gap == wide {
			return true
		}
	}
	return false
}

// byDefault reports whether a reading is of the engine's oil only because nothing says of
// which it is, on a page that names another.
func (r *readings) byDefault(what string, at int) bool {
	switch {
	case strings.Contains(what, "gearbox"), strings.Contains(what, "final"):
		return r.gearOil() != "" && r.guessed && strings.Contains(what, r.geared)
	case strings.HasPrefix(what, "level."):
		return r.afterOther(at)
	case strings.HasPrefix(what, "bolt.drain."), strings.HasPrefix(what, "bolt.level."), strings.HasPrefix(what, "bolt.filler."):
	case what == "oil.engine.with-filter", what == "oil.engine.oil-only":
		from, to := r.sentenceOf(at)
		if r.about(from, to, "amount.with-filter") || r.about(from, to, "amount.oil-only") {
			return false
		}
	case strings.HasPrefix(what, "level."):
		circuit, _, other := strings.Cut(what[len("level."):], ".")
		return other && r.namesEngine() && !r.namedNear(circuit, at)
	case strings.HasPrefix(what, "oil.engine."), what == "interval.distance", what == "interval.months", what == "interval.hours":
	default:
		return false
	}
	if strings.HasPrefix(what, "oil.engine.") && !r.tellsOfEngine() {
		return true // "olive oil 1 L"
	}
	if !r.severalOils() {
		return false
	}
	from, to := r.sentenceOf(at)
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		if m := &r.mentions[n]; m.circuit == "engine" && !m.foreign {
			return false
		}
	}
	if f := r.factAt(at); f != nil {
		if m := r.columnPart(f); m != nil && m.circuit == "engine" {
			return false
		}
		if m := r.columnOil(f); m != nil && m.circuit == "engine" {
			return false
		}
	}
	if strings.HasPrefix(what, "bolt.") && r.pieces[r.places[at].piece].cells && r.ofAll(r.sections[r.places[at].section]) {
		return false
	}
	_, _, named := r.circuitAt(at)
	return !named
}

// tellsOfEngine reports whether a page shows anything of an engine or its oil but an amount: it
// names its engine, a part, another oil of a bike, a grade, a thread, a torque or a distance.
func (r *readings) tellsOfEngine() bool {
	if r.engine == notAsked {
		r.engine = no
		for i := range r.mentions {
			if m := &r.mentions[i]; !m.foreign && (m.circuit != "" || m.part != "" || m.gear) {
				r.engine = yes
				return true
			}
		}
		for i := range r.facts {
			switch k := r.facts[i].kind; k {
			case "mark", "service", "grade", "thread", string(quantity.Torque), string(quantity.Distance):
				r.engine = yes
				return true
			}
		}
	}
	return r.engine == yes
}

// namesEngine reports whether a page names the engine's oil.
func (p *page) namesEngine() bool {
	return slices.ContainsFunc(p.mentions, func(m mention) bool { return m.circuit == "engine" && !m.foreign && m.oil })
}

// namedNear reports whether an oil is named in a token's sentence or item, in the heading over
// it, or in a line that it stands further in than.
func (p *page) namedNear(circuit string, at int) bool {
	here := &p.places[at]
	s := p.sections[here.section]
	for n := p.mentionFrom(s.from); n < len(p.mentions); n++ {
		m := &p.mentions[n]
		there := &p.places[m.from]
		if there.item > here.item {
			break
		}
		if c := m.circuit; (c == circuit || m.gear && p.gearOil() == circuit) && !m.foreign && (there.item == here.item || m.from < s.from+s.heading) {
			return true
		}
	}
	row, _ := p.rowCircuit(at)
	return row == circuit
}

// severalOils reports whether the page names an oil beside the engine's.
func (p *page) severalOils() bool {
	if p.several == notAsked {
		p.several = no
		for i := range p.mentions {
			m := &p.mentions[i]
			if !m.foreign && (m.gear || m.circuit != "" && m.circuit != "engine") {
				p.several = yes
				break
			}
		}
	}
	return p.several == yes
}

// asked is what was found of a page once it was asked for.
type asked uint8

const (
	notAsked asked = iota
	no
	yes
)

// usualOil is the oil that a page speaks of where it does not say which: the engine's,
// but of a page that names one other only.
func (p *page) usualOil() string {
	if p.twoStroke != "" {
		return p.twoStroke
	}
	if p.usual == "" {
		p.usual = "engine"
		other, about := "", false
		for i := range p.mentions {
			m := &p.mentions[i]
			c := m.circuit
			if m.gear {
				c = p.gearOil()
			}
			// A row of a table alone does not make a page one of that oil.
			about = about || c != "" && !m.foreign && !p.figured(p.places[m.from].item)
			switch {
			case m.foreign || c == "" || c == other:
			case c == "engine" || other != "":
				return p.usual
			default:
				other = c
			}
		}
		if other != "" && about {
			p.usual = other
		}
	}
	return p.usual
}

// mostBackMentions is how many mentions are looked back for what is spoken of.
const mostBackMentions = 200

// figured reports whether an item has figures of its own.
func (p *page) figured(item int) bool {
	if p.withFigures == nil {
		p.withFigures = make([]bool, p.places[len(p.places)-1].item+2)
		for i := range p.facts {
			switch p.facts[i].kind {
			case "mark", "service", "grade":
			default:
				p.withFigures[p.places[p.facts[i].from].item] = true
			}
		}
		for i := range p.places {
			if p.places[i].unread {
				p.withFigures[p.places[i].item] = true
			}
		}
	}
	return p.withFigures[item]
}

// rowCircuit gives the oil that a line names below which a line stands further in: "FINAL
// GEAR OIL    SAE 90" over "   Drain bolt    13 N·m".
func (p *page) rowCircuit(at int) (circuit string, foreign bool) {
	here := p.places[at].piece
	from, _ := p.pieceTokens(here)
	indent := p.places[from].col
	for n := here - 1; n >= 0 && n > here-mostBackRows && indent > 0; n-- {
		a, b := p.pieceTokens(n)
		if a == b || p.places[a].section != p.places[from].section || p.pieces[n+1].blank {
			break
		}
		if p.pieces[n].joined || p.places[a].col >= indent {
			continue
		}
		indent = p.places[a].col
		for k := p.mentionFrom(a); k < len(p.mentions) && p.mentions[k].from < b; k++ {
			m := &p.mentions[k]
			switch {
			case m.measure, m.foreign && !p.begins(k) && p.ownPart(m.to, b): // "Remove the skid plate. … Remove the drain plug."
			case m.foreign:
				return "", true
			case m.gear:
				return p.gearOil(), false
			case m.circuit != "" && m.part == "":
				return m.circuit, false
			}
		}
	}
	return "", false
}

// ownPart reports whether a part of ours is named between two tokens.
func (p *page) ownPart(from, to int) bool {
	for n := p.mentionFrom(from); n < len(p.mentions) && p.mentions[n].from < to; n++ {
		if m := &p.mentions[n]; m.part != "" && !m.foreign {
			return true
		}
	}
	return false
}

// cellsBelow gives the oil of the label whose row goes on in the line of a token: it begins below
// the row's second cell, "Engine oil   Change: 2 L" over "             SAE 40".
func (p *page) cellsBelow(at int) (circuit string, foreign bool) {
	here := p.places[at].piece
	from, _ := p.pieceTokens(here)
	col := p.places[from].col
	for n := here - 1; n >= 0 && n > here-mostBackRows && !p.pieces[n+1].blank; n-- {
		a, b := p.pieceTokens(n)
		if a == b || p.pieces[n].heading || p.places[a].col > col+mostOffCell {
			break
		}
		if p.places[a].col >= col-mostOffCell {
			continue // a line between them
		}
		cell := a + 1
		for cell < b && p.places[cell].gap != wide {
			cell++
		}
		if cell == b || abs(p.places[cell].col-col) > mostOffCell {
			break
		}
		if k := p.mentionFrom(a); k < len(p.mentions) && p.mentions[k].from < cell {
			return p.rowCircuit(at)
		}
		break
	}
	return "", false
}

// mostBackRows is how many lines are looked back for the one that a line stands below.
const mostBackRows = 24

// mostBackHeads is how many headings are looked back.
const mostBackHeads = 24

// headCircuit gives the oil that the heading over a token names; below one that names
// nothing and is not written in capitals, what the heading before that names.
func (p *page) headCircuit(at int) (circuit string, foreign bool) {
	last := p.places[at].section
	for k := last; k >= max(0, last-mostBackHeads); k-- {
		s := p.sections[k]
		for n := p.mentionFrom(s.from); n < len(p.mentions) && p.mentions[n].from < s.from+s.heading; n++ {
			m := &p.mentions[n]
			switch {
			case m.measure:
			case m.foreign:
				foreign = true
			case m.gear:
				circuit = p.gearOil()
			case m.circuit != "" && circuit == "":
				circuit = m.circuit
			}
		}
		if k < last && circuit != "" && circuit != "engine" && p.hasFilter(p.sections[last]) {
			return "", foreign && p.places[at].foreign || p.foreignPage()
		}
		if circuit != "" || foreign || s.heading == 0 || capitals(p.tokens[s.from:s.from+s.heading]) || bullet(p.tokens[s.from:s.from+s.heading]) > 0 {
			break
		}
	}
	return circuit, circuit == "" && (foreign && p.places[at].foreign || p.foreignPage())
}

// hasFilter reports whether the engine's filter is named below a heading, which then belongs to no
// other oil's above it.
func (p *page) hasFilter(s section) bool {
	for n := p.mentionFrom(s.from + s.heading); n < len(p.mentions) && p.mentions[n].from < s.to; n++ {
		if m := &p.mentions[n]; m.ofFilter() && !m.foreign {
			return true
		}
	}
	return false
}

// ofAll reports whether what stands below a heading is a table of the whole bike: a row of it is of
// the engine's filter, and one names another oil. It belongs to no heading above it.
func (p *page) ofAll(s section) bool {
	for n := p.mentionFrom(s.from + s.heading); n < len(p.mentions) && p.mentions[n].from < s.to; n++ {
		if m := &p.mentions[n]; !m.foreign && (m.gear || m.circuit != "" && m.circuit != "engine") {
			return p.hasFilter(s)
		}
	}
	return false
}

// foreignPage reports whether a page is of another job as a whole: its title names one,
// and no line with a figure, and no heading, names an oil of ours.
func (p *page) foreignPage() bool {
	if p.theme == 0 {
		p.theme = 1
		if p.titleIsForeign() && !p.ownNamed() {
			p.theme = 2
		}
	}
	return p.theme == 2
}

func (p *page) titleIsForeign() bool {
	foreign := false
	_, to := p.pieceTokens(0)
	for n := range p.mentions {
		m := &p.mentions[n]
		if m.from >= to {
			break
		}
		if m.circuit != "" || m.gear {
			return false
		}
		foreign = foreign || m.foreign && !m.measure
	}
	return foreign
}

func (p *page) ownNamed() bool {
	for n := range p.mentions {
		m := &p.mentions[n]
		if !m.foreign && m.circuit != "" && (p.figured(p.places[m.from].item) || p.pieces[p.places[m.from].piece].heading) {
			return true
		}
	}
	return false
}

// scooter reports whether the page is of a scooter, whose gears are its final drive.
func (p *page) scooter() bool {
	if !p.looked {
		p.looked = true
		for i := range p.terms {
			p.isScooter = p.isScooter || p.terms[i].has("bike.scooter")
		}
	}
	return p.isScooter
}

// entry reports whether the item of a token begins with a label of its own.
func (p *page) entry(item, at int) bool {
	for at > 0 && p.places[at-1].item == item {
		at--
	}
	return begins(p.pieces[p.places[at].piece].tokens)
}

// gearOil says whose oil gear oil is on this page: the final drive's, unless a gearbox is
// named and no final drive is, or the final drive has an amount of its own.
func (p *page) gearOil() string {
	if p.geared == "" {
		gearbox, final := false, p.scooter()
		for i := range p.terms {
			gearbox = gearbox || p.terms[i].has("oil.gearbox") || p.terms[i].has("oil.primary")
			final = final || p.terms[i].has("oil.final") || p.terms[i].has("bike.shaft")
		}
		p.geared, p.guessed = "final", !gearbox && !final
		if gearbox && (!final && !p.gearBeside() || final && (p.gearApart() || p.gearListed())) || p.gearPart() || p.guessed && p.gearMuch() {
			p.geared = "gearbox"
		}
	}
	return p.geared
}

// gearMuch reports whether more gear oil is told of than a final drive holds.
func (p *page) gearMuch() bool {
	for i := range p.facts {
		f := &p.facts[i]
		if f.kind != string(quantity.Volume) || f.low <= mostFinal {
			continue
		}
		from, _ := p.sentenceOf(f.from)
		if n := p.mentionFrom(f.from) - 1; n >= 0 && p.mentions[n].from >= from && p.mentions[n].gear && p.mentions[n].part == "" {
			return true
		}
	}
	return false
}

// mostFinal is the most oil in litres that a final drive is believed to hold. From memory.
const mostFinal = 0.4

// gearListed reports whether a table has a row for gear oil, one for the final drive's, and
// none for the gearbox's by its name: "Change gear oil", "Change oil of final drive".
func (p *page) gearListed() bool {
	const gear, final, gearbox = 1, 2, 4
	seen := map[int]int{} // of each section
	for i := range p.mentions {
		m := &p.mentions[i]
		if m.foreign || m.part != "" || !p.pieces[p.places[m.from].piece].cells {
			continue
		}
		section := p.places[m.from].section
		switch {
		case m.gear && m.circuit == "":
			seen[section] |= gear
		case m.circuit == "final":
			seen[section] |= final
		case m.circuit != "" && m.circuit != "engine", m.gear:
			seen[section] |= gearbox
		}
	}
	for _, s := range seen {
		if s == gear|final {
			return true
		}
	}
	return false
}

// gearBeside reports whether one table has a row with an amount of the gearbox by its name, and one
// of gear oil or a transmission, which is another thing then: the final drive.
func (p *page) gearBeside() bool {
	const gear, gearbox = 1, 2
	seen := map[int]int{} // of each section
	for i := range p.facts {
		f := &p.facts[i]
		if at := &p.places[f.from]; f.kind == string(quantity.Volume) && p.pieces[at.piece].cells {
			from, _ := p.pieceTokens(at.piece)
			n := p.mentionFrom(from)
			if n == len(p.mentions) || p.mentions[n].from >= f.from {
				continue
			}
			switch m := &p.mentions[n]; {
			case m.foreign || m.part != "":
			case m.gear && m.circuit == "":
				seen[at.section] |= gear
			case m.circuit == "gearbox":
				seen[at.section] |= gearbox
			}
		}
	}
	for _, s := range seen {
		if s == gear|gearbox {
			return true
		}
	}
	return false
}

// gearPart reports whether a page names a plug of gear oil and such a plug of the final drive:
// then gear oil is the gearbox's.
func (p *page) gearPart() bool {
	for i := range p.mentions {
		m := &p.mentions[i]
		if !m.gear || m.part == "" || m.foreign || m.circuit != "" {
			continue
		}
		for k := range p.mentions {
			if o := &p.mentions[k]; o.circuit == "final" && o.part == m.part && !o.foreign {
				return !p.scooter()
			}
		}
	}
	return false
}

// gearApart reports whether a page gives an amount of gear oil in one place and one of the
// final drive in another, and none of the gearbox by its name: then gear oil is the
// gearbox's. Where gear oil is named together with a drive, the word tells nothing.
func (p *page) gearApart() bool {
	if p.scooter() {
		return false
	}
	type names struct{ gear, gearbox, final bool }
	items := map[int]names{}
	for i := range p.mentions {
		m := &p.mentions[i]
		if m.foreign || m.part != "" {
			continue
		}
		item := p.places[m.from].item
		n := items[item]
		n.gear = n.gear || m.gear
		n.gearbox = n.gearbox || m.circuit == "gearbox" || m.circuit == "primary"
		n.final = n.final || m.circuit == "final"
		if n.gear && (n.gearbox || n.final) {
			return false
		}
		items[item] = n
	}
	gear, final := "", ""
	for i := range p.facts {
		f := &p.facts[i]
		if f.kind != string(quantity.Volume) {
			continue
		}
		switch n := items[p.places[f.from].item]; {
		case n.gearbox:
			return false
		case n.gear:
			gear = f.text
		case n.final:
			final = f.text
		}
	}
	return gear != "" && final != "" && gear != final
}
