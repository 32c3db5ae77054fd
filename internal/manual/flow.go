package manual

import (
	"slices"
	"strings"
)

// place is a token with where it stands in the page's order of reading.
type place struct {
	*token
	piece, item, sentence, clause int
	paragraph                     int  // a blank line or a heading begins another
	section                       int  // index of sections
	term                          int  // index of terms, -1 for none
	taken                         bool // a shape or an amount has it
	unread                        bool // a number at a row's end of which nobody knows the unit
	foreign                       bool // in a passage of another job
}

// section is what stands below a heading.
type section struct {
	from, to int // tokens, the heading first
	heading  int // tokens of the heading
}

// page is a text that is being read.
type page struct {
	usual             string // the oil that is meant where none is named, once it was asked for
	geared            string // whose gear oil is, once it was asked for
	guessed           bool   // neither a gearbox nor a final drive tells that
	several           asked  // whether oils beside the engine's are named
	engine            asked  // whether anything of an engine but an amount is
	called            asked  // whether numbers in brackets call parts
	twoStroke         string // whose plain oil is where the engine burns its own, "" of other pages
	text              string
	words             *dictionary
	language          string            // "" of none that is known
	spoilt            bool              // letters were put right
	theme             uint8             // of foreignPage, 0 before it was asked
	inNames           map[string]string // of shortPart, nil before it was asked
	pieces            []piece
	tokens            []token
	places            []place
	terms             []term
	sections          []section
	facts             []fact
	mentions          []mention
	heads             []head
	starts            []int    // the first token of each piece
	looked, isScooter bool     // whether the page is of a scooter
	withFigures       []bool   // items
	units             string   // what a loose unit is here: of the US or imperial
	byToken           []int32  // of each token, the fact it is of, -1 for none
	beforeHeads       []int32  // of each token, the fact it was of before heads gave more
	sentences         []int32  // of each sentence, its first token
	models            []string // that a table's head names
	modelCells        []Span   // where
	number            string   // that is printed on it
	heaped            bool     // several bikes are named a line each, and nothing says whose a figure is
}

// shortWords may stand before a full stop that ends no sentence. Common practice.
const shortWords = "|approx|incl|excl|no|fig|max|min|imp|oz|fl|ca|bzw|ex|env|art|nr|abb|pag|par|p|u|z|b|s|a|o|d|qt|pt|gal|resp|inkl|exkl|ggf|evtl|circa|cap|ch|interv|rif|aprox|"

// mostSentence is after how many tokens a sentence ends at the next comma or line's end, and
// its item with it: what stands farther away says nothing of a figure, and looking for it there
// would take a long line more time than its length.
const mostSentence = 240

// asks reports whether a line ends in a question.
func asks(tokens []token) bool { return tokens[len(tokens)-1].text == "?" }

// flowOf lays a page's pieces in a row and parts them in sentences and clauses.
func (p *page) flowOf() {
	item, sentence, clause, paragraph, begun := 0, 0, 0, 0, 0
	count := 0
	for i := range p.pieces {
		count += len(p.pieces[i].tokens)
	}
	p.places = make([]place, 0, count)
	p.tokens = make([]token, 0, count)
	p.sections = []section{{}}
	over, around := -1, section{}
	for n := range p.pieces {
		piece := &p.pieces[n]
		switch {
		case piece.joined:
		case n > 0 && !piece.blank && !piece.heading && asks(p.pieces[n-1].tokens): // its answer
			clause++
		default:
			item, sentence, clause = item+1, sentence+1, clause+1
			begun = len(p.places)
		}
		if len(p.places)-begun > mostSentence {
			item, sentence, clause = item+1, sentence+1, clause+1
			begun = len(p.places)
		}
		if piece.blank || piece.heading || n > 0 && p.pieces[n-1].heading {
			paragraph++
		}
		if over >= 0 && !piece.joined && !piece.heading && piece.tokens[0].col <= over { // back in the section around
			p.sections[len(p.sections)-1].to = len(p.places)
			p.sections = append(p.sections, around)
			over = -1
		}
		if piece.heading {
			if over < 0 {
				around = p.sections[len(p.sections)-1]
			}
			over = -1
			if piece.over && !(piece.blank && capitals(piece.tokens)) { // in capitals and apart it is below no other
				over = piece.tokens[0].col
			}
			p.sections[len(p.sections)-1].to = len(p.places)
			p.sections = append(p.sections, section{from: len(p.places), heading: len(piece.tokens)})
		}
		mark := 0
		if !piece.joined {
			mark = bullet(piece.tokens)
		}
		for i, t := range piece.tokens {
			switch {
			case i > 0:
			case piece.joined && !piece.below:
				t.gap = blank
			default:
				t.gap = wide // no word reaches over a line's end where nothing goes on
			}
			p.tokens = append(p.tokens, t)
			p.places = append(p.places, place{token: &p.tokens[len(p.tokens)-1], piece: n, item: item, sentence: sentence, clause: clause, paragraph: paragraph, section: len(p.sections) - 1, term: -1, taken: i < mark})
			switch next := nextOf(piece.tokens, p.pieces, n, i); {
			case i < mark:
			case next != nil && next.gap == wide && i+1 < len(piece.tokens) && labelled(piece.tokens, i+1):
				sentence, clause, begun = sentence+1, clause+1, len(p.places)
			case t.kind != sign:
			case t.text == "." && t.gap == glued && next != nil && next.gap != glued && !shortened(piece.tokens, i, next) && !(piece.cells && inLabel(piece.tokens, i)), t.text == "!":
				sentence, clause, begun = sentence+1, clause+1, len(p.places)
			case strings.Contains(",;:|•?", t.text), t.text == "-" && t.gap != glued && next != nil && next.gap != glued:
				clause++
			}
			if n := len(p.places); n-begun > mostSentence && (p.places[n-1].clause != clause || n-begun > 2*mostSentence) {
				item, sentence, clause, begun = item+1, sentence+1, clause+1, n
			}
		}
	}
	p.sections[len(p.sections)-1].to = len(p.places)
}

// labelled reports whether a cell that begins at a token names a figure of its own, behind
// another that has had one: "oil change: 0.9 L    overhaul: 1.1 L".
func labelled(tokens []token, at int) bool {
	if tokens[at].kind != word || len(tokens[at].text) < 3 {
		return false
	}
	end, colon, figure := at+1, false, false
	for end < len(tokens) && tokens[end].gap != wide {
		if tokens[end].text == ":" {
			colon = true
		}
		if tokens[end].kind == number {
			if _, n := unitAt(tokens, end+1); n > 0 || colon {
				figure = true
			}
		}
		end++
	}
	if !figure {
		return false
	}
	for i := 0; i < at; i++ {
		if tokens[i].kind == number {
			if _, n := unitAt(tokens, i+1); n > 0 {
				return true
			}
		}
	}
	return false
}

// nextOf gives the token after one, also in the next line where that goes on.
func nextOf(tokens []token, pieces []piece, n, i int) *token {
	if i+1 < len(tokens) {
		return &tokens[i+1]
	}
	if n+1 < len(pieces) && pieces[n+1].joined {
		t := pieces[n+1].tokens[0]
		t.gap = blank
		return &t
	}
	return nil
}

// inLabel reports whether a token stands within the label of a row, which is short: a full stop there
// ends a word, "Drain scr. gearbox    25 N·m".
func inLabel(tokens []token, at int) bool {
	for i := 1; i < len(tokens) && i <= mostLabelTokens; i++ {
		if tokens[i].gap == wide {
			return i > at+1
		}
	}
	return false
}

// mostLabelTokens is how many tokens such a label has at most.
const mostLabelTokens = 6

// shortened reports whether a full stop belongs to a shortened word, or the sentence goes
// on behind it.
func shortened(tokens []token, i int, next *token) bool {
	if i == 0 {
		return false
	}
	before := &tokens[i-1]
	if next.kind == word && small([]token{*next}) {
		return true
	}
	if before.kind != word {
		return false
	}
	if next.kind == word && before.unitOf() != "" && strings.Contains("|u|us|usa|uk|imp|imperial|", "|"+next.fold+"|") { // "38 oz. U.S."
		return true
	}
	if next.text == "/" || next.text == "=" || next.text == "(" && (before.unitOf() != "" || len(before.text) <= 2) { // "2.6 pt. / 1.5 l."
		return true
	}
	if next.gap == wide && i > 1 && (tokens[i-2].kind == number || tokens[i-2].text == ".") && before.unitOf() != "" {
		return true // "3.5 qts.   3.3 L"
	}
	if next.kind != number {
		return len(before.text) == 1 && before.text != strings.ToLower(before.text) && before.gap != glued && !(i > 1 && tokens[i-2].kind == number) // "2.3 L. Fit …"
	}
	return len(before.text) == 1 && before.gap != glued || strings.Contains(shortWords, "|"+before.fold+"|")
}

// findTerms marks the terms of the trade.
func (p *page) findTerms() {
	p.terms = make([]term, 0, len(p.tokens)/2)
	for i := 0; i < len(p.tokens); {
		e, n := p.words.match(p.tokens, i)
		if e == nil {
			i++
			continue
		}
		if last, m := p.words.match(p.tokens, i+n-1); n > 2 && m > 1 && namesOil(e) && namesOil(last) {
			e, n = last, n-1+m // "the oil of the transmission" ends within "final transmission"
		} else if n > 2 && m > 1 && slices.Contains(last.senses, "part.level") && !slices.Contains(e.senses, "part.level") {
			if shorter, k := p.words.match(p.tokens[:i+n-1], i); k == n-1 {
				e, n = shorter, k // "gearbox oil level" ends within "level plug"
			}
		}
		for k := i; k < i+n; k++ {
			p.places[k].term = len(p.terms)
		}
		p.terms = append(p.terms, term{i, i + n, p.compoundOil(i, n, p.innerOil(i, n, e.senses))})
		i += n
	}
}

// compoundOil gives a term of one word the oil too that its beginning names: "Getriebeöl" in
// "Getriebeölablassschraube".
func (p *page) compoundOil(at, n int, senses []string) []string {
	if n != 1 || !slices.Contains(senses, "part.drain") && !slices.Contains(senses, "part.level") && !slices.Contains(senses, "part.filler") {
		return senses
	}
	p.words.each(p.tokens, at, func(e *entry, size int) {
		for _, s := range e.senses {
			if size == 1 && strings.HasPrefix(s, "oil.") && s != "oil.any" && !slices.Contains(senses, s) {
				senses = append(slices.Clone(senses), s)
			}
		}
	})
	return senses
}

// namesOil reports whether a spelling names whose oil it is.
func namesOil(e *entry) bool {
	return slices.ContainsFunc(e.senses, func(s string) bool { return strings.HasPrefix(s, "oil.") && s != "oil.any" })
}

// innerOil gives a term of several words the oil too that stands in it: "engine oil
// capacity" is of the engine's oil.
func (p *page) innerOil(at, n int, senses []string) []string {
	if n < 3 {
		return senses
	}
	for _, s := range senses {
		if strings.HasPrefix(s, "other.") || strings.HasPrefix(s, "oil.") || strings.HasPrefix(s, "part.") || strings.HasPrefix(s, "page.") {
			return senses
		}
	}
	for i := at; i < at+n-1; i++ {
		e, m := p.words.match(p.tokens[:at+n], i)
		if i == at {
			e, m = p.words.match(p.tokens[:at+n-1], i)
		}
		if e == nil || m < 2 {
			continue
		}
		for _, s := range e.senses {
			if strings.HasPrefix(s, "oil.") {
				return append(slices.Clone(senses), s)
			}
		}
	}
	return senses
}

// termAt gives the term that a token is of, nil for none.
func (p *page) termAt(i int) *term {
	if i < 0 || i >= len(p.places) || p.places[i].term < 0 {
		return nil
	}
	return &p.terms[p.places[i].term]
}

// senseAt reports whether a token is of a term of that sense.
func (p *page) senseAt(i int, sense string) bool {
	t := p.termAt(i)
	return t != nil && t.has(sense)
}

// about reports whether a sense stands between two tokens.
func (p *page) about(from, to int, sense string) bool {
	last := -1
	for i := max(from, 0); i < min(to, len(p.places)); i++ {
		if n := p.places[i].term; n != last && n >= 0 {
			if last = n; p.terms[n].has(sense) {
				return true
			}
		}
	}
	return false
}

// unknown reports whether a token is a word that says something nobody here knows.
func (p *page) unknown(i int) bool {
	t := &p.places[i]
	return t.kind == word && t.term < 0 && !t.taken && len(t.fold) > 2 && !t.function
}
