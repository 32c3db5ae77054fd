package fault

import "strings"

// Other is the answer that none of a question's others fits: what it stands for is
// not known, and the worst of them counts.
const Other = "other"

// unknown is what follows where no rule is.
var unknown = Row{Outcome: "do-not-start", Sure: "guess"}

// Verdict is what follows: the row that counts, and the questions still open.
type Verdict struct {
	Row
	Open  []string
	Other []string // those answered with Other
	// Feared: an open question might have a better answer than the worst, which
	// counts.
	Feared bool
}

// judge goes through all that the open questions may be answered with.
type judge struct {
	*Fault
	questions map[string]string
	said      map[string]string
	hand      []string
	worst     int // place of the row; -1: none yet
	best      int // rank
	tries     int
}

// mostTries bounds what a foreign table can ask for; the real one needs a few dozen.
const mostTries = 1000

// Judge gives what follows from the answers given, by question, and what is at
// hand. An answer that the question doesn't have is none. With questions open, or
// answered with Other, the worst counts that any answer would give; where no row
// holds, the worst of all.
func Judge(t *Table, f *Fault, answers map[string]string, hand []string) *Verdict {
	j := judge{Fault: f, questions: t.Questions, said: map[string]string{}, hand: hand, worst: -1}
	v := &Verdict{}
	for _, q := range f.Asks {
		switch a := answers[q]; {
		case a == "" || !has(j.questions[q], a):
			v.Open = append(v.Open, q)
		case a == Other:
			v.Other = append(v.Other, q)
		default:
			j.said[q] = a
		}
	}
	j.try(append(v.Other[:len(v.Other):len(v.Other)], v.Open...))
	v.Row = *j.row(j.worst)
	if Rank(v.Outcome) == 0 {
		v.Outcome = unknown.Outcome
	}
	v.Feared = j.best < rank(&v.Row)
	if v.Feared {
		v.Sure = "guess"
	}
	return v
}

// try answers the open questions in every way, and keeps the worst row.
func (j *judge) try(open []string) {
	if j.tries++; j.tries > mostTries {
		j.worst = len(j.Rows)
		return
	}
	if len(open) > 0 {
		for _, a := range strings.Fields(j.questions[open[0]]) {
			if a != Other {
				j.said[open[0]] = a
				j.try(open[1:])
			}
		}
		return
	}
	at := j.first()
	now, most := rank(j.row(at)), 0
	if j.worst >= 0 {
		most = rank(j.row(j.worst))
	}
	// Of rows that are equally bad the later is the more general.
	if now > most || now == most && at > j.worst {
		j.worst = at
	}
	if j.best == 0 || now < j.best {
		j.best = now
	}
}

// row gives the row at a place, or what follows where there is none.
func (j *judge) row(at int) *Row {
	if at < 0 || at >= len(j.Rows) {
		return &unknown
	}
	return &j.Rows[at]
}

// first gives the place of the first row that holds, the number of rows for none.
func (j *judge) first() int {
	for n := range j.Rows {
		if j.holds(&j.Rows[n]) {
			return n
		}
	}
	return len(j.Rows)
}

func (j *judge) holds(r *Row) bool {
	for q, answers := range r.When {
		if !has(answers, j.said[q]) {
			return false
		}
	}
	have := strings.Join(j.hand, " ")
	for _, thing := range r.With {
		if !has(have, thing) {
			return false
		}
	}
	return true
}

// rank is that of the row's outcome; what is no outcome is as bad as the worst.
func rank(r *Row) int {
	if n := Rank(r.Outcome); n > 0 {
		return n
	}
	return len(Outcomes)
}

// has reports whether a word stands in a list with blanks between.
func has(list, word string) bool {
	return strings.Contains(" "+list+" ", " "+word+" ")
}
