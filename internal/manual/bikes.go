package manual

import (
	"slices"
	"strings"
)

// A text may be of several pages, and those of several bikes: then each page has its bike in
// its head, or in its foot. It is parted there, and each part is read as a page of its own.

// bike is what a line says that names a bike.
type bike struct {
	words        []string // of its name, as they are compared
	number, code string   // "450", "r"
	end          int      // the token behind its name
}

// stretch is a piece of a text that is of one bike, or of those that one head names. known
// reports whether its bike is told.
type stretch struct {
	Span
	name  string
	known bool
}

// named is a line that names a bike, or several, with those behind it that name the same.
type named struct {
	bikes     []bike
	row, last int
	text      string
	stacked   bool // they are named a line each
	full      bool // figures stand behind it, before another bike is named
}

// same reports whether two lines name one bike.
func (a *named) same(b *named) bool {
	return slices.ContainsFunc(a.bikes, func(x bike) bool {
		return slices.ContainsFunc(b.bikes, func(y bike) bool { return x.same(&y) })
	})
}

// partsOf parts a text where another bike is named. It gives none for a text of one.
func (p *page) partsOf(rows []row) []stretch {
	var list []named
	var perhaps []bike // in titles of which nobody can tell for sure
	for n := range rows {
		bikes, text := p.bikesOf(rows, n)
		if len(bikes) == 0 {
			one, name, certain := p.plainTitle(rows, n)
			if !certain {
				if len(one.words) > 0 {
					perhaps = append(perhaps, one)
				}
				continue
			}
			bikes, text = []bike{one}, name
		}
		next := named{bikes: bikes, row: n, last: n, text: text}
		if k := len(list) - 1; k >= 0 {
			below := (list[k].row == list[k].last || list[k].stacked) && n == list[k].last+1 && !rows[n].blank
			if below && !list[k].same(&next) { // the heads of a table, a cell a line
				list[k].bikes = append(list[k].bikes, bikes...)
				list[k].last, list[k].stacked = n, true
				continue
			}
			if list[k].same(&next) {
				list[k].last = n
				continue
			}
		}
		for i := range list { // another page of it
			if list[i].same(&next) {
				next.text = list[i].text
				break
			}
		}
		list = append(list, next)
	}
	if len(list) < 2 {
		p.heaped = len(list) == 1 && list[0].stacked || p.others(list, perhaps)
		return nil
	}
	for k := range list {
		end := len(rows)
		if k+1 < len(list) {
			end = list[k+1].row
		}
		list[k].full = rowsSay(rows[list[k].row+1 : end])
	}
	c := cutter{page: p, rows: rows}
	before := rowsSay(rows[:list[0].row])
	if before && !list[len(list)-1].full { // each page has its bike in its foot
		for k := range list {
			c.cut(list[k].last+1, &list[k], true)
		}
		c.parts[len(c.parts)-1].To = len(p.text)
		return c.parts
	}
	if before {
		c.cut(p.headStart(rows, list[0].row, 0), &list[0], !list[0].full)
	}
	for k := range list {
		switch {
		case k+1 == len(list):
			c.cut(len(rows), &list[k], true)
		case list[k+1].full:
			c.cut(p.headStart(rows, list[k+1].row, list[k].last+1), &list[k], true)
		default: // a foot: nobody knows where the page begins that it is of
			c.cut(list[k].last, &list[k], true)
			c.cut(list[k+1].row+1, &list[k], false)
		}
	}
	return c.parts
}

// cutter parts a text from its beginning on.
type cutter struct {
	*page
	rows  []row
	at    int // the row that is next
	parts []stretch
}

// cut makes a part of the rows up to one.
func (c *cutter) cut(end int, by *named, known bool) {
	if end <= c.at {
		return
	}
	span := Span{lineStart(c.text, c.rows, c.at), len(c.text)}
	if end < len(c.rows) {
		span.To = lineStart(c.text, c.rows, end)
	}
	c.parts, c.at = append(c.parts, stretch{span, by.text, known}), end
}

// pageOfBike is a part of a text, read as a page of its own.
type pageOfBike struct {
	stretch
	*page
	number string
	hints  Hints
	models []string // that it is of; none where nobody knows
}

// readParts reads each part of a text as a page, and says of which bike it is. They
// have their words from the whole text.
func readParts(text, tag string, list []stretch, words *lexemes) Page {
	var all Page
	readings := make([][]Reading, len(list))
	of := map[string][]string{} // of each head, the models that its pages name
	for i, s := range list {
		rows := rowsOf(text[s.From:s.To], words)
		l := languageOf(rows, tag)
		p := &page{text: text[s.From:s.To], words: l.dictionary(), language: l.told(rows, tag)}
		one := p.read(rows)
		all.parts = append(all.parts, pageOfBike{stretch: s, page: p, number: one.Number, hints: one.Hints})
		if i == 0 {
			all.Language = one.Language
		}
		brand := ""
		for n := range one.Readings {
			r := &one.Readings[n]
			if r.What == "make" && brand == "" {
				brand = r.Text
			}
			r.Quote.From, r.Quote.To = r.Quote.From+s.From, r.Quote.To+s.From
			if r.What == "model" && len(one.Models) == 0 && s.known {
				one.Models = []string{r.Text}
				if isDigit(rune(r.Text[0])) && brand != "" { // "400", of "Hollin 400"
					one.Models[0] = brand + " " + r.Text
				}
			}
		}
		readings[i] = one.Readings
		if s.known && (of[s.name] == nil || len(one.Models) > 1) {
			of[s.name] = one.Models
		}
	}
	for i := range all.parts {
		q := &all.parts[i]
		all.Hints.add(q.hints)
		if !q.known {
			continue
		}
		if len(of[q.name]) == 0 {
			of[q.name] = []string{q.name}
		}
		q.models = of[q.name]
		for _, m := range q.models {
			if !slices.Contains(all.Models, m) {
				all.Models = append(all.Models, m)
			}
		}
	}
	said := map[string]int{}
	for i := range all.parts {
		for n := range readings[i] {
			all.take(&all.parts[i], &readings[i][n], said)
		}
	}
	return all
}

// ask says of all readings that nobody knows whose they are.
func (p *Page) ask() {
	for i := range p.Readings {
		r := &p.Readings[i]
		r.Doubts, r.Sure = append(r.Doubts, doubt("manual-by-context", "text", r.Text)), false
	}
}

// take takes in a reading of a part, once for each of its models. said has the first reading of
// each thing.
func (p *Page) take(q *pageOfBike, r *Reading, said map[string]int) {
	models := q.models
	switch {
	case !q.known:
		r.Doubts, r.Sure = append(r.Doubts, doubt("manual-by-context", "text", r.Text)), false
		p.Readings = append(p.Readings, *r)
		return
	case r.Model != "":
		models = []string{r.Model}
	}
	for _, m := range models {
		o := *r
		if o.Model == "" {
			o.of(m)
		}
		if o.Text == "" {
			p.Readings = append(p.Readings, o)
			continue
		}
		key := o.What + " " + m
		if many(o.What) {
			key += o.Text
		}
		n, twice := said[key]
		if !twice {
			said[key] = len(p.Readings)
		} else if f := &p.Readings[n]; f.Quote.From < q.From { // another page's
			if f.Text == o.Text {
				continue
			}
			differ(f, &o)
			differ(&o, f)
		}
		p.Readings = append(p.Readings, o)
	}
}

// others reports whether titles that may name a bike name another than the one of a text.
func (p *page) others(list []named, perhaps []bike) bool {
	var known []bike
	for i := range list {
		known = append(known, list[i].bikes...)
	}
	for i := range perhaps {
		b := &perhaps[i]
		if len(known) > 0 && !slices.ContainsFunc(known, func(a bike) bool { return a.within(b) || b.within(&a) }) {
			return true
		}
		known = append(known, *b)
	}
	return false
}

// within reports whether a name has all words of another.
func (a *bike) within(b *bike) bool {
	return !slices.ContainsFunc(a.words, func(x string) bool {
		return !slices.ContainsFunc(b.words, func(y string) bool { return nearly(x, y) })
	})
}

// mostAbove is how many lines of a page's head may stand above the one that names its bike.
const mostAbove = 3

// headStart gives the row that begins the page of which one names the bike: what stands above
// it are words of a head, behind a blank line or the row from.
func (p *page) headStart(rows []row, n, from int) int {
	for at := n; at >= max(from, n-mostAbove); at-- {
		if rows[at].blank && at > from && p.companyIn(rows[at-1].tokens) {
			return at - 1
		}
		if rows[at].blank || at == from {
			return at
		}
		if at == 0 || !p.ofHead(rows[at-1].tokens) {
			break
		}
	}
	return n
}

// ofHead reports whether a line has nothing but words of a page's head, or such as nobody knows.
func (p *page) ofHead(tokens []token) bool {
	words := false
	for i := 0; i < len(tokens); {
		c := chunkAt(tokens, i)
		k := p.inHeads(tokens, i)
		if c.to > i {
			words = true
			if tokens[i].kind == number || k == 0 && !tokens[i].function && !p.strangeChunk(tokens, &c) {
				return false
			}
		}
		i = max(i+1, i+k, c.to)
	}
	return words && !rowsSay([]row{{tokens: tokens}})
}

// lineStart gives the byte at which a row's line begins.
func lineStart(text string, rows []row, n int) int {
	if n == 0 {
		return 0
	}
	at := rows[n].tokens[0].from
	for at > 0 && (text[at-1] == ' ' || text[at-1] == '\t') {
		at--
	}
	return at
}

// rowsSay reports whether rows have a figure with its unit, or an oil's grade.
func rowsSay(rows []row) bool {
	return slices.ContainsFunc(rows, func(r row) bool { return hasUnit(r.tokens) })
}

// same reports whether two names are of one bike: the model's word and its number are the
// same, and where both have the name in full, so are the make and the code behind it.
func (a *bike) same(b *bike) bool {
	m, n := len(a.words)-1, len(b.words)-1
	if a.number == "" || b.number == "" {
		return nearly(a.words[m], b.words[n])
	}
	if a.number != b.number || !nearly(a.words[m], b.words[n]) {
		return false
	}
	return m != n || n == 0 || a.code == b.code && nearly(a.words[0], b.words[0])
}

// nearly reports whether two words are the same but for one letter, of those that are long.
func nearly(a, b string) bool {
	if len(a) < len(b) {
		a, b = b, a
	}
	if a == b || len(b) < 5 || len(a)-len(b) > 1 {
		return a == b
	}
	n := 0
	for n < len(b) && a[n] == b[n] {
		n++
	}
	return a[n+1:] == b[n:] || a[n+1:] == b[min(n+1, len(b)):]
}

// chunk is what stands in a line without a blank, signs apart.
type chunk struct {
	from, to int // tokens
	text     string
	letters  int
}

// chunkAt gives the chunk that begins at a token.
func chunkAt(tokens []token, i int) (c chunk) {
	c.from, c.to = i, i
	for c.to < len(tokens) && tokens[c.to].kind != sign && (c.to == i || tokens[c.to].gap == glued) {
		if tokens[c.to].kind == word {
			c.letters += len(tokens[c.to].text)
		}
		c.text += tokens[c.to].text
		c.to++
	}
	return c
}

// likeDigits gives the figures that a chunk is, also where a photo has letters in it: "65O",
// "l25". "" for another.
func (c *chunk) likeDigits() string {
	var b strings.Builder
	text := c.text
	if n := len(text); n > 2 && text[n-1] == 'i' && isDigit(rune(text[n-2])) { // "150i"
		text = text[:n-1]
	}
	for _, r := range text {
		if n := strings.IndexRune("OolISs", r); n >= 0 {
			r = rune("001155"[n])
		}
		if !isDigit(r) {
			return ""
		}
		b.WriteRune(r)
	}
	if s := b.String(); len(s) > 1 && len(s) < 5 && s[0] != '0' && (c.letters < len(c.text) || len(s) > 2) {
		return s
	}
	return ""
}

// bikesOf reads a row as one that names a bike, or several, and tells nothing else: the words
// of a page's head may stand beside it. text is the first name as it is written.
func (p *page) bikesOf(rows []row, n int) (bikes []bike, text string) {
	tokens := rows[n].tokens
	if n > 0 && rows[n-1].number == rows[n].number {
		return nil, ""
	}
	begins := n == 0 || rows[n].blank
	if n > 0 && namesGrade(tokens) {
		return nil, ""
	}
	plain := true // nothing but what may stand in a head stood before
	cell := 0     // where the cell begins
	odd := -1     // the cell that has other words
	names := -1   // the cell that has the last name
	for i := 0; i < len(tokens); {
		if tokens[i].gap == wide {
			cell = i
		}
		c := chunkAt(tokens, i)
		if c.to == i {
			if i++; i < len(tokens) && tokens[i].gap != glued && strings.Contains("·|-•", tokens[i-1].text) {
				cell = i
			}
			continue
		}
		if plain || cell == i {
			if b, end := p.bikeFrom(tokens, i); end > i {
				if i > 0 && n > 0 && text == "" && !p.hasSense(tokens, i-1, "label.model") {
					trade, strange := p.labels(tokens[:i], cell)
					if upper := capitals(tokens[:i]); trade && !(begins && upper) || strange && end == len(tokens) && !upper {
						return nil, "" // "Oil filter    Hylax 204"
					}
				}
				if text == "" {
					text = casedName(tokens[i:b.end])
				}
				bikes, names = append(bikes, b), cell
				i, plain = end, true
				continue
			}
		}
		if n > 0 && tokens[i].kind == number && !(begins && text != "" && headFigure(tokens, i)) {
			if _, size := unitAt(tokens, i+1); size > 0 && tokens[i+1].gap != wide {
				return nil, "" // a row of figures
			}
		}
		if k := p.inHeads(tokens, i); k > 0 {
			c.to = max(c.to, i+k)
		} else if tokens[i].kind != number && !tokens[i].function && !p.strangeChunk(tokens, &c) {
			plain = false
			if c.letters > 2 && !capital(c.text) {
				odd = cell
			}
		}
		if !begins && odd >= 0 && odd == names {
			return nil, "" // a sentence
		}
		i = c.to
	}
	return bikes, text
}

// labels tells what stands before a name in its line: whether words of the trade, and whether such
// as nobody here knows in the cells before the one that begins at a token.
func (p *page) labels(tokens []token, cell int) (trade, strange bool) {
	for i := 0; i < len(tokens); {
		c := chunkAt(tokens, i)
		e, n := p.words.match(tokens, i)
		trade = trade || e != nil && slices.ContainsFunc(e.senses, func(s string) bool {
			return strings.HasPrefix(s, "oil.") || strings.HasPrefix(s, "part.") || strings.HasPrefix(s, "other.")
		})
		strange = strange || e == nil && i < cell && p.strangeChunk(tokens, &c)
		i = max(i+1, c.to, i+n)
	}
	return trade, strange
}

// headFigure reports whether a number in a page's head is a displacement, or a page's in a photo:
// "3l".
func headFigure(tokens []token, i int) bool {
	unit, size := unitAt(tokens, i+1)
	return unit == "mL" || unit == "L" && i+1+size == len(tokens) && len(tokens[i].text) < 3
}

// strangeChunk reports whether a chunk is a capital word that nobody here knows, in which a photo
// may have figures: "H0RNSTEDT".
func (p *page) strangeChunk(tokens []token, c *chunk) bool {
	if c.letters < 3 || !capital(c.text) || isName(tokens[c.from].fold) {
		return false
	}
	if c.to == c.from+1 {
		return p.strange(tokens, c.from)
	}
	for i := c.from; i < c.to; i++ {
		if t := &tokens[i]; t.kind == number && (len(t.text) > 1 || !strings.Contains("015", t.text)) {
			return false
		}
	}
	return tokens[c.from].kind == word || tokens[c.to-1].kind == word
}

// inHeads gives how many tokens the words are that may stand in a page's head beside a name; 0 for
// other words.
func (p *page) inHeads(tokens []token, i int) int {
	e, n := p.words.match(tokens, i)
	if e == nil || !slices.ContainsFunc(e.senses, func(s string) bool {
		return s == "page.word" || strings.HasPrefix(s, "label.") || strings.HasPrefix(s, "bike.") || strings.HasPrefix(s, "year.")
	}) {
		return 0
	}
	return n
}

// bikeFrom reads a bike's name at a token: words that nobody here knows, a number, a code.
func (p *page) bikeFrom(tokens []token, i int) (b bike, end int) {
	for n := i; n < len(tokens) && n < i+10; {
		t := &tokens[n]
		if n > i && t.gap == wide && t.col-tokens[n-1].end > 3 {
			if unit, size := unitAt(tokens, n+1); quotes(tokens[n-1].text) && len(b.words) > 1 && t.kind == number && unit == "mL" { // THE "LARK"   250 c.c.
				b.number, b.end = t.text, n
				return b, n + 1 + size
			}
			return b, i
		}
		c := chunkAt(tokens, n)
		if c.to == n {
			if !quotes(t.text) && !strings.Contains("-/'", t.text) {
				return b, i
			}
			n++
			continue
		}
		if len(b.words) > 0 {
			if b.number = c.likeDigits(); b.number == "" && len(c.text) < 5 && c.letters < 3 && tokens[n].kind == word && tokens[n].upper && tokens[c.to-1].kind == number { // "V4", "RX449"
				b.number = fold(c.text)
			}
			if b.number == "" && p.nameGlued(tokens, &c) { // "FLINT410"
				b.words, b.number = append(b.words, plainWord(tokens[n].text)), tokens[n+1].text
			}
			if b.number != "" {
				end = p.bikeEnd(tokens, c.to, &b, i)
				if b.end == 0 {
					b.end = end
				}
				return b, end
			}
		}
		next := chunkAt(tokens, c.to)
		switch {
		case p.strangeChunk(tokens, &c), n == 0 && p.nearlyPart(tokens), len(b.words) > 0 && c.letters == len(c.text) && len(c.text) < 3 && t.upper,
			len(b.words) > 0 && c.letters == len(c.text) && len(c.text) > 3 && capital(c.text) && next.likeDigits() != "" && !t.function: // a word of the trade is a name too
			b.words = append(b.words, plainWord(c.text))
		case len(b.words) > 0 && p.hasSense(tokens, n, "label.model"):
		default:
			return b, i
		}
		n = c.to
	}
	return b, i
}

// nameGlued reports whether a chunk is a strange word and a number.
func (p *page) nameGlued(tokens []token, c *chunk) bool {
	return c.to == c.from+2 && c.letters > 3 && capital(c.text) && p.strange(tokens, c.from) && len(tokens[c.from+1].text) == 3 && tokens[c.from+1].kind == number
}

// isName reports whether a word is the name of a standard.
func isName(folded string) bool { return strings.Contains("|sae|api|jaso|iso|din|", "|"+folded+"|") }

// plainWord gives a word as names are compared: photos take its letters for others.
func plainWord(text string) string {
	b := []byte(fold(text))
	for i, c := range b {
		if n := strings.IndexByte("01i5|", c); n >= 0 {
			b[i] = "olls l"[n]
		}
	}
	return string(b)
}

// bikeEnd gives where the name ends whose number ends at a token, or begin where it is none: a year,
// or an amount.
func (p *page) bikeEnd(tokens []token, end int, b *bike, begin int) int {
	if isYear(b.number) || len(b.number) < 3 && b.words[len(b.words)-1] == "m" { // a thread
		return begin
	}
	if end == len(tokens) || tokens[end].gap == wide {
		return end
	}
	if t := &tokens[end]; t.gap == glued && strings.Contains("-/.", t.text) && end+1 < len(tokens) && tokens[end+1].gap == glued {
		if t.text != "/" || len(tokens[end+1].text) > 1 {
			return begin
		}
		b.code = tokens[end+1].text // "750/2"
		return end + 2
	}
	c := chunkAt(tokens, end)
	if unit, size := unitAt(tokens, end); size > 0 && !oneCapital(&tokens[end]) && tokens[end].text != "L" {
		if unit != "mL" || len(b.words) < 2 {
			return begin
		}
		b.end = end
		return end + size // "GANNET 500 c.c."
	}
	if c.to > end && c.letters == len(c.text) && len(c.text) < 4 && tokens[end].upper && !tokens[end].function && !isName(tokens[end].fold) {
		b.code = plainWord(c.text)
		return c.to
	}
	return end
}
