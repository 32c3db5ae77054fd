package find

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// word is one thing that was typed: a word, or a volume with its unit.
type word struct {
	text string
	bare string // without the signs between its letters: "10w-40" as "10w40"; "2.5" is not "25"
	// Of a volume with its unit: from low to high, in L.
	volume    bool
	low, high float64
}

// around are the signs beside a word that are none of it.
const around = `.,;:!?()"'“”‘’„«»…`

// read parts what is typed into words. A number and its unit are one.
func (s *Search) read(typed string) []word {
	var list []word
	parts := strings.Fields(typed)
	for i := 0; i < len(parts); i++ {
		text := strings.Trim(parts[i], around)
		if text == "" {
			continue
		}
		if v, used := s.volume(parts[i:]); used > 0 {
			list = append(list, v)
			i += used - 1
			continue
		}
		w := word{text: text}
		if strings.IndexFunc(text, isLetter) >= 0 {
			w.bare = strings.Map(letterOrDigit, text)
		}
		list = append(list, w)
	}
	return list
}

func letterOrDigit(r rune) rune {
	if isLetter(r) || r >= '0' && r <= '9' {
		return r
	}
	return -1
}

// isLetter takes all for letters that are beyond the signs of the first alphabet: the tables
// of the others would weigh more than all of this room.
func isLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 0xAA && r != '–' && r != '—' }

// volume reads a volume at the beginning of what was typed, and says how many parts of it
// that is: "2.5l" is one, "2.5 L" are two, "85 fl oz" are three.
func (s *Search) volume(parts []string) (word, int) {
	if parts[0][0] < '0' || parts[0][0] > '9' {
		return word{}, 0
	}
	for used := min(3, len(parts)); used > 0; used-- {
		text := strings.TrimRight(strings.Join(parts[:used], " "), around)
		if low, high, ok := litres(text, s.System); ok {
			return word{text: text, volume: true, low: low, high: high}, used
		}
	}
	return word{}, 0
}

// litres reads a volume or a range of one with its unit.
func litres(text string, system quantity.System) (low, high float64, ok bool) {
	q := quantity.Ask{Kind: quantity.Volume, System: system}
	a, b, ranged, notes := q.ReadRange(text)
	if finding.Refused(notes) {
		return 0, 0, false
	}
	if !ranged {
		b = a
	}
	return a.Base, b.Base, true
}

// printedWithin is how far a printed volume may be from the one that it is printed of:
// quantity.Print keeps to it in every unit.
const printedWithin = 0.01

// stands reports whether the word stands in that line, in whole or in part.
func (s *Search) stands(w *word, line int) bool {
	if !w.volume {
		text := s.Lines[line]
		return strings.Contains(text, w.text) || w.bare != "" && w.bare != w.text && strings.Contains(text, w.bare)
	}
	if line >= len(s.Volumes) {
		return false
	}
	low, high, ok := litres(s.Volumes[line], s.System)
	return ok && w.low <= high*(1+printedWithin) && w.high >= low*(1-printedWithin)
}

// The least letters of a word that may have a slip, and of one of which only the beginning
// may stand there: shorter ones are a slip from too much (common practice, no source).
const (
	leastSlipped = 3
	leastBegun   = 4
)

// slipped reports whether a word of the text is the typed one but for one slip of a letter.
func (w *word) slipped(text string) bool {
	typed := []rune(w.text)
	if w.volume || len(typed) < leastSlipped {
		return false
	}
	for text != "" {
		part, rest, _ := strings.Cut(text, " ")
		text = rest
		if slip(typed, []rune(strings.Trim(part, around)), len(typed) >= leastBegun) {
			return true
		}
	}
	return false
}

// slip reports whether a typed word is another, or where that may be the beginning of it,
// but for one letter that is missing, too many or another one, or two that changed places.
// A figure is never another: of a digit nobody is forgiven.
func slip(typed, meant []rune, begun bool) bool {
	n, from := 0, min(len(typed), len(meant))
	for n < from && typed[n] == meant[n] {
		n++
	}
	same := func(i, j int) bool {
		rest, of := typed[min(i, len(typed)):], meant[min(j, len(meant)):]
		if len(rest) > len(of) || len(rest) < len(of) && !begun {
			return false
		}
		for k := range rest {
			if rest[k] != of[k] {
				return false
			}
		}
		return true
	}
	letter := func(list []rune, i int) bool { return i < len(list) && isLetter(list[i]) }
	t, m := letter(typed, n), letter(meant, n)
	switch {
	case n == len(typed): // all of it stands there; one letter may be missing at the end
		return m && (begun || len(meant) == n+1)
	case t && same(n+1, n), m && same(n, n+1), t && m && same(n+1, n+1):
		return true
	}
	return t && m && letter(typed, n+1) && letter(meant, n+1) && typed[n] == meant[n+1] && typed[n+1] == meant[n] && same(n+2, n+2)
}
