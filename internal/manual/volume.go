package manual

import (
	"slices"

	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// roles of an amount of oil, the most telling first: where two stand at one figure, the
// first of them is meant ("oil change, with filter").
var volumeRoles = [...]string{"amount.band", "amount.oil-only", "amount.with-filter", "amount.dry", "amount.change", "amount.capacity"}

// volumes gives every volume the oil that it is of, and what of it.
func (r *readings) volumes() {
	heads := r.columnRoles()
	var plain []*volume // at a change, without a word on the filter
	var told []*volume
	last := -1
	var before *volume
	for i := range r.facts {
		f := &r.facts[i]
		if f.kind != string(quantity.Volume) {
			continue
		}
		v := &volume{f: f}
		r.placeVolume(v, before, last, heads)
		last, before = f.end(), v
		switch {
		case v.what == "":
			continue
		case v.circuit == "engine" && (v.what == "amount.change" || v.what == "amount.capacity"):
			if v.strange && r.nearly(v.begin, f.from, "amount.dry") {
				continue
			}
			plain = append(plain, v)
		default:
			told = append(told, v)
		}
	}
	r.whole(plain, append(slices.Clone(plain), told...))
	r.pairs(plain, told)
	exchanged(append(slices.Clone(plain), told...))
	for _, v := range told {
		r.volume(v)
	}
	for _, v := range plain {
		r.volume(v)
	}
}

// whole takes an amount for that of the empty engine where its sentence goes on with what part of it
// is changed: "1,100 cc; of this 1,000 cc at a change".
func (r *readings) whole(plain, all []*volume) {
	for _, v := range plain {
		for _, o := range all {
			if from := v.f.end(); o.f.from > from && o.circuit == v.circuit && o.f.high < v.f.low && o.what != "amount.dry" && r.places[o.f.from].sentence == r.places[v.f.from].sentence && r.about(from, o.f.from, "of-which") {
				v.what = "amount.dry"
			}
		}
	}
}

// exchanged says so where less oil goes in with a new filter than without one.
func exchanged(list []*volume) {
	var with, only *volume
	for _, v := range list {
		if v.circuit != "engine" {
			continue
		}
		switch {
		case v.what == "amount.with-filter" && with == nil:
			with = v
		case v.what == "amount.oil-only" && only == nil:
			only = v
		case v.what == "amount.with-filter" || v.what == "amount.oil-only":
			return // of several models
		}
	}
	if with != nil && only != nil && with.f.high < only.f.low {
		with.doubts = append(with.doubts, doubt("manual-rows-exchanged", "text", with.f.text, "other", only.f.text))
		only.doubts = append(only.doubts, doubt("manual-rows-exchanged", "text", with.f.text, "other", only.f.text))
	}
}

// same reports whether two facts are one.
func (f *fact) same(g *fact) bool { return f.from == g.from }

// volume is one with its role.
type volume struct {
	f        *fact
	circuit  string
	what     string // a sense
	from, to int    // tokens that say it
	begin    int    // where its label may begin
	doubts   []finding.Finding
	strange  bool // a word of its label may say what nobody here knows
}

// placeVolume finds what a volume is of. beside is the volume before it, last where that
// ends.
func (r *readings) placeVolume(v, beside *volume, last int, heads []columnRole) {
	f := v.f
	from, to := r.sentenceOf(f.from)
	begin := r.unreadIn(max(from, last), f.from)
	v.from, v.to, v.begin = f.from, f.end(), begin
	if r.inParts(f, begin) || r.moreThan(f) {
		return
	}
	v.strange = (r.row(f.from) || r.at(f.from-1).text == "-") && r.stray(begin, f.from)
	next := to
	for k := f.end(); k < to; k++ {
		if g := r.factAt(k); g != nil && g.kind == f.kind && !g.same(f) || r.places[k].unread {
			next = k
			break
		}
	}
	if r.lastOfList(f) {
		return // "change / with filter / dry: 2.5 / 2.7 / 3.2 L": nobody says which it is
	}
	if v.what = r.roleOfColumn(heads, f); v.what == "amount.change" { // "engine with filter ... 2.5 L" below "change"
		row, _ := r.pieceTokens(r.places[f.from].piece)
		for i := row; i < f.from; i++ {
			if role, t := r.roleAt(i); t != nil && (role == "amount.with-filter" || role == "amount.oil-only") {
				v.what = role
			}
		}
	}
	if v.what == "" {
		best := len(volumeRoles)
		for _, side := range [...][2]int{{begin, f.from}, {f.end(), next}} {
			for i := side[0]; i < side[1]; i++ {
				role, t := r.roleAt(i)
				if t == nil {
					continue
				}
				i = t.to - 1
				if rank(role) < best && !r.ofOtherOil(t, f, begin) && r.belongs(t, role, f, begin, next, from, to) {
					best, v.what = rank(role), role
					v.from, v.to = min(f.from, t.from), max(f.end(), t.to)
				}
			}
		}
	}
	if t := &r.places[f.from]; v.what == "" && beside != nil && last == f.from && t.gap == wide && t.piece == r.places[last-1].piece {
		v.what, v.circuit = beside.what, beside.circuit // the next column of its row
		v.from = beside.from
		if head := r.columnOil(f); head != nil {
			r.of(v, head)
		}
		return
	}
	if opposite := map[string]string{"amount.with-filter": "amount.oil-only", "amount.oil-only": "amount.with-filter"}; beside != nil && opposite[beside.what] != "" && r.about(max(begin, f.from-3), f.from, "else") {
		v.what, v.circuit = opposite[beside.what], beside.circuit // "if the filter is changed 1.4 L, otherwise 1.2 L"
		v.from, v.to = beside.from, f.end()
		return
	}
	if v.what == "amount.band" {
		if v.circuit = r.levelOf(f.from); r.otherJob(f.from) {
			v.what = ""
		}
		return
	}
	// Whose oil.
	isOil := func(m *mention) bool { return m.foreign || m.circuit != "" || m.gear }
	before, after := r.near(f.from, begin, next, isOil)
	if tank, _ := r.near(f.from, begin, next, func(m *mention) bool { return true }); tank != nil && tank.tank && tank.circuit == "" && !tank.foreign && !r.oilTank() {
		v.what = "" // a bare tank is that of the fuel
		return
	}
	if before == nil && begin > from { // the second of a sentence is of the same oil
		before, _ = r.near(f.from, from, f.from, isOil)
	}
	if (v.what == "" || r.ofBuild(f) || (v.what == "amount.capacity" || v.what == "amount.dry") && r.besideBore(f, begin)) && r.displacement(v, begin) {
		v.what = ""
		return
	}
	if head := r.columnOil(f); before == nil && head != nil {
		if r.of(v, head); v.what == "" && !head.foreign {
			v.what = "amount.capacity"
			v.doubts = append(v.doubts, doubt("manual-by-context", "text", f.text))
		}
		return
	}
	switch {
	case before != nil && r.foreignBefore(before) && (before.tank || r.withFluid(before)):
		v.what = "" // "automatic mixer, oil tank 1.2 L"
		return
	case before != nil:
		r.of(v, before)
	case after != nil && r.places[after.from].clause == r.places[f.end()-1].clause:
		r.of(v, after)
	default:
		if v.what == "" && r.stray(begin, f.from) && !r.oilIn(begin, f.from) && !r.gradeIn(begin, f.from) {
			return
		}
		circuit, foreign, named := r.circuitAt(f.from)
		if foreign || !named && !r.hasOil() {
			v.what = ""
			return
		}
		v.circuit = circuit
		if !named && v.strange { // "Finaldrive oil"
			v.doubts = append(v.doubts, doubt("manual-by-context", "text", f.text))
		}
	}
	if v.circuit == "" {
		v.what = ""
		return
	}
	if v.what == "" {
		// A figure beside the oil's name, without another word, is what it holds.
		_, _, named := r.circuitAt(f.from)
		switch {
		case before != nil || r.oilIn(begin, f.from) || r.gradeIn(begin, f.from) || named && !r.stray(begin, f.from):
			v.what = "amount.capacity"
		case after != nil && r.saysOil(after) && (after.from == f.end() || r.linked(f.end(), after.from)): // "the Lark asks for 1.1 l of engine oil": it may be a part of it
			v.what = "amount.capacity"
			v.doubts = append(v.doubts, doubt("manual-by-context", "text", f.text))
		}
	}
}

// inParts reports whether a sentence has an amount poured in first, and the rest behind it: "initially
// add 2.5 quarts". What is filled into a new engine is none such.
func (r *readings) inParts(f *fact, begin int) bool {
	from, _ := r.clauseOf(f.from)
	for i := max(from, begin); i < f.from; i++ {
		t := r.termAt(i)
		if t == nil || t.from != i {
			continue
		}
		if role, _ := r.roleAt(i); role != "" && role != "amount.capacity" && role != "amount.change" || r.row(f.from) {
			return false
		}
		if t.has("when.first") && !r.about(from, f.from, "when.change") {
			_, to := r.clauseOf(f.end() - 1)
			for k := f.end(); k < to; k++ {
				if role, _ := r.roleAt(k); role != "" && role != "amount.capacity" {
					return false
				}
			}
			return true
		}
	}
	return false
}

// moreThan reports whether an amount is what goes in beyond another: "an extra 0.2 litre", "0.2 litre
// more". One that "or" or "no" bounds so is none such.
func (r *readings) moreThan(f *fact) bool {
	says := func(at int) bool {
		t := r.termAt(at)
		return t != nil && t.has("amount.more") && r.places[at].sentence == r.places[f.from].sentence
	}
	before := f.from - 1
	if before > 0 && r.places[before].function {
		before--
	}
	behind := f.end()
	return before >= 0 && says(before) || behind < len(r.places) && r.places[behind].gap == blank && says(behind)
}

// oilTank reports whether the page tells of a tank that holds the engine's oil.
func (p *page) oilTank() bool {
	for n := range p.mentions {
		m := &p.mentions[n]
		if m.tank && !m.foreign && (m.oil || m.part == "tank-drain") {
			return true
		}
		if o := &p.mentions[max(n-1, 0)]; m.tank && !m.foreign && n > 0 && !o.foreign && p.saysOil(o) && p.places[o.from].clause == p.places[m.from].clause && !p.figureIn(o.to, m.from) {
			return true // "the oil is carried in a tank"
		}
	}
	for i := range p.terms {
		if p.terms[i].has("bike.dry-sump") || p.terms[i].has("bike.frame") {
			return true
		}
	}
	return false
}

// withFluid reports whether a fluid of another job is joined to a mention: "radiator and engine".
func (r *readings) withFluid(m *mention) bool {
	o := &r.mentions[r.mentionFrom(m.from)-1]
	return r.fluid(o) && r.onlyJoins(o.to, m.from)
}

// foreignBefore reports whether the mention before one in its sentence is of another job.
func (r *readings) foreignBefore(m *mention) bool {
	n := r.mentionFrom(m.from) - 1
	return n >= 0 && r.mentions[n].foreign && r.places[r.mentions[n].from].sentence == r.places[m.from].sentence && !r.figureIn(r.mentions[n].to, m.from)
}

// lastOfList reports whether a volume ends a list of numbers without units of their own.
func (r *readings) lastOfList(f *fact) bool {
	stroke, before := r.at(f.from-1), r.at(f.from-2)
	return stroke.text == "/" && stroke.gap == blank && before.kind == number && !before.taken
}

// of gives a volume the oil of a mention.
func (r *readings) of(v *volume, m *mention) {
	switch {
	case m.foreign:
		v.what, v.circuit = "", ""
		return
	case m.gear:
		v.circuit = r.gearOil()
	default:
		v.circuit = m.circuit
	}
	near := v.from-m.to <= 4 && (v.to <= v.f.end() || r.apart(m.to, v.f.from) == 0) || r.pieces[r.places[v.f.from].piece].cells
	if m.from < v.from && near && r.places[m.from].sentence == r.places[v.from].sentence {
		v.from = m.from
	}
}

// hasOil reports whether a page is of oil at all: it names one, its grade, or a part of ours.
func (r *readings) hasOil() bool {
	return slices.ContainsFunc(r.terms, func(t term) bool {
		_, is := t.begin("oil.")
		return is || t.has("amount.capacity") && r.saysOil(&mention{from: t.from, to: t.to}) // "oil capacity"
	}) || slices.ContainsFunc(r.facts, func(f fact) bool { return ofOil(&f) }) ||
		slices.ContainsFunc(r.mentions, func(m mention) bool { return m.part == "filter" && !m.foreign })
}

// oilIn reports whether oil is spoken of between two tokens.
func (r *readings) oilIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.termAt(i); t != nil {
			if _, is := t.begin("oil."); is {
				return true
			}
		}
	}
	return false
}

// roleAt gives the role that a term says which begins at a token.
func (r *readings) roleAt(i int) (role string, t *term) {
	t = r.termAt(i)
	if t == nil || t.from != i {
		return "", nil
	}
	for _, s := range volumeRoles {
		if t.has(s) {
			if o := r.termAt(t.to); s == "amount.with-filter" && o != nil && o.has("stay") { // "with the filter left in place"
				return "amount.oil-only", &term{from: t.from, to: o.to, senses: t.senses}
			}
			return s, t
		}
	}
	switch {
	case t.has("without") && r.filterNear(t.to):
		return "amount.oil-only", t
	case t.has("with") && (!t.has("join.and") || r.filterAt(t.to)) && r.filterNear(t.to):
		if o := r.termAt(t.to); r.places[t.from].kind == sign && o != nil && o.has("part.filter") { // "oil + filter"
			return "amount.with-filter", &term{from: t.from, to: o.to, senses: t.senses}
		}
		return "amount.with-filter", t
	case (t.has("part.filter") || t.has("part.filter-element")) && r.senseAt(t.from-1, "new"):
		return "amount.with-filter", t // "drained, new filter .. 2.1 L"
	case t.has("amount.apart") && r.behindVolume(i): // "the lines are 0.3 litre apart"
		return "amount.band", t
	case t.has("amount.apart") && !r.about(max(i-mostPhrase, 0), i, "device.window") && r.oilIn(max(i-mostPhrase, 0), i): // "with the crankcase halves apart"
		return "amount.dry", t
	case t.has("when.change") && r.senseAt(t.to, "only.it"):
		return "amount.oil-only", &term{from: t.from, to: t.to + 1, senses: t.senses}
	case t.has("part.filter"), t.has("part.filter-element"):
		return r.filterChanged(t)
	case t.has("stay"): // "leave the old filter"
		for k := t.to; k < t.to+mostPhrase; k++ {
			o := r.termAt(k)
			switch {
			case o != nil && (o.has("part.filter") || o.has("part.filter-element")) && r.places[k].clause == r.places[i].clause:
				return "amount.oil-only", &term{from: t.from, to: o.to, senses: t.senses}
			case k >= len(r.places) || r.unknown(k) || r.places[k].taken:
				return "", nil
			}
		}
	case t.has("not") && r.ends(t.to) && r.filterNear(t.to): // "2.7 L when not"
		return "amount.oil-only", t
	}
	return "", nil
}

// behindVolume reports whether a volume ends right before a token.
func (r *readings) behindVolume(i int) bool {
	f := r.factAt(i - 1)
	return f != nil && f.kind == string(quantity.Volume)
}

// filterAt reports whether a filter is named at a token, or behind a small word.
func (r *readings) filterAt(at int) bool {
	for i := at; i < len(r.places) && i < at+mostPhrase; i++ {
		if r.senseAt(i, "part.filter") || r.senseAt(i, "part.filter-element") || r.senseAt(i, "amount.with-filter") {
			return true
		}
		if !r.places[i].function {
			break
		}
	}
	return false
}

// ends reports whether a clause ends at a token.
func (r *readings) ends(at int) bool {
	return at >= len(r.places) || r.places[at].kind == sign || r.places[at].piece != r.places[at-1].piece
}

// mostPhrase is how many tokens may stand between a filter and what is done with it.
const mostPhrase = 4

// filterChanged gives the role that a filter and its change behind it say: "if the filter was
// not changed too".
func (r *readings) filterChanged(t *term) (role string, whole *term) {
	role = "amount.with-filter"
	for i := t.to; i < len(r.places) && i <= t.to+mostPhrase; i++ {
		q := &r.places[i]
		if q.sentence != r.places[t.from].sentence || q.taken || q.kind == number || q.gap == wide {
			break
		}
		o := r.termAt(i)
		switch {
		case o == nil:
		case o.has("not"):
			role = "amount.oil-only"
		case o.has("stay"): // "if the element was left in"
			return "amount.oil-only", &term{from: t.from, to: o.to, senses: t.senses}
		case o.has("when.change"):
			return role, &term{from: t.from, to: o.to, senses: t.senses}
		}
	}
	return "", nil
}

// toldBefore reports whether a role stands right before a figure that says all that
// there is to say.
func (r *readings) toldBefore(from, to int) bool {
	for i := from; i < to; i++ {
		if role, t := r.roleAt(i); t != nil && rank(role) < rank("amount.change") && r.apart(t.to, to) == 0 {
			return true
		}
	}
	return false
}

// belongs reports whether a role says what a figure is, and not the figure on its other
// side: what parts them decides; where that says nothing, the way in which the sentence
// begins.
func (r *readings) belongs(t *term, role string, f *fact, begin, next, from, to int) bool {
	before := t.from < f.from
	if before && begin == from { // nothing else on that side
		return true
	}
	if role == "amount.capacity" { // it stands before its figure, or as the verb right behind it
		return before || r.apart(f.end(), t.from) == 0 && (next == to || r.apart(t.to, next) > 0)
	}
	if !before && next == to { // no figure behind it
		return r.apart(f.end(), t.from) == 0 || !r.toldBefore(begin, f.from)
	}
	if !before && r.at(t.to).text == ":" { // "170 ml, after dismantling: 200 ml"
		return false
	}
	// The role stands between two figures: here is the one, there the other.
	mine, other := r.apart(t.to, f.from), r.apart(begin, t.from)
	if !before {
		mine, other = r.apart(f.end(), t.from), r.apart(t.to, next)
	}
	if mine != other {
		return mine < other
	}
	if joined := r.joinedBetween(t, f, begin, next); joined != 0 {
		return joined > 0
	}
	return before == r.rolesFirst(from, to)
}

// joinedBetween tells by an "and" which of two figures a role between them is of: "1.4 L with
// the filter and 1.8 L" it is behind its figure, "1.2 L and with the filter 1.4 L" before it.
// 1 where it is this figure's, -1 where it is the other's, 0 where no "and" tells.
func (r *readings) joinedBetween(t *term, f *fact, begin, next int) int {
	near, far := r.about(t.to, f.from, "join.and"), r.about(begin, t.from, "join.and")
	if t.from > f.from {
		near, far = r.about(f.end(), t.from, "join.and"), r.about(t.to, next, "join.and")
	}
	switch {
	case near == far:
		return 0
	case near:
		return -1
	}
	return 1
}

// ofOtherOil reports whether a role is said of another oil than a figure's: behind the figure
// that oil is named first, before it the figure's own is named last.
func (r *readings) ofOtherOil(t *term, f *fact, begin int) bool {
	isOil := func(m *mention) bool { return m.foreign || m.circuit != "" || m.gear }
	if t.from > f.from {
		mine, _ := r.near(f.from, begin, f.from, isOil)
		other, _ := r.near(t.from, f.end(), t.from, isOil)
		return mine != nil && other != nil && !mine.sameOil(other)
	}
	mine, _ := r.near(f.from, t.to, f.from, isOil)
	other, _ := r.near(t.from, begin, t.from, isOil)
	return mine != nil && other != nil && !mine.sameOil(other)
}

// sameOil reports whether two mentions are of one oil.
func (m *mention) sameOil(o *mention) bool {
	return m.circuit == o.circuit && m.gear == o.gear && m.foreign == o.foreign
}

// apart says how much parts two places of a sentence: 0 nothing, 1 a comma, 2 a bracket,
// a semicolon, another line; a colon and a gap join a label to its figure.
func (r *readings) apart(from, to int) int {
	most := 0
	for i := from; i < to; i++ {
		t := &r.places[i]
		switch {
		case t.kind == sign && (t.text == "," || t.text == "/") && !t.taken:
			most = max(most, 1)
		case t.kind == sign && strings.Contains(";().|", t.text) && !t.taken, i > from && t.piece != r.places[i-1].piece && !small(r.tokens[i:i+1]):
			most = max(most, 2)
		}
	}
	return most
}

// rolesFirst reports whether a sentence says what an amount is before the amount.
func (r *readings) rolesFirst(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && f.kind == string(quantity.Volume) {
			return false
		}
		if role, t := r.roleAt(i); t != nil && role != "amount.capacity" {
			return true
		}
	}
	return false
}

// filterNear reports whether what stands behind "with" may be the filter: a filter, or
// nothing, where the sentence speaks of one.
func (r *readings) filterNear(at int) bool {
	if at >= len(r.places) {
		return true
	}
	_, to := r.sentenceOf(at - 1)
	for i := at; i < to; i++ {
		t := r.termAt(i)
		if t != nil {
			if _, is := t.begin("part.filter"); is {
				return true
			}
			if t.has("amount.oil-only") || t.has("amount.with-filter") {
				return true
			}
		}
		if i == at && r.unknown(i) {
			return false
		}
	}
	from, _ := r.sentenceOf(at - 1)
	behind := at
	for behind < to && r.places[behind].kind == word && (r.places[behind].function || r.senseAt(behind, "number.1") || r.senseAt(behind, "new")) { // "without one", "with a new one"
		behind++
	}
	if behind < to && r.places[behind].kind == word {
		return false // "with the engine empty", and not "without it 2.4 L"
	}
	for i := from; i < at; i++ {
		if t := r.termAt(i); t != nil {
			if _, is := t.begin("part.filter"); is || t.has("amount.with-filter") || t.has("amount.oil-only") {
				return true
			}
		}
	}
	return false
}

func rank(role string) int {
	for n, s := range volumeRoles {
		if s == role {
			return n
		}
	}
	return len(volumeRoles)
}

// displacement tells whether a volume is what the engine displaces, and reads it so.
func (r *readings) displacement(v *volume, begin int) bool {
	f := v.f
	if f.unit != "mL" && f.unit != "cu in" || f.low < 0.04 || f.low > 3 {
		return false
	}
	from := begin
	for from < f.from && !r.senseAt(from, "label.displacement") {
		from++
	}
	if from == f.from && r.besideBore(f, begin) {
		from = begin
	} else if from == f.from && !r.inTitle(f) {
		a, b := r.sentenceOf(f.from)
		behind := r.ofBuild(f)
		if !behind && !r.coolingIn(a, b) || r.oilIn(begin, f.from) && !r.about(begin, f.from, "oil.engine") {
			return false
		}
	} else if from < f.from {
		if t := r.termAt(from); f.from-t.to <= mostPhrase {
			from = t.from
		} else {
			from = f.from
		}
	}
	r.sayAt("displacement", f.text, from, f.end(), f.from, r.witnesses(f)...)
	f.used = true
	return true
}

// ofBuild reports whether words for an engine's cylinders or its cooling stand right behind an amount:
// "500 c.c. twin", "the 149 cm³ air-cooled engine".
func (r *readings) ofBuild(f *fact) bool {
	at := f.end()
	if r.at(at).text == ")" {
		at++
	}
	t := r.termAt(at)
	if t == nil || r.at(at).gap == wide || r.places[at].piece != r.places[f.from].piece && !r.pieces[r.places[at].piece].joined {
		return false
	}
	_, cooled := t.begin("cooling.")
	return cooled || t.has("label.displacement")
}

// besideBore reports whether a row that says "capacity" alone stands among an engine's measures,
// its bore, stroke or power: there it is what the engine displaces.
func (r *readings) besideBore(f *fact, begin int) bool {
	row := r.places[f.from].piece
	from, _ := r.pieceTokens(row)
	if begin != from || !r.pieces[row].cells || r.saysOil(&mention{from: from, to: f.from}) {
		return false
	}
	for i := from; i < f.from; i++ { // "Capacity", "Total engine capacity"
		t := r.termAt(i)
		if r.places[i].kind == word && !r.places[i].function && !(t != nil && (t.has("amount.capacity") || t.has("amount.dry") || t.has("label.displacement"))) {
			return false
		}
	}
	for _, n := range [...]int{row - 1, row + 1} {
		if n < 0 || n >= len(r.pieces) || r.pieces[max(n, row)].blank {
			continue
		}
		a, _ := r.pieceTokens(n)
		if k := r.mentionFrom(a); k < len(r.mentions) && r.mentions[k].from == a && r.mentions[k].measure {
			return true
		}
	}
	return false
}

// inTitle reports whether a volume is a cell of the page's first line, behind what that line
// names: "THE CURLEW   350 c.c."
func (r *readings) inTitle(f *fact) bool {
	at, end := &r.places[f.from], f.end()
	if r.at(end).text == "." && r.at(end).gap == glued {
		end++ // "350 c.c."
	}
	if k := f.from - 1; at.piece < headPieces && k > 0 && (quotes(r.places[k].text) || r.places[k].text == "," && quotes(r.places[k-1].text)) {
		return true // "LUBRICATION OF THE »LARK«, 350 c.c."
	}
	return at.piece == 0 && f.from > 0 && at.gap == wide && (end == len(r.places) || r.places[end].piece > 0 || r.places[end].gap == wide) && r.capitalIn(f.from) && !r.oilIn(0, f.from)
}

// capitalIn reports whether a strange word with a capital stands in the first line before a
// token.
func (r *readings) capitalIn(to int) bool {
	for i := range to {
		if r.strangeAt(i) && capital(r.places[i].text) {
			return true
		}
	}
	return false
}

// coolingIn reports whether it is said between two tokens how the engine is cooled.
func (r *readings) coolingIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.termAt(i); t != nil {
			if _, is := t.begin("cooling."); is {
				return true
			}
		}
	}
	return false
}

// factAt gives the fact that a token is of.
func (p *page) factAt(i int) *fact {
	if p.byToken == nil {
		p.byToken = p.factsByToken((*fact).end)
	}
	if i < 0 || i >= len(p.byToken) || p.byToken[i] < 0 {
		return nil
	}
	return &p.facts[p.byToken[i]]
}

// factsByToken gives of each token the last fact that it is of, -1 for none.
func (p *page) factsByToken(end func(*fact) int) []int32 {
	list := make([]int32, len(p.places))
	for i := range list {
		list[i] = -1
	}
	for n := range p.facts {
		f := &p.facts[n]
		for i, to := f.from, min(end(f), len(list)); i < to; i++ {
			list[i] = int32(n)
		}
	}
	return list
}

// columnRole is what the head of a table's column says of the amounts below it.
type columnRole struct {
	piece    int
	col, end int
	role     string
}

// columnRoles finds the heads of columns of amounts: lines without figures that name two
// roles or more.
func (r *readings) columnRoles() (list []columnRole) {
	for n := range r.pieces {
		from, to := r.pieceTokens(n)
		first, at := len(list), from // where the role before ends
		for i := from; i < to; i++ {
			if r.places[i].kind == number && r.places[i].taken {
				list = list[:first]
				break
			}
			t := r.termAt(i)
			if t == nil || t.from != i {
				continue
			}
			for _, s := range volumeRoles[1:5] {
				if !t.has(s) {
					continue
				}
				if last := len(list) - 1; last >= first && !r.gapIn(at, t.from) { // "change with filter" is one head
					if rank(s) < rank(list[last].role) {
						list[last].role = s
					}
					list[last].end = r.places[min(t.to, to)-1].end
				} else {
					list = append(list, columnRole{n, r.places[t.from].col, r.places[min(t.to, to)-1].end, s})
				}
				at = t.to
				break
			}
		}
		if len(list)-first == 1 {
			list = list[:first]
		}
	}
	return list
}

// gapIn reports whether a gap stands behind a token, up to another.
func (p *page) gapIn(from, to int) bool {
	for i := from; i <= to; i++ {
		if p.places[i].gap == wide {
			return true
		}
	}
	return false
}

// roleOfColumn gives the role that the head over an amount says.
func (r *readings) roleOfColumn(heads []columnRole, f *fact) string {
	t := &r.places[f.from]
	if t.gap != wide {
		return ""
	}
	piece := -1
	for n := len(heads) - 1; n >= 0; n-- {
		if heads[n].piece < t.piece && r.places[r.starts[heads[n].piece]].section == t.section || heads[n].piece < t.piece && r.pieces[heads[n].piece].heading && r.places[r.starts[heads[n].piece]].section == t.section {
			piece = heads[n].piece
			break
		}
	}
	if piece < 0 {
		return ""
	}
	labelled := true
	for _, h := range heads {
		if h.piece == piece && r.cellOf(piece, h.col) == 0 {
			labelled = false
		}
	}
	nth := r.nthOver(f.from, piece, labelled)
	best, apart := "", 1<<20
	for _, h := range heads {
		if h.piece != piece {
			continue
		}
		if nth >= 0 {
			if r.cellOf(piece, h.col) == nth {
				return h.role
			}
			continue
		}
		d := min(abs(h.col-t.col), abs((h.col+h.end)/2-(t.col+r.places[f.to-1].end)/2))
		if d < apart {
			best, apart = h.role, d
		}
	}
	return best
}

// pairs settles what an amount is that says nothing of the filter: beside one that says
// "without" it is the one with, and the other way round.
func (r *readings) pairs(plain, told []*volume) {
	for _, v := range plain {
		var with, only *volume
		if v.strange {
			v.doubts = append(v.doubts, doubt("manual-by-context", "text", v.f.text))
		}
		for _, o := range told {
			if o.circuit == "engine" {
				switch o.what {
				case "amount.with-filter":
					with = o
				case "amount.oil-only":
					only = o
				}
			}
		}
		for _, o := range plain { // "drained: 1.9 L", beside one with the filter
			if o != v && only == nil && with != nil && v.what == "amount.capacity" && o.what == "amount.change" && o.f.high <= with.f.low {
				only = o
			}
		}
		switch {
		case only != nil && with == nil && v.f.low > only.f.low:
			v.what = "amount.with-filter"
		case with != nil && v.f.text == with.f.text:
			v.what = "amount.with-filter"
		case v.what == "amount.capacity" && only == nil && with == nil && r.mentionsFilter():
			if !r.filterApart() && !slices.ContainsFunc(r.facts, func(f fact) bool { return f.kind == v.f.kind && r.moreThan(&f) }) {
				v.what = "amount.with-filter"
			}
			v.doubts = append(v.doubts, doubt("manual-filter-open", "text", v.f.text))
		case only != nil && v.f.text == only.f.text:
			v.what = ""
		case v.what == "amount.capacity" && with != nil && only != nil && r.prose(v.f.from) && r.settled(v, told):
			v.what = "" // a part of it is poured, or it contradicts
		case v.what == "amount.capacity" && with != nil && only == nil && v.f.low > with.f.low:
			v.what = "amount.dry"
			v.doubts = append(v.doubts, doubt("manual-by-context", "text", v.f.text))
		}
	}
}

// prose reports whether a token stands in a sentence, and in no row.
func (r *readings) prose(at int) bool { return !r.pieces[r.places[at].piece].cells && !r.row(at) }

// settled reports whether the amounts with their names on a page leave nothing for one that is
// poured in without one: it is less than either, and so a part of it, or it is what another
// amount is said to be, and then the two that are said of a change are doubted.
func (r *readings) settled(v *volume, told []*volume) bool {
	less, other := true, false
	for _, o := range told {
		if o.circuit == "engine" && o.what != "amount.band" {
			less = less && v.f.high < o.f.low
			other = other || o.what == "amount.dry" && o.f.text == v.f.text
		}
	}
	for _, o := range told {
		if other && o.circuit == "engine" && (o.what == "amount.with-filter" || o.what == "amount.oil-only") {
			o.doubts = append(o.doubts, doubt("manual-says-both", "text", o.f.text, "other", v.f.text))
		}
	}
	return less || other
}

// filterApart reports whether the filter is not changed with each oil.
func (r *readings) filterApart() bool {
	for i := range r.list {
		o := &r.list[i]
		if strings.HasPrefix(o.What, "interval.filter") || o.What == "filter.every" && o.Text != "1" {
			return true
		}
	}
	return false
}

func (r *readings) mentionsFilter() bool {
	for i := range r.mentions {
		if m := &r.mentions[i]; m.part == "filter" && !m.foreign && !r.lacking(m.from, m.to) && !r.about(m.from, m.to, "part.filter-centrifugal") { // that one is cleaned
			return true
		}
	}
	return false
}

// volume adds the reading of a volume.
func (r *readings) volume(v *volume) {
	what := "oil." + v.circuit + "."
	switch {
	case v.what == "":
		return
	case v.what == "amount.band" && r.otherJob(v.f.from):
		return
	case v.what == "amount.band":
		if what = "level.band"; v.circuit != "engine" {
			what = "level." + v.circuit + ".band"
		}
	case v.what == "amount.dry":
		what += "dry"
	case v.circuit != "engine":
		what += "volume"
	case v.what == "amount.with-filter":
		what += "with-filter"
	default:
		what += "oil-only"
	}
	f := v.f
	v.doubts = append(v.doubts, r.witnesses(f)...)
	if r.nearlyNot(v.from, v.to) || r.maybeOne(f) {
		v.doubts = append(v.doubts, doubt("manual-repaired", "text", f.text))
	}
	if f.bound && v.what != "amount.band" {
		v.doubts = append(v.doubts, doubt("manual-is-bound", "text", f.text))
	}
	if f.low > mostOil(v.circuit) || f.low <= 0 {
		v.doubts = append(v.doubts, doubt("manual-not-believable", "text", f.text))
	}
	f.used = true
	to := r.gradeBehind(v.to)
	if what == "oil.engine.oil-only" {
		to = max(to, r.otherWayBehind(f.end()))
	}
	r.sayAt(what, f.text, r.leadOf(v.from), to, f.from, v.doubts...)
}

// otherWayBehind gives where the words end right behind an amount that tell by the next one how it is
// meant: "3.25 l, with filter 3.50 l"; 0 for none.
func (r *readings) otherWayBehind(at int) int {
	for i := at; i < len(r.places) && i < at+mostLabel; i++ {
		t := &r.places[i]
		if r.senseAt(i, "amount.with-filter") && t.sentence == r.places[at-1].sentence {
			return r.termAt(i).to
		}
		if t.text != "," && t.text != ";" && t.text != "(" {
			break
		}
	}
	return 0
}

// leadOf gives the beginning of a clause that has but a few words before a token, else the token:
// they say where an amount goes, "into the tank 2.4 L".
func (r *readings) leadOf(at int) int {
	for i := at - 1; i >= max(0, at-mostPhrase) && r.places[i+1].gap != wide; i-- {
		switch t := &r.places[i]; {
		case t.clause != r.places[at].clause, t.taken && t.kind == sign: // behind the mark of an item
			return i + 1
		case t.kind != word || t.taken:
			return at
		}
	}
	return at
}

// gradeBehind gives where the oil's grade ends that is told right behind an amount: "0.2 L of
// SAE 80W-90" is quoted as one.
func (r *readings) gradeBehind(to int) int {
	for i := to; i < len(r.places) && i <= to+mostRest && r.places[i].clause == r.places[to-1].clause && r.places[i].gap != wide; i++ {
		if f := r.factAt(i); f != nil {
			if f.kind == "grade" {
				return f.to
			}
			break
		}
	}
	return to
}

// maybeOne reports whether the "l" that makes an amount of oil may be a figure one: it stands
// right behind whole digits, in a row that names a fastener, as "Drain plug 2l" for 21.
func (r *readings) maybeOne(f *fact) bool {
	if f.to-f.from != 2 || r.places[f.from+1].fold != "l" || r.places[f.from+1].gap != glued || strings.ContainsAny(r.places[f.from].text, ".,") {
		return false
	}
	from, _ := r.sentenceOf(f.from)
	for n := r.mentionFrom(f.from) - 1; n >= 0 && r.mentions[n].from >= from; n-- {
		if m := &r.mentions[n]; m.part != "" && m.part != "filter" {
			return true
		}
	}
	return false
}

// mostOil is the most of an oil in litres that is believed of a motorcycle. From memory.
func mostOil(circuit string) float64 {
	if circuit == "engine" {
		return 6.5
	}
	return 2.5
}
