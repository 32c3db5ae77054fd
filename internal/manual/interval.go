package manual

import "tidysump/internal/quantity"

// what a distance or a long time is of.
const (
	regular = ""
	first   = "first"
	severe  = "severe"
)

// intervals reads distances, months and hours between changes.
func (r *readings) intervals() {
	type told struct{ role, subject string }
	var before told
	lastSentence := -1
	lastEnd := -1
	for i := range r.facts {
		f := &r.facts[i]
		long := f.kind == string(quantity.Duration) && f.low > 24*60*5 || f.unit == "h"
		if f.kind != string(quantity.Distance) && !long {
			continue
		}
		from, to := r.sentenceOf(f.from)
		begin := from
		if lastSentence == r.places[f.from].sentence {
			begin = lastEnd
		}
		next := r.nextLong(f.end(), to)
		joined := lastSentence == r.places[f.from].sentence && r.onlyJoins(lastEnd, f.from)
		role, subjects, ok := r.intervalRole(f, begin, next, from, to)
		if joined && before.subject != "" {
			role, subjects, ok = before.role, []string{before.subject}, true
		}
		lastSentence, lastEnd = r.places[f.from].sentence, f.end()
		if !ok {
			before = told{}
			continue
		}
		before = told{role, subjects[0]}
		for _, s := range subjects {
			r.interval(f, s, role, begin)
		}
	}
}

// nextLong gives where the next distance begins in a sentence.
func (r *readings) nextLong(at, to int) int {
	for i := at; i < to; i++ {
		if f := r.factAt(i); f != nil && f.kind == string(quantity.Distance) {
			return i
		}
	}
	return to
}

// onlyJoins reports whether nothing but "or", "and", a comma or a stroke stands between
// two figures: they are one rule.
func (r *readings) onlyJoins(from, to int) bool {
	if to-from > 5 {
		return false
	}
	for i := from; i < to; i++ {
		t := &r.places[i]
		if t.kind == sign && (t.text == "," || t.text == "/" || t.text == "(" || t.text == ")") || r.senseAt(i, "join.or") || r.words.function[t.fold] && !r.senseAt(i, "when.then") || r.senseAt(i, "when.every") {
			continue
		}
		return false
	}
	return true
}

// intervalRole finds what a distance or a time is of.
func (r *readings) intervalRole(f *fact, begin, next, from, to int) (role string, subjects []string, ok bool) {
	clauseFrom, _ := r.clauseOf(f.from)
	has := func(a, b int, sense string) bool {
		for i := a; i < b; i++ {
			if r.senseAt(i, sense) && !r.places[i].taken {
				return true
			}
		}
		return false
	}
	then := has(f.end(), next, "when.then")
	every := has(begin, f.from, "when.every")
	firstWord := has(begin, f.from, "when.first") || !every && has(f.end(), min(next, f.end()+6), "when.first")
	afterThen := has(from, f.from, "when.then")
	hard := has(begin, f.from, "when.severe") || has(f.end(), next, "when.severe") && !has(begin, f.from, "when.every") || r.severeHeading(f.from) || has(clauseFrom, f.from, "when.severe")
	switch {
	case hard && !firstWord:
		role = severe
	case firstWord && !every:
		role = first
	case then && !every && !afterThen:
		role = first
	}
	// What is changed.
	mentionsOf := func(a, b int) (list []string, foreign bool) {
		for n := r.mentionFrom(a); n < len(r.mentions) && r.mentions[n].from < b; n++ {
			m := &r.mentions[n]
			s := r.changed(m)
			if s == "" {
				if m.foreign {
					foreign = true
				}
				continue
			}
			list = append(list, s)
		}
		return list, foreign
	}
	looks := has(from, f.from, "other.action") || has(f.end(), next, "other.action")
	changes := has(from, next, "when.change") || has(from, next, "every.1")
	if looks && !has(from, next, "when.change") && !(role == first) {
		return role, nil, false
	}
	list, foreign := mentionsOf(begin, f.from)
	if len(list) == 0 && !foreign {
		after, other := mentionsOf(f.end(), next)
		list, foreign = after, other && len(after) == 0
	}
	if len(list) == 0 && !foreign && begin > from {
		list, foreign = mentionsOf(from, begin)
	}
	if foreign {
		return role, nil, false
	}
	oil := r.oilIn(from, to)
	if len(list) == 0 {
		if !oil && !changes && !every && role == regular {
			return role, nil, false
		}
		if r.stray(from, f.from) && !oil && !changes && role != first {
			return role, nil, false
		}
		circuit, other := r.headCircuit(f.from)
		if other {
			return role, nil, false
		}
		if circuit == "" {
			c, otherJob, named := r.circuitAt(from)
			if otherJob || named && c != "engine" && !oil {
				if otherJob {
					return role, nil, false
				}
				circuit = c
			}
			if circuit == "" {
				circuit = "engine"
			}
		}
		list = []string{circuit}
	}
	if role == regular && !every && !afterThen && !changes && !r.row(f.from) && !oil {
		return role, nil, false
	}
	return role, list, true
}

// row reports whether a token stands in a row of a table or behind a label.
func (r *readings) row(at int) bool {
	from, _ := r.sentenceOf(at)
	for i := from; i < at; i++ {
		if r.places[i].text == ":" || r.places[i+1].gap == wide {
			return true
		}
	}
	return false
}

func (r *readings) severeHeading(at int) bool {
	s := r.sections[r.places[at].section]
	for i := s.from; i < s.from+s.heading; i++ {
		if r.senseAt(i, "when.severe") {
			return true
		}
	}
	return false
}

// changed gives what is changed of a mention: an oil, the filter, the strainer.
func (r *readings) changed(m *mention) string {
	switch {
	case m.foreign:
		return ""
	case m.part == "filter" || m.part == "strainer":
		return m.part
	case m.part != "":
		return ""
	case m.gear:
		return r.gearOil()
	}
	return m.circuit
}

// interval adds the reading of a distance or a time.
func (r *readings) interval(f *fact, subject, role string, begin int) {
	what := "interval."
	unit := ""
	switch {
	case f.unit == "h":
		unit = "hours"
	case f.kind == string(quantity.Duration):
		unit = "months"
	}
	switch {
	case subject == "engine":
		what += role
		switch {
		case unit != "" && role != "":
			what += "-" + unit
		case unit != "":
			what += unit
		case role == "":
			what += "distance"
		}
	case unit != "":
		if role != regular {
			return
		}
		what += subject + "-" + unit
	default:
		what += subject
		if role != "" {
			what += "-" + role
		}
	}
	r.figure(what, f, r.firstMention(begin, f.from), false)
}

func (r *readings) firstMention(from, to int) *mention {
	if n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to {
		return &r.mentions[n]
	}
	return nil
}
