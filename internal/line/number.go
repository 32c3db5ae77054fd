package line

import (
	"strconv"
	"strings"
)

// spoken are numbers that are no whole ones, as the quantity's reader takes them.
var spoken = map[string]string{"half": "1/2", "quarter": "1/4", "three-quarters": "3/4", "two-thirds": "2/3",
	"one-third": "1/3", "one-and-a-half": "1.5", "two-and-a-half": "2.5"}

// numberAt reads a number in words at a token, "twenty-five", "minus ten", "two and a
// half", and says how many tokens it has; 0 where there is none. A lone one is a number
// only before a unit: it is an article too.
func (s *speech) numberAt(at int) (text string, used int) {
	i := at
	sign := ""
	if _, n := s.senseAt(i, "number.minus"); n > 0 && !s.inTerm(i) { // "al menos" is no minus
		sign, i = "-", i+n
	}
	if sign != "" && i < len(s.tokens) && s.tokens[i].Number {
		return sign + s.tokens[i].Text, i + 1 - at
	}
	if _, n := s.senseAt(i, "number.per"); n > 0 && sign == "" && s.perTime(i, i+n) {
		if i += n; s.tokens[i].Text == "'" {
			n++
		}
		return "1", n
	}
	if part, n := s.shareAt(i); n > 0 && sign == "" {
		return part, i + n - at
	}
	whole, n := s.wholeAt(i)
	digits := ""
	if n > 0 {
		digits = strconv.Itoa(whole)
	} else if i < len(s.tokens) && s.tokens[i].Number && i == at {
		// "2 and a half", "2 point 5"
		if _, err := strconv.Atoi(s.tokens[i].Text); err != nil {
			return "", 0
		}
		digits, n = s.tokens[i].Text, 1
		if more, k := s.beyond(i + n); k > 0 {
			return digits + more, n + k
		}
		return "", 0
	}
	if n == 0 {
		return "", 0
	}
	i += n
	if more, k := s.beyond(i); k > 0 {
		return sign + digits + more, i + k - at
	}
	if whole == 1 && n == 1 && sign == "" && !s.unitAt(i) {
		return "", 0
	}
	return sign + digits, i - at
}

// perTime reports whether words stand before a unit of time and behind a word that is counted, as
// in "drops per minute", and behind no distance: "km per hour" is a speed.
func (s *speech) perTime(at, next int) bool {
	if at == 0 || next >= len(s.tokens) || !s.tokens[at-1].Word {
		return false
	}
	for i := range s.terms { // "turns per minute" is one name
		if t := &s.terms[i]; t.First < at && t.Last > at && strings.HasPrefix(t.Sense, "ask.") {
			return false
		}
	}
	far, _ := s.senseAt(at-1, "unit.")
	if far == "" {
		far = s.tokens[at-1].Fold
	}
	if s.tokens[next].Text == "'" && next+1 < len(s.tokens) { // "all'ora"
		next++
	}
	unit, _ := s.senseAt(next, "unit.")
	if unit == "" {
		unit = s.tokens[next].Fold
	}
	return far != "km" && far != "mi" && far != "m" && (unit == "min" || unit == "h" || unit == "s")
}

// shareAt reads a part of a whole: the longest words of it before a unit, "three quarters
// of a turn", else the shortest: what it is of names a field, "two thirds of the band".
func (s *speech) shareAt(at int) (part string, used int) {
	for i := range s.terms {
		t := &s.terms[i]
		name, is := strings.CutPrefix(t.Sense, "number.")
		if !is || t.First != at || spoken[name] == "" {
			continue
		}
		n := t.Last - at
		if longer := n > used; used == 0 || s.unitAt(t.Last) && (longer || !s.unitAt(at+used)) || !longer && !s.unitAt(at+used) {
			part, used = spoken[name], n
		}
	}
	if _, n := s.senseAt(at+used, "number.1"); used > 0 && n > 0 && s.unitAt(at+used+n) { // "half an hour"
		used += n
	}
	return part, used
}

// beyond reads what comes behind a whole number: "point five", "and a half".
func (s *speech) beyond(at int) (text string, used int) {
	if _, n := s.senseAt(at, "number.point"); n > 0 {
		i := at + n
		text = "."
		for {
			v, n := s.wholeAt(i)
			if n == 0 && i < len(s.tokens) && s.tokens[i].Number && len(text) == 1 {
				return text + s.tokens[i].Text, i + 1 - at
			}
			if n == 0 || v > 99 {
				break
			}
			text, i = text+strconv.Itoa(v), i+n
		}
		if len(text) > 1 {
			return text, i - at
		}
	}
	if _, n := s.senseAt(at, "join.and"); n > 0 {
		if name, k := s.senseAt(at+n, "number."); k > 0 {
			switch name {
			case "half":
				return ".5", n + k
			case "quarter":
				return ".25", n + k
			case "three-quarters":
				return ".75", n + k
			}
		}
	}
	return "", 0
}

// unitAt reports whether a word for a unit stands at a token.
func (s *speech) unitAt(at int) bool {
	if at >= len(s.tokens) || !s.tokens[at].Word {
		return false
	}
	_, used := s.senseAt(at, "unit.")
	return used > 0 || readsAsUnit(s.tokens[at].Text, s.system)
}

// sum adds up the parts of a number: from large to small, and "fünfundzwanzig" from small
// to large.
type sum struct {
	value, open int // open is what a following hundred or thousand multiplies
	parts       int
}

// add takes in a part; false where it makes no number with those before it.
func (u *sum) add(v int) bool {
	switch {
	case v == 1000 || v == 100:
		if u.open >= v || u.open == 0 && u.parts > 0 {
			return false
		}
		u.open = max(u.open, 1) * v
		if v == 1000 {
			u.value, u.open = u.value+u.open, 0
		}
	case u.open == 0, u.open%100 == 0, u.open%100 >= 20 && u.open%10 == 0 && v < 20:
		u.open += v
	case u.open%100 < 10 && v >= 20 && v%10 == 0:
		u.open += v
	default:
		return false
	}
	u.parts++
	return true
}

func (u *sum) total() int { return u.value + u.open }

// wholeAt reads a whole number in words at a token.
func (s *speech) wholeAt(at int) (value, used int) {
	var u sum
	i := at
	for i < len(s.tokens) {
		from := i
		if u.parts > 0 {
			if _, n := s.senseAt(i, "join.and"); n > 0 {
				from = i + n
			} else if s.tokens[i].Text == "-" && s.tokens[i].Glued {
				from = i + 1
			}
		}
		next := u
		n := s.partAt(from, &next)
		if n == 0 {
			break
		}
		u, i = next, from+n
	}
	if u.parts == 0 {
		return 0, 0
	}
	return u.total(), i - at
}

// partAt takes one part of a number in: a word of its own, or one that is joined of
// several.
func (s *speech) partAt(at int, u *sum) (used int) {
	if at >= len(s.tokens) || !s.tokens[at].Word {
		return 0
	}
	if name, n := s.senseAt(at, "number."); n > 0 {
		if v, err := strconv.Atoi(name); err == nil && u.add(v) {
			return n
		}
		return 0
	}
	if s.joined(s.tokens[at].Fold, u, true) {
		return 1
	}
	return 0
}

// joined takes a word apart into parts of a number, and reports whether all of it is one.
func (s *speech) joined(word string, u *sum, first bool) bool {
	if word == "" {
		return true
	}
	for _, p := range s.ear.Parts {
		rest, is := strings.CutPrefix(word, p.Text)
		v, err := strconv.Atoi(p.Sense)
		if !is || err != nil || first && rest == "" {
			continue
		}
		next := *u
		if next.add(v) && s.joined(rest, &next, false) {
			*u = next
			return true
		}
	}
	if first {
		return false
	}
	for _, p := range s.ear.Parts {
		if rest, is := strings.CutPrefix(word, p.Text); is && p.Sense == "and" && rest != "" && s.joined(rest, u, false) {
			return true
		}
	}
	return false
}
