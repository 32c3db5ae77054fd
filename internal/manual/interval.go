package manual

import (
	"slices"
	"strings"

	"tidysump/internal/quantity"
)

// What a distance or a long time between changes is of.
const (
	regular = ""
	first   = "first"
	severe  = "severe"
)

// anyOil stands for oil of which a sentence does not say whose.
const anyOil = "oil"

// rule is what was read last of distances and times: what goes on from it takes its
// subjects.
type rule struct {
	sentence, end int // of its figure, in tokens
	kind          string
	paragraph     int
	section, item int
	subjects      []string // what is changed; none where that is another job's
	all           []string // what the sentence has named to be changed
	looked        bool     // its figure was of looking, and not of changing
	role          string
	piece         int      // the line in which it told of its subjects
	told          []string // what the paragraph has told of, up to there
}

// intervals reads distances, months and hours between changes.
func (r *readings) intervals() {
	last := rule{sentence: -1, paragraph: -1}
	long := r.longFacts()
	schedules, heads := r.schedules(long)
	defer func() { // what a page says in words goes before
		for i := range schedules {
			r.scheduled(&schedules[i])
		}
	}()
	for _, f := range long {
		if heads[f.from] || r.scheduleHead(f) {
			continue
		}
		if r.isAge(f) {
			continue
		}
		from, to := r.sentenceOf(f.from)
		if last.sentence != r.places[f.from].sentence {
			last.sentence, last.end, last.all, last.looked = r.places[f.from].sentence, from, nil, false
			n, item := r.paragraphOf(f.from), r.places[f.from].item
			if n != last.paragraph || r.places[f.from].section != last.section || item != last.item && r.tells(item, from) {
				if n != last.paragraph || r.places[f.from].section != last.section {
					last.told = nil
				}
				last.subjects, last.paragraph, last.section = nil, n, r.places[f.from].section
			}
			last.item = r.places[f.from].item
		} else if len(last.subjects) > 0 && last.kind != f.kind && r.places[f.from].gap != wide && r.onlyJoins(last.end, f.from) && !(last.role == first && r.about(last.end, f.from, "when.every")) && !(last.role == regular && r.hardBehind(f, to)) {
			last.end, last.kind = f.end(), f.kind
			for _, s := range last.subjects {
				r.interval(f, s, last.role, f.from)
			}
			if contains(last.subjects, "engine") {
				r.filterToo(f, to)
			}
			continue
		}
		begin := last.end
		again := last.kind == f.kind && begin > from
		last.end, last.kind = f.end(), f.kind
		if clause, _ := r.clauseOf(f.from); r.looks(max(begin, clause), f.from) && !r.cleaned(begin, f.from) {
			last.looked = true // "check every 6,000 km, replace every 24,000 km"
			continue
		}
		if before := r.factAt(begin - 1); begin == f.from && before != nil && before.text == f.text && r.places[f.from].gap == wide {
			continue // the next column of its row
		}
		if r.nth(begin, f.from) {
			continue // "the first change at 500 km, the second at 1500 km"
		}
		role, at := r.intervalRole(f, begin, from, to)
		subjects, ok := r.subjectsOf(f, role, begin, from, to, &last)
		if list, over := r.listBelow(f); over {
			subjects, ok = list, len(list) > 0
		}
		if ok && role == first && r.bareFirst(f.from) {
			subjects = r.ofBareFirst(f, subjects, &last)
		}
		if role == first {
			if list := r.calledBy(f); len(list) > 0 {
				subjects, ok = list, true
			}
		}
		last.subjects, last.role = subjects, role
		if again && role == first && at == f.from { // "1000, 6000, then every 12000 km"
			continue
		}
		if !ok {
			last.subjects = nil
			r.otherwise(f, from, to)
			continue
		}
		if role == first {
			f = r.firstOfList(f)
		} else if role == regular {
			if one := r.bareBefore(f, begin, at); one != nil {
				for _, s := range subjects {
					r.interval(one, s, first, one.from)
				}
			}
		}
		last.piece = r.places[f.from].piece
		for _, s := range subjects {
			r.interval(f, s, role, at)
			if !contains(last.all, s) {
				last.all = append(last.all, s)
			}
			if !contains(last.told, s) {
				last.told = append(last.told, s)
			}
		}
		if contains(subjects, "engine") {
			r.filterWith(begin, f.from, f.end())
			r.filterToo(f, to)
		}
	}
}

// hardBehind reports whether a figure's clause goes on with hard use: "once a year, every 2,500 km
// if the roads are dusty".
func (r *readings) hardBehind(f *fact, to int) bool {
	end := r.nextLong(f.end(), to)
	for i := f.end(); i < end && r.places[i].clause == r.places[f.end()-1].clause; i++ {
		if r.senseAt(i, "when.severe") {
			return r.about(max(f.from-2, 0), f.from, "when.every")
		}
	}
	return false
}

// bareFirst reports whether a line says that a figure is the first, and nothing of what: "First:
// 1,000 km".
func (r *readings) bareFirst(at int) bool {
	words := 0
	for i := r.starts[r.places[at].piece]; i < at; i++ {
		t := r.termAt(i)
		switch {
		case r.places[i].kind == sign || r.places[i].function:
		case t != nil && t.has("when.first") && (i == t.from || !r.senseful(i)): // "the first time", and no "first service"
			if i == t.from {
				words++
			}
		default:
			return false
		}
	}
	return words == 1 && !r.pieces[r.places[at].piece].joined
}

// senseful reports whether a word says something by itself.
func (r *readings) senseful(i int) bool {
	e, _ := r.words.match(r.tokens[i:i+1], 0)
	return e != nil && !slices.ContainsFunc(e.senses, func(s string) bool { return s == "known" || strings.HasPrefix(s, "number.") })
}

// ofBareFirst gives what such a line is of: what the line above it tells of, where that stands
// further out or below a label of its own, or where more than one such line follows another; else
// the page may mean all that its paragraph has told of, and it is asked.
func (r *readings) ofBareFirst(f *fact, subjects []string, last *rule) []string {
	above, n := last.subjects, r.places[f.from].piece
	if len(last.told) == 0 || len(above) == len(last.told) && slices.Equal(above, subjects) {
		return subjects
	}
	alone := len(above) == len(last.told) && !r.namesPart(r.pieceTokens(last.piece))
	if len(above) > 0 && (alone || r.pieces[n].tokens[0].col > r.pieces[last.piece].tokens[0].col+1 || r.bareFirsts(n) > 1) {
		return above
	}
	f.doubts = append(f.doubts, doubt("manual-by-context", "text", f.text))
	if len(above) == len(last.told) {
		return above
	}
	return subjects
}

// calledBy gives what is changed at a first service whose distance a row of its own gives, and to
// which others refer by its name: "Running-in check  1,000 km", "Engine oil  at the running-in
// check, then every 10,000 km".
func (r *readings) calledBy(f *fact) (list []string) {
	n := r.places[f.from].piece
	for i := r.starts[n]; i < f.from; i++ {
		if t := r.termAt(i); r.places[i].kind == word && !r.places[i].function && (t == nil || !t.has("when.first")) {
			return nil
		}
	}
	for k := max(0, n-mostList); k < len(r.pieces) && k <= n+mostList; k++ {
		from, to := r.pieceTokens(k)
		if k == n || r.places[from].section != r.places[f.from].section {
			continue
		}
		next := r.nextLong(from, to)
		for i := from; i < next; i++ {
			if t := r.termAt(i); t == nil || t.from != i || !t.has("when.first") || !r.about(t.to, next, "when.then") {
				continue
			}
			subjects, _ := r.changedBefore(from, i)
			for _, s := range subjects {
				if s == anyOil {
					s = r.usualOil()
				}
				if !contains(list, s) && !(s == "filter" && contains(list, "engine")) {
					list = append(list, s)
				}
			}
			break
		}
	}
	return list
}

// bareFirsts counts the lines of a line's paragraph that say of a figure that it is the first, and
// nothing of what, behind others.
func (r *readings) bareFirsts(n int) (count int) {
	bare := true // the line before
	for k := r.paragraphOf(r.starts[n]); k < len(r.pieces) && k <= n+mostParagraph && (k <= n || !r.pieces[k].blank); k++ {
		from, to := r.pieceTokens(k)
		was := bare
		bare = false
		for i := from; i < to && !bare; i++ {
			if f := r.factAt(i); f != nil {
				bare = r.bareFirst(i)
				break
			}
		}
		if bare && !was {
			count++
		}
	}
	return count
}

// otherwise doubts the months between changes where the sentence behind theirs has others and
// names nothing that they are of: "The chart has 24 months".
func (r *readings) otherwise(f *fact, from, to int) {
	if f.kind != string(quantity.Duration) || f.unit == "h" || from == 0 || r.places[from-1].item != r.places[from].item || r.namesPart(from, to) {
		return
	}
	if !r.about(from, to, "page.word") && !r.about(from, to, "label.page") && !r.about(from, to, "label.figure") && !r.about(from, to, "label.interval") && !r.about(from, to, "when.every") && !r.about(from, to, "when.change") {
		return // "The warranty lasts 24 months."
	}
	before, _ := r.sentenceOf(from - 1)
	for i := before; i < from; i++ {
		g := r.factAt(i)
		if g == nil || g.from != i || !g.used || g.kind != f.kind || g.low == f.low {
			continue
		}
		for n := range r.list {
			if a := &r.list[n]; a.What == "interval.months" && a.Text == g.text {
				differ(a, &Reading{Text: f.text})
			}
		}
	}
}

// isAge reports whether a time tells for how long something has been so, and not how often
// something is done: "I have had mine for eleven years".
func (r *readings) isAge(f *fact) bool {
	return f.kind == string(quantity.Duration) && f.unit != "h" && f.low == f.high && r.senseAt(f.from-1, "when.since")
}

// leastHours is how many minutes are the least between changes that are counted in hours: a
// quarter of an hour is how long an engine runs. Common practice, no source.
const leastHours = 60

// nth reports whether a further change is told of between two tokens, and not each.
func (r *readings) nth(from, to int) bool {
	return (r.about(from, to, "ordinal.2") || r.about(from, to, "ordinal.3")) && !r.about(from, to, "when.every") && !r.about(from, to, "each")
}

// longFacts gives all distances and long times in the order of the page, also those in
// words alone: "yearly".
func (r *readings) longFacts() (list []*fact) {
	for i := range r.facts {
		f := &r.facts[i]
		long := f.kind == string(quantity.Duration) && f.low > shortest || f.unit == "h" && f.low >= leastHours
		if long || f.kind == string(quantity.Distance) && f.low >= nearest {
			list = append(list, f)
		}
	}
	for n := range r.terms {
		t := &r.terms[n]
		text := ""
		switch {
		case t.has("every.year"):
			text = "12 months"
		case t.has("every.half-year"):
			text = "6 months"
		case t.has("every.month"):
			text = "1 months"
		default:
			continue
		}
		if n := r.places[t.from].piece; r.pieces[n].heading && !r.about(r.starts[n], t.to, "when.change") && !r.oilIn(r.starts[n], t.to) {
			continue // "Torques (all years)", in words that say "each year" too
		}
		if !r.anyTaken(t.from, t.to) {
			list = append(list, &fact{kind: string(quantity.Duration), text: text, unit: "months", from: t.from, to: t.to})
		}
	}
	slices.SortStableFunc(list, func(a, b *fact) int { return a.from - b.from })
	return list
}

func (r *readings) anyTaken(from, to int) bool {
	for i := from; i < to; i++ {
		if r.places[i].taken {
			return true
		}
	}
	return false
}

// mostParagraph is how many lines of a paragraph are looked back.
const mostParagraph = 60

// paragraphOf gives the line that begins the paragraph of a token.
func (r *readings) paragraphOf(at int) int {
	n := r.places[at].piece
	for k := 0; k < mostParagraph && n > 0 && !r.pieces[n].blank; k++ {
		n--
	}
	return n
}

// nextLong gives where the next distance or long time begins in a sentence.
func (r *readings) nextLong(at, to int) int {
	for i := at; i < to; i++ {
		if f := r.factAt(i); f != nil && (f.kind == string(quantity.Distance) && f.low >= nearest || f.kind == string(quantity.Duration)) {
			return i
		}
	}
	return to
}

// onlyJoins reports whether nothing but "or", "and", a comma or a stroke stands between
// two figures: they are one rule.
func (r *readings) onlyJoins(from, to int) bool {
	if to-from > 6 {
		return false
	}
	for i := from; i < to; i++ {
		t := &r.places[i]
		switch {
		case r.senseAt(i, "when.then"), r.senseAt(i, "when.severe"):
			return false
		case t.kind == sign && (t.text == "," || t.text == "/" || t.text == "(" || t.text == ")" || t.text == "-" && t.gap == glued):
		case t.function, r.senseAt(i, "join.or"), r.senseAt(i, "join.and"), r.senseAt(i, "when.every"), r.senseAt(i, "bound.least"), r.senseAt(i, "bound.most"), r.senseAt(i, "known"), r.senseAt(i, "same"):
		default:
			return false
		}
	}
	return true
}

// gradesJoin reports whether nothing but an oil's grades and standards, and what joins, stands
// between two tokens: "engine oil SAE 10W-40, API SJ, and filter".
func (r *readings) gradesJoin(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); (f == nil || !ofOil(f)) && !r.onlyJoins(i, i+1) && r.places[i].fold != "sae" {
			return false
		}
	}
	return to-from <= mostLead
}

// intervalRole says whether a figure is of the first change, of each, or of hard use, and
// where the words begin that say so.
func (r *readings) intervalRole(f *fact, begin, from, to int) (role string, at int) {
	clauseFrom, _ := r.clauseOf(f.from)
	_, clauseTo := r.clauseOf(f.end() - 1)
	next := r.nextLong(f.end(), to)
	has := func(a, b int, sense string) int {
		for i := b - 1; i >= a; i-- {
			if t := r.termAt(i); t != nil && t.has(sense) && !r.places[i].taken {
				return max(t.from, a)
			}
		}
		return -1
	}
	every := has(max(begin, clauseFrom), f.from, "when.every")
	if t := r.termAt(f.from); every < 0 && t != nil && (t.has("every.year") || t.has("every.half-year")) {
		every = f.from
	}
	if every < 0 && r.twiceTold(f) {
		every = f.from - 2
	}
	one := has(begin, f.from, "when.first")
	if one >= 0 && has(one, f.from, "when.then") >= 0 { // "1,000 km first, then 7,500 km"
		one = -1
	}
	if one < 0 && every < 0 {
		if k := has(f.end(), min(next, clauseTo), "when.first"); k >= 0 {
			one = f.from
		}
	}
	if one >= 0 && has(one, f.from, "when.then") > one { // "at 300 km when new, then every 20 hours"
		one = -1
	}
	hard := has(begin, f.from, "when.severe")
	if hard > begin && (r.at(hard-1).kind == number || r.senseAt(hard-1, "ordinal.2") || r.senseAt(hard-1, "ordinal.3")) { // "every 6 races or 15 hours"
		hard = -1
	}
	if hard > begin && r.ofGrade(hard) || hard >= 0 && has(hard, f.from, "else") >= 0 { // "…; otherwise every 3,000 km"
		hard = -1
	}
	if hard < 0 && has(from, f.from, "else") < 0 && has(from, begin, "when.severe") >= 0 && has(begin, f.from, "when.then") < 0 && r.places[begin].clause == r.places[f.from].clause {
		hard = begin
	}
	if hard < 0 {
		hard = r.shortRides(from, f.from)
	}
	again := r.againAt(f, to)
	for i := f.end(); i < again && hard < 0 && r.places[i].text != ";" && !(r.places[i].piece != r.places[f.from].piece && r.pieces[r.places[i].piece].cells) && (r.places[i].text != "(" || next == to) && (i < clauseTo || next == to && !r.senseAt(i, "when.every") && !r.senseAt(i, "when.then")); i++ {
		if r.senseAt(i, "when.severe") && i < max(next, clauseTo) {
			hard = f.from
		}
	}
	if k := f.end(); hard < 0 && (r.senseAt(k, "if") || r.at(k).text == "," && r.senseAt(k+1, "if")) && r.severeUntil(k, again) { // "every 1,500 km, if it is used for deliveries"
		hard = f.from
	}
	if hard < 0 && r.severeHeading(f.from) {
		hard = f.from
	}
	goesOn, after := false, false
	for k := f.end(); k < to; k++ {
		if g := r.factAt(k); g != nil && g.kind == f.kind && k == g.from {
			after = has(f.end(), k, "when.then") >= 0
			goesOn = after || has(f.end(), k, "when.every") >= 0
			if goesOn {
				break
			}
		}
	}
	if then := has(f.end(), to, "when.then"); every < 0 && !goesOn && then >= 0 && next == to && (has(then, to, "when.every") >= 0 || has(then, to, "each") >= 0) {
		return first, clauseFrom // "at 1,000 km, and after that each", whose end is torn off
	}
	if every < 0 && !goesOn && begin == from && r.firstOfTwo(f) {
		f.doubts = append(f.doubts, doubt("manual-by-context", "text", f.text))
		return first, f.from
	}
	switch column := r.intervalColumn(f); {
	case column != "":
		switch column {
		case "when.first":
			return first, clauseFrom
		case "when.severe":
			return severe, f.from
		}
		if hard >= 0 && hard < f.from && r.places[hard].piece == r.places[f.from].piece { // the row says so
			return severe, f.from
		}
		return regular, f.from
	case one >= 0 && (every < 0 || one > every):
		return first, one
	case hard >= 0:
		return severe, min(hard, f.from)
	case (every < 0 || after) && goesOn && has(from, f.from, "when.then") < 0:
		if begin > from {
			return first, f.from
		}
		return first, clauseFrom
	case every >= 0:
		return regular, every
	}
	if every < 0 && begin == from && r.everyBelow(f) {
		return first, f.from
	}
	if next == to && r.senseAt(to, "when.then") && to < len(r.places) && r.places[to].item == r.places[f.from].item { // "… at 1,000 km. Then every 6,000 km."
		if _, end := r.sentenceOf(to); r.about(to, end, "when.every") && r.longIn(to, end) {
			return first, clauseFrom
		}
	}
	if n := r.places[f.from].piece + 1; begin == from && every < 0 && r.starts[n-1] == f.from && r.at(f.end()).text == ":" && n < len(r.pieces) && !r.pieces[n].blank && r.words.dueEntry(r.pieces[n].tokens) {
		return first, f.from // "1,000 km: engine oil" over "every 4,000 km: engine oil"
	}
	if begin == from && r.prose(f.from) && r.everyNext(f, to) {
		return first, f.from
	}
	if r.prose(f.from) && !r.about(from, f.from, "when.then") && !r.about(from, to, "when.every") && len(f.doubts) == 0 { // "at 1,000 km": once, or each time
		f.doubts = append(f.doubts, doubt("manual-by-context", "text", f.text))
	}
	return regular, f.from
}

// everyNext reports whether the sentence behind one, or that behind it, tells of a change of oil each some
// times longer distance: "Service at 1,000 km: change the oil. Service every 5,000 km: change the oil."
func (r *readings) everyNext(f *fact, at int) bool {
	for k := 0; k < 2 && at < len(r.places) && r.places[at].section == r.places[f.from].section; k++ {
		from, to := r.sentenceOf(at)
		for i := from; i < to; i++ {
			if g := r.factAt(i); g != nil && g.from == i && g.kind == f.kind && g.unit == f.unit && g.low >= leastTimes*f.low && r.about(max(from, i-mostLabel), i, "when.every") {
				return r.oilIn(from, to) || r.about(from, to, "amount.with-filter")
			}
		}
		at = to
	}
	return false
}

// bareBefore gives the first of some numbers without a unit that stand before "and then every": "at 500,
// 2,000 and then every 3,000 km". nil for none.
func (r *readings) bareBefore(f *fact, begin, every int) *fact {
	at, joined := every, false
	for at > begin && (r.senseAt(at-1, "when.then") || r.senseAt(at-1, "join.and") || r.places[at-1].text == ",") {
		at, joined = at-1, true
	}
	v, k := value{}, at
	for joined && at > begin {
		first, next, ok := r.valueAt(at - 1)
		if n := len(first.text) - 4; ok && first.step < 0.002 && n > 0 && strings.Contains(".,", first.text[n:n+1]) { // "2,000"
			first.v, first.step, first.marked, first.text = first.v*1000, 1, false, first.text[:n]+first.text[n+1:]
		}
		if !ok || next != at || r.places[at-1].taken || first.step != 1 || first.v < leastBare || first.v > f.low {
			break
		}
		v, k = first, at-1
		for at = k; at > begin && (r.places[at-1].text == "," || r.places[at-1].text == "/" || r.senseAt(at-1, "join.and")); {
			at--
		}
		if at == k {
			break
		}
	}
	if v.text == "" || f.kind != string(quantity.Distance) || !r.places[max(k-1, 0)].function {
		return nil
	}
	g := r.amount(k, k+1, f.unit, v, v, "")
	return &g
}

// leastBare is the least that is taken for a distance in a list of which only the last has its unit: a
// smaller number counts something else. From memory.
const leastBare = 100

// shortRides gives where it is said between two tokens that rides are no longer than some distance, which
// is hard use; -1 where it is not: "if most rides are under 5 miles".
func (r *readings) shortRides(from, to int) int {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && f.bound && f.kind == string(quantity.Distance) && f.low < nearest && r.senseAt(f.from-1, "bound.most") {
			return f.from - 1
		}
	}
	return -1
}

// severeUntil reports whether hard use is told of between two tokens, before a semicolon or a word for
// "otherwise".
func (r *readings) severeUntil(from, to int) bool {
	for i := from; i < to && r.places[i].text != ";" && !r.senseAt(i, "else"); i++ {
		if r.senseAt(i, "when.severe") {
			return true
		}
	}
	return false
}

// twiceTold reports whether a figure is told twice with a small word between, which says "each":
// "de 8.000 em 8.000 km".
func (r *readings) twiceTold(f *fact) bool {
	k := f.from - 2
	return k >= 0 && r.places[k].kind == number && r.places[k].text == r.places[f.from].text && r.places[k+1].function
}

// everyBelow reports whether a figure begins a row of a list of what is due, without a word for
// each, and a row below it begins with such a word and a longer one.
func (r *readings) everyBelow(f *fact) bool {
	if r.cellBehind(f) == 0 {
		return false
	}
	here := r.places[f.from].piece
	for n := here + 1; n < len(r.pieces) && n <= here+mostLabel && !r.pieces[n].blank; n++ {
		from, to := r.pieceTokens(n)
		for i := from; i < to && i < from+mostLabel; i++ {
			if g := r.factAt(i); g != nil && g.kind == f.kind && g.low > f.low && r.about(from, i, "when.every") {
				return true
			}
		}
	}
	return false
}

// ofGrade reports whether a word is said of the grade right before it: "SAE 30 (winter)".
func (r *readings) ofGrade(at int) bool {
	for at--; at > 0 && (r.places[at].function || r.places[at].text == "("); at-- {
	}
	f := r.factAt(at)
	return f != nil && f.kind == "grade"
}

// againAt gives where the next figure of a figure's kind begins in its sentence.
func (r *readings) againAt(f *fact, to int) int {
	for i := f.end(); i < to; i++ {
		if g := r.factAt(i); g != nil && g.kind == f.kind {
			return i
		}
	}
	return to
}

// firstOfList gives the first of a list of which only the last has its unit: "1,000 / 6,000 /
// 12,000 km, then every 6,000 km".
func (r *readings) firstOfList(f *fact) *fact {
	k := f.from
	for k > 1 && (r.at(k-1).text == "/" || r.at(k-1).text == ",") && r.at(k-2).kind == number && !r.at(k-2).taken && r.at(k-1).gap != wide {
		k -= 2
	}
	v, _, ok := r.valueAt(k)
	if k == f.from || !ok {
		return f
	}
	g := r.amount(k, k+1, f.unit, v, v, "")
	return &g
}

// firstOfTwo reports whether a distance is the first of two with a stroke between them, of
// which the second is some times longer: "1,000 km / 10,000 km" are the first and each other
// change. Common practice.
func (r *readings) firstOfTwo(f *fact) bool {
	if r.at(f.end()).text != "/" {
		return false
	}
	g := r.factAt(f.end() + 1)
	if g == nil || g.kind != f.kind || g.unit != f.unit || g.low < leastTimes*f.low {
		return false
	}
	third := r.factAt(g.end() + 1)
	return r.at(g.end()).text != "/" || third != nil && third.kind != f.kind || r.senseAt(g.end()+1, "every.year")
}

// leastTimes is how many times longer later changes are at least than the first that is
// told by nothing else.
const leastTimes = 3

// subjectsOf finds what is changed after a distance or a time, and whether it is an oil's
// change at all.
func (r *readings) subjectsOf(f *fact, role string, begin, from, to int, last *rule) (list []string, ok bool) {
	next := r.nextLong(f.end(), to)
	for g := r.factAt(next); next < to && g != nil && r.onlyJoins(f.end(), next); g = r.factAt(next) { // "20 000 km or 2 years: gearbox oil"
		f = g
		next = r.nextLong(g.end(), to)
	}
	list, foreign := r.changedBefore(begin, f.from)
	if len(list) == 0 && !foreign && !r.namesPart(from, next) && r.about(begin, f.from, "both") {
		list = r.twoOils(from)
	}
	if end := r.cellBehind(f); end > 0 { // a row of a list of what is due
		if list, foreign = r.changedBehind(f.end(), end); len(list) == 0 && !r.about(f.end(), end, "when.severe") && !r.about(f.end(), end, "when.first") && !r.about(f.end(), end, "when.change") && !r.oilIn(f.end(), end) {
			return nil, false // "Every 15,000 km    belt, rollers"
		}
	}
	if len(list) == 0 && last.looked {
		list, foreign = r.changedBefore(from, f.from)
	}
	if n := r.places[f.from].piece; len(list) == 0 && !foreign && r.pieces[n].cells && r.starts[n] < from { // "Oil filter   Replace.   Every 20,000 km"
		label := r.starts[n]
		for label < from && (r.places[label].gap != wide || r.mentionFrom(r.starts[n]) == r.mentionFrom(label)) {
			label++
		}
		if list, foreign = r.changedBefore(r.starts[n], label); label < from && foreign && len(list) == 0 {
			return nil, false
		} else if label == from {
			list, foreign = nil, false
		}
	}
	goesOn := begin > from && len(list) == 0 && !foreign && !last.looked
	if at := r.strangeSubject(begin, f.from); goesOn && at >= 0 {
		if s := r.shortPart(at); s != "" {
			return []string{s}, true
		}
		return nil, false
	}
	switch {
	case goesOn && len(last.subjects) == 0, goesOn && r.newLabel(begin, f.from):
		return nil, false
	case goesOn && role == first && !r.about(begin, f.from, "when.then"): // "all of them first at 1,000 km"
		list = last.all
	case goesOn:
		list = last.subjects
	case len(list) == 0 && !foreign && !r.ofNext(f, next, to):
		list, foreign = r.changedBehind(f.end(), next)
	}
	if len(list) == 0 && (foreign || !goesOn && r.unknownLabel(from, f.from)) {
		return nil, false
	}
	changes := r.about(from, next, "when.change") || r.about(from, next, "every.1") || r.about(from, next, "amount.with-filter")
	if (r.about(from, f.from, "other.action") || r.about(f.end(), next, "other.action") || r.about(from, next, "level.check")) && !changes && !goesOn && role != first && !contains(list, "strainer") && !contains(list, "filter") {
		return nil, false
	}
	if r.comesOut(begin, next) && !changes && !r.about(from, next, "amount.change") {
		return nil, false // "every 500 miles take out the level screw and add oil until it drips"
	}
	if len(list) == 0 && !goesOn && (r.about(from, next, "amount.with-filter") || r.about(from, next, "amount.oil-only")) {
		list = []string{"engine"}
	}
	oil := r.oilIn(from, next)
	every := r.about(begin, f.from, "when.every") || r.twiceTold(f) || r.senseAt(f.from, "every.year") || r.senseAt(f.from, "every.half-year")
	if !changes && !goesOn && r.mentionFrom(from) == r.mentionFrom(f.from) && r.lookedBefore(from) {
		return nil, false
	}
	if len(list) == 0 && !oil {
		follows := len(last.subjects) > 0 && (every || role != regular)
		known := !r.stray(from, f.from) || r.about(from, f.from, "label.interval")
		if !changes && !follows && !(known && (every || role != regular)) {
			return nil, false
		}
		if follows && !changes && (role != first || contains(last.subjects, "engine")) {
			list = last.subjects
		}
	}
	if role == regular && !every && !changes && !oil && len(list) == 0 && !goesOn && !r.row(f.from) {
		return nil, false
	}
	if part := r.headPart(f.from); len(list) == 0 && role != severe && !oil && part != "" && !r.about(from, next, "amount.change") {
		list = []string{part}
	}
	if n := r.mentionFrom(from); len(list) == 1 && list[0] == anyOil && n < len(r.mentions) && r.mentions[n].from < f.from && r.mentions[n].foreign && r.begins(n) {
		return nil, false // "Chain: SAE 90 oil every 500 km"
	}
	if len(list) == 1 && list[0] == anyOil {
		if all := r.allOils(from, next); len(all) > 0 {
			list = all
		}
	}
	if len(list) == 0 || len(list) == 1 && list[0] == anyOil {
		circuit, is := r.oilSpokenOf(f.from, from, role, oil, changes)
		if !is {
			return nil, false
		}
		list = []string{circuit}
	}
	kept := list[:0:0]
	for _, s := range list {
		if s == anyOil {
			s = r.usualOil()
		}
		if (s == "filter" || s == "strainer") && (contains(list, "engine") || contains(list, anyOil)) {
			continue // with each change of the oil
		}
		if !contains(kept, s) {
			kept = append(kept, s)
		}
	}
	return kept, true
}

// twoOils gives the two oils that were named last before a token in its paragraph: "the engine oil and
// the gearbox oil … Change both". nil where there are no two.
func (r *readings) twoOils(at int) []string {
	var list []string
	for n := r.mentionFrom(at) - 1; n >= 0 && r.places[r.mentions[n].from].paragraph == r.places[at].paragraph && len(list) < 2; n-- {
		m := &r.mentions[n]
		if m.foreign {
			return nil
		}
		if s := r.changed(m); s != "" && s != anyOil && !contains(list, s) && !m.ofFilter() {
			list = append(list, s)
		}
	}
	if len(list) < 2 {
		return nil
	}
	return []string{list[1], list[0]}
}

// lookedBefore reports whether the sentence before one is a title of looking, as "Inspection of the
// level.": what is told behind it is how often that is done.
func (r *readings) lookedBefore(from int) bool {
	if from == 0 || r.places[from-1].item != r.places[from].item {
		return false
	}
	begin, _ := r.sentenceOf(from - 1)
	return from-begin <= mostRunIn && (r.about(begin, from, "level.check") || r.about(begin, from, "other.action")) && !r.about(begin, from, "when.change") && !r.figureIn(begin, from)
}

// ofNext reports whether what is named behind a figure is what the next figure is of: a sign parts
// it from the first and nothing but "every" from the second: "replace every 7,500 km, filter every
// 15,000 km".
func (r *readings) ofNext(f *fact, next, to int) bool {
	n := r.mentionFrom(f.end())
	if next >= to || n == len(r.mentions) || r.mentions[n].to > next || !r.about(r.mentions[n].to, next, "when.every") {
		return false
	}
	at := f.end()
	for at < r.mentions[n].from && (r.places[at].function || r.senseAt(at, "when.then") || r.senseAt(at, "join.and")) {
		at++
	}
	if at == f.end() && r.places[at].text != "," && r.places[at].text != ";" {
		return false
	}
	for i := r.mentions[n].to; i < next; i++ {
		if r.places[i].kind != word {
			return false
		}
	}
	return true
}

// cellBehind gives where a row ends that begins with a figure and has words in the cell behind it,
// 0 for any other.
func (r *readings) cellBehind(f *fact) int {
	from, to := r.pieceTokens(r.places[f.from].piece)
	at := f.end()
	if at >= to || r.places[at].gap != wide || r.places[at].kind != word || r.mentionFrom(from) != r.mentionFrom(f.from) || f.from-from > mostLabel {
		return 0
	}
	for i := from; i < f.from; i++ {
		if r.places[i].kind == word && !r.places[i].function && !r.senseAt(i, "when.every") {
			return 0
		}
	}
	return to
}

// allOils gives the oils of the page where a number of them is named between two tokens, and
// the page has as many: "all three oils".
func (r *readings) allOils(from, to int) (list []string) {
	count := 0
	for i := from; i+1 < to; i++ {
		if t, o := r.termAt(i), r.termAt(i+1); t != nil && o != nil && t != o && o.has("oil.any") {
			switch {
			case t.has("number.2"):
				count = 2
			case t.has("number.3"):
				count = 3
			}
		}
	}
	if count == 0 {
		return nil
	}
	for n := range r.mentions {
		m := &r.mentions[n]
		c := m.circuit
		if m.gear {
			c = r.gearOil()
		}
		if c != "" && !m.foreign && !contains(list, c) {
			list = append(list, c)
		}
	}
	if len(list) != count {
		return nil
	}
	return list
}

// strangeSubject gives the word, which nobody here knows, that is all that is named between "and"
// and "every": "the strainer every 6,000 km and the rotor every 12,000 km"; -1 for none.
func (r *readings) strangeSubject(from, to int) int {
	for i := from + 1; i+1 < to; i++ {
		if r.unknown(i) && r.senseAt(i+1, "when.every") && (r.senseAt(i-1, "join.and") || r.places[i-1].function && i > from+1 && (r.senseAt(i-2, "join.and") || r.places[i-2].text == ",")) {
			return i
		}
	}
	return -1
}

// newLabel reports whether behind a semicolon a label stands before a figure that nobody here
// knows, and nothing that goes on with what was told.
func (r *readings) newLabel(from, to int) bool {
	begin := -1
	for i := from; i < to; i++ {
		if r.places[i].text == ";" {
			begin = i + 1
		}
	}
	return begin >= 0 && begin < to && r.unknown(begin) && !r.about(begin, to, "when.severe") && !r.about(begin, to, "when.first") && !r.about(begin, to, "when.then") && !r.about(begin, to, "when.change")
}

// mostList is how many lines below an interval are looked at for what is done at it.
const mostList = 20

// listBelow gives what is changed at an interval that stands in a line by itself, over a list
// of what is done: "Every 6,000 km" and below it "Renew the engine oil". over reports that it
// is such a line.
func (r *readings) listBelow(f *fact) (list []string, over bool) {
	n := r.places[f.from].piece
	from, to := r.pieceTokens(n)
	if m := r.mentionFrom(from); r.pieces[n].joined || m < len(r.mentions) && r.mentions[m].from < to || r.about(from, to, "when.change") || r.twoLong(f, from, to) || r.longBefore(f) {
		return nil, false
	}
	section := r.places[from].section
	for k := n + 1; k < len(r.pieces) && k <= n+mostList; k++ {
		a, b := r.pieceTokens(k)
		if r.places[a].section != section || r.pieces[k].blank && !r.pieces[n].heading || r.longIn(a, b) {
			break
		}
		if k == n+1 && (r.pieces[k].joined || r.pieces[k].cells) {
			return nil, false
		}
		changes := r.about(a, b, "when.change") || r.about(a, b, "amount.with-filter") || r.about(a, b, "warm.drain") || r.oilBegins(a, b) && r.about(a, b, "amount.change")
		if !changes && !r.about(a, b, "other.action") {
			continue
		}
		over = over || k == n+1
		if !changes {
			continue
		}
		for m := r.mentionFrom(a); m < len(r.mentions) && r.mentions[m].from < b; m++ {
			s := r.changed(&r.mentions[m])
			if s == anyOil {
				s = r.usualOil()
			}
			if s != "" && !contains(list, s) && !(s == "filter" && contains(list, "engine")) {
				list = append(list, s)
			}
		}
	}
	return list, over
}

// twoLong reports whether another figure of a figure's kind stands in its line: "first change at
// 1,000 km, then every 6,000 km" is over no list.
func (r *readings) twoLong(f *fact, from, to int) bool {
	for i := from; i < to; i++ {
		if g := r.factAt(i); g != nil && g.kind == f.kind && (i < f.from || i >= f.end()) {
			return true
		}
	}
	return false
}

// longBefore reports whether a sentence of a figure's line, before its own, has a distance or a long
// time too: then the line is told of and heads nothing.
func (r *readings) longBefore(f *fact) bool {
	from, _ := r.sentenceOf(f.from)
	return r.longIn(r.starts[r.places[f.from].piece], from)
}

// oilBegins reports whether what begins at a token is the name of an oil alone: "GEARBOX. Drain
// and refill".
func (r *readings) oilBegins(from, to int) bool {
	n := r.mentionFrom(from)
	return n < len(r.mentions) && r.mentions[n].from < to && r.mentions[n].circuit != "" && r.mentions[n].part == "" && r.begins(n)
}

// longIn reports whether a distance or a long time stands between two tokens.
func (r *readings) longIn(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && (f.kind == string(quantity.Distance) && f.low >= nearest || f.kind == string(quantity.Duration) && f.low > shortest) {
			return true
		}
	}
	return false
}

// shortest is how many minutes a time has at least that is one between changes: five days.
const shortest = 24 * 60 * 5

// nearest is how many kilometres a distance has at least that is one between changes: what is less is
// how long a ride is, "if most trips are shorter than 8 km". Common practice, no source.
const nearest = 50

// tells reports whether an item has named, before a token, what it tells of.
func (r *readings) tells(item, to int) bool {
	for n := r.mentionFrom(to) - 1; n >= 0 && r.places[r.mentions[n].from].item == item; n-- {
		if m := &r.mentions[n]; m.foreign || r.changed(m) != "" {
			return true
		}
	}
	return false
}

// looks reports whether something is looked at between two tokens, and not changed.
func (r *readings) looks(from, to int) bool {
	return (r.about(from, to, "other.action") || r.about(from, to, "level.check") || r.about(from, to, "top-up")) && !r.about(from, to, "when.change") && !r.about(from, to, "when.first") && !r.about(from, to, "amount.with-filter")
}

// cleaned reports whether what is named before a figure is a filter or a strainer: it is
// cleaned at its interval.
func (r *readings) cleaned(from, to int) bool {
	list, _ := r.changedBefore(from, to)
	return contains(list, "filter") || contains(list, "strainer") || r.headPart(to) != ""
}

// unknownLabel reports whether a sentence begins with a label that nobody here knows:
// "Front hub: repack every 5,000 miles".
func (r *readings) unknownLabel(from, to int) bool {
	for i := from; i < to; i++ {
		if r.places[i].text != ":" {
			continue
		}
		if r.oilIn(i, to) || r.about(i, to, "amount.with-filter") || r.about(i, to, "amount.oil-only") {
			return false
		}
		return r.stray(from, i) && !r.oilIn(from, i) && !r.about(from, i, "when.change") && !r.about(from, i, "when.every") && !r.about(from, i, "when.first") && !r.about(from, i, "when.severe") && !r.about(from, i, "label.interval")
	}
	return false
}

// changedBefore gives what is named before a figure to be changed: the nearest, and what
// is joined to it by "and" or a comma.
func (r *readings) changedBefore(from, to int) (list []string, foreign bool) {
	next := to
	for n := r.mentionFrom(to) - 1; n >= 0 && r.mentions[n].from >= from; n-- {
		m := &r.mentions[n]
		if next != to && !r.onlyJoins(m.to, next) && !r.gradesJoin(m.to, next) {
			break
		}
		if s := r.changed(m); s != "" {
			list = append([]string{s}, list...)
		} else {
			foreign = foreign || m.foreign
		}
		if s := r.changed(m); s != "" || m.foreign || next != to {
			next = m.from
		}
	}
	return list, foreign
}

// changedBehind gives what is named behind a figure to be changed, up to the next one.
func (r *readings) changedBehind(from, to int) (list []string, foreign bool) {
	listed := r.at(from).text == ":" || r.at(from+1).text == ":" // "every 20 000 km: gearbox oil; final drive oil"
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		m := &r.mentions[n]
		for i := from; i < m.from && !listed; i++ {
			if r.places[i].text == ";" {
				return list, foreign
			}
		}
		if s := r.changed(m); m.ofFilter() && r.eachTime(m.to) {
			continue // "every 6 hours, filter every second time"
		} else if s != "" {
			list = append(list, s)
		} else if m.foreign {
			foreign = true
		}
		if len(list) == 0 && foreign {
			return nil, true
		}
	}
	return list, foreign
}

// headPart gives the filter or the strainer where that alone is what a heading names, right
// above a sentence.
func (r *readings) headPart(at int) (part string) {
	s := r.sections[r.places[at].section]
	begin, end := s.from, s.from+s.heading
	from, _ := r.sentenceOf(at)
	if k := r.places[from].piece; from != end && k > 0 && r.starts[k] == from { // a line that is a heading by what it says
		begin, end = r.pieceTokens(k - 1)
		if end-begin > mostPhrase || r.factIn(begin, end) {
			return ""
		}
	}
	if from != end {
		return ""
	}
	for n := r.mentionFrom(begin); n < len(r.mentions) && r.mentions[n].from < end; n++ {
		m := &r.mentions[n]
		if m.part != "filter" && m.part != "strainer" || m.foreign {
			return ""
		}
		part = m.part
	}
	return part
}

// oilSpokenOf says whose oil a sentence means that names none: that of its heading, of
// what was spoken of before it in its paragraph, else the engine's.
func (r *readings) oilSpokenOf(at, from int, role string, oil, changes bool) (circuit string, ok bool) {
	switch c, other, named := r.circuitAt(at); {
	case other && named && r.governedBeyond(at):
		return "", false
	case named && !other && c != "" && (role != first || oil || changes || r.tells(r.places[at].item, from)):
		return c, true
	}
	head, foreign := r.headCircuit(at)
	switch {
	case foreign && !oil:
		return "", false
	case head != "":
		return head, true
	}
	paragraph := r.paragraphOf(at)
	own := false                                                                     // oil is named since
	labelled := r.about(from, at, "amount.change") && r.entry(r.places[at].item, at) // "Oil change: …"
	for n := r.mentionFrom(from) - 1; n >= 0; n-- {
		m := &r.mentions[n]
		if r.places[m.from].piece < paragraph || r.places[m.from].section != r.places[at].section || r.pieces[r.places[m.from].piece].cells {
			break
		}
		switch {
		case m.foreign && labelled && r.places[m.from].item != r.places[at].item:
		case m.foreign && (own || r.gradeIn(m.to, from)): // "SAE 10W-40" is nearer
			return r.usualOil(), true
		case m.foreign && (!oil && !changes || r.fluid(m)):
			return "", false
		case m.foreign:
		case role == first && !oil:
			return r.usualOil(), true
		case m.gear:
			return r.gearOil(), true
		case m.circuit != "":
			return m.circuit, true
		case m.oil:
			own = true
		}
	}
	return r.usualOil(), true
}

// gradeIn reports whether a grade, a mark or a category stands between two tokens.
func (r *readings) gradeIn(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && ofOil(f) {
			return true
		}
	}
	return false
}

// scheduleHead reports whether a figure stands in the head of a schedule: a line of three
// distances or more, of which none is anything's.
func (r *readings) scheduleHead(f *fact) bool {
	from, to := r.pieceTokens(r.places[f.from].piece)
	cells := 0
	for i := from; i < to; i++ {
		if g := r.factAt(i); g != nil && g.from == i && g.kind == f.kind && (r.places[i].gap == wide || i == from) {
			cells++
		}
	}
	n := r.mentionFrom(from) // a row that begins with what is changed is none
	return cells >= 3 && !(n < len(r.mentions) && r.mentions[n].from < f.from && (r.mentions[n].foreign || r.changed(&r.mentions[n]) != ""))
}

// intervalColumn gives the sense of the column that a figure in a table stands in, where
// the table's head parts the first change or hard use from the others.
func (r *readings) intervalColumn(f *fact) string {
	t := &r.places[f.from]
	if !r.pieces[t.piece].cells {
		return ""
	}
	for n := t.piece - 1; n >= 0 && n > t.piece-mostParagraph; n-- {
		from, to := r.pieceTokens(n)
		if r.places[from].section != t.section && !r.pieces[n+1].heading {
			return ""
		}
		if !r.pieces[n].cells || r.headOf(from, to, "when.first") == nil && r.headOf(from, to, "when.severe") == nil {
			continue
		}
		if r.anyTaken(from, to) || r.numbered(from, to) {
			continue // a row
		}
		cell := f.from
		for cell > 0 && r.places[cell].gap != wide && r.places[cell-1].piece == t.piece {
			cell--
		}
		if cell == r.starts[t.piece] {
			return ""
		}
		over := r.cellsIn(n)
		second := over[min(1, len(over)-1)]
		labelled := !r.about(from, second, "when.first") && !r.about(from, second, "when.severe") && !r.about(from, second, "when.every") && !r.about(from, second, "when.then")
		if nth := r.nthOver(f.from, n, labelled); nth >= 0 {
			head := &r.places[over[nth]]
			return r.columnSense(from, to, head.col, head.col)
		}
		return r.columnSense(from, to, r.places[cell].col, r.places[f.end()-1].end)
	}
	return ""
}

// numbered reports whether a number stands between two tokens, as in the names of models.
func (r *readings) numbered(from, to int) bool {
	for i := from; i < to; i++ {
		if r.places[i].kind == number && r.places[i].term < 0 { // "1.ª vez"
			return true
		}
	}
	return false
}

// columnSense gives what the cell of a head says that stands nearest over a figure.
func (r *readings) columnSense(from, to, col, end int) (sense string) {
	best := 1 << 20
	for i := from; i < to; {
		last := i + 1
		for last < to && r.places[last].gap != wide {
			last++
		}
		head := &r.places[i]
		d := min(abs(head.col-col), abs(head.col+r.places[last-1].end-col-end)/2)
		if d < best {
			best, sense = d, "when.every"
			for k := i; k < last; k++ {
				for _, s := range [...]string{"when.first", "when.severe"} {
					if r.senseAt(k, s) {
						sense = s
					}
				}
			}
		}
		i = last
	}
	return sense
}

// headOf gives the term of a sense that stands between two tokens, nil where the line has
// one cell only.
func (r *readings) headOf(from, to int, sense string) (found *term) {
	cells := 1
	for i := from; i < to; i++ {
		if i > from && r.places[i].gap == wide {
			cells++
		}
		if found == nil && r.senseAt(i, sense) {
			found = r.termAt(i)
		}
	}
	if cells < 2 {
		return nil
	}
	return found
}

// row reports whether a token stands in a row of a table or behind a label.
func (r *readings) row(at int) bool {
	from, _ := r.sentenceOf(at)
	for i := from; i < at; i++ {
		if r.places[i].text == ":" && !(i == from+1 && len(r.places[from].text) == 1) || r.places[i+1].gap == wide { // "A:" answers
			return true
		}
	}
	return false
}

func (r *readings) severeHeading(at int) bool {
	s := r.sections[r.places[at].section]
	for i := s.from; i < s.from+s.heading; i++ {
		if r.places[i].kind == number {
			break // a model's name: "701 Enduro"
		}
		if r.senseAt(i, "when.severe") {
			return true
		}
	}
	return false
}

// changed gives what is changed of a mention: an oil, the filter, the strainer.
func (r *readings) changed(m *mention) string {
	switch {
	case m.foreign:
		return ""
	case m.part == "filter" || m.part == "strainer":
		return m.part
	case m.part != "":
		return ""
	case m.gear:
		return r.gearOil()
	case m.circuit == "" && r.about(m.from, m.to, "oil.any"):
		return anyOil
	}
	return m.circuit
}

// interval adds the reading of a distance or a time.
func (r *readings) interval(f *fact, subject, role string, at int) {
	if what := intervalOf(f, subject, role); what != "" {
		f.used = true
		r.sayAt(what, f.text, r.ruleStart(f, min(at, f.from)), r.ruleEnd(f), f.from, r.witnesses(f)...)
	}
}

// intervalOf names a distance or a time in the what-list; "" where a card has no room for it.
func intervalOf(f *fact, subject, role string) string {
	what := "interval."
	unit := ""
	switch {
	case f.unit == "h":
		unit = "hours"
	case f.kind == string(quantity.Duration):
		unit = "months"
	}
	switch {
	case subject == "engine":
		what += role
		switch {
		case unit != "" && role != "":
			what += "-" + unit
		case unit != "":
			what += unit
		case role == "":
			what += "distance"
		}
	case role == severe || unit != "" && role != regular:
		return ""
	case unit != "":
		what += subject + "-" + unit
	default:
		what += subject
		if role != "" {
			what += "-" + role
		}
	}
	return what
}

// mostLead is how many tokens of a clause are quoted before a distance or a time.
const mostLead = 10

// ruleStart gives where the words begin that a figure's rule is quoted with: those of its
// clause, where they are few, with the label before them; in a table its row.
func (r *readings) ruleStart(f *fact, at int) int {
	if n := r.places[f.from].piece; r.pieces[n].cells {
		if from, _ := r.pieceTokens(n); r.places[f.from].to-r.places[from].from < mostQuote/2 {
			for i := from; i < f.from; i++ {
				if r.places[i].text == ";" {
					from = i + 1 // what stands before is another rule
				}
			}
			return min(at, from)
		}
	}
	clause := r.places[f.from].clause
	for i := f.from - 1; i >= 0 && i >= f.from-mostLead; i-- {
		t := &r.places[i]
		if g := r.factAt(i); g != nil && g.kind != f.kind && (g.kind == string(quantity.Distance) || g.kind == string(quantity.Duration)) && r.onlyJoins(g.end(), f.from) && !r.about(g.end(), f.from, "when.every") {
			at, i = min(at, g.from), g.from // "at 1,000 km (600 miles, 2 months)"
			continue
		}
		switch {
		case i == f.from-2 && t.kind == number && r.sameBefore(f, i) >= 0: // "de 10.000 em 10.000 km"
			i = r.sameBefore(f, i)
			at = max(i-1, 0)
		case t.taken || t.kind == number:
			return at
		case t.clause != clause && t.text == ":":
			clause = t.clause
		case t.clause != clause:
			return min(at, i+1)
		case r.places[i+1].gap == wide || t.piece != r.places[i+1].piece && !r.pieces[r.places[i+1].piece].joined:
			return min(at, i+1)
		}
	}
	return at
}

// sameBefore gives where a number begins that ends with a token and is that of a figure; -1
// for none.
func (r *readings) sameBefore(f *fact, last int) int {
	for i := max(last-1, 0); i <= last; i++ {
		if v, next, ok := r.figureAt(i); ok && next == last+1 {
			if w, _, is := r.figureAt(f.from); is && w.text == v.text {
				return i
			}
		}
	}
	return -1
}

// ruleEnd gives the end of a figure, with the one that is joined to it: "1,000 km or one
// month".
func (r *readings) ruleEnd(f *fact) int {
	_, to := r.sentenceOf(f.from)
	next := r.nextLong(f.end(), to)
	if g := r.factAt(next); next < to && g != nil && g.kind != f.kind && r.places[next].gap != wide && r.onlyJoins(f.end(), next) && !r.about(f.end(), next, "when.every") {
		return g.end()
	}
	for i := f.end(); i < min(next, f.end()+mostRest); i++ {
		if t := r.termAt(i); t != nil && (t.has("every.year") || t.has("every.half-year")) && f.unit != "months" && r.places[i].gap != wide && r.onlyJoins(f.end(), t.from) { // "6,000 km or yearly"
			return t.to
		}
	}
	if n := r.places[f.from].piece; r.pieces[n].cells && !r.pieces[n].joined { // the rest of its cell
		end := f.end()
		for end < len(r.places) && r.places[end].piece == n && r.places[end].gap != wide && r.places[end].text != ";" {
			end++
		}
		return end
	}
	for i := f.end(); i < min(next, f.end()+mostRest) && r.places[i].clause == r.places[f.end()-1].clause; i++ {
		if r.senseAt(i, "when.first") { // "1,000 km for the first time"
			return r.termAt(i).to
		}
	}
	return f.end()
}

// volumeBeside reports whether a term says of an amount what it is.
func (r *readings) volumeBeside(t *term) bool { return r.volumeIn(r.clauseOf(t.from)) }

// volumeIn reports whether a volume stands between two tokens.
func (r *readings) volumeIn(from, to int) bool {
	for i := from; i < to; i++ {
		if f := r.factAt(i); f != nil && f.kind == string(quantity.Volume) {
			return true
		}
	}
	return false
}

// eachTime reports whether it is said right behind a token with which change of the oil a
// part is changed.
func (r *readings) eachTime(at int) bool {
	for i := at; i < len(r.places) && i < at+mostPhrase; i++ {
		if t := r.termAt(i); t != nil && r.places[i].clause == r.places[at-1].clause {
			if n, is := t.begin("every."); is && len(n) == 1 {
				return true
			}
		}
	}
	return false
}

// filterWith reads that the filter is changed with each oil change, where it is named
// with the oil before a figure.
// filterToo reads that the filter is changed too where that stands behind the figure:
// "every 6,000 km, with the filter".
func (r *readings) filterToo(f *fact, to int) {
	next := r.nextLong(f.end(), to)
	for i := f.end(); i < next; i++ {
		t := r.termAt(i)
		switch {
		case t == nil:
		case t.has("amount.with-filter") && r.eachTime(t.to): // "with the filter at every second change"
			return
		case t.has("amount.with-filter"):
			r.say("filter.every", "1", t.from, t.to)
			return
		case t.has("when.severe"), t.has("part.filter"), t.has("part.strainer"):
			return
		}
	}
}

func (r *readings) filterWith(from, to, end int) {
	begin := -1
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		m := &r.mentions[n]
		if s := r.changed(m); s == "engine" || s == anyOil {
			begin = m.from
		} else if (s == "filter" || s == "strainer") && begin >= 0 {
			r.sayAt(s+".every", "1", begin, end, m.from)
		}
	}
	for i := from; i < to; i++ {
		if t := r.termAt(i); t != nil && t.has("amount.with-filter") && !r.volumeBeside(t) && !r.eachTime(t.to) {
			if begin < 0 || begin > t.from {
				begin = t.from
			}
			r.say("filter.every", "1", begin, t.to)
			return
		}
	}
}
