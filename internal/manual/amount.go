package manual

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// fact is a figure or a word of the page that may answer something, before it is known
// what.
type fact struct {
	kind     string // a quantity.Kind, or grade, mark, service, thread, years
	text     string // as it is answered
	from, to int    // tokens
	low      float64
	high     float64 // in the base unit
	unit     string
	half     float64 // how far rounding may have moved it, in the base unit
	twins    []fact  // the same in other units
	bound    bool    // a most or a least
	headed   bool    // its unit stands in a head
	doubts   []finding.Finding
	used     bool
	open     bool // its word means two things
}

// value is a number as it stands in the page.
type value struct {
	v        float64
	text     string  // plain: a point, no groups
	step     float64 // what one more of the last digit is worth
	marked   bool    // its only mark may group thousands
	fraction bool
}

// valueAt reads a number, in figures or in words, and gives where it ends.
func (p *page) valueAt(i int) (v value, next int, ok bool) {
	t := p.at(i)
	if t.taken || i >= len(p.places) {
		return v, i, false
	}
	if t.kind == number {
		return p.figureAt(i)
	}
	if term := p.termAt(i); term != nil && term.from == i {
		if name, is := term.begin("number."); is {
			if text := numberWords[name]; text != "" {
				name = text
			}
			n, err := strconv.ParseFloat(name, 64)
			if err != nil {
				top, bottom, _ := strings.Cut(name[strings.LastIndex(name, " ")+1:], "/")
				a, _ := strconv.ParseFloat(top, 64)
				b, _ := strconv.ParseFloat(bottom, 64)
				n = a / b
				if whole, _, has := strings.Cut(name, " "); has {
					w, _ := strconv.ParseFloat(whole, 64)
					n += w
				}
			}
			v = value{v: n, text: name, step: 1, fraction: err != nil}
			if part, end, is := p.andPart(term.to); is && !v.fraction { // "four and a half"
				return value{v: n + part.v, text: name + " " + part.text, step: 1, fraction: true}, end, true
			}
			return v, term.to, true
		}
	}
	return v, i, false
}

// andPart reads "and a half", or another part of one in words, that goes on with a number.
func (p *page) andPart(i int) (part value, end int, ok bool) {
	if !p.senseAt(i, "join.and") {
		return part, i, false
	}
	at := p.termAt(i).to
	if t := p.termAt(at); t == nil || t.from != at || p.places[at].kind == number {
		return part, i, false
	}
	part, end, ok = p.valueAt(at)
	return part, end, ok && part.fraction && part.v < 1
}

// numberWords are the senses of numbers that are none by themselves.
var numberWords = map[string]string{"half": "1/2", "quarter": "1/4", "three-quarters": "3/4", "two-thirds": "2/3", "one-third": "1/3",
	"one-and-a-half": "1 1/2", "two-and-a-half": "2 1/2"}

func (p *page) figureAt(i int) (v value, next int, ok bool) {
	text := strings.ReplaceAll(p.places[i].text, "'", "")
	next = i + 1
	// Blanks between groups of three.
	for next < len(p.places) && len(text) <= 3 || next < len(p.places) && next > i+1 {
		t := &p.places[next]
		if t.kind != number || len(t.text) != 3 || t.gap != blank || strings.ContainsAny(text+t.text, ".,") || text == "0" {
			break
		}
		text += t.text
		next++
	}
	marks := strings.Count(text, ".") + strings.Count(text, ",")
	if marks > 1 { // all of one kind, with groups of three
		first := text[strings.IndexAny(text, ".,") : strings.IndexAny(text, ".,")+1]
		for n, g := range strings.Split(text, first) {
			if n > 0 && len(g) != 3 || strings.ContainsAny(g, ".,") {
				return v, i, false
			}
		}
		text = strings.ReplaceAll(text, first, "")
		marks = 0
	}
	v.text = strings.Replace(text, ",", ".", 1)
	n, err := strconv.ParseFloat(v.text, 64)
	if err != nil || len(text) > 12 {
		return v, i, false
	}
	v.v, v.step = n, 1
	if at := strings.IndexByte(v.text, '.'); at >= 0 {
		for range v.text[at+1:] {
			v.step /= 10
		}
		v.marked = len(v.text)-at == 4 && at <= 3 && v.text[0] != '0'
	}
	// Fractions: "1/2", "1 1/2".
	if marks == 0 && next == i+1 {
		if a, b, end, is := p.fractionAt(i); is {
			return value{v: a / b, text: p.places[i].text + "/" + p.places[end-1].text, step: 1, fraction: true}, end, true
		}
		if next < len(p.places) && p.places[next].kind == number && p.places[next].gap == blank {
			if a, b, end, is := p.fractionAt(next); is && a < b {
				return value{v: n + a/b, text: text + " " + p.places[next].text + "/" + p.places[end-1].text, step: 1, fraction: true}, end, true
			}
		}
	}
	return v, next, true
}

// fractionAt reads a fraction of whole numbers of a few digits.
func (p *page) fractionAt(i int) (top, bottom float64, end int, ok bool) {
	if i+2 >= len(p.places) || p.places[i+1].text != "/" || p.places[i+2].kind != number || p.places[i+1].gap != glued || p.places[i+2].gap != glued {
		return 0, 0, i, false
	}
	a, errA := strconv.ParseUint(p.places[i].text, 10, 16)
	b, errB := strconv.ParseUint(p.places[i+2].text, 10, 16)
	if errA != nil || errB != nil || b < 2 || b > 64 || a >= 100 || a >= b && b < 8 {
		return 0, 0, i, false
	}
	return float64(a), float64(b), i + 3, true
}

// unitFrom reads a unit, in symbols or in words.
func (p *page) unitFrom(i int) (id string, next int) {
	if i >= len(p.places) || p.places[i].taken {
		return "", i
	}
	id, n := unitAt(p.tokens, i)
	if t := p.termAt(i); t != nil && t.from == i && t.to-i >= n {
		_, numbered := t.begin("number.") // "demi-tour" after a number is another one
		if u, is := t.begin("unit."); is && !numbered {
			id, n = u, t.to-i
		}
	}
	if n == 0 || p.places[i].gap == wide {
		return "", i
	}
	return id, i + n
}

// unitOfNumber reads the unit of a number that was read at a token and ends before another:
// behind it, or in the same word ("Vierteldrehung").
func (p *page) unitOfNumber(i, at int) (id string, next int) {
	if t := p.termAt(i); t != nil && t.to == at {
		if u, is := t.begin("unit."); is {
			return u, at
		}
	}
	if id, next = p.unitFrom(at); id == "" && at+1 < len(p.places) && p.places[at].text == "-" && p.places[at].gap == glued {
		if t := &p.places[at+1]; t.kind == word && t.gap == glued && len(t.fold) > 1 { // "at 6,000-km intervals"
			if id, next = p.unitFrom(at + 1); id == "" {
				next = at
			}
		}
	}
	return id, next
}

// between reads what stands between the ends of a range or before a tolerance.
func (p *page) between(i int) (mark string, next int) {
	if i >= len(p.places) {
		return "", i
	}
	t := &p.places[i]
	switch {
	case t.text == "-" || t.text == "~" || t.text == "÷":
		if t.gap == wide {
			return "", i
		}
		return "-", i + 1
	case t.text == "±":
		return "±", i + 1
	case t.text == "+" && i+2 < len(p.places) && p.places[i+1].text == "/" && p.places[i+2].text == "-":
		return "±", i + 3
	case t.text == "." && i+2 < len(p.places) && p.places[i+1].text == "." && p.places[i+2].text == ".":
		return "-", i + 3
	case p.senseAt(i, "range.to"):
		return "-", p.termAt(i).to
	}
	return "", i
}

// amountAt reads an amount with its unit: a number, a range, a tolerance.
func (p *page) amountAt(i int) (f fact, ok bool) {
	first, at, ok := p.valueAt(i)
	if !ok {
		return f, false
	}
	if i > 0 && p.places[i].gap == glued && p.places[i-1].kind == word { // the 12 of M12
		before := &p.places[i-1]
		if len(before.fold) < 2 || !before.function {
			return f, false
		}
		before.repaired = true // "at300 km"
	}
	id, end := p.unitOfNumber(i, at)
	if id == "" && first.fraction && p.places[min(at, len(p.places)-1)].function && p.senseAt(at+1, "number.1") { // "a quarter of a pint"
		id, end = p.unitFrom(p.termAt(at + 1).to)
	}
	from := at
	if id != "" {
		from = end
	}
	mark, behind := p.between(from)
	if mark == "" && p.senseAt(from, "join.or") { // "two or three minutes"
		if second, _, is := p.valueAt(p.termAt(from).to); is && second.v == first.v+1 && first.step == 1 && second.step == 1 {
			mark, behind = "-", p.termAt(from).to
		}
	}
	if mark == "" && i > 0 && p.senseAt(i-1, "range.between") && p.senseAt(from, "join.and") {
		mark, behind = "-", p.termAt(from).to
	}
	if mark != "" && behind < len(p.places) && !(id == "" && p.places[i].kind == word && p.places[behind].kind == number) { // "tighten both to 20 N·m"
		if second, last, is := p.valueAt(behind); is {
			if unit, to := p.unitOfNumber(behind, last); unit != "" && (id == "" || sameKind(id, unit)) && (mark == "±" || second.in(unit) >= first.in(unit) || id != "" && id != unit) {
				return p.amount(i, to, unit, first, second, mark), true
			}
		}
	}
	if id == "" {
		unit, from := p.unitBefore(i)
		if unit == "" {
			return f, false
		}
		return p.amount(from, end, unit, first, first, ""), true
	}
	if n := p.halfMore(end, first); n > 0 {
		first.v, first.text = first.v+0.5, first.text+".5"
		end = n
	}
	return p.amount(i, end, id, first, first, ""), true
}

// halfMore reads "and a half" behind a whole number with its unit, and gives where it
// ends; 0 for none.
func (p *page) halfMore(i int, v value) int {
	if !p.senseAt(i, "join.and") || v.step != 1 || v.fraction {
		return 0
	}
	at := p.termAt(i).to
	if p.senseAt(at, "number.half") && p.termAt(at).from == at {
		return p.termAt(at).to
	}
	return 0
}

// unitBefore reads a unit in words that stands before its number: "litri 2,5".
func (p *page) unitBefore(i int) (id string, from int) {
	if i < 1 || p.places[i].gap != blank || p.places[i-1].piece != p.places[i].piece {
		return "", i
	}
	id, from = "", i-1
	if t := p.termAt(i - 1); t != nil && t.to == i {
		if u, is := t.begin("unit."); is {
			id, from = u, t.from
		}
	}
	for n := 1; n <= 3 && n <= i && id == ""; n += 2 { // "Nm", "N·m"
		if u, size := unitAt(p.tokens[:i], i-n); size == n {
			id, from = u, i-n
		}
	}
	if id == "" || from > 0 && (p.places[from-1].kind == number || p.places[from-1].taken && p.places[from-1].sentence == p.places[i].sentence && p.places[from].gap != wide && p.places[from-1].text != ")") || p.places[from].taken {
		return "", i
	}
	switch unit, _ := quantity.Find(id); unit.Kind {
	case quantity.Volume, quantity.Torque, quantity.Distance:
		return id, from
	case quantity.Angle:
		if _, _, _, part := p.fractionAt(i); part { // "turn 2/3"
			return id, from
		}
	}
	return "", i
}

// in gives a number as it counts before a unit of which there are thousands: "1,200" is no 1.2 km.
func (v *value) in(unit string) float64 {
	if v.marked && counted(unit) {
		return v.v * 1000
	}
	return v.v
}

func sameKind(a, b string) bool {
	u, _ := quantity.Find(a)
	v, _ := quantity.Find(b)
	return u.Kind == v.Kind
}

// counted are the units of which there are thousands.
func counted(id string) bool { return id == "km" || id == "mi" || id == "mL" }

// british reports whether a page's loose units are those of Britain: it names them as
// imperial somewhere, and no American ones.
func (p *page) british() bool {
	if p.units == "" {
		p.units = "open"
		imperial, american, quart := false, false, false
		for i := range p.places {
			switch t := &p.places[i]; {
			case t.fold == "imp" || t.fold == "imperial":
				imperial = true
			case t.text == "US" || t.text == "U" && p.at(i+1).text == "." && p.at(i+2).text == "S":
				american = true
			}
			quart = quart || strings.HasPrefix(p.places[i].fold, "quart") && !p.senseAt(i, "number.quarter") || p.places[i].fold == "qt" || p.places[i].fold == "qts"
		}
		switch {
		case imperial && !american:
			p.units = "imp "
		case american || quart: // Britain measures its engines' oil in pints
			p.units = "US "
		}
	}
	return p.units == "imp "
}

// overUnit says whether the head over a cell names American or imperial units: "US", "imp",
// "" for neither.
func (p *page) overUnit(at int) string {
	t := &p.places[at]
	if t.gap != wide {
		return ""
	}
	for n := t.piece - 1; n >= 0 && n > t.piece-mostBackRows; n-- {
		from, to := p.pieceTokens(n)
		found, apart := "", 14
		for i := from; i < to; i++ {
			unit := ""
			switch q := &p.places[i]; {
			case q.fold == "imp" || q.fold == "imperial" || q.text == "UK":
				unit = "imp"
			case q.text == "US" || q.text == "USA" || q.text == "U" && p.at(i+2).text == "S":
				unit = "US"
			}
			if d := abs(p.places[i].col - t.col); unit != "" && d < apart && !p.places[i].taken {
				found, apart = unit, d
			}
		}
		if found != "" {
			return found
		}
	}
	return ""
}

// settledUnit gives the unit that a loose word means on this page.
func (p *page) settledUnit(id string, from, to int) string {
	stem, loose := strings.CutPrefix(id, "US ")
	if !loose {
		return id
	}
	switch p.overUnit(from) {
	case "US":
		return id
	case "imp":
		return "imp " + stem
	}
	if !p.british() {
		return id
	}
	for i := from; i < to; i++ {
		if p.places[i].text == "US" || p.places[i].text == "U" {
			return id
		}
	}
	return "imp " + stem
}

// amount makes the fact of an amount.
func (p *page) amount(from, to int, id string, first, second value, mark string) fact {
	id = p.settledUnit(id, from, to)
	unit, _ := quantity.Find(id)
	plain := func(v *value) string {
		if v.marked && counted(id) {
			v.v, v.step, v.text = v.v*1000, 1, strings.Replace(v.text, ".", "", 1)
			v.marked = false
		}
		return v.text
	}
	f := fact{kind: string(unit.Kind), from: from, to: to, unit: id}
	f.text = plain(&first)
	f.low, f.high = unit.ToBase(first.v), unit.ToBase(first.v)
	f.half = halfOf(first, id) * unit.Scale
	switch mark {
	case "-":
		f.text += "–" + plain(&second)
		f.high = unit.ToBase(second.v)
	case "±":
		f.text += " ± " + plain(&second)
		f.low, f.high = unit.ToBase(first.v-second.v), unit.ToBase(first.v+second.v)
	}
	f.text += " " + id
	return f
}

// halfOf says how far rounding may have moved a number, in its unit: half a step of its
// last digit; where that is a nought before the mark, as in "4,000 mi", more.
func halfOf(v value, id string) float64 {
	if v.fraction {
		return 0.02 * v.v
	}
	half := v.step / 2
	if v.step == 1 && counted(id) {
		zeros := 1.0
		for text := v.text; strings.HasSuffix(text, "0") && len(text) > 1; text = text[:len(text)-1] {
			zeros *= 10
		}
		half = max(half, min(zeros/2, 0.05*v.v))
	}
	return half
}

// findBare reads volumes whose unit stands with the one before: "3.0 litres, and 3.2 with
// the filter".
func (p *page) findBare() {
	for n := 0; n < len(p.facts); n++ {
		f := p.facts[n]
		if f.kind != string(quantity.Volume) || f.unit != "L" {
			continue
		}
		for i := f.end(); i < len(p.places) && p.places[i].sentence == p.places[f.from].sentence; i++ {
			t := &p.places[i]
			if t.taken && t.kind == number {
				break
			}
			if t.kind != number || t.taken || t.gap != blank || !strings.ContainsAny(t.text, ".,") {
				continue
			}
			v, end, ok := p.valueAt(i)
			if next := p.at(end); !ok || v.v < 0.05 || v.v > 8 || next.gap == glued && next.kind != sign || end < len(p.places) && p.unknown(end) || !p.amountNear(i, end) {
				continue
			}
			g := p.amount(i, end, f.unit, v, v, "")
			p.take(i, end)
			p.facts = append(p.facts, g)
		}
	}
}

// amountNear reports whether a role of an amount stands in the clause of a number.
func (p *page) amountNear(from, to int) bool {
	for i := max(from-6, 0); i < min(to+8, len(p.places)); i++ {
		if p.places[i].sentence != p.places[from].sentence || i < from && p.places[i].taken && p.places[i].kind == number {
			continue
		}
		if p.senseAt(i, "amount.with-filter") || p.senseAt(i, "amount.oil-only") || p.senseAt(i, "amount.dry") {
			return true
		}
	}
	return false
}

// findAmounts reads all amounts, each with its twins behind it.
func (p *page) findAmounts() {
	var f fact
	for i, ok := 0, false; i < len(p.places); {
		if t := &p.places[i]; t.taken || t.kind != number && t.term < 0 {
			i++
			continue
		}
		if f, ok = p.amountAt(i); !ok || f.unit == "in" && p.preposition(&f) {
			i++
			continue
		}
		if p.barred(f.from) || p.torn(f.from) || p.at(f.from-1).repaired && p.places[f.from].gap == glued {
			f.doubts = append(f.doubts, doubt("manual-repaired", "text", f.text))
		}
		end := p.twins(&f)
		p.imperial(&f)
		if (f.unit == "US pt" || f.unit == "US gal") && len(f.twins) == 0 && !p.american(&f) && p.units == "open" {
			f.doubts = append(f.doubts, doubt("manual-pint-open", "text", f.text))
		}
		p.take(f.from, end)
		if f.from > 0 {
			t := p.termAt(f.from - 1)
			f.bound = t != nil && (t.has("bound.most") || t.has("bound.least")) && !t.has("range.to")
		}
		p.facts = append(p.facts, f)
		i = end
	}
	p.settlePints()
}

// settlePints takes the pints of a page that does not say whose they are for those that one of
// them is by its litres.
func (p *page) settlePints() {
	if !slices.ContainsFunc(p.facts, func(f fact) bool { return strings.HasPrefix(f.unit, "imp ") }) {
		return
	}
	for i := range p.facts {
		f := &p.facts[i]
		id, open := imperialOf[f.unit]
		if !open || len(f.twins) > 0 || p.american(f) || p.units != "open" && (p.overUnit(f.from) != "" || !p.repeats(f, id)) {
			continue
		}
		us, _ := quantity.Find(f.unit)
		imp, _ := quantity.Find(id)
		scale := imp.Scale / us.Scale
		f.text = strings.TrimSuffix(f.text, f.unit) + id
		f.low, f.high, f.half, f.unit, f.doubts = f.low*scale, f.high*scale, f.half*scale, id, nil
	}
}

// repeats reports whether a page that names both countries' units has a figure elsewhere in one of
// them, and not in its own: "5 pints" in a sentence, and in a table's column of imperial units.
func (p *page) repeats(f *fact, id string) bool {
	number := strings.TrimSuffix(f.text, f.unit)
	there := func(unit string) bool {
		return slices.ContainsFunc(p.facts, func(g fact) bool {
			return g.from != f.from && (g.text == number+unit || slices.ContainsFunc(g.twins, func(t fact) bool { return t.text == number+unit }))
		})
	}
	return there(id) && !there(f.unit)
}

// promote takes the twin for the figure where that is the only one that does not agree: two
// twins do with each other, or the figure is more oil than there is and the twin is not.
func (f *fact) promote() {
	if len(f.twins) == 0 || f.agrees(&f.twins[0]) {
		return
	}
	t := f.twins[0]
	most := mostOil("engine")
	if !(len(f.twins) == 2 && t.agrees(&f.twins[1]) && !f.agrees(&f.twins[1])) && !(f.kind == string(quantity.Volume) && f.low > most && t.high <= most) {
		return
	}
	own := fact{text: f.text, low: f.low, high: f.high, half: f.half, unit: f.unit, to: f.to, kind: f.kind}
	f.text, f.low, f.high, f.half, f.unit = t.text, t.low, t.high, t.half, t.unit
	f.twins[0].text, f.twins[0].low, f.twins[0].high, f.twins[0].half, f.twins[0].unit = own.text, own.low, own.high, own.half, own.unit
}

// joinTwins makes one figure of two that stand side by side in a row, in two units.
func (p *page) joinTwins() {
	list := p.facts[:0]
	for _, f := range p.facts {
		if n := len(list) - 1; n >= 0 {
			a := &list[n]
			gap := f.from - a.end()
			if a.kind == f.kind && a.unit != f.unit && a.unit != "" && !p.hasUnit(a, f.unit) && p.places[a.from].piece == p.places[f.from].piece &&
				(gap == 0 || gap == 1 && p.places[f.from-1].text == ".") && (f.headed || p.places[f.from].gap == wide) {
				a.twins = append(a.twins, f)
				continue
			}
		}
		list = append(list, f)
	}
	p.facts = list
}

// imperialOf are the British measures of the same names as those of the United States.
var imperialOf = map[string]string{"US qt": "imp qt", "US pt": "imp pt", "US gal": "imp gal", "US fl oz": "imp fl oz"}

// imperial settles which pint or quart a page means that says no more: the one that agrees
// with the litres beside it.
func (p *page) imperial(f *fact) {
	if len(f.twins) == 0 || f.kind != string(quantity.Volume) {
		return
	}
	all := []*fact{f}
	for i := range f.twins {
		all = append(all, &f.twins[i])
	}
	var metric *fact
	for _, g := range all {
		if g.unit == "L" || g.unit == "mL" {
			metric = g
			break
		}
	}
	for _, g := range all {
		id, ambiguous := imperialOf[g.unit]
		if metric == nil || !ambiguous || p.american(g) {
			continue
		}
		us, _ := quantity.Find(g.unit)
		imp, _ := quantity.Find(id)
		scale := imp.Scale / us.Scale
		if abs64(g.low*scale-metric.low) < abs64(g.low-metric.low) {
			g.text = strings.TrimSuffix(g.text, g.unit) + id
			g.low, g.high, g.half, g.unit = g.low*scale, g.high*scale, g.half*scale, id
		}
	}
}

// american reports whether a unit is said to be of the United States.
func (p *page) american(f *fact) bool {
	for i := f.from; i < f.to; i++ {
		switch p.places[i].fold {
		case "us", "u", "usa":
			return true
		}
	}
	return false
}

// preposition reports whether "in" behind a number is a word and no inch.
func (p *page) preposition(f *fact) bool {
	if p.places[f.to-1].fold != "in" || strings.Contains(f.text, "/") {
		return false
	}
	tool := p.termAt(f.to + 1)
	return p.at(f.to).text != "." || tool == nil || !p.isTool(tool) // "1 in. hexagon"
}

func (p *page) take(from, to int) {
	for i := from; i < to; i++ {
		p.places[i].taken = true
	}
}

// twins reads the same figure in other units that stands right behind a fact: in
// brackets, after a stroke, a comma or a gap. It gives where all of them end.
func (p *page) twins(f *fact) (end int) {
	end = f.to
	at, inside := end, false
	for at < len(p.places) && p.places[at].sentence == p.places[f.from].sentence {
		t := &p.places[at]
		switch {
		case !inside && (t.text == "(" || t.text == "["):
			inside = true
		case inside && (t.text == ")" || t.text == "]"):
			inside = false
			end = at + 1
		case t.text == "." && t.gap == glued && at+1 < len(p.places) && (p.places[at+1].kind == number || strings.Contains("(/=", p.places[at+1].text) || inside): // "38 oz. 1.12 L", "2.6 pt. / 1.5 l"
		case strings.Contains("/,;=", t.text) && t.kind == sign:
		case inside && (p.senseAt(at, "join.or") || p.senseAt(at, "label.figure")):
		case t.kind == number || t.kind == word:
			g, ok := p.amountAt(at)
			if id, next := p.unitFrom(at); !ok && id != "" && p.places[f.from].kind == word { // "Nm 22 (kgm 2,2)"
				g, ok = p.amountAt(next)
			}
			if next := p.unreadTwin(at); !ok && inside && next > at {
				at = next
				continue
			}
			if !ok || g.kind != f.kind || p.hasUnit(f, g.unit) || g.unit == "in" {
				if inside {
					return max(f.to, end)
				}
				return end
			}
			f.twins = append(f.twins, g)
			at = g.to
			if !inside {
				end = at
			} else {
				end = max(end, g.to)
			}
			continue
		default:
			return end
		}
		at++
	}
	return end
}

// torn reports whether a number may be the end of one with a blank behind its point: "0, 1 L".
func (p *page) torn(i int) bool {
	if i < 2 || p.places[i-1].text != "," && p.places[i-1].text != "." || p.places[i-1].gap != glued {
		return false
	}
	for k := i - 3; k >= 0 && k > i-6; k-- {
		if t := p.termAt(k); t != nil && p.isTool(t) {
			return false // "key of 22, 35 N·m"
		}
	}
	before := &p.places[i-2]
	return before.kind == number && !before.taken && before.piece == p.places[i].piece && len(before.text) <= 2 && !strings.ContainsAny(p.places[i].text, ".,")
}

// barred reports whether a sign stands right before a number that may have been a one, and no
// border of a table: "|5 N·m".
func (p *page) barred(i int) bool {
	if i == 0 || p.places[i].gap != glued || p.places[i-1].text != "|" && p.places[i-1].text != "!" {
		return false
	}
	from, to := p.pieceTokens(p.places[i].piece)
	bars := 0
	for k := from; k < to; k++ {
		if p.places[k].text == "|" {
			bars++
		}
	}
	return bars < 2
}

// mostTwin is how many tokens an amount may take that nobody can read.
const mostTwin = 6

// unreadTwin gives where another twin begins in brackets behind one that nobody can read, as
// "3.2 US qf"; the token itself where none does.
func (p *page) unreadTwin(i int) int {
	if p.places[i].kind != number || p.places[i].taken {
		return i
	}
	for k := i + 1; k < len(p.places) && k <= i+mostTwin; k++ {
		switch t := &p.places[k]; {
		case t.text == "," || t.text == "/" || t.text == ";":
			return k
		case t.kind == number, t.text == ")", t.sentence != p.places[i].sentence:
			return i
		}
	}
	return i
}

func (p *page) hasUnit(f *fact, id string) bool {
	if f.unit == id {
		return true
	}
	for i := range f.twins {
		if f.twins[i].unit == id {
			return true
		}
	}
	return false
}
