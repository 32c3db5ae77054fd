package debris

import "slices"

// Asked is one thing of a sign that a person is asked for.
type Asked struct {
	Name   string
	Words  []string // to choose from; none: yes or no
	Family string   // stem of the words' ids
	Front  bool     // asked at once
	// Once are words of earlier versions, which are understood and not asked for.
	Once []string
	// From and to are the first and last of the bits with which alone it is asked;
	// 0: always.
	from, to int
	// set takes the answer into a sign: a word's place, from 1, those of Once after
	// Words; or 1 for yes.
	set func(s *Sign, answer int)
}

// Asks are what makes up a sign, in the order of asking: of the calculation, of a
// step that looks, and of what is stored.
var Asks = [...]Asked{
	{Name: "found", Words: Bits, Family: "bit.", Front: true, set: func(s *Sign, answer int) { s.Bit = answer }},
	{Name: "depth", Words: Sizes, Family: "bit-size.", Front: true, from: Paste, to: Fuzz, set: func(s *Sign, answer int) { s.Depth = answer }},
	{Name: "size", Words: Sizes, Family: "bit-size.", Front: true, from: Flakes, to: Sealant, set: func(s *Sign, answer int) { s.Size = answer }},
	{Name: "amount", Words: Amounts, Family: "bit-amount.", Front: true, from: Flakes, to: Sealant, set: func(s *Sign, answer int) { s.Amount = answer }},
	{Name: "colour", Words: Colours, Family: "bit-colour.", Front: true, from: Glitter, to: Chip, set: func(s *Sign, answer int) { s.Colour = answer }},
	{Name: "magnet", Words: Magnets, Family: "bit-magnet.", Front: true, from: Glitter, to: Chip, set: func(s *Sign, answer int) { s.Magnet = answer }},
	{Name: "oil", Words: Oils, Family: "oil-look.", Front: true, Once: oilsOnce, set: func(s *Sign, answer int) { s.Oil = answer }},
	{Name: "noise", Words: Noises, Family: "new-noise.", Front: true, Once: noisesOnce, set: setNoise},
	{Name: "lamp", Front: true, set: func(s *Sign, answer int) { s.Lamp = answer > 0 }},
	{Name: "more", set: func(s *Sign, answer int) { s.More = answer > 0 }},
	{Name: "again", set: func(s *Sign, answer int) { s.Again = answer > 0 }},
	{Name: "firstService", set: func(s *Sign, answer int) { s.FirstService = answer > 0 }},
}

func setNoise(s *Sign, answer int) {
	switch s.Noise = answer; answer - len(Noises) {
	case 1:
		s.Noise = Fades
	case 2:
		s.Noise = NoNoise
	}
}

// Unasked gives, for Sign.Unasked, all that is not among the names.
func Unasked(names []string) uint {
	var list uint
	for n := range Asks {
		if !slices.Contains(names, Asks[n].Name) {
			list |= 1 << n
		}
	}
	return list
}

// asked reports whether the nth of Asks is asked for, with what was found.
func (s *Sign) asked(n int) bool {
	a := &Asks[n]
	return s.Unasked&(1<<n) == 0 && (a.from == 0 || s.Bit >= a.from && s.Bit <= a.to)
}

// When lists the bits with which alone it is asked; none: always.
func (a *Asked) When() []string {
	if a.from == 0 {
		return nil
	}
	return Bits[a.from-1 : a.to]
}

// Set takes in the answer to the nth of Asks: a word's place, from 1, or 1 for yes.
func (s *Sign) Set(n, answer int) { Asks[n].set(s, answer) }

// Yes and No are the answers where there is nothing to choose from.
const (
	Yes = "yes"
	No  = "no"
)

// Read makes a sign of answers by their names. Wrong are the names of those that
// can't be read, in a fixed order, whether the name or the answer is unknown.
func Read(answers map[string]string) (s Sign, wrong []string) {
	known := 0
	for n := range Asks {
		text, given := answers[Asks[n].Name]
		if given {
			known++
		}
		if answer := Asks[n].read(text); answer < 0 {
			wrong = append(wrong, Asks[n].Name)
		} else {
			s.Set(n, answer)
		}
	}
	if known == len(answers) {
		return s, wrong
	}
	var strange []string
	for name := range answers {
		if !isAsked(name) {
			strange = append(strange, name)
		}
	}
	slices.Sort(strange)
	return s, append(wrong, strange...)
}

// read gives an answer's number, 0 for none and -1 for one that isn't known.
func (a *Asked) read(text string) int {
	if text == "" {
		return 0
	}
	if len(a.Words) == 0 {
		switch text {
		case Yes:
			return 1
		case No:
			return 0
		}
	}
	if n := slices.Index(a.Words, text); n >= 0 {
		return n + 1
	}
	if n := slices.Index(a.Once, text); n >= 0 {
		return len(a.Words) + n + 1
	}
	return -1
}

// Word is the word id of what was answered, "" where that was nothing or no.
func (a *Asked) Word(answers map[string]string) string {
	switch text := answers[a.Name]; {
	case text == "" || text == No:
		return ""
	case len(a.Words) == 0:
		return "ask." + a.Name
	default:
		return a.Family + text
	}
}

func isAsked(name string) bool {
	for n := range Asks {
		if Asks[n].Name == name {
			return true
		}
	}
	return false
}
