package manual

import (
	"slices"
	"strings"
	"sync"
)

// Token is a word, a number or a sign of a line that somebody types or says. From and To
// are bytes of the line.
type Token struct {
	Word, Number bool
	Glued        bool   // nothing stands between it and the one before it
	Text         string // in plain signs
	Fold         string // as terms are compared: small, without accents
	From, To     int
}

// Heard is a term that stands in a line: of the bench, or of those of the trade that the
// bench uses too. First is its first token, Last that behind its last.
type Heard struct {
	Sense       string
	First, Last int
}

// Ear knows the words of the bench in one language.
type Ear struct {
	words *dictionary
	// Parts are the words of numbers and those that join them, by what they mean: "20",
	// "and". Numbers are said as one word in some languages.
	Parts []Part
}

// Part is a word that a number may be joined of.
type Part struct{ Text, Sense string }

// mostHeard is about how many spellings an ear knows.
const mostHeard = 2000

// ears are made when a line needs them.
var ears struct {
	sync.Mutex
	of map[string]*Ear
}

// Languages lists the languages whose words are known.
func Languages() []string {
	var list []string
	for _, l := range allLanguages() {
		list = append(list, l.tag)
	}
	return list
}

// alike are the beginnings of the senses of the trade that the bench uses too.
var alike = [...]string{"number.", "unit.", "join.", "range.", "not", "with", "device.", "seal."}

// EarOf gives what is known of a language's words at the bench.
func EarOf(tag string) *Ear {
	ears.Lock()
	defer ears.Unlock()
	if e := ears.of[tag]; e != nil {
		return e
	}
	e := &Ear{words: newDictionary(tag, mostHeard)}
	enter := func(sense, spellings string) {
		e.words.add(spellings, []string{sense})
		for s := range strings.SplitSeq(spellings, "|") {
			if name, is := strings.CutPrefix(sense, "number."); is || sense == "join.and" {
				if !is {
					name = "and"
				}
				e.Parts = append(e.Parts, Part{s, name})
			}
		}
	}
	for _, l := range allLanguages() {
		if l.tag != tag {
			continue
		}
		for _, w := range l.function {
			enter("function", Spelled(strings.TrimPrefix(w, "~")))
		}
		for line := range strings.SplitSeq(l.lines, "\n") {
			sense, spellings, _ := strings.Cut(line, "\t")
			if slices.ContainsFunc(alike[:], func(a string) bool { return strings.HasPrefix(sense, a) }) {
				enter(sense, spellings)
			}
		}
	}
	if lines, known := benchOf(tag); known {
		for sense := range strings.SplitSeq(strings.TrimSuffix(benchSenses, "\n"), "\n") {
			var spellings string
			spellings, lines, _ = strings.Cut(lines, "\n")
			enter(sense, strings.TrimPrefix(spellings, "\t"))
		}
	}
	if ears.of == nil {
		ears.of = map[string]*Ear{}
	}
	ears.of[tag] = e
	return e
}

// benchOf gives the lines of a language in the table of the bench.
func benchOf(tag string) (lines string, known bool) {
	for part := range strings.SplitSeq("\n"+benchTable, "\n@") {
		if head, lines, _ := strings.Cut(part, "\n"); head == tag {
			return lines, true
		}
	}
	return "", false
}

// Hear takes a line apart, and gives all terms that stand in it.
func (e *Ear) Hear(line string) (tokens []Token, heard []Heard) {
	var list []token
	for n, r := range rowsOf(line, &lexemes{}) {
		if n > 0 {
			r.tokens[0].gap = wide
		}
		list = append(list, r.tokens...)
	}
	for at := range list {
		t := &list[at]
		tokens = append(tokens, Token{t.kind == word, t.kind == number, at > 0 && t.gap == glued, t.text, t.fold, t.from, t.to})
		e.words.each(list, at, func(found *entry, size int) {
			for _, sense := range found.senses {
				heard = append(heard, Heard{sense, at, at + size})
			}
		})
	}
	return tokens, heard
}
