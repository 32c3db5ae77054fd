package manual

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// zone is a run of tokens that tell of one thing, such as how the level is read.
type zone struct{ from, to int }

// levelZones finds where the page tells how an oil's level is read: below a heading that
// says so, else in paragraphs that name the level or what it is read at.
func (r *readings) levelZones() (list []zone) {
	for n := 0; n < len(r.pieces); {
		from, to := r.pieceTokens(n)
		m := n + 1
		section := r.places[from].section
		whole := r.about(r.sections[section].from, r.sections[section].from+r.sections[section].heading, "level.check")
		for m < len(r.pieces) {
			a, b := r.pieceTokens(m)
			step := !r.pieces[m].joined && bullet(r.pieces[m].tokens) > 0 // steps of a list may be of other things
			if r.places[a].section != section || !whole && (r.pieces[m].blank || r.pieces[m].cells || step) {
				break
			}
			to, m = b, m+1
		}
		if _, foreign := r.headCircuit(from); !foreign && (whole || r.about(from, to, "level.check") || r.deviceIn(from, to) || r.comesOut(from, to)) {
			if last := len(list) - 1; last >= 0 && r.stepsBetween(list[last].to, from) {
				list[last].to = to // "Check the level. * Park on the stand. * Take out the dipstick."
			} else {
				list = append(list, zone{from, to})
			}
		}
		n = m
	}
	return list
}

// stepsBetween reports whether nothing stands between two zones but a step or two of a list that
// tell how the machine stands, or how warm its engine is, and of no other work.
func (r *readings) stepsBetween(from, to int) bool {
	if to-from > mostNext || from < to && r.places[from].section != r.places[to].section || r.otherWork(from, to) || r.about(from, to, "when.change") {
		return false
	}
	steps := 0
	for n := r.places[max(from, 1)].piece; from < to && n < r.places[to].piece; n++ {
		if r.pieces[n].joined {
			continue
		}
		if steps++; steps > 2 || r.pieces[n].blank || bullet(r.pieces[n].tokens) == 0 {
			return false
		}
	}
	return steps > 0 && !r.pieces[r.places[to].piece].blank
}

func (r *readings) deviceIn(from, to int) bool {
	last := -1
	for i := max(from, 0); i < min(to, len(r.places)); i++ {
		n := r.places[i].term
		if n < 0 || n == last {
			continue
		}
		last = n
		t := &r.terms[n]
		d, is := t.begin("device.")
		if is && (d != "screwed" && d != "pushed" && d != "resting" || t.has("device.stick") || d == "resting" && (t.to-t.from > 1 || r.stickSpoken(i))) { // a plug is screwed in too
			return true
		}
	}
	return false
}

// comesOut reports whether it is told between two tokens that oil comes out at a level plug, or is
// filled in up to one.
func (r *readings) comesOut(from, to int) bool {
	return r.about(from, to, "part.level") && (r.about(from, to, "action.out") || r.about(from, to, "top-up"))
}

// devices are the words of a card for what the level is read at, by sense.
var devices = map[string]string{"window": "window", "screwed": "stick-screwed", "resting": "stick-resting", "pushed": "stick-pushed", "hole": "hole"}

// levels reads how the levels are read, and how warm the oil is to be for draining.
func (r *readings) levels() {
	zones := r.levelZones()
	inZone := map[int]bool{}
	// What a sentence on the level itself says goes before what its neighbours say.
	for _, direct := range [...]bool{true, false} {
		for _, z := range zones {
			for i := z.from; i < z.to; {
				from, to := r.sentenceOf(i)
				tells := r.about(from, to, "level.check") || r.deviceIn(from, to) || r.about(from, to, "action.out") || r.about(from, to, "top-up")
				if tells == direct && (direct || r.besideLevel(from, to, z)) && !r.foreignSentence(from, to) && !r.drains(from, to) && !r.governedBeyond(from) {
					r.levelWords(from, min(to, z.to))
				}
				inZone[r.places[i].sentence] = true
				i = to
			}
		}
	}
	for _, z := range zones { // "daily, before starting", where nothing says how warm the engine is
		for i := z.from; i < z.to; i++ {
			if t := r.termAt(i); t != nil && t.from == i && t.has("state.before") && !r.denied(i) {
				if from, to := r.sentenceOf(i); r.about(from, to, "level.check") && !r.foreignSentence(from, to) && !r.drains(from, to) && !r.governedBeyond(from) {
					r.sayOnce(r.levelPrefix(i)+"state", "cold", t.from, t.to)
				}
			}
		}
	}
	r.keptStances()
	for i := range r.facts {
		f := &r.facts[i]
		from, to := r.sentenceOf(f.from)
		switch {
		case r.foreignSentence(from, to):
		case f.kind == string(quantity.Duration) && f.low <= 60 && (f.unit != "h" || f.low < leastHours && r.about(from, f.from, "time.run")):
			if r.governedBeyond(f.from) || r.otherJob(f.from) {
				continue
			}
			next := r.next(f)
			if next == "fill" {
				continue // "run it for a minute and pour in the rest"
			}
			level := next == "level" || inZone[r.places[f.from].sentence] || len(zones) > 0 && r.waits(from, to) && r.about(from, to, "time.run")
			r.shortTime(f, from, to, next, level && !r.drains(from, to))
		case f.kind == string(quantity.Temperature):
			r.warmth(f, from, to)
		}
	}
}

// keptStances reads how the machine stands where a step before that of the level said so last, and
// the steps between fill the oil in: "Stand it upright. Pour in 1.2 litres. Check the window." Where it
// is drained between, it is asked, and only of oil that is filled in until it runs out.
func (r *readings) keptStances() {
	for k := range len(r.list) {
		prefix, is := strings.CutSuffix(r.list[k].What, "device")
		if !is || !strings.HasPrefix(prefix, "level.") || slices.ContainsFunc(r.list, func(o Reading) bool { return o.What == prefix+"stance" }) {
			continue
		}
		at := slices.IndexFunc(r.places, func(t place) bool { return t.from >= r.list[k].Quote.From })
		if at < 0 {
			continue
		}
		if circuit := r.levelOf(at); circuit != r.usualOil() { // its plugs may be opened on another stand
			continue
		}
		at, _ = r.sentenceOf(at)
		r.keptStance(prefix+"stance", at, r.list[k].Text == "hole")
	}
}

// keptStance looks back from a sentence for how the machine was put.
func (r *readings) keptStance(what string, at int, hole bool) {
	var doubts []finding.Finding
	section := r.places[at].section
	for range mostBackSteps {
		if at == 0 || r.places[at-1].section != section {
			return
		}
		from, _ := r.sentenceOf(at - 1)
		for i := from; i < at; i++ {
			t := r.termAt(i)
			if t == nil || t.from != i || r.denied(i) || r.asked(i) {
				continue
			}
			if s, is := t.begin("stance."); is {
				if !r.foreignSentence(from, at) && !(s == "side-stand" && len(doubts) > 0) {
					r.say(what, s, t.from, t.to, doubts...)
				}
				return
			}
		}
		switch {
		case r.drains(from, at) && !hole, r.foreignSentence(from, at):
			return
		case r.drains(from, at) && len(doubts) == 0:
			doubts = append(doubts, doubt("manual-by-context", "text", what))
		}
		at = from
	}
}

// mostBackSteps is how many sentences are looked back for how the machine was put.
const mostBackSteps = 12

// besideLevel reports whether a sentence of a zone stands below a heading of the level's, or
// beside a sentence on it, with nothing between them that tells of other work: "Ride for ten
// minutes so that the oil is hot. Undo the plug. … Read the level at the window."
func (r *readings) besideLevel(from, to int, z zone) bool {
	s := r.sections[r.places[from].section]
	if r.about(s.from, s.from+s.heading, "level.check") {
		return true
	}
	tells := func(a, b int) bool { return r.about(a, b, "level.check") || r.deviceIn(a, b) }
	for k, at := 0, from; k < mostBack && at > z.from; k++ {
		a, _ := r.sentenceOf(at - 1)
		if tells(a, at) {
			return true
		}
		if r.otherWork(a, at) {
			break
		}
		at = a
	}
	for k, at := 0, to; k < mostBack && at < z.to; k++ {
		_, b := r.sentenceOf(at)
		if tells(at, b) {
			_, next := r.sentenceOf(min(b, len(r.places)-1))
			return r.about(at, b, "level.check") || b == len(r.places) || !r.about(b, next, "part.drain") // "take out the dipstick. Undo the drain plug."
		}
		if r.otherWork(at, b) {
			break
		}
		at = b
	}
	return false
}

// otherWork reports whether a sentence tells of draining, of the filter or of filling in.
func (r *readings) otherWork(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && (f.kind == string(quantity.Volume) || f.kind == string(quantity.Torque)) {
			return true
		}
		if t := r.termAt(i); t != nil && (t.has("warm.drain") || t.has("part.drain") || t.has("part.filter") || t.has("part.filter-spin-on") || t.has("part.filter-element") || t.has("part.plug")) {
			return true
		}
	}
	return false
}

// foreignSentence reports whether a sentence tells of another job only. A part behind the
// level's words says where it is read: "window in the clutch cover".
func (r *readings) foreignSentence(from, to int) bool {
	foreign, own := false, false
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		m := &r.mentions[n]
		own = own || !m.foreign && m.loose == whole
		foreign = foreign || m.foreign && (r.fluid(m) || !r.about(from, m.from, "level.check") && !r.deviceIn(from, m.from))
	}
	if foreign && !own && (r.deviceIn(from, to) || r.about(from, to, "level.check")) && !r.about(from, to, "other.fluid") {
		if _, other := r.headCircuit(from); !other {
			return false // "the window in the clutch cover"
		}
	}
	return foreign && !own
}

// drains reports whether a sentence tells of draining, and not of a level.
func (r *readings) drains(from, to int) bool {
	return (r.about(from, to, "warm.drain") || r.about(from, to, "part.drain")) && !r.about(from, to, "level.check") && !r.about(from, to, "top-up") &&
		!r.about(from, to, "device.window") && !r.about(from, to, "device.stick") && !r.about(from, to, "device.hole")
}

// levelWords reads device, state and stance in a sentence that tells of the level.
func (r *readings) levelWords(from, to int) {
	for i := from; i < to; i++ {
		t := r.termAt(i)
		if t == nil || t.from != i || r.asked(i) {
			continue
		}
		prefix := r.levelPrefix(i)
		if plug := r.mentionFrom(t.to); t.has("level.check") && r.senseAt(t.to, "with") && plug < len(r.mentions) && r.mentions[plug].part == "level" && r.mentions[plug].from <= t.to+2 {
			r.sayOnce(prefix+"device", "hole", t.from, r.mentions[plug].to) // "check the level with the check bolt"
		}
		if t.has("part.level") && r.filledTo(t) {
			r.sayOnce(prefix+"device", "hole", t.from, t.to) // "top up to the level plug"
		}
		if d, ok := t.begin("device."); ok && devices[d] != "" && (d == "window" || d == "hole" || r.stickNear(i)) && !(d == "resting" && r.stands(r.pastSmall(t.to))) {
			end := t.to
			for k := t.to; d == "hole" && k < t.to+mostBetween && k < len(r.places) && r.places[k].clause == r.places[i].clause; k++ {
				if r.senseAt(k, "device.hole") || r.senseAt(k, "part.level") { // "until it runs out at the level hole"
					end = r.termAt(k).to
				}
			}
			if plug := r.plugBehind(t, to); d == "hole" && plug != nil { // "begins to trickle from the red screw"
				end = max(end, plug.to)
			}
			r.say(prefix+"device", devices[d], t.from, end)
			if other := r.levelToo(i); other != "" && d == "hole" {
				r.say("level."+other+".device", devices[d], t.from, t.to)
			}
		}
		if t.has("action.out") {
			r.leaks(prefix+"device", t)
		}
		if device, end := r.stickPut(t, to); device != "" {
			r.sayOnce(prefix+"device", device, t.from, end)
		}
		if s, ok := t.begin("state."); ok && s != "before" && !r.denied(i) && !r.neverRead(i) && !(s == "warm" && r.about(t.to, r.clauseEnd(i), "state.hot")) && !(s == "cold" && r.endedByRun(t)) { // "warm to operating temperature"
			if a, b := r.sentenceOf(i); r.about(a, b, "level.check") {
				r.say(prefix+"state", s, t.from, t.to) // where the page says two things, both are shown
			} else {
				r.sayOnce(prefix+"state", s, t.from, t.to)
			}
		}
		if s, ok := t.begin("stance."); ok && !r.denied(i) {
			r.say(prefix+"stance", s, t.from, t.to)
		}
		i = t.to - 1
	}
}

// pastSmall gives the first token behind small words: "leaning on its side stand" is a machine.
func (r *readings) pastSmall(at int) int {
	for end := min(at+mostLabel, len(r.places)); at < end && r.places[at].function; at++ {
	}
	return at
}

// endedByRun reports whether a cold engine is what its sentence ends by having it run, and says
// nothing of the level: "if the engine is cold, let it idle for three minutes".
func (r *readings) endedByRun(t *term) bool {
	from, to := r.sentenceOf(t.from)
	if r.about(from, to, "level.check") || r.deviceIn(from, to) {
		return false
	}
	for i := t.to; i < to; i++ {
		if r.senseAt(i, "time.run") && !r.denied(i) {
			return true
		}
	}
	return false
}

// stickPut reads how a stick is put in to be read by a verb and where it goes: "push the
// dipstick fully into the tank", "screw it right down"; a "not" before screwing has it rest.
// end is where the words end that say so.
func (r *readings) stickPut(t *term, to int) (device string, end int) {
	from, _ := r.sentenceOf(t.from)
	if !t.has("put.screw") && !t.has("put.push") || r.about(from, to, "part.filter") || r.about(from, to, "part.drain") {
		return "", 0
	}
	if !r.about(from, to, "device.stick") && !r.about(from, to, "part.filler") { // "Insert the dipstick. Screw it right in."
		before, _ := r.sentenceOf(max(from-1, 0))
		if from == 0 || r.places[from-1].item != r.places[from].item && from-before > mostLabel || !r.about(before, from, "device.stick") {
			return "", 0
		}
	}
	not := r.denied(t.from)
	for i := t.to; i < to && i < t.to+mostBetween && r.places[i].clause == r.places[t.from].clause; i++ {
		if r.senseAt(i, "put.in") {
			end = r.termAt(i).to
			if i+1 < end || !r.senseAt(end, "put.in") {
				break
			}
		}
	}
	switch {
	case not && t.has("put.screw"):
		return "stick-resting", max(end, t.to)
	case not || end == 0:
		return "", 0
	case t.has("put.screw"):
		return "stick-screwed", end
	}
	return "stick-pushed", end
}

// mostLabel is how many tokens a line has at most that is the label of the one below it.
const mostLabel = 3

// leaks reads that oil comes out at the hole of a level plug that is named in the sentence, or
// in the one before it in its item.
func (r *readings) leaks(what string, t *term) {
	from, to := r.sentenceOf(t.from)
	if plug := r.plugBehind(t, to); plug != nil && r.about(from, to, "level.check") {
		first, _ := r.clauseOf(t.from)
		r.sayOnce(what, "hole", first, plug.to) // "the level is right when oil drips from the red screw"
		return
	}
	if begin := from; !r.about(from, to, "part.level") {
		if begin > 0 && r.places[begin-1].item == r.places[from].item {
			begin, _ = r.sentenceOf(begin - 1)
		}
		if !r.about(begin, from, "part.level") {
			return
		}
	}
	first, _ := r.clauseOf(t.from)
	last := t.to
	for i := t.to; i < to && i < t.to+mostBetween; i++ {
		if r.senseAt(i, "part.level") || r.senseAt(i, "device.hole") {
			last = r.termAt(i).to
		}
	}
	r.sayOnce(what, "hole", first, last)
}

// plugBehind gives the bare plug or screw that is named behind a term in its clause; nil for
// none.
func (r *readings) plugBehind(t *term, to int) *mention {
	n := r.mentionFrom(t.to)
	if n == len(r.mentions) || r.mentions[n].from >= to || r.mentions[n].from-t.to > mostBetween || r.places[r.mentions[n].from].clause != r.places[t.from].clause {
		return nil
	}
	if m := &r.mentions[n]; !m.foreign && (m.loose == aPlug || m.loose == aFastener) {
		return m
	}
	return nil
}

// filledTo reports whether oil is filled in up to a level plug: a word for "to" stands right
// before it, and one for filling in its clause.
func (r *readings) filledTo(t *term) bool {
	to := false
	for i := max(t.from-mostLabel, 0); i < t.from; i++ {
		to = to || r.senseAt(i, "range.to")
	}
	a, b := r.clauseOf(t.from)
	return to && (r.about(a, b, "top-up") || r.about(a, b, "amount.capacity") || r.about(a, b, "amount.change"))
}

// asked reports whether a token's clause is a question, which states nothing: "Cold or hot?"
func (r *readings) asked(at int) bool {
	_, to := r.clauseOf(at)
	return r.places[to-1].text == "?"
}

// clauseStart gives where the clause of a token begins.
func (r *readings) clauseStart(at int) int {
	from, _ := r.clauseOf(at)
	return from
}

// clauseEnd gives where the clause of a token ends.
func (r *readings) clauseEnd(at int) int {
	_, to := r.clauseOf(at)
	return to
}

// stickNear reports whether a dipstick, or a cap that may have one, is spoken of in the
// sentence of a token or in the one before: a filter is screwed in too.
func (r *readings) stickNear(at int) bool {
	from, to := r.sentenceOf(at)
	if from > 0 && r.places[from-1].section == r.places[at].section {
		from, _ = r.sentenceOf(from - 1)
	}
	return r.about(from, to, "device.stick") || r.about(from, to, "part.filler") || !r.about(from, to, "part.filter") && !r.about(from, to, "part.filter-spin-on") && !r.about(from, to, "part.filter-element") && !r.about(from, to, "part.drain")
}

// stickSpoken reports whether a dipstick, or a cap that may have one, is named in the sentence of
// a token or in the one before: a motorcycle rests on its stand too.
func (r *readings) stickSpoken(at int) bool {
	from, to := r.sentenceOf(at)
	if from > 0 && r.places[from-1].section == r.places[at].section {
		from, _ = r.sentenceOf(from - 1)
	}
	return r.about(from, to, "device.stick") || r.about(from, to, "part.filler")
}

// levelPrefix is how the what-list begins what is said of the level at a token.
func (r *readings) levelPrefix(at int) string {
	if circuit := r.levelOf(at); circuit != "engine" {
		return "level." + circuit + "."
	}
	return "level."
}

// levelOf says whose level is read at a token: of the oil that was named last in its
// paragraph, else in the heading; else of the engine's.
func (r *readings) levelOf(at int) string {
	if circuit := r.levelBeside(at); circuit != "" {
		return circuit
	}
	circuit := ""
	from, step := r.paragraph(at), r.stepOf(at)
	headed, _ := r.headCircuit(at)
	partly := ""
	for n := r.mentionFrom(at) - 1; n >= 0 && r.mentions[n].from >= from && circuit == ""; n-- {
		m := &r.mentions[n]
		if r.places[m.from].sentence != r.places[at].sentence && r.dated(m.from) || r.places[m.from].item != r.places[at].item && r.rowLike(m.from) {
			continue // "gearbox oil every 10,000 km. Level: …"
		}
		if m.circuit == "engine" && m.part == "" && headed != "" && !r.saysOil(m) {
			continue // the engine that cools down, below a heading of another oil
		}
		if m.from < step && m.part != "level" {
			continue // a step before it
		}
		c := m.circuit
		if m.gear {
			c = r.gearOil()
		}
		if (m.part == "drain" || m.part == "filler") && headed != "" && r.places[m.from].sentence != r.places[at].sentence {
			if partly == "" {
				partly = c // its plugs are spoken of, and maybe not its level
			}
			continue
		}
		circuit = c
	}
	if circuit == "" {
		circuit = partly
	}
	if circuit == "" {
		circuit, _ = r.rowCircuit(at)
	}
	if head := r.sections[r.places[at].section]; circuit == "" && (r.oilIn(head.from, head.from+head.heading) || !r.about(head.from, head.from+head.heading, "level.check")) {
		circuit, _ = r.headCircuit(at) // and not what a heading before one on the level names
	}
	if circuit == "" {
		circuit = r.onlyLevel(at)
	}
	if circuit == "" {
		if circuit = r.usualOil(); circuit != "engine" && r.twoStroke == "" && !r.spokenBefore(circuit, at) {
			return "engine" // the other is named further down
		}
	}
	return circuit
}

// spokenBefore reports whether an oil is named before a token, or in its item.
func (r *readings) spokenBefore(circuit string, at int) bool {
	for n := range r.mentions {
		m := &r.mentions[n]
		if m.from > at && r.places[m.from].item != r.places[at].item {
			break
		}
		if !m.foreign && (m.circuit == circuit || m.gear) {
			return true
		}
	}
	return false
}

// levelToo gives the other oil where a sentence begins with two: "Gearbox and final drive are full
// when the oil stands at the edge of the filler hole". "" for none.
func (r *readings) levelToo(at int) string {
	from, _ := r.sentenceOf(at)
	n := r.mentionFrom(from)
	if n+1 >= len(r.mentions) || r.mentions[n+1].to > at {
		return ""
	}
	a, b := &r.mentions[n], &r.mentions[n+1]
	if !r.begins(n) || a.foreign || b.foreign || a.part != "" || b.part != "" || !r.alsoNamed(a.to, b.from) || r.circuitOf(b) != r.levelOf(at) {
		return ""
	}
	if c := r.circuitOf(a); c != "engine" && c != r.levelOf(at) {
		return c
	}
	return ""
}

// levelBeside gives the oil that stands right beside the word for a level in a token's sentence:
// "LEVEL, ENGINE: on the centre stand …".
func (r *readings) levelBeside(at int) string {
	from, to := r.sentenceOf(at)
	for i := from; i < to; i++ {
		t := r.termAt(i)
		if t == nil || t.from != i || !t.has("level.check") {
			continue
		}
		n := r.mentionFrom(t.to)
		if n == len(r.mentions) || r.mentions[n].from >= to {
			break
		}
		m := &r.mentions[n]
		after := r.at(m.to)
		if m.circuit == "engine" && m.part == "" && !m.foreign && (m.from == t.to || m.from == t.to+1 && r.places[t.to].function) && (after.gap == wide || after.text == ":" || m.from == t.to && r.stands(m.to)) {
			return "engine"
		}
	}
	return ""
}

// stands reports whether it is told at a token how the machine stands: "LEVEL ENGINE on the centre
// stand".
func (r *readings) stands(at int) bool {
	t := r.termAt(at)
	if t == nil {
		return false
	}
	_, is := t.begin("stance.")
	return is
}

// stepOf gives where the step of a list begins that a token stands in; 0 for none.
func (r *readings) stepOf(at int) int {
	for n := r.places[at].piece; n > 0 && !r.pieces[n].blank; n-- {
		if !r.pieces[n].joined && bullet(r.pieces[n].tokens) > 0 {
			return r.starts[n]
		}
	}
	return 0
}

// afterOther reports whether the oil of a level's words is told by nothing in their step of a
// list, and a step before it named another oil than the one it is taken for.
func (r *readings) afterOther(at int) bool {
	from, step := r.paragraph(at), r.stepOf(at)
	circuit := r.levelOf(at)
	other := false
	for n := r.mentionFrom(at) - 1; n >= 0 && r.mentions[n].from >= from; n-- {
		switch m := &r.mentions[n]; {
		case m.foreign:
		case m.from >= step && (m.circuit != "" || m.gear):
			return false
		default:
			other = other || m.gear || m.circuit != "" && m.circuit != circuit
		}
	}
	return other
}

// onlyLevel gives the oil whose level plug is the only one of the page, where a token's
// sentence speaks of a level plug.
func (r *readings) onlyLevel(at int) (circuit string) {
	from, to := r.sentenceOf(at)
	if !r.about(from, to, "part.level") {
		return ""
	}
	for i := range r.mentions {
		if m := &r.mentions[i]; m.part == "level" && !m.foreign && m.circuit != "" {
			if circuit != "" && circuit != m.circuit {
				return ""
			}
			circuit = m.circuit
		}
	}
	return circuit
}

// dated reports whether a token's sentence says when something is due.
func (r *readings) dated(at int) bool {
	from, to := r.sentenceOf(at)
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && f.kind == string(quantity.Distance) {
			return true
		}
	}
	return false
}

// paragraph gives where the lines begin that stand around a token without a blank line
// or a heading between them.
func (r *readings) paragraph(at int) int {
	n := r.places[at].piece
	for n > 0 && !r.pieces[n].blank && !r.pieces[n].heading && !r.pieces[n].cells && r.places[r.starts[n-1]].section == r.places[at].section {
		n--
	}
	return r.starts[n]
}

// sayOnce adds a reading unless the page has said something of that before.
func (r *readings) sayOnce(what, text string, from, to int) {
	for i := range r.list {
		if r.list[i].What == what {
			return
		}
	}
	r.say(what, text, from, to)
}

// denied reports whether "not" stands before a token, with no sign between, also at the end of
// the line before.
func (r *readings) denied(i int) bool {
	for k := i - 1; k >= 0 && k >= i-3 && r.places[k].kind != sign; k-- {
		if r.senseAt(k, "not") {
			return true
		}
	}
	return false
}

// neverRead reports whether a clause says before a token how the level is not to be read: "Never check
// the level of an engine that is cold". What is not to be screwed in is another thing.
func (r *readings) neverRead(at int) bool {
	from, _ := r.clauseOf(at)
	for i := from; i < at; i++ {
		if !r.senseAt(i, "not") {
			continue
		}
		for k := i + 1; k < at && k <= i+mostLabel+1; k++ {
			switch t := r.termAt(k); {
			case t == nil:
			case t.has("put.screw"), t.has("put.push"), t.has("time.run"):
				return false
			case t.has("level.check"):
				return true
			}
		}
	}
	return false
}

// shortTime reads a wait, a run before reading the level, or a run for draining.
func (r *readings) shortTime(f *fact, from, to int, next string, level bool) {
	role, at := "", f.from
	behind := r.roleBehind(f, to)
	for i := f.from - 1; i >= from && role == "" && !behind; i-- {
		if g := r.factAt(i); g != nil && g.kind == f.kind {
			break
		}
		t := r.termAt(i)
		switch {
		case t == nil:
		case t.has("time.wait"), t.has("time.stop"):
			role, at = "wait", t.from
		case t.has("time.run"):
			role, at = "run", t.from
		}
	}
	if role != "" && r.places[at].clause != r.places[f.from].clause { // the verb of its own clause is nearer
		for i := f.to; i < to && i < f.to+6 && r.places[i].clause == r.places[f.to-1].clause; i++ {
			if t := r.termAt(i); t != nil && (t.has("time.wait") || t.has("time.run") || t.has("time.stop")) {
				role, at = "", f.from
				break
			}
		}
	}
	end, then := f.to, false
	for i := f.to; i < to && (role == "" || role == "run") && i < f.to+6; i++ {
		t := r.termAt(i)
		switch {
		case t == nil:
		case t.has("time.wait") && role == "":
			role, end = "wait", t.to
		case t.has("time.run") && role == "" && r.places[i].clause == r.places[f.to-1].clause:
			role, end = "run", t.to
		case t.has("time.stop") && role == "" && r.places[i].clause == r.places[f.to-1].clause:
			if role, end = "wait", t.to; then {
				role, end = "run", f.to // "for 3 minutes, then stop"
			}
		case t.has("when.then"), t.has("join.and"):
			then = true
		}
	}
	prefix := r.levelPrefix(f.from)
	switch {
	case role == "run" && r.oilRuns(from, at):
	case role == "run" && !r.waits(from, to) && next == "drain" && r.warmSection(f.from, from, to):
		r.sayAt("warm.time", f.text, at, f.to, f.from)
	case level && role != "":
		r.sayAt(prefix+role, f.text, at, end, f.from)
	case level && r.about(r.clauseStart(f.from), f.from, "if"): // "if none comes out after one minute"
	case level:
		r.say(prefix+"wait", f.text, f.from, f.to, doubt("manual-by-context", "text", f.text))
	case role == "run" && !r.waits(from, to) && r.warmSection(f.from, from, to) && !r.filledBefore(f.from):
		r.sayAt("warm.time", f.text, at, f.to, f.from)
	}
}

// filledBefore reports whether a sentence, or the one before it in its section, fills oil in before
// a token: what runs then has been filled.
func (r *readings) filledBefore(at int) bool {
	from, _ := r.sentenceOf(at)
	if from > 0 && r.places[from-1].section == r.places[at].section {
		from, _ = r.sentenceOf(from - 1)
	}
	return r.about(from, at, "amount.capacity") && !r.pieces[r.places[from].piece].cells
}

// waits reports whether a rest is told of between two tokens: what is left or allowed to run
// does not rest.
func (r *readings) waits(from, to int) bool {
	for i := from; i < to; i++ {
		t := r.termAt(i)
		if t == nil || t.from != i || !t.has("time.wait") {
			continue
		}
		runs := false
		for k := t.to; k <= t.to+mostToRun && k < to && r.places[k].clause == r.places[i].clause; k++ {
			if r.about(t.to, k, "time.run") {
				runs = true
				break
			}
			if q := &r.places[k]; q.kind == number || q.taken {
				break
			}
		}
		if !runs {
			return true
		}
	}
	return false
}

// mostToRun is how many tokens stand at most between "allow" and what is allowed: "allow the
// engine of the machine to run".
const mostToRun = 6

// roleBehind reports whether what a time is for is said right behind it, with no more than a small
// word between: "2 minutes at idle and 1 minute of rest".
func (r *readings) roleBehind(f *fact, to int) bool {
	i := f.to
	if i < to && r.places[i].function && !r.senseAt(i, "join.and") && !r.senseAt(i, "when.then") {
		i++
	}
	t := r.termAt(i)
	from, _ := r.clauseOf(f.from)
	return i > f.to && i < to && t != nil && (t.has("time.wait") || t.has("time.run")) && r.figureIn(from, f.from)
}

// oilRuns reports whether what runs is the oil, out of a plug that was named before in the
// sentence, and not the engine.
func (r *readings) oilRuns(from, at int) bool {
	return (r.about(from, at, "part.drain") || r.about(from, at, "part.plug")) && !r.about(at-3, at+3, "oil.engine")
}

// next tells what comes next behind a time for which the engine is run or rests, within its
// section: "drain", "level", "fill" in the same sentence, "" where it tells none of them. That
// is what the time is for.
func (r *readings) next(f *fact) string {
	s := r.sections[r.places[f.from].section]
	if r.about(s.from, s.from+s.heading, "level.check") {
		return "level"
	}
	stick := 0 // of the first sentence that names one
	for i := f.end(); i < s.to && i < f.end()+mostNext; i++ {
		if q := &r.pieces[r.places[i].piece]; i > f.end() && r.places[i].item != r.places[i-1].item && (q.cells || q.blank && bullet(q.tokens) == 0) {
			break
		}
		switch t := r.termAt(i); {
		case t == nil:
		case t.has("device.stick") && !t.has("level.check") && (stick == 0 || stick == r.places[i].sentence): // taken out before the plug is, or read
			stick = r.places[i].sentence
		case t.has("level.check"), t.has("part.level"), r.deviceIn(i, i+1):
			return "level"
		case t.has("warm.drain"), t.has("part.drain"), t.has("part.strainer"):
			return "drain"
		case t.has("amount.capacity") && r.places[i].sentence == r.places[f.from].sentence && r.termAt(i).from > f.end() && !r.putOn(i):
			return "fill"
		}
	}
	if stick > 0 {
		return "level"
	}
	return ""
}

// putOn reports whether it is the machine that is put somewhere in a token's clause: "wait 5 minutes, put
// it on its stand".
func (r *readings) putOn(at int) bool {
	from, to := r.clauseOf(at)
	for i := from; i < to; i++ {
		if r.stands(i) {
			return true
		}
	}
	return false
}

// mostNext is how many tokens are looked ahead for what is told of next.
const mostNext = 80

// warmSection reports whether a running engine is meant to warm the oil for draining.
func (r *readings) warmSection(at, from, to int) bool {
	s := r.sections[r.places[at].section]
	if _, foreign := r.headCircuit(at); foreign || r.foreignSentence(r.paragraph(at), to) {
		return false
	}
	return r.about(from, to, "warm.drain") || r.about(from, to, "state.warm") || r.about(s.from, min(s.to, to+40), "warm.drain") || r.about(s.from, min(s.to, to+40), "part.drain") || r.about(s.from, min(s.to, to+40), "part.strainer")
}

// brought reports whether it is the oil that is to come to a temperature, before it is drained:
// "bring the oil to 60 °C".
func (r *readings) brought(f *fact, from int) bool {
	return r.oilIn(from, f.from) && r.prose(f.from) && r.next(f) == "drain" && (r.senseAt(f.from-1, "range.to") || r.senseAt(f.from-1, "bound.least"))
}

// warmth reads how warm the oil is to be for draining.
func (r *readings) warmth(f *fact, from, to int) {
	if (f.low < 20 || f.high > 130) && len(f.differing()) == 0 {
		return
	}
	warm := r.about(from, to, "warm.oil") || r.about(from, to, "warm.drain") || (r.drains(from, to) || r.about(from, to, "when.change")) && (r.about(from, to, "state.warm") || r.about(from, to, "state.hot")) || r.about(from, to, "time.run") && r.warmSection(f.from, from, to) || r.brought(f, from)
	for i := from; i < to; i++ {
		if g := r.factAt(i); g != nil && g.kind == "grade" {
			return
		}
	}
	switch {
	case warm && (f.low < 20 || f.high > 130): // its sign and its twin's have changed places
		r.say("warm.target", "", f.from, f.end(), r.witnesses(f)...)
	case warm:
		doubts := r.witnesses(f)
		if r.about(max(f.from-mostLabel, from), f.from, "bound.least") && !r.about(from, to, "warm.drain") && !r.about(from, to, "when.change") && !r.drains(from, to) && !r.warmSection(f.from, from, to) && r.next(f) != "drain" { // "… before riding hard"
			doubts = append(doubts, doubt("manual-by-context", "text", f.text))
		}
		r.say("warm.target", f.text, f.from, f.end(), doubts...)
	}
}
