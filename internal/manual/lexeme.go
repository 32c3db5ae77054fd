package manual

import "strings"

// lexeme is a word, a number or a sign as it stands anywhere on a page, with what is known
// of it: a page has each of its words many times, and each is looked up once.
type lexeme struct {
	kind  kind
	text  string // plain signs, letters as given
	fold  string // as terms are compared
	upper bool   // no small letter is in it

	// What a dictionary knows of it.
	of       *dictionary
	next     *lexeme // the same word with what another dictionary knows, in a ring; nil for none
	word     int32   // its number there, -1 for none
	known    bool    // it stands in a spelling
	function bool    // it is a small word
	single   *entry
	entries  []int32 // whose first word it is like
	likened  bool    // it was looked up by its looks
	looks    string  // the word that it looks like, "" for none
	neared   bool    // those one letter off were looked for
	near     []int32
	parted   bool // it was looked at for the words that are joined in it
	ends     []int

	measured, begins bool // it was looked up as a unit; units begin so
	unit             string

	likenedUnit bool // it was looked up as a unit by its looks
	unitLooks   string

	told    bool // the languages were told whose small word it is
	tongues uint32
}

// newLexeme makes one that stands beside another, whose dictionary it has.
func newLexeme(beside *lexeme, k kind, text, folded string) *lexeme {
	x := &lexeme{kind: k, text: text, fold: folded, upper: text == strings.ToUpper(text), word: -1}
	if beside != nil && beside.of != nil {
		beside.of.settle(x)
	}
	return x
}

// lexemes are those of one page.
type lexemes struct {
	slots   []*lexeme
	count   int
	room    []lexeme // for the next ones
	spelled []byte   // room for the bytes of one
}

// of gives the lexeme of a text, whose bytes are spelled.
func (l *lexemes) of(k kind, spelled []byte) *lexeme {
	hash := noHash
	for _, c := range spelled {
		hash = (hash ^ uint32(c)) * hashPrime
	}
	if 2*l.count >= len(l.slots) {
		l.grow()
	}
	mask := len(l.slots) - 1
	at := int(hash^hash>>15) & mask
	for l.slots[at] != nil {
		if x := l.slots[at]; x.kind == k && x.text == string(spelled) {
			return x
		}
		at = (at + 1) & mask
	}
	if len(l.room) == 0 {
		l.room = make([]lexeme, 64+l.count/2)
	}
	x := &l.room[0]
	l.room = l.room[1:]
	text := string(spelled)
	*x = lexeme{kind: k, text: text, fold: fold(text), upper: text == strings.ToUpper(text), word: -1}
	l.slots[at] = x
	l.count++
	return x
}

// grow makes room for more.
func (l *lexemes) grow() {
	old := l.slots
	l.slots = make([]*lexeme, max(256, 4*len(old)))
	mask := len(l.slots) - 1
	for _, x := range old {
		if x == nil {
			continue
		}
		hash := hashOf(x.text)
		at := int(hash^hash>>15) & mask
		for l.slots[at] != nil {
			at = (at + 1) & mask
		}
		l.slots[at] = x
	}
}

// twin gives the word with what a dictionary knows of it: a text whose parts are of several
// languages has each of its words looked up once in each.
func (x *lexeme) twin(d *dictionary) *lexeme {
	if x.of == nil {
		d.settle(x)
		return x
	}
	for y := x.next; y != nil && y != x; y = y.next {
		if y.of == d {
			return y
		}
	}
	same := *x
	y := &same
	d.settle(y)
	if y.next == nil {
		y.next = x
	}
	x.next = y
	return y
}

// unitOf gives the unit that the word spells, "" for none.
func (x *lexeme) unitOf() string {
	x.measure()
	return x.unit
}

// beginsUnit reports whether the spelling of some unit begins with the word.
func (x *lexeme) beginsUnit() bool {
	x.measure()
	return x.begins
}
