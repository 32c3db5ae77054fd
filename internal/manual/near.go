package manual

import (
	"slices"
	"strings"
)

// leastNear is of how many letters a word is at least that one wrong letter does not hide.
const leastNear = 8

// mostEnding is how many letters of a word may be its ending: "lubricate", "lubricated".
const mostEnding = 3

// nearWord gives the word of the dictionary that is one letter off a long word that nobody
// knows, "" where there is none or several: one letter more, less or another, and none of the
// first two, nor one of its ending.
func (d *dictionary) nearWord(w string) (found string) {
	if len(w) < leastNear {
		return ""
	}
	if d.long == nil {
		d.long = map[string][]string{}
		for i := range d.entries {
			for _, o := range d.entries[i].words {
				if len(o) >= leastNear && !strings.Contains(o, "*") && !slices.Contains(d.long[o[:2]], o) {
					d.long[o[:2]] = append(d.long[o[:2]], o)
				}
			}
		}
	}
	for _, o := range d.long[w[:2]] {
		if oneOff(w, o) && w[len(w)-mostEnding:] == o[len(o)-mostEnding:] {
			if found != "" {
				return ""
			}
			found = o
		}
	}
	return found
}

// oneOff reports whether two words differ in one letter, which one of them may lack.
func oneOff(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 {
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
		for n := range r.words.entries {
			e := &r.words.entries[n]
			if !slices.ContainsFunc(senses, func(s string) bool { return hasSense(e, s) }) {
				continue
			}
			for _, o := range e.words {
				if oneOff(w, strings.TrimSuffix(o, "*")) {
					return true
				}
			}
		}
	}
	return false
}
