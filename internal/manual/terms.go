package manual

import (
	"slices"
	"strings"
	"sync"
)

// entry is a spelling of the dictionary, as words. A star at a word's end stands for any
// letters.
type entry struct {
	words  []string
	senses []string
}

// dictionary holds the terms of one language.
type dictionary struct {
	language string
	function map[string]bool
	entries  []entry
	// Entries by their first word: by the whole of it; by its stem, where letters may
	// follow; by the first letters of its stem, where letters may stand before it.
	exact, stem, inner map[string][]int32
	known              map[string]bool     // each whole word of a spelling
	blur               *dictionary         // its words, as they look
	oilWords           []string            // for oil, of whatever
	long               map[string][]string // long words, by their first two letters
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

func (l *language) dictionary() *dictionary {
	l.once.Do(func() {
		d := &dictionary{language: l.tag, function: map[string]bool{}, exact: map[string][]int32{}, stem: map[string][]int32{}, inner: map[string][]int32{}, known: map[string]bool{}}
		for _, w := range l.function {
			d.function[fold(strings.TrimPrefix(w, "~"))] = true
		}
		at := map[string]int{}
		for line := range strings.SplitSeq(l.lines, "\n") {
			sense, spellings, _ := strings.Cut(line, "\t")
			if spellings == "" {
				continue
			}
			for s := range strings.SplitSeq(spellings, "|") {
				d.add(at, s, sense)
			}
		}
		l.words = d
	})
	return l.words
}

// add enters a spelling.
func (d *dictionary) add(at map[string]int, spelling, sense string) {
	words := wordsOf(spelling)
	if len(words) == 0 {
		return
	}
	key := strings.Join(words, " ")
	if n, ok := at[key]; ok {
		if !slices.Contains(d.entries[n].senses, sense) { // spelled with an accent and without
			d.entries[n].senses = append(d.entries[n].senses, sense)
		}
		return
	}
	n := len(d.entries)
	at[key] = n
	d.entries = append(d.entries, entry{words, []string{sense}})
	first := words[0]
	switch stem, before := strings.CutPrefix(first, "*"); {
	case before:
		stem = strings.TrimSuffix(stem, "*")
		if len(stem) >= innerLetters {
			d.inner[stem[:innerLetters]] = append(d.inner[stem[:innerLetters]], int32(n))
		}
	case strings.HasSuffix(first, "*"):
		stem = strings.TrimSuffix(first, "*")
		d.stem[stem] = append(d.stem[stem], int32(n))
	default:
		d.exact[first] = append(d.exact[first], int32(n))
	}
	for _, w := range words {
		if len(w) > 1 && !strings.Contains(w, "*") {
			d.known[w] = true
		}
	}
}

// wordsOf takes a spelling apart as a page is taken apart.
func wordsOf(spelling string) []string {
	spelling = fold(spelling)
	for _, s := range [...]string{"-", "'", "’", "."} {
		spelling = strings.ReplaceAll(spelling, s, " ")
	}
	for _, s := range [...]string{"/", "&", "(", ")", ","} {
		spelling = strings.ReplaceAll(spelling, s, " "+s+" ")
	}
	return strings.Fields(spelling)
}

// term is a spelling that was met in a page.
type term struct {
	from, to int // tokens
	senses   []string
	language string
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
	best := 0
	d.each(tokens, at, func(e *entry, size int) {
		weight := size<<12 + len(e.words)<<8 + min(len(e.words[0]), 127)<<1 // a longer stem says more
		if !strings.Contains(e.words[0], "*") {
			weight++
		}
		if weight > best {
			found, length, best = e, size, weight
		}
	})
	return found, length
}

// each gives every entry that stands at a token, with how many tokens it takes.
func (d *dictionary) each(tokens []token, at int, give func(e *entry, size int)) {
	w := tokens[at].fold
	try := func(list []int32) {
		for _, n := range list {
			if size := d.entries[n].matches(tokens, at); size > 0 {
				give(&d.entries[n], size)
			}
		}
	}
	try(d.exact[w])
	if tokens[at].kind != word {
		return
	}
	for n := 2; n <= len(w) && n < mostWord; n++ {
		if list, ok := d.stem[w[:n]]; ok {
			try(list)
		}
	}
	if len(d.inner) > 0 {
		for n := 0; n+innerLetters <= len(w) && n < mostWord; n++ {
			if list, ok := d.inner[w[n:n+innerLetters]]; ok {
				try(list)
			}
		}
	}
}

// mostWord is the most bytes of a word that are looked at.
const mostWord = 48

// matches gives how many tokens an entry takes that stands at a token, 0 if it does not.
func (e *entry) matches(tokens []token, at int) int {
	i := at
	for n, pattern := range e.words {
		if n > 0 {
			for i < len(tokens) && tokens[i].gap != wide && tokens[i].text != pattern && joins(tokens, i) {
				i++
			}
			if i >= len(tokens) || tokens[i].gap == wide {
				return 0
			}
		}
		if !like(pattern, tokens[i].fold) {
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
		if len(before.fold) > 2 && i+1 < len(tokens) && !small(tokens[i+1:i+2]) && before.text != strings.ToUpper(before.text) {
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
	if d.oilWords == nil {
		d.oilWords = []string{}
		for i := range d.entries {
			if e := &d.entries[i]; len(e.words) == 1 && slices.Contains(e.senses, "oil.any") {
				d.oilWords = append(d.oilWords, strings.Trim(e.words[0], "*"))
			}
		}
	}
	return d.oilWords
}
