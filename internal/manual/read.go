package manual

import (
	"runtime"
	"slices"
	"sync"

	"tidysump/internal/finding"
)

// Span is a piece of a text in bytes.
type Span struct{ From, To int }

// Reading is what the page says about one thing.
type Reading struct {
	What   string // of the what-list
	Text   string // a quantity or a word; "" for a doubt alone
	Quote  Span
	Sure   bool
	Doubts []finding.Finding
	Model  string // which of several models or years it is of, "" for all
}

// Page is what was read from a page's text.
type Page struct {
	Readings []Reading
	Language string   // "" where it is none that is known
	Models   []string // where the text is of several
	Number   string   // printed page number
	Hints    Hints

	page  *page
	parts []pageOfBike // where a text was parted
}

// Read reads the text of a page, or of several. It takes time in proportion to its length.
func Read(text string, tag string) Page {
	words := &lexemes{}
	rows := rowsOf(text, words)
	l := languageOf(rows, tag)
	p := &page{text: text, words: l.dictionary(), language: l.told(rows, tag)}
	p.words.settleRows(rows)
	if list := p.partsOf(rows); list != nil {
		return readParts(text, tag, list, words)
	}
	one := p.read(rows)
	if p.heaped && len(one.Models) == 0 {
		one.ask()
	}
	return one
}

// read reads a page of one bike.
func (p *page) read(rows []row) Page {
	p.prepare(rows)
	if len(p.pieces) == 0 {
		return Page{Language: p.language, page: p}
	}
	r := readings{page: p}
	breathe()
	r.torques()
	r.intervals()
	breathe()
	r.levels()
	r.fasteners()
	r.oils()
	r.filters()
	r.volumes()
	r.names()
	return Page{Readings: r.finished(), Language: p.language, Models: p.models, Number: p.number, Hints: p.hints(), page: p}
}

// prepare marks what is in a page's rows, before anything is given its role.
func (p *page) prepare(rows []row) {
	p.words.settleRows(rows)
	breathe()
	longLabels(rows)
	p.spoilt = repair(rows, p.words)
	if p.spoilt {
		justified(rows)
	}
	breathe()
	p.number = numberOf(rows, p.words)
	p.pieces = layoutOf(rows, p.words)
	if len(p.pieces) == 0 {
		return
	}
	breathe()
	p.byModel()
	p.flowOf()
	breathe()
	p.findTerms()
	p.composeTerms()
	p.findShapes()
	breathe()
	p.findAmounts()
	p.findBare()
	p.findLostPoints()
	p.findSizes()
	breathe()
	p.findHeads()
	p.sortFacts()
	p.joinTwins()
	p.dropOld()
	p.dropBurnt()
	for i := range p.facts {
		p.facts[i].promote()
	}
	p.findUnread()
	breathe()
	p.settleTerms()
	p.findMentions()
	p.findScopes()
	p.settleMentions()
	p.findLettered()
	p.settleTags()
	p.findOrders()
}

// breathe lets a collection of garbage that began come to its end: there is no other
// thread that would, and until then each pointer that is written costs several times as
// much.
func breathe() { runtime.Gosched() }

// languageOf tells the language of a text by its small words, and where there are few, as
// in a table, by the terms of the trade that stand in it.
func languageOf(rows []row, tag string) *language {
	if l := languageOfTag(tag); l != nil {
		return l
	}
	all := allLanguages()
	counts := make([]int, len(all))
	for _, r := range rows {
		for i := range r.tokens {
			x := r.tokens[i].lexeme
			if !x.told {
				x.told, x.tongues = true, smallWords()[x.fold]
			}
			for n, t := 0, x.tongues; t != 0; n, t = n+1, t>>1 {
				counts[n] += int(t & 1)
			}
		}
	}
	best, second := 0, 0
	for i := range all {
		if counts[i] > counts[best] {
			best = i
		}
	}
	for i := range all {
		if i != best {
			second = max(second, counts[i])
		}
	}
	if counts[best] >= 8 && counts[best] >= 2*second {
		return all[best]
	}
	var tokens []token
	for _, r := range rows {
		if len(tokens) < mostForLanguage {
			tokens = append(tokens, r.tokens...)
		}
	}
	for i, l := range all {
		d := l.dictionary()
		for at := 0; at < min(len(tokens), mostForLanguage); {
			e, n := d.match(tokens, at)
			if e != nil && tokens[at].kind == word && len(tokens[at].fold) > 2 {
				counts[i] += n
			}
			at += max(n, 1)
		}
	}
	for i := range all {
		if counts[i] > counts[best] {
			best = i
		}
	}
	return all[best]
}

// told gives what a text's language is said to be, "" where it is none that is known.
func (l *language) told(rows []row, tag string) string {
	if l.tag == tag || l.knows(rows) {
		return l.tag
	}
	return ""
}

// mostUnknown is of how many words one is known at least in a text of a language that is
// read: of the worst photos of pages it is every third, of other languages at most every
// fifth.
const mostUnknown = 4

// leastWords is how many words a text has of which one that is known is too few: "filter" is of many
// languages.
const leastWords = 4

// knows reports whether rows may be of a language, and not of one that is like it only in
// the words that all have: those without any word are of each.
func (l *language) knows(rows []row) bool {
	d, all := l.dictionary(), allLanguages()
	own := uint32(1) << slices.Index(all, l)
	known, words := 0, 0
	for _, r := range rows {
		until := 0
		for i := range r.tokens {
			x := &r.tokens[i]
			if x.kind != word || len(x.fold) <= 2 || x.unitOf() != "" || x.fold == "sae" || x.fold == "jaso" {
				continue // these are of all
			}
			words++
			if e, n := d.match(r.tokens, i); e != nil {
				until = max(until, i+n)
			}
			if i < until || smallWords()[x.fold]&own != 0 {
				known++
			}
		}
		if words >= mostForLanguage {
			break
		}
	}
	return known*mostUnknown >= words && (known > 1 || words < leastWords)
}

// smallWords gives of each small word the languages that have it, a bit each.
var smallWords = sync.OnceValue(func() map[string]uint32 {
	all := map[string]uint32{}
	for i, l := range allLanguages() {
		for _, f := range l.function {
			if small := fold(f); len(small) > 1 && f[0] != '~' { // a letter alone is a unit as often, or a mark: "0.5 l", "E"
				all[small] |= 1 << i
			}
		}
	}
	return all
})

// sortFacts brings the facts into the order of their tokens, those that begin at one as
// they were found: each is put at once where it belongs.
func (p *page) sortFacts() {
	at := make([]int32, len(p.places)+1)
	for i := range p.facts {
		at[p.facts[i].from+1]++
	}
	for i := 1; i < len(at); i++ {
		at[i] += at[i-1]
	}
	sorted := make([]fact, len(p.facts))
	for i := range p.facts {
		from := p.facts[i].from
		sorted[at[from]] = p.facts[i]
		at[from]++
	}
	p.facts = sorted
}

// mostForLanguage is how many tokens are looked at for a page's language.
const mostForLanguage = 500

// readings gathers what a page says.
type readings struct {
	*page
	list     []Reading
	dueHeads []int // the lines that head schedules
}

// say takes in a reading that the tokens from to to say.
func (r *readings) say(what, text string, from, to int, doubts ...finding.Finding) {
	r.sayAt(what, text, from, to, r.longest(from, to), doubts...)
}

// longest gives a token of the longest run of tokens that stand in one place: words that
// are torn apart are quoted where more of them stands, the last of equals.
func (r *readings) longest(from, to int) (at int) {
	best := 0
	for first := from; first < to; {
		last := first
		for last+1 < to && r.adjoining(&r.places[last], &r.places[last+1]) {
			last++
		}
		if size := r.places[last].to - r.places[first].from; size >= best {
			at, best = last, size
		}
		first = last + 1
	}
	return at
}

// sayAt is say for a reading whose figure stands at a token.
func (r *readings) sayAt(what, text string, from, to, at int, doubts ...finding.Finding) {
	if r.byDefault(what, at) {
		doubts = append(doubts, doubt("manual-by-context", "text", text))
	}
	r.sayOf(what, text, from, to, at, doubts...)
}

// sayOf is sayAt where the page says whose the figure is in another place than beside it.
func (r *readings) sayOf(what, text string, from, to, at int, doubts ...finding.Finding) {
	if r.places[at].foreign && !ofBike(what) {
		return
	}
	if r.repairedIn(from, to) {
		doubts = append(doubts, doubt("manual-repaired", "text", text))
	}
	model := r.modelOf(at)
	if model != "" {
		doubts = append(doubts, doubt("manual-of-one-model", "text", text, "model", model))
	}
	for i := range r.list {
		if o := &r.list[i]; o.Text == text && o.What == what && o.Model == model {
			return
		}
	}
	r.list = append(r.list, Reading{What: what, Text: text, Quote: r.quote(from, to, at), Sure: len(doubts) == 0, Doubts: doubts, Model: model})
}

// mostQuote is the most bytes of a quote.
const mostQuote = 280

// quote gives the bytes of the tokens from to to, as far as they stand in one place with
// the one at which the figure is: lines of another column may lie between them.
func (r *readings) quote(from, to, at int) Span {
	at = max(from, min(at, to-1))
	first, last := at, at
	for last+1 < to && r.adjoining(&r.places[last], &r.places[last+1]) && r.places[last+1].to-r.places[at].from <= mostQuote {
		last++
	}
	for first > from && r.adjoining(&r.places[first-1], &r.places[first]) && r.places[last].to-r.places[first-1].from <= mostQuote {
		first--
	}
	return Span{r.places[first].from, r.places[r.closing(first, last)].to}
}

// closing gives the token that closes the brackets which are open behind some tokens, where it
// stands near; else the last of them.
func (r *readings) closing(first, last int) int {
	open := 0
	for i := first; i < len(r.places) && i <= last+mostInBrackets; i++ {
		if i > last && (open == 0 || !r.adjoining(&r.places[i-1], &r.places[i])) {
			break
		}
		switch r.places[i].text {
		case "(":
			open++
		case ")":
			if open = max(open-1, 0); open == 0 && i > last && r.places[i].to-r.places[first].from <= mostQuote {
				return i
			}
		}
	}
	return last
}

// mostInBrackets is how many tokens are quoted at most to close a bracket.
const mostInBrackets = 12

// adjoining reports whether nothing of the page stands between two tokens.
func (r *readings) adjoining(a, b *place) bool {
	if a.from == b.from && a.to == b.to && a.moved == b.moved {
		return true // "¾" is three tokens
	}
	if a.to > b.from || a.moved != b.moved || b.broken {
		return false
	}
	if a.piece == b.piece {
		return true
	}
	for i := a.to; i < b.from; i++ {
		switch r.text[i] {
		case ' ', '\t', '\n', '\r', '-':
		default:
			return false
		}
	}
	return true
}

// finished gives the readings in the order of the page, those that contradict each other
// with a doubt.
func (r *readings) finished() []Reading {
	r.list = inOrder(r.list, func(a *Reading) int { return a.Quote.From })
	first := map[string]int{} // of each thing, the first reading
	for i := range r.list {
		a := &r.list[i]
		if r.language == "" && a.Sure { // words that are alike do not tell what a page of another language says
			a.Sure, a.Doubts = false, append(a.Doubts, doubt("manual-by-context", "text", a.Text))
		}
		if many(a.What) || a.Text == "" {
			continue
		}
		key := a.What + " " + a.Model
		n, twice := first[key]
		if !twice {
			first[key] = i
			continue
		}
		b := &r.list[n]
		differ(a, b)
		differ(b, a)
	}
	return r.list
}

// differ says of a reading that another says something else.
func differ(a, b *Reading) {
	a.Sure = false
	if len(a.Doubts) < 3 {
		a.Doubts = append(a.Doubts, doubt("manual-says-both", "text", a.Text, "other", b.Text))
	}
}

// inOrder gives a list in the order of its places. It sorts pointers, for which one sorting
// serves all types.
func inOrder[T any](list []T, place func(*T) int) []T {
	at := make([]*T, len(list))
	for i := range list {
		at[i] = &list[i]
	}
	slices.SortStableFunc(at, func(a, b *T) int { return place(a) - place(b) })
	sorted := make([]T, len(list))
	for i := range at {
		sorted[i] = *at[i]
	}
	return sorted
}

func doubt(code string, values ...string) finding.Finding {
	return finding.Finding{Code: code, Where: "/text", Grade: finding.Doubt, Values: finding.Values(values...)}
}

// many reports whether a thing may have several answers.
func many(what string) bool {
	n := len(what)
	return n > 7 && (what[n-7:] == ".grades" || what[n-6:] == ".marks" || n > 8 && what[n-8:] == ".service")
}
