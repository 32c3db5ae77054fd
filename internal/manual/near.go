package manual

import (
	"slices"
	"strings"
)

// leastNear is of how many letters a word is at least that one wrong letter does not hide.
const leastNear = 8

// mostEnding is how many letters of a word may be its ending: "lubricate", "lubricated".
const mostEnding = 3

// sized is a word of the dictionary with its letters.
type sized struct {
	stem string
	word int32
}

// nearWord gives the word of the dictionary that is one letter off a long word that nobody
// knows, "" where there is none or several: one letter more, less or another, and none of the
// first two, nor one of its ending.
func (d *dictionary) nearWord(x *lexeme) (found string) {
	w := x.fold
	if len(w) < leastNear {
		return ""
	}
	for _, n := range d.nearWords(x) {
		v := &d.words[n]
		if o := v.text; !v.starred && len(o) >= leastNear && w[:2] == o[:2] && w[len(w)-mostEnding:] == o[len(o)-mostEnding:] {
			if found != "" {
				return ""
			}
			found = o
		}
	}
	return found
}

// nearWords lists the words of the dictionary's spellings that are one letter off a word of
// the page.
func (d *dictionary) nearWords(x *lexeme) []int32 {
	if x.neared {
		return x.near
	}
	d.once.near.Do(func() {
		for i := range d.words {
			if v := &d.words[i]; v.spelled && len(v.text) <= mostWord {
				stem := strings.TrimSuffix(v.text, "*")
				d.bySize[len(stem)] = append(d.bySize[len(stem)], sized{stem, int32(i)})
			}
		}
	})
	x.neared = true
	for size := max(len(x.fold)-1, 0); size <= min(len(x.fold)+1, mostWord); size++ {
		for i := range d.bySize[size] {
			if s := &d.bySize[size][i]; oneOff(x.fold, s.stem) {
				x.near = append(x.near, s.word)
			}
		}
	}
	return x.near
}

// oneOff reports whether two words differ in one letter, which one of them may lack.
func oneOff(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if n := len(a) - 1; len(b)-len(a) > 1 || n > 0 && a[0] != b[0] && a[n] != b[len(b)-1] { // most words, at once
		return false
	}
	from := 0
	for from < len(a) && a[from] == b[from] {
		from++
	}
	return a[min(from+1-(len(b)-len(a)), len(a)):] == b[min(from+1, len(b)):]
}

// nearlyOther reports whether a word between two tokens is nearly one for a thing of another
// job: a "coolanf drain bolt" is none of ours.
func (r *readings) nearlyOther(from, to int) bool {
	return r.nearly(from, to, "other.part", "other.fluid")
}

// nearly reports whether a word between two tokens that nobody knows is one letter off a word
// of one of the senses.
func (r *readings) nearly(from, to int, senses ...string) bool {
	for i := from; i < to; i++ {
		w := r.places[i].fold
		if len(w) < leastAlone || !r.unknown(i) {
			continue
		}
		for _, n := range r.words.nearWords(r.places[i].lexeme) {
			if r.words.within(n, senses) {
				return true
			}
		}
	}
	return false
}

// within reports whether a word stands in a spelling of one of the senses.
func (d *dictionary) within(word int32, senses []string) bool {
	for n := range d.entries {
		e := &d.entries[n]
		if slices.Contains(d.parts[e.from:e.from+e.count], word) && slices.ContainsFunc(senses, func(s string) bool { return slices.Contains(e.senses, s) }) {
			return true
		}
	}
	return false
}
