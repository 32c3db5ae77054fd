package manual

import (
	"slices"
	"strings"
	"sync"
)

// entry is a spelling of the dictionary.
type entry struct {
	from, count int32 // its words among the dictionary's parts
	next        int32 // the entry behind it in its list, -1 for none
	weight      int32 // how much it says beyond how many tokens it takes
	senses      []string
}

// vocable is a word that stands in spellings. A star at its end stands for any letters.
type vocable struct {
	text     string
	hash     uint32
	first    int32 // of the list of entries that are looked up by it, -1 for none
	last     int32
	starred  bool
	spelled  bool // it stands in a spelling
	function bool // a small word
}

// known reports whether it is a whole word of a spelling, and no letter alone.
func (v *vocable) known() bool { return v.spelled && !v.starred && len(v.text) > 1 }

// dictionary holds the terms of one language. It is made without a text of its own: its
// words are pieces of the table.
type dictionary struct {
	language string
	words    []vocable
	slots    []int32 // of words by their hash: one more than the number, 0 for none
	// Entries are looked up by their first word: by the whole of it; by its stem, where
	// letters may follow; by the first letters of its stem, where letters may stand before it.
	entries []entry
	parts   []int32 // the words of all entries, one behind the other
	inner   bool    // some entry's first word begins with a star
	once    struct{ blur, oils, nots, near sync.Once }
	blur    *dictionary           // its words, as they look
	oil     []string              // for oil, of whatever
	not     []string              // for "not" and "without"
	bySize  [mostWord + 1][]sized // words, by how many letters they have
}

// innerLetters is how many letters an inner stem is looked up by.
const innerLetters = 4

var (
	languages     []*language
	languagesOnce sync.Once
)

// language is a part of the table, whose dictionary is made when a page needs it.
type language struct {
	tag      string
	function []string
	lines    string
	once     sync.Once
	words    *dictionary
}

func allLanguages() []*language {
	languagesOnce.Do(func() {
		for part := range strings.SplitSeq(strings.TrimPrefix(termsTable, "@"), "\n@") {
			head, lines, _ := strings.Cut(part, "\n")
			tag, function, _ := strings.Cut(head, "\t")
			languages = append(languages, &language{tag: tag, function: strings.Split(function, "|"), lines: lines})
		}
	})
	return languages
}

// languageOfTag gives the language that has a tag, such as "en"; nil for none.
func languageOfTag(tag string) *language {
	for _, l := range allLanguages() {
		if l.tag == tag {
			return l
		}
	}
	return nil
}

func (l *language) dictionary() *dictionary {
	l.once.Do(func() {
		d := newDictionary(l.tag, strings.Count(l.lines, "|")+strings.Count(l.lines, "\n"))
		for _, w := range l.function {
			d.words[d.word(fold(strings.TrimPrefix(w, "~")))].function = true
		}
		d.addLines(l.lines, func(string) bool { return true })
		l.words = d
	})
	return l.words
}

// newDictionary makes an empty one with room for so many spellings.
func newDictionary(tag string, room int) *dictionary {
	slots := 64
	for slots < 2*room {
		slots *= 2
	}
	return &dictionary{language: tag, words: make([]vocable, 0, room/2), slots: make([]int32, slots), entries: make([]entry, 0, room), parts: make([]int32, 0, 3*room)}
}

// addLines enters the spellings of a table's lines whose senses are wanted.
func (d *dictionary) addLines(lines string, want func(sense string) bool) {
	senses := make([]string, 0, strings.Count(lines, "\n")+1)
	for line := range strings.SplitSeq(lines, "\n") {
		sense, spellings, _ := strings.Cut(line, "\t")
		if spellings == "" || !want(sense) {
			continue
		}
		senses = append(senses, sense)
		d.add(spellings, senses[len(senses)-1:len(senses):len(senses)])
	}
}

// hashOf is where a word is looked for (FNV-1a).
func hashOf(text string) uint32 {
	h := noHash
	for i := 0; i < len(text); i++ {
		h = (h ^ uint32(text[i])) * hashPrime
	}
	return h
}

const (
	noHash    uint32 = 2166136261
	hashPrime uint32 = 16777619
)

// slot gives where the number of a word stands that is head and tail together, or would
// stand.
func (d *dictionary) slot(hash uint32, head, tail string) int {
	mask := len(d.slots) - 1
	at := int(hash^hash>>15) & mask
	for d.slots[at] != 0 {
		if v := &d.words[d.slots[at]-1]; v.hash == hash && len(v.text) == len(head)+len(tail) && v.text[:len(head)] == head && v.text[len(head):] == tail {
			break
		}
		at = (at + 1) & mask
	}
	return at
}

// find gives a word of the dictionary, nil for none.
func (d *dictionary) find(word string) *vocable {
	if n := d.slots[d.slot(hashOf(word), word, "")]; n > 0 {
		return &d.words[n-1]
	}
	return nil
}

// word gives the number of a word, which is entered where it is not known yet.
func (d *dictionary) word(text string) int32 {
	hash := hashOf(text)
	at := d.slot(hash, text, "")
	if d.slots[at] == 0 {
		if 2*len(d.words) >= len(d.slots) {
			d.grow()
			at = d.slot(hash, text, "")
		}
		d.words = append(d.words, vocable{text: text, hash: hash, first: -1, last: -1, starred: strings.IndexByte(text, '*') >= 0})
		d.slots[at] = int32(len(d.words))
	}
	return d.slots[at] - 1
}

// grow makes room for more words.
func (d *dictionary) grow() {
	d.slots = make([]int32, 2*len(d.slots))
	for n := range d.words {
		v := &d.words[n]
		d.slots[d.slot(v.hash, v.text, "")] = int32(n + 1)
	}
}

// add enters spellings of one sense, which strokes part: each in plain words, with a blank
// between two, as Spelled gives them.
func (d *dictionary) add(spellings string, sense []string) {
	from, begin := len(d.parts), 0
	for i := 0; i <= len(spellings); i++ {
		if i < len(spellings) && spellings[i] != ' ' && spellings[i] != '|' {
			continue
		}
		if i > begin {
			d.parts = append(d.parts, d.word(spellings[begin:i]))
		}
		begin = i + 1
		if (i == len(spellings) || spellings[i] == '|') && len(d.parts) > from {
			d.enter(from, sense)
			from = len(d.parts)
		}
	}
}

// enter enters the spelling whose words are the last of the dictionary's parts.
func (d *dictionary) enter(from int, sense []string) {
	words := d.parts[from:]
	key := words[0]
	first := d.words[key].text
	if first[0] == '*' {
		stem := strings.Trim(first, "*")
		if len(stem) < innerLetters {
			stem += "****" // found by no word
		}
		key = d.word(first[:1] + stem[:innerLetters])
		d.inner = true
	}
	n := d.words[key].first
	for ; n >= 0; n = d.entries[n].next {
		if e := &d.entries[n]; int(e.count) == len(words) && slices.Equal(d.parts[e.from:e.from+e.count], words) {
			if !slices.Contains(e.senses, sense[0]) { // spelled with an accent and without
				e.senses = append(e.senses, sense[0])
			}
			d.parts = d.parts[:from]
			return
		}
	}
	for _, w := range words {
		d.words[w].spelled = true
	}
	n = int32(len(d.entries))
	weight := len(words)<<8 + min(len(first), 127)<<1 // a longer stem says more
	if !d.words[words[0]].starred {
		weight++
	}
	d.entries = append(d.entries, entry{from: int32(from), count: int32(len(words)), next: -1, weight: int32(weight), senses: sense})
	if k := &d.words[key]; k.first < 0 {
		k.first, k.last = n, n
	} else {
		d.entries[k.last].next, k.last = n, n
	}
}

// text gives a word of an entry.
func (d *dictionary) text(e *entry, n int32) string { return d.words[d.parts[e.from+n]].text }

// Spelled takes a spelling apart as a page is taken apart: into plain words, with a blank
// between two.
func Spelled(spelling string) string {
	spelling = fold(spelling)
	for _, s := range [...]string{"-", "'", "’", "."} {
		spelling = strings.ReplaceAll(spelling, s, " ")
	}
	for _, s := range [...]string{"/", "&", "(", ")", ","} {
		spelling = strings.ReplaceAll(spelling, s, " "+s+" ")
	}
	return strings.Join(strings.Fields(spelling), " ")
}

// term is a spelling that was met in a page.
type term struct {
	from, to int // tokens
	senses   []string
}

func (t *term) has(sense string) bool {
	for _, s := range t.senses {
		if s == sense {
			return true
		}
	}
	return false
}

// begin gives the first sense of the term that begins so, without its beginning.
func (t *term) begin(prefix string) (string, bool) {
	for _, s := range t.senses {
		if rest, ok := strings.CutPrefix(s, prefix); ok {
			return rest, true
		}
	}
	return "", false
}

// match gives the longest entry that stands at a token, and how many tokens it takes.
func (d *dictionary) match(tokens []token, at int) (found *entry, length int) {
	x := d.settled(&tokens[at])
	best, behind, after := 0, -1, int32(-1) // the next word, and its number
	if x.single != nil {
		found, length, best = x.single, 1, 1<<12+int(x.single.weight)
	}
	for _, n := range x.entries {
		e := &d.entries[n]
		if e.count == 1 {
			continue
		}
		if behind < 0 {
			if behind = nextWord(tokens, at+1); behind == len(tokens) {
				return found, length
			}
			after = d.settled(&tokens[behind]).word
		}
		if second := d.parts[e.from+1]; second != after && !d.words[second].starred {
			continue
		}
		size := d.matches(e, tokens, at)
		if weight := size<<12 + int(e.weight); size > 0 && weight > best {
			found, length, best = e, size, weight
		}
	}
	return found, length
}

// each gives every entry that stands at a token, with how many tokens it takes.
func (d *dictionary) each(tokens []token, at int, give func(e *entry, size int)) {
	for _, n := range d.settled(&tokens[at]).entries {
		if size := d.matches(&d.entries[n], tokens, at); size > 0 {
			give(&d.entries[n], size)
		}
	}
}

// settled gives a token's word with what this dictionary knows of it.
func (d *dictionary) settled(t *token) *lexeme {
	if t.of == d {
		return t.lexeme
	}
	return t.twin(d)
}

// settle looks a word up.
func (d *dictionary) settle(x *lexeme) {
	x.of, x.word, x.known, x.function, x.likened, x.neared, x.near, x.parted, x.ends = d, -1, false, false, false, false, nil, false, nil
	if n := d.slots[d.slot(hashOf(x.fold), x.fold, "")]; n > 0 {
		v := &d.words[n-1]
		x.word, x.known, x.function = n-1, v.known(), v.function
	}
	var room [96]int32
	list := d.candidates(room[:0], x.fold, x.kind)
	x.single, x.entries = d.best(list), nil
	if len(list) > 0 {
		x.entries = slices.Clone(list)
	}
}

// settleRows looks all words of a page up, whose tokens then have what this dictionary knows.
func (d *dictionary) settleRows(rows []row) {
	for _, r := range rows {
		for i := range r.tokens {
			r.tokens[i].lexeme = d.settled(&r.tokens[i])
		}
	}
}

// single gives the entry of one word that says most of a word, nil for none.
func (d *dictionary) single(w string) *entry {
	var room [96]int32
	return d.best(d.candidates(room[:0], w, word))
}

// best gives the entry of one word that says most.
func (d *dictionary) best(list []int32) (found *entry) {
	for _, n := range list {
		if e := &d.entries[n]; e.count == 1 && (found == nil || e.weight > found.weight) {
			found = e
		}
	}
	return found
}

// candidates lists the entries whose first word a word is like.
func (d *dictionary) candidates(list []int32, w string, k kind) []int32 {
	hash := noHash
	for n := 0; n < len(w); n++ {
		hash = (hash ^ uint32(w[n])) * hashPrime
	}
	list = d.keyed(list, d.slot(hash, w, ""))
	if k != word {
		return list
	}
	hash = noHash
	for n := 1; n <= len(w) && n < mostWord; n++ {
		hash = (hash ^ uint32(w[n-1])) * hashPrime
		if n > 1 {
			list = d.keyed(list, d.slot((hash^'*')*hashPrime, w[:n], "*"))
		}
	}
	before := hashOf("*")
	for at := 0; d.inner && at+innerLetters <= len(w) && at < mostWord; at++ {
		hash = before
		for n := at; n < at+innerLetters; n++ {
			hash = (hash ^ uint32(w[n])) * hashPrime
		}
		for _, n := range d.keyed(nil, d.slot(hash, "*", w[at:at+innerLetters])) {
			if like(d.text(&d.entries[n], 0), w) {
				list = append(list, n)
			}
		}
	}
	return list
}

// keyed adds the entries that are looked up by the word in a slot.
func (d *dictionary) keyed(list []int32, slot int) []int32 {
	if n := d.slots[slot]; n > 0 {
		for e := d.words[n-1].first; e >= 0; e = d.entries[e].next {
			list = append(list, e)
		}
	}
	return list
}

// mostWord is the most bytes of a word that are looked at.
const mostWord = 48

// nextWord gives the first token from one on that may be a spelling's next word; the length
// of the tokens for none.
func nextWord(tokens []token, i int) int {
	for i < len(tokens) && tokens[i].gap != wide && tokens[i].kind == sign && joins(tokens, i) {
		i++
	}
	if i < len(tokens) && tokens[i].gap == wide {
		return len(tokens)
	}
	return i
}

// matches gives how many tokens an entry takes that stands at a token, whose word is like
// its first; 0 if it does not stand there.
func (d *dictionary) matches(e *entry, tokens []token, at int) int {
	i := at + 1
	for n := int32(1); n < e.count; n++ {
		if i = nextWord(tokens, i); i == len(tokens) || !like(d.text(e, n), tokens[i].fold) {
			return 0
		}
		i++
	}
	return i - at
}

// joins reports whether a sign may stand between two words of one spelling.
func joins(tokens []token, i int) bool {
	switch tokens[i].text {
	case "-", "'", "`":
		return true
	case ".":
		before := &tokens[i-1]
		if len(before.fold) > 2 && i+1 < len(tokens) && !small(tokens[i+1:i+2]) && !before.upper {
			return false // a sentence ends there
		}
		return len(before.fold) <= 4 && tokens[i].gap == glued
	}
	return false
}

// like compares a word of a spelling with one of a page.
func like(pattern, text string) bool {
	head, before := strings.CutPrefix(pattern, "*")
	stem, after := strings.CutSuffix(head, "*")
	switch {
	case before && after:
		return strings.Contains(text, stem)
	case before:
		return strings.HasSuffix(text, stem)
	case after:
		return strings.HasPrefix(text, stem)
	}
	return pattern == text
}

// oils gives the single words for oil of whatever.
func (d *dictionary) oils() []string {
	d.once.oils.Do(func() { d.oil = d.alone("oil.any", "") })
	return d.oil
}

// nots gives the single words for "not" and "without".
func (d *dictionary) nots() []string {
	d.once.nots.Do(func() { d.not = d.alone("not", "without") })
	return d.not
}

// alone gives the single words of one of two senses.
func (d *dictionary) alone(sense, other string) (list []string) {
	for i := range d.entries {
		if e := &d.entries[i]; e.count == 1 && (slices.Contains(e.senses, sense) || slices.Contains(e.senses, other)) {
			list = append(list, strings.Trim(d.text(e, 0), "*"))
		}
	}
	return list
}
