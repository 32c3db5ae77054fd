// Package find answers what is typed into the search of the first screen: which bikes it
// may mean, by any word or figure that a list shows of them, and which figure of one it asks
// for ("corda drain").
//
//	Search.Find() -> which bikes, and what is asked of which of them    pure
//	Answers(card, things, system) -> the figures of the plan            pure
package find

import (
	"strings"

	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// mostAbout is of how many bikes a figure is told at once: more would be a list again.
const mostAbout = 3

// Search is what is typed, and what it is looked for in. Its texts are plain: without
// accents and capitals.
type Search struct {
	Typed string
	// Lines are the bikes of the list, each as the words that find it; Volumes are theirs as
	// they are shown, with their unit.
	Lines, Volumes []string
	// Names says how people call each of Things in their language, and what they say
	// beside it that asks for nothing (None), each a list with commas.
	Names  map[string]string
	System quantity.System
}

// Members names the search's members.
func (s *Search) Members(m *wire.Members) {
	m.String("typed", &s.Typed, wire.Required)
	wire.Texts(m, "lines", &s.Lines, wire.Required)
	wire.Texts(m, "volumes", &s.Volumes)
	m.TextMap("names", &s.Names)
	wire.Text(m, "system", &s.System)
}

// Found is what a search found.
type Found struct {
	Fits   []int   // places in the list, in its order
	Near   bool    // nothing stands there as it was typed: these differ by a letter
	About  []int   // the few bikes of which the things are asked
	Things []Thing // that are asked for; of no bike yet where About is empty
}

// Members names the members of what was found.
func (f *Found) Members(m *wire.Members) {
	m.Ints("fits", f.Fits)
	m.Bool("near", &f.Near)
	m.Ints("about", f.About)
	wire.Texts(m, "things", &f.Things)
}

// Find looks for what is typed: as it stands, as a question, and with a slip of a letter.
// What stands there as it was typed is found before anything like it.
func (s *Search) Find() Found {
	all := s.read(quantity.PlainDigits(strings.ToLower(s.Typed)))
	if len(all) == 0 {
		return Found{}
	}
	fits := s.matching(all)
	if len(fits) == 0 {
		return s.otherwise(all)
	}
	if q := s.asked(all, asNamed); len(q.things) > 0 && len(q.rest) > 0 {
		about := s.matching(q.rest) // all of those that fit, and others that are named
		return s.found(about, false, about, q.things)
	}
	return s.found(fits, false, nil, nil)
}

// otherwise is Find where nothing stands there as it was typed.
func (s *Search) otherwise(words []word) Found {
	exact := s.asked(words, asNamed)
	if len(exact.things) > 0 {
		if len(exact.rest) == 0 {
			return s.found(s.everyLine(), false, nil, exact.things)
		}
		if about := s.matching(exact.rest); len(about) > 0 {
			return s.found(about, false, about, exact.things)
		}
		if about := s.near(exact.rest); len(about) > 0 {
			return s.found(about, true, about, exact.things)
		}
	}
	if some := s.weighty(words); len(some) > 0 {
		words = some
	}
	if fits := s.matching(words); len(fits) > 0 {
		return s.found(fits, false, nil, nil)
	}
	others := [...]question{s.asked(words, asBegun), s.asked(words, withSlip)}
	for _, q := range others {
		if len(q.things) > 0 && len(q.rest) > 0 {
			if about := s.matching(q.rest); len(about) > 0 {
				return s.found(about, false, about, q.things)
			}
		}
	}
	if fits := s.near(words); len(fits) > 0 {
		return s.found(fits, true, nil, nil)
	}
	for _, q := range others {
		switch {
		case len(q.things) == 0:
		case len(q.rest) == 0:
			return s.found(s.everyLine(), false, nil, q.things)
		default:
			if about := s.near(q.rest); len(about) > 0 {
				return s.found(about, true, about, q.things)
			}
		}
	}
	return Found{}
}

// found puts together what was found. Of a list of one bike the question needs no name.
func (s *Search) found(fits []int, near bool, about []int, things []Thing) Found {
	if len(things) > 0 && len(s.Lines) == 1 {
		about = s.everyLine()
	}
	if len(about) > mostAbout {
		about = nil
	}
	return Found{Fits: fits, Near: near, About: about, Things: things}
}

func (s *Search) everyLine() []int {
	list := make([]int, len(s.Lines))
	for i := range list {
		list[i] = i
	}
	return list
}

// matching are the lines in which every word stands, in whole or in part.
func (s *Search) matching(words []word) []int {
	var list []int
	for i := range s.Lines {
		n := 0
		for n < len(words) && s.stands(&words[n], i) {
			n++
		}
		if n == len(words) {
			list = append(list, i)
		}
	}
	return list
}

// near are the lines in which every word stands, some with a slip of a letter: those with
// the fewest slips.
func (s *Search) near(words []word) []int {
	var list []int
	fewest := len(words) + 1
	for i := range s.Lines {
		slips := 0
		for n := range words {
			if s.stands(&words[n], i) {
				continue
			}
			slips++
			if slips > fewest || !words[n].slipped(s.Lines[i]) {
				slips = len(words) + 1
				break
			}
		}
		switch {
		case slips > len(words) || slips > fewest:
		case slips < fewest:
			fewest, list = slips, []int{i}
		default:
			list = append(list, i)
		}
	}
	return list
}
