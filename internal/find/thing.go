package find

import (
	"slices"
	"strings"
)

// Thing is what can be asked of a bike.
type Thing string

// The things: what is opened, the oils' figures, what of a fastener is asked, and of which oil.
const (
	Drain      Thing = "drain"
	Filter     Thing = "filter"
	Strainer   Thing = "strainer"
	Filler     Thing = "filler"
	LevelScrew Thing = "level-screw"

	Oil      Thing = "oil"
	Volume   Thing = "volume"
	Grade    Thing = "grade"
	Level    Thing = "level"
	Interval Thing = "interval"

	Torque Thing = "torque"
	Tool   Thing = "tool"
	Washer Thing = "washer"

	Engine     Thing = "engine"
	Gearbox    Thing = "gearbox"
	Primary    Thing = "primary"
	FinalDrive Thing = "final-drive"
)

// Things lists them.
var Things = []Thing{Drain, Filter, Strainer, Filler, LevelScrew, Oil, Volume, Grade, Level, Interval, Torque, Tool, Washer,
	Engine, Gearbox, Primary, FinalDrive}

// None stands for the words that people say in a question and that ask for nothing.
const None Thing = "none"

// Named are all whose names a search is given.
var Named = append(slices.Clone(Things), None)

// how is in which way a name of a thing may have been typed.
type how int

const (
	asNamed  how = iota
	asBegun      // the last word is the beginning of a name: one is still typing
	withSlip     // a letter of it is wrong
)

// names are what people call a thing.
func (s *Search) names(t Thing) []string { return strings.Split(s.Names[string(t)], ",") }

// question is what is asked, and what is left to say of which bike.
type question struct {
	things []Thing
	rest   []word
}

// asked takes the names of things out of what was typed, the longest first.
func (s *Search) asked(words []word, as how) question {
	var q question
	for len(words) > 0 {
		found, used := s.thingsAt(words, as)
		if used == 0 {
			q.rest, words = append(q.rest, words[0]), words[1:]
			continue
		}
		for _, t := range found {
			if !slices.Contains(q.things, t) {
				q.things = append(q.things, t)
			}
		}
		words = words[used:]
	}
	if len(q.things) > 0 {
		q.rest = s.weighty(q.rest)
	}
	return q
}

// leastBegunName is how many letters of a name make it likely: with one, each would be many.
const leastBegunName = 2

// thingsAt are the things whose name what was typed begins with, and of how many words the
// name is. Where one name is longer than the others, it is that alone.
func (s *Search) thingsAt(words []word, as how) (list []Thing, used int) {
	for _, t := range Things {
		for _, name := range s.names(t) {
			n := begins(words, strings.Fields(name), as)
			switch {
			case n == 0 || n < used:
			case n > used:
				list, used = []Thing{t}, n
			case !slices.Contains(list, t):
				list = append(list, t)
			}
		}
	}
	return list, used
}

// begins reports how many of the typed words are that name; 0 where they aren't.
func begins(words []word, name []string, as how) int {
	if len(name) == 0 || len(words) < len(name) {
		return 0
	}
	for i, part := range name {
		w := &words[i]
		switch {
		case w.volume:
			return 0
		case w.text == part:
		case as == asBegun && i == len(words)-1 && len(w.text) >= leastBegunName && strings.HasPrefix(part, w.text):
		case as == withSlip && len(w.text) >= leastBegun && slip([]rune(w.text), []rune(part), false):
		default:
			return 0
		}
	}
	return len(name)
}

// weighty are the words without those that ask for nothing.
func (s *Search) weighty(words []word) []word {
	var list []word
	for _, w := range words {
		light := false
		for _, name := range s.names(None) {
			light = light || strings.TrimSpace(name) == w.text
		}
		if !light {
			list = append(list, w)
		}
	}
	return list
}
