package pages

import (
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strings"
)

// faultTable is what the pages read of specs/faults.json.
type faultTable struct {
	Questions map[string]string
	Faults    []fault
}

type fault struct {
	ID, Group, Calc string
	Aid             bool
	Asks, Hand      []string
}

// group is a stretch of the list of problems.
type group struct {
	Name string
	IDs  []string
}

// Troubles lists the problems.
func (p *Pages) Troubles(ask Ask) Page {
	var groups []group
	for _, f := range p.table.Faults {
		at := slices.IndexFunc(groups, func(g group) bool { return g.Name == f.Group })
		if at < 0 {
			at = len(groups)
			groups = append(groups, group{Name: f.Group})
		}
		groups[at].IDs = append(groups[at].IDs, f.ID)
	}
	return p.draw(ask, http.StatusOK, "troubles", func(s *speaker) shown {
		return shown{Title: s.t("trouble.title", nil), Of: groups}
	})
}

// judged is a problem, its questions and what follows from their answers.
type judged struct {
	Fault     fault
	Questions []question
	Hand      []choice
	Outcome   outcome
	Found     []finding
	First     []warn // of danger
	Others    []warn
	Shape     string
}

type question struct {
	ID      string
	Answers []choice
}

// choice is what may be chosen by a link.
type choice struct {
	Said   string
	To     string // its query
	Chosen bool
}

// outcomes are the shapes of what follows (static/app/trouble/outcome.js).
var outcomes = map[string]string{"carry-on": "○", "ride-gently": "△", "do-not-ride": "■", "do-not-start": "✕"}

// Trouble is one problem: what follows comes first, then the questions.
func (p *Pages) Trouble(ask Ask) Page {
	at := slices.IndexFunc(p.table.Faults, func(f fault) bool { return f.ID == ask.Name })
	if at < 0 {
		return p.Missing(ask)
	}
	v := judged{Fault: p.table.Faults[at]}
	answers := values{}
	for _, q := range v.Fault.Asks {
		if a := ask.Given.Get(q); slices.Contains(strings.Fields(p.table.Questions[q]), a) {
			answers[q] = a
		}
	}
	hand := slices.DeleteFunc(slices.Clone(v.Fault.Hand), func(h string) bool { return !slices.Contains(ask.Given["hand"], h) })
	in := map[string]any{"table": p.faults, "id": ask.Name, "answers": answers, "hand": hand}
	var status int
	v.Outcome, v.Found, status = call[outcome](p.do, "fault", in)
	v.Shape = outcomes[v.Outcome.Outcome]
	for _, w := range v.Outcome.Warns {
		if w.Signal == "DANGER" {
			v.First = append(v.First, w)
		} else {
			v.Others = append(v.Others, w)
		}
	}
	return p.draw(ask, status, "trouble", func(s *speaker) shown {
		for _, q := range v.Fault.Asks {
			v.Questions = append(v.Questions, s.question(q, strings.Fields(p.table.Questions[q]), answers, hand))
		}
		for _, h := range v.Fault.Hand {
			has := slices.Contains(hand, h)
			with := slices.DeleteFunc(slices.Clone(hand), func(other string) bool { return other == h })
			if !has {
				with = append(with, h)
			}
			v.Hand = append(v.Hand, choice{s.t("hand."+h, nil), stateQuery(answers, with), has})
		}
		return shown{Title: s.t("fault."+v.Fault.ID, nil), Of: v}
	})
}

func (s *speaker) question(id string, possible []string, answers values, hand []string) question {
	q := question{ID: id}
	for _, a := range possible {
		word := "fault-answer." + id + "." + a
		if !s.has(word) {
			word = "fault-answer." + a
		}
		with := maps.Clone(answers)
		with[id] = a
		q.Answers = append(q.Answers, choice{s.t(word, nil), stateQuery(with, hand), answers[id] == a})
	}
	return q
}

// stateQuery is a query of what was answered and what is at hand.
func stateQuery(answers values, hand []string) string {
	q := url.Values{"hand": hand}
	for id, a := range answers {
		q.Set(id, a)
	}
	return q.Encode()
}

// list is a part of what to do: the word for it, and the words in it.
type list struct {
	Word    string
	IDs     []string
	Ordered bool
}

// Lists are what to do, in the order of doing; what has to be seen before the bike is
// ridden again stands with the verdict.
func (o outcome) Lists() []list {
	return []list{{"trouble.now", o.Now, true}, {"trouble.limits", o.Limits, false}, {"trouble.home", o.Home, false}}
}

// So is how far one may go.
func (o outcome) So() string {
	if o.To != "" {
		return o.To
	}
	return "outcome." + o.Outcome + ".so"
}
